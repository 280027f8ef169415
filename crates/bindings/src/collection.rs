//! Collections for Python: building segments and reading their games; the interpreter is free during both.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{BufWriter, Write as _};
use std::path::PathBuf;
use std::sync::Mutex;
use std::time::{Duration, Instant};

use engine::bulk::{Wanted, invent};
use engine::collection::{
    self, CollectError, Games, Import, Part, Stored, Taken, packed, unpacked,
};
use pyo3::create_exception;
use pyo3::exceptions::{PyOSError, PyValueError};
use pyo3::prelude::*;
use shakmaty::zobrist::Zobrist64;
use shakmaty::{EnPassantMode, Position as _};

use crate::search::Stop;

create_exception!(
    lineproof._engine,
    DamagedError,
    PyValueError,
    "A file of a collection is not as it was written."
);
create_exception!(
    lineproof._engine,
    StoppedError,
    PyValueError,
    "The work was stopped; what it wrote is of no use."
);

/// How often progress is told.
const OFTEN: Duration = Duration::from_millis(200);

/// (games added, doubles, broken, named, empty, by other rules, from a set-up position, bytes, failure).
type FileRow = (
    u64,
    u64,
    u64,
    Vec<(usize, usize, String)>,
    u64,
    u64,
    u64,
    u64,
    Option<String>,
);
/// (folder, games, games of each source, bits, bytes).
type SegmentRow = (PathBuf, u32, BTreeMap<u32, u32>, u32, u64);
/// (source, file, hashes in it).
type SharedRow = (u32, PathBuf, usize);
/// (game, moves before, next move, result, White's rating, Black's, year, plies).
type VisitRow = (
    u32,
    Vec<String>,
    Option<String>,
    &'static str,
    u16,
    u16,
    u16,
    usize,
);
/// (Event, Site, Date, Round, White, Black; result, White's rating, Black's, year, source, moves).
type GameRow = (Vec<String>, &'static str, u16, u16, u16, u32, Vec<String>);

fn failed(error: CollectError) -> PyErr {
    match error {
        CollectError::File(path, error) => match error.raw_os_error() {
            // three arguments make it the subclass that fits the number
            Some(number) => PyOSError::new_err((number, error.to_string(), path)),
            None => PyOSError::new_err(format!("{}: {error}", path.display())),
        },
        CollectError::Damaged(..) => DamagedError::new_err(error.to_string()),
        CollectError::Stopped => StoppedError::new_err("stopped"),
    }
}

/// Reads files, and segments of other collections, into new segments.
#[pyfunction]
#[pyo3(signature = (files, folder, name, *, taken=Vec::new(), seen=Vec::new(), only=Vec::new(), shared=Vec::new(), threads=1, stop=None, tell=None))]
#[allow(clippy::too_many_arguments)]
pub fn import_games(
    py: Python<'_>,
    files: Vec<(u32, Option<PathBuf>)>,
    folder: PathBuf,
    name: String,
    taken: Vec<(PathBuf, BTreeMap<u32, u32>)>,
    seen: Vec<PathBuf>,
    only: Vec<Option<u32>>,
    shared: Vec<(u32, PathBuf)>,
    threads: usize,
    stop: Option<Py<Stop>>,
    tell: Option<Py<PyAny>>,
) -> PyResult<(Vec<FileRow>, Vec<SegmentRow>, Vec<SharedRow>)> {
    let taken = taken
        .into_iter()
        .map(|(folder, sources)| Taken { folder, sources });
    let what = Import {
        files,
        taken: taken.collect(),
        seen,
        only,
        shared,
        folder,
        name,
        threads,
    };
    let stop = stop.map_or_else(Stop::default, |stop| stop.get().share());
    let mut told = Instant::now();
    let report = py
        .detach(|| {
            collection::import(&what, stop.flag(), |bytes, games| {
                if let Some(tell) = &tell
                    && told.elapsed() > OFTEN
                {
                    told = Instant::now();
                    // a progress line that fails is no reason to lose the work
                    let _ = Python::attach(|py| tell.call1(py, (bytes, games)).map(drop));
                }
            })
        })
        .map_err(failed)?;
    let files = report.files.into_iter().map(|file| {
        let named = file.named.into_iter().map(|b| (b.line, b.column, b.reason));
        (
            file.added,
            file.doubles,
            file.broken,
            named.collect(),
            file.empty,
            file.variants,
            file.set_up,
            file.bytes,
            file.failure,
        )
    });
    let segments = report
        .segments
        .into_iter()
        .map(|(folder, s)| (folder, s.games, s.sources, s.bits, s.bytes));
    Ok((files.collect(), segments.collect(), report.shared))
}

/// Writes one segment with the games of others.
#[pyfunction]
#[pyo3(signature = (segments, folder, *, without=None, shared=Vec::new(), threads=1, stop=None))]
pub fn rebuild_segment(
    py: Python<'_>,
    segments: Vec<PathBuf>,
    folder: PathBuf,
    without: Option<u32>,
    shared: Vec<(u32, PathBuf)>,
    threads: usize,
    stop: Option<Py<Stop>>,
) -> PyResult<SegmentRow> {
    let part = Part {
        segments,
        without,
        shared,
        threads,
    };
    let stop = stop.map_or_else(Stop::default, |stop| stop.get().share());
    let s = py
        .detach(|| collection::rebuild(&part, &folder, stop.flag()))
        .map_err(failed)?;
    Ok((folder, s.games, s.sources, s.bits, s.bytes))
}

/// The games of a segment.
#[pyclass(frozen, module = "lineproof._engine")]
pub struct SegmentGames {
    games: Mutex<Games>,
}

impl SegmentGames {
    fn read(&self, number: u32) -> Result<Stored, CollectError> {
        match self.games.lock() {
            Ok(mut games) => games.game(number),
            Err(poisoned) => poisoned.into_inner().game(number),
        }
    }
}

#[pymethods]
impl SegmentGames {
    #[new]
    fn new(folder: PathBuf) -> PyResult<Self> {
        let games = Games::open(&folder).map_err(failed)?;
        Ok(SegmentGames {
            games: Mutex::new(games),
        })
    }

    /// A game by its number.
    fn game(&self, py: Python<'_>, number: u32) -> PyResult<GameRow> {
        let stored = py.detach(|| self.read(number)).map_err(failed)?;
        let moves = stored.moves().map(|(_, mv)| unpacked(packed(mv))).collect();
        let game = stored.game;
        Ok((
            game.names.to_vec(),
            game.result.spelled(),
            game.white,
            game.black,
            game.year,
            stored.source,
            moves,
        ))
    }

    /// Those of some games that reach a position, at the first time.
    fn visits(&self, py: Python<'_>, key: u64, numbers: Vec<u32>) -> PyResult<Vec<VisitRow>> {
        py.detach(|| {
            let mut found = Vec::new();
            for number in numbers {
                let stored = self.read(number)?;
                found.extend(visit(key, number, &stored));
            }
            Ok(found)
        })
        .map_err(failed)
    }
}

fn visit(key: u64, number: u32, stored: &Stored) -> Option<VisitRow> {
    let mut before = Vec::new();
    let mut next = None;
    let mut last = None;
    for (ply, (chess, mv)) in stored.moves().enumerate() {
        if ply >= collection::PLIES {
            return None;
        }
        if chess.zobrist_hash::<Zobrist64>(EnPassantMode::Legal).0 == key {
            next = Some(mv);
            last = None;
            break;
        }
        before.push(unpacked(packed(mv)));
        last = Some((chess, mv));
    }
    // the position may be that in which the game ends
    if next.is_none() {
        let (mut chess, mv) = last?;
        chess.play_unchecked(mv);
        let ends = before.len() < collection::PLIES
            && chess.zobrist_hash::<Zobrist64>(EnPassantMode::Legal).0 == key;
        if !ends {
            return None;
        }
    }
    let game = &stored.game;
    Some((
        number,
        before,
        next.map(|mv| unpacked(packed(mv))),
        game.result.spelled(),
        game.white,
        game.black,
        game.year,
        stored.moves().count(),
    ))
}

/// Writes invented games as PGN.
#[pyfunction]
#[pyo3(signature = (path, games, *, seed=1, first=0, plies=80, shared=false, clocks=false))]
#[allow(clippy::too_many_arguments)]
pub fn invent_games(
    py: Python<'_>,
    path: PathBuf,
    games: u64,
    seed: u64,
    first: u64,
    plies: usize,
    shared: bool,
    clocks: bool,
) -> PyResult<()> {
    let wanted = Wanted {
        games,
        first,
        seed,
        plies,
        shared,
        clocks,
    };
    py.detach(|| {
        let mut file = BufWriter::with_capacity(1 << 18, File::create(&path)?);
        invent(&wanted, &mut file)?;
        file.flush()
    })
    .map_err(|error| failed(CollectError::File(path.clone(), error)))
}

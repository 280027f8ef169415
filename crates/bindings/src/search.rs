//! Search, perft and points for Python: plain tuples in and out, the interpreter free while the search runs.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use engine::mate::Verdict;
use engine::points;
use engine::position::Position;
use engine::search::{Answer, Limits, Request, RequestError, Score, Searcher};
use pyo3::create_exception;
use pyo3::exceptions::{PyRuntimeError, PyValueError};
use pyo3::prelude::*;
use shakmaty::{Color, Move, Position as _};

use crate::board::{FenError, move_error};

create_exception!(
    lineproof._engine,
    LimitError,
    PyValueError,
    "The limits of a search are missing or contradict themselves."
);
create_exception!(
    lineproof._engine,
    InCheckError,
    PyValueError,
    "A side in check cannot pass."
);

/// Ends searches from another thread.
#[pyclass(frozen, module = "lineproof._engine")]
#[derive(Debug, Default)]
pub struct Stop {
    flag: Arc<AtomicBool>,
}

impl Stop {
    /// Another handle on the same flag.
    pub fn share(&self) -> Stop {
        Stop {
            flag: Arc::clone(&self.flag),
        }
    }

    /// The flag.
    pub fn flag(&self) -> &AtomicBool {
        &self.flag
    }
}

#[pymethods]
impl Stop {
    #[new]
    fn new() -> Self {
        Stop::default()
    }

    /// Ends every search that was given this stop, now and later.
    fn set(&self) {
        self.flag.store(true, Ordering::Relaxed);
    }

    /// Whether it has been set.
    fn is_set(&self) -> bool {
        self.flag.load(Ordering::Relaxed)
    }
}

/// (moves, san, points, centipawns, mate), all for White.
type LineRow = (Vec<String>, Vec<String>, u8, i32, Option<i32>);
/// (lines, nodes, depth, stopped, finished).
type AnswerRow = (Vec<LineRow>, u64, u32, bool, &'static str);

/// Centipawns of a mate on the spot; a move further on it is one less.
const MATE_CENTIPAWNS: i32 = 30_000;

/// More threads than this are a mistake of the caller.
const MOST_THREADS: usize = 256;

/// A position with the keys of the game before it.
struct Game {
    position: Position,
    history: Vec<u64>,
}

fn game(fen: &str, moves: &[String]) -> PyResult<Game> {
    let mut position = Position::from_fen(fen).map_err(|e| FenError::new_err(e.to_string()))?;
    let mut history = Vec::with_capacity(moves.len());
    for uci in moves {
        let mv = position.parse_uci(uci).map_err(|e| move_error(&e))?;
        history.push(position.key());
        position = position.play(mv);
    }
    Ok(Game { position, history })
}

/// How the game has ended, or "". Threefold repetition and fifty moves end it only when claimed
/// (FIDE Laws of Chess, 9.2 and 9.3), so they do not count here; five and seventy-five do (9.6).
fn finished(game: &Game) -> &'static str {
    let chess = game.position.chess();
    if chess.is_checkmate() {
        return "checkmate";
    }
    if chess.is_stalemate() {
        return "stalemate";
    }
    if chess.is_insufficient_material() {
        return "draw by insufficient material";
    }
    let key = game.position.key();
    if game
        .history
        .iter()
        .filter(|earlier| **earlier == key)
        .count()
        >= 4
    {
        return "draw by fivefold repetition";
    }
    if chess.halfmoves() >= 150 {
        return "draw by the seventy-five-move rule";
    }
    ""
}

fn line_row(start: &Position, moves: &[Move], score: Score) -> LineRow {
    let mut position = start.clone();
    let mut uci = Vec::with_capacity(moves.len());
    let mut san = Vec::with_capacity(moves.len());
    for mv in moves {
        uci.push(position.uci(*mv));
        san.push(position.san(*mv));
        position = position.play(*mv);
    }
    let sign = match start.turn() {
        Color::White => 1,
        Color::Black => -1,
    };
    let (points, centipawns, mate) = match score {
        Score::Centipawns(value) => (points::points(sign * value), sign * value, None),
        Score::Mates(n) => mate_row(sign, n),
        Score::Mated(n) => mate_row(-sign, n),
    };
    (uci, san, points, centipawns, mate)
}

fn mate_row(sign: i32, moves: u32) -> (u8, i32, Option<i32>) {
    let moves = i32::try_from(moves).unwrap_or(i32::MAX);
    let worth = sign * (MATE_CENTIPAWNS - moves);
    (points::points_of_mate(sign > 0), worth, Some(sign * moves))
}

fn limit_error(error: RequestError) -> PyErr {
    LimitError::new_err(error.to_string())
}

/// The best lines of a position.
#[pyfunction]
#[pyo3(signature = (fen, moves=Vec::new(), *, nodes=None, depth=None, seconds=None, lines=1, root_moves=None, hash_mb=None, stop=None, threads=1))]
#[allow(clippy::too_many_arguments, clippy::needless_pass_by_value)]
pub fn search(
    py: Python<'_>,
    fen: &str,
    moves: Vec<String>,
    nodes: Option<i64>,
    depth: Option<i64>,
    seconds: Option<f64>,
    lines: i64,
    root_moves: Option<Vec<String>>,
    hash_mb: Option<i64>,
    stop: Option<PyRef<'_, Stop>>,
    threads: i64,
) -> PyResult<AnswerRow> {
    let game = game(fen, &moves)?;
    let limits = Limits {
        nodes: nodes.map(|n| positive("nodes", n)).transpose()?,
        depth: depth
            .map(|n| positive("depth", n).map(|n| u32::try_from(n).unwrap_or(u32::MAX)))
            .transpose()?,
        time: seconds.map(time).transpose()?,
        soft_time: None,
    };
    let threads = usize::try_from(positive("threads", threads)?)
        .ok()
        .filter(|n| *n <= MOST_THREADS)
        .ok_or_else(|| LimitError::new_err(format!("threads must be at most {MOST_THREADS}")))?;
    let lines = usize::try_from(positive("lines", lines)?).unwrap_or(usize::MAX);
    let table_bytes = hash_mb
        .map(|n| {
            positive("hash_mb", n).map(|n| {
                usize::try_from(n)
                    .unwrap_or(usize::MAX)
                    .saturating_mul(1 << 20)
            })
        })
        .transpose()?;
    let root_moves = root_moves
        .map(|all| {
            all.iter()
                .map(|uci| {
                    game.position
                        .parse_uci(uci)
                        .map_err(|e| LimitError::new_err(format!("root move: {e}")))
                })
                .collect::<PyResult<Vec<Move>>>()
        })
        .transpose()?;
    let outer = stop.map(|stop| Arc::clone(&stop.flag));
    if limits == Limits::default() && outer.is_none() {
        return Err(limit_error(RequestError::NoLimit));
    }
    if root_moves.as_ref().is_some_and(Vec::is_empty) {
        return Err(limit_error(RequestError::RootMove));
    }
    let end = finished(&game);
    if !end.is_empty() {
        return Ok((Vec::new(), 0, 0, false, end));
    }

    let flag = outer.unwrap_or_default();
    let request = Request {
        position: &game.position,
        history: &game.history,
        limits,
        lines,
        root_moves: root_moves.as_deref(),
        table_bytes,
        stop: Some(&flag),
        threads,
        ..Request::new(&game.position, limits)
    };
    let answer = watched(py, &request, &flag)?;
    let rows = answer
        .lines
        .iter()
        .map(|line| line_row(&game.position, &line.moves, line.score))
        .collect();
    Ok((rows, answer.nodes, answer.depth, answer.stopped, ""))
}

/// Runs a search on a thread of its own, while this one looks for signals, so that Ctrl-C ends it.
fn watched(py: Python<'_>, request: &Request<'_>, flag: &AtomicBool) -> PyResult<Answer> {
    let done = AtomicBool::new(false);
    let waiting = std::thread::current();
    std::thread::scope(|scope| {
        let worker = scope.spawn(|| {
            let answer = Searcher::new().search(request);
            done.store(true, Ordering::Release);
            waiting.unpark();
            answer
        });
        while !done.load(Ordering::Acquire) && !worker.is_finished() {
            py.detach(|| std::thread::park_timeout(Duration::from_millis(50)));
            if let Err(interrupt) = py.check_signals() {
                flag.store(true, Ordering::Relaxed);
                let _ = py.detach(|| worker.join());
                return Err(interrupt);
            }
        }
        match worker.join() {
            Ok(answer) => answer.map_err(limit_error),
            Err(_) => Err(PyRuntimeError::new_err("the search broke down")),
        }
    })
}

fn positive(name: &str, value: i64) -> PyResult<u64> {
    u64::try_from(value).ok().filter(|n| *n > 0).ok_or_else(|| {
        LimitError::new_err(format!("{name} must be greater than zero, not {value}"))
    })
}

fn time(seconds: f64) -> PyResult<Duration> {
    Duration::try_from_secs_f64(seconds)
        .ok()
        .filter(|time| !time.is_zero())
        .ok_or_else(|| {
            LimitError::new_err(format!("seconds must be greater than zero, not {seconds}"))
        })
}

/// Paths of exactly `depth` plies.
#[pyfunction]
pub fn perft(py: Python<'_>, fen: &str, depth: u32) -> PyResult<u64> {
    let position = Position::from_fen(fen).map_err(|e| FenError::new_err(e.to_string()))?;
    Ok(py.detach(|| engine::perft::perft(&position, depth)))
}

/// As the engine's integers.
fn clamped(centipawns: i64) -> i32 {
    i32::try_from(centipawns).unwrap_or(if centipawns > 0 { i32::MAX } else { i32::MIN })
}

/// Expected score, 0 to 100, of a number of centipawns.
#[pyfunction]
#[pyo3(name = "points")]
pub fn points_of(centipawns: i64) -> u8 {
    points::points(clamped(centipawns))
}

/// Win, draw and loss in a hundred, of a number of centipawns.
#[pyfunction]
#[pyo3(name = "chances")]
pub fn chances_of(centipawns: i64) -> (u8, u8, u8) {
    let found = points::chances(clamped(centipawns));
    (found.win, found.draw, found.loss)
}

/// (found, line, nodes): found is True, False when every move was tried, None when the nodes ran out.
type MateRow = (Option<bool>, Vec<String>, u64);

/// Whether the mover mates within `moves` of his moves, by trying every move.
#[pyfunction]
#[pyo3(signature = (fen, moves, *, nodes, stop=None))]
pub fn mate(
    py: Python<'_>,
    fen: &str,
    moves: u8,
    nodes: u64,
    stop: Option<PyRef<'_, Stop>>,
) -> PyResult<MateRow> {
    let position = Position::from_fen(fen).map_err(|e| FenError::new_err(e.to_string()))?;
    let flag = stop.map(|stop| Arc::clone(&stop.flag)).unwrap_or_default();
    let answer = py.detach(|| engine::mate::mate_until(&position, moves, nodes, Some(&flag)));
    Ok(match answer.verdict {
        Verdict::Forced(line) => (
            Some(true),
            line.iter().map(|mv| position.uci(*mv)).collect(),
            answer.nodes,
        ),
        Verdict::None => (Some(false), Vec::new(), answer.nodes),
        Verdict::Unknown => (None, Vec::new(), answer.nodes),
    })
}

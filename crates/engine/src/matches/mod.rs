//! Matches between two programs that speak UCI, so that a change can be measured.
//!
//! Pairs of games are played from short openings, each opening with both colours. With fixed nodes and programs that
//! answer alike when asked alike, the same seed gives the same games, however many are played at once.
//!
//! ```
//! use engine::matches::{Pairs, Sprt};
//! // Four pairs won by a game and a half or more, one level, one lost.
//! let pairs = Pairs::from_counts([0, 1, 1, 2, 2]);
//! assert_eq!(pairs.score(), Some(0.708_333_333_333_333_4));
//! let test = Sprt::new(0.0, 10.0, 0.05, 0.05).unwrap();
//! assert_eq!(test.verdict(&pairs), None);
//! ```

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{BufWriter, Write};
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::mpsc::{self, Sender};
use std::thread;
use std::time::{Duration, Instant};

mod contestant;
mod failure;
mod game;
pub mod opening;
mod program;
pub(crate) mod referee;
pub mod settings;
mod sprt;
mod summary;
mod tally;

pub use contestant::Contestant;
pub use failure::MatchError;
pub use settings::{Pace, Settings};
pub use sprt::{Sprt, Verdict};
pub use summary::Summary;
pub use tally::{Pairs, elo_of_score, score_of_elo};

use game::Played;
use program::Program;

/// Who is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The program whose gain is measured.
    One,
    /// The program that it is measured against.
    Other,
}

impl Side {
    fn index(self) -> usize {
        match self {
            Side::One => 0,
            Side::Other => 1,
        }
    }

    fn name(self) -> &'static str {
        match self {
            Side::One => "one",
            Side::Other => "other",
        }
    }
}

/// Between two lines that say how far a match has come.
const PROGRESS: Duration = Duration::from_secs(5);

/// Two games from one opening, the first with `one` as White.
type Pair = [Played; 2];

enum Told {
    Pair(u64, Pair),
    Remark(String),
    Failed(MatchError),
}

/// Plays a match. `tell` is given the summary after each pair that counts, in the order of the pairs, and remarks
/// that programs made while they were set up.
///
/// # Errors
/// [`MatchError`] when a program cannot be started or set up, or the games cannot be written.
pub fn play(
    settings: &Settings,
    tell: &mut dyn FnMut(&Summary, Option<&str>),
) -> Result<Summary, MatchError> {
    let mut file = settings.games.as_ref().map(create).transpose()?;
    let next = AtomicU64::new(0);
    let enough = AtomicBool::new(false);
    let (results, told) = mpsc::channel();
    let mut summary = Summary::new(Instant::now());
    let crews = settings.at_once.min(settings.pairs).max(1);
    thread::scope(|scope| {
        for number in 0..crews {
            let (results, next, enough) = (results.clone(), &next, &enough);
            scope.spawn(move || crew(settings, number == 0, next, enough, &results));
        }
        drop(results);
        let mut waiting: BTreeMap<u64, Pair> = BTreeMap::new();
        let mut outcome = Ok(());
        for message in told {
            match message {
                Told::Remark(remark) => tell(&summary, Some(&remark)),
                Told::Failed(error) => {
                    outcome = outcome.and(Err(error));
                    enough.store(true, Ordering::Relaxed);
                }
                Told::Pair(number, pair) => {
                    waiting.insert(number, pair);
                    while let Some(pair) = waiting.remove(&summary.pairs.count()) {
                        // Once it is decided, games that were still under way do not count: which they are
                        // depends on chance.
                        if outcome.is_err() || enough.load(Ordering::Relaxed) {
                            break;
                        }
                        summary.add(&pair);
                        if let Some((file, path)) = &mut file {
                            let lines = pair.each_ref().map(Played::line).concat();
                            let written = file.write_all(lines.as_bytes());
                            if let Err(error) = written {
                                outcome = Err(MatchError::Games(path.clone(), error.to_string()));
                                enough.store(true, Ordering::Relaxed);
                                break;
                            }
                        }
                        tell(&summary, None);
                        let verdict = settings.sprt.and_then(|test| test.verdict(&summary.pairs));
                        if verdict.is_some() {
                            enough.store(true, Ordering::Relaxed);
                        }
                    }
                }
            }
        }
        outcome
    })?;
    if let Some((mut file, path)) = file {
        file.flush()
            .map_err(|error| MatchError::Games(path, error.to_string()))?;
    }
    summary.end();
    Ok(summary)
}

/// As [`play`], with lines for a reader: remarks, and now and then how far it has come.
///
/// # Errors
/// As [`play`].
pub fn play_saying(settings: &Settings, say: &mut dyn FnMut(&str)) -> Result<Summary, MatchError> {
    let mut last = Instant::now();
    play(settings, &mut |summary, remark| {
        if let Some(remark) = remark {
            say(remark);
        } else if last.elapsed() >= PROGRESS {
            last = Instant::now();
            say(&summary.progress(settings));
        }
    })
}

fn create(path: &PathBuf) -> Result<(BufWriter<File>, PathBuf), MatchError> {
    let file =
        File::create(path).map_err(|error| MatchError::Games(path.clone(), error.to_string()))?;
    Ok((BufWriter::new(file), path.clone()))
}

/// Plays one pair after another with two processes of its own.
fn crew(
    settings: &Settings,
    speaks: bool,
    next: &AtomicU64,
    enough: &AtomicBool,
    results: &Sender<Told>,
) {
    let played = keep_playing(settings, speaks, next, enough, results);
    if let Err(error) = played {
        // Nobody hears it when the match is over already.
        let _ = results.send(Told::Failed(error));
    }
}

fn keep_playing(
    settings: &Settings,
    speaks: bool,
    next: &AtomicU64,
    enough: &AtomicBool,
    results: &Sender<Told>,
) -> Result<(), MatchError> {
    let mut programs = [None, None];
    loop {
        let number = next.fetch_add(1, Ordering::Relaxed);
        if number >= settings.pairs || enough.load(Ordering::Relaxed) {
            return Ok(());
        }
        let opening = opening::balanced(settings.seed, number);
        let mut games = Vec::with_capacity(2);
        for white in [Side::One, Side::Other] {
            for side in [Side::One, Side::Other] {
                let place: &mut Option<Program> = &mut programs[side.index()];
                if place.as_ref().is_none_or(Program::is_broken) {
                    let (program, remarks) =
                        Program::start(settings.contestant(side), side.name())?;
                    *place = Some(program);
                    for remark in remarks.into_iter().filter(|_| speaks) {
                        let _ = results.send(Told::Remark(remark));
                    }
                }
            }
            let [Some(one), Some(other)] = &mut programs else {
                return Ok(()); // both were started above
            };
            match game::play(settings, white, [one, other], &opening, enough) {
                Some(game) => games.push(game),
                None => return Ok(()),
            }
        }
        if let Ok(pair) = games.try_into()
            && results.send(Told::Pair(number, pair)).is_err()
        {
            return Ok(());
        }
    }
}

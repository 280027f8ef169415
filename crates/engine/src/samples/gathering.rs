//! Plays games on all cores, and writes their positions segment by segment.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{self, RecvTimeoutError, Sender};
use std::sync::{Mutex, PoisonError};
use std::thread;
use std::time::{Duration, Instant};

use crate::eval::Evaluate;

use super::failure::SampleError;
use super::folder::Folder;
use super::game::{Played, Player, Rules};
use super::openings::digest;
use super::report::Report;
use super::settings::Settings;

/// Between two lines that say how far a run has come.
const PROGRESS: Duration = Duration::from_secs(5);
/// The number of the game whose digest stands for the engine in `about.txt`; no folder gets so far.
const SIGNATURE_GAME: u64 = u64::MAX;

/// Plays games and keeps their positions, with an evaluation and its name. The same settings, but for the time and the
/// games at once, give the same bytes. `say` is given a line now and then that says how far it has come.
///
/// # Errors
/// [`SampleError`] when the folder is another run's or cannot be written.
pub fn gather<E: Evaluate + Clone + Send>(
    settings: &Settings,
    evaluation: &E,
    name: &str,
    say: &mut dyn FnMut(&str),
) -> Result<Report, SampleError> {
    let rules = Rules {
        seed: settings.seed,
        nodes: settings.nodes,
        leaves: settings.leaves,
        leaf_nodes: settings.leaf_nodes,
        openings: settings.openings.clone(),
        listed: settings.listed,
    };
    let about = about(settings, &rules, evaluation, name)?;
    let mut folder = Folder::open(&settings.out, &about, settings.games_a_segment)?;
    let mut report = Report::new(&folder);
    let begun = Instant::now();
    let tasks = Mutex::new(Tasks {
        segments: 0..settings.segments().unwrap_or(u64::MAX),
        there: folder.numbers(),
        games_a_segment: settings.games_a_segment,
        until: settings.time.and_then(|time| begun.checked_add(time)),
        segment: 0,
        games: 0..0,
    });
    let enough = AtomicBool::new(false);
    let (results, told) = mpsc::channel();
    thread::scope(|scope| {
        for _ in 0..settings.at_once {
            let (results, player) = (results.clone(), Player::new(evaluation));
            let (rules, tasks, enough) = (&rules, &tasks, &enough);
            scope.spawn(move || work(rules, player, tasks, enough, &results));
        }
        drop(results);
        let mut segments: BTreeMap<u64, BTreeMap<u64, Vec<u8>>> = BTreeMap::new();
        let mut outcome = Ok(());
        let mut last = begun;
        loop {
            match told.recv_timeout(PROGRESS) {
                Ok(Told { task, played }) => {
                    let kept = played.and_then(|game| {
                        report.add(&game);
                        let games = segments.entry(task.segment).or_default();
                        games.insert(task.game, game.bytes);
                        if games.len() as u64 == settings.games_a_segment {
                            let games = segments.remove(&task.segment).unwrap_or_default();
                            let bytes: Vec<u8> = games.into_values().flatten().collect();
                            folder.add(task.segment, &bytes)?;
                        }
                        Ok(())
                    });
                    if kept.is_err() {
                        enough.store(true, Ordering::Relaxed);
                        outcome = outcome.and(kept);
                    }
                }
                Err(RecvTimeoutError::Timeout) => {}
                Err(RecvTimeoutError::Disconnected) => break outcome,
            }
            if last.elapsed() >= PROGRESS {
                last = Instant::now();
                say(&report.progress(settings));
            }
        }
    })?;
    report.end(&folder);
    Ok(report)
}

/// What decides the bytes, line by line.
fn about<E: Evaluate + Clone + Send>(
    settings: &Settings,
    rules: &Rules,
    evaluation: &E,
    name: &str,
) -> Result<String, SampleError> {
    let game = Player::new(evaluation).play(rules, SIGNATURE_GAME)?;
    let nodes = game.nodes.to_le_bytes();
    let signature = digest(game.bytes.into_iter().chain(nodes));
    Ok(format!(
        "what: positions of games of the engine against itself, 32 bytes each\n\
         engine: lineproof-engine {}\n\
         evaluation: {name}\n\
         seed: {}\n\
         nodes a move: {}\n\
         leaves a move: {}, {} nodes each\n\
         openings: {}\n\
         from the list: {} in 100\n\
         games a segment: {}\n\
         signature: {signature:016x}\n",
        env!("CARGO_PKG_VERSION"),
        settings.seed,
        settings.nodes,
        settings.leaves,
        settings.leaf_nodes,
        settings.openings.signature(),
        settings.listed,
        settings.games_a_segment,
    ))
}

/// A game to be played.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Task {
    segment: u64,
    game: u64,
}

/// Games to be played: those of one missing segment after another, so that few segments are under way at a time.
struct Tasks {
    segments: Range<u64>,
    there: BTreeSet<u64>,
    games_a_segment: u64,
    until: Option<Instant>,
    segment: u64,
    games: Range<u64>,
}

impl Tasks {
    fn next(&mut self) -> Option<Task> {
        if self.games.is_empty() {
            if self.until.is_some_and(|until| Instant::now() >= until) {
                return None;
            }
            let there = &self.there;
            self.segment = self.segments.find(|segment| !there.contains(segment))?;
            let first = self.segment * self.games_a_segment;
            self.games = first..first + self.games_a_segment;
        }
        self.games.next().map(|game| Task {
            segment: self.segment,
            game,
        })
    }
}

struct Told {
    task: Task,
    played: Result<Played, SampleError>,
}

/// Plays one game after another.
fn work<E: Evaluate + Clone + Send>(
    rules: &Rules,
    mut player: Player<E>,
    tasks: &Mutex<Tasks>,
    enough: &AtomicBool,
    results: &Sender<Told>,
) {
    while !enough.load(Ordering::Relaxed) {
        // Nothing that can panic is done under the lock.
        let next = tasks.lock().unwrap_or_else(PoisonError::into_inner).next();
        let Some(task) = next else { break };
        let played = player.play(rules, task.game);
        if results.send(Told { task, played }).is_err() {
            break;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tasks(segments: Range<u64>, there: &[u64], until: Option<Instant>) -> Vec<(u64, u64)> {
        let mut tasks = Tasks {
            segments,
            there: there.iter().copied().collect(),
            games_a_segment: 2,
            until,
            segment: 0,
            games: 0..0,
        };
        std::iter::from_fn(|| tasks.next())
            .map(|task| (task.segment, task.game))
            .collect()
    }

    #[test]
    fn only_the_games_of_missing_segments_are_played() {
        assert_eq!(tasks(0..4, &[0, 2], None), [(1, 2), (1, 3), (3, 6), (3, 7)]);
        assert_eq!(tasks(0..2, &[0, 1], None), []);
    }

    #[test]
    fn no_segment_is_begun_when_the_time_is_up() {
        assert_eq!(tasks(0..4, &[], Some(Instant::now())), []);
    }
}

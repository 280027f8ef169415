//! Segments into one, from the games that they hold: to make few of many, and to leave a source out.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};

use shakmaty::Chess;

use super::batch::Batch;
use super::build::{Builder, Summary};
use super::collector::read_shared;
use super::failure::CollectError;
use super::games::{Games, Stored};
use super::seen::Hashes;
use crate::bulk::{Game, Visit};

/// Blocks of games that are worked on at once, by each thread.
const STRIDE: u32 = 64;

/// What is to be made of which segments.
#[derive(Debug, Clone, Default)]
pub struct Part {
    /// Folders of segments, in the order of their games.
    pub segments: Vec<PathBuf>,
    /// A source whose games are left out, unless another source holds them as well.
    pub without: Option<u32>,
    /// The hashes that sources hold of games that stand under another.
    pub shared: Vec<(u32, PathBuf)>,
    /// Threads.
    pub threads: usize,
}

/// Writes one segment with the games of others.
///
/// # Errors
/// When a segment cannot be read, the new one not be written, or `stop` is set.
pub fn rebuild(part: &Part, folder: &Path, stop: &AtomicBool) -> Result<Summary, CollectError> {
    let mut shared = read_shared(&part.shared)?;
    if let Some(gone) = part.without {
        shared.remove(&gone);
    }
    let threads = part.threads.max(1);
    let mut builder = Builder::new(folder)?;
    for segment in &part.segments {
        let blocks = Games::open(segment)?.blocks();
        let mut at = 0;
        while at < blocks {
            if stop.load(Ordering::Relaxed) {
                return Err(CollectError::Stopped);
            }
            let end = (at + STRIDE * threads as u32).min(blocks);
            for batch in batches(segment, at, end, part.without, &shared, threads)? {
                builder.take(&batch, &mut [], |_, _, _| {})?;
            }
            at = end;
        }
    }
    builder.finish(threads, stop)
}

/// The games of a few blocks, in their order.
fn batches(
    segment: &Path,
    from: u32,
    to: u32,
    without: Option<u32>,
    shared: &BTreeMap<u32, Hashes>,
    threads: usize,
) -> Result<Vec<Batch>, CollectError> {
    const STEP: u32 = 8;
    let next = AtomicU32::new(from);
    let work = || -> Result<Vec<(u32, Batch)>, CollectError> {
        let mut games = Games::open(segment)?;
        let mut done = Vec::new();
        loop {
            let at = next.fetch_add(STEP, Ordering::Relaxed);
            if at >= to {
                return Ok(done);
            }
            let mut batch = Batch::default();
            for number in at..(at + STEP).min(to) {
                for stored in games.block(number)? {
                    add(&mut batch, &stored, without, shared);
                }
            }
            done.push((at, batch));
        }
    };
    let mut all = std::thread::scope(|scope| {
        let running: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        running
            .into_iter()
            .map(|thread| thread.join().unwrap_or(Err(CollectError::Stopped)))
            .collect::<Result<Vec<_>, _>>()
    })?
    .concat();
    all.sort_unstable_by_key(|(at, _)| *at);
    Ok(all.into_iter().map(|(_, batch)| batch).collect())
}

/// Adds a game again, unless it goes with its source.
fn add(batch: &mut Batch, stored: &Stored, without: Option<u32>, shared: &BTreeMap<u32, Hashes>) {
    let hash = stored.hash();
    let mut source = stored.source;
    if without == Some(source) {
        let Some((heir, _)) = shared.iter().find(|(_, hashes)| hashes.contains(&hash)) else {
            return;
        };
        source = *heir;
    }
    again(batch, stored, source);
}

/// Adds a stored game as one of a source.
pub fn again(batch: &mut Batch, stored: &Stored, source: u32) {
    batch.source = source;
    let mut end = Chess::default();
    batch.begin(&end, true);
    for (before, mv) in stored.moves() {
        batch.play(&before, mv);
        end = before;
        shakmaty::Position::play_unchecked(&mut end, mv);
    }
    let game: &Game = &stored.game;
    batch.game(game, &end);
}

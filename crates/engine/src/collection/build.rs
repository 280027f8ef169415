//! From games to a segment, in bounded memory.

use std::collections::{BTreeMap, HashMap};
use std::fs::{self, File};
use std::hash::BuildHasherDefault;
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

use super::batch::Batch;
use super::failure::CollectError;
use super::games::GamesWriter;
use super::out::Out;
use super::row::Row;
use super::seen::{Hashes, Mixed, Seen, write_hashes};
use super::spill::{PARTS, Spill};
use super::tally::Tally;

/// Positions before this ply are counted as they come: there are few of them, and every game has them.
const HOT: u8 = 4;
/// Games of a segment, at most: so many hashes are held in memory.
const GAMES_MOST: u32 = 4_000_000;
/// A segment's file of hashes.
pub const SEEN: &str = "seen.bin";
/// Rows of a file of a segment, about.
const FILE_ROWS: usize = 1 << 21;

/// What has been written.
#[derive(Debug, Clone, Default)]
pub struct Summary {
    /// Games in the segment.
    pub games: u32,
    /// Games of each source.
    pub sources: BTreeMap<u32, u32>,
    /// Bits of the key that part its files.
    pub bits: u32,
    /// Bytes on disk.
    pub bytes: u64,
}

type Tallies = HashMap<u64, Tally, BuildHasherDefault<Mixed>>;

/// Makes one segment.
pub struct Builder {
    folder: PathBuf,
    games: GamesWriter,
    spill: Spill,
    hot: Tallies,
    hashes: Hashes,
    sources: BTreeMap<u32, u32>,
    count: u32,
}

impl Builder {
    /// In a new folder.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn new(folder: &Path) -> Result<Builder, CollectError> {
        fs::create_dir_all(folder).map_err(CollectError::at(folder))?;
        Ok(Builder {
            folder: folder.to_owned(),
            games: GamesWriter::new(folder)?,
            spill: Spill::new(folder),
            hot: Tallies::default(),
            hashes: Hashes::default(),
            sources: BTreeMap::new(),
            count: 0,
        })
    }

    /// Whether it holds as many games as a segment may.
    #[must_use]
    pub fn is_full(&self) -> bool {
        self.count >= GAMES_MOST
    }

    /// Where it goes.
    #[must_use]
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// Games so far.
    #[must_use]
    pub fn count(&self) -> u32 {
        self.count
    }

    /// Takes the games of a batch that are neither here nor in `old`; `double` is told of the others: source, hash, and
    /// where in `old`, or none.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn take(
        &mut self,
        batch: &Batch,
        old: &mut [Seen],
        mut double: impl FnMut(u32, u64, Option<usize>),
    ) -> Result<(), CollectError> {
        let (mut record, mut row) = (0, 0);
        for entry in &batch.entries {
            let (tags, moves) = (
                &batch.records[record..entry.tags],
                &batch.records[entry.tags..entry.moves],
            );
            let rows = &batch.rows[row..entry.rows];
            (record, row) = (entry.moves, entry.rows);
            let mut place = None;
            for (number, seen) in old.iter_mut().enumerate() {
                if seen.has(entry.hash)? {
                    place = Some(number);
                    break;
                }
            }
            if place.is_some() || !self.hashes.insert(entry.hash) {
                double(entry.source, entry.hash, place);
                continue;
            }
            self.games.push(entry.source, tags, moves)?;
            for row in rows {
                let row = Row {
                    game: self.count,
                    ..*row
                };
                if row.ply < HOT {
                    self.hot.entry(row.key).or_default().add(&row);
                } else {
                    self.spill.push(row);
                }
            }
            self.count += 1;
            *self.sources.entry(entry.source).or_default() += 1;
        }
        self.spill.settle()
    }

    /// Writes the segment. Without a game there is none, and its folder goes.
    ///
    /// # Errors
    /// When the system refuses, or `stop` is set.
    pub fn finish(self, threads: usize, stop: &AtomicBool) -> Result<Summary, CollectError> {
        let Builder {
            folder,
            games,
            spill,
            hot,
            hashes,
            sources,
            count,
        } = self;
        games.finish()?;
        if count == 0 {
            fs::remove_dir_all(&folder).map_err(CollectError::at(&folder))?;
            return Ok(Summary::default());
        }
        write_hashes(&folder.join(SEEN), hashes.iter().copied())?;
        drop(hashes);
        let mut hot: Vec<(u64, Tally)> = hot.into_iter().collect();
        hot.sort_unstable_by_key(|(key, _)| *key);
        let bits = match spill.count() / FILE_ROWS {
            0 => 0,
            1..16 => 4,
            _ => 8,
        };
        let parts = PARTS >> bits;
        // each file takes its own tallies out
        let mut shares: Vec<Vec<(u64, Tally)>> = (0..1 << bits).map(|_| Vec::new()).collect();
        for (key, tally) in hot {
            shares[(key >> 56) as usize / parts].push((key, tally));
        }
        let shares: Vec<Mutex<Vec<(u64, Tally)>>> = shares.into_iter().map(Mutex::new).collect();
        let next = AtomicUsize::new(0);
        let work = || -> Result<(), CollectError> {
            loop {
                let file = next.fetch_add(1, Ordering::Relaxed);
                let Some(share) = shares.get(file) else {
                    return Ok(());
                };
                let share = share
                    .lock()
                    .map_or_else(|_| Vec::new(), |mut s| std::mem::take(&mut s));
                let mut out = Out::new(&folder, file)?;
                let mut hot = share.into_iter().peekable();
                for part in file * parts..(file + 1) * parts {
                    if stop.load(Ordering::Relaxed) {
                        return Err(CollectError::Stopped);
                    }
                    let rows = spill.part(part)?;
                    out.part(&rows, &mut hot, part)?;
                }
                out.finish()?;
            }
        };
        std::thread::scope(|scope| {
            let running: Vec<_> = (0..threads.max(1)).map(|_| scope.spawn(work)).collect();
            running
                .into_iter()
                .map(|thread| thread.join().unwrap_or(Err(CollectError::Stopped)))
                .fold(Ok(()), Result::and)
        })?;
        spill.finish()?;
        sync_folder(&folder)?;
        let bytes = size(&folder)?;
        Ok(Summary {
            games: count,
            sources,
            bits,
            bytes,
        })
    }
}

/// Has the names in a folder on the disk.
pub fn sync_folder(folder: &Path) -> Result<(), CollectError> {
    // Windows keeps names without being told, and opens no folder
    if cfg!(unix) {
        let failed = CollectError::at(folder);
        File::open(folder)
            .and_then(|f| f.sync_all())
            .map_err(failed)?;
    }
    Ok(())
}

fn size(folder: &Path) -> Result<u64, CollectError> {
    let failed = CollectError::at(folder);
    let mut bytes = 0;
    for entry in fs::read_dir(folder).map_err(&failed)? {
        bytes += entry.and_then(|e| e.metadata()).map_err(&failed)?.len();
    }
    Ok(bytes)
}

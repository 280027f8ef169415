//! From games to a segment, in bounded memory.

use std::collections::{BTreeMap, HashMap};
use std::fs::{self, File};
use std::hash::BuildHasherDefault;
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

use super::RARE;
use super::batch::Batch;
use super::failure::CollectError;
use super::games::GamesWriter;
use super::row::Row;
use super::seen::{Hashes, Mixed, Seen, write_hashes};
use super::spill::{PARTS, Spill};
use super::table::{Column, Table};
use super::tally::{Tally, totals};

/// Positions before this ply are counted as they come: there are few of them, and every game has them.
const HOT: u8 = 4;
/// Games of a segment, at most: so many hashes are held in memory.
const GAMES_MOST: u32 = 4_000_000;
/// A segment's file of hashes.
pub const SEEN: &str = "seen.bin";
/// Rows of a file of a segment, about.
const FILE_ROWS: usize = 1 << 21;

const FIGURES: &[Column] = &[
    ("key", 64),
    ("move", 16),
    ("white_band", 8),
    ("black_band", 8),
    ("year", 16),
    ("games", 32),
    ("white", 32),
    ("draws", 32),
    ("black", 32),
    ("white_sum", 64),
    ("black_sum", 64),
];
/// Sums of the figures, for questions about all games: `kind` 0 by move, 1 by the average rating of both players (from so
/// many points), 2 by year.
const TOTALS: &[Column] = &[
    ("key", 64),
    ("kind", 8),
    ("value", 16),
    ("games", 32),
    ("white", 32),
    ("draws", 32),
    ("black", 32),
    ("rated", 32),
    ("rating_sum", 64),
];
/// `move` 65535 marks a move order of `games` games; else `game` is a model game of the move.
const EXAMPLES: &[Column] = &[("key", 64), ("move", 16), ("game", 32), ("games", 32)];
const ORDER: u64 = 65535;
const RARES: &[Column] = &[("prefix", 64), ("game", 32)];
/// Bits of a key that are not kept of rare positions.
const CUT: u32 = 24;

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
            let mut known = self.hashes.contains(&entry.hash).then_some(None);
            for (number, seen) in old.iter_mut().enumerate() {
                if known.is_none() && seen.has(entry.hash)? {
                    known = Some(Some(number));
                }
            }
            if let Some(place) = known {
                double(entry.source, entry.hash, place);
                continue;
            }
            self.hashes.insert(entry.hash);
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
                    let mut rows = spill.part(part)?;
                    rows.sort_unstable_by_key(|row| (row.key, row.game));
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

type Hot = std::iter::Peekable<std::vec::IntoIter<(u64, Tally)>>;

/// The next tally, if its key is one that is wanted. (`next_if` would move each tally out and back.)
fn next_where(hot: &mut Hot, wanted: impl Fn(u64) -> bool) -> Option<(u64, Tally)> {
    hot.peek()
        .is_some_and(|(key, _)| wanted(*key))
        .then(|| hot.next())?
}

/// The files of one share of the keys.
struct Out {
    totals: Table,
    figures: Table,
    examples: Table,
    rare: Table,
}

impl Out {
    fn new(folder: &Path, file: usize) -> Result<Out, CollectError> {
        let path = |name: &str| folder.join(format!("{name}-{file:02x}.parquet"));
        Ok(Out {
            totals: Table::new(&path("totals"), TOTALS, &["key"], true)?,
            figures: Table::new(&path("figures"), FIGURES, &["key"], true)?,
            examples: Table::new(&path("examples"), EXAMPLES, &["key", "game"], true)?,
            rare: Table::new(&path("rare"), RARES, &["prefix", "game"], false)?,
        })
    }

    /// Rows of one part of the keys, sorted, and the tallies of those keys.
    fn part(&mut self, rows: &[Row], hot: &mut Hot, part: usize) -> Result<(), CollectError> {
        for run in rows.chunk_by(|a, b| a.key == b.key) {
            let key = run[0].key;
            while let Some((earlier, tally)) = next_where(hot, |hot| hot < key) {
                self.tally(earlier, &tally)?;
            }
            if let Some((_, mut tally)) = next_where(hot, |hot| hot == key) {
                run.iter().for_each(|row| tally.add(row));
                self.tally(key, &tally)?;
            } else if run.len() < RARE {
                for row in run {
                    self.rare(key, row.game)?;
                }
            } else {
                let mut tally = Tally::default();
                run.iter().for_each(|row| tally.add(row));
                self.tally(key, &tally)?;
            }
        }
        while let Some((key, tally)) = next_where(hot, |key| (key >> 56) as usize == part) {
            self.tally(key, &tally)?;
        }
        Ok(())
    }

    fn rare(&mut self, key: u64, game: u32) -> Result<(), CollectError> {
        self.rare.push(&[key >> CUT, u64::from(game)])
    }

    fn tally(&mut self, key: u64, tally: &Tally) -> Result<(), CollectError> {
        if (tally.games as usize) < RARE {
            return tally
                .first
                .iter()
                .try_for_each(|game| self.rare(key, *game));
        }
        let cells = tally.cells();
        for ((kind, value), total) in totals(&cells) {
            let counts = [
                total.games,
                total.white,
                total.draws,
                total.black,
                total.rated,
            ];
            let [games, won, draws, lost, rated] = counts.map(u64::from);
            let value = u64::from(value);
            self.totals.push(&[
                key,
                kind,
                value,
                games,
                won,
                draws,
                lost,
                rated,
                total.rating_sum,
            ])?;
        }
        for ((mv, white, black, year), cell) in cells {
            let counts = [cell.games, cell.white, cell.draws, cell.black].map(u64::from);
            let [games, won, draws, lost] = counts;
            self.figures.push(&[
                key,
                u64::from(mv),
                u64::from(white),
                u64::from(black),
                u64::from(year),
                games,
                won,
                draws,
                lost,
                cell.white_sum,
                cell.black_sum,
            ])?;
        }
        for (mv, game) in tally.models() {
            self.examples
                .push(&[key, u64::from(mv), u64::from(game), 0])?;
        }
        for (games, first) in tally.orders() {
            self.examples
                .push(&[key, ORDER, u64::from(first), u64::from(games)])?;
        }
        Ok(())
    }

    fn finish(self) -> Result<(), CollectError> {
        for table in [self.totals, self.figures, self.examples, self.rare] {
            table.finish()?;
        }
        Ok(())
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

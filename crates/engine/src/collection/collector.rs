//! Takes the batches of an import in the order of their stream, and makes segments of them.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError};
use std::time::Duration;

use super::build::{Builder, SEEN, sync_folder};
use super::failure::CollectError;
use super::import::{Done, FileReport, Import, Numbered, Report};
use super::seen::{Hashes, Seen, read_hashes, write_hashes};

/// Broken games that are named, at most, of each file; the others are only counted.
const NAMED: usize = 1_000;
/// How soon a stop is obeyed while nothing comes.
const PATIENCE: Duration = Duration::from_millis(100);

/// The last thread: takes batches in their order.
pub struct Collector<'a> {
    what: &'a Import,
    seen: Vec<Seen>,
    builder: Option<Builder>,
    report: Report,
    shared: BTreeMap<u32, Hashes>,
    alone: bool,
}

/// Hashes of each source, from their files.
pub fn read_shared(files: &[(u32, PathBuf)]) -> Result<BTreeMap<u32, Hashes>, CollectError> {
    let mut shared: BTreeMap<u32, Hashes> = BTreeMap::new();
    for (source, path) in files {
        let hashes = read_hashes(path)?;
        shared.entry(*source).or_default().extend(hashes);
    }
    Ok(shared)
}

impl<'a> Collector<'a> {
    /// With what is known of the games that are there.
    pub fn new(what: &'a Import) -> Result<Self, CollectError> {
        let seen: Result<Vec<Seen>, CollectError> =
            what.seen.iter().map(|path| Seen::open(path)).collect();
        Ok(Collector {
            what,
            seen: seen?,
            builder: None,
            report: Report {
                files: vec![FileReport::default(); what.files.len() + what.taken.len()],
                ..Report::default()
            },
            shared: read_shared(&what.shared)?,
            alone: alone(what),
        })
    }

    /// Takes all batches.
    #[allow(clippy::needless_pass_by_value)] // dropping both is how the other threads are told
    pub fn collect(
        &mut self,
        batches: Receiver<Numbered<Done>>,
        permits: Receiver<()>,
        stop: &AtomicBool,
        mut tell: impl FnMut(u64),
    ) -> Result<(), CollectError> {
        let mut waiting: BTreeMap<u64, (usize, Done)> = BTreeMap::new();
        let mut next = 0;
        loop {
            if stop.load(Ordering::Relaxed) {
                return Err(CollectError::Stopped);
            }
            match batches.recv_timeout(PATIENCE) {
                Ok((number, file, done)) => {
                    waiting.insert(number, (file, done));
                }
                Err(RecvTimeoutError::Timeout) => {}
                Err(RecvTimeoutError::Disconnected) => return Ok(()),
            }
            while let Some((file, done)) = waiting.remove(&next) {
                self.step(file, done, stop)?;
                next += 1;
                let _ = permits.try_recv();
            }
            tell(self.report.files.iter().map(|file| file.added).sum());
        }
    }

    fn step(&mut self, file: usize, done: Done, stop: &AtomicBool) -> Result<(), CollectError> {
        let report = &mut self.report.files[file];
        let mut batch = match done {
            Done::Batch(batch) => batch,
            Done::Failed(error) => return Err(error),
            Done::End(failure, bytes) => {
                report.failure = failure;
                report.bytes = bytes;
                return Ok(());
            }
        };
        report.broken += batch.broken.len() as u64;
        let room = NAMED.saturating_sub(report.named.len());
        report.named.extend(batch.broken.drain(..).take(room));
        report.empty += batch.empty;
        report.variants += batch.variants;
        report.set_up += batch.set_up;
        if self.builder.as_ref().is_some_and(Builder::is_full) {
            self.end_segment(stop)?;
        }
        let builder = match &mut self.builder {
            Some(builder) => builder,
            none => {
                let name = format!("{}-{}", self.what.name, self.report.segments.len());
                none.insert(Builder::new(&self.what.folder.join(name))?)
            }
        };
        let before = builder.count();
        let (shared, only, alone) = (&mut self.shared, &self.what.only, self.alone);
        builder.take(&batch, &mut self.seen, |source, hash, place| {
            let own = match place.and_then(|number| only.get(number)) {
                Some(only) => *only == Some(source),
                None => alone,
            };
            // a game that stands under another source is held by this one too
            if !own {
                shared.entry(source).or_default().insert(hash);
            }
        })?;
        let added = u64::from(builder.count() - before);
        let report = &mut self.report.files[file];
        report.added += added;
        report.doubles += batch.entries.len() as u64 - added;
        Ok(())
    }

    fn end_segment(&mut self, stop: &AtomicBool) -> Result<(), CollectError> {
        if let Some(builder) = self.builder.take() {
            let folder = builder.folder().to_owned();
            let summary = builder.finish(self.what.threads, stop)?;
            if summary.games > 0 {
                self.seen.push(Seen::open(&folder.join(SEEN))?);
                self.report.segments.push((folder, summary));
            }
        }
        Ok(())
    }

    /// Ends the last segment, and tells what became of all.
    pub fn finish(mut self, stop: &AtomicBool) -> Result<Report, CollectError> {
        self.end_segment(stop)?;
        for (source, hashes) in &self.shared {
            let name = format!("{}-shared-{source}.bin", self.what.name);
            let path = self.what.folder.join(name);
            write_hashes(&path, hashes.iter().copied())?;
            self.report.shared.push((*source, path, hashes.len()));
        }
        sync_folder(&self.what.folder)?;
        Ok(self.report)
    }
}

/// Whether all games are of one source.
fn alone(what: &Import) -> bool {
    let taken = what.taken.iter().flat_map(|taken| taken.sources.values());
    let mut sources = what.files.iter().map(|(source, _)| source).chain(taken);
    let first = sources.next();
    sources.all(|source| Some(source) == first)
}

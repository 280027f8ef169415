//! From files to segments: one thread unpacks and cuts, others read games, one builds. The order of the games, and so
//! every byte that is written, is that of the files, on any number of threads.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{self, Read};
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError, SyncSender, sync_channel};
use std::sync::{Arc, Mutex};
use std::time::Duration;

use super::batch::Batch;
use super::build::{Builder, SEEN, Summary, sync_folder};
use super::failure::CollectError;
use super::seen::{Hashes, Seen, read_hashes, write_hashes};
use crate::bulk::{Broken, Chunk, Frames, open_archive, read_frame};

/// Broken games that are named, at most, of each file; the others are only counted.
const NAMED: usize = 1_000;
/// How soon a stop is obeyed while nothing comes.
const PATIENCE: Duration = Duration::from_millis(100);

/// What is to be read, and where it goes.
#[derive(Debug, Clone, Default)]
pub struct Import {
    /// Number of the source, and the file; standard input where there is none.
    pub files: Vec<(u32, Option<PathBuf>)>,
    /// `seen.bin` of each segment that is there.
    pub seen: Vec<PathBuf>,
    /// Of each of these, its source, when all of its games are of one.
    pub only: Vec<Option<u32>>,
    /// Of sources, hashes of games that they hold and that stand under another: what [`Report::shared`] named before.
    pub shared: Vec<(u32, PathBuf)>,
    /// Where new segments go.
    pub folder: PathBuf,
    /// With what their names begin.
    pub name: String,
    /// Threads that read games.
    pub threads: usize,
}

/// What became of a file.
#[derive(Debug, Clone, Default)]
pub struct FileReport {
    /// Games that are new.
    pub added: u64,
    /// Games that were there already, or came twice.
    pub doubles: u64,
    /// Games that cannot be read.
    pub broken: u64,
    /// The first of these.
    pub named: Vec<Broken>,
    /// Games without moves.
    pub empty: u64,
    /// Games by other rules.
    pub variants: u64,
    /// Games from a set-up position.
    pub set_up: u64,
    /// Plain bytes read.
    pub bytes: u64,
    /// Why the file could be read only in part, or not at all.
    pub failure: Option<String>,
}

/// What became of an import.
#[derive(Debug, Clone, Default)]
pub struct Report {
    /// One for each file.
    pub files: Vec<FileReport>,
    /// New segments: folder and content.
    pub segments: Vec<(PathBuf, Summary)>,
    /// Of each source, a file of hashes of games that it holds and that stand under another source, and how many.
    pub shared: Vec<(u32, PathBuf, usize)>,
}

/// From the first thread. A file ends: why, if it ends too early, and its plain bytes.
enum Step {
    Chunk(Chunk),
    End(Option<String>, u64),
}

/// From those that read games.
enum Done {
    Batch(Box<Batch>),
    End(Option<String>, u64),
}

/// A step on its way: its place in the order, its file.
type Numbered<T> = (u64, usize, T);

struct Counted<R>(R, Arc<AtomicU64>);

impl<R: Read> Read for Counted<R> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let count = self.0.read(into)?;
        self.1.fetch_add(count as u64, Ordering::Relaxed);
        Ok(count)
    }
}

/// Reads files into new segments. `tell` is given now and then the packed bytes that are read and the games that are
/// added so far. What was written by a failed import is for the caller to take away.
///
/// # Errors
/// When the system refuses to write, a segment that is there cannot be read, or `stop` is set.
pub fn import(
    what: &Import,
    stop: &AtomicBool,
    mut tell: impl FnMut(u64, u64),
) -> Result<Report, CollectError> {
    let mut collector = Collector::new(what)?;
    let threads = what.threads.max(1);
    let read = Arc::new(AtomicU64::new(0));
    // no more steps than this are between the first thread and the last, so that no queue is ever full
    let window = 4 * threads;
    let (permit, permits) = sync_channel::<()>(window);
    let (cut, chunks) = sync_channel::<Numbered<Step>>(window);
    let (done, batches) = sync_channel::<Numbered<Done>>(window);
    let chunks = Mutex::new(chunks);
    std::thread::scope(|scope| {
        let counter = Arc::clone(&read);
        scope.spawn(move || cut_files(&what.files, &counter, &permit, &cut));
        for _ in 0..threads {
            let (chunks, done) = (&chunks, done.clone());
            scope.spawn(move || read_chunks(&what.files, chunks, &done));
        }
        drop(done);
        // both ends are dropped when this returns, and threads that wait for them are let go
        collector.collect(batches, permits, stop, |added| {
            tell(read.load(Ordering::Relaxed), added);
        })
    })?;
    collector.finish(stop)
}

/// The first thread. It ends early when nobody wants more.
fn cut_files(
    files: &[(u32, Option<PathBuf>)],
    counter: &Arc<AtomicU64>,
    permit: &SyncSender<()>,
    cut: &SyncSender<Numbered<Step>>,
) {
    let mut number = 0;
    for (file, (_, path)) in files.iter().enumerate() {
        let mut send = |step| {
            let sent = permit.send(()).is_ok() && cut.send((number, file, step)).is_ok();
            number += 1;
            sent
        };
        let opened: io::Result<Box<dyn Read + Send>> = match path {
            Some(path) => File::open(path).map(|file| Box::new(file) as Box<dyn Read + Send>),
            None => Ok(Box::new(io::stdin())),
        };
        let plain = opened.and_then(|input| open_archive(Counted(input, Arc::clone(counter))));
        let mut frames = match plain {
            Ok((_, plain)) => Frames::new(plain),
            Err(error) => {
                if !send(Step::End(Some(error.to_string()), 0)) {
                    return;
                }
                continue;
            }
        };
        loop {
            let step = match frames.next_chunk() {
                Ok(Some(chunk)) => Step::Chunk(chunk),
                Ok(None) => Step::End(None, frames.bytes_read()),
                Err(error) => Step::End(Some(error.to_string()), frames.bytes_read()),
            };
            let over = matches!(step, Step::End(..));
            if !send(step) {
                return;
            }
            if over {
                break;
            }
        }
    }
}

/// Each of the threads that read games.
fn read_chunks(
    files: &[(u32, Option<PathBuf>)],
    chunks: &Mutex<Receiver<Numbered<Step>>>,
    done: &SyncSender<Numbered<Done>>,
) {
    loop {
        let next = chunks.lock().map(|chunks| chunks.recv());
        let Ok(Ok((number, file, step))) = next else {
            return;
        };
        let step = match step {
            Step::Chunk(chunk) => {
                let mut batch = Batch::of(files[file].0, chunk.frames.len());
                for frame in &chunk.frames {
                    read_frame(&chunk, frame, &mut batch);
                }
                Done::Batch(Box::new(batch))
            }
            Step::End(failure, bytes) => Done::End(failure, bytes),
        };
        if done.send((number, file, step)).is_err() {
            return;
        }
    }
}

/// The last thread: takes batches in their order.
struct Collector<'a> {
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
    fn new(what: &'a Import) -> Result<Self, CollectError> {
        let seen: Result<Vec<Seen>, CollectError> =
            what.seen.iter().map(|path| Seen::open(path)).collect();
        Ok(Collector {
            what,
            seen: seen?,
            builder: None,
            report: Report {
                files: vec![FileReport::default(); what.files.len()],
                ..Report::default()
            },
            shared: read_shared(&what.shared)?,
            alone: alone(&what.files),
        })
    }

    #[allow(clippy::needless_pass_by_value)] // dropping both is how the other threads are told
    fn collect(
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

    fn finish(mut self, stop: &AtomicBool) -> Result<Report, CollectError> {
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

/// Whether all files are of one source.
fn alone(files: &[(u32, Option<PathBuf>)]) -> bool {
    files.iter().all(|(source, _)| *source == files[0].0)
}

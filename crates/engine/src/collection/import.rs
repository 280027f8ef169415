//! From files to segments: one thread unpacks and cuts, others read games, one builds. The order of the games, and so
//! every byte that is written, is that of the files, on any number of threads.

use std::fs::File;
use std::io::{self, Read};
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::sync::{Arc, Mutex};

use super::batch::Batch;
use super::build::Summary;
use super::collector::Collector;
use super::failure::CollectError;
use super::taken::{Blocks, Taken};
use crate::bulk::{Broken, Chunk, Frames, open_archive, read_frame};

/// What is to be read, and where it goes.
#[derive(Debug, Clone, Default)]
pub struct Import {
    /// Number of the source, and the file; standard input where there is none.
    pub files: Vec<(u32, Option<PathBuf>)>,
    /// Segments of other collections that are taken over, after the files.
    pub taken: Vec<Taken>,
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
    /// One for each file, and then for each segment that is taken over.
    pub files: Vec<FileReport>,
    /// New segments: folder and content.
    pub segments: Vec<(PathBuf, Summary)>,
    /// Of each source, a file of hashes of games that it holds and that stand under another source, and how many.
    pub shared: Vec<(u32, PathBuf, usize)>,
}

/// From the first thread. A file ends: why, if it ends too early, and its plain bytes.
enum Step {
    Chunk(Chunk),
    Blocks(Blocks),
    End(Option<String>, u64),
    Failed(CollectError),
}

/// From those that read games.
pub enum Done {
    Batch(Box<Batch>),
    End(Option<String>, u64),
    Failed(CollectError),
}

/// A step on its way: its place in the order, its file.
pub type Numbered<T> = (u64, usize, T);

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
        scope.spawn(move || cut_all(what, &counter, &permit, &cut));
        for _ in 0..threads {
            let (chunks, done) = (&chunks, done.clone());
            scope.spawn(move || read_chunks(what, chunks, &done));
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
fn cut_all(
    what: &Import,
    counter: &Arc<AtomicU64>,
    permit: &SyncSender<()>,
    cut: &SyncSender<Numbered<Step>>,
) {
    let mut number = 0;
    for (file, (_, path)) in what.files.iter().enumerate() {
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
    for (place, taken) in what.taken.iter().enumerate() {
        let steps: Box<dyn Iterator<Item = Step>> = match taken.parts() {
            Ok(parts) => Box::new(parts.map(Step::Blocks)),
            Err(error) => Box::new(std::iter::once(Step::Failed(error))),
        };
        for step in steps {
            let sent = permit.send(()).is_ok()
                && cut.send((number, what.files.len() + place, step)).is_ok();
            if !sent {
                return;
            }
            number += 1;
        }
    }
}

/// Each of the threads that read games.
fn read_chunks(
    what: &Import,
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
                let mut batch = Batch::of(what.files[file].0, chunk.frames.len());
                for frame in &chunk.frames {
                    read_frame(&chunk, frame, &mut batch);
                }
                Done::Batch(Box::new(batch))
            }
            Step::Blocks(blocks) => match what.taken[file - what.files.len()].read(blocks) {
                Ok(batch) => Done::Batch(Box::new(batch)),
                Err(error) => Done::Failed(error),
            },
            Step::End(failure, bytes) => Done::End(failure, bytes),
            Step::Failed(error) => Done::Failed(error),
        };
        if done.send((number, file, step)).is_err() {
            return;
        }
    }
}

//! The folder of a run: segments that are whole or not there, and `about.txt`, which says how they were gathered.
//!
//! A file is written under another name, put on the disk and then renamed, so that a run that is killed anywhere leaves
//! nothing half under a name that is read.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File, TryLockError};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::failure::SampleError;
use super::record::RECORD_BYTES;

/// Says how the positions were gathered, and how many there are.
const ABOUT: &str = "about.txt";
/// Held by the run that writes.
const LOCK: &str = "lock";
/// What a file is called while it is written.
const UNFINISHED: &str = "part";

/// A folder that this process alone writes into.
#[derive(Debug)]
pub struct Folder {
    path: PathBuf,
    settings: String,
    /// Positions of each segment that is there.
    segments: BTreeMap<u64, u64>,
    games_a_segment: u64,
    _lock: File,
}

impl Folder {
    /// Makes the folder, or goes on with one whose `about.txt` begins with the same settings, lines of `name: value`.
    pub fn open(path: &Path, settings: &str, games_a_segment: u64) -> Result<Folder, SampleError> {
        fs::create_dir_all(path).map_err(|error| disk(path, &error))?;
        let lock = lock(path)?;
        let about = path.join(ABOUT);
        match fs::read_to_string(&about) {
            Ok(text) => compare(path, &text, settings)?,
            Err(error) if error.kind() == io::ErrorKind::NotFound => {
                if entries(path)?.iter().any(|name| !is_ours(name)) {
                    return Err(SampleError::Foreign(path.to_owned()));
                }
            }
            Err(error) => return Err(disk(&about, &error)),
        }
        // What a run that was killed was writing; nobody else writes now.
        for name in entries(path)?.iter().filter(|name| is_unfinished(name)) {
            let file = path.join(name);
            fs::remove_file(&file).map_err(|error| disk(&file, &error))?;
        }
        let mut segments = BTreeMap::new();
        for (number, file) in segments_of(path)? {
            let bytes = fs::metadata(&file).map_err(|error| disk(&file, &error))?;
            segments.insert(number, bytes.len() / RECORD_BYTES as u64);
        }
        let folder = Folder {
            path: path.to_owned(),
            settings: settings.to_owned(),
            segments,
            games_a_segment,
            _lock: lock,
        };
        folder.write_about()?;
        Ok(folder)
    }

    /// The numbers of the segments that are there.
    pub fn numbers(&self) -> BTreeSet<u64> {
        self.segments.keys().copied().collect()
    }

    /// Segments that are there.
    pub fn segments(&self) -> u64 {
        self.segments.len() as u64
    }

    /// Games in them.
    pub fn games(&self) -> u64 {
        self.segments() * self.games_a_segment
    }

    /// Positions in them.
    pub fn positions(&self) -> u64 {
        self.segments.values().sum()
    }

    /// Writes a segment.
    pub fn add(&mut self, segment: u64, bytes: &[u8]) -> Result<(), SampleError> {
        write_whole(&self.path, &segment_name(segment), bytes)?;
        let positions = bytes.len() / RECORD_BYTES;
        self.segments.insert(segment, positions as u64);
        self.write_about()
    }

    fn write_about(&self) -> Result<(), SampleError> {
        let text = format!(
            "{}\nsegments: {}\ngames: {}\npositions: {}\n",
            self.settings,
            self.segments(),
            self.games(),
            self.positions()
        );
        write_whole(&self.path, ABOUT, text.as_bytes())
    }
}

/// The segments of a folder with their numbers, in order. No lock is needed: a segment never changes.
pub fn segments_of(path: &Path) -> Result<Vec<(u64, PathBuf)>, SampleError> {
    let mut found: Vec<(u64, PathBuf)> = entries(path)?
        .iter()
        .filter_map(|name| {
            let digits = name.strip_prefix("segment-")?.strip_suffix(".bin")?;
            let number = digits.parse().ok()?;
            (*name == segment_name(number)).then(|| (number, path.join(name)))
        })
        .collect();
    found.sort();
    Ok(found)
}

fn segment_name(number: u64) -> String {
    format!("segment-{number:06}.bin")
}

fn is_unfinished(name: &str) -> bool {
    Path::new(name)
        .extension()
        .is_some_and(|end| end == UNFINISHED)
}

fn is_ours(name: &str) -> bool {
    name == LOCK || is_unfinished(name)
}

fn entries(path: &Path) -> Result<Vec<String>, SampleError> {
    let read = || -> io::Result<Vec<String>> {
        fs::read_dir(path)?
            .map(|entry| Ok(entry?.file_name().to_string_lossy().into_owned()))
            .collect()
    };
    read().map_err(|error| disk(path, &error))
}

fn lock(path: &Path) -> Result<File, SampleError> {
    let file = path.join(LOCK);
    let lock = File::create(&file).map_err(|error| disk(&file, &error))?;
    match lock.try_lock() {
        Ok(()) => Ok(lock),
        Err(TryLockError::WouldBlock) => Err(SampleError::Busy(path.to_owned())),
        Err(TryLockError::Error(error)) => Err(disk(&file, &error)),
    }
}

/// Refuses a folder of other settings; what follows an empty line are counts.
fn compare(path: &Path, about: &str, settings: &str) -> Result<(), SampleError> {
    let there: Vec<&str> = about.lines().take_while(|line| !line.is_empty()).collect();
    let asked: Vec<&str> = settings.lines().collect();
    let lines = there.len().max(asked.len());
    let line = |lines: &[&str], i: usize| lines.get(i).copied().unwrap_or("nothing").to_owned();
    match (0..lines).find(|i| there.get(*i) != asked.get(*i)) {
        None => Ok(()),
        Some(i) => Err(SampleError::Otherwise(
            path.to_owned(),
            line(&there, i),
            line(&asked, i),
        )),
    }
}

fn write_whole(folder: &Path, name: &str, bytes: &[u8]) -> Result<(), SampleError> {
    let part = folder.join(format!("{name}.{UNFINISHED}"));
    let write = || -> io::Result<()> {
        let mut file = File::create(&part)?;
        file.write_all(bytes)?;
        file.sync_all()?;
        fs::rename(&part, folder.join(name))
    };
    write().map_err(|error| disk(&folder.join(name), &error))
}

fn disk(path: &Path, error: &io::Error) -> SampleError {
    SampleError::Disk(path.to_owned(), error.to_string())
}

#[cfg(test)]
mod tests {
    use std::process;

    use super::*;

    /// A folder of its own for each test, gone when it ends.
    struct Desk(PathBuf);

    impl Desk {
        fn new(name: &str) -> Desk {
            let path = std::env::temp_dir().join(format!("samples-{name}-{}", process::id()));
            let _ = fs::remove_dir_all(&path);
            Desk(path)
        }
    }

    impl Drop for Desk {
        fn drop(&mut self) {
            let _ = fs::remove_dir_all(&self.0);
        }
    }

    const SETTINGS: &str = "seed: 1\nnodes: 5\n";

    fn message(result: Result<Folder, SampleError>) -> String {
        result.unwrap_err().to_string()
    }

    #[test]
    fn what_was_written_is_there_the_next_time() {
        let desk = Desk::new("again");
        let mut folder = Folder::open(&desk.0, SETTINGS, 7).unwrap();
        folder.add(3, &[0; 64]).unwrap();
        folder.add(0, &[0; 32]).unwrap();
        drop(folder);
        let folder = Folder::open(&desk.0, SETTINGS, 7).unwrap();
        assert_eq!(folder.numbers(), BTreeSet::from([0, 3]));
        assert_eq!((folder.games(), folder.positions()), (14, 3));
        let about = fs::read_to_string(desk.0.join(ABOUT)).unwrap();
        assert_eq!(
            about,
            format!("{SETTINGS}\nsegments: 2\ngames: 14\npositions: 3\n")
        );
    }

    #[test]
    fn what_was_left_half_written_is_not_read() {
        let desk = Desk::new("half");
        drop(Folder::open(&desk.0, SETTINGS, 7).unwrap());
        fs::write(desk.0.join("segment-000004.bin.part"), [1; 40]).unwrap();
        let folder = Folder::open(&desk.0, SETTINGS, 7).unwrap();
        assert!(folder.numbers().is_empty());
        assert!(!desk.0.join("segment-000004.bin.part").exists());
    }

    #[test]
    fn a_folder_of_other_settings_is_refused() {
        let desk = Desk::new("other");
        drop(Folder::open(&desk.0, SETTINGS, 7).unwrap());
        let found = message(Folder::open(&desk.0, "seed: 1\nnodes: 6\n", 7));
        assert!(
            found.contains("it says 'nodes: 5', asked for is 'nodes: 6'"),
            "{found}"
        );
        let found = message(Folder::open(&desk.0, "seed: 1\n", 7));
        assert!(
            found.contains("it says 'nodes: 5', asked for is 'nothing'"),
            "{found}"
        );
    }

    #[test]
    fn a_folder_of_something_else_is_refused_and_left_alone() {
        let desk = Desk::new("else");
        fs::create_dir_all(&desk.0).unwrap();
        fs::write(desk.0.join("letter.txt"), "Dear club").unwrap();
        let found = message(Folder::open(&desk.0, SETTINGS, 7));
        assert!(
            found.contains("is not empty and has no about.txt"),
            "{found}"
        );
        assert!(!desk.0.join(ABOUT).exists());
    }

    #[test]
    fn two_runs_cannot_write_into_one_folder() {
        let desk = Desk::new("busy");
        let first = Folder::open(&desk.0, SETTINGS, 7).unwrap();
        let found = message(Folder::open(&desk.0, SETTINGS, 7));
        assert!(found.starts_with("another run writes into"), "{found}");
        drop(first);
        assert!(Folder::open(&desk.0, SETTINGS, 7).is_ok());
    }

    #[test]
    fn a_folder_that_cannot_be_made_is_named() {
        let desk = Desk::new("file");
        fs::write(&desk.0, "a file").unwrap();
        let found = message(Folder::open(&desk.0.join("within"), SETTINGS, 7));
        let _ = fs::remove_file(&desk.0);
        assert!(
            found.starts_with(&desk.0.join("within").display().to_string()),
            "{found}"
        );
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn a_full_disk_is_said_and_leaves_no_segment() {
        let desk = Desk::new("full");
        let mut folder = Folder::open(&desk.0, SETTINGS, 7).unwrap();
        // Whatever is written to this device is answered as by a full disk (full(4), Linux manual pages).
        let part = desk.0.join("segment-000000.bin.part");
        std::os::unix::fs::symlink("/dev/full", part).unwrap();
        let found = folder.add(0, &[0; 64]).unwrap_err().to_string();
        assert!(
            found.contains("segment-000000.bin: No space left"),
            "{found}"
        );
        assert!(!desk.0.join("segment-000000.bin").exists());
        assert!(folder.numbers().is_empty());
    }
}

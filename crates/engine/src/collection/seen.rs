//! Which games are there already, by their hashes: sorted files, of which a block is read for a question.

use std::collections::HashSet;
use std::fs::File;
use std::hash::{BuildHasherDefault, Hasher};
use std::io::{BufWriter, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use super::failure::CollectError;

/// Hashes of a block.
const BLOCK: usize = 512;

/// Spreads a number over all bits by one multiplication: keys here are hashes, or come from our own rows.
#[derive(Default, Clone, Copy, Debug)]
pub struct Mixed(u64);

impl Hasher for Mixed {
    fn finish(&self) -> u64 {
        self.0
    }
    fn write(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.write_u64(self.0.rotate_left(8) ^ u64::from(*byte));
        }
    }
    fn write_u64(&mut self, number: u64) {
        let wide = u128::from(number) * 0x9E37_79B9_7F4A_7C15;
        self.0 = (wide >> 64) as u64 ^ wide as u64;
    }
    fn write_u16(&mut self, number: u16) {
        self.write_u64(u64::from(number));
    }
}

/// A set of hashes in memory.
pub type Hashes = HashSet<u64, BuildHasherDefault<Mixed>>;

/// Writes hashes as a file that [`Seen`] reads.
///
/// # Errors
/// When the system refuses.
pub fn write_hashes(path: &Path, hashes: impl Iterator<Item = u64>) -> Result<(), CollectError> {
    let failed = CollectError::at(path);
    let mut sorted: Vec<u64> = hashes.collect();
    sorted.sort_unstable();
    let mut file = BufWriter::with_capacity(1 << 18, File::create(path).map_err(&failed)?);
    for hash in sorted {
        file.write_all(&hash.to_le_bytes()).map_err(&failed)?;
    }
    file.flush().map_err(&failed)?;
    file.get_ref().sync_all().map_err(&failed)
}

fn numbers(bytes: &[u8]) -> impl Iterator<Item = u64> + '_ {
    bytes.chunks_exact(8).map(|chunk| {
        chunk
            .iter()
            .rev()
            .fold(0, |number, byte| number << 8 | u64::from(*byte))
    })
}

/// All of a file, in memory.
///
/// # Errors
/// When it cannot be read.
pub fn read_hashes(path: &Path) -> Result<Hashes, CollectError> {
    let bytes = std::fs::read(path).map_err(CollectError::at(path))?;
    Ok(numbers(&bytes).collect())
}

/// A sorted file of hashes.
#[derive(Debug)]
pub struct Seen {
    path: PathBuf,
    file: File,
    /// The first hash of each block.
    firsts: Vec<u64>,
    /// The block that was read last, and its number.
    block: (usize, Vec<u64>),
}

impl Seen {
    /// Opens a file that [`write_hashes`] wrote.
    ///
    /// # Errors
    /// When it cannot be read.
    pub fn open(path: &Path) -> Result<Seen, CollectError> {
        let failed = CollectError::at(path);
        let mut file = File::open(path).map_err(&failed)?;
        let mut firsts = Vec::new();
        let mut bytes = vec![0; 8 * BLOCK];
        loop {
            let mut filled = 0;
            while filled < bytes.len() {
                match file.read(&mut bytes[filled..]).map_err(&failed)? {
                    0 => break,
                    count => filled += count,
                }
            }
            match numbers(&bytes[..filled]).next() {
                Some(first) => firsts.push(first),
                None => break,
            }
        }
        Ok(Seen {
            path: path.to_owned(),
            file,
            firsts,
            block: (usize::MAX, Vec::new()),
        })
    }

    /// Whether a hash is there.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn has(&mut self, hash: u64) -> Result<bool, CollectError> {
        let after = self.firsts.partition_point(|first| *first <= hash);
        let Some(block) = after.checked_sub(1) else {
            return Ok(false);
        };
        if self.block.0 != block {
            let failed = CollectError::at(&self.path);
            let start = SeekFrom::Start(8 * (block * BLOCK) as u64);
            self.file.seek(start).map_err(&failed)?;
            let mut bytes = Vec::with_capacity(8 * BLOCK);
            let mut part = Read::by_ref(&mut self.file).take(8 * BLOCK as u64);
            part.read_to_end(&mut bytes).map_err(&failed)?;
            self.block = (block, numbers(&bytes).collect());
        }
        Ok(self.block.1.binary_search(&hash).is_ok())
    }
}

//! Which games are there already, by their hashes: sorted files, of which a block is read for a question that a filter
//! in memory leaves open.

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
    let (whole, _) = bytes.as_chunks::<8>();
    whole.iter().map(|number| u64::from_le_bytes(*number))
}

/// All of a file, in memory.
///
/// # Errors
/// When it cannot be read.
pub fn read_hashes(path: &Path) -> Result<Hashes, CollectError> {
    let bytes = std::fs::read(path).map_err(CollectError::at(path))?;
    Ok(numbers(&bytes).collect())
}

/// Slots of a [`Filter`] for each hash: so many new games of a hundred are looked for in vain, 100 / (1 + slots) about.
const SLOTS: u64 = 8;

/// Which hashes cannot be among some: a bit for each slot into which one of them falls. A byte for each hash.
#[derive(Debug)]
struct Filter {
    slots: u64,
    bits: Vec<u64>,
}

impl Filter {
    fn new(hashes: u64) -> Filter {
        let slots = (hashes * SLOTS).max(64);
        Filter {
            slots,
            bits: vec![0; (slots / 64 + 1) as usize],
        }
    }

    fn slot(&self, hash: u64) -> (usize, u64) {
        let slot = ((u128::from(hash) * u128::from(self.slots)) >> 64) as u64;
        ((slot / 64) as usize, 1 << (slot % 64))
    }

    fn add(&mut self, hash: u64) {
        let (word, bit) = self.slot(hash);
        self.bits[word] |= bit;
    }

    fn may_hold(&self, hash: u64) -> bool {
        let (word, bit) = self.slot(hash);
        self.bits[word] & bit != 0
    }
}

/// A sorted file of hashes.
#[derive(Debug)]
pub struct Seen {
    path: PathBuf,
    file: File,
    /// The first hash of each block.
    firsts: Vec<u64>,
    filter: Filter,
    /// The block that was read last, and its number.
    block: (usize, Vec<u8>),
}

impl Seen {
    /// Opens a file that [`write_hashes`] wrote.
    ///
    /// # Errors
    /// When it cannot be read.
    pub fn open(path: &Path) -> Result<Seen, CollectError> {
        let failed = CollectError::at(path);
        let mut file = File::open(path).map_err(&failed)?;
        let length = file.metadata().map_err(&failed)?.len();
        if length % 8 != 0 {
            return Err(CollectError::Damaged(path.to_owned(), "it is damaged"));
        }
        let mut filter = Filter::new(length / 8);
        let mut firsts = Vec::new();
        let mut last = None;
        let mut bytes = vec![0; 8 * BLOCK];
        loop {
            let mut filled = 0;
            while filled < bytes.len() {
                match file.read(&mut bytes[filled..]).map_err(&failed)? {
                    0 => break,
                    count => filled += count,
                }
            }
            if filled == 0 {
                break;
            }
            firsts.extend(numbers(&bytes[..filled]).next());
            for hash in numbers(&bytes[..filled]) {
                if last.is_some_and(|last| last >= hash) {
                    return Err(CollectError::Damaged(path.to_owned(), "it is damaged"));
                }
                last = Some(hash);
                filter.add(hash);
            }
        }
        Ok(Seen {
            path: path.to_owned(),
            file,
            firsts,
            filter,
            block: (usize::MAX, Vec::new()),
        })
    }

    /// Whether a hash is there.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn has(&mut self, hash: u64) -> Result<bool, CollectError> {
        if !self.filter.may_hold(hash) {
            return Ok(false);
        }
        let after = self.firsts.partition_point(|first| *first <= hash);
        let Some(block) = after.checked_sub(1) else {
            return Ok(false);
        };
        if self.block.0 != block {
            let failed = CollectError::at(&self.path);
            let start = SeekFrom::Start(8 * (block * BLOCK) as u64);
            self.file.seek(start).map_err(&failed)?;
            self.block.0 = usize::MAX;
            self.block.1.clear();
            let mut part = Read::by_ref(&mut self.file).take(8 * BLOCK as u64);
            part.read_to_end(&mut self.block.1).map_err(&failed)?;
            self.block.0 = block;
        }
        let (whole, _) = self.block.1.as_chunks::<8>();
        Ok(whole
            .binary_search_by_key(&hash, |number| u64::from_le_bytes(*number))
            .is_ok())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::random::Random;

    #[test]
    fn a_file_of_hashes_knows_its_own_and_no_others() {
        let folder = std::env::temp_dir().join(format!("lineproof-seen-{}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        let path = folder.join("seen.bin");
        for count in [0, 1, 511, 512, 513, 5000] {
            let mut random = Random::new(count, 9);
            let own: Hashes = (0..count).map(|_| random.next()).collect();
            write_hashes(&path, own.iter().copied()).unwrap();
            let mut seen = Seen::open(&path).unwrap();
            let mut in_vain = 0;
            for hash in &own {
                assert!(seen.has(*hash).unwrap());
                for near in [hash.wrapping_sub(1), hash.wrapping_add(1)] {
                    assert_eq!(seen.has(near).unwrap(), own.contains(&near));
                }
            }
            for _ in 0..5000 {
                let hash = random.next();
                assert_eq!(seen.has(hash).unwrap(), own.contains(&hash));
                in_vain += usize::from(seen.filter.may_hold(hash));
            }
            assert!(in_vain < 5000 / 5, "{in_vain}");
            for hash in [0, u64::MAX] {
                assert_eq!(seen.has(hash).unwrap(), own.contains(&hash));
            }
        }
        for damaged in [&[1; 9][..], &[1; 16], &[0; 4096]] {
            std::fs::write(&path, damaged).unwrap();
            let told = Seen::open(&path).map(drop);
            assert!(matches!(told, Err(CollectError::Damaged(..))));
        }
        std::fs::remove_dir_all(&folder).unwrap();
    }
}

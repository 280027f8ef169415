//! The transposition table: what the search found out about positions it has met
//! (Greenblatt, Eastlake and Crocker 1967; Breuker, Memory versus Search in Games, 1998).
//!
//! Threads share it without locks: an entry is two words, the second of which says what is known and the first
//! the key under it, so that an entry torn by two writers fits no key (Hyatt and Mann, A Lock-less Transposition
//! Table Implementation for Parallel Search, 2002).

use std::sync::atomic::{AtomicU64, Ordering};

use bytemuck::allocation::zeroed_slice_box;

use super::packed::Packed;
use super::score::{MATE_BOUND, Value};

/// What a stored value says of the true one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
#[repr(u8)]
pub enum Bound {
    /// No value.
    #[default]
    None,
    /// The true value is at most this.
    Upper,
    /// The true value is at least this.
    Lower,
    /// The true value.
    Exact,
}

/// What is known of a position, packed in 64 bits: move 16, value 16, static value 16, depth 8, bound 2, age 6.
#[derive(Debug, Clone, Copy)]
pub struct Entry {
    pub mv: Packed,
    value: i16,
    pub eval: i16,
    pub depth: i8,
    pub bound: Bound,
    age: u8,
}

/// Ages are counted modulo this.
const AGES: u8 = 64;

impl Entry {
    fn pack(self) -> u64 {
        u64::from(self.mv.bits())
            | u64::from(self.value as u16) << 16
            | u64::from(self.eval as u16) << 32
            | u64::from(self.depth as u8) << 48
            | (self.bound as u64) << 56
            | u64::from(self.age) << 58
    }

    fn unpack(word: u64) -> Entry {
        Entry {
            mv: Packed::from_bits(word as u16),
            value: (word >> 16) as i16,
            eval: (word >> 32) as i16,
            depth: (word >> 48) as i8,
            bound: match word >> 56 & 3 {
                1 => Bound::Upper,
                2 => Bound::Lower,
                3 => Bound::Exact,
                _ => Bound::None,
            },
            age: (word >> 58) as u8,
        }
    }

    /// The value, with mates reckoned from a node `ply` plies below the root.
    pub fn value(&self, ply: usize) -> Value {
        let value = Value::from(self.value);
        if value >= MATE_BOUND {
            value - ply as Value
        } else if value <= -MATE_BOUND {
            value + ply as Value
        } else {
            value
        }
    }
}

/// What is stored of a node.
#[derive(Debug, Clone, Copy)]
pub struct Finding {
    pub mv: Packed,
    pub value: Value,
    pub eval: Value,
    pub depth: i32,
    pub bound: Bound,
}

/// Entries that share a cache line of 64 bytes.
const WAYS: usize = 4;
const WORDS: usize = 2 * WAYS;
/// Lines that tell how full the table is.
const SAMPLE: usize = 1024;

/// A table of fixed size; the count of cache lines is a power of two.
pub struct Table {
    words: Box<[AtomicU64]>,
    /// The first word on the boundary of a cache line.
    first: usize,
    mask: usize,
    age: u8,
}

impl Table {
    /// An empty table of at most `bytes` bytes, and at least one cache line.
    pub fn new(bytes: usize) -> Table {
        let count = Table::lines(bytes);
        // Fresh memory of the operating system is zero already, and taken only when it is used.
        let words: Box<[AtomicU64]> = zeroed_slice_box((count + 1) * WORDS);
        let past = words.as_ptr() as usize % 64;
        Table {
            first: (64 - past) % 64 / 8,
            words,
            mask: count - 1,
            age: 0,
        }
    }

    fn lines(bytes: usize) -> usize {
        let wanted = (bytes / 64).max(1);
        if wanted.is_power_of_two() {
            wanted
        } else {
            wanted.next_power_of_two() / 2
        }
    }

    /// Whether a table made for so many bytes would be as large as this one.
    pub fn fits(&self, bytes: usize) -> bool {
        Table::lines(bytes) == self.mask + 1
    }

    /// Forgets everything.
    pub fn clear(&mut self) {
        for word in &mut self.words {
            *word.get_mut() = 0;
        }
        self.age = 0;
    }

    /// A new search begins: what earlier ones stored gives way first.
    pub fn grow_older(&mut self) {
        self.age = (self.age + 1) % AGES;
    }

    fn line(&self, key: u64) -> &[AtomicU64] {
        let start = self.first + (key as usize & self.mask) * WORDS;
        &self.words[start..start + WORDS]
    }

    /// Asks the processor to fetch a position's cache line while the search does something else.
    #[allow(unsafe_code)]
    pub fn prefetch(&self, key: u64) {
        #[cfg(target_arch = "x86_64")]
        {
            use std::arch::x86_64::{_MM_HINT_T0, _mm_prefetch};
            // SAFETY: a prefetch is a hint: it reads nothing and cannot fault; the address lies inside the table.
            unsafe { _mm_prefetch::<_MM_HINT_T0>(self.line(key).as_ptr().cast()) };
        }
        #[cfg(not(target_arch = "x86_64"))]
        let _ = key;
    }

    pub fn look(&self, key: u64) -> Option<Entry> {
        self.line(key).chunks_exact(2).find_map(|pair| {
            let word = pair[1].load(Ordering::Relaxed);
            (word != 0 && pair[0].load(Ordering::Relaxed) ^ word == key)
                .then(|| Entry::unpack(word))
        })
    }

    /// Stores a node `ply` plies below the root. The entry of the same position gives way, else the one that is
    /// worth least: of little depth, or of an earlier search.
    pub fn store(&self, key: u64, ply: usize, finding: Finding) {
        let line = self.line(key);
        let mut chosen = 0;
        let mut least = i32::MAX;
        let mut same = None;
        for (index, pair) in line.chunks_exact(2).enumerate() {
            let word = pair[1].load(Ordering::Relaxed);
            if word == 0 {
                chosen = index;
                break;
            }
            let kept = Entry::unpack(word);
            if pair[0].load(Ordering::Relaxed) ^ word == key {
                chosen = index;
                same = Some(kept);
                break;
            }
            // Those of earlier searches give way before all of this one.
            let rank = i32::from(kept.depth) + if kept.age == self.age { 1000 } else { 0 };
            if rank < least {
                least = rank;
                chosen = index;
            }
        }
        let mut mv = finding.mv;
        if let Some(kept) = same {
            let sure = kept.bound == Bound::Exact && finding.bound != Bound::Exact;
            if kept.age == self.age && sure && i32::from(kept.depth) > finding.depth {
                return;
            }
            if mv.is_none() {
                mv = kept.mv;
            }
        }
        let value = if finding.value >= MATE_BOUND {
            finding.value + ply as Value
        } else if finding.value <= -MATE_BOUND {
            finding.value - ply as Value
        } else {
            finding.value
        };
        let word = Entry {
            mv,
            value: value as i16,
            eval: finding.eval as i16,
            depth: finding.depth.clamp(-1, 120) as i8,
            bound: finding.bound,
            age: self.age,
        }
        .pack();
        line[2 * chosen].store(key ^ word, Ordering::Relaxed);
        line[2 * chosen + 1].store(word, Ordering::Relaxed);
    }

    /// How full it is of entries of this search, in thousandths, by its first `SAMPLE` lines.
    pub fn full(&self) -> u32 {
        let sampled = (self.mask + 1).min(SAMPLE) * WAYS;
        let words = &self.words[self.first..self.first + 2 * sampled];
        let used = words
            .chunks_exact(2)
            .filter(|pair| {
                let word = pair[1].load(Ordering::Relaxed);
                word != 0 && Entry::unpack(word).age == self.age
            })
            .count();
        (used * 1000 / sampled) as u32
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::search::score::mated_in;

    fn finding(value: Value, depth: i32) -> Finding {
        Finding {
            mv: Packed::NONE,
            value,
            eval: -17,
            depth,
            bound: Bound::Exact,
        }
    }

    #[test]
    fn what_is_stored_is_found_again() {
        let table = Table::new(1 << 12);
        table.store(99, 0, finding(-250, 7));
        let found = table.look(99).unwrap();
        assert_eq!(
            (found.value(0), found.eval, found.depth, found.bound),
            (-250, -17, 7, Bound::Exact)
        );
    }

    #[test]
    fn a_mate_is_reckoned_from_where_it_is_read() {
        let table = Table::new(1 << 12);
        table.store(7, 3, finding(-mated_in(5), 4));
        assert_eq!(table.look(7).unwrap().value(1), -mated_in(3));
    }

    #[test]
    fn what_was_never_stored_is_not_found() {
        let table = Table::new(1 << 12);
        assert!(table.look(0).is_none());
    }

    #[test]
    fn lines_lie_on_the_boundaries_of_cache_lines() {
        for bytes in [64, 1 << 12, 1 << 20] {
            let table = Table::new(bytes);
            assert_eq!(table.line(0).as_ptr() as usize % 64, 0);
            assert_eq!(table.line(u64::MAX).len(), WORDS);
        }
    }

    #[test]
    fn an_entry_torn_by_two_writers_is_not_found() {
        let table = Table::new(64);
        table.store(5, 0, finding(10, 3));
        let word = table.line(5)[1].load(Ordering::Relaxed);
        table.line(5)[1].store(word ^ 1 << 20, Ordering::Relaxed);
        assert!(table.look(5).is_none());
    }

    #[test]
    fn what_an_earlier_search_stored_gives_way_first() {
        let mut table = Table::new(64);
        for key in 1..=3 {
            table.store(key, 0, finding(0, 20));
        }
        table.grow_older();
        table.grow_older();
        table.store(4, 0, finding(0, 9));
        table.store(5, 0, finding(0, 1));
        assert!(table.look(4).is_some() && table.look(5).is_some());
    }
}

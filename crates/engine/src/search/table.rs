//! The transposition table: what the search found out about positions it has met
//! (Greenblatt, Eastlake and Crocker 1967; Breuker, Memory versus Search in Games, 1998).

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

/// One entry, 16 bytes.
#[derive(Debug, Clone, Copy, Default)]
pub struct Entry {
    key: u64,
    pub mv: Packed,
    value: i16,
    pub eval: i16,
    pub depth: i8,
    pub bound: Bound,
}

impl Entry {
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

/// Entries that share a place in memory.
const WAYS: usize = 4;

#[derive(Debug, Clone, Copy, Default)]
#[repr(align(64))]
struct Bucket {
    entries: [Entry; WAYS],
}

/// A table of fixed size; the count of buckets is a power of two.
pub struct Table {
    buckets: Vec<Bucket>,
}

impl Table {
    /// An empty table of at most `bytes` bytes, and at least one bucket.
    pub fn new(bytes: usize) -> Table {
        let wanted = (bytes / size_of::<Bucket>()).max(1);
        let count = if wanted.is_power_of_two() {
            wanted
        } else {
            wanted.next_power_of_two() / 2
        };
        Table {
            buckets: vec![Bucket::default(); count],
        }
    }

    fn place(&self, key: u64) -> usize {
        key as usize & (self.buckets.len() - 1)
    }

    pub fn look(&self, key: u64) -> Option<Entry> {
        self.buckets[self.place(key)]
            .entries
            .iter()
            .find(|entry| entry.key == key && entry.bound != Bound::None)
            .copied()
    }

    /// Stores a node. The entry of the same position gives way, else the one of least depth.
    #[allow(clippy::too_many_arguments)] // one caller for each field of an entry
    pub fn store(
        &mut self,
        key: u64,
        ply: usize,
        mv: Packed,
        value: Value,
        eval: Value,
        depth: i32,
        bound: Bound,
    ) {
        let place = self.place(key);
        let entries = &mut self.buckets[place].entries;
        let mut chosen = 0;
        let mut least = i32::MAX;
        for (index, entry) in entries.iter().enumerate() {
            if entry.key == key || entry.bound == Bound::None {
                chosen = index;
                break;
            }
            let rank = i32::from(entry.depth);
            if rank < least {
                least = rank;
                chosen = index;
            }
        }
        let kept = &mut entries[chosen];
        let same = kept.key == key && kept.bound != Bound::None;
        if same && bound != Bound::Exact && depth + 3 < i32::from(kept.depth) {
            return;
        }
        let value = if value >= MATE_BOUND {
            value + ply as Value
        } else if value <= -MATE_BOUND {
            value - ply as Value
        } else {
            value
        };
        *kept = Entry {
            key,
            mv: if same && mv.is_none() { kept.mv } else { mv },
            value: value as i16,
            eval: eval as i16,
            depth: depth.clamp(-1, 120) as i8,
            bound,
        };
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::search::score::mated_in;

    #[test]
    fn an_entry_fills_a_quarter_of_a_cache_line() {
        assert_eq!((size_of::<Entry>(), size_of::<Bucket>()), (16, 64));
    }

    #[test]
    fn a_mate_is_reckoned_from_where_it_is_read() {
        let mut table = Table::new(1 << 12);
        table.store(7, 3, Packed::NONE, -mated_in(5), 0, 4, Bound::Exact);
        assert_eq!(table.look(7).unwrap().value(1), -mated_in(3));
    }

    #[test]
    fn what_was_never_stored_is_not_found() {
        let table = Table::new(1 << 12);
        assert!(table.look(0).is_none());
    }
}

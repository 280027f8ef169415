//! Numbers that begin at a cache line, so that no vector of them lies across two.

use std::fmt;
use std::ops::{Deref, DerefMut};

/// Bytes of a cache line.
const LINE: usize = 64;

/// A slice whose first number stands at the beginning of a cache line.
pub struct Aligned {
    room: Vec<i16>,
    first: usize,
    len: usize,
}

impl Aligned {
    /// So many zeros.
    pub fn zeros(len: usize) -> Aligned {
        let room = vec![0; len + LINE / size_of::<i16>()];
        // Where it cannot be told, nothing but speed is lost.
        let first = room.as_ptr().align_offset(LINE).min(room.len() - len);
        Aligned { room, first, len }
    }

    /// The numbers in front of more zeros.
    pub fn grown(&self, len: usize) -> Aligned {
        let mut grown = Aligned::zeros(len.max(self.len));
        grown[..self.len].copy_from_slice(self);
        grown
    }
}

impl Deref for Aligned {
    type Target = [i16];

    fn deref(&self) -> &[i16] {
        &self.room[self.first..self.first + self.len]
    }
}

impl DerefMut for Aligned {
    fn deref_mut(&mut self) -> &mut [i16] {
        &mut self.room[self.first..self.first + self.len]
    }
}

impl Clone for Aligned {
    fn clone(&self) -> Aligned {
        self.grown(self.len)
    }
}

impl PartialEq for Aligned {
    fn eq(&self, other: &Aligned) -> bool {
        **self == **other
    }
}

impl Eq for Aligned {}

impl fmt::Debug for Aligned {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} numbers", self.len)
    }
}

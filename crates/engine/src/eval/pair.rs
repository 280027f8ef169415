//! A value for the middlegame and one for the endgame, in centipawns.

use std::fmt;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// Both values in one number, the endgame in the upper half, so that one addition adds both.
#[derive(Clone, Copy, Default, PartialEq, Eq)]
pub struct Pair(i64);

/// Shorthand for a [`Pair`], middlegame first.
pub const fn pair(mg: i32, eg: i32) -> Pair {
    Pair(((eg as i64) << 32) + mg as i64)
}

impl Pair {
    /// The value for the middlegame.
    pub const fn mg(self) -> i32 {
        self.0 as i32
    }

    /// The value for the endgame. A negative lower half has borrowed from the upper one.
    pub const fn eg(self) -> i32 {
        ((self.0 + 0x8000_0000) >> 32) as i32
    }
}

impl fmt::Debug for Pair {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "pair({}, {})", self.mg(), self.eg())
    }
}

impl Add for Pair {
    type Output = Pair;
    fn add(self, other: Pair) -> Pair {
        Pair(self.0 + other.0)
    }
}

impl AddAssign for Pair {
    fn add_assign(&mut self, other: Pair) {
        self.0 += other.0;
    }
}

impl Sub for Pair {
    type Output = Pair;
    fn sub(self, other: Pair) -> Pair {
        Pair(self.0 - other.0)
    }
}

impl SubAssign for Pair {
    fn sub_assign(&mut self, other: Pair) {
        self.0 -= other.0;
    }
}

impl Neg for Pair {
    type Output = Pair;
    fn neg(self) -> Pair {
        Pair(-self.0)
    }
}

impl Mul<i32> for Pair {
    type Output = Pair;
    fn mul(self, times: i32) -> Pair {
        Pair(self.0 * i64::from(times))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_halves_add_subtract_and_multiply_by_themselves() {
        for (mg, eg) in [(0, 0), (5, -7), (-5, 7), (-900, -1), (1, 900), (-1, 0)] {
            let one = pair(mg, eg);
            assert_eq!((one.mg(), one.eg()), (mg, eg));
            let two = one + pair(-3, 4) - pair(10, 20);
            assert_eq!((two.mg(), two.eg()), (mg - 13, eg - 16));
            let three = -one * 3;
            assert_eq!((three.mg(), three.eg()), (-3 * mg, -3 * eg));
        }
    }
}

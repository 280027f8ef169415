//! A value for the middlegame and one for the endgame, in centipawns.

use std::fmt;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// Both values; all arithmetic goes value by value.
#[derive(Clone, Copy, Default, PartialEq, Eq)]
pub struct Pair {
    mg: i32,
    eg: i32,
}

/// Shorthand for a [`Pair`], middlegame first.
pub const fn pair(mg: i32, eg: i32) -> Pair {
    Pair { mg, eg }
}

impl Pair {
    /// The value for the middlegame.
    pub const fn mg(self) -> i32 {
        self.mg
    }

    /// The value for the endgame.
    pub const fn eg(self) -> i32 {
        self.eg
    }
}

impl fmt::Debug for Pair {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "pair({}, {})", self.mg, self.eg)
    }
}

impl Add for Pair {
    type Output = Pair;
    fn add(self, other: Pair) -> Pair {
        pair(self.mg + other.mg, self.eg + other.eg)
    }
}

impl AddAssign for Pair {
    fn add_assign(&mut self, other: Pair) {
        *self = *self + other;
    }
}

impl Sub for Pair {
    type Output = Pair;
    fn sub(self, other: Pair) -> Pair {
        pair(self.mg - other.mg, self.eg - other.eg)
    }
}

impl SubAssign for Pair {
    fn sub_assign(&mut self, other: Pair) {
        *self = *self - other;
    }
}

impl Neg for Pair {
    type Output = Pair;
    fn neg(self) -> Pair {
        pair(-self.mg, -self.eg)
    }
}

impl Mul<i32> for Pair {
    type Output = Pair;
    fn mul(self, times: i32) -> Pair {
        pair(self.mg * times, self.eg * times)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_values_add_subtract_and_multiply_by_themselves() {
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

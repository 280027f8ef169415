//! Values inside the search, and the scores that it answers with.

/// Centipawns for the side to move; beyond [`MATE_BOUND`] the distance to mate in plies.
pub type Value = i32;

/// More than any value.
pub const INFINITE: Value = 32_500;
/// A draw.
pub const DRAW: Value = 0;
/// Mate at the root; n plies on it is n less.
const MATE: Value = 32_000;
/// The deepest line, in plies.
pub const MAX_PLY: usize = 128;
/// Values from here on are mates.
pub const MATE_BOUND: Value = MATE - 2 * MAX_PLY as Value;

/// The mover is mated `ply` plies below the root.
pub fn mated_in(ply: usize) -> Value {
    ply as Value - MATE
}

/// A score for the mover.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Score {
    /// An advantage in centipawns.
    Centipawns(i32),
    /// The mover mates in so many moves, at least 1.
    Mates(u32),
    /// The mover is mated in so many moves, at least 1.
    Mated(u32),
}

impl Score {
    /// The score of a value at the root.
    pub fn from_value(value: Value) -> Score {
        if value >= MATE_BOUND {
            Score::Mates((MATE - value + 1) as u32 / 2)
        } else if value <= -MATE_BOUND {
            Score::Mated((MATE + value) as u32 / 2)
        } else {
            Score::Centipawns(value)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn mates_are_counted_in_moves() {
        assert_eq!(Score::from_value(-mated_in(1)), Score::Mates(1));
        assert_eq!(Score::from_value(-mated_in(3)), Score::Mates(2));
        assert_eq!(Score::from_value(mated_in(2)), Score::Mated(1));
        assert_eq!(Score::from_value(35), Score::Centipawns(35));
    }
}

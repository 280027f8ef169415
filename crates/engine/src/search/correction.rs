//! Static values corrected by what search found in positions with the same pawns
//! ("Static Evaluation Correction History", Chess Programming Wiki).

use shakmaty::{Chess, Color, Position as _};

use super::score::Value;

/// Pawn structures of each side to move; a power of two.
const SLOTS: usize = 1 << 13;
/// Parts of a centipawn.
const GRAIN: i32 = 128;
/// The most that one error counts, in 256ths.
const MOST_WEIGHT: i32 = 64;
/// The most that a value is corrected by, in centipawns.
const MOST: i32 = 64;

/// The mean error of the static value, by pawn structure.
pub struct Correction {
    errors: [Vec<i32>; 2],
}

impl Correction {
    pub fn new() -> Correction {
        Correction {
            errors: [vec![0; SLOTS], vec![0; SLOTS]],
        }
    }

    pub fn clear(&mut self) {
        for errors in &mut self.errors {
            errors.fill(0);
        }
    }

    /// By the pawns; structures that share a place are rare enough.
    fn place(chess: &Chess) -> usize {
        let board = chess.board();
        let white = (board.pawns() & board.by_color(Color::White)).0;
        let black = (board.pawns() & board.by_color(Color::Black)).0;
        let mixed =
            white.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ black.wrapping_mul(0xC2B2_AE3D_27D4_EB4F);
        (mixed >> 40) as usize & (SLOTS - 1)
    }

    /// What to add to the static value, in centipawns.
    pub fn of(&self, chess: &Chess) -> Value {
        self.errors[chess.turn() as usize][Correction::place(chess)] / GRAIN
    }

    /// A search found the static value wrong by `error` centipawns; it counts `weight` 256ths of the mean.
    pub fn learn(&mut self, chess: &Chess, error: Value, weight: i32) {
        let mean = &mut self.errors[chess.turn() as usize][Correction::place(chess)];
        let weight = weight.clamp(0, MOST_WEIGHT);
        let error = error.clamp(-4 * MOST, 4 * MOST) * GRAIN;
        *mean =
            ((*mean * (256 - weight) + error * weight) / 256).clamp(-MOST * GRAIN, MOST * GRAIN);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_repeated_error_is_learned_up_to_a_limit() {
        let chess = Chess::default();
        let mut correction = Correction::new();
        assert_eq!(correction.of(&chess), 0);
        for _ in 0..200 {
            correction.learn(&chess, 30, 8);
        }
        assert!((25..=30).contains(&correction.of(&chess)));
        for _ in 0..2000 {
            correction.learn(&chess, -5000, 16);
        }
        assert_eq!(correction.of(&chess), -MOST);
    }
}

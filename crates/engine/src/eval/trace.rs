//! How a value came about: what the fit of the weights needs of a position.

use super::LIMIT;
use super::pair::Pair;
use super::sink::{DANGER_MAX, DANGER_SQUARED};
use super::sums::FULL_PHASE;
use super::terms::{COUNT, UNIT_COUNT};

/// A position as the weights see it.
///
/// With `mg` and `eg` the sums of coefficient times weight over all terms, `mg` less `d * d / 400` for White's king and
/// plus the same for Black's, where `d` is the sum of coefficient times unit within 0 and 600, White's value is
/// `(mg * phase + eg * (24 - phase)) / 24 * scale / 100`. Each division rounds towards zero.
#[derive(Debug, Clone)]
pub struct Trace {
    /// Of each weight, White's count less Black's.
    pub terms: [i32; COUNT],
    /// Of each unit of danger, the count for White's king and for Black's.
    pub units: [[i32; UNIT_COUNT]; 2],
    /// The part of the middlegame, in 24ths.
    pub phase: i32,
    /// How much of the advantage can be won, in hundredths.
    pub scale: i32,
    /// Whether White is on move.
    pub white_to_move: bool,
    /// The value for the mover, in centipawns: what the evaluation says.
    pub value: i32,
}

impl Trace {
    /// The value made anew from the coefficients with any weights, for the mover, in centipawns.
    #[must_use]
    pub fn value_with(&self, weights: &[Pair; COUNT], danger: &[i32; UNIT_COUNT]) -> i32 {
        let (mut mg, mut eg) = (0, 0);
        for (count, weight) in self.terms.iter().zip(weights) {
            mg += count * weight.mg();
            eg += count * weight.eg();
        }
        for (counts, sign) in self.units.iter().zip([1, -1]) {
            let units: i32 = counts.iter().zip(danger).map(|(a, b)| a * b).sum();
            let units = units.clamp(0, DANGER_MAX);
            mg -= sign * (units * units / DANGER_SQUARED);
        }
        let blended = (mg * self.phase + eg * (FULL_PHASE - self.phase)) / FULL_PHASE;
        let scaled = blended * self.scale / super::endings::WHOLE;
        let for_mover = if self.white_to_move { scaled } else { -scaled };
        for_mover.clamp(-LIMIT, LIMIT)
    }
}

#[cfg(test)]
mod tests {
    use shakmaty::{Chess, Position as _};

    use crate::eval::weights::{DANGER, WEIGHTS};
    use crate::eval::{Evaluate, Tapered};

    /// Positions of games of random moves, every third one.
    fn random_positions(games: u64) -> Vec<Chess> {
        let mut state = 20_u64;
        let mut random = move |below: usize| {
            // Marsaglia, Xorshift RNGs, 2003
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            (state % below as u64) as usize
        };
        let mut positions = Vec::new();
        for _ in 0..games {
            let mut chess = Chess::default();
            for ply in 0..240 {
                let moves = chess.legal_moves();
                if moves.is_empty() || chess.is_insufficient_material() {
                    break;
                }
                chess.play_unchecked(moves[random(moves.len())]);
                if ply % 3 == 0 {
                    positions.push(chess.clone());
                }
            }
        }
        positions
    }

    #[test]
    fn the_coefficients_give_back_the_value_exactly() {
        let mut evaluation = Tapered::new();
        let (mut endgames, mut endangered) = (0, 0);
        for chess in random_positions(30) {
            evaluation.refresh(&chess);
            let trace = Tapered::trace(&chess);
            assert_eq!(trace.value, evaluation.evaluate(&chess));
            assert_eq!(trace.value, trace.value_with(&WEIGHTS, &DANGER));
            endgames += usize::from(trace.phase < 8);
            endangered += usize::from(trace.units.iter().flatten().any(|count| *count != 0));
        }
        assert!(
            endgames > 100 && endangered > 100,
            "{endgames} {endangered}"
        );
    }

    #[test]
    fn reversed_colours_have_the_same_value() {
        let mut evaluation = Tapered::new();
        let mut compared = 0;
        for chess in random_positions(30) {
            let mut setup = chess.to_setup(shakmaty::EnPassantMode::Legal);
            setup.mirror();
            let Ok(reversed) = setup.position::<Chess>(shakmaty::CastlingMode::Standard) else {
                continue;
            };
            evaluation.refresh(&chess);
            let one = evaluation.evaluate(&chess);
            evaluation.refresh(&reversed);
            assert_eq!(one, evaluation.evaluate(&reversed), "{:?}", chess.board());
            compared += 1;
        }
        assert!(compared >= 100, "{compared}");
    }
}

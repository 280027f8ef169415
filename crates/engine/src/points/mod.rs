//! Expected score in points: what a number of centipawns is worth out of 100, and how often it wins, draws and loses.
//!
//! An ordered logit (McCullagh, Regression Models for Ordinal Data, 1980), fitted to the engine's own games by
//! `training/expected_score.py`: a side that is x centipawns ahead wins with 1 / (1 + exp((A - x) / B)) and loses with
//! 1 / (1 + exp((A + x) / B)). Kept as tables of integers, so that it is the same on every machine.
//!
//! ```
//! use engine::points::{chances, points};
//! assert_eq!(points(0), 50);
//! assert_eq!(points(70) + points(-70), 100);
//! let even = chances(0);
//! assert!(even.win == even.loss && even.win + even.draw + even.loss == 100);
//! ```

mod table;

use table::{POINTS, WINS};

/// Chances in a hundred; together 100.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Chances {
    /// To win.
    pub win: u8,
    /// To draw.
    pub draw: u8,
    /// To lose.
    pub loss: u8,
}

fn reached(edges: &[i16; 100], centipawns: i32) -> u8 {
    let count = edges.partition_point(|edge| i32::from(*edge) <= centipawns);
    u8::try_from(count).unwrap_or(100)
}

/// Expected score, 0 to 100, of the side for which `centipawns` is reckoned.
#[must_use]
pub fn points(centipawns: i32) -> u8 {
    // The half of a point goes to the side that is ahead, so that both sides together have 100.
    if centipawns < 0 {
        100 - reached(&POINTS, centipawns.saturating_neg())
    } else {
        reached(&POINTS, centipawns)
    }
}

/// How often the side for which `centipawns` is reckoned wins, draws and loses.
#[must_use]
pub fn chances(centipawns: i32) -> Chances {
    let win = reached(&WINS, centipawns);
    let loss = reached(&WINS, centipawns.saturating_neg());
    Chances {
        win,
        draw: 100_u8.saturating_sub(win).saturating_sub(loss),
        loss,
    }
}

/// Expected score when mate is forced: 100 for the side that mates, 0 for the side that is mated.
#[must_use]
pub fn points_of_mate(mates: bool) -> u8 {
    if mates { 100 } else { 0 }
}

#[cfg(test)]
mod tests {
    use super::table::{A, B};
    use super::*;

    fn win(centipawns: i32) -> f64 {
        1.0 / (1.0 + ((A - f64::from(centipawns)) / B).exp())
    }

    #[test]
    fn the_tables_are_the_model_at_every_centipawn() {
        for centipawns in -3000..=3000 {
            let (won, lost) = (win(centipawns), win(-centipawns));
            let expected = 50.0 * (1.0 + won - lost);
            assert!(
                (f64::from(points(centipawns)) - expected).abs() <= 0.5 + 1e-9,
                "{centipawns}"
            );
            let found = chances(centipawns);
            assert!((f64::from(found.win) - 100.0 * won).abs() <= 0.5 + 1e-9);
            assert!((f64::from(found.loss) - 100.0 * lost).abs() <= 0.5 + 1e-9);
            assert_eq!(found.win + found.draw + found.loss, 100, "{centipawns}");
        }
    }

    #[test]
    fn the_two_sides_share_a_hundred_points() {
        for centipawns in -3000..=3000 {
            assert_eq!(points(centipawns) + points(-centipawns), 100);
        }
        assert_eq!((points(i32::MIN), points(i32::MAX)), (0, 100));
    }
}

//! How much of the clock one move may take.
//!
//! A share of the time left, as if the game lasted [`EXPECTED_MOVES`] more moves, and most of the increment: the less
//! of it the less time is left, so that some is always in reserve for a machine that is busy elsewhere. No new
//! iteration begins after six tenths of the share, since it seldom ends in time; one that has begun may take three
//! shares, never more than half of what is left, so that a hard decision can be thought over.

use std::time::Duration;

/// Moves that a game is taken to last still, where the control does not say.
pub const EXPECTED_MOVES: u32 = 30;
/// Kept back at each move for what happens between the two programs.
pub const KEPT_BACK: Duration = Duration::from_millis(20);
/// With so much time left, half of what is else taken of the increment is saved.
const RESERVE: Duration = Duration::from_millis(100);
/// Clocks that show more are taken to show this: a hundred days.
const LONGEST: Duration = Duration::from_secs(100 * 24 * 3600);
/// The least that a move gets.
const LEAST: Duration = Duration::from_millis(1);

/// Times from the moment of `go`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Plan {
    /// No new iteration after it.
    pub soft: Duration,
    /// The end of the search.
    pub hard: Duration,
}

/// The plan for one move, with `left` on the mover's clock and `increment` after each move.
#[must_use]
pub fn plan(left: Duration, increment: Duration, moves_to_go: Option<u32>) -> Plan {
    let usable = left.min(LONGEST).saturating_sub(KEPT_BACK).max(LEAST);
    let moves = moves_to_go
        .unwrap_or(EXPECTED_MOVES)
        .clamp(1, EXPECTED_MOVES);
    let spent = usable.as_secs_f64() / (usable + RESERVE).as_secs_f64();
    let share = usable / moves + increment.min(usable).mul_f64(0.75 * spent);
    // With the control at hand nothing needs to be saved.
    let most = if moves == 1 {
        usable * 9 / 10
    } else {
        usable / 2
    }
    .max(LEAST);
    let hard = share.saturating_mul(3).clamp(LEAST, most);
    Plan {
        soft: (share * 6 / 10).min(hard),
        hard,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ms(milliseconds: u64) -> Duration {
        Duration::from_millis(milliseconds)
    }

    #[test]
    fn a_move_gets_a_share_of_the_time_left() {
        // (60,020 - 20) / 30 = 2,000
        let plan = plan(ms(60_020), ms(0), None);
        assert_eq!((plan.soft, plan.hard), (ms(1_200), ms(6_000)));
    }

    #[test]
    fn most_of_the_increment_is_used() {
        // 2,000 + 3/4 of 1,000, less one part in 601 of it: 2,748.75, of which six tenths
        let plan = plan(ms(60_020), ms(1_000), None);
        assert_eq!(
            (plan.soft.as_millis(), plan.hard.as_millis()),
            (1_649, 8_246)
        );
    }

    #[test]
    fn with_little_time_the_increment_is_saved() {
        // 3,000 us / 30 + 3/4 of 3/103 of 10,000: far less than the increment, so that time is gained
        let plan = plan(ms(23), ms(10), None);
        assert!(
            plan.soft <= plan.hard && plan.hard < ms(1) + ms(1),
            "{plan:?}"
        );
    }

    #[test]
    fn the_last_move_before_the_control_may_take_most_of_it() {
        // nine tenths of 1,000; six tenths of that share
        let plan = plan(ms(1_020), ms(0), Some(1));
        assert_eq!((plan.soft, plan.hard), (ms(600), ms(900)));
    }

    #[test]
    fn no_plan_outlasts_the_clock() {
        for left in [0, 1, 5, 19, 21, 25, 40, 100, 1_000, 100_000_000] {
            for increment in [0, 10, 5_000, u64::MAX / 1_000] {
                for moves in [None, Some(0), Some(1), Some(2), Some(40), Some(u32::MAX)] {
                    let plan = plan(ms(left), ms(increment), moves);
                    assert!(plan.soft <= plan.hard, "{left} {increment} {moves:?}");
                    assert!(plan.hard >= ms(1));
                    assert!(
                        plan.hard + KEPT_BACK <= ms(left.max(21)),
                        "{left} {increment} {moves:?}: {plan:?}"
                    );
                }
            }
        }
    }
}

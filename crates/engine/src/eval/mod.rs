//! Evaluation: what a position is worth without looking ahead, in centipawns for the mover.
//!
//! ```
//! use engine::eval::{Evaluate, Tapered};
//! use engine::position::Position;
//! let up_a_queen = Position::from_fen("4k3/pppp4/8/8/8/8/PPPP4/3QK3 w - - 0 1").unwrap();
//! let mut evaluation = Tapered::new();
//! evaluation.refresh(up_a_queen.chess());
//! assert!(evaluation.evaluate(up_a_queen.chess()) > 500);
//! ```

use shakmaty::{Chess, Move};

mod army;
mod endings;
mod king;
mod network;
mod opening;
mod pair;
mod passed;
mod pawns;
mod pieces;
mod sink;
mod sums;
mod tapered;
mod terms;
mod threats;
mod trace;
mod weights;

pub use network::{Evaluation, Learned, Network, NetworkError};
pub use pair::Pair;
pub use sink::{DANGER_MAX, DANGER_SQUARED};
pub use tapered::Tapered;
pub use terms::{COUNT, TERMS, Term, UNIT_COUNT, UNITS};
pub use trace::Trace;
pub use weights::{DANGER, WEIGHTS};

/// Something that values positions. The search calls `refresh` at the root, `push` before it plays a move
/// and `pop` after it takes one back, so that an evaluation can keep its sums up to date move by move;
/// a pass calls neither, since it moves no piece. An evaluation that keeps nothing leaves the hooks as they are.
pub trait Evaluate {
    /// The value of a position for its mover, in centipawns, within +-[`LIMIT`].
    /// `chess` is the position that the hooks have led to.
    fn evaluate(&mut self, chess: &Chess) -> i32;

    /// Starts anew from a position.
    fn refresh(&mut self, chess: &Chess) {
        let _ = chess;
    }

    /// A move is about to be played in `before`.
    fn push(&mut self, before: &Chess, mv: Move) {
        let _ = (before, mv);
    }

    /// The last move is taken back.
    fn pop(&mut self) {}
}

/// No evaluation is larger than this, so that it can never be taken for a mate.
pub const LIMIT: i32 = 20_000;

//! Rules, search, evaluation and the lossless PGN reader of Lineproof. No Python in it.
//!
//! ```
//! use engine::position::Position;
//! let after = Position::start().play_san("e4").unwrap();
//! assert_eq!(after.fen(), "rnbqkbnr/pppppppp/8/8/4P3/8/PPPP1PPP/RNBQKBNR b KQkq - 0 1");
//! ```

pub mod bulk;
pub mod collection;
pub mod eval;
pub mod matches;
pub mod mate;
pub mod perft;
pub mod pgn;
pub mod points;
pub mod position;
pub mod random;
pub mod samples;
pub mod search;
pub mod uci;

//! Positions to learn from: gathered in games of the engine against itself, each with the score of a search and the
//! game's result, 32 bytes a position.
//!
//! ```
//! use engine::position::Position;
//! use engine::samples::{Outcome, Sample, Samples};
//! let position = Position::start().play_san("e4").unwrap();
//! let sample = Sample::seen_by_mover(position.chess(), -12, Outcome::Drawn);
//! let bytes = sample.pack();
//! let read: Vec<Sample> = Samples::new(&bytes[..]).map(Result::unwrap).collect();
//! assert_eq!(read, [sample]);
//! ```
//!
//! # The record
//!
//! A position is kept from the mover's side: when Black is on move, ranks are flipped and colours exchanged, so that
//! the mover is always "own" and its pawns move up the board. A record is sixteen words of 16 bits, each with its low
//! byte first:
//!
//! * The low 15 bits of word i, 0 to 15, hold the four squares 4i to 4i + 3 (a1 = 0, b1 = 1, ... h8 = 63) as a number
//!   of base 13, square 4i as its lowest digit. Digits: 0 an empty square; 1 to 6 the mover's pawn, knight, bishop,
//!   rook, queen, king; 7 to 12 the other side's, in the same order. 13^4 = 28,561 is less than 2^15.
//! * The top bits of the sixteen words, that of word 0 the lowest, are a number of 16 bits: (score + 8191) * 4 + result.
//!   The score is the mover's, in centipawns, at most 8191 either way; the result is 0 lost, 1 drawn, 2 won for the
//!   mover, 3 where the position stood in a search and not in the game. A score of 8192 is never used.
//!
//! Castling rights, en passant and clocks are not kept: the evaluation does not look at them. A file is a plain run
//! of records. The records of a game stand together, in the order of its moves, and games stand one after another.

mod census;
mod failure;
mod folder;
mod game;
mod gathering;
mod leaves;
mod openings;
mod reader;
mod record;
mod report;
pub mod settings;

pub use census::Census;
pub use failure::SampleError;
pub use gathering::gather;
pub use openings::Openings;
pub use reader::{ReadError, Samples};
pub use record::{Damage, Outcome, RECORD_BYTES, SCORE_MAX, Sample};
pub use report::Report;
pub use settings::{Order, Settings};

//! Games by the million: tags and main lines of PGN streams, in constant memory; broken games are named and left out.
//!
//! ```
//! use engine::bulk::{Frames, Reading, read_frame};
//! let text = "[White \"Ann\"]\n\n1. e4 {a comment} e5 (1... c5) 2. Nf3 1-0\n\n1. d5 *\n";
//! let mut frames = Frames::new(text.as_bytes());
//! let chunk = frames.next_chunk().unwrap().unwrap();
//! let mut reading = Reading::default();
//! for frame in &chunk.frames {
//!     read_frame(&chunk, frame, &mut reading);
//! }
//! assert_eq!(reading.games[0].moves.len(), 3);
//! let broken = &reading.broken[0];
//! assert_eq!((broken.line, broken.column), (5, 4));
//! assert!(broken.reason.starts_with("d5 is not legal here; "));
//! ```
//!
//! A stream is cut into frames of a game each ([`Frames`], one thread), and frames are read into games
//! ([`read_frame`], any number of threads). Clean movetext is read at once, move by move; at the first thing that is not
//! a move, a number, a glyph, a comment, a variation or a result, the frame is read again through the lossless tokenizer,
//! which knows every spelling and where each word stands. Variations and comments are skipped.

mod archive;
mod frames;
mod game;
mod invent;
mod quick;
mod reading;
mod second;
mod text;

pub use archive::{Archive, open_archive};
pub use frames::{Chunk, Frame, Frames};
pub use game::{Broken, Game, GameResult, Kind, NAMES, Visit, rating, year};
pub use invent::{Wanted, invent};
pub use reading::{Reading, read_frame};

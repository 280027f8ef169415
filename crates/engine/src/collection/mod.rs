//! Segments of a collection of games: what each position of them counts, and the games themselves.
//!
//! A segment is a folder that never changes once it is written:
//!
//! | file | what is in it |
//! |---|---|
//! | `figures-XX.parquet` | positions of at least [`RARE`] games: counts by key, move, both players' rating bands and year |
//! | `totals-XX.parquet` | the same, added up by move, by rating and by year: for questions about all games |
//! | `examples-XX.parquet` | the same positions: model games of each move, and the move orders that lead there |
//! | `rare-XX.parquet` | all other positions: the first 40 bits of the key, and the game; the game itself tells the rest |
//! | `games.bin`, `games.idx` | the games, moves in a byte each, compressed by the block; where each block begins |
//! | `seen.bin` | 64-bit hashes of the games, ascending, by which a game that comes again is known |
//!
//! XX are the first bits of the keys in the file, as many as [`Summary::bits`] says. Positions are kept from the
//! initial one to ply [`PLIES`] of each game; a position that comes again in a game counts once.

mod batch;
mod build;
mod code;
mod collector;
mod failure;
mod games;
mod import;
mod out;
mod rebuild;
mod row;
mod seen;
mod spill;
mod table;
mod taken;
mod tally;

pub use build::{Builder, Summary};
pub use code::{read_move, write_move};
pub use failure::CollectError;
pub use games::{Games, Stored};
pub use import::{FileReport, Import, Report, import};
pub use rebuild::{Part, rebuild};
pub use row::{Row, packed, unpacked};
pub use seen::{Hashes, Seen};
pub use taken::Taken;

/// Plies of a game whose positions are kept.
pub const PLIES: usize = 40;
/// A position of fewer games than this is answered from the games.
pub const RARE: usize = 64;
/// Rating points of a band.
pub const BAND: u16 = 50;

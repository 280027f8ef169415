//! Search: the best moves of a position, and what they are worth.
//!
//! Deterministic: the same request with a node or depth limit always gives the same answer, on every machine.
//! Each request starts with an empty table and an empty memory.
//!
//! ```
//! use engine::position::Position;
//! use engine::search::{Limits, Request, Score, Searcher};
//! let position = Position::from_fen("6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1").unwrap();
//! let request = Request::new(&position, Limits::nodes(10_000));
//! let answer = Searcher::new().search(&request).unwrap();
//! assert_eq!(answer.lines[0].score, Score::Mates(1));
//! ```

use std::fmt;
use std::sync::atomic::AtomicBool;
use std::time::Duration;

use shakmaty::Move;

use crate::eval::{Evaluate, Tapered};
use crate::position::Position;

mod captures;
mod checks;
mod key;
mod order;
mod packed;
mod root;
mod score;
pub mod see;
mod table;
#[cfg(test)]
mod tests;
mod tree;

pub use score::Score;

/// Why a search cannot be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RequestError {
    /// Neither nodes nor depth nor time is limited, and no stop flag is given.
    NoLimit,
    /// A limit is zero.
    ZeroLimit,
    /// No line is asked for.
    NoLines,
    /// A root move is not legal, or none is left.
    RootMove,
}

impl fmt::Display for RequestError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            RequestError::NoLimit => "no limit: give nodes, depth, seconds or a stop",
            RequestError::ZeroLimit => "a limit must be greater than zero",
            RequestError::NoLines => "at least one line must be asked for",
            RequestError::RootMove => "a root move is not legal, or no root move is given",
        })
    }
}

impl std::error::Error for RequestError {}

/// How long to search. The first limit reached ends the search; the first ply is always searched to its end.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Limits {
    /// Moves played in the tree, quiescence and passes included.
    pub nodes: Option<u64>,
    /// Iterations.
    pub depth: Option<u32>,
    /// Time on the wall; the answer then depends on the machine.
    pub time: Option<Duration>,
}

impl Limits {
    /// A node limit alone.
    #[must_use]
    pub fn nodes(nodes: u64) -> Limits {
        Limits {
            nodes: Some(nodes),
            ..Limits::default()
        }
    }

    /// A depth limit alone.
    #[must_use]
    pub fn depth(depth: u32) -> Limits {
        Limits {
            depth: Some(depth),
            ..Limits::default()
        }
    }
}

/// What to search.
#[derive(Debug, Clone, Copy)]
pub struct Request<'a> {
    /// The position at the root.
    pub position: &'a Position,
    /// Keys of the positions of the game before it, the first one first.
    pub history: &'a [u64],
    /// When to stop.
    pub limits: Limits,
    /// How many best lines to find.
    pub lines: usize,
    /// Only these moves at the root; all when `None`.
    pub root_moves: Option<&'a [Move]>,
    /// The most that the table may take; when `None`, as the node limit needs, 64 MiB at most.
    pub table_bytes: Option<usize>,
    /// Ends the search soon after it is set.
    pub stop: Option<&'a AtomicBool>,
}

impl<'a> Request<'a> {
    /// One line, all moves, no history.
    #[must_use]
    pub fn new(position: &'a Position, limits: Limits) -> Self {
        Request {
            position,
            history: &[],
            limits,
            lines: 1,
            root_moves: None,
            table_bytes: None,
            stop: None,
        }
    }
}

/// A line of play and what it is worth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// Legal moves, one after another, at least one.
    pub moves: Vec<Move>,
    /// For the mover at the root.
    pub score: Score,
}

/// What a search found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// Best first; none when the game is over.
    pub lines: Vec<Line>,
    /// Moves played in the tree.
    pub nodes: u64,
    /// Iterations searched to their end.
    pub depth: u32,
    /// Whether the stop flag or the clock ended the search.
    pub stopped: bool,
}

/// Searches positions with an evaluation.
pub struct Searcher<E = Tapered> {
    eval: E,
}

impl Searcher<Tapered> {
    /// A searcher with the hand-made evaluation.
    #[must_use]
    pub fn new() -> Self {
        Searcher::with(Tapered::new())
    }
}

impl Default for Searcher<Tapered> {
    fn default() -> Self {
        Searcher::new()
    }
}

impl<E: Evaluate> Searcher<E> {
    /// A searcher with another evaluation.
    pub fn with(eval: E) -> Self {
        Searcher { eval }
    }

    /// Finds the best lines.
    ///
    /// # Errors
    /// [`RequestError`] when the request contradicts itself.
    pub fn search(&mut self, request: &Request<'_>) -> Result<Answer, RequestError> {
        root::search(&mut self.eval, request)
    }
}

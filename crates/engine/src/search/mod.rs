//! Search: the best moves of a position, and what they are worth.
//!
//! Deterministic: the same request with a node or depth limit and one thread always gives the same answer, on every
//! machine. Each request starts with an empty table and an empty memory, unless the searcher is a keeping one.
//! Several threads search the same tree and share the table alone ("Lazy SMP", Chess Programming Wiki); what
//! they answer differs from run to run.
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

use crate::eval::{Evaluate, Evaluation};
use crate::position::Position;

mod captures;
mod checks;
mod correction;
mod inner;
mod key;
mod margins;
mod order;
mod packed;
mod quiesce;
mod root;
mod score;
pub mod see;
mod table;
mod techniques;
#[cfg(test)]
mod tests;
mod tree;

pub use margins::{Margin, Margins};
pub use score::Score;
pub use techniques::{Technique, Techniques, UnknownTechnique};

use correction::Correction;
use order::Memory;
use table::Table;

/// Why a search cannot be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RequestError {
    /// Neither nodes nor depth nor time is limited, and no stop flag is given.
    NoLimit,
    /// A limit is zero.
    ZeroLimit,
    /// No line is asked for.
    NoLines,
    /// No thread is to search.
    NoThreads,
    /// A root move is not legal, or none is left.
    RootMove,
}

impl fmt::Display for RequestError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            RequestError::NoLimit => "no limit: give nodes, depth, seconds or a stop",
            RequestError::ZeroLimit => "a limit must be greater than zero",
            RequestError::NoLines => "at least one line must be asked for",
            RequestError::NoThreads => "at least one thread must search",
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
    /// Time after which no further iteration is begun.
    pub soft_time: Option<Duration>,
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
    /// How many threads search; more than one makes the answer differ from run to run.
    pub threads: usize,
    /// Techniques that the search does without, for measuring them.
    pub without: Techniques,
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
            threads: 1,
            without: Techniques::NONE,
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

impl Answer {
    /// The answer when the game is over.
    fn over() -> Answer {
        Answer {
            lines: Vec::new(),
            nodes: 0,
            depth: 0,
            stopped: false,
        }
    }
}

/// How far a search has come, told after each iteration.
#[derive(Debug, Clone, Copy)]
pub struct Progress<'a> {
    /// Iterations searched to their end.
    pub depth: u32,
    /// Moves played in the tree, by all threads.
    pub nodes: u64,
    /// Time on the wall.
    pub elapsed: Duration,
    /// As in the answer.
    pub lines: &'a [Line],
    /// How full the table is, in thousandths.
    pub full: u32,
}

/// What one thread remembers of the moves it tried.
struct Mind {
    memory: Memory,
    correction: Correction,
}

impl Mind {
    fn new() -> Mind {
        Mind {
            memory: Memory::new(),
            correction: Correction::new(),
        }
    }

    fn clear(&mut self, without: Techniques) {
        self.memory.clear(without);
        self.correction.clear();
    }
}

/// Searches positions with an evaluation.
pub struct Searcher<E = Evaluation> {
    eval: E,
    table: Table,
    minds: Vec<Mind>,
    /// The size of the table that is kept from search to search, if one is.
    kept: Option<usize>,
    fresh: bool,
}

impl Searcher<Evaluation> {
    /// A searcher with the evaluation by default, whose searches know nothing of one another.
    #[must_use]
    pub fn new() -> Self {
        Searcher::with(Evaluation::default())
    }

    /// A searcher with the evaluation by default that keeps what it found for the next search, in a table
    /// of so many bytes.
    #[must_use]
    pub fn keeping(table_bytes: usize) -> Self {
        let mut searcher = Searcher::new();
        searcher.resize(table_bytes);
        searcher
    }
}

impl Default for Searcher<Evaluation> {
    fn default() -> Self {
        Searcher::new()
    }
}

impl<E: Evaluate + Clone + Send> Searcher<E> {
    /// A searcher with another evaluation, whose searches know nothing of one another.
    pub fn with(eval: E) -> Self {
        Searcher {
            eval,
            table: Table::new(0),
            minds: Vec::new(),
            kept: None,
            fresh: true,
        }
    }

    /// Takes another evaluation, and forgets what was found with the one before.
    pub fn evaluate_with(&mut self, eval: E) {
        self.eval = eval;
        self.forget();
    }

    /// Keeps a table of so many bytes from search to search, empty at first.
    pub fn resize(&mut self, table_bytes: usize) {
        self.table = Table::new(table_bytes);
        self.kept = Some(table_bytes);
        self.fresh = true;
    }

    /// Empties what was kept.
    pub fn forget(&mut self) {
        self.table.clear();
        self.fresh = true;
    }

    /// Finds the best lines.
    ///
    /// # Errors
    /// [`RequestError`] when the request contradicts itself.
    pub fn search(&mut self, request: &Request<'_>) -> Result<Answer, RequestError> {
        self.search_telling(request, &mut |_| {})
    }

    /// Finds the best lines, and tells how far it has come after each iteration.
    ///
    /// # Errors
    /// [`RequestError`] when the request contradicts itself.
    pub fn search_telling(
        &mut self,
        request: &Request<'_>,
        tell: &mut dyn FnMut(&Progress<'_>),
    ) -> Result<Answer, RequestError> {
        let mut moves = match root::prepare(request)? {
            root::Prepared::Over => return Ok(Answer::over()),
            root::Prepared::Moves(moves) => moves,
        };
        self.make_ready(request);
        Ok(root::search(
            &mut self.eval,
            &self.table,
            &mut self.minds,
            request,
            &mut moves,
            tell,
        ))
    }

    /// An empty table and empty minds, or those kept, a search older.
    fn make_ready(&mut self, request: &Request<'_>) {
        let keeps = self.kept.is_some();
        if !keeps {
            let bytes = root::table_bytes(request);
            if self.table.fits(bytes) {
                self.table.clear();
            } else {
                self.table = Table::new(bytes);
            }
        }
        self.table.grow_older();
        if !keeps || self.fresh {
            for mind in &mut self.minds {
                mind.clear(request.without);
            }
        }
        while self.minds.len() < request.threads {
            let mut mind = Mind::new();
            mind.clear(request.without);
            self.minds.push(mind);
        }
        self.fresh = false;
    }
}

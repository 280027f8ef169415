//! What this interface needs of the search.

use std::sync::atomic::AtomicBool;
use std::time::{Duration, Instant};

use shakmaty::Move;

use crate::position::Position;
use crate::search::{Answer, Limits, Line, Request, RequestError, Searcher};

/// How far a search has come.
pub struct Progress<'a> {
    pub depth: u32,
    pub nodes: u64,
    pub elapsed: Duration,
    pub lines: &'a [Line],
    /// How full the table is, in thousandths; `None` where the search does not say.
    pub full: Option<u32>,
}

/// What to search.
pub struct Wanted<'a> {
    pub position: &'a Position,
    pub history: &'a [u64],
    pub limits: Limits,
    pub soft_time: Option<Duration>,
    pub lines: usize,
    pub root_moves: Option<&'a [Move]>,
    pub stop: &'a AtomicBool,
}

pub struct Seeker {
    table_bytes: usize,
}

impl Seeker {
    pub fn new(table_bytes: usize) -> Self {
        Seeker { table_bytes }
    }

    pub fn resize(&mut self, table_bytes: usize) {
        self.table_bytes = table_bytes;
    }

    pub fn forget(&mut self) {}

    pub fn search(
        &mut self,
        wanted: &Wanted<'_>,
        tell: &mut dyn FnMut(&Progress<'_>),
    ) -> Result<Answer, RequestError> {
        let begun = Instant::now();
        let answer = Searcher::new().search(&Request {
            position: wanted.position,
            history: wanted.history,
            limits: Limits {
                time: wanted.soft_time.or(wanted.limits.time),
                ..wanted.limits
            },
            lines: wanted.lines,
            root_moves: wanted.root_moves,
            table_bytes: Some(self.table_bytes),
            stop: Some(wanted.stop),
        })?;
        tell(&Progress {
            depth: answer.depth,
            nodes: answer.nodes,
            elapsed: begun.elapsed(),
            lines: &answer.lines,
            full: None,
        });
        Ok(answer)
    }
}

//! Mate in n, by trying every move: no selective pruning, so that "there is none" is a proof.
//!
//! Depth-first over both sides' moves to a depth that grows one move at a time, with a table of the positions
//! already refuted (Shannon 1950, "type A" search, on a game tree of won and lost).
//!
//! ```
//! use engine::mate::{Verdict, mate};
//! use engine::position::Position;
//! let position = Position::from_fen("6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1").unwrap();
//! assert!(matches!(mate(&position, 1, 1_000).verdict, Verdict::Forced(line) if line.len() == 1));
//! ```

use std::collections::HashMap;
use std::sync::atomic::{AtomicBool, Ordering};

use shakmaty::zobrist::Zobrist64;
use shakmaty::{Chess, EnPassantMode, Move, Position as _};

use crate::position::Position;

/// What the search found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Verdict {
    /// The mover mates; the line is the shortest mate against a defence that holds out longest.
    Forced(Vec<Move>),
    /// Every move was tried: there is no mate within the moves asked for.
    None,
    /// The nodes ran out, or the search was stopped.
    Unknown,
}

/// The verdict with the positions visited.
#[derive(Debug, Clone)]
pub struct MateAnswer {
    /// What was found.
    pub verdict: Verdict,
    /// Positions visited.
    pub nodes: u64,
}

struct OutOfNodes;

struct Solver<'a> {
    nodes: u64,
    limit: u64,
    stop: Option<&'a AtomicBool>,
    /// For each position with the attacker to move, the most moves within which no mate exists.
    refuted: HashMap<u64, u8>,
}

/// Whether the mover mates within `moves` of his own moves, whatever the other side does.
#[must_use]
pub fn mate(position: &Position, moves: u8, nodes: u64) -> MateAnswer {
    mate_until(position, moves, nodes, None)
}

/// As [`mate`], stopped early when `stop` is set.
#[must_use]
pub fn mate_until(
    position: &Position,
    moves: u8,
    nodes: u64,
    stop: Option<&AtomicBool>,
) -> MateAnswer {
    let mut solver = Solver {
        nodes: 0,
        limit: nodes,
        stop,
        refuted: HashMap::new(),
    };
    for depth in 1..=moves {
        match solver.attack(position.chess(), depth) {
            Ok(Some(line)) => {
                return MateAnswer {
                    verdict: Verdict::Forced(line),
                    nodes: solver.nodes,
                };
            }
            Ok(None) => {}
            Err(OutOfNodes) => {
                return MateAnswer {
                    verdict: Verdict::Unknown,
                    nodes: solver.nodes,
                };
            }
        }
    }
    MateAnswer {
        verdict: Verdict::None,
        nodes: solver.nodes,
    }
}

impl Solver<'_> {
    fn count(&mut self) -> Result<(), OutOfNodes> {
        self.nodes += 1;
        let stopped = self.nodes.is_multiple_of(1024)
            && self.stop.is_some_and(|flag| flag.load(Ordering::Relaxed));
        if self.nodes > self.limit || stopped {
            return Err(OutOfNodes);
        }
        Ok(())
    }

    /// The mating line of the side to move within `depth` moves, if there is one.
    fn attack(&mut self, chess: &Chess, depth: u8) -> Result<Option<Vec<Move>>, OutOfNodes> {
        let Zobrist64(key) = chess.zobrist_hash(EnPassantMode::Legal);
        if self.refuted.get(&key).is_some_and(|&tried| tried >= depth) {
            return Ok(None);
        }
        // Checks first, and among them those with the fewest answers: mates are found early, and when there is
        // none the order does not matter.
        let mut children: Vec<(bool, usize, Move, Chess)> = Vec::new();
        for mv in chess.legal_moves() {
            self.count()?;
            let mut after = chess.clone();
            after.play_unchecked(mv);
            let quiet = !after.is_check();
            if depth == 1 {
                if !quiet && after.is_checkmate() {
                    return Ok(Some(vec![mv]));
                }
                continue;
            }
            let replies = after.legal_moves().len();
            if replies == 0 && !quiet {
                return Ok(Some(vec![mv]));
            }
            if replies > 0 {
                children.push((quiet, replies, mv, after));
            }
        }
        children.sort_by_key(|(quiet, replies, ..)| (*quiet, *replies));
        for (_, _, mv, after) in children {
            if let Some(mut line) = self.defend(&after, depth - 1)? {
                line.insert(0, mv);
                return Ok(Some(line));
            }
        }
        let entry = self.refuted.entry(key).or_insert(0);
        *entry = (*entry).max(depth);
        Ok(None)
    }

    /// The longest line after which the side to move is mated within `depth` moves of the attacker; `None` when
    /// some reply holds.
    fn defend(&mut self, chess: &Chess, depth: u8) -> Result<Option<Vec<Move>>, OutOfNodes> {
        let mut longest: Option<Vec<Move>> = None;
        for mv in chess.legal_moves() {
            self.count()?;
            let mut after = chess.clone();
            after.play_unchecked(mv);
            let mut found = None;
            for moves in 1..=depth {
                found = self.attack(&after, moves)?;
                if found.is_some() {
                    break;
                }
            }
            let Some(mut line) = found else {
                return Ok(None);
            };
            line.insert(0, mv);
            if longest.as_ref().is_none_or(|l| l.len() < line.len()) {
                longest = Some(line);
            }
        }
        Ok(longest)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(fen: &str) -> Position {
        Position::from_fen(fen).unwrap()
    }

    #[test]
    fn smothered_mate_in_two_is_found_and_not_in_one() {
        // Common practice: Qg8+ Rxg8, Nf7 mate.
        let position = at("5r1k/6pp/7N/8/2Q5/8/6PP/6K1 w - - 0 1");
        assert_eq!(mate(&position, 1, 1_000_000).verdict, Verdict::None);
        let Verdict::Forced(line) = mate(&position, 2, 1_000_000).verdict else {
            panic!("no mate found");
        };
        let spelled: Vec<String> = line.iter().map(|m| position.uci(*m)).collect();
        assert_eq!(spelled, ["c4g8", "f8g8", "h6f7"]);
    }

    #[test]
    fn stalemate_is_no_mate() {
        let position = at("7k/8/6K1/8/8/8/8/5Q2 w - - 0 1");
        let Verdict::Forced(line) = mate(&position, 1, 10_000).verdict else {
            panic!("no mate found");
        };
        assert!(position.play(line[0]).chess().is_checkmate());
    }

    #[test]
    fn running_out_of_nodes_is_said() {
        assert_eq!(
            mate(&Position::start(), 4, 10_000).verdict,
            Verdict::Unknown
        );
    }

    #[test]
    fn the_start_has_no_mate_in_two() {
        assert_eq!(
            mate(&Position::start(), 2, 10_000_000).verdict,
            Verdict::None
        );
    }
}

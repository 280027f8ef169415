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
use std::hash::{BuildHasherDefault, Hasher};
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

/// Positions whose knowledge is kept, at most: about 100 bytes each.
const KEPT: usize = 4_000_000;

struct OutOfNodes;

/// What is known of a position with the attacker to move.
#[derive(Debug, Clone, Copy, Default)]
struct Known {
    /// The most moves within which no mate exists.
    refuted: u8,
    /// Moves within which a mate exists; 0 when none is known.
    proved: u8,
}

/// Keys are hashes already.
#[derive(Default)]
struct KeyHasher(u64);

impl Hasher for KeyHasher {
    fn finish(&self) -> u64 {
        self.0
    }

    fn write(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.0 = self.0.rotate_left(8) ^ u64::from(*byte);
        }
    }

    fn write_u64(&mut self, key: u64) {
        self.0 = key;
    }
}

type ByKey<T> = HashMap<u64, T, BuildHasherDefault<KeyHasher>>;

/// Solves one problem after another, and keeps what it learned of positions: that a mate exists or not is true
/// wherever the position arises. (The fifty-move rule is not looked at.)
#[derive(Default)]
pub struct MateSolver {
    known: ByKey<Known>,
    /// For a position with the defender to move, the reply that refuted the attack last.
    refuters: ByKey<Move>,
}

/// One problem being solved.
struct Solving<'a> {
    solver: &'a mut MateSolver,
    nodes: u64,
    limit: u64,
    stop: Option<&'a AtomicBool>,
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
    MateSolver::default().solve(position, moves, nodes, stop)
}

impl MateSolver {
    /// Whether the mover mates within `moves` of his own moves, whatever the other side does.
    pub fn solve(
        &mut self,
        position: &Position,
        moves: u8,
        nodes: u64,
        stop: Option<&AtomicBool>,
    ) -> MateAnswer {
        if self.known.len() + self.refuters.len() > KEPT {
            *self = MateSolver::default();
        }
        let mut solving = Solving {
            solver: self,
            nodes: 0,
            limit: nodes,
            stop,
        };
        let verdict = solving
            .verdict(position.chess(), moves)
            .unwrap_or(Verdict::Unknown);
        MateAnswer {
            verdict,
            nodes: solving.nodes,
        }
    }
}

fn key_of(chess: &Chess) -> u64 {
    let Zobrist64(key) = chess.zobrist_hash(EnPassantMode::Legal);
    key
}

fn after(chess: &Chess, mv: Move) -> Chess {
    let mut after = chess.clone();
    after.play_unchecked(mv);
    after
}

impl Solving<'_> {
    fn verdict(&mut self, chess: &Chess, moves: u8) -> Result<Verdict, OutOfNodes> {
        for depth in 1..=moves {
            if self.attack(chess, depth)? {
                return Ok(Verdict::Forced(self.line(chess, depth)?));
            }
        }
        Ok(Verdict::None)
    }

    fn count(&mut self) -> Result<(), OutOfNodes> {
        self.nodes += 1;
        let stopped = self.nodes.is_multiple_of(1024)
            && self.stop.is_some_and(|flag| flag.load(Ordering::Relaxed));
        if self.nodes > self.limit || stopped {
            return Err(OutOfNodes);
        }
        Ok(())
    }

    /// Whether the side to move mates within `depth` moves.
    fn attack(&mut self, chess: &Chess, depth: u8) -> Result<bool, OutOfNodes> {
        let key = key_of(chess);
        let known = self.solver.known.get(&key).copied().unwrap_or_default();
        if known.refuted >= depth {
            return Ok(false);
        }
        if (1..=depth).contains(&known.proved) {
            return Ok(true);
        }
        let found = self.mating_move(chess, depth)?.is_some();
        let known = self.solver.known.entry(key).or_default();
        if found {
            known.proved = depth;
        } else {
            known.refuted = known.refuted.max(depth);
        }
        Ok(found)
    }

    /// A move that mates within `depth` moves.
    fn mating_move(&mut self, chess: &Chess, depth: u8) -> Result<Option<Move>, OutOfNodes> {
        // Checks first, and among them those with the fewest answers: mates are found early, and when there is
        // none the order does not matter.
        let mut children: Vec<(bool, usize, Move, Chess)> = Vec::new();
        for mv in chess.legal_moves() {
            self.count()?;
            let after = after(chess, mv);
            let quiet = !after.is_check();
            if depth == 1 {
                if !quiet && after.is_checkmate() {
                    return Ok(Some(mv));
                }
                continue;
            }
            let replies = after.legal_moves().len();
            if replies == 0 && !quiet {
                return Ok(Some(mv));
            }
            if replies > 0 {
                children.push((quiet, replies, mv, after));
            }
        }
        children.sort_by_key(|(quiet, replies, ..)| (*quiet, *replies));
        for (_, _, mv, after) in children {
            if self.mated(&after, depth - 1)? {
                return Ok(Some(mv));
            }
        }
        Ok(None)
    }

    /// Whether the side to move is mated within `depth` moves of the attacker, whatever it replies.
    fn mated(&mut self, chess: &Chess, depth: u8) -> Result<bool, OutOfNodes> {
        let key = key_of(chess);
        let first = self.solver.refuters.get(&key).copied();
        let legal = chess.legal_moves();
        let others = legal.iter().copied().filter(|mv| first != Some(*mv));
        // A key may, once in a very long while, stand for two positions: the refuter must be legal here.
        let first = first.filter(|mv| legal.contains(mv));
        for mv in first.into_iter().chain(others) {
            self.count()?;
            if !self.attack(&after(chess, mv), depth)? {
                self.solver.refuters.insert(key, mv);
                return Ok(false);
            }
        }
        Ok(true)
    }

    /// The shortest mate against the defence that holds out longest; there is a mate within `depth` moves.
    fn line(&mut self, chess: &Chess, depth: u8) -> Result<Vec<Move>, OutOfNodes> {
        let mut line = Vec::new();
        let (mut chess, mut depth) = (chess.clone(), depth);
        while let Some(mv) = self.mating_move(&chess, depth)? {
            line.push(mv);
            chess = after(&chess, mv);
            let mut longest = None;
            for reply in chess.legal_moves() {
                let next = after(&chess, reply);
                for moves in 1..depth {
                    if self.attack(&next, moves)? {
                        if longest.is_none_or(|(most, _)| moves > most) {
                            longest = Some((moves, reply));
                        }
                        break;
                    }
                }
            }
            let Some((moves, reply)) = longest else {
                break;
            };
            line.push(reply);
            chess = after(&chess, reply);
            depth = moves;
        }
        Ok(line)
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

//! The root: iterative deepening (Slate and Atkin 1977, in Frey, Chess Skill in Man and Machine)
//! with aspiration windows, several best lines by leaving out the root moves already placed.

use std::time::Instant;

use shakmaty::{Chess, Move, Position as _};

use crate::eval::Evaluate;

use super::order::Memory;
use super::packed::Packed;
use super::score::{DRAW, INFINITE, MATE_BOUND, MAX_PLY, Score, Value};
use super::table::Table;
use super::tree::{Bounds, Node, Tree};
use super::{Answer, Line, Request, RequestError};

/// The table's size when none is given and no node limit says how much is needed.
const TABLE_BYTES: usize = 64 << 20;
/// The deepest iteration.
const MAX_DEPTH: u32 = 100;

#[derive(Debug, Clone)]
struct RootMove {
    mv: Move,
    value: Value,
    /// The value of the last iteration that reached it.
    last: Value,
    line: Vec<Packed>,
}

pub fn search<E: Evaluate>(eval: &mut E, request: &Request<'_>) -> Result<Answer, RequestError> {
    check(request)?;
    let chess = request.position.chess();
    let legal = chess.legal_moves();
    let mut moves: Vec<RootMove> = Vec::with_capacity(legal.len());
    let wanted: &[Move] = request.root_moves.unwrap_or(&legal);
    for mv in wanted {
        if !legal.contains(mv) {
            return Err(RequestError::RootMove);
        }
        if moves.iter().all(|known| known.mv != *mv) {
            moves.push(RootMove {
                mv: *mv,
                value: -INFINITE,
                last: -INFINITE,
                line: vec![Packed::new(*mv)],
            });
        }
    }
    if moves.is_empty() {
        return if legal.is_empty() {
            Ok(Answer {
                lines: Vec::new(),
                nodes: 0,
                depth: 0,
                stopped: false,
            })
        } else {
            Err(RequestError::RootMove)
        };
    }

    let mut table = Table::new(table_bytes(request));
    let mut memory = Memory::new();
    let bounds = Bounds {
        nodes: request.limits.nodes.unwrap_or(u64::MAX),
        until: request
            .limits
            .time
            .and_then(|time| Instant::now().checked_add(time)),
        stop: request.stop,
    };
    let root = Node::new(chess, request.position.key());
    let mut tree = Tree::new(
        eval,
        &mut table,
        &mut memory,
        bounds,
        request.history,
        &root,
    );
    let lines = request.lines.min(moves.len());
    let deepest = request.limits.depth.unwrap_or(MAX_DEPTH).min(MAX_DEPTH);
    let mut completed = 0;

    for depth in 1..=deepest {
        tree.root_depth = depth as i32;
        for known in &mut moves {
            known.last = known.value;
        }
        for first in 0..lines {
            widen(&mut tree, &root, &mut moves, first, depth as i32);
            if tree.stopped {
                break;
            }
        }
        if tree.stopped {
            break;
        }
        tree.patient = false;
        completed = depth;
        if tree.nodes >= tree.bounds.nodes || tree.must_stop() || settled(&moves[..lines], depth) {
            break;
        }
    }

    let stopped = tree.must_stop();
    let nodes = tree.nodes;
    drop(tree);
    // An iteration cut short leaves what it had not yet looked at with its last value.
    let mut best: Vec<RootMove> = moves.into_iter().take(lines).collect();
    for known in &mut best {
        if known.value == -INFINITE {
            known.value = known.last;
        }
    }
    best.sort_by_key(|known| std::cmp::Reverse(known.value));
    Ok(Answer {
        lines: best
            .iter()
            .map(|known| Line {
                moves: spell_out(request, &table, known),
                score: Score::from_value(known.value),
            })
            .collect(),
        nodes,
        depth: completed,
        stopped,
    })
}

fn check(request: &Request<'_>) -> Result<(), RequestError> {
    let limits = request.limits;
    if limits.nodes.is_none()
        && limits.depth.is_none()
        && limits.time.is_none()
        && request.stop.is_none()
    {
        return Err(RequestError::NoLimit);
    }
    if limits.nodes == Some(0)
        || limits.depth == Some(0)
        || limits.time.is_some_and(|time| time.is_zero())
    {
        return Err(RequestError::ZeroLimit);
    }
    if request.lines == 0 {
        return Err(RequestError::NoLines);
    }
    Ok(())
}

/// An entry a node is plenty; small tables are quick to make and stay in the cache.
fn table_bytes(request: &Request<'_>) -> usize {
    let most = request.table_bytes.unwrap_or(TABLE_BYTES);
    match request.limits.nodes {
        Some(nodes) => {
            let entries = nodes.clamp(1 << 12, 1 << 32).next_power_of_two();
            usize::try_from(entries * 16).map_or(most, |needed| needed.min(most))
        }
        None => most,
    }
}

/// All lines are mates that a deeper search would hardly shorten.
fn settled(lines: &[RootMove], depth: u32) -> bool {
    lines
        .iter()
        .all(|known| match Score::from_value(known.value) {
            Score::Mates(n) | Score::Mated(n) => depth >= 4 * n + 4,
            Score::Centipawns(_) => false,
        })
}

/// One line of one iteration: a narrow window round the last value, widened on the side on which it fails
/// ("Aspiration Windows", Chess Programming Wiki).
fn widen<E: Evaluate>(
    tree: &mut Tree<'_, E>,
    root: &Node,
    moves: &mut [RootMove],
    first: usize,
    depth: i32,
) {
    let guess = moves[first].last;
    let mut margin = 18;
    let (mut alpha, mut beta) = if depth >= 5 && guess.abs() < MATE_BOUND {
        (guess - margin, guess + margin)
    } else {
        (-INFINITE, INFINITE)
    };
    loop {
        let value = pass_over(tree, root, &mut moves[first..], depth, alpha, beta);
        if tree.stopped {
            return;
        }
        moves[first..].sort_by_key(|known| std::cmp::Reverse(known.value));
        margin += margin;
        if value <= alpha {
            beta = (alpha + beta) / 2;
            alpha = if margin > 400 {
                -INFINITE
            } else {
                value - margin
            };
        } else if value >= beta {
            // The new best move may not be searched to its end: it is worth at least this.
            moves[first].last = value;
            beta = if margin > 400 {
                INFINITE
            } else {
                value + margin
            };
        } else {
            return;
        }
        alpha = alpha.max(-INFINITE);
        beta = beta.min(INFINITE);
    }
}

/// One pass over the root moves with one window. When the search is stopped, moves keep the order found so far.
fn pass_over<E: Evaluate>(
    tree: &mut Tree<'_, E>,
    root: &Node,
    moves: &mut [RootMove],
    depth: i32,
    mut alpha: Value,
    beta: Value,
) -> Value {
    let mut best = -INFINITE;
    let mut leader = 0;
    let floor = alpha;
    for known in moves.iter_mut() {
        known.value = -INFINITE;
    }
    for (index, known) in moves.iter_mut().enumerate() {
        let mv = known.mv;
        let child = tree.play(root, mv, 0);
        let extension = i32::from(child.check);
        let deeper = depth - 1 + extension;
        let value = if index == 0 {
            -tree.search::<true>(&child, 1, deeper, -beta, -alpha, false)
        } else {
            let late =
                depth >= 3 && index >= 4 && !mv.is_capture() && !mv.is_promotion() && !child.check;
            let reduction = i32::from(late) + i32::from(late && depth >= 6 && index >= 12);
            let mut value =
                -tree.search::<false>(&child, 1, deeper - reduction, -alpha - 1, -alpha, true);
            if value > alpha && reduction > 0 {
                value = -tree.search::<false>(&child, 1, deeper, -alpha - 1, -alpha, true);
            }
            if value > alpha && value < beta {
                value = -tree.search::<true>(&child, 1, deeper, -beta, -alpha, false);
            }
            value
        };
        tree.take_back();
        if tree.stopped {
            break;
        }
        if index == 0 || value > alpha {
            known.value = value;
            let below = tree.variation(1).moves();
            known.line.truncate(1);
            known.line.extend_from_slice(below);
        }
        if value > best {
            best = value;
            if value > alpha {
                leader = index;
                alpha = value;
            }
            if value >= beta {
                break;
            }
        }
    }
    if tree.stopped {
        // Only a value inside the window is known exactly; the others keep their last one.
        for known in moves.iter_mut() {
            if known.value <= floor || known.value >= beta {
                known.value = -INFINITE;
            }
        }
        moves[..=leader].rotate_right(1);
    }
    best
}

/// The legal moves of a line, drawn out by what the table knows, to the end of the game or a repetition.
fn spell_out(request: &Request<'_>, table: &Table, known: &RootMove) -> Vec<Move> {
    let mut chess: Chess = request.position.chess().clone();
    let mut position = request.position.clone();
    let mut seen = vec![position.key()];
    let mut line = Vec::with_capacity(known.line.len());
    let mut next = known.line.first().copied();
    while let Some(mv) = next.and_then(|packed| packed.find(&chess)) {
        line.push(mv);
        position = position.play(mv);
        chess = position.chess().clone();
        let key = position.key();
        if line.len() >= MAX_PLY || (line.len() >= known.line.len() && seen.contains(&key)) {
            break;
        }
        seen.push(key);
        next = match known.line.get(line.len()) {
            Some(packed) => Some(*packed),
            None if known.value == DRAW => None,
            None => table.look(key).map(|entry| entry.mv),
        };
    }
    line
}

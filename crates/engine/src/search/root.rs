//! The root: iterative deepening (Slate and Atkin 1977, in Frey, Chess Skill in Man and Machine)
//! with aspiration windows, several best lines by leaving out the root moves already placed.

use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, Instant};

use shakmaty::{Chess, Move};

use crate::eval::Evaluate;

use super::margins::Margin;
use super::packed::Packed;
use super::score::{DRAW, INFINITE, MATE_BOUND, MAX_PLY, Score, Value};
use super::table::Table;
use super::techniques::Technique;
use super::tree::{Bounds, Node, Tools, Tree};
use super::{Answer, Line, Mind, Progress, Request, RequestError};

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

/// What there is to search.
pub enum Prepared {
    /// The game is over.
    Over,
    /// These moves, in the order in which they were given.
    Moves(RootMoves),
}

/// The moves at the root.
pub struct RootMoves(Vec<RootMove>);

/// Checks a request and gathers its root moves.
pub fn prepare(request: &Request<'_>) -> Result<Prepared, RequestError> {
    check(request)?;
    let legal = request.position.legal_moves();
    let wanted: &[Move] = request.root_moves.unwrap_or(&legal);
    let mut moves: Vec<RootMove> = Vec::with_capacity(wanted.len());
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
    match (moves.is_empty(), legal.is_empty()) {
        (true, true) => Ok(Prepared::Over),
        (true, false) => Err(RequestError::RootMove),
        (false, _) => Ok(Prepared::Moves(RootMoves(moves))),
    }
}

fn check(request: &Request<'_>) -> Result<(), RequestError> {
    let limits = request.limits;
    let times = [limits.time, limits.soft_time];
    if limits.nodes.is_none()
        && limits.depth.is_none()
        && times == [None, None]
        && request.stop.is_none()
    {
        return Err(RequestError::NoLimit);
    }
    if limits.nodes == Some(0)
        || limits.depth == Some(0)
        || times.iter().flatten().any(Duration::is_zero)
    {
        return Err(RequestError::ZeroLimit);
    }
    if request.lines == 0 {
        return Err(RequestError::NoLines);
    }
    if request.threads == 0 {
        return Err(RequestError::NoThreads);
    }
    Ok(())
}

/// Searches with as many threads as there are minds; the first one answers.
pub fn search<E: Evaluate + Clone + Send>(
    eval: &mut E,
    table: &Table,
    minds: &mut [Mind],
    request: &Request<'_>,
    moves: &mut RootMoves,
    tell: &mut dyn FnMut(&Progress<'_>),
) -> Answer {
    let begun = Instant::now();
    let done = AtomicBool::new(false);
    let together = AtomicU64::new(0);
    let several = request.threads > 1;
    let bounds = Bounds {
        nodes: request.limits.nodes.unwrap_or(u64::MAX),
        until: request.limits.time.and_then(|time| begun.checked_add(time)),
        stop: request.stop,
        done: None,
        together: several.then_some(&together),
    };
    let helping = Bounds {
        done: Some(&done),
        ..bounds
    };
    let (first, others) = minds.split_at_mut(1);
    let Some(first) = first.first_mut() else {
        return Answer::over(); // there is always one mind: no thread at all is refused before
    };
    std::thread::scope(|scope| {
        for (number, mind) in others.iter_mut().take(request.threads - 1).enumerate() {
            let mut eval = eval.clone();
            let mut moves = moves.0.clone();
            scope.spawn(move || {
                let mut thread = Thread::new(&mut eval, table, mind, request, helping);
                // Some begin a ply deeper, so that the threads are not all at the same place.
                thread.iterate(&mut moves, 1 + number as u32 % 2, &mut |_, _| true);
            });
        }
        let mut thread = Thread::new(eval, table, first, request, bounds);
        let completed = thread.iterate(&mut moves.0, 1, &mut |depth, tree: Found<'_>| {
            let elapsed = begun.elapsed();
            let lines = lines_of(request, table, tree.best);
            tell(&Progress {
                depth,
                nodes: tree.nodes.max(together.load(Ordering::Relaxed)),
                elapsed,
                lines: &lines,
                full: table.full(),
            });
            request.limits.soft_time.is_none_or(|soft| elapsed < soft)
        });
        done.store(true, Ordering::Relaxed);
        let stopped = thread.tree.must_stop();
        let nodes = thread.tree.nodes.max(together.load(Ordering::Relaxed));
        // An iteration cut short leaves what it had not yet looked at with its last value.
        let mut best: Vec<RootMove> = moves.0.iter().take(request.lines).cloned().collect();
        for known in &mut best {
            if known.value == -INFINITE {
                known.value = known.last;
            }
        }
        best.sort_by_key(|known| std::cmp::Reverse(known.value));
        Answer {
            lines: lines_of(request, table, &best),
            nodes,
            depth: completed,
            stopped,
        }
    })
}

/// What an iteration has found.
struct Found<'a> {
    best: &'a [RootMove],
    nodes: u64,
}

/// One thread's search from the root.
struct Thread<'a, E> {
    tree: Tree<'a, E>,
    root: Node,
    lines: usize,
    deepest: u32,
}

impl<'a, E: Evaluate> Thread<'a, E> {
    fn new(
        eval: &'a mut E,
        table: &'a Table,
        mind: &'a mut Mind,
        request: &Request<'a>,
        bounds: Bounds<'a>,
    ) -> Self {
        let root = Node::new(request.position.chess(), request.position.key());
        let tools = Tools {
            eval,
            table,
            memory: &mut mind.memory,
            correction: &mut mind.correction,
        };
        Thread {
            tree: Tree::new(tools, request.without, bounds, request.history, &root),
            root,
            lines: request.lines,
            deepest: request.limits.depth.unwrap_or(MAX_DEPTH).min(MAX_DEPTH),
        }
    }

    /// Searches deeper and deeper from a depth on, as long as the limits allow and `go_on` says so after an iteration;
    /// gives the last depth searched to its end.
    fn iterate(
        &mut self,
        moves: &mut [RootMove],
        from: u32,
        go_on: &mut dyn FnMut(u32, Found<'_>) -> bool,
    ) -> u32 {
        let lines = self.lines.min(moves.len());
        let mut completed = 0;
        for depth in from..=self.deepest.max(from) {
            let tree = &mut self.tree;
            tree.root_depth = depth as i32;
            for known in moves.iter_mut() {
                known.last = known.value;
            }
            for first in 0..lines {
                widen(tree, &self.root, moves, first, depth as i32);
                if tree.stopped {
                    return completed;
                }
            }
            tree.patient = false;
            completed = depth;
            let found = Found {
                best: &moves[..lines],
                nodes: tree.nodes,
            };
            let goes_on = go_on(depth, found);
            if !goes_on
                || tree.nodes >= tree.bounds.nodes
                || tree.must_stop()
                || settled(&moves[..lines], depth)
            {
                break;
            }
        }
        completed
    }
}

fn lines_of(request: &Request<'_>, table: &Table, best: &[RootMove]) -> Vec<Line> {
    best.iter()
        .map(|known| Line {
            moves: spell_out(request, table, known),
            score: Score::from_value(known.value),
        })
        .collect()
}

/// An entry a node is plenty; small tables are quick to make and stay in the cache.
pub fn table_bytes(request: &Request<'_>) -> usize {
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
    let mut margin = tree.margin(Margin::Aspiration).max(1);
    let narrow = depth >= 4 && guess.abs() < MATE_BOUND && tree.uses(Technique::Aspiration);
    let (mut alpha, mut beta) = if narrow {
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

//! The tree below the root: principal variation search (Marsland and Campbell, Parallel Search of Strongly Ordered
//! Game Trees, 1982) over alpha-beta (Knuth and Moore, An Analysis of Alpha-Beta Pruning, 1975), with quiescence
//! at the leaves (Shannon 1950; Harris 1975).

use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Instant;

use shakmaty::{Chess, Color, Move, MoveList, Position as _, Role};

use crate::eval::Evaluate;

use super::captures::noisy_moves;
use super::checks::Checks;
use super::key::{key_after, key_after_pass};
use super::order::{Hints, Landing, Memory, Picker, landing};
use super::packed::Packed;
use super::score::{DRAW, INFINITE, MATE_BOUND, MAX_PLY, Value, mated_in};
use super::see;
use super::table::{Bound, Entry, Table};

/// A position in the tree.
#[derive(Clone)]
pub struct Node {
    pub chess: Chess,
    pub key: u64,
    pub check: bool,
}

impl Node {
    pub fn new(chess: &Chess, key: u64) -> Node {
        Node {
            chess: chess.clone(),
            key,
            check: chess.is_check(),
        }
    }
}

/// What one ply of the line being searched keeps.
#[derive(Debug, Clone, Copy)]
struct Frame {
    eval: Value,
    killers: [Packed; 2],
    landing: Option<Landing>,
    /// Plies since the root or the last pass: repetitions are not looked for across a pass.
    since_pass: usize,
    excluded: Packed,
}

const FRAME: Frame = Frame {
    eval: 0,
    killers: [Packed::NONE; 2],
    landing: None,
    since_pass: 0,
    excluded: Packed::NONE,
};

/// The line below a ply.
#[derive(Debug, Clone, Copy)]
pub struct Variation {
    moves: [Packed; MAX_PLY],
    len: usize,
}

impl Variation {
    const EMPTY: Variation = Variation {
        moves: [Packed::NONE; MAX_PLY],
        len: 0,
    };

    pub fn moves(&self) -> &[Packed] {
        &self.moves[..self.len]
    }
}

/// When to stop.
#[derive(Debug, Clone, Copy)]
pub struct Bounds<'a> {
    pub nodes: u64,
    pub until: Option<Instant>,
    pub stop: Option<&'a AtomicBool>,
}

/// One search: the tables, the line being searched, the counters.
pub struct Tree<'a, E> {
    pub eval: &'a mut E,
    pub table: &'a mut Table,
    pub memory: &'a mut Memory,
    pub bounds: Bounds<'a>,
    pub nodes: u64,
    pub stopped: bool,
    /// Limits do not hold yet: the first ply is searched to its end.
    pub patient: bool,
    /// Keys of the game so far and of the line being searched, the present position last.
    keys: Vec<u64>,
    root_index: usize,
    pub root_depth: i32,
    frames: Vec<Frame>,
    variations: Vec<Variation>,
}

/// Nodes between two looks at the clock and the stop flag; a power of two.
const LOOK_EVERY: u64 = 512;

/// Plies by which a late move is searched less deeply, in 256ths, by the binary logarithms of depth and move number
/// ("Late Move Reductions", Chess Programming Wiki). Integers, so that it is the same on every machine.
const fn log2_256(n: i32) -> i32 {
    let whole = 31 - (n as u32).leading_zeros() as i32;
    let part = ((n << 8) >> whole) - 256;
    (whole << 8) + part
}

fn late_reduction(depth: i32, number: i32) -> i32 {
    let product = (log2_256(depth.clamp(1, 63)) * log2_256(number.clamp(1, 63))) >> 8;
    (100 + product * 70 / 256) / 256
}

impl<'a, E: Evaluate> Tree<'a, E> {
    pub fn new(
        eval: &'a mut E,
        table: &'a mut Table,
        memory: &'a mut Memory,
        bounds: Bounds<'a>,
        history: &[u64],
        root: &Node,
    ) -> Self {
        eval.refresh(&root.chess);
        let mut keys = Vec::with_capacity(history.len() + MAX_PLY + 2);
        keys.extend_from_slice(history);
        keys.push(root.key);
        Tree {
            eval,
            table,
            memory,
            bounds,
            nodes: 0,
            stopped: false,
            patient: true,
            root_index: keys.len() - 1,
            keys,
            root_depth: 0,
            frames: vec![
                Frame {
                    since_pass: usize::MAX / 2,
                    ..FRAME
                };
                MAX_PLY + 4
            ],
            variations: vec![Variation::EMPTY; MAX_PLY + 2],
        }
    }

    /// The line found below the root's children.
    pub fn variation(&self, ply: usize) -> &Variation {
        &self.variations[ply]
    }

    pub fn play(&mut self, node: &Node, mv: Move, ply: usize) -> Node {
        self.count();
        self.eval.push(&node.chess, mv);
        let mut chess = node.chess.clone();
        chess.play_unchecked(mv);
        let key = key_after(&node.chess, node.key, mv, &chess);
        self.keys.push(key);
        self.frames[ply].landing = Some(landing(node.chess.turn(), mv));
        self.frames[ply + 1].since_pass = self.frames[ply].since_pass.saturating_add(1);
        let check = chess.is_check();
        Node { chess, key, check }
    }

    pub fn take_back(&mut self) {
        self.eval.pop();
        self.keys.pop();
    }

    fn count(&mut self) {
        self.nodes += 1;
        if self.patient {
            return;
        }
        if self.nodes >= self.bounds.nodes {
            self.stopped = true;
        }
        if self.nodes.is_multiple_of(LOOK_EVERY) && self.must_stop() {
            self.stopped = true;
        }
    }

    /// Whether the clock or the stop flag ends the search.
    pub fn must_stop(&self) -> bool {
        self.bounds
            .stop
            .is_some_and(|flag| flag.load(Ordering::Relaxed))
            || self
                .bounds
                .until
                .is_some_and(|until| Instant::now() >= until)
    }

    /// Repetition, fifty moves, dead position. A position met once before in the tree counts as repeated,
    /// one of the game before only when it stood twice already.
    fn is_draw(&self, node: &Node, ply: usize) -> bool {
        let clock = node.chess.halfmoves() as usize;
        if clock >= 100 && (!node.check || !node.chess.legal_moves().is_empty()) {
            return true;
        }
        if node.chess.board().occupied().count() <= 4 && node.chess.is_insufficient_material() {
            return true;
        }
        let last = self.keys.len() - 1;
        let reach = clock.min(self.frames[ply].since_pass).min(last);
        let mut earlier = 0;
        for back in (4..=reach).step_by(2) {
            if self.keys[last - back] == node.key {
                if last - back >= self.root_index {
                    return true;
                }
                earlier += 1;
                if earlier == 2 {
                    return true;
                }
            }
        }
        false
    }

    fn before(&self, ply: usize) -> [Option<Landing>; 2] {
        [
            ply.checked_sub(1).and_then(|p| self.frames[p].landing),
            ply.checked_sub(2).and_then(|p| self.frames[p].landing),
        ]
    }

    /// Puts a move before the line of the next ply.
    fn extend_variation(&mut self, ply: usize, mv: Move) {
        let (upper, lower) = self.variations.split_at_mut(ply + 1);
        let (here, below) = (&mut upper[ply], &lower[0]);
        let len = below.len.min(MAX_PLY - 1);
        here.moves[0] = Packed::new(mv);
        here.moves[1..=len].copy_from_slice(&below.moves[..len]);
        here.len = len + 1;
    }

    /// The value of a node below the root.
    pub fn search<const PV: bool>(
        &mut self,
        node: &Node,
        ply: usize,
        depth: i32,
        mut alpha: Value,
        mut beta: Value,
        cut: bool,
    ) -> Value {
        if depth <= 0 {
            return self.quiesce::<PV>(node, ply, true, alpha, beta);
        }
        self.variations[ply].len = 0;
        if self.stopped {
            return DRAW;
        }
        if self.is_draw(node, ply) {
            return DRAW;
        }
        if ply >= MAX_PLY - 1 {
            return if node.check {
                DRAW
            } else {
                self.eval.evaluate(&node.chess)
            };
        }
        // No mate here can be better than one already found nearer to the root
        // ("Mate Distance Pruning", Chess Programming Wiki).
        alpha = alpha.max(mated_in(ply));
        beta = beta.min(-mated_in(ply + 1));
        if alpha >= beta {
            return alpha;
        }

        let excluded = self.frames[ply].excluded;
        let entry = if excluded.is_none() {
            self.table.look(node.key)
        } else {
            None
        };
        if let Some(found) = entry
            && !PV
            && i32::from(found.depth) >= depth
            && node.chess.halfmoves() < 90
        {
            let value = found.value(ply);
            if settles(found.bound, value, alpha, beta) {
                return value;
            }
        }
        let table_move = entry.map_or(Packed::NONE, |found| found.mv);

        // Static value, corrected by what the table knows better.
        let raw = if node.check {
            -INFINITE
        } else if !excluded.is_none() {
            self.frames[ply].eval
        } else {
            match entry.map(|found| Value::from(found.eval)) {
                Some(kept) if kept != -INFINITE => kept,
                _ => self.eval.evaluate(&node.chess),
            }
        };
        self.frames[ply].eval = raw;
        let eval = if node.check {
            raw
        } else {
            refine(raw, entry, ply)
        };
        let improving = !node.check && ply >= 2 && raw > self.frames[ply - 2].eval;
        let mut depth = depth;
        self.frames[ply + 2].killers = [Packed::NONE; 2];

        if !PV && !node.check && excluded.is_none() {
            // So far ahead that a shallow search will not lose it ("Reverse Futility Pruning", Chess Programming Wiki).
            if depth <= 4
                && beta.abs() < MATE_BOUND
                && eval - 75 * (depth - i32::from(improving)) >= beta
            {
                return eval;
            }
            // So far behind that only captures can help ("Razoring", Birmingham and Kent 1977).
            if depth <= 3 && eval + 200 + 200 * depth * depth <= alpha {
                let value = self.quiesce::<false>(node, ply, true, alpha, alpha + 1);
                if value <= alpha {
                    return value;
                }
            }
            // If even a pass is good enough, a move will be (Donninger, Null Move and Deep Search, 1993).
            if depth >= 3
                && eval >= beta
                && raw >= beta - 20 * depth + 120
                && ply > 0
                && self.frames[ply - 1].landing.is_some()
                && beta > -MATE_BOUND
                && has_pieces(&node.chess, node.chess.turn())
                && let Ok(passed) = node.chess.clone().swap_turn()
            {
                let reduction = 3 + depth / 4 + ((eval - beta) / 200).min(3);
                let key = key_after_pass(&node.chess, node.key);
                let child = Node {
                    chess: passed,
                    key,
                    check: false,
                };
                self.count();
                self.keys.push(key);
                self.frames[ply].landing = None;
                self.frames[ply + 1].since_pass = 0;
                let value = -self.search::<false>(
                    &child,
                    ply + 1,
                    depth - reduction,
                    -beta,
                    -beta + 1,
                    !cut,
                );
                self.keys.pop();
                if self.stopped {
                    return DRAW;
                }
                if value >= beta {
                    // A mate after a pass is no proof; with few pieces a pass may hide zugzwang, so look again.
                    let value = if value >= MATE_BOUND { beta } else { value };
                    if !few_pieces(&node.chess, node.chess.turn()) && depth < 12 {
                        return value;
                    }
                    self.frames[ply].excluded = NO_PASS;
                    let again =
                        self.search::<false>(node, ply, depth - reduction, beta - 1, beta, false);
                    self.frames[ply].excluded = Packed::NONE;
                    if self.stopped {
                        return DRAW;
                    }
                    if again >= beta {
                        return value;
                    }
                }
            }
        }

        // No idea which move to try first: look less deeply now, the table will know next time
        // ("Internal Iterative Reductions", Chess Programming Wiki).
        if depth >= 4 && table_move.is_none() && (PV || cut) && excluded.is_none() {
            depth -= 1;
        }

        let moves = node.chess.legal_moves();
        if moves.is_empty() {
            return if !excluded.is_none() && excluded != NO_PASS {
                alpha
            } else if node.check {
                mated_in(ply)
            } else {
                DRAW
            };
        }
        let before = self.before(ply);
        let hints = Hints {
            table: table_move,
            killers: self.frames[ply].killers,
            counter: self.memory.counter(before[0]),
            before,
        };
        let mut picker = Picker::new(&node.chess, moves, &hints, self.memory);
        let checks = Checks::new(&node.chess);
        let color = node.chess.turn();
        let original_alpha = alpha;
        let mut best = -INFINITE;
        let mut best_move = None;
        let mut number = 0;
        let mut quiets_tried: [Option<Move>; 64] = [None; 64];
        let mut quiet_count = 0;
        let mut captures_tried: [Option<Move>; 32] = [None; 32];
        let mut capture_count = 0;

        while let Some((mv, losing)) = picker.next(&node.chess) {
            let packed = Packed::new(mv);
            if packed == excluded {
                continue;
            }
            number += 1;
            let quiet = !mv.is_capture() && !mv.is_promotion();
            let history = if quiet {
                self.memory.quiet(color, mv, before)
            } else {
                0
            };

            // Moves that promise little near the leaves are left out, once something has been found.
            if !PV && best > -MATE_BOUND && !node.check && !checks.gives(mv) {
                let skip = if quiet {
                    let late = 3 + depth * depth / (2 - i32::from(improving));
                    let hopeless = depth <= 6 && raw + 90 + 90 * depth + history / 128 <= alpha;
                    (depth <= 7 && number > late)
                        || hopeless
                        || (depth <= 3 && history < -3000 * depth)
                        || (depth <= 6 && !see::wins_at_least(&node.chess, mv, -50 * depth))
                } else {
                    losing && depth <= 5 && !see::wins_at_least(&node.chess, mv, -110 * depth)
                };
                if skip {
                    continue;
                }
            }

            // One move that is much better than all others is searched deeper (Anantharaman, Campbell and Hsu,
            // Singular Extensions: Adding Selectivity to Brute-Force Searching, 1990).
            let mut extension = 0;
            if let Some(found) = entry
                && packed == table_move
                && depth >= 7
                && excluded.is_none()
                && i32::from(found.depth) >= depth - 3
                && matches!(found.bound, Bound::Lower | Bound::Exact)
                && found.value(ply).abs() < MATE_BOUND
                && (ply as i32) < 2 * self.root_depth
            {
                let target = found.value(ply) - 2 * depth;
                self.frames[ply].excluded = packed;
                let kept = self.frames[ply].landing;
                let value =
                    self.search::<false>(node, ply, (depth - 1) / 2, target - 1, target, cut);
                self.frames[ply].excluded = Packed::NONE;
                self.frames[ply].landing = kept;
                if self.stopped {
                    return DRAW;
                }
                if value < target {
                    extension = 1;
                } else if target >= beta && !PV {
                    // Several moves are good enough (multi-cut, Björnsson and Marsland 2001).
                    return target;
                }
            }

            let child = self.play(node, mv, ply);

            // A check is a threat that must be seen to its end ("Check Extensions", Chess Programming Wiki).
            if child.check
                && extension == 0
                && (ply as i32) < 2 * self.root_depth
                && (!losing || depth <= 2)
            {
                extension = i32::from(PV || see::wins_at_least(&node.chess, mv, 0));
            }
            let deeper = depth - 1 + extension;

            let mut value;
            if number == 1 {
                value = if PV {
                    -self.search::<true>(&child, ply + 1, deeper, -beta, -alpha, false)
                } else {
                    -self.search::<false>(&child, ply + 1, deeper, -beta, -alpha, !cut)
                };
            } else {
                let mut reduction = 0;
                if depth >= 3 && number > 1 + i32::from(PV) && (quiet || losing) {
                    reduction = late_reduction(depth, number);
                    reduction -= i32::from(PV);
                    reduction += i32::from(cut);
                    reduction -= i32::from(child.check || node.check);
                    reduction += i32::from(!improving && !node.check);
                    if quiet {
                        reduction -= (history / 6000).clamp(-2, 2);
                        reduction -=
                            i32::from(hints.killers.contains(&packed) || hints.counter == packed);
                    } else {
                        reduction -= 1;
                    }
                    reduction = reduction.clamp(0, (deeper - 1).max(0));
                }
                value = -self.search::<false>(
                    &child,
                    ply + 1,
                    deeper - reduction,
                    -alpha - 1,
                    -alpha,
                    true,
                );
                if value > alpha && reduction > 0 {
                    value =
                        -self.search::<false>(&child, ply + 1, deeper, -alpha - 1, -alpha, !cut);
                }
                if PV && value > alpha && value < beta {
                    value = -self.search::<true>(&child, ply + 1, deeper, -beta, -alpha, false);
                }
            }
            self.take_back();
            if self.stopped {
                return DRAW;
            }

            if value > best {
                best = value;
                if value > alpha {
                    best_move = Some(mv);
                    if PV {
                        self.extend_variation(ply, mv);
                    }
                    if value >= beta {
                        break;
                    }
                    alpha = value;
                }
            }
            if quiet {
                if quiet_count < quiets_tried.len() {
                    quiets_tried[quiet_count] = Some(mv);
                    quiet_count += 1;
                }
            } else if capture_count < captures_tried.len() {
                captures_tried[capture_count] = Some(mv);
                capture_count += 1;
            }
        }

        if number == 0 {
            // Only the excluded move is legal.
            return original_alpha;
        }
        if best >= beta
            && let Some(mv) = best_move
        {
            let bonus = (150 * depth - 60).clamp(0, 1800);
            if mv.is_capture() || mv.is_promotion() {
                self.memory.reward_capture(color, mv, bonus);
            } else {
                let packed = Packed::new(mv);
                let killers = &mut self.frames[ply].killers;
                if killers[0] != packed {
                    *killers = [packed, killers[0]];
                }
                self.memory.set_counter(before[0], mv);
                self.memory.reward_quiet(color, mv, before, bonus);
                for tried in quiets_tried.iter().take(quiet_count).flatten() {
                    self.memory.reward_quiet(color, *tried, before, -bonus);
                }
            }
            for tried in captures_tried.iter().take(capture_count).flatten() {
                self.memory.reward_capture(color, *tried, -bonus);
            }
        }
        if excluded.is_none() {
            let bound = if best >= beta {
                Bound::Lower
            } else if best > original_alpha {
                Bound::Exact
            } else {
                Bound::Upper
            };
            let mv = best_move.map_or(Packed::NONE, Packed::new);
            self.table.store(node.key, ply, mv, best, raw, depth, bound);
        }
        best
    }

    /// Captures, promotions and answers to checks, until the position is quiet.
    ///
    /// The `first` ply also tries quiet checks, so that mates and double attacks behind a check are seen.
    pub fn quiesce<const PV: bool>(
        &mut self,
        node: &Node,
        ply: usize,
        first: bool,
        mut alpha: Value,
        beta: Value,
    ) -> Value {
        self.variations[ply].len = 0;
        if self.stopped || self.is_draw(node, ply) {
            return DRAW;
        }
        if ply >= MAX_PLY - 1 {
            return if node.check {
                DRAW
            } else {
                self.eval.evaluate(&node.chess)
            };
        }
        let entry = self.table.look(node.key);
        if let Some(found) = entry
            && !PV
            && node.chess.halfmoves() < 90
        {
            let value = found.value(ply);
            if settles(found.bound, value, alpha, beta) {
                return value;
            }
        }
        let original_alpha = alpha;
        let mut raw = -INFINITE;
        let mut best = -INFINITE;
        let moves;
        if node.check {
            moves = node.chess.legal_moves();
            if moves.is_empty() {
                return mated_in(ply);
            }
        } else {
            raw = match entry {
                Some(found) if Value::from(found.eval) != -INFINITE => Value::from(found.eval),
                _ => self.eval.evaluate(&node.chess),
            };
            best = refine(raw, entry, ply);
            if best >= beta {
                return best;
            }
            alpha = alpha.max(best);
            let mut noisy = noisy_moves(&node.chess);
            if first {
                add_quiet_checks(&node.chess, &mut noisy);
            }
            moves = noisy;
        }
        let before = self.before(ply);
        let hints = Hints {
            table: entry.map_or(Packed::NONE, |found| found.mv),
            killers: [Packed::NONE; 2],
            counter: Packed::NONE,
            before,
        };
        let mut picker = Picker::new(&node.chess, moves, &hints, self.memory);
        let hope = best + 180;
        let mut best_move = None;
        let mut number = 0;
        while let Some((mv, losing)) = picker.next(&node.chess) {
            number += 1;
            if best > -MATE_BOUND {
                let quiet = !mv.is_capture() && !mv.is_promotion();
                if losing || (node.check && quiet && number > 2) {
                    break;
                }
                // Even the piece taken does not reach alpha ("Delta Pruning", Chess Programming Wiki).
                if !node.check && !quiet && !mv.is_promotion() {
                    let gain = mv.capture().map_or(0, see::worth);
                    if hope + gain <= alpha {
                        best = best.max(hope + gain);
                        continue;
                    }
                }
            }
            let child = self.play(node, mv, ply);
            let value = -self.quiesce::<PV>(&child, ply + 1, false, -beta, -alpha);
            self.take_back();
            if self.stopped {
                return DRAW;
            }
            if value > best {
                best = value;
                if value > alpha {
                    best_move = Some(mv);
                    if PV {
                        self.extend_variation(ply, mv);
                    }
                    if value >= beta {
                        break;
                    }
                    alpha = value;
                }
            }
        }
        let bound = if best >= beta {
            Bound::Lower
        } else if PV && best > original_alpha {
            Bound::Exact
        } else {
            Bound::Upper
        };
        let mv = best_move.map_or(Packed::NONE, Packed::new);
        self.table.store(node.key, ply, mv, best, raw, 0, bound);
        best
    }
}

/// Adds the checks that neither capture nor promote nor lose the piece.
fn add_quiet_checks(chess: &Chess, moves: &mut MoveList) {
    let checks = Checks::new(chess);
    if checks.none_possible(chess) {
        return;
    }
    for mv in chess.legal_moves() {
        let plain = matches!(
            mv,
            Move::Normal {
                capture: None,
                promotion: None,
                ..
            }
        );
        if plain && checks.gives(mv) && see::wins_at_least(chess, mv, 0) {
            moves.push(mv);
        }
    }
}

/// Whether what the table knows of a node settles it within a window.
fn settles(bound: Bound, value: Value, alpha: Value, beta: Value) -> bool {
    match bound {
        Bound::Exact => true,
        Bound::Lower => value >= beta,
        Bound::Upper => value <= alpha,
        Bound::None => false,
    }
}

/// The static value, or what the table knows better than it.
fn refine(eval: Value, entry: Option<Entry>, ply: usize) -> Value {
    let Some(found) = entry else {
        return eval;
    };
    let value = found.value(ply);
    let better = match found.bound {
        Bound::Exact => true,
        Bound::Lower => value > eval,
        Bound::Upper => value < eval,
        Bound::None => false,
    };
    if better && value.abs() < MATE_BOUND {
        value
    } else {
        eval
    }
}

/// In place of an excluded move: this search may not pass, and leaves no trace in the table.
const NO_PASS: Packed = Packed::NOTHING_LEGAL;

/// Whether a side has a piece beside king and pawns.
fn has_pieces(chess: &Chess, color: Color) -> bool {
    let board = chess.board();
    (board.by_color(color) & !board.pawns() & !board.kings()).any()
}

/// Whether a side has one piece only, so that zugzwang is to be feared.
fn few_pieces(chess: &Chess, color: Color) -> bool {
    let board = chess.board();
    let pieces = board.by_color(color) & !board.pawns() & !board.kings();
    pieces.count() <= 1 && (pieces & board.by_role(Role::Queen)).is_empty()
}

//! The nodes between root and leaves: principal variation search (Marsland and Campbell, Parallel Search of Strongly
//! Ordered Game Trees, 1982) over alpha-beta (Knuth and Moore, An Analysis of Alpha-Beta Pruning, 1975).
//!
//! Each technique's reference stands with its name in `techniques.rs`. Margins are in centipawns.

use shakmaty::{Chess, Color, Move, Position as _, Role};

use crate::eval::Evaluate;

use super::checks::Checks;
use super::margins::Margin;
use super::order::{Hints, Picked, Picker};
use super::packed::Packed;
use super::score::{DRAW, INFINITE, MATE_BOUND, MAX_PLY, Value, mated_in};
use super::see;
use super::table::{Bound, Entry, Finding};
use super::techniques::Technique;
use super::tree::{Node, Tree};

/// In place of an excluded move: this search may not pass, and leaves no trace in the table.
const NO_PASS: Packed = Packed::NOTHING_LEGAL;
/// A line may be so many plies longer than the iteration's depth by extensions.
const EXTENDED: i32 = 20;

/// Depths up to which quiet moves and captures that lose material are left out.
const EXCHANGE_DEPTH: i32 = 6;
const EXCHANGE_CAPTURE_DEPTH: i32 = 5;
/// Least depth at which passes are verified even with many pieces.
const VERIFY: i32 = 8;
const INTERNAL_REDUCTION: i32 = 4;

/// Binary logarithm in 256ths: integers, so that it is the same on every machine.
const fn log2_256(n: i32) -> i32 {
    let whole = 31 - (n as u32).leading_zeros() as i32;
    let part = ((n << 8) >> whole) - 256;
    (whole << 8) + part
}

/// Plies by which a late move is searched less deeply, by the logarithms of depth and move number.
fn late_reduction(depth: i32, number: i32, base: i32, slope: i32) -> i32 {
    let product = (log2_256(depth.clamp(1, 63)) * log2_256(number.clamp(1, 63))) >> 8;
    (base + product * slope / 256) / 256
}

/// What a node knows of itself before its moves.
#[derive(Clone, Copy)]
struct Here {
    ply: usize,
    depth: i32,
    beta: Value,
    /// A node that is expected to fail high.
    cut: bool,
    /// The corrected static value, and the same where the table knows better.
    corrected: Value,
    refined: Value,
    improving: bool,
    excluded: Packed,
    entry: Option<Entry>,
}

/// Moves that are remembered as tried in vain, at most.
const QUIETS: usize = 48;
const CAPTURES: usize = 20;

/// A few moves that were tried, in the order of trying.
struct Tried<const N: usize> {
    moves: [Option<Move>; N],
    count: usize,
}

impl<const N: usize> Tried<N> {
    fn new() -> Self {
        Tried {
            moves: [None; N],
            count: 0,
        }
    }

    fn push(&mut self, mv: Move) {
        if let Some(place) = self.moves.get_mut(self.count) {
            *place = Some(mv);
            self.count += 1;
        }
    }

    fn iter(&self) -> impl Iterator<Item = Move> + '_ {
        self.moves[..self.count].iter().flatten().copied()
    }
}

impl<E: Evaluate> Tree<'_, E> {
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
        if self.stopped || self.is_draw(node, ply) {
            return DRAW;
        }
        if ply >= MAX_PLY - 1 {
            return self.at_the_edge(node);
        }
        if self.uses(Technique::MateDistance) {
            alpha = alpha.max(mated_in(ply));
            beta = beta.min(-mated_in(ply + 1));
            if alpha >= beta {
                return alpha;
            }
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
            && clock_is_far(node, depth)
            && self.uses(Technique::TableCuts)
        {
            let value = found.value(ply);
            if settles(found.bound, value, alpha, beta) {
                return value;
            }
        }

        let (raw, corrected) = self.static_value(node, ply, entry, excluded);
        let mut here = Here {
            ply,
            depth,
            beta,
            cut,
            corrected,
            refined: if node.check {
                corrected
            } else {
                refine(corrected, entry, ply)
            },
            improving: !node.check && ply >= 2 && corrected > self.frames[ply - 2].eval,
            excluded,
            entry,
        };

        if !PV
            && !node.check
            && excluded.is_none()
            && let Some(value) = self.prune(node, &here, alpha)
        {
            return value;
        }

        let table_move = entry.map_or(Packed::NONE, |found| found.mv);
        if here.depth >= INTERNAL_REDUCTION
            && table_move.is_none()
            && (PV || cut)
            && excluded.is_none()
            && self.uses(Technique::InternalReduction)
        {
            here.depth -= 1;
        }
        self.moves::<PV>(node, here, raw, alpha)
    }

    /// The value at the deepest ply there is.
    pub(super) fn at_the_edge(&mut self, node: &Node) -> Value {
        if node.check {
            DRAW
        } else {
            self.eval.evaluate(&node.chess)
        }
    }

    /// The static value as the evaluation gives it, and corrected.
    fn static_value(
        &mut self,
        node: &Node,
        ply: usize,
        entry: Option<Entry>,
        excluded: Packed,
    ) -> (Value, Value) {
        let (raw, corrected) = if node.check {
            (-INFINITE, -INFINITE)
        } else if !excluded.is_none() {
            (self.frames[ply].raw, self.frames[ply].eval)
        } else {
            let raw = match entry.map(|found| Value::from(found.eval)) {
                Some(kept) if kept != -INFINITE => kept,
                _ => self.eval.evaluate(&node.chess),
            };
            (raw, self.corrected(node, raw))
        };
        self.frames[ply].raw = raw;
        self.frames[ply].eval = corrected;
        (raw, corrected)
    }

    pub(super) fn corrected(&self, node: &Node, raw: Value) -> Value {
        if self.uses(Technique::Correction) {
            raw + self.correction.of(&node.chess)
        } else {
            raw
        }
    }

    /// A value for the whole node without looking at its moves, where it stands far from the window.
    fn prune(&mut self, node: &Node, here: &Here, alpha: Value) -> Option<Value> {
        let Here {
            ply, depth, beta, ..
        } = *here;
        let margin = self.margin(Margin::ReverseFutility);
        if depth <= self.margin(Margin::ReverseFutilityDepth)
            && beta.abs() < MATE_BOUND
            && here.refined.abs() < MATE_BOUND
            && here.refined - margin * (depth - i32::from(here.improving)) >= beta
            && self.uses(Technique::ReverseFutility)
        {
            return Some(here.refined);
        }
        let margin = self.margin(Margin::Razoring);
        if depth <= self.margin(Margin::RazoringDepth)
            && here.refined + (margin << depth) <= alpha
            && self.uses(Technique::Razoring)
        {
            let value = self.quiesce::<false>(node, ply, true, alpha, alpha + 1);
            if value <= alpha {
                return Some(value);
            }
        }
        self.try_pass(node, here)
    }

    /// The value after a pass, where that alone is good enough.
    fn try_pass(&mut self, node: &Node, here: &Here) -> Option<Value> {
        let Here {
            ply, depth, beta, ..
        } = *here;
        let mover = node.chess.turn();
        if depth < 3
            || here.refined < beta
            || here.corrected + self.margin(Margin::NullMoveStatic) < beta
            || beta <= -MATE_BOUND
            || ply == 0
            || self.frames[ply - 1].landing.is_none()
            || !has_pieces(&node.chess, mover)
            || !self.uses(Technique::NullMove)
        {
            return None;
        }
        let passed = node.chess.clone().swap_turn().ok()?;
        let far = here.refined - beta >= self.margin(Margin::NullMoveFar);
        let reduction = self.margin(Margin::NullMove) + depth / 4 + i32::from(far);
        let child = self.pass(node, passed, ply);
        let value = -self.search::<false>(
            &child,
            ply + 1,
            depth - reduction,
            -beta,
            -beta + 1,
            !here.cut,
        );
        self.take_back_pass();
        if self.stopped {
            return Some(DRAW);
        }
        if value < beta {
            return None;
        }
        // A mate after a pass is no proof.
        let value = if value >= MATE_BOUND { beta } else { value };
        // An error costs most in the upper half of the tree.
        let upper = 2 * depth > self.root_depth && depth >= VERIFY;
        if (!few_pieces(&node.chess, mover) && !upper) || !self.uses(Technique::Verification) {
            return Some(value);
        }
        self.frames[ply].excluded = NO_PASS;
        let again = self.search::<false>(node, ply, depth - reduction, beta - 1, beta, false);
        self.frames[ply].excluded = Packed::NONE;
        if self.stopped {
            return Some(DRAW);
        }
        (again >= beta).then_some(value)
    }

    /// Tries the moves of a node.
    fn moves<const PV: bool>(
        &mut self,
        node: &Node,
        here: Here,
        raw: Value,
        mut alpha: Value,
    ) -> Value {
        let Here {
            ply,
            depth,
            beta,
            cut,
            excluded,
            ..
        } = here;
        let mut legal = node.chess.legal_moves();
        if legal.is_empty() {
            return if node.check { mated_in(ply) } else { DRAW };
        }
        let before = self.before(ply);
        let hints = Hints {
            table: here.entry.map_or(Packed::NONE, |found| found.mv),
            killers: self.frames[ply].killers,
            counter: self.memory.counter(before[0]),
            before,
        };
        let mut picker = Picker::new(&node.chess, &mut legal, &hints, self.memory);
        let checks = Checks::new(&node.chess);
        let color = node.chess.turn();
        let original_alpha = alpha;
        let mut best = -INFINITE;
        let mut best_move = None;
        let mut number = 0;
        let base = self.margin(Margin::ReductionBase);
        let slope = self.margin(Margin::ReductionSlope);
        let mut quiets = Tried::<QUIETS>::new();
        let mut captures = Tried::<CAPTURES>::new();

        while let Some(Picked {
            mv,
            losing,
            history,
        }) = picker.next(&node.chess)
        {
            let packed = Packed::new(mv);
            if packed == excluded {
                continue;
            }
            number += 1;
            let quiet = is_quiet(mv);
            let history = if quiet {
                history.unwrap_or_else(|| self.memory.quiet(color, mv, before))
            } else {
                0
            };
            let promising = PV || best <= -MATE_BOUND || node.check || checks.gives(mv);
            if !promising && self.hopeless(node, &here, mv, number, losing, history, alpha) {
                continue;
            }

            let mut extension = 0;
            if packed == hints.table
                && let Some(found) = here.entry
            {
                match self.stands_out::<PV>(node, &here, found, packed) {
                    Standing::Alone(plies) => extension = plies,
                    Standing::OneOfMany(value) => return value,
                    Standing::Plain => {}
                }
                if self.stopped {
                    return DRAW;
                }
            }

            let child = self.play(node, mv, ply);
            if child.check
                && extension == 0
                && (ply as i32) < self.root_depth + EXTENDED
                && (!losing || depth <= 2)
                && self.uses(Technique::CheckExtension)
            {
                extension = i32::from(PV || see::wins_at_least(&node.chess, mv, 0));
            }
            let deeper = depth - 1 + extension;

            let mut value = 0;
            let mut open = number == 1 || !self.uses(Technique::NullWindow);
            if !open {
                let mut reduction = 0;
                if depth >= 3
                    && number > 1 + i32::from(PV)
                    && (quiet || losing)
                    && self.uses(Technique::Reductions)
                {
                    reduction = late_reduction(depth, number, base, slope) - i32::from(PV)
                        + i32::from(cut)
                        - i32::from(child.check || node.check)
                        + i32::from(!here.improving && !node.check);
                    if quiet {
                        let known = hints.killers.contains(&packed) || hints.counter == packed;
                        reduction -= (history / self.margin(Margin::ReductionHistory).max(1))
                            .clamp(-2, 2)
                            + i32::from(known);
                    } else {
                        reduction -= 1;
                    }
                    reduction = reduction.clamp(0, (deeper - 1).max(0));
                }
                let narrow = |tree: &mut Self, depth, cut| {
                    -tree.search::<false>(&child, ply + 1, depth, -alpha - 1, -alpha, cut)
                };
                value = narrow(self, deeper - reduction, true);
                if value > alpha && reduction > 0 {
                    value = narrow(self, deeper, !cut);
                }
                open = PV && value > alpha && value < beta;
            }
            if open {
                value = if PV {
                    -self.search::<true>(&child, ply + 1, deeper, -beta, -alpha, false)
                } else {
                    -self.search::<false>(&child, ply + 1, deeper, -beta, -alpha, !cut)
                };
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
                quiets.push(mv);
            } else {
                captures.push(mv);
            }
        }

        if number == 0 {
            // Only the excluded move is legal.
            return original_alpha;
        }
        if best >= beta
            && let Some(mv) = best_move
        {
            self.remember(node, &here, mv, &quiets, &captures);
        }
        if excluded.is_none() {
            let bound = if best >= beta {
                Bound::Lower
            } else if best > original_alpha {
                Bound::Exact
            } else {
                Bound::Upper
            };
            self.learn(node, &here, best, best_move, bound);
            self.table.store(
                node.key,
                ply,
                Finding {
                    mv: best_move.map_or(Packed::NONE, Packed::new),
                    value: best,
                    eval: raw,
                    depth,
                    bound,
                },
            );
        }
        best
    }

    /// Whether a move promises so little near the leaves that it is left out.
    #[allow(clippy::too_many_arguments)] // what is known of one move
    fn hopeless(
        &self,
        node: &Node,
        here: &Here,
        mv: Move,
        number: i32,
        losing: bool,
        history: i32,
        alpha: Value,
    ) -> bool {
        let depth = here.depth;
        let loses = |deepest: i32, margin: Margin| {
            depth <= deepest
                && self.uses(Technique::ExchangePruning)
                && !see::wins_at_least(&node.chess, mv, -self.margin(margin) * depth)
        };
        if !is_quiet(mv) {
            return losing && loses(EXCHANGE_CAPTURE_DEPTH, Margin::ExchangeCapture);
        }
        // Triangular numbers, half as many more where things are getting better.
        let triangle = depth * (depth + 1) / 2;
        let late =
            self.margin(Margin::LateMoves) + triangle + i32::from(here.improving) * triangle / 2;
        let margin = self.margin(Margin::Futility);
        (depth <= self.margin(Margin::LateMovesDepth)
            && number > late
            && self.uses(Technique::LateMoves))
            || (depth <= self.margin(Margin::FutilityDepth)
                && here.corrected + margin + margin * depth + history / 128 <= alpha
                && self.uses(Technique::Futility))
            || loses(EXCHANGE_DEPTH, Margin::ExchangeQuiet)
    }

    /// Whether the table's move is much better than all others: they are searched without it.
    fn stands_out<const PV: bool>(
        &mut self,
        node: &Node,
        here: &Here,
        found: Entry,
        packed: Packed,
    ) -> Standing {
        let Here { ply, depth, .. } = *here;
        let value = found.value(ply);
        if depth < self.margin(Margin::SingularDepth)
            || !here.excluded.is_none()
            || 4 * i32::from(found.depth) < 3 * depth
            || !matches!(found.bound, Bound::Lower | Bound::Exact)
            || value.abs() >= MATE_BOUND
            || ply as i32 >= self.root_depth + EXTENDED
            || !self.uses(Technique::Singular)
        {
            return Standing::Plain;
        }
        let target = value - self.margin(Margin::Singular) - depth;
        self.frames[ply].excluded = packed;
        let kept = self.frames[ply];
        let others = self.search::<false>(node, ply, depth / 2, target - 1, target, here.cut);
        self.frames[ply] = kept;
        self.frames[ply].excluded = Packed::NONE;
        if others < target {
            Standing::Alone(
                1 + i32::from(!PV && others < target - self.margin(Margin::SingularTwice)),
            )
        } else if target >= here.beta && !PV && self.uses(Technique::MultiCut) {
            Standing::OneOfMany(target)
        } else {
            Standing::Plain
        }
    }

    /// A move cut the tree: it is tried earlier from now on, and those tried in vain later.
    fn remember(
        &mut self,
        node: &Node,
        here: &Here,
        mv: Move,
        quiets: &Tried<QUIETS>,
        captures: &Tried<CAPTURES>,
    ) {
        let color = node.chess.turn();
        let before = self.before(here.ply);
        let bonus = (150 * here.depth - 60).clamp(0, 1800);
        if is_quiet(mv) {
            let packed = Packed::new(mv);
            if self.uses(Technique::Killers) {
                let killers = &mut self.frames[here.ply].killers;
                if killers[0] != packed {
                    *killers = [packed, killers[0]];
                }
            }
            self.memory.set_counter(before[0], mv);
            self.memory.reward_quiet(color, mv, before, bonus);
            for tried in quiets.iter() {
                self.memory.reward_quiet(color, tried, before, -bonus);
            }
        } else {
            self.memory.reward_capture(color, mv, bonus);
        }
        for tried in captures.iter() {
            self.memory.reward_capture(color, tried, -bonus);
        }
    }

    /// Learns how wrong the static value was, where the value found says so and no capture explains it.
    fn learn(
        &mut self,
        node: &Node,
        here: &Here,
        best: Value,
        best_move: Option<Move>,
        bound: Bound,
    ) {
        let error = best - here.corrected;
        let says = match bound {
            Bound::Exact => true,
            Bound::Lower => error > 0,
            Bound::Upper => error < 0,
            Bound::None => false,
        };
        if says
            && here.depth >= self.margin(Margin::CorrectionDepth)
            && !node.check
            && best.abs() < MATE_BOUND
            && best_move.is_none_or(is_quiet)
            && self.uses(Technique::Correction)
        {
            let raw = self.frames[here.ply].raw;
            let weight = self.margin(Margin::Correction) * (here.depth + 1);
            self.correction.learn(&node.chess, best - raw, weight);
        }
    }
}

/// How the table's move stands among the others.
enum Standing {
    Plain,
    /// Alone above them: so many plies more.
    Alone(i32),
    /// Others are good enough too: this value.
    OneOfMany(Value),
}

/// Whether the fifty-move rule is out of sight of a search of `depth` plies, with as many for captures and extensions:
/// what the table knows was found at another state of the clock.
pub fn clock_is_far(node: &Node, depth: i32) -> bool {
    node.chess.halfmoves() as i32 + 2 * depth.max(4) < 100
}

pub fn is_quiet(mv: Move) -> bool {
    !mv.is_capture() && !mv.is_promotion()
}

/// Whether what the table knows of a node settles it within a window.
pub fn settles(bound: Bound, value: Value, alpha: Value, beta: Value) -> bool {
    match bound {
        Bound::Exact => true,
        Bound::Lower => value >= beta,
        Bound::Upper => value <= alpha,
        Bound::None => false,
    }
}

/// The static value, or what the table knows better than it.
pub fn refine(eval: Value, entry: Option<Entry>, ply: usize) -> Value {
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

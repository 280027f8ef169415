//! Quiescence: captures, promotions and answers to checks, until the position is quiet (Shannon 1950; Harris 1975).

use shakmaty::{Chess, Move, MoveList, Position as _};

use crate::eval::Evaluate;

use super::captures::noisy_moves;
use super::checks::Checks;
use super::inner::{clock_is_far, is_quiet, refine, settles};
use super::margins::Margin;
use super::order::{Hints, Picked, Picker};
use super::packed::Packed;
use super::score::{DRAW, INFINITE, MATE_BOUND, MAX_PLY, Value, mated_in};
use super::see;
use super::table::{Bound, Finding};
use super::techniques::Technique;
use super::tree::{Node, Tree};

/// Quiet answers to a check that are tried once something has been found.
const ESCAPES: i32 = 3;

impl<E: Evaluate> Tree<'_, E> {
    /// The value of a node when only forcing moves are tried.
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
            return self.at_the_edge(node);
        }
        let entry = self.table.look(node.key);
        if let Some(found) = entry
            && !PV
            && clock_is_far(node, 0)
            && self.uses(Technique::TableCuts)
        {
            let value = found.value(ply);
            if settles(found.bound, value, alpha, beta) {
                return value;
            }
        }
        let original_alpha = alpha;
        let mut raw = -INFINITE;
        let mut best = -INFINITE;
        let mut moves;
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
            best = refine(self.corrected(node, raw), entry, ply);
            if best >= beta {
                return best;
            }
            alpha = alpha.max(best);
            let mut noisy = noisy_moves(&node.chess);
            if first && self.uses(Technique::QuietChecks) {
                add_quiet_checks(&node.chess, &mut noisy);
            }
            moves = noisy;
        }
        let hints = Hints {
            table: entry.map_or(Packed::NONE, |found| found.mv),
            killers: [Packed::NONE; 2],
            counter: Packed::NONE,
            before: self.before(ply),
        };
        let mut picker = Picker::new(&node.chess, &mut moves, &hints, self.memory);
        let hope = best + self.margin(Margin::Delta);
        let mut best_move = None;
        let mut escapes = 0;
        while let Some(Picked { mv, losing, .. }) = picker.next(&node.chess) {
            if best > -MATE_BOUND {
                let quiet = is_quiet(mv);
                if losing || (node.check && quiet && escapes == ESCAPES) {
                    break;
                }
                escapes += i32::from(quiet);
                if !node.check && !quiet && !mv.is_promotion() && self.uses(Technique::Delta) {
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
        self.table.store(
            node.key,
            ply,
            Finding {
                mv: best_move.map_or(Packed::NONE, Packed::new),
                value: best,
                eval: raw,
                depth: 0,
                bound,
            },
        );
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

//! The hand-made evaluation: each term is valued for the middlegame and the endgame, and the two values are
//! blended by the material left ("Tapered Eval", Chess Programming Wiki). Integers only. The terms are the
//! handbooks', most of them listed by Shannon (Programming a Computer for Playing Chess, 1950); `terms.rs` names them
//! all, `weights.rs` has their weights.

use shakmaty::{Board, Chess, Color, Move, Position as _};

use super::army::{Army, Attacks};
use super::endings::{WHOLE, drive, scale};
use super::king::danger;
use super::opening::development;
use super::pair::Pair;
use super::passed::{passed, unstoppable};
use super::pawns::{Facts, Pawns, Structure};
use super::pieces::pieces;
use super::sink::{Record, Sink, Sum};
use super::sums::{FULL_PHASE, Sums, seen_from};
use super::terms::{MATERIAL, SQUARES, TEMPO};
use super::threats::threats;
use super::trace::Trace;
use super::{Evaluate, LIMIT};

/// Material, places, mobility, pawns, king safety, threats, development; blended by the material left.
#[derive(Clone)]
pub struct Tapered {
    stack: Vec<Sums>,
    pawns: Pawns,
}

impl Default for Tapered {
    fn default() -> Self {
        Tapered::new()
    }
}

impl Tapered {
    /// An evaluation at no position yet: call [`Evaluate::refresh`] first.
    #[must_use]
    pub fn new() -> Self {
        Tapered {
            stack: Vec::with_capacity(160),
            pawns: Pawns::new(),
        }
    }

    /// The value of a position with all that it is made of. Slow: for fitting and for questions, not for search.
    #[must_use]
    pub fn trace(chess: &Chess) -> Trace {
        let board = chess.board();
        let (mut white, mut black) = (Record::new(), Record::new());
        for (square, piece) in board.iter() {
            let record = match piece.color {
                Color::White => &mut white,
                Color::Black => &mut black,
            };
            let role = piece.role as usize - 1;
            record.one(MATERIAL + role);
            record.one(SQUARES + role * 64 + seen_from(piece.color, square).to_usize());
        }
        let facts = Structure::count(board, &mut white, &mut black);
        activity(chess, facts, &mut white, &mut black);
        let phase = Sums::of(board).phase.clamp(0, FULL_PHASE);
        let total = white.sum.value() - black.sum.value();
        let (blended, scale) = blend(board, total, phase);
        let mut terms = white.terms;
        for (term, count) in terms.iter_mut().zip(black.terms) {
            *term -= count;
        }
        Trace {
            terms,
            units: [white.units, black.units],
            phase,
            scale,
            white_to_move: chess.turn() == Color::White,
            value: for_mover(chess, blended),
        }
    }
}

impl Evaluate for Tapered {
    fn refresh(&mut self, chess: &Chess) {
        self.stack.clear();
        self.stack.push(Sums::of(chess.board()));
    }

    fn push(&mut self, before: &Chess, mv: Move) {
        let sums = self.stack.last().copied().unwrap_or_default();
        self.stack.push(sums.after(before.turn(), mv));
    }

    fn pop(&mut self) {
        self.stack.pop();
    }

    fn evaluate(&mut self, chess: &Chess) -> i32 {
        let board = chess.board();
        let sums = self.stack.last().copied().unwrap_or_default();
        let structure = self.pawns.look(board);
        let (mut white, mut black) = (Sum::default(), Sum::default());
        let facts = (structure.of_white, structure.of_black);
        activity(chess, facts, &mut white, &mut black);
        let total = sums.value + structure.value + white.value() - black.value();
        let (blended, _) = blend(board, total, sums.phase.clamp(0, FULL_PHASE));
        for_mover(chess, blended)
    }
}

/// Counts all that is neither in the sums nor in the table of pawns.
fn activity<S: Sink>(chess: &Chess, facts: (Facts, Facts), for_white: &mut S, for_black: &mut S) {
    let board = chess.board();
    let white = Army::new(board, Color::White, facts.0);
    let black = Army::new(board, Color::Black, facts.1);
    let mut by_white = Attacks::new(&white);
    let mut by_black = Attacks::new(&black);
    pieces(board, &white, &black, &mut by_white, for_white);
    pieces(board, &black, &white, &mut by_black, for_black);
    threats(board, &white, &black, &by_white, &by_black, for_white);
    threats(board, &black, &white, &by_black, &by_white, for_black);
    danger(board, &white, &black, &by_white, &by_black, for_white);
    danger(board, &black, &white, &by_black, &by_white, for_black);
    let turn = chess.turn();
    let first = passed(board, &white, &black, turn, &by_white, &by_black, for_white);
    let other = passed(board, &black, &white, turn, &by_black, &by_white, for_black);
    unstoppable(first, other, for_white);
    unstoppable(other, first, for_black);
    development(chess, Color::White, for_white);
    development(chess, Color::Black, for_black);
    drive(board, &white, &black, for_white);
    drive(board, &black, &white, for_black);
    match turn {
        Color::White => for_white.one(TEMPO),
        Color::Black => for_black.one(TEMPO),
    }
}

/// One value of two, and the part of it that can be won, by which it is already reduced. For White.
fn blend(board: &Board, total: Pair, phase: i32) -> (i32, i32) {
    let blended = (total.mg() * phase + total.eg() * (FULL_PHASE - phase)) / FULL_PHASE;
    let stronger = if blended >= 0 {
        Color::White
    } else {
        Color::Black
    };
    let scale = scale(board, stronger, phase);
    (blended * scale / WHOLE, scale)
}

fn for_mover(chess: &Chess, value: i32) -> i32 {
    chess.turn().fold_wb(value, -value).clamp(-LIMIT, LIMIT)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::eval::weights::WEIGHTS;
    use crate::position::Position;

    fn of(fen: &str) -> i32 {
        let position = Position::from_fen(fen).unwrap();
        let mut evaluation = Tapered::new();
        evaluation.refresh(position.chess());
        evaluation.evaluate(position.chess())
    }

    #[test]
    fn the_initial_position_is_worth_the_move_only() {
        assert_eq!(
            of("rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"),
            WEIGHTS[TEMPO].mg()
        );
    }

    #[test]
    fn sums_kept_move_by_move_equal_sums_made_anew() {
        let mut position = Position::start();
        let mut evaluation = Tapered::new();
        evaluation.refresh(position.chess());
        // En passant, castling on both wings, a promotion with capture.
        let line = "e4 Nc6 e5 d5 exd6 Bg4 Be2 Qd7 Nf3 O-O-O dxc7 Nf6 O-O Bxf3 cxd8=Q+ Nxd8";
        for san in line.split(' ') {
            let mv = position.parse_san(san).unwrap();
            evaluation.push(position.chess(), mv);
            position = position.play(mv);
            let kept = evaluation.evaluate(position.chess());
            let mut fresh = Tapered::new();
            fresh.refresh(position.chess());
            assert_eq!(kept, fresh.evaluate(position.chess()), "{san}");
        }
        for _ in line.split(' ') {
            evaluation.pop();
        }
        assert_eq!(
            evaluation.evaluate(Position::start().chess()),
            WEIGHTS[TEMPO].mg()
        );
    }

    #[test]
    fn two_knights_alone_are_worth_a_draw() {
        assert_eq!(of("8/8/8/3k4/8/8/3NN3/4K3 w - - 0 1"), 0);
    }

    #[test]
    fn a_bare_king_is_worth_less_at_the_edge_and_in_the_bishops_corner() {
        let centre = of("8/8/8/3k4/8/3K4/8/R7 w - - 0 1");
        let edge = of("8/8/8/7k/8/5K2/8/R7 w - - 0 1");
        assert!(edge > centre);
        let wrong = of("k7/8/1KN5/8/3B4/8/8/8 w - - 0 1");
        let right = of("7k/8/5NK1/8/3B4/8/8/8 w - - 0 1");
        assert!(right > wrong);
    }

    #[test]
    fn development_is_worth_something() {
        let developed = of("rnbqkbnr/pppp1ppp/8/4p3/2B1P3/2N2N2/PPPP1PPP/R1BQK2R w KQkq - 0 1");
        let undeveloped = of("rnbqkbnr/pppp1ppp/8/4p3/4P3/8/PPPP1PPP/RNBQKBNR w KQkq - 0 1");
        assert!(developed > undeveloped + 30, "{developed} {undeveloped}");
    }
}

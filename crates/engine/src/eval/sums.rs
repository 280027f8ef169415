//! Sums that a move changes a little: material, places of the pieces, phase.

use shakmaty::{Board, CastlingSide, Color, Move, Piece, Role, Square};

use super::pair::Pair;
use super::terms::{COUNT, MATERIAL, SQUARES};
use super::weights::WEIGHTS;

/// How much of the middlegame a piece stands for, by role ("Tapered Eval", Chess Programming Wiki).
const PHASE: [i32; 6] = [0, 1, 1, 2, 4, 0];

/// The phase with all pieces on the board.
pub const FULL_PHASE: i32 = 24;

/// Material and place in one, by role and square from the own side.
const fn build() -> [[Pair; 64]; 6] {
    let weights: &[Pair; COUNT] = &WEIGHTS;
    let mut table = [[super::pair::pair(0, 0); 64]; 6];
    let mut role = 0;
    while role < 6 {
        let material = weights[MATERIAL + role];
        let mut square = 0;
        while square < 64 {
            let place = weights[SQUARES + role * 64 + square];
            table[role][square] =
                super::pair::pair(material.mg() + place.mg(), material.eg() + place.eg());
            square += 1;
        }
        role += 1;
    }
    table
}

static TABLE: [[Pair; 64]; 6] = build();

/// A square as its own side sees it: Black's are turned upside down.
pub fn seen_from(color: Color, square: Square) -> Square {
    match color {
        Color::White => square,
        Color::Black => square.flip_vertical(),
    }
}

fn value(piece: Piece, square: Square) -> Pair {
    let value = TABLE[piece.role as usize - 1][seen_from(piece.color, square).to_usize()];
    match piece.color {
        Color::White => value,
        Color::Black => -value,
    }
}

fn phase(role: Role) -> i32 {
    PHASE[role as usize - 1]
}

/// Material and places for White, and the phase.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Sums {
    pub value: Pair,
    /// Zero with pawns and kings alone, [`FULL_PHASE`] or more at the start of a game.
    pub phase: i32,
}

impl Sums {
    pub fn of(board: &Board) -> Sums {
        let mut sums = Sums::default();
        for (square, piece) in board.iter() {
            sums.add(piece, square);
        }
        sums
    }

    fn add(&mut self, piece: Piece, square: Square) {
        self.value += value(piece, square);
        self.phase += phase(piece.role);
    }

    fn remove(&mut self, piece: Piece, square: Square) {
        self.value -= value(piece, square);
        self.phase -= phase(piece.role);
    }

    /// The sums after a move of `turn`.
    pub fn after(mut self, turn: Color, mv: Move) -> Sums {
        match mv {
            Move::Normal {
                role,
                from,
                capture,
                to,
                promotion,
            } => {
                self.remove(role.of(turn), from);
                if let Some(taken) = capture {
                    self.remove(taken.of(!turn), to);
                }
                self.add(promotion.unwrap_or(role).of(turn), to);
            }
            Move::EnPassant { from, to } => {
                self.remove(turn.pawn(), from);
                self.remove((!turn).pawn(), Square::from_coords(to.file(), from.rank()));
                self.add(turn.pawn(), to);
            }
            Move::Castle { king, rook } => {
                let side = CastlingSide::from_king_side(king < rook);
                self.remove(turn.king(), king);
                self.remove(turn.rook(), rook);
                self.add(turn.king(), side.king_to(turn));
                self.add(turn.rook(), side.rook_to(turn));
            }
            Move::Put { role, to } => self.add(role.of(turn), to),
        }
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use shakmaty::Position as _;

    use crate::position::Position;

    #[test]
    fn the_two_sides_mirror_each_other() {
        for role in Role::ALL {
            for square in Square::ALL {
                let white = value(role.of(Color::White), square);
                let black = value(role.of(Color::Black), square.flip_vertical());
                assert_eq!(white, -black);
            }
        }
    }

    #[test]
    fn the_initial_position_has_the_full_phase() {
        assert_eq!(
            Sums::of(Position::start().chess().board()).phase,
            FULL_PHASE
        );
    }
}

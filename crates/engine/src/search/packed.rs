//! A move in 16 bits, for tables: only the legal moves of its position can tell what it means.

use shakmaty::{Chess, Move, Position as _, Role, Square};

/// From-square, to-square (castling: the rook's square), promotion.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Packed(u16);

impl Packed {
    /// No move.
    pub const NONE: Packed = Packed(0);
    /// A pattern that no move has.
    pub const NOTHING_LEGAL: Packed = Packed(u16::MAX);

    /// As a word for the table.
    pub fn bits(self) -> u16 {
        self.0
    }

    /// From a word of the table.
    pub fn from_bits(bits: u16) -> Packed {
        Packed(bits)
    }

    pub fn is_none(self) -> bool {
        self == Packed::NONE
    }

    pub fn new(mv: Move) -> Packed {
        let from = mv.from().map_or(0, Square::to_u32) as u16;
        let to = mv.to().to_u32() as u16;
        let promotion = mv.promotion().map_or(0, |role: Role| role as u16);
        Packed(from | to << 6 | promotion << 12)
    }

    /// The legal move of `chess` that this is, if there is one.
    pub fn find(self, chess: &Chess) -> Option<Move> {
        if self.is_none() {
            return None;
        }
        chess
            .legal_moves()
            .into_iter()
            .find(|mv| Packed::new(*mv) == self)
    }
}

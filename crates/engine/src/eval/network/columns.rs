//! Which column of weights a man on a square is, as a side sees it.

use shakmaty::{Color, Piece, Square};

/// Columns in one king bucket: six roles of two colours on 64 squares.
pub const FEATURES: usize = 768;
/// Squares of the king on files a to d.
pub const HOMES: usize = 32;

/// How a side sees the board: its king's bucket, and on which wing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct View {
    side: Color,
    bucket: u8,
    /// Turns a square as the side sees it: by ranks for Black, by files when the king stands on e to h.
    flip: u32,
}

impl View {
    /// The view of a side with its king on a square, with the table of king buckets (a1 to d1, a2 to d2, ...).
    pub fn new(side: Color, king: Square, buckets: &[u8; HOMES]) -> View {
        let ranks = side.fold_wb(0, 56);
        let files = if king.to_u32() & 4 == 0 { 0 } else { 7 };
        let flip = ranks ^ files;
        let home = king.to_u32() ^ flip;
        View {
            side,
            bucket: buckets[(home >> 3 << 2 | home & 3) as usize & (HOMES - 1)],
            flip,
        }
    }

    /// The column of a man on a square.
    pub fn column(self, piece: Piece, square: Square) -> usize {
        let kind = piece.role as usize - 1 + if piece.color == self.side { 0 } else { 6 };
        let turned = (square.to_u32() ^ self.flip) as usize;
        FEATURES * usize::from(self.bucket) + 64 * kind + turned
    }

    /// A number for the view among those of its side: twice the bucket, and one more on the right wing.
    pub fn number(self) -> usize {
        2 * usize::from(self.bucket) + (self.flip & 1) as usize
    }
}

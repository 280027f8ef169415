//! What one game says of one of its positions.

use shakmaty::{Move, Role, Square};

/// Bytes of a row on disk.
pub const ROW_BYTES: usize = 32;

/// A position of a game, and what was played there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Row {
    /// The position's key.
    pub key: u64,
    /// A hash of the moves that led there.
    pub path: u64,
    /// The game's number in its segment.
    pub game: u32,
    /// The move, [`packed`]; 0 where the game ends.
    pub mv: u16,
    /// White's rating, or 0.
    pub white: u16,
    /// Black's rating, or 0.
    pub black: u16,
    /// The year, or 0.
    pub year: u16,
    /// Plies of the whole game.
    pub plies: u16,
    /// Number of the result.
    pub result: u8,
    /// Plies before the position.
    pub ply: u8,
}

impl Row {
    /// For a spill file.
    #[must_use]
    pub fn bytes(&self) -> [u8; ROW_BYTES] {
        let mut bytes = [0; ROW_BYTES];
        bytes[..8].copy_from_slice(&self.key.to_le_bytes());
        bytes[8..16].copy_from_slice(&self.path.to_le_bytes());
        bytes[16..20].copy_from_slice(&self.game.to_le_bytes());
        let words = [self.mv, self.white, self.black, self.year, self.plies];
        for (i, word) in words.iter().enumerate() {
            bytes[20 + 2 * i..22 + 2 * i].copy_from_slice(&word.to_le_bytes());
        }
        bytes[30] = self.result;
        bytes[31] = self.ply;
        bytes
    }

    /// From a spill file.
    #[must_use]
    pub fn from_bytes(bytes: &[u8; ROW_BYTES]) -> Row {
        let word = |at: usize| u16::from_le_bytes([bytes[at], bytes[at + 1]]);
        let long = |at: usize| u64::from(word(at)) | u64::from(word(at + 2)) << 16;
        Row {
            key: long(0) | long(4) << 32,
            path: long(8) | long(12) << 32,
            game: long(16) as u32,
            mv: word(20),
            white: word(22),
            black: word(24),
            year: word(26),
            plies: word(28),
            result: bytes[30],
            ply: bytes[31],
        }
    }
}

/// A move in 16 bits: from-square, to-square (castling: the king's two steps), promotion. Never 0.
#[must_use]
pub fn packed(mv: Move) -> u16 {
    let (from, to) = match mv {
        Move::Castle { king, rook } => {
            let to = if rook > king {
                king.to_u32() + 2
            } else {
                king.to_u32() - 2
            };
            (king.to_u32(), to)
        }
        _ => (mv.from().unwrap_or(mv.to()).to_u32(), mv.to().to_u32()),
    };
    let promotion = mv.promotion().map_or(0, |role: Role| role as u32);
    (from | to << 6 | promotion << 12) as u16
}

/// The UCI spelling of a packed move.
#[must_use]
pub fn unpacked(bits: u16) -> String {
    let square = |at: u16| Square::new(u32::from(at & 63)).to_string();
    let mut text = square(bits) + &square(bits >> 6);
    if let Ok(role) = Role::try_from(bits >> 12) {
        text.push(role.char());
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_comes_back_from_its_bytes() {
        let row = Row {
            key: 0x0123_4567_89ab_cdef,
            path: 0xfedc_ba98_7654_3210,
            game: 4_000_000_000,
            mv: 1,
            white: 1500,
            black: 3999,
            year: 2019,
            plies: 65_535,
            result: 3,
            ply: 39,
        };
        assert_eq!(Row::from_bytes(&row.bytes()), row);
    }
}

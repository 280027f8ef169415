//! Pawn structure: doubled, isolated, backward, connected and passed pawns, kept in a small table,
//! since the pawns change in few moves.
//!
//! Definitions as in the handbooks: *doubled*, another pawn of the side before it on its file; *isolated*, no
//! pawn of the side on a neighbouring file; *passed*, no enemy pawn before it on its file and its neighbours
//! (Nimzowitsch, My System, 1925); *backward*, no own pawn level or behind on a neighbouring file, and the square
//! before it held by an enemy pawn.

use shakmaty::{Bitboard, Board, Color, Rank, Square, attacks};

use super::squares::{Pair, pair};

const DOUBLED: Pair = pair(-9, -20);
const ISOLATED: Pair = pair(-11, -14);
const BACKWARD: Pair = pair(-8, -10);
const CONNECTED: Pair = pair(7, 6);
/// By rank from the own side, first to last.
const PASSED: [Pair; 8] = [
    pair(0, 0),
    pair(2, 8),
    pair(4, 14),
    pair(10, 30),
    pair(24, 56),
    pair(50, 100),
    pair(90, 160),
    pair(0, 0),
];

/// A power of two.
const SLOTS: usize = 4096;

/// What the pawns alone say.
#[derive(Debug, Clone, Copy, Default)]
pub struct Structure {
    white: Bitboard,
    black: Bitboard,
    /// For White.
    pub value: Pair,
    pub passed: Bitboard,
}

/// The table of structures met so far. An entry holds the pawns themselves, so that none is taken for another.
#[derive(Clone)]
pub struct Pawns {
    slots: Vec<Structure>,
}

impl Pawns {
    pub fn new() -> Self {
        Pawns {
            slots: vec![Structure::default(); SLOTS],
        }
    }

    pub fn look(&mut self, board: &Board) -> Structure {
        let (white, black) = (board.pawns() & board.white(), board.pawns() & board.black());
        let mixed = white.0.wrapping_mul(0x9E37_79B9_7F4A_7C15)
            ^ black.0.wrapping_mul(0xC2B2_AE3D_27D4_EB4F);
        let slot = (mixed >> 48) as usize & (SLOTS - 1);
        let kept = self.slots[slot];
        if kept.white == white && kept.black == black {
            return kept;
        }
        let fresh = structure(white, black);
        self.slots[slot] = fresh;
        fresh
    }
}

/// All squares before (from `color`'s side) the squares of a set, on the same files.
pub fn ahead(set: Bitboard, color: Color) -> Bitboard {
    let mut bits = set.0;
    match color {
        Color::White => {
            bits <<= 8;
            bits |= bits << 8;
            bits |= bits << 16;
            bits |= bits << 32;
        }
        Color::Black => {
            bits >>= 8;
            bits |= bits >> 8;
            bits |= bits >> 16;
            bits |= bits >> 32;
        }
    }
    Bitboard(bits)
}

const NOT_A: u64 = 0xFEFE_FEFE_FEFE_FEFE;
const NOT_H: u64 = 0x7F7F_7F7F_7F7F_7F7F;

/// The squares left and right of a set.
pub fn beside(set: Bitboard) -> Bitboard {
    Bitboard(((set.0 << 1) & NOT_A) | ((set.0 >> 1) & NOT_H))
}

/// The squares that a side's pawns attack.
pub fn pawn_attacks(pawns: Bitboard, color: Color) -> Bitboard {
    let sideways = beside(pawns).0;
    Bitboard(match color {
        Color::White => sideways << 8,
        Color::Black => sideways >> 8,
    })
}

fn structure(white: Bitboard, black: Bitboard) -> Structure {
    let (for_white, white_passed) = side(white, black, Color::White);
    let (for_black, black_passed) = side(black, white, Color::Black);
    Structure {
        white,
        black,
        value: for_white - for_black,
        passed: white_passed | black_passed,
    }
}

fn side(own: Bitboard, enemy: Bitboard, color: Color) -> (Pair, Bitboard) {
    let mut value = Pair::default();
    let mut passed = Bitboard::EMPTY;
    let enemy_attacks = pawn_attacks(enemy, !color);
    for square in own {
        let here = Bitboard::from_square(square);
        let file = Bitboard::from_file(square.file());
        let neighbours = beside(file);
        let front = ahead(here, color);
        let doubled = (front & own).any();
        if doubled {
            value += DOUBLED;
        }
        let isolated = (neighbours & own).is_empty();
        if isolated {
            value += ISOLATED;
        }
        let support = attacks::pawn_attacks(!color, square) & own;
        let phalanx = beside(here) & own;
        if support.any() || phalanx.any() {
            value += CONNECTED;
        } else if !isolated {
            let level_or_behind = neighbours & !ahead(beside(here), color);
            let stop = step(square, color);
            if (level_or_behind & own).is_empty() && enemy_attacks.contains(stop) {
                value += BACKWARD;
            }
        }
        if !doubled && ((front | ahead(beside(here), color)) & enemy).is_empty() {
            passed.add(square);
            value += PASSED[relative_rank(square, color)];
        }
    }
    (value, passed)
}

/// The square before a pawn.
pub fn step(square: Square, color: Color) -> Square {
    square.offset(color.fold_wb(8, -8)).unwrap_or(square)
}

/// The rank (0 to 7) of a square from a side.
pub fn relative_rank(square: Square, color: Color) -> usize {
    let rank: Rank = square.rank();
    color.relative_rank(rank).to_usize()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn squares(names: &[Square]) -> Bitboard {
        names.iter().copied().collect()
    }

    #[test]
    fn a_passed_pawn_has_no_enemy_pawn_before_it_or_beside_its_way() {
        let (_, passed) = side(
            squares(&[Square::A4, Square::E4]),
            squares(&[Square::D7, Square::F3]),
            Color::White,
        );
        assert_eq!(passed, squares(&[Square::A4]));
    }

    #[test]
    fn doubled_and_isolated_pawns_are_worth_less() {
        let healthy = side(
            squares(&[Square::B2, Square::C2]),
            Bitboard::EMPTY,
            Color::White,
        )
        .0;
        let doubled = side(
            squares(&[Square::C2, Square::C3]),
            Bitboard::EMPTY,
            Color::White,
        )
        .0;
        assert!(healthy.eg > doubled.eg && healthy.mg > doubled.mg);
    }

    #[test]
    fn the_two_sides_mirror_each_other() {
        let white = squares(&[Square::A2, Square::C4, Square::D4, Square::F3]);
        let black = squares(&[Square::A7, Square::E6, Square::H5]);
        let one = structure(white, black).value;
        let other = structure(black.flip_vertical(), white.flip_vertical()).value;
        assert_eq!(one, -other);
    }
}

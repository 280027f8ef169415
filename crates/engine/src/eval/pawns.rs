//! What the pawns and the kings' places say together: structure, the kings' cover. Kept in a small table,
//! since they change in few moves ("Pawn Hash Table", Chess Programming Wiki).
//!
//! The definitions stand beside the terms in `terms.rs`.

use shakmaty::{Bitboard, Board, Color, Rank, Square, attacks};

use super::pair::Pair;
use super::sink::{Sink, Sum};
use super::terms::{
    BACKWARD, BACKWARD_OPEN, CANDIDATE, COVER, COVER_BESIDE, DEFENDED, DOUBLED, ISOLATED,
    ISOLATED_OPEN, PASSED, PHALANX, STORM,
};

/// A power of two.
const SLOTS: usize = 8192;

/// What the other terms want to know of one side's pawns.
#[derive(Debug, Clone, Copy, Default)]
pub struct Facts {
    pub passed: Bitboard,
    /// Squares that its pawns attack or may attack after going on.
    pub span: Bitboard,
    /// Of the king's file and its neighbours, those without an own pawn.
    pub open_files: i32,
}

/// What the pawns and kings alone say.
#[derive(Debug, Clone, Copy)]
pub struct Structure {
    white: Bitboard,
    black: Bitboard,
    kings: [Square; 2],
    /// For White.
    pub value: Pair,
    pub of_white: Facts,
    pub of_black: Facts,
}

impl Structure {
    /// Counts the terms of both sides.
    pub fn count<S: Sink>(board: &Board, for_white: &mut S, for_black: &mut S) -> (Facts, Facts) {
        let (white, black) = (board.pawns() & board.white(), board.pawns() & board.black());
        let king = |color| board.king_of(color).unwrap_or(Square::A1);
        (
            side(white, black, king(Color::White), Color::White, for_white),
            side(black, white, king(Color::Black), Color::Black, for_black),
        )
    }
}

/// The table of structures met so far. An entry holds the men themselves, so that none is taken for another.
#[derive(Clone)]
pub struct Pawns {
    slots: Vec<Structure>,
}

impl Pawns {
    pub fn new() -> Self {
        let nothing = Structure {
            white: Bitboard::EMPTY,
            black: Bitboard::EMPTY,
            // no position has both kings on one square, so that an empty slot is like none
            kings: [Square::A1; 2],
            value: Pair::default(),
            of_white: Facts::default(),
            of_black: Facts::default(),
        };
        Pawns {
            slots: vec![nothing; SLOTS],
        }
    }

    /// The entry of a board's pawns and kings, made if it is not there.
    pub fn look(&mut self, board: &Board) -> &Structure {
        let (white, black) = (board.pawns() & board.white(), board.pawns() & board.black());
        let king = |color| board.king_of(color).unwrap_or(Square::A1);
        let kings = [king(Color::White), king(Color::Black)];
        let mixed = white.0.wrapping_mul(0x9E37_79B9_7F4A_7C15)
            ^ black.0.wrapping_mul(0xC2B2_AE3D_27D4_EB4F)
            ^ ((kings[0] as u64) << 48 | (kings[1] as u64) << 54)
                .wrapping_mul(0xD6E8_FEB8_6659_FD93);
        let slot = &mut self.slots[(mixed >> 48) as usize & (SLOTS - 1)];
        if slot.white != white || slot.black != black || slot.kings != kings {
            let (mut for_white, mut for_black) = (Sum::default(), Sum::default());
            let (of_white, of_black) = Structure::count(board, &mut for_white, &mut for_black);
            *slot = Structure {
                white,
                black,
                kings,
                value: for_white.linear() - for_black.linear(),
                of_white,
                of_black,
            };
        }
        slot
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

/// The squares one step before a set.
pub fn forward(set: Bitboard, color: Color) -> Bitboard {
    match color {
        Color::White => Bitboard(set.0 << 8),
        Color::Black => Bitboard(set.0 >> 8),
    }
}

const NOT_A: u64 = 0xFEFE_FEFE_FEFE_FEFE;
const NOT_H: u64 = 0x7F7F_7F7F_7F7F_7F7F;

/// The squares left and right of a set.
pub fn beside(set: Bitboard) -> Bitboard {
    Bitboard(((set.0 << 1) & NOT_A) | ((set.0 >> 1) & NOT_H))
}

/// The squares that a side's pawns attack.
pub fn pawn_attacks(pawns: Bitboard, color: Color) -> Bitboard {
    forward(beside(pawns), color)
}

/// The squares that two of a side's pawns attack.
pub fn pawns_attack_twice(pawns: Bitboard, color: Color) -> Bitboard {
    let left = Bitboard((pawns.0 >> 1) & NOT_H);
    let right = Bitboard((pawns.0 << 1) & NOT_A);
    forward(left & right, color)
}

/// A set and all neighbours of its squares.
pub fn around(set: Bitboard) -> Bitboard {
    let wide = set | beside(set);
    wide | forward(wide, Color::White) | forward(wide, Color::Black)
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

fn side<S: Sink>(
    own: Bitboard,
    enemy: Bitboard,
    king: Square,
    color: Color,
    sink: &mut S,
) -> Facts {
    let enemy_attacks = pawn_attacks(enemy, !color);
    let passed = structure(own, enemy, enemy_attacks, color, sink);
    Facts {
        passed,
        span: ahead(beside(own), color),
        open_files: cover(own, enemy, king, color, sink),
    }
}

/// Counts the pawns' own terms; the passed ones.
fn structure<S: Sink>(
    own: Bitboard,
    enemy: Bitboard,
    enemy_attacks: Bitboard,
    color: Color,
    sink: &mut S,
) -> Bitboard {
    let mut passed = Bitboard::EMPTY;
    for square in own {
        let here = Bitboard::from_square(square);
        let neighbours = beside(Bitboard::from_file(square.file()));
        let front = ahead(here, color);
        let rank = relative_rank(square, color);
        let open = (front & enemy).is_empty();
        let doubled = (front & own).any();
        if doubled {
            sink.one(DOUBLED);
        }
        let defenders = attacks::pawn_attacks(!color, square) & own;
        let phalanx = beside(here) & own;
        if defenders.any() {
            sink.one(DEFENDED + rank);
        }
        if phalanx.any() {
            sink.one(PHALANX + rank);
        }
        if (neighbours & own).is_empty() {
            sink.one(ISOLATED);
            if open {
                sink.one(ISOLATED_OPEN);
            }
        } else if defenders.is_empty() && phalanx.is_empty() {
            let level_or_behind = neighbours & !ahead(beside(here), color);
            let stop = step(square, color);
            if (level_or_behind & own).is_empty() && enemy_attacks.contains(stop) {
                sink.one(BACKWARD);
                if open {
                    sink.one(BACKWARD_OPEN);
                }
            }
        }
        if open && !doubled {
            let guards = ahead(beside(here), color) & enemy;
            if guards.is_empty() {
                passed.add(square);
                sink.one(PASSED + rank);
            } else {
                let helpers = neighbours & own & !ahead(beside(here), color);
                if helpers.count() >= guards.count() {
                    sink.one(CANDIDATE + rank);
                }
            }
        }
    }
    passed
}

/// Counts the cover of the king and the pawns that storm it, file by file; the number of files without an own pawn.
fn cover<S: Sink>(own: Bitboard, enemy: Bitboard, king: Square, color: Color, sink: &mut S) -> i32 {
    let before = ahead(Bitboard::from_rank(king.rank()), color);
    let king_rank = relative_rank(king, color);
    // ranks from the king to the nearest pawn of a set before it
    let distance = |pawns: Bitboard| {
        let nearest = match color {
            Color::White => (pawns & before).first(),
            Color::Black => (pawns & before).last(),
        };
        nearest.map(|pawn| relative_rank(pawn, color) - king_rank)
    };
    let here = Bitboard::from_file(king.file());
    let mut open_files = 0;
    for square in (here | beside(here)) & Bitboard::from_rank(Rank::First) {
        let line = Bitboard::from_file(square.file());
        let term = if line == here { COVER } else { COVER_BESIDE };
        sink.one(term + distance(line & own).map_or(3, |ranks| ranks.min(3) - 1));
        sink.one(STORM + distance(line & enemy).map_or(5, |ranks| ranks.min(6) - 1));
        open_files += i32::from((line & own).is_empty());
    }
    open_files
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::eval::sink::Record;

    fn squares(names: &[Square]) -> Bitboard {
        names.iter().copied().collect()
    }

    fn count(own: &[Square], enemy: &[Square]) -> (Record, Facts) {
        let mut record = Record::new();
        let facts = side(
            squares(own),
            squares(enemy),
            Square::G1,
            Color::White,
            &mut record,
        );
        (record, facts)
    }

    #[test]
    fn a_passed_pawn_has_no_enemy_pawn_before_it_or_beside_its_way() {
        let (record, facts) = count(&[Square::A4, Square::E4], &[Square::D7, Square::F3]);
        assert_eq!(facts.passed, squares(&[Square::A4]));
        assert_eq!(record.terms[PASSED + 3], 1);
    }

    #[test]
    fn a_pawn_with_as_many_helpers_as_guards_is_a_candidate() {
        let (record, _) = count(&[Square::A4, Square::B4], &[Square::A6]);
        assert_eq!(record.terms[CANDIDATE + 3], 1);
        let (record, _) = count(&[Square::B4], &[Square::A6]);
        assert_eq!(record.terms[CANDIDATE + 3], 0);
    }

    #[test]
    fn doubled_isolated_and_backward_pawns_are_counted() {
        let (record, _) = count(&[Square::C2, Square::C3], &[]);
        assert_eq!((record.terms[DOUBLED], record.terms[ISOLATED]), (1, 2));
        let (record, _) = count(&[Square::D3, Square::E2], &[Square::C5]);
        assert_eq!(
            (record.terms[BACKWARD], record.terms[BACKWARD_OPEN]),
            (0, 0)
        );
        let (record, _) = count(&[Square::D3, Square::E5], &[Square::C5]);
        assert_eq!(
            (record.terms[BACKWARD], record.terms[BACKWARD_OPEN]),
            (1, 1)
        );
    }

    #[test]
    fn the_cover_names_the_distance_and_whether_the_file_is_the_kings() {
        let (record, facts) = count(&[Square::F2, Square::G3], &[Square::G4, Square::H5]);
        assert_eq!(facts.open_files, 1);
        assert_eq!(record.terms[COVER..COVER + 4], [0, 1, 0, 0]);
        assert_eq!(record.terms[COVER_BESIDE..COVER_BESIDE + 4], [1, 0, 0, 1]);
        assert_eq!(record.terms[STORM..STORM + 6], [0, 0, 1, 1, 0, 1]);
    }

    #[test]
    fn a_square_that_two_pawns_attack_is_told_from_one_that_one_attacks() {
        let pawns = squares(&[Square::A2, Square::C2, Square::H2]);
        let twice = pawns_attack_twice(pawns, Color::White);
        assert_eq!(twice, squares(&[Square::B3]));
    }
}

//! What a piece is worth on each square: values by formulas of our own, for the middlegame and the endgame.
//!
//! Pieces are worth more near the centre, pawns the further they have gone, the king in the middlegame
//! behind its pawns and in the endgame in the centre (common practice; Shannon 1950 counts the same features).

use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

use shakmaty::{Color, Piece, Role, Square};

/// A value for the middlegame and one for the endgame, in centipawns.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Pair {
    pub mg: i32,
    pub eg: i32,
}

/// Shorthand for a [`Pair`].
pub const fn pair(mg: i32, eg: i32) -> Pair {
    Pair { mg, eg }
}

impl Add for Pair {
    type Output = Pair;
    fn add(self, other: Pair) -> Pair {
        pair(self.mg + other.mg, self.eg + other.eg)
    }
}

impl AddAssign for Pair {
    fn add_assign(&mut self, other: Pair) {
        *self = *self + other;
    }
}

impl Sub for Pair {
    type Output = Pair;
    fn sub(self, other: Pair) -> Pair {
        pair(self.mg - other.mg, self.eg - other.eg)
    }
}

impl SubAssign for Pair {
    fn sub_assign(&mut self, other: Pair) {
        *self = *self - other;
    }
}

impl Neg for Pair {
    type Output = Pair;
    fn neg(self) -> Pair {
        pair(-self.mg, -self.eg)
    }
}

impl Mul<i32> for Pair {
    type Output = Pair;
    fn mul(self, times: i32) -> Pair {
        pair(self.mg * times, self.eg * times)
    }
}

/// Material by role, pawn to king. Near the trade's 1, 3, 3, 5, 9 (common practice).
const MATERIAL: [Pair; 6] = [
    pair(92, 112),
    pair(330, 300),
    pair(340, 320),
    pair(480, 530),
    pair(970, 980),
    pair(0, 0),
];

/// How much of the middlegame a piece stands for, by role; both armies together make 24.
const PHASE: [i32; 6] = [0, 1, 1, 2, 4, 0];

/// The phase with all pieces on the board.
pub const FULL_PHASE: i32 = 24;

const fn least(a: i32, b: i32) -> i32 {
    if a < b { a } else { b }
}

/// The value of a role on a file and rank (0 to 7) seen from its own side, without its material.
const fn place(role: usize, file: i32, rank: i32) -> Pair {
    let inner_file = least(file, 7 - file);
    let inner_rank = least(rank, 7 - rank);
    let centre = inner_file + inner_rank;
    let advance = rank - 1;
    match role {
        0 => {
            let centre_pawn = if inner_file == 3 && rank == 3 {
                18
            } else if inner_file == 3 && rank == 1 {
                -12
            } else if inner_file == 2 && rank == 3 {
                6
            } else {
                0
            };
            pair(
                centre_pawn + inner_file * advance + advance * advance * 2 - 8,
                advance * advance * 3 - inner_file,
            )
        }
        1 => {
            let outpost = if rank >= 3 && rank <= 5 && inner_file >= 2 {
                8
            } else {
                0
            };
            pair(9 * centre - 32 + outpost, 7 * centre - 24)
        }
        2 => {
            let home = if rank == 0 { -12 } else { 0 };
            pair(4 * centre - 10 + home, 3 * centre - 8)
        }
        3 => {
            let seventh = if rank == 6 { 16 } else { 0 };
            pair(4 * inner_file - 6 + seventh, seventh)
        }
        4 => pair(centre - 2, 4 * centre - 12),
        _ => {
            let shelter = match (rank, inner_file) {
                (0, 0) => 18,
                (0, 1) => 34,
                (0, 2) => 8,
                (0, _) => -4,
                (1, 0 | 1) => 2,
                (1, _) => -22,
                _ => -34 - 8 * least(rank, 5),
            };
            pair(shelter, 10 * centre - 34)
        }
    }
}

const fn build() -> [[Pair; 64]; 6] {
    let mut table = [[pair(0, 0); 64]; 6];
    let mut role = 0;
    while role < 6 {
        let mut square = 0;
        while square < 64 {
            let here = place(role, (square % 8) as i32, (square / 8) as i32);
            table[role][square] = pair(MATERIAL[role].mg + here.mg, MATERIAL[role].eg + here.eg);
            square += 1;
        }
        role += 1;
    }
    table
}

static TABLE: [[Pair; 64]; 6] = build();

/// Material and place of a piece, for White: a black piece counts against.
pub fn value(piece: Piece, square: Square) -> Pair {
    let row = &TABLE[piece.role as usize - 1];
    match piece.color {
        Color::White => row[square.to_usize()],
        Color::Black => -row[square.flip_vertical().to_usize()],
    }
}

/// How much of the middlegame a piece stands for.
pub fn phase(role: Role) -> i32 {
    PHASE[role as usize - 1]
}

#[cfg(test)]
mod tests {
    use super::*;

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
    fn a_knight_is_worth_more_in_the_centre_than_in_the_corner() {
        let centre = value(Color::White.knight(), Square::E4);
        let corner = value(Color::White.knight(), Square::A1);
        assert!(centre.mg > corner.mg && centre.eg > corner.eg);
    }
}

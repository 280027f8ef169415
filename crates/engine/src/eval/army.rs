//! What the terms of one side share: its men, its king's ring, what it attacks.

use shakmaty::{Bitboard, Board, Color, Role, Square, attacks};

use super::pawns::{Facts, forward, pawn_attacks};

/// One side's men.
pub struct Army {
    pub color: Color,
    pub own: Bitboard,
    pub pawns: Bitboard,
    pub pawn_attacks: Bitboard,
    pub king: Square,
    /// The king's square, its neighbours, and the row before these.
    pub ring: Bitboard,
    /// Own men that stand between the king and one enemy slider.
    pub pinned: Bitboard,
    pub facts: Facts,
}

impl Army {
    pub fn new(board: &Board, color: Color, facts: Facts) -> Army {
        let own = board.by_color(color);
        let pawns = own & board.pawns();
        let king = board.king_of(color).unwrap_or(Square::A1);
        let near = attacks::king_attacks(king).with(king);
        Army {
            color,
            own,
            pawns,
            pawn_attacks: pawn_attacks(pawns, color),
            king,
            ring: near | forward(near, color),
            pinned: pinned(board, own, king),
            facts,
        }
    }
}

fn pinned(board: &Board, own: Bitboard, king: Square) -> Bitboard {
    let straight = attacks::rook_attacks(king, Bitboard::EMPTY) & board.rooks_and_queens();
    let slanted = attacks::bishop_attacks(king, Bitboard::EMPTY) & board.bishops_and_queens();
    let mut pinned = Bitboard::EMPTY;
    for slider in (straight | slanted) & !own {
        let between = attacks::between(king, slider) & board.occupied();
        if !between.more_than_one() {
            pinned |= between & own;
        }
    }
    pinned
}

/// What a side attacks, gathered while its pieces are counted.
pub struct Attacks {
    pub all: Bitboard,
    pub twice: Bitboard,
    pub minors: Bitboard,
    pub by_role: [Bitboard; 6],
    /// Pieces that reach the enemy king's ring, by role, knight to queen.
    pub attackers: [i32; 4],
    /// Squares of the ring that they attack, counted for each piece.
    pub ring_squares: i32,
}

impl Attacks {
    pub fn new(army: &Army) -> Attacks {
        let king = attacks::king_attacks(army.king);
        let mut by_role = [Bitboard::EMPTY; 6];
        by_role[0] = army.pawn_attacks;
        by_role[5] = king;
        Attacks {
            all: army.pawn_attacks | king,
            twice: army.pawn_attacks & king,
            minors: Bitboard::EMPTY,
            by_role,
            attackers: [0; 4],
            ring_squares: 0,
        }
    }

    pub fn of(&self, role: Role) -> Bitboard {
        self.by_role[role as usize - 1]
    }

    /// A piece (knight to queen) attacks the squares of `reach`; `ring` is the enemy king's.
    pub fn add(&mut self, role: Role, reach: Bitboard, ring: Bitboard) {
        self.twice |= self.all & reach;
        self.all |= reach;
        self.by_role[role as usize - 1] |= reach;
        let hits = reach & ring;
        if hits.any() {
            self.attackers[role as usize - 2] += 1;
            self.ring_squares += hits.count() as i32;
        }
    }
}

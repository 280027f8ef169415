//! What the terms of one side share: its men, the squares at its king, what it attacks.

use shakmaty::{Bitboard, Board, Color, Role, Square, attacks};

use super::pawns::{Facts, pawn_attacks, pawns_attack_twice};

/// One side's men.
pub struct Army {
    pub color: Color,
    pub own: Bitboard,
    pub pawns: Bitboard,
    pub pawn_attacks: Bitboard,
    pub king: Square,
    /// The king's square and its neighbours.
    pub near: Bitboard,
    /// Own men that stand between the king and one enemy slider.
    pub pinned: Bitboard,
    pub facts: Facts,
}

impl Army {
    pub fn new(board: &Board, color: Color, facts: Facts) -> Army {
        let own = board.by_color(color);
        let pawns = own & board.pawns();
        let king = board.king_of(color).unwrap_or(Square::A1);
        Army {
            color,
            own,
            pawns,
            pawn_attacks: pawn_attacks(pawns, color),
            king,
            near: attacks::king_attacks(king).with(king),
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
    pub by_role: [Bitboard; 6],
    /// Attacks of pieces on the enemy king's square and its neighbours, by role, knight to queen.
    pub hits: [i32; 4],
}

impl Attacks {
    pub fn new(army: &Army) -> Attacks {
        let king = attacks::king_attacks(army.king);
        let mut by_role = [Bitboard::EMPTY; 6];
        by_role[0] = army.pawn_attacks;
        by_role[5] = king;
        Attacks {
            all: army.pawn_attacks | king,
            twice: army.pawn_attacks & king | pawns_attack_twice(army.pawns, army.color),
            by_role,
            hits: [0; 4],
        }
    }

    pub fn of(&self, role: Role) -> Bitboard {
        self.by_role[role as usize - 1]
    }

    /// A piece (knight to queen) attacks the squares of `reach`; `near` the enemy king's squares.
    pub fn add(&mut self, role: Role, reach: Bitboard, near: Bitboard) {
        self.twice |= self.all & reach;
        self.all |= reach;
        self.by_role[role as usize - 1] |= reach;
        self.hits[role as usize - 2] += (reach & near).count() as i32;
    }
}

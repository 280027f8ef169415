//! The danger that a king is in. Its cover of pawns is counted in `pawns.rs`.

use shakmaty::{Bitboard, Board, Role, attacks};

use super::army::{Army, Attacks};
use super::pawns::around;
use super::sink::Sink;
use super::terms::{
    DANGER_BARE_SQUARE, DANGER_CHECK, DANGER_GUARD, DANGER_HITS, DANGER_OPEN_FILE, DANGER_QUEEN,
};

/// Counts the units of danger of `army`'s king.
pub fn danger<S: Sink>(
    board: &Board,
    army: &Army,
    foe: &Army,
    ours: &Attacks,
    theirs: &Attacks,
    sink: &mut S,
) {
    for (index, hits) in theirs.hits.iter().enumerate() {
        sink.danger(DANGER_HITS + index, *hits);
    }
    let by_others = ours.by_role[..5]
        .iter()
        .fold(Bitboard::EMPTY, |all, one| all | *one);
    let bare = army.near.without(army.king) & theirs.all & !by_others;
    sink.danger(DANGER_BARE_SQUARE, bare.count() as i32);
    let checks = checks(board, army, theirs) & !foe.own & !ours.all;
    sink.danger(DANGER_CHECK, checks.count() as i32);
    if (foe.own & board.rooks_and_queens()).any() {
        sink.danger(DANGER_OPEN_FILE, army.facts.open_files);
    }
    if (foe.own & board.queens()).any() {
        sink.danger(DANGER_QUEEN, 1);
    }
    let guards = around(army.near) & army.own & !army.pawns & !board.kings();
    sink.danger(DANGER_GUARD, guards.count() as i32);
}

/// Squares that an enemy piece attacks and from which it would attack `army`'s king.
fn checks(board: &Board, army: &Army, theirs: &Attacks) -> Bitboard {
    let straight = attacks::rook_attacks(army.king, board.occupied());
    let slanted = attacks::bishop_attacks(army.king, board.occupied());
    attacks::knight_attacks(army.king) & theirs.of(Role::Knight)
        | slanted & theirs.of(Role::Bishop)
        | straight & theirs.of(Role::Rook)
        | (straight | slanted) & theirs.of(Role::Queen)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::eval::Tapered;
    use crate::position::Position;

    #[test]
    fn a_queen_near_a_king_without_cover_is_counted() {
        let position = Position::from_fen("6k1/8/8/8/8/7q/8/5NK1 w - - 0 1").unwrap();
        let [white, black] = Tapered::trace(position.chess()).units;
        // Of f1, f2, g1, g2, h1 and h2 the queen attacks f1, g2, h1 and h2.
        assert_eq!(white[DANGER_HITS..DANGER_HITS + 4], [0, 0, 0, 4]);
        // The knight on f1 guards h2, but nothing guards f1, g2 or h1.
        assert_eq!(white[DANGER_BARE_SQUARE], 3);
        assert_eq!(white[DANGER_OPEN_FILE], 3);
        assert_eq!(white[DANGER_GUARD], 1);
        assert_eq!(black[DANGER_HITS..DANGER_HITS + 4], [0; 4]);
        // White has neither rook nor queen.
        assert_eq!(black[DANGER_OPEN_FILE], 0);
    }

    #[test]
    fn a_check_counts_by_its_square_when_nothing_attacks_the_square() {
        // The rook may check on a8 only, where the knight of the second position would take it.
        let checks = |fen: &str| {
            let position = Position::from_fen(fen).unwrap();
            Tapered::trace(position.chess()).units[1][DANGER_CHECK]
        };
        assert_eq!(checks("7k/8/8/8/8/8/8/R3K3 w - - 0 1"), 1);
        assert_eq!(checks("7k/2n5/8/8/8/8/8/R3K3 w - - 0 1"), 0);
    }
}

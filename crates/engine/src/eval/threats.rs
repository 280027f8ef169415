//! Threats: enemy men that are attacked by less, by more than defend them, or not defended at all.

use shakmaty::{Bitboard, Board, Role};

use super::army::{Army, Attacks};
use super::pawns::{forward, pawn_attacks};
use super::sink::Sink;
use super::terms::{ATTACKED_BY_CHEAPER, ATTACKED_BY_PAWN, LOOSE, OUTNUMBERED, PAWN_STEP};

/// Counts what `army` threatens.
pub fn threats<S: Sink>(
    board: &Board,
    army: &Army,
    foe: &Army,
    ours: &Attacks,
    theirs: &Attacks,
    sink: &mut S,
) {
    let men = foe.own & !board.kings();
    let attacked = men & ours.all;
    if attacked.any() {
        by_victim(board, attacked & army.pawn_attacks, ATTACKED_BY_PAWN, sink);
        let minors = ours.of(Role::Knight) | ours.of(Role::Bishop);
        let cheaper = board.rooks() & minors | board.queens() & (minors | ours.of(Role::Rook));
        by_victim(board, attacked & cheaper, ATTACKED_BY_CHEAPER, sink);
        by_victim(board, attacked & !theirs.all, LOOSE, sink);
        by_victim(
            board,
            outnumbered(board, army, attacked, ours, theirs),
            OUTNUMBERED,
            sink,
        );
    }
    let pieces = men & !foe.pawns;
    let steps = forward(army.pawns, army.color) & !board.occupied() & !foe.pawn_attacks;
    let from = pawn_attacks(pieces, foe.color);
    sink.add(PAWN_STEP, (steps & from).count() as i32);
}

/// Counts the men of a set by their role, pawn to queen.
fn by_victim<S: Sink>(board: &Board, victims: Bitboard, term: usize, sink: &mut S) {
    for square in victims {
        if let Some(role) = board.role_at(square) {
            sink.one(term + role as usize - 1);
        }
    }
}

/// The attacked men that have more attackers than defenders.
fn outnumbered(
    board: &Board,
    army: &Army,
    attacked: Bitboard,
    ours: &Attacks,
    theirs: &Attacks,
) -> Bitboard {
    let count = |square, color| board.attacks_to(square, color, board.occupied()).count();
    // Where both attack once or more, two attackers are needed; only there is counting worth its time.
    let mut found = attacked & !theirs.all;
    for square in attacked & theirs.all & ours.twice {
        if !theirs.twice.contains(square) || count(square, army.color) > count(square, !army.color)
        {
            found.add(square);
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::eval::Tapered;
    use crate::eval::trace::Trace;
    use crate::position::Position;

    fn trace(fen: &str) -> Trace {
        Tapered::trace(Position::from_fen(fen).unwrap().chess())
    }

    #[test]
    fn a_rook_attacked_by_a_knight_and_a_knight_attacked_by_a_pawn_are_counted() {
        let found = trace("4k3/8/8/2r2n2/4P3/1N6/8/4K3 w - - 0 1").terms;
        assert_eq!(found[ATTACKED_BY_CHEAPER + 3], 1);
        assert_eq!(found[ATTACKED_BY_PAWN + 1], 1);
        // The rook defends the knight, the knight does not defend the rook.
        assert_eq!(found[LOOSE + 3], 1);
        assert_eq!(found[LOOSE + 1], 0);
    }

    #[test]
    fn two_attackers_outnumber_one_defender_but_not_two() {
        let one = trace("4k3/3p4/4n3/8/8/1B6/8/4RK2 w - - 0 1").terms;
        assert_eq!(one[OUTNUMBERED + 1], 1);
        let two = trace("4k3/3p1p2/4n3/8/8/1B6/8/4RK2 w - - 0 1").terms;
        assert_eq!(two[OUTNUMBERED + 1], 0);
    }

    #[test]
    fn a_step_of_a_pawn_counts_when_no_pawn_takes_it() {
        let free = trace("4k3/8/3n4/8/4P3/8/8/4K3 w - - 0 1").terms;
        assert_eq!(free[PAWN_STEP], 1);
        let taken = trace("4k3/8/3n1p2/8/4P3/8/8/4K3 w - - 0 1").terms;
        assert_eq!(taken[PAWN_STEP], 0);
    }
}

//! Threats: enemy men that are attacked by less, or attacked and not well defended.

use shakmaty::{Bitboard, Board, Role};

use super::army::{Army, Attacks};
use super::pawns::{forward, pawn_attacks};
use super::sink::Sink;
use super::terms::{
    KING_ATTACKS, LOOSE, LOOSE_PAWN, MINOR_ATTACKS, PAWN_ATTACKS, PUSH_THREAT, ROOK_ATTACKS,
};

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
    let pieces = men & !foe.pawns;
    let roles = [
        board.pawns(),
        board.knights(),
        board.bishops(),
        board.rooks(),
        board.queens(),
    ];
    // Held by a pawn, or by two where we attack once.
    let well_held = theirs.of(Role::Pawn) | (theirs.twice & !ours.twice);
    let weak = men & ours.all & !well_held;

    let by_pawn = pieces & army.pawn_attacks;
    if by_pawn.any() {
        for (index, role) in roles[1..].iter().enumerate() {
            sink.add(PAWN_ATTACKS + index, (by_pawn & *role).count() as i32);
        }
    }
    let by_minor = ours.minors & (weak | (men & board.rooks_and_queens()));
    if by_minor.any() {
        for (index, role) in roles.iter().enumerate() {
            sink.add(MINOR_ATTACKS + index, (by_minor & *role).count() as i32);
        }
    }
    let by_rook = ours.of(Role::Rook) & (weak | (men & board.queens()));
    if by_rook.any() {
        for (index, role) in roles.iter().enumerate() {
            sink.add(ROOK_ATTACKS + index, (by_rook & *role).count() as i32);
        }
    }
    if weak.any() {
        if (weak & ours.of(Role::King)).any() {
            sink.one(KING_ATTACKS);
        }
        let loose = weak & !theirs.all;
        sink.add(LOOSE, (loose & pieces).count() as i32);
        sink.add(LOOSE_PAWN, (loose & foe.pawns).count() as i32);
    }
    sink.add(
        PUSH_THREAT,
        (pieces & push_attacks(board, army, foe, ours, theirs)).count() as i32,
    );
}

/// What the pawns would attack after a step that does not lose them.
fn push_attacks(
    board: &Board,
    army: &Army,
    foe: &Army,
    ours: &Attacks,
    theirs: &Attacks,
) -> Bitboard {
    let color = army.color;
    let empty = !board.occupied();
    let third = Bitboard::from_rank(color.fold_wb(shakmaty::Rank::Third, shakmaty::Rank::Sixth));
    let one = forward(army.pawns, color) & empty;
    let two = forward(one & third, color) & empty;
    let safe = (one | two) & !foe.pawn_attacks & (ours.all | !theirs.all);
    pawn_attacks(safe, color) & !army.pawn_attacks
}

//! The danger that a king is in. Its cover of pawns is counted in `pawns.rs`.

use shakmaty::{Board, Role, attacks};

use super::army::{Army, Attacks};
use super::sink::Sink;
use super::terms::{
    DANGER_ATTACKER, DANGER_BASE, DANGER_CHECK, DANGER_DEFENDER, DANGER_NO_QUEEN, DANGER_OPEN_FILE,
    DANGER_PINNED, DANGER_RING, DANGER_SAFE_CHECK, DANGER_WEAK,
};

/// Counts the danger of `army`'s king. One attacker alone is none, unless the enemy has a queen.
pub fn danger<S: Sink>(
    board: &Board,
    army: &Army,
    foe: &Army,
    ours: &Attacks,
    theirs: &Attacks,
    sink: &mut S,
) {
    let queen = (board.queens() & foe.own).any();
    let attackers: i32 = theirs.attackers.iter().sum();
    if attackers + i32::from(queen) < 2 {
        return;
    }
    sink.danger(DANGER_BASE, 1);
    if !queen {
        sink.danger(DANGER_NO_QUEEN, 1);
    }
    for (index, count) in theirs.attackers.iter().enumerate() {
        sink.danger(DANGER_ATTACKER + index, *count);
    }
    sink.danger(DANGER_RING, theirs.ring_squares);
    let last_guards = ours.of(Role::King) | ours.of(Role::Queen);
    let badly_held = !ours.all | (last_guards & !ours.twice);
    sink.danger(
        DANGER_WEAK,
        (army.ring & theirs.all & badly_held).count() as i32,
    );

    let occupied = board.occupied();
    let safe = !foe.own & (!ours.all | (theirs.twice & !ours.twice & ours.of(Role::King)));
    // Through the king's own queen, which seldom stays where it shields.
    let seen_through = occupied ^ (board.queens() & army.own);
    let straight = attacks::rook_attacks(army.king, seen_through) & !foe.own;
    let slanted = attacks::bishop_attacks(army.king, seen_through) & !foe.own;
    let jumps = attacks::knight_attacks(army.king) & !foe.own;
    let checks = [
        jumps & theirs.of(Role::Knight),
        slanted & theirs.of(Role::Bishop),
        straight & theirs.of(Role::Rook),
        (straight | slanted) & theirs.of(Role::Queen),
    ];
    for (index, squares) in checks.into_iter().enumerate() {
        if (squares & safe).any() {
            sink.danger(DANGER_SAFE_CHECK + index, 1);
        } else if squares.any() && index < 3 {
            sink.danger(DANGER_CHECK, 1);
        }
    }
    sink.danger(DANGER_OPEN_FILE, army.facts.open_files);
    let defenders = army.ring & army.own & (board.knights() | board.bishops());
    sink.danger(DANGER_DEFENDER, defenders.count() as i32);
    sink.danger(DANGER_PINNED, army.pinned.count() as i32);
}

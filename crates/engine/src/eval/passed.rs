//! Passed pawns: whether the way is free, who helps, how near the kings are.

use shakmaty::{Bitboard, Board, Color, Rank, Square, attacks};

use super::army::{Army, Attacks};
use super::pawns::{ahead, relative_rank, step};
use super::sink::Sink;
use super::terms::{
    PASSED_ENEMY_ROOK_BEHIND, PASSED_FREE, PASSED_KINGS, PASSED_ROOK_BEHIND, PASSED_WAY_FREE, RACE,
    UNSTOPPABLE, UNSTOPPABLE_MOVES,
};

/// Counts the passed pawns of `army`; the moves until the first of those that no king can catch is a queen.
pub fn passed<S: Sink>(
    board: &Board,
    army: &Army,
    foe: &Army,
    turn: Color,
    ours: &Attacks,
    theirs: &Attacks,
    sink: &mut S,
) -> Option<i32> {
    let color = army.color;
    let mut quickest: Option<i32> = None;
    let foe_is_bare = (foe.own & !foe.pawns & !board.kings()).is_empty();
    for square in army.facts.passed {
        let here = Bitboard::from_square(square);
        let rank = relative_rank(square, color);
        let stop = step(square, color);
        let way = ahead(here, color);
        let (near, far) = (army.king.distance(stop), foe.king.distance(stop));
        sink.add(PASSED_KINGS + rank, far as i32 - near as i32);
        let barred = way & (board.occupied() | theirs.all & !ours.all);
        let free = (way & !ahead(barred, color) & !barred).count();
        sink.add(PASSED_FREE + rank, free as i32);
        if barred.is_empty() {
            sink.one(PASSED_WAY_FREE + rank);
        }
        rooks_behind(board, army, foe, square, sink);
        if foe_is_bare && (way & board.occupied()).is_empty() {
            let last = Square::from_coords(square.file(), color.fold_wb(Rank::Eighth, Rank::First));
            let moves = moves_to_queen(rank, turn == color);
            if moves < foe.king.distance(last) as i32 {
                quickest = Some(quickest.map_or(moves, |best| best.min(moves)));
            }
        }
    }
    quickest
}

/// Counts a pawn that cannot be caught; when both sides have one, the moves by which ours is quicker.
pub fn unstoppable<S: Sink>(ours: Option<i32>, theirs: Option<i32>, sink: &mut S) {
    match (ours, theirs) {
        (Some(moves), None) => {
            sink.one(UNSTOPPABLE);
            sink.add(UNSTOPPABLE_MOVES, moves);
        }
        (Some(moves), Some(other)) if moves < other => sink.add(RACE, other - moves),
        _ => {}
    }
}

fn rooks_behind<S: Sink>(board: &Board, army: &Army, foe: &Army, pawn: Square, sink: &mut S) {
    let behind = ahead(Bitboard::from_square(pawn), !army.color) & board.rooks();
    if behind.any() {
        let seen = attacks::rook_attacks(pawn, board.occupied()) & behind;
        if (seen & army.own).any() {
            sink.one(PASSED_ROOK_BEHIND);
        } else if (seen & foe.own).any() {
            sink.one(PASSED_ENEMY_ROOK_BEHIND);
        }
    }
}

/// Moves that a pawn needs to queen, one more when the enemy is on move: as many as the enemy king may have
/// made, once it can take the queen.
fn moves_to_queen(rank: usize, on_move: bool) -> i32 {
    (7 - rank as i32).min(5) + i32::from(!on_move)
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
    fn a_king_outside_the_square_of_the_pawn_does_not_catch_it() {
        // "Rule of the Square", Chess Programming Wiki: the square of a pawn on h4 reaches to d4 and d8.
        for (fen, unstoppable) in [
            ("8/8/8/3k4/7P/8/8/K7 w - - 0 1", 0),
            ("8/8/8/2k5/7P/8/8/K7 w - - 0 1", 1),
            ("8/8/8/2k5/7P/8/8/K7 b - - 0 1", 0),
            ("8/8/8/1k6/7P/8/8/K7 b - - 0 1", 1),
            ("8/8/8/1k6/7P/8/8/K6n b - - 0 1", 0),
            ("8/8/8/2k5/7P/1p6/8/7K w - - 0 1", 0),
        ] {
            assert_eq!(trace(fen).terms[UNSTOPPABLE], unstoppable, "{fen}");
        }
        // Four moves against two, and one more for not being on move: Black is quicker by one.
        assert_eq!(trace("8/8/8/2k5/7P/1p6/8/7K w - - 0 1").terms[RACE], -1);
    }

    #[test]
    fn a_blocked_pawn_a_free_one_and_a_rook_behind_are_counted() {
        let with_rook = trace("4k3/8/8/8/P2n4/3P4/8/R3K3 w - - 0 1");
        assert_eq!(with_rook.terms[PASSED_ROOK_BEHIND], 1);
        // the pawn on a4 can go all the way; the one on d3 stands before a knight
        assert_eq!(with_rook.terms[PASSED_FREE + 3], 4);
        assert_eq!(with_rook.terms[PASSED_WAY_FREE + 3], 1);
        assert_eq!(with_rook.terms[PASSED_FREE + 2], 0);
    }

    #[test]
    fn a_step_to_an_attacked_square_is_free_when_the_own_side_attacks_it_too() {
        // Black's rook attacks a6: White's pawn on a4 goes to a5 only, with the king beside it all the way.
        let alone = trace("4k3/8/7r/8/P7/8/8/4K3 w - - 0 1");
        assert_eq!(alone.terms[PASSED_FREE + 3], 1);
        assert_eq!(alone.terms[PASSED_WAY_FREE + 3], 0);
        let together = trace("4k3/8/1K5r/8/P7/8/8/8 w - - 0 1");
        assert_eq!(together.terms[PASSED_FREE + 3], 4);
    }
}

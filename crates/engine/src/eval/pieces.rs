//! Where the pieces stand and what they reach: mobility, outposts, files, the bishop pair.

use shakmaty::{Bitboard, Board, Role, attacks};

use super::army::{Army, Attacks};
use super::pawns::relative_rank;
use super::sink::Sink;
use super::terms::{
    BAD_BISHOP, BISHOP_MOBILITY, BISHOP_OUTPOST, BISHOP_OUTPOST_HELD, BISHOP_PAIR, CENTRE_HELD,
    KNIGHT_MOBILITY, KNIGHT_OUTPOST, KNIGHT_OUTPOST_HELD, KNIGHT_WITH_PAWN, PINNED, QUEEN_MOBILITY,
    ROOK_HALF_OPEN_FILE, ROOK_MOBILITY, ROOK_OPEN_FILE, ROOK_PAIR, ROOK_SEVENTH, ROOK_WITH_PAWN,
    SPACE,
};

const CENTRE: Bitboard = Bitboard(0x0000_0018_1800_0000);
/// The fifth to seventh ranks.
const OUTPOSTS: Bitboard = Bitboard(0x00FF_FFFF_0000_0000);
/// The fifth to eighth ranks.
const BEYOND: Bitboard = Bitboard(0xFFFF_FFFF_0000_0000);

/// Counts the pieces' terms and fills `reached`.
pub fn pieces<S: Sink>(
    board: &Board,
    army: &Army,
    foe: &Army,
    reached: &mut Attacks,
    sink: &mut S,
) {
    let color = army.color;
    let occupied = board.occupied();
    // neither on an own man nor where an enemy pawn takes
    let area = !(army.own | foe.pawn_attacks);
    let holes = color.fold_wb(OUTPOSTS, OUTPOSTS.flip_vertical()) & !foe.facts.span;
    let pawn_count = army.pawns.count() as i32;

    let knights = board.knights() & army.own;
    for square in knights {
        let reach = attacks::knight_attacks(square);
        reached.add(Role::Knight, reach, foe.near);
        sink.one(KNIGHT_MOBILITY + (reach & area).count());
        if holes.contains(square) {
            sink.one(KNIGHT_OUTPOST);
            if army.pawn_attacks.contains(square) {
                sink.one(KNIGHT_OUTPOST_HELD);
            }
        }
        sink.add(KNIGHT_WITH_PAWN, pawn_count - 5);
    }
    let bishops = board.bishops() & army.own;
    for square in bishops {
        let reach = attacks::bishop_attacks(square, occupied);
        reached.add(Role::Bishop, reach, foe.near);
        sink.one(BISHOP_MOBILITY + (reach & area).count());
        if holes.contains(square) {
            sink.one(BISHOP_OUTPOST);
            if army.pawn_attacks.contains(square) {
                sink.one(BISHOP_OUTPOST_HELD);
            }
        }
        let same = if Bitboard::LIGHT_SQUARES.contains(square) {
            Bitboard::LIGHT_SQUARES
        } else {
            Bitboard::DARK_SQUARES
        };
        sink.add(BAD_BISHOP, (army.pawns & same).count() as i32);
    }
    if (bishops & Bitboard::LIGHT_SQUARES).any() && (bishops & Bitboard::DARK_SQUARES).any() {
        sink.one(BISHOP_PAIR);
    }

    let rooks = board.rooks() & army.own;
    for square in rooks {
        let reach = attacks::rook_attacks(square, occupied);
        reached.add(Role::Rook, reach, foe.near);
        sink.one(ROOK_MOBILITY + (reach & area).count());
        let file = Bitboard::from_file(square.file());
        if (file & army.pawns).is_empty() {
            sink.one(if (file & foe.pawns).is_empty() {
                ROOK_OPEN_FILE
            } else {
                ROOK_HALF_OPEN_FILE
            });
        }
        if relative_rank(square, color) == 6
            && (relative_rank(foe.king, color) == 7
                || (Bitboard::from_rank(square.rank()) & foe.pawns).any())
        {
            sink.one(ROOK_SEVENTH);
        }
        sink.add(ROOK_WITH_PAWN, pawn_count - 5);
    }
    if rooks.more_than_one() {
        sink.one(ROOK_PAIR);
    }
    for square in board.queens() & army.own {
        let reach = attacks::queen_attacks(square, occupied);
        reached.add(Role::Queen, reach, foe.near);
        sink.one(QUEEN_MOBILITY + (reach & area).count());
    }
    sink.add(PINNED, (army.pinned & !army.pawns).count() as i32);
    sink.add(CENTRE_HELD, (reached.all & CENTRE).count() as i32);
    let beyond = color.fold_wb(BEYOND, BEYOND.flip_vertical()) & !foe.pawn_attacks;
    sink.add(SPACE, (reached.all & beyond).count() as i32);
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
    fn a_knight_moves_to_squares_without_own_men_that_no_enemy_pawn_attacks() {
        // Of eight squares from e4 an own pawn stands on c3, and the pawn on e7 attacks d6 and f6.
        let found = trace("4k3/4p3/8/8/4N3/2P5/8/4K3 w - - 0 1").terms;
        assert_eq!(found[KNIGHT_MOBILITY + 5], 1);
    }

    #[test]
    fn an_outpost_is_a_square_that_no_enemy_pawn_can_ever_attack() {
        for (fen, stands, held) in [
            ("4k3/8/8/3N4/4P3/8/8/4K3 w - - 0 1", 1, 1),
            ("4k3/8/8/3N4/8/8/8/4K3 w - - 0 1", 1, 0),
            ("4k3/2p5/8/3N4/4P3/8/8/4K3 w - - 0 1", 0, 0),
            ("4k3/8/8/8/3N4/4P3/8/4K3 w - - 0 1", 0, 0),
        ] {
            let found = trace(fen).terms;
            assert_eq!(found[KNIGHT_OUTPOST], stands, "{fen}");
            assert_eq!(found[KNIGHT_OUTPOST_HELD], held, "{fen}");
        }
    }
}

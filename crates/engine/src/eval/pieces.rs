//! Where the pieces stand and what they reach: mobility, outposts, files, the bishop pair.

use shakmaty::{Bitboard, Board, Color, Role, Square, attacks};

use super::army::{Army, Attacks};
use super::pawns::{forward, relative_rank};
use super::sink::Sink;
use super::terms::{
    BAD_BISHOP, BAD_BISHOP_BLOCKED, BISHOP_LONG_DIAGONAL, BISHOP_MOBILITY, BISHOP_OUTPOST,
    BISHOP_PAIR, CENTRE_HELD, KNIGHT_MOBILITY, KNIGHT_OUTPOST, KNIGHT_WITH_PAWN, MINOR_BEHIND_PAWN,
    OUTPOST_NEAR, PINNED, QUEEN_MOBILITY, ROOK_HALF_OPEN_FILE, ROOK_MOBILITY, ROOK_OPEN_FILE,
    ROOK_PAIR, ROOK_SEVENTH, ROOK_TRAPPED, ROOK_WITH_PAWN,
};

const CENTRE: Bitboard = Bitboard(0x0000_0018_1800_0000);
/// The fourth to sixth ranks.
const OUTPOSTS: Bitboard = Bitboard(0x0000_FFFF_FF00_0000);
/// The second and third ranks.
const LOW: Bitboard = Bitboard(0x0000_0000_00FF_FF00);
/// A rook with so few squares may be shut in.
const FEW: usize = 3;

/// Counts the pieces' terms and fills `reached`.
pub fn pieces<S: Sink>(
    board: &Board,
    army: &Army,
    foe: &Army,
    can_castle: bool,
    reached: &mut Attacks,
    sink: &mut S,
) {
    let color = army.color;
    let occupied = board.occupied();
    let own_side = |squares: Bitboard| color.fold_wb(squares, squares.flip_vertical());
    let blocked = army.pawns & forward(occupied, !color);
    // "Mobility", Chess Programming Wiki: not where an enemy pawn takes, nor behind own stuck pawns
    let area = !(army.pawns & (blocked | own_side(LOW))
        | Bitboard::from_square(army.king)
        | foe.pawn_attacks);
    let outposts = own_side(OUTPOSTS) & army.pawn_attacks & !foe.facts.span;
    let pawn_count = army.pawns.count() as i32;

    let knights = board.knights() & army.own;
    for square in knights {
        let reach = attacks::knight_attacks(square);
        reached.add(Role::Knight, reach, foe.ring);
        sink.one(KNIGHT_MOBILITY + (reach & area).count());
        if outposts.contains(square) {
            sink.one(KNIGHT_OUTPOST);
        } else if (reach & outposts & !army.own).any() {
            sink.one(OUTPOST_NEAR);
        }
        sink.add(KNIGHT_WITH_PAWN, pawn_count - 5);
    }
    let bishops = board.bishops() & army.own;
    for square in bishops {
        let reach = attacks::bishop_attacks(square, occupied ^ (board.queens() & army.own));
        reached.add(Role::Bishop, reach, foe.ring);
        sink.one(BISHOP_MOBILITY + (reach & area).count());
        if outposts.contains(square) {
            sink.one(BISHOP_OUTPOST);
        }
        let same = if Bitboard::LIGHT_SQUARES.contains(square) {
            Bitboard::LIGHT_SQUARES
        } else {
            Bitboard::DARK_SQUARES
        };
        sink.add(BAD_BISHOP, (army.pawns & same).count() as i32);
        sink.add(BAD_BISHOP_BLOCKED, (blocked & same).count() as i32);
        if (reach.with(square) & CENTRE).more_than_one() {
            sink.one(BISHOP_LONG_DIAGONAL);
        }
    }
    reached.minors = reached.of(Role::Knight) | reached.of(Role::Bishop);
    if (bishops & Bitboard::LIGHT_SQUARES).any() && (bishops & Bitboard::DARK_SQUARES).any() {
        sink.one(BISHOP_PAIR);
    }
    let behind = (knights | bishops) & forward(board.pawns(), !color);
    sink.add(MINOR_BEHIND_PAWN, behind.count() as i32);

    let rooks = board.rooks() & army.own;
    for square in rooks {
        let reach = attacks::rook_attacks(square, occupied ^ (board.rooks_and_queens() & army.own));
        reached.add(Role::Rook, reach, foe.ring);
        let squares = (reach & area).count();
        sink.one(ROOK_MOBILITY + squares);
        let file = Bitboard::from_file(square.file());
        if (file & army.pawns).is_empty() {
            sink.one(if (file & foe.pawns).is_empty() {
                ROOK_OPEN_FILE
            } else {
                ROOK_HALF_OPEN_FILE
            });
        } else if squares <= FEW && shut_in(square, army.king, color) {
            sink.add(ROOK_TRAPPED, if can_castle { 1 } else { 2 });
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
        reached.add(Role::Queen, reach, foe.ring);
        sink.one(QUEEN_MOBILITY + (reach & area).count());
    }
    sink.add(PINNED, (army.pinned & !army.pawns).count() as i32);
    sink.add(CENTRE_HELD, (reached.all & CENTRE).count() as i32);
}

/// A rook between its king and the edge of the king's wing, both on their first two ranks.
fn shut_in(rook: Square, king: Square, color: Color) -> bool {
    let (rook_file, king_file) = (rook.file() as i32, king.file() as i32);
    let same_wing = if king_file < 4 {
        rook_file < king_file
    } else {
        rook_file > king_file
    };
    same_wing && relative_rank(rook, color) <= 1 && relative_rank(king, color) <= 1
}

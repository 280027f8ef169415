//! Endings: how much of an advantage can be won, and where to drive a bare king.
//!
//! The factors are set by hand, not fitted: they say what the handbooks on the endgame say of whole classes of
//! positions ("Draw Evaluation", "Bishops of Opposite Colors" and "Wrong Color Bishop", Chess Programming Wiki).

use shakmaty::{Bitboard, Board, Color, File, Rank, Square};

use super::army::Army;
use super::sink::Sink;
use super::terms::{BARE_KING, DRIVE_KINGS_NEAR, DRIVE_TO_CORNER, DRIVE_TO_EDGE};

/// The whole of an advantage in the parts that [`scale`] counts: hundredths.
pub const WHOLE: i32 = 100;
const DRAWN: i32 = 0;
/// Ahead by a minor piece or less, and no pawn to win with.
const NO_PAWN: i32 = 15;
/// Bishops on opposite colours and nothing else but pawns.
const OPPOSITE_BISHOPS_ALONE: i32 = 45;
/// The same with other pieces.
const OPPOSITE_BISHOPS: i32 = 80;
/// Rooks alone, one pawn more, all pawns on one wing ("all rook endings are drawn", a saying; common practice).
const ROOKS_ONE_PAWN_MORE: i32 = 55;
/// Rooks alone, one pawn more, pawns on both wings.
const ROOKS_ONE_PAWN_MORE_WIDE: i32 = 80;

const QUEENS_WING: Bitboard = Bitboard(0x0F0F_0F0F_0F0F_0F0F);
const A_FILE: Bitboard = Bitboard(0x0101_0101_0101_0101);
const H_FILE: Bitboard = Bitboard(0x8080_8080_8080_8080);

/// Counts a bare king and where it stands. Whether the pieces suffice is [`scale`]'s to say.
pub fn drive<S: Sink>(board: &Board, army: &Army, foe: &Army, sink: &mut S) {
    if foe.own.more_than_one() {
        return;
    }
    if (army.own & board.rooks_and_queens()).any() {
        sink.one(BARE_KING);
    }
    if army.pawns.any() {
        return;
    }
    let (file, rank) = (foe.king.file() as i32, foe.king.rank() as i32);
    sink.add(DRIVE_KINGS_NEAR, 7 - army.king.distance(foe.king) as i32);
    let heavy = army.own & board.rooks_and_queens();
    let bishops = army.own & board.bishops();
    let knights = army.own & board.knights();
    if heavy.is_empty() && bishops.count() == 1 && knights.count() == 1 {
        // 7 in the corners of the bishop's colour, 0 on the long diagonal between the other two
        let along = if (bishops & Bitboard::LIGHT_SQUARES).any() {
            file - rank
        } else {
            7 - file - rank
        };
        sink.add(DRIVE_TO_CORNER, along.abs());
    }
    let from_centre = ((2 * file - 7).abs() + (2 * rank - 7).abs()) / 2 - 1;
    sink.add(DRIVE_TO_EDGE, from_centre);
}

/// How much of an advantage of `stronger` can be won, in parts of [`WHOLE`].
pub fn scale(board: &Board, stronger: Color, phase: i32) -> i32 {
    // With more on the board nothing here applies.
    if phase > 12 {
        return WHOLE;
    }
    let own = board.by_color(stronger);
    let foe = board.by_color(!stronger);
    let (pawns, foe_pawns) = (own & board.pawns(), foe & board.pawns());
    if pawns.is_empty() {
        return without_pawns(board, own, foe);
    }
    let pieces = own & !pawns & !board.kings();
    let foe_pieces = foe & !foe_pawns & !board.kings();
    let foe_king = board.king_of(!stronger).unwrap_or(Square::A1);
    if foe_pieces.is_empty() && is_wrong_corner(board, pieces, pawns, foe_king, stronger) {
        return DRAWN;
    }
    let bishops = board.bishops();
    let one_each = (own & bishops).count() == 1 && (foe & bishops).count() == 1;
    if one_each && (bishops & Bitboard::LIGHT_SQUARES).count() == 1 {
        return if pieces.more_than_one() || foe_pieces.more_than_one() {
            OPPOSITE_BISHOPS
        } else {
            OPPOSITE_BISHOPS_ALONE
        };
    }
    let rooks = board.rooks();
    let rook_each = pieces.count() == 1
        && foe_pieces.count() == 1
        && (rooks & own).any()
        && (rooks & foe).any();
    if rook_each && pawns.count() == foe_pawns.count() + 1 && pawns.count() <= 5 {
        let all = pawns | foe_pawns;
        let one_wing = (all & QUEENS_WING).is_empty() || (all & !QUEENS_WING).is_empty();
        return if one_wing {
            ROOKS_ONE_PAWN_MORE
        } else {
            ROOKS_ONE_PAWN_MORE_WIDE
        };
    }
    WHOLE
}

fn without_pawns(board: &Board, own: Bitboard, foe: Bitboard) -> i32 {
    let ours = pieces_worth(board, own);
    let theirs = pieces_worth(board, foe);
    let only_knights = (own & board.knights()).count() + 1 == own.count();
    if ours <= 3 || (ours == 6 && only_knights) {
        return DRAWN;
    }
    if ours - theirs <= 3 { NO_PAWN } else { WHOLE }
}

/// The pieces of a side by the trade's 3, 3, 5, 9.
fn pieces_worth(board: &Board, own: Bitboard) -> i32 {
    let count = |set: Bitboard| (own & set).count() as i32;
    3 * (count(board.knights()) + count(board.bishops()))
        + 5 * count(board.rooks())
        + 9 * count(board.queens())
}

/// Rook pawns of one file with nothing but a bishop that does not control the corner where they queen, or with
/// nothing at all, and the enemy king in that corner or next to it ("Wrong Color Bishop", Chess Programming Wiki).
fn is_wrong_corner(
    board: &Board,
    pieces: Bitboard,
    pawns: Bitboard,
    foe_king: Square,
    stronger: Color,
) -> bool {
    let file = if (pawns & !A_FILE).is_empty() {
        File::A
    } else if (pawns & !H_FILE).is_empty() {
        File::H
    } else {
        return false;
    };
    let corner = Square::from_coords(file, stronger.fold_wb(Rank::Eighth, Rank::First));
    let corner_is_light = Bitboard::LIGHT_SQUARES.contains(corner);
    let wrong = |bishop| Bitboard::LIGHT_SQUARES.contains(bishop) != corner_is_light;
    let harmless = (pieces & !board.bishops()).is_empty() && pieces.into_iter().all(wrong);
    harmless && foe_king.distance(corner) <= 1
}

#[cfg(test)]
mod tests {
    use super::*;
    use shakmaty::Position as _;

    use crate::position::Position;

    fn for_white(fen: &str) -> i32 {
        let position = Position::from_fen(fen).unwrap();
        scale(position.chess().board(), Color::White, 0)
    }

    #[test]
    fn a_bishop_of_the_wrong_colour_does_not_help_a_rook_pawn() {
        // "Wrong Color Bishop", Chess Programming Wiki: the corner h8 is dark, the bishop light.
        assert_eq!(for_white("7k/8/8/7P/8/3B4/8/4K3 w - - 0 1"), DRAWN);
        assert_eq!(for_white("7k/8/8/7P/8/4B3/8/4K3 w - - 0 1"), WHOLE);
        assert_eq!(for_white("k7/8/8/7P/8/3B4/8/4K3 w - - 0 1"), WHOLE);
    }

    #[test]
    fn pieces_that_cannot_mate_win_nothing() {
        // FIDE Laws and handbooks: a minor piece cannot, two knights cannot force it (common practice).
        assert_eq!(for_white("8/8/3k4/8/8/8/3B4/4K3 w - - 0 1"), DRAWN);
        assert_eq!(for_white("8/8/3k4/8/8/8/3NN3/4K3 w - - 0 1"), DRAWN);
        assert_eq!(for_white("8/8/3k4/8/8/8/3NB3/4K3 w - - 0 1"), WHOLE);
        assert_eq!(for_white("8/8/3kb3/8/8/8/R7/4K3 w - - 0 1"), NO_PAWN);
    }

    #[test]
    fn bishops_of_opposite_colours_win_less() {
        assert_eq!(for_white("8/3b4/3k4/8/3PP3/3B4/8/4K3 w - - 0 1"), WHOLE);
        assert_eq!(
            for_white("8/4b3/3k4/8/3PP3/3B4/8/4K3 w - - 0 1"),
            OPPOSITE_BISHOPS_ALONE
        );
    }
}

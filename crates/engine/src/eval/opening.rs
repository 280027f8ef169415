//! The opening: pieces still at home, the right to castle, a queen out too early.

use shakmaty::{Bitboard, CastlingSide, Chess, Color, Position as _, Square};

use super::sink::Sink;
use super::terms::{CAN_CASTLE_LONG, CAN_CASTLE_SHORT, QUEEN_OUT_EARLY, UNDEVELOPED};

/// Counts the development of a side.
pub fn development<S: Sink>(chess: &Chess, color: Color, sink: &mut S) {
    let board = chess.board();
    let own = board.by_color(color);
    let first = |squares: Bitboard| color.fold_wb(squares, squares.flip_vertical());
    let knights = first(Bitboard::from_square(Square::B1).with(Square::G1));
    let bishops = first(Bitboard::from_square(Square::C1).with(Square::F1));
    let at_home = own & ((board.knights() & knights) | (board.bishops() & bishops));
    let undeveloped = at_home.count();
    sink.one(UNDEVELOPED + undeveloped);
    if chess.castles().has(color, CastlingSide::KingSide) {
        sink.one(CAN_CASTLE_SHORT);
    }
    if chess.castles().has(color, CastlingSide::QueenSide) {
        sink.one(CAN_CASTLE_LONG);
    }
    let queens = own & board.queens();
    if queens.any() && (queens & Bitboard::from_rank(color.backrank())).is_empty() {
        sink.add(QUEEN_OUT_EARLY, undeveloped as i32);
    }
}

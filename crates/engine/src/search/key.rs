//! The key of the position after a move, from the key before it (Zobrist, A New Hashing Method with Application
//! for Game Playing, 1970). Equal to [`crate::position::Position::key`], made faster.

use shakmaty::zobrist::{Zobrist64, ZobristValue};
use shakmaty::{CastlingSide, Chess, Color, Move, Position as _, Square};

fn piece(square: Square, piece: shakmaty::Piece) -> u64 {
    let Zobrist64(key) = Zobrist64::zobrist_for_piece(square, piece);
    key
}

fn en_passant(chess: &Chess) -> u64 {
    if chess.maybe_ep_square().is_none() {
        return 0;
    }
    chess.legal_ep_square().map_or(0, |square| {
        let Zobrist64(key) = Zobrist64::zobrist_for_en_passant_file(square.file());
        key
    })
}

fn castling(chess: &Chess) -> u64 {
    let mut all = 0;
    for color in Color::ALL {
        for side in CastlingSide::ALL {
            if chess.castles().has(color, side) {
                let Zobrist64(key) = Zobrist64::zobrist_for_castling_right(color, side);
                all ^= key;
            }
        }
    }
    all
}

/// The key of `after`, which came about from `before` by `mv`.
pub fn key_after(before: &Chess, key: u64, mv: Move, after: &Chess) -> u64 {
    let turn = before.turn();
    let mut key = pass(key) ^ en_passant(before) ^ en_passant(after);
    match mv {
        Move::Normal {
            role,
            from,
            capture,
            to,
            promotion,
        } => {
            key ^= piece(from, role.of(turn)) ^ piece(to, promotion.unwrap_or(role).of(turn));
            if let Some(taken) = capture {
                key ^= piece(to, taken.of(!turn));
            }
        }
        Move::EnPassant { from, to } => {
            key ^= piece(from, turn.pawn())
                ^ piece(to, turn.pawn())
                ^ piece(Square::from_coords(to.file(), from.rank()), (!turn).pawn());
        }
        Move::Castle { king, rook } => {
            let side = CastlingSide::from_king_side(king < rook);
            key ^= piece(king, turn.king())
                ^ piece(rook, turn.rook())
                ^ piece(side.king_to(turn), turn.king())
                ^ piece(side.rook_to(turn), turn.rook());
        }
        Move::Put { role, to } => key ^= piece(to, role.of(turn)),
    }
    if before.castles().castling_rights() != after.castles().castling_rights() {
        key ^= castling(before) ^ castling(after);
    }
    key
}

/// The key after a pass, in a position without en passant.
pub fn pass(key: u64) -> u64 {
    let Zobrist64(white) = Zobrist64::zobrist_for_white_turn();
    key ^ white
}

/// The key after a pass, which also gives up en passant.
pub fn key_after_pass(before: &Chess, key: u64) -> u64 {
    pass(key) ^ en_passant(before)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::position::Position;

    fn check(position: &Position, depth: u32) {
        let key = position.key();
        for mv in position.legal_moves() {
            let after = position.play(mv);
            assert_eq!(
                key_after(position.chess(), key, mv, after.chess()),
                after.key(),
                "{} {}",
                position.fen(),
                position.uci(mv)
            );
            if depth > 1 {
                check(&after, depth - 1);
            }
        }
        if let Some(passed) = position.passed() {
            assert_eq!(key_after_pass(position.chess(), key), passed.key());
        }
    }

    #[test]
    fn keys_made_move_by_move_equal_keys_made_anew() {
        for fen in [
            "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1",
            "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1",
            "r2q1rk1/pP1p2pp/Q4n2/bbp1p3/Np6/1B3NBn/pPPP1PPP/R3K2R b KQ - 0 1",
            "8/8/8/8/1k1Pp2R/8/8/4K3 b - d3 0 1",
        ] {
            check(&Position::from_fen(fen).unwrap(), 3);
        }
    }
}

//! The captures and promotions of a position without a check, made without the quiet moves: what quiescence asks for.

use shakmaty::{Bitboard, Chess, Move, MoveList, Position as _, Role, Square, attacks};

/// Every legal capture, and every legal promotion to a queen, of a mover who is not in check.
pub fn noisy_moves(chess: &Chess) -> MoveList {
    let mut moves = chess.en_passant_moves();
    let board = chess.board();
    let turn = chess.turn();
    let (us, them) = (chess.us(), chess.them());
    let occupied = board.occupied();
    let Some(king) = board.king_of(turn) else {
        return moves;
    };

    let snipers = ((attacks::rook_attacks(king, Bitboard::EMPTY) & board.rooks_and_queens())
        | (attacks::bishop_attacks(king, Bitboard::EMPTY) & board.bishops_and_queens()))
        & them;
    let mut pinned = Bitboard::EMPTY;
    for sniper in snipers {
        let between = attacks::between(king, sniper) & occupied;
        if !between.more_than_one() {
            pinned |= between & us;
        }
    }
    let free =
        |from: Square, to: Square| !pinned.contains(from) || attacks::aligned(from, to, king);

    let last = Bitboard::from_rank((!turn).backrank());
    for from in us & board.pawns() {
        for to in attacks::pawn_attacks(turn, from) & them {
            if free(from, to) {
                let promotion = last.contains(to).then_some(Role::Queen);
                moves.push(Move::Normal {
                    role: Role::Pawn,
                    from,
                    capture: board.role_at(to),
                    to,
                    promotion,
                });
            }
        }
    }
    let steps = (us & board.pawns()).shift(turn.fold_wb(8, -8)) & last & !occupied;
    for to in steps {
        if let Some(from) = to
            .offset(turn.fold_wb(-8, 8))
            .filter(|from| free(*from, to))
        {
            moves.push(Move::Normal {
                role: Role::Pawn,
                from,
                capture: None,
                to,
                promotion: Some(Role::Queen),
            });
        }
    }
    let mut add = |role: Role, from: Square, reach: Bitboard| {
        for to in reach & them {
            if free(from, to) {
                moves.push(Move::Normal {
                    role,
                    from,
                    capture: board.role_at(to),
                    to,
                    promotion: None,
                });
            }
        }
    };
    for from in us & board.knights() {
        add(Role::Knight, from, attacks::knight_attacks(from));
    }
    for from in us & board.bishops() {
        add(Role::Bishop, from, attacks::bishop_attacks(from, occupied));
    }
    for from in us & board.rooks() {
        add(Role::Rook, from, attacks::rook_attacks(from, occupied));
    }
    for from in us & board.queens() {
        add(Role::Queen, from, attacks::queen_attacks(from, occupied));
    }
    for to in attacks::king_attacks(king) & them {
        if board
            .attacks_to(to, !turn, occupied.without(king))
            .is_empty()
        {
            moves.push(Move::Normal {
                role: Role::King,
                from: king,
                capture: board.role_at(to),
                to,
                promotion: None,
            });
        }
    }
    moves
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::position::Position;

    fn check(position: &Position, depth: u32) {
        if !position.chess().is_check() {
            let spell = |mv: &Move| position.uci(*mv);
            let mut made: Vec<String> = noisy_moves(position.chess()).iter().map(spell).collect();
            let mut expected: Vec<String> = position
                .legal_moves()
                .iter()
                .filter(|mv| match mv.promotion() {
                    None => mv.is_capture(),
                    Some(role) => role == Role::Queen,
                })
                .map(spell)
                .collect();
            made.sort();
            expected.sort();
            assert_eq!(made, expected, "{}", position.fen());
        }
        if depth > 0 {
            for mv in position.legal_moves() {
                check(&position.play(mv), depth - 1);
            }
        }
    }

    #[test]
    fn noisy_moves_are_the_captures_and_queenings_among_the_legal_moves() {
        for fen in [
            "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1",
            "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1",
            "r2q1rk1/pP1p2pp/Q4n2/bbp1p3/Np6/1B3NBn/pPPP1PPP/R3K2R b KQ - 0 1",
            "8/8/8/8/1k1Pp2R/8/8/4K3 b - d3 0 1",
            "4k3/8/8/1r1pP2K/8/8/8/8 w - d6 0 1",
        ] {
            check(&Position::from_fen(fen).unwrap(), 2);
        }
    }
}

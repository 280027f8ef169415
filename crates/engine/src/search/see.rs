//! Static exchange evaluation: what a capture wins when both sides go on taking on that square,
//! each with its least valuable piece first ("Static Exchange Evaluation", Chess Programming Wiki).

use shakmaty::{Bitboard, Board, Chess, Move, Position as _, Role, Square, attacks};

/// Exchange values in centipawns, pawn to king.
const VALUE: [i32; 6] = [100, 320, 330, 500, 950, 20_000];

/// The exchange value of a role.
pub fn worth(role: Role) -> i32 {
    VALUE[role as usize - 1]
}

/// Whether the exchange that `mv` begins wins at least `threshold` centipawns for the mover.
pub fn wins_at_least(chess: &Chess, mv: Move, threshold: i32) -> bool {
    let (from, to, first, gain) = match mv {
        Move::Normal {
            role,
            from,
            capture,
            to,
            promotion,
        } => {
            let taken = capture.map_or(0, worth);
            let promoted = promotion.map_or(0, |piece| worth(piece) - worth(Role::Pawn));
            (from, to, promotion.unwrap_or(role), taken + promoted)
        }
        Move::EnPassant { from, to } => (from, to, Role::Pawn, worth(Role::Pawn)),
        Move::Castle { .. } | Move::Put { .. } => return threshold <= 0,
    };
    let mut balance = gain - threshold;
    if balance < 0 {
        return false;
    }
    // Even when the piece is lost for nothing.
    balance -= worth(first);
    if balance >= 0 {
        return true;
    }

    let board = chess.board();
    let mut occupied = board.occupied().without(from).with(to);
    if let Move::EnPassant { .. } = mv {
        occupied.discard(Square::from_coords(to.file(), from.rank()));
    }
    let mut side = !chess.turn();
    let mut attackers = attackers_of(board, to, occupied) & occupied;
    let diagonal = board.bishops_and_queens();
    let straight = board.rooks_and_queens();
    loop {
        let own = attackers & board.by_color(side);
        let Some((role, square)) = least_valuable(board, own) else {
            break;
        };
        if role == Role::King && (attackers & board.by_color(!side)).any() {
            // The king may not take what is still defended.
            break;
        }
        occupied.discard(square);
        if matches!(role, Role::Pawn | Role::Bishop | Role::Queen) {
            attackers |= attacks::bishop_attacks(to, occupied) & diagonal;
        }
        if matches!(role, Role::Rook | Role::Queen) {
            attackers |= attacks::rook_attacks(to, occupied) & straight;
        }
        attackers &= occupied;
        side = !side;
        // Seen from the side that is to take next: what it needs, if the taker is lost in turn.
        balance = -balance - 1 - worth(role);
        if balance >= 0 {
            break;
        }
    }
    // The side left to move has failed to restore the balance.
    side != chess.turn()
}

fn attackers_of(board: &Board, square: Square, occupied: Bitboard) -> Bitboard {
    board.attacks_to(square, shakmaty::Color::White, occupied)
        | board.attacks_to(square, shakmaty::Color::Black, occupied)
}

fn least_valuable(board: &Board, own: Bitboard) -> Option<(Role, Square)> {
    if own.is_empty() {
        return None;
    }
    Role::ALL.into_iter().find_map(|role| {
        (own & board.by_role(role))
            .first()
            .map(|square| (role, square))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::position::Position;

    /// The exact value of the exchange, by bisection over thresholds.
    fn value(fen: &str, san: &str) -> i32 {
        let position = Position::from_fen(fen).unwrap();
        let mv = position.parse_san(san).unwrap();
        (-3000..=3000)
            .rev()
            .find(|threshold| wins_at_least(position.chess(), mv, *threshold))
            .unwrap()
    }

    #[test]
    fn an_undefended_pawn_is_won() {
        // "SEE - The Swap Algorithm", Chess Programming Wiki, first example.
        assert_eq!(
            value("1k1r4/1pp4p/p7/4p3/8/P5P1/1PP4P/2K1R3 w - - 0 1", "Rxe5"),
            100
        );
    }

    #[test]
    fn a_knight_is_lost_for_a_pawn_though_a_queen_stands_behind() {
        // Same source, second example.
        assert_eq!(
            value(
                "1k1r3q/1ppn3p/p4b2/4p3/8/P2N2P1/1PP1R1BP/2K1Q3 w - - 0 1",
                "Nxe5"
            ),
            100 - 320
        );
    }

    #[test]
    fn a_defended_piece_of_equal_worth_is_an_even_exchange() {
        assert_eq!(value("4k3/8/2p5/3n4/8/2N5/8/4K3 w - - 0 1", "Nxd5"), 0);
    }

    #[test]
    fn a_queen_that_takes_a_defended_pawn_is_lost() {
        assert_eq!(
            value("4k3/8/2p5/3p4/8/8/3Q4/4K3 w - - 0 1", "Qxd5"),
            100 - 950
        );
    }

    #[test]
    fn a_king_does_not_take_what_is_defended() {
        // The rook takes the pawn; the king may not take back, since the second rook stands behind.
        assert_eq!(value("8/8/3k4/3p4/8/8/3R4/3RK3 w - - 0 1", "Rxd5+"), 100);
    }

    #[test]
    fn en_passant_wins_a_pawn() {
        assert_eq!(value("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1", "exd6"), 100);
    }
}

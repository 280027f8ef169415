//! Static exchange evaluation: what a capture wins when both sides go on taking on that square,
//! each with its least valuable piece first ("Static Exchange Evaluation", Chess Programming Wiki).

use shakmaty::{Bitboard, Board, Chess, Move, Position as _, Role, Square};

/// Exchange values in centipawns, pawn to king.
const VALUE: [i32; 6] = [100, 320, 330, 500, 950, 20_000];

/// The exchange value of a role.
pub fn worth(role: Role) -> i32 {
    VALUE[role as usize - 1]
}

/// Most captures on one square: every man but the kings' own.
const LONGEST: usize = 32;

/// Whether the exchange that `mv` begins wins at least `threshold` centipawns for the mover.
pub fn wins_at_least(chess: &Chess, mv: Move, threshold: i32) -> bool {
    match mv {
        Move::Castle { .. } | Move::Put { .. } => threshold <= 0,
        Move::Normal { .. } | Move::EnPassant { .. } => {
            let (gain, risk) = stakes(mv);
            // the first capture is the most that can be won, the capturing man the most that can be lost
            gain >= threshold && (gain - risk >= threshold || value(chess, mv) >= threshold)
        }
    }
}

/// What a move takes (or gains by promotion), and the man that it puts at risk, in centipawns.
fn stakes(mv: Move) -> (i32, i32) {
    let taken = match mv {
        Move::EnPassant { .. } => worth(Role::Pawn),
        _ => mv.capture().map_or(0, worth),
    };
    match mv.promotion() {
        Some(piece) => (taken + worth(piece) - worth(Role::Pawn), worth(piece)),
        None => (taken, worth(mv.role())),
    }
}

/// What the exchange that `mv` begins wins for the mover, in centipawns ("SEE - The Swap Algorithm", Chess
/// Programming Wiki): the men that can take, least valuable first, give a list of gains; going back over it,
/// each side stops where going on would cost it.
fn value(chess: &Chess, mv: Move) -> i32 {
    let (gain, mut standing) = stakes(mv);
    let to = mv.to();
    let board = chess.board();
    let mut occupied = board.occupied().with(to);
    if let Some(from) = mv.from() {
        occupied.discard(from);
        if mv.is_en_passant() {
            occupied.discard(Square::from_coords(to.file(), from.rank()));
        }
    }
    let mut gains = [0; LONGEST + 1];
    gains[0] = gain;
    let mut taken = 0;
    let mut side = !chess.turn();
    while taken < LONGEST {
        let attackers = attackers_of(board, to, occupied) & occupied;
        let Some((role, square)) = least_valuable(board, attackers & board.by_color(side)) else {
            break;
        };
        if role == Role::King && (attackers & board.by_color(!side)).any() {
            break; // the king may not take what is still defended
        }
        taken += 1;
        gains[taken] = standing - gains[taken - 1];
        standing = worth(role);
        occupied.discard(square);
        side = !side;
    }
    while taken > 0 {
        gains[taken - 1] = gains[taken - 1].min(-gains[taken]);
        taken -= 1;
    }
    gains[0]
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

    /// The value of the exchange, and that `wins_at_least` agrees with it on both sides.
    fn value(fen: &str, san: &str) -> i32 {
        let position = Position::from_fen(fen).unwrap();
        let mv = position.parse_san(san).unwrap();
        let value = super::value(position.chess(), mv);
        assert!(wins_at_least(position.chess(), mv, value));
        assert!(!wins_at_least(position.chess(), mv, value + 1));
        value
    }

    #[test]
    fn a_rook_behind_a_queen_and_a_bishop_behind_a_pawn_take_part() {
        // Worked out by hand from the values above.
        assert_eq!(
            value("3r2k1/8/8/3p4/8/8/3Q4/3R2K1 w - - 0 1", "Qxd5"),
            100 - 950 + 500
        );
        assert_eq!(
            value("3r2k1/8/4p3/3p4/8/8/3Q4/3R2K1 w - - 0 1", "Qxd5"),
            100 - 950
        );
        assert_eq!(value("6k1/8/2b5/3p4/4P3/5B2/8/6K1 w - - 0 1", "exd5"), 100);
    }

    #[test]
    fn promotion_and_en_passant_count() {
        assert_eq!(
            value("3r2k1/2P5/8/8/8/8/8/6K1 w - - 0 1", "cxd8=Q+"),
            500 + 850
        );
        assert_eq!(value("6k1/8/8/3pP3/8/8/8/6K1 w - d6 0 1", "exd6"), 100);
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

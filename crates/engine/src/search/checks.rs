//! Whether a move gives check, told before it is played.

use shakmaty::{Bitboard, Chess, Move, Position as _, Square, attacks};

/// What a node knows about checks to the enemy king.
pub struct Checks {
    king: Square,
    /// Squares from which a knight, a bishop, a rook, a pawn of the mover would give check.
    knight: Bitboard,
    slanted: Bitboard,
    straight: Bitboard,
    pawn: Bitboard,
    /// Pieces of the mover that stand between a line piece of his and the king.
    screens: Bitboard,
}

impl Checks {
    pub fn new(chess: &Chess) -> Checks {
        let board = chess.board();
        let turn = chess.turn();
        let king = board.king_of(!turn).unwrap_or(Square::A1);
        let occupied = board.occupied();
        let mut screens = Bitboard::EMPTY;
        let snipers = ((attacks::rook_attacks(king, Bitboard::EMPTY) & board.rooks_and_queens())
            | (attacks::bishop_attacks(king, Bitboard::EMPTY) & board.bishops_and_queens()))
            & chess.us();
        for sniper in snipers {
            let between = attacks::between(king, sniper) & occupied;
            if between.single_square().is_some() {
                screens |= between & chess.us();
            }
        }
        Checks {
            king,
            knight: attacks::knight_attacks(king),
            slanted: attacks::bishop_attacks(king, occupied),
            straight: attacks::rook_attacks(king, occupied),
            pawn: attacks::pawn_attacks(!turn, king),
            screens,
        }
    }

    /// Whether no piece of the mover can reach a square from which it gives check, told from the attacks alone.
    pub fn none_possible(&self, chess: &Chess) -> bool {
        let board = chess.board();
        let us = chess.us();
        let occupied = board.occupied();
        let goes = |squares: Bitboard, reach: Bitboard| (reach & squares & !us).any();
        self.screens.is_empty()
            && (us & board.pawns())
                .shift(chess.turn().fold_wb(8, -8))
                .is_disjoint(self.pawn)
            && (us & board.pawns())
                .shift(chess.turn().fold_wb(16, -16))
                .is_disjoint(self.pawn)
            && !(us & board.knights())
                .into_iter()
                .any(|from| goes(self.knight, attacks::knight_attacks(from)))
            && !(us & board.bishops_and_queens())
                .into_iter()
                .any(|from| goes(self.slanted, attacks::bishop_attacks(from, occupied)))
            && !(us & board.rooks_and_queens())
                .into_iter()
                .any(|from| goes(self.straight, attacks::rook_attacks(from, occupied)))
            && !(us & board.queens()).into_iter().any(|from| {
                goes(self.slanted, attacks::rook_attacks(from, occupied))
                    || goes(self.straight, attacks::bishop_attacks(from, occupied))
            })
    }

    /// Whether a normal move without promotion gives check. Castling, en passant and promotions are not looked at:
    /// they are answered with yes, so that nobody leaves them out for being quiet.
    pub fn gives(&self, mv: Move) -> bool {
        let Move::Normal {
            role,
            from,
            to,
            promotion: None,
            ..
        } = mv
        else {
            return true;
        };
        let direct = match role {
            shakmaty::Role::Pawn => self.pawn.contains(to),
            shakmaty::Role::Knight => self.knight.contains(to),
            shakmaty::Role::Bishop => self.slanted.contains(to),
            shakmaty::Role::Rook => self.straight.contains(to),
            shakmaty::Role::Queen => (self.slanted | self.straight).contains(to),
            shakmaty::Role::King => false,
        };
        direct || (self.screens.contains(from) && !attacks::aligned(from, to, self.king))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::position::Position;

    fn check(position: &Position, depth: u32) {
        let checks = Checks::new(position.chess());
        let mut found = false;
        for mv in position.legal_moves() {
            let after = position.play(mv);
            let plain = matches!(
                mv,
                Move::Normal {
                    promotion: None,
                    ..
                }
            );
            if plain {
                found |= !mv.is_capture() && checks.gives(mv);
                assert_eq!(
                    checks.gives(mv),
                    after.chess().is_check(),
                    "{} {}",
                    position.fen(),
                    position.uci(mv)
                );
            }
            if depth > 1 {
                check(&after, depth - 1);
            }
        }
        assert!(
            !(found && checks.none_possible(position.chess())),
            "{}",
            position.fen()
        );
    }

    #[test]
    fn a_check_is_told_before_the_move() {
        for fen in [
            "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1",
            "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1",
            "r2q1rk1/pP1p2pp/Q4n2/bbp1p3/Np6/1B3NBn/pPPP1PPP/R3K2R b KQ - 0 1",
            "4k3/8/8/4N3/8/8/4R3/4K3 w - - 0 1",
        ] {
            check(&Position::from_fen(fen).unwrap(), 3);
        }
    }
}

//! The move of a SAN where only one piece can be meant: half the time of looking among the legal moves.
//!
//! It never takes an illegal move for a legal one; where it is in doubt it says nothing.

use shakmaty::san::San;
use shakmaty::{Bitboard, Chess, Color, Move, Position as _, Rank, Role, Square, attacks};

/// The move of a SAN; none when that has to be looked up.
pub fn find(chess: &Chess, san: San) -> Option<Move> {
    let San::Normal {
        role,
        file,
        rank,
        capture,
        to,
        promotion,
    } = san
    else {
        return None;
    };
    let us = chess.turn();
    let board = chess.board();
    let taken = board.role_at(to);
    if board.by_color(us).contains(to) || capture != taken.is_some() || taken == Some(Role::King) {
        return None;
    }
    let own = board.by_piece(role.of(us));
    let from = match role {
        Role::Pawn => {
            let last = us.fold_wb(Rank::Eighth, Rank::First) == to.rank();
            if last != promotion.is_some() || rank.is_some() {
                return None;
            }
            pawn_from(own, us, to, file.filter(|_| capture), board.occupied())?
        }
        _ if promotion.is_some() => return None,
        _ => {
            let mut meant = attacks::attacks(to, role.of(us), board.occupied()) & own;
            if let Some(file) = file {
                meant &= Bitboard::from_file(file);
            }
            if let Some(rank) = rank {
                meant &= Bitboard::from_rank(rank);
            }
            meant.single_square()?
        }
    };
    if file.is_some_and(|file| file != from.file())
        || file.is_none() && capture && role == Role::Pawn
    {
        return None;
    }
    // the king must not be left to a piece that is not taken
    let king = if role == Role::King {
        to
    } else {
        board.king_of(us)?
    };
    let occupied = (board.occupied() ^ Bitboard::from(from)) | Bitboard::from(to);
    if (board.attacks_to(king, !us, occupied) & !Bitboard::from(to)).any() {
        return None;
    }
    Some(Move::Normal {
        role,
        from,
        capture: taken,
        to,
        promotion,
    })
}

/// From where a pawn comes. `file`: of a capture.
fn pawn_from(
    own: Bitboard,
    us: Color,
    to: Square,
    file: Option<shakmaty::File>,
    occupied: Bitboard,
) -> Option<Square> {
    let back = if us == Color::White { -8 } else { 8 };
    let behind = to.offset(back)?;
    if let Some(file) = file {
        let from = Square::from_coords(file, behind.rank());
        let beside = to.file().distance(file) == 1;
        return (beside && own.contains(from)).then_some(from);
    }
    if own.contains(behind) {
        return Some(behind);
    }
    let far = behind.offset(back)?;
    let double = to.rank() == us.fold_wb(Rank::Fourth, Rank::Fifth);
    (double && !occupied.contains(behind) && own.contains(far)).then_some(far)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::random::Random;

    #[test]
    fn it_is_the_legal_move_or_none() {
        let (mut quick, mut all) = (0, 0);
        for seed in 0..60 {
            let mut random = Random::new(seed, 3);
            let mut chess = Chess::default();
            let mut earlier: Vec<San> = Vec::new();
            for _ in 0..150 {
                let moves = chess.legal_moves();
                if moves.is_empty() {
                    break;
                }
                let sans = moves.iter().map(|mv| San::from_move(&chess, *mv));
                // moves of earlier positions are mostly illegal here, or can mean two
                for san in sans.chain(earlier.iter().rev().take(60).copied()) {
                    all += 1;
                    if let Some(mv) = find(&chess, san) {
                        quick += 1;
                        let legal = san.to_move(&chess);
                        assert_eq!(legal, Ok(mv), "{san}");
                    }
                }
                let mv = moves[random.below(moves.len())];
                earlier.push(San::from_move(&chess, mv));
                chess.play_unchecked(mv);
            }
        }
        assert!(quick * 5 > all, "{quick} of {all}");
    }
}

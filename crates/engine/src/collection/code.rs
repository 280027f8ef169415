//! A move in a byte, seldom two, by the geometry of the board alone: no order in which a library finds moves is in it.
//!
//! The high half is the number of the moving piece among the mover's, by square from a1 to h8; the low half the number
//! of the target among the squares that the piece attacks and that none of its own side holds, by square. A king's 8 and
//! 9 are castling to the king's and the queen's side. A pawn's 0 is one step, 1 two steps, 2 a capture towards the a-file,
//! 3 towards the h-file; plus 4 for each step down from a queen when it promotes. A low half of 15 says that the number
//! follows in a byte of its own.
//!
//! ```
//! use engine::collection::{read_move, write_move};
//! use engine::position::Position;
//! let start = Position::start();
//! let mv = start.parse_san("Nf3").unwrap();
//! let mut code = Vec::new();
//! write_move(start.chess(), mv, &mut code);
//! assert_eq!(read_move(start.chess(), &mut &code[..]), Some(mv));
//! ```

use shakmaty::{
    Bitboard, Chess, Color, EnPassantMode, File, Move, Position as _, Role, Square, attacks,
};

const MORE: u8 = 15;
const PROMOTIONS: [Role; 4] = [Role::Queen, Role::Rook, Role::Bishop, Role::Knight];

fn below(square: Square) -> Bitboard {
    Bitboard((1 << square.to_u32()) - 1)
}

fn targets(chess: &Chess, role: Role, from: Square) -> Bitboard {
    let board = chess.board();
    attacks::attacks(from, role.of(chess.turn()), board.occupied()) & !board.by_color(chess.turn())
}

/// Writes a legal move.
pub fn write_move(chess: &Chess, mv: Move, codes: &mut Vec<u8>) {
    let own = chess.board().by_color(chess.turn());
    let (from, number) = match mv {
        Move::Castle { king, rook } => (king, if rook > king { 8 } else { 9 }),
        Move::EnPassant { from, to } => (from, pawn_number(from, to)),
        Move::Normal {
            role: Role::Pawn,
            from,
            to,
            promotion,
            ..
        } => {
            let step = PROMOTIONS
                .iter()
                .position(|role| Some(*role) == promotion)
                .unwrap_or(0);
            (from, pawn_number(from, to) + 4 * step as u8)
        }
        Move::Normal { role, from, to, .. } => {
            let before = targets(chess, role, from) & below(to);
            (from, before.count() as u8)
        }
        Move::Put { to, .. } => (to, 0),
    };
    let piece = (own & below(from)).count() as u8;
    if number < MORE {
        codes.push(piece << 4 | number);
    } else {
        codes.extend([piece << 4 | MORE, number]);
    }
}

fn pawn_number(from: Square, to: Square) -> u8 {
    match (
        to.file() as i32 - from.file() as i32,
        from.rank().distance(to.rank()),
    ) {
        (0, 1) => 0,
        (0, _) => 1,
        (file, _) if file < 0 => 2,
        _ => 3,
    }
}

/// Reads a move; none when the bytes hold no legal move.
pub fn read_move(chess: &Chess, codes: &mut &[u8]) -> Option<Move> {
    let (first, rest) = codes.split_first()?;
    *codes = rest;
    let number = if first & 15 == MORE {
        let (number, rest) = codes.split_first()?;
        *codes = rest;
        *number
    } else {
        first & 15
    };
    let own = chess.board().by_color(chess.turn());
    let from = own.into_iter().nth(usize::from(first >> 4))?;
    let role = chess.board().role_at(from)?;
    let mv = match role {
        Role::Pawn => pawn(chess, from, number)?,
        Role::King if number >= 8 => Move::Castle {
            king: from,
            rook: Square::from_coords(if number == 8 { File::H } else { File::A }, from.rank()),
        },
        _ => {
            let to = targets(chess, role, from)
                .into_iter()
                .nth(usize::from(number))?;
            Move::Normal {
                role,
                from,
                capture: chess.board().role_at(to),
                to,
                promotion: None,
            }
        }
    };
    chess.is_legal(mv).then_some(mv)
}

fn pawn(chess: &Chess, from: Square, number: u8) -> Option<Move> {
    let up = if chess.turn() == Color::White { 8 } else { -8 };
    let to = from.offset(match number % 4 {
        0 => up,
        1 => 2 * up,
        2 => up - 1,
        _ => up + 1,
    })?;
    let capture = chess.board().role_at(to);
    if number % 4 >= 2 && capture.is_none() && chess.ep_square(EnPassantMode::Legal) == Some(to) {
        return Some(Move::EnPassant { from, to });
    }
    let last = if chess.turn() == Color::White { 7 } else { 0 };
    let promotion = (to.rank() as u32 == last).then_some(*PROMOTIONS.get(usize::from(number / 4))?);
    Some(Move::Normal {
        role: Role::Pawn,
        from,
        capture,
        to,
        promotion,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::random::Random;

    #[test]
    fn every_legal_move_of_random_games_comes_back() {
        let mut long = 0;
        for seed in 0..60 {
            let mut random = Random::new(seed, 1);
            let mut chess = Chess::default();
            for _ in 0..300 {
                let moves = chess.legal_moves();
                if moves.is_empty() {
                    break;
                }
                let mut seen = std::collections::HashSet::new();
                for mv in &moves {
                    let mut code = Vec::new();
                    write_move(&chess, *mv, &mut code);
                    long += usize::from(code.len() > 1);
                    assert_eq!(read_move(&chess, &mut &code[..]), Some(*mv), "{mv:?}");
                    assert!(seen.insert(code));
                }
                chess.play_unchecked(moves[random.below(moves.len())]);
            }
        }
        assert!(long > 0);
    }

    #[test]
    fn any_bytes_are_a_legal_move_or_none() {
        let chess = Chess::default();
        let legal = chess.legal_moves();
        for first in 0..=255 {
            for second in [0, 3, 15, 255] {
                if let Some(mv) = read_move(&chess, &mut &[first, second][..]) {
                    assert!(legal.contains(&mv));
                }
            }
        }
    }
}

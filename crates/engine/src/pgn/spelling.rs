//! A move as real files spell it, read in a position.
//!
//! ```
//! use engine::{pgn::spelling::read_move, position::Position};
//! let start = Position::start();
//! let mv = read_move(&start, "nG1-f3").unwrap();
//! assert_eq!(start.san(mv), "Nf3");
//! ```

use shakmaty::san::San;
use shakmaty::{Move, Role};

use crate::position::{MoveError, Position};

/// Reads a move: SAN first, then the laxer spellings that the import format allows
/// (PGN standard, 3.1 and 8.2.3): zeros in castling, `e8Q`, small piece letters, capital files, dashes.
///
/// # Errors
/// [`MoveError`] when the text is no move, or an illegal or an ambiguous one; it names the text as written.
pub fn read_move(position: &Position, text: &str) -> Result<Move, MoveError> {
    let bare = text.trim_end_matches(['+', '#', '†', '‡']);
    if let Ok(san) = San::from_ascii(bare.as_bytes())
        && let Ok(mv) = san.to_move(position.chess())
    {
        return Ok(mv);
    }
    let plain = plain(bare);
    match position.parse_san(&plain) {
        Ok(mv) => Ok(mv),
        Err(error) => other_capture(position, &plain)
            .or_else(|| bishop(&plain).and_then(|again| position.parse_san(&again).ok()))
            .ok_or_else(|| as_written(error, text)),
    }
}

/// The move with its capture sign added or taken away; a pawn's file must then be written.
fn other_capture(position: &Position, plain: &str) -> Option<Move> {
    match plain.parse::<San>().ok()? {
        San::Normal {
            role: Role::Pawn,
            file: None,
            ..
        } => None,
        San::Normal {
            role,
            file,
            rank,
            capture,
            to,
            promotion,
        } => San::Normal {
            role,
            file,
            rank,
            capture: !capture,
            to,
            promotion,
        }
        .to_move(position.chess())
        .ok(),
        _ => None,
    }
}

/// `bd3` can only be a bishop's move: a pawn of the b-file captures on a neighbouring file.
fn bishop(plain: &str) -> Option<String> {
    let rest = plain.strip_prefix('b')?;
    let to = rest.trim_start_matches('x').chars().next()?;
    matches!(to, 'b' | 'd'..='h').then(|| format!("B{rest}"))
}

fn as_written(error: MoveError, text: &str) -> MoveError {
    let written = text.to_owned();
    match error {
        MoveError::Syntax(_) => MoveError::Syntax(written),
        MoveError::Illegal {
            piece, candidates, ..
        } => MoveError::Illegal {
            written,
            piece,
            candidates,
        },
        MoveError::Ambiguous { candidates, .. } => MoveError::Ambiguous {
            written,
            candidates,
        },
    }
}

fn plain(text: &str) -> String {
    let castling: String = text
        .chars()
        .map(|c| match c {
            '0' | 'o' | 'O' => 'O',
            '-' | '‐' | '‑' | '–' | '−' => '-',
            other => other,
        })
        .collect();
    if castling == "O-O" || castling == "O-O-O" {
        return castling;
    }
    let mut squares = String::with_capacity(text.len());
    let mut piece = None;
    let second = text.chars().nth(1);
    for (index, c) in text.chars().enumerate() {
        match c {
            'K' | 'Q' | 'R' | 'N' | 'k' | 'q' | 'r' | 'n' if index == 0 => {
                piece = Some(c.to_ascii_uppercase());
            }
            'B' if index == 0 && !second.is_some_and(|n| n.is_ascii_digit()) => piece = Some('B'),
            'P' | 'p' if index == 0 => {}
            'X' | ':' | '×' | 'x' => squares.push('x'),
            'A'..='H' | 'a'..='h' | '1'..='8' => squares.push(c.to_ascii_lowercase()),
            'Q' | 'R' | 'N' | 'q' | 'r' | 'n' => {
                squares.push('=');
                squares.push(c.to_ascii_uppercase());
            }
            '-' | '‐' | '‑' | '–' | '−' | '=' | '/' | '(' | ')' => {}
            _ => return text.to_owned(),
        }
    }
    // A bishop after the last rank is a promotion.
    if piece.is_none()
        && squares.ends_with('b')
        && squares[..squares.len() - 1].ends_with(['1', '8'])
    {
        squares.pop();
        squares.push_str("=B");
    }
    piece.into_iter().chain(squares.chars()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(fen: &str, text: &str) -> String {
        let position = Position::from_fen(fen).unwrap();
        position.san(read_move(&position, text).unwrap())
    }

    #[test]
    fn castling_may_be_written_with_zeros() {
        let fen = "4k3/8/8/8/8/8/8/R3K2R w KQ - 0 1";
        assert_eq!(read(fen, "0-0"), "O-O");
        assert_eq!(read(fen, "o–o–o"), "O-O-O");
    }

    #[test]
    fn promotions_may_lack_their_sign() {
        let fen = "8/4P2k/8/8/8/8/8/4K3 w - - 0 1";
        for text in ["e8=B", "e8B", "e8b", "e8=b", "e8(B)", "e8/B", "E8=B"] {
            assert_eq!(read(fen, text), "e8=B", "{text}");
        }
    }

    #[test]
    fn a_pawn_capture_is_never_taken_for_a_bishop_move() {
        let fen = "4k3/8/8/8/2p5/8/4B3/4K3 w - - 0 1";
        let position = Position::from_fen(fen).unwrap();
        assert!(read_move(&position, "bxc4").is_err());
        assert_eq!(read(fen, "Bxc4"), "Bxc4");
        assert_eq!(read(fen, "bd3"), "Bd3");
    }

    #[test]
    fn long_spellings_are_read() {
        let start = Position::start();
        for text in ["e2-e4", "e2e4", "Pe4", "E4", "pe2-e4"] {
            assert_eq!(start.san(read_move(&start, text).unwrap()), "e4", "{text}");
        }
    }

    #[test]
    fn a_sign_of_several_bytes_inside_a_move_is_an_error_and_no_panic() {
        for text in ["N–f6", "B–", "e2–e4", "N×", "é4"] {
            let _ = read_move(&Position::start(), text);
        }
        assert!(read_move(&Position::start(), "N–f6").is_err());
    }

    #[test]
    fn a_capture_sign_may_be_missing() {
        let fen = "4k3/8/8/3p4/4P3/2N5/8/4K3 w - - 0 1";
        assert_eq!(read(fen, "Nd5"), "Nxd5");
        assert_eq!(read(fen, "ed5"), "exd5");
    }

    #[test]
    fn errors_name_the_move_as_written() {
        let error = read_move(&Position::start(), "nF4").unwrap_err();
        assert_eq!(
            error.to_string(),
            "nF4 is not legal here; that piece can play Na3, Nc3, Nf3, Nh3"
        );
    }
}

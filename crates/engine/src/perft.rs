//! Perft: the number of move paths of a length, the trade's test of a move generator.
//!
//! ```
//! use engine::{perft::perft, position::Position};
//! assert_eq!(perft(&Position::start(), 3), 8902);
//! ```

use shakmaty::{Chess, Position as _};

use crate::position::Position;

/// Paths of exactly `depth` plies; the last ply is counted in bulk, not played.
#[must_use]
pub fn perft(position: &Position, depth: u32) -> u64 {
    match depth {
        0 => 1,
        _ => count(position.chess(), depth),
    }
}

fn count(chess: &Chess, depth: u32) -> u64 {
    let moves = chess.legal_moves();
    if depth == 1 {
        return moves.len() as u64;
    }
    moves
        .iter()
        .map(|mv| {
            let mut child = chess.clone();
            child.play_unchecked(*mv);
            count(&child, depth - 1)
        })
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    // Source: "Perft Results", Chess Programming Wiki; the last four from computer chess forum threads.
    // Positions whose castling needs Chess960 (rooks or king off their first squares) are left out:
    // the product plays standard chess.
    const PUBLISHED: &[(&str, &[u64])] = &[
        (
            "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
            &[20, 400, 8902, 197_281, 4_865_609],
        ),
        (
            "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1",
            &[48, 2039, 97862, 4_085_603],
        ),
        (
            "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1",
            &[14, 191, 2812, 43238],
        ),
        (
            "r2q1rk1/pP1p2pp/Q4n2/bbp1p3/Np6/1B3NBn/pPPP1PPP/R3K2R b KQ - 0 1",
            &[6, 264, 9467],
        ),
        (
            "rnbq1k1r/pp1Pbppp/2p5/8/2B5/8/PPP1NnPP/RNBQK2R w KQ - 0 1",
            &[44, 1486, 62379],
        ),
        (
            "r4rk1/1pp1qppp/p1np1n2/2b1p1B1/2B1P1b1/P1NP1N2/1PP1QPPP/R4RK1 w - - 0 1",
            &[46, 2079, 89890],
        ),
        ("8/8/8/1k6/3Pp3/8/8/4KQ2 b - d3 0 1", &[6, 121, 711]),
        ("1b1k4/8/8/1rPpK3/8/8/8/8 w - d6 0 1", &[5, 100, 555]),
        ("1rrrrrk1/1PPPPPPP/8/8/8/8/8/6K1 b - - 0 1", &[3, 131, 1919]),
        (
            "R6R/3Q4/1Q4Q1/4Q3/2Q4Q/Q4Q2/pp1Q4/kBNN1KB1 w - - 0 1",
            &[218, 99, 19073],
        ),
    ];

    #[test]
    fn the_counts_are_the_published_ones() {
        for (fen, counts) in PUBLISHED {
            let position = Position::from_fen(fen).unwrap();
            for (depth, expected) in (1..).zip(*counts) {
                assert_eq!(perft(&position, depth), *expected, "{fen} depth {depth}");
            }
        }
    }

    #[test]
    fn one_path_has_no_length() {
        assert_eq!(perft(&Position::start(), 0), 1);
    }
}

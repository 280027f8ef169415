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
    use shakmaty::fen::Fen;
    use shakmaty::{CastlingMode, PositionError};

    // Sources: "Perft Results", Chess Programming Wiki; from the seventh on, computer chess forum threads.
    // Left out of the same lists: positions whose castling needs Chess960.
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
        ("2b5/kpPp4/1p1P4/1P6/6p1/4p1P1/4PpPK/5B2 w - - 0 1", &[1, 1]),
        ("3R4/8/q4k2/2B5/1NK5/3b4/8/8 w - - 0 1", &[4, 125, 2854]),
        ("2Nq4/2K5/1b6/8/7R/3k4/7P/8 w - - 0 1", &[3, 81, 1217]),
        ("5R2/2P5/8/4k3/8/3rK2r/8/8 w - - 0 1", &[2, 56, 1030]),
        ("8/8/8/1k6/3Pp3/8/8/4KQ2 b - d3 0 1", &[6, 121, 711]),
        ("1b1k4/8/8/1rPpK3/8/8/8/8 w - d6 0 1", &[5, 100, 555]),
        (
            "rnbqk1nr/bb3p1p/1q2r3/2pPp3/3P4/7P/1PP1NpPP/R1BQKBNR w KQkq c6 0 1",
            &[2, 92, 2528],
        ),
        (
            "1q4k1/3r1Ppp/5NP1/pP6/8/1Q6/3B4/2K2R2 b - - 0 1",
            &[2, 98, 2826],
        ),
        (
            "8/8/8/5k2/3p4/8/4P3/4K3 w - - 0 1",
            &[6, 54, 343, 2810, 19228],
        ),
        (
            "8/8/8/B2p3Q/2qPp1P1/b7/2P2PkP/4K2R b K - 0 1",
            &[26, 611, 14583],
        ),
        ("1rrrrrk1/1PPPPPPP/8/8/8/8/8/6K1 b - - 0 1", &[3, 131, 1919]),
        (
            "R6R/3Q4/1Q4Q1/4Q3/2Q4Q/Q4Q2/pp1Q4/kBNN1KB1 w - - 0 1",
            &[218, 99, 19073],
        ),
    ];

    /// Some of the positions hold a check that cannot have come about, which is no matter here.
    fn read(fen: &str) -> Position {
        let fen: Fen = fen.parse().unwrap();
        Position::from_chess(
            fen.into_position(CastlingMode::Standard)
                .or_else(PositionError::ignore_impossible_check)
                .unwrap(),
        )
    }

    #[test]
    fn the_counts_are_the_published_ones() {
        for (fen, counts) in PUBLISHED {
            let position = read(fen);
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

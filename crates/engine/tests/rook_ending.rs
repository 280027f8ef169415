//! King and rook against king: mate distances of the exhaustive solver against a table made here by geometry alone.
//!
//! The table is checked by the class counts of "Chess (King-Rook vs. King)" (Bain 1994, UCI Machine Learning
//! Repository): 28,056 positions with Black to move, up to symmetry of the board (counts from memory).

use engine::mate::{MateSolver, Verdict};
use engine::position::Position;
use shakmaty::Position as _;

const LOST_IN: [usize; 17] = [
    27, 78, 246, 81, 198, 471, 592, 683, 1433, 1712, 1985, 2854, 3597, 4194, 4553, 2166, 390,
];
const DRAWN: usize = 2796;

/// Distance of a position that is not won.
const NEVER: u8 = u8::MAX;

fn near(one: usize, other: usize) -> bool {
    one != other && (one / 8).abs_diff(other / 8) <= 1 && (one % 8).abs_diff(other % 8) <= 1
}

fn steps(from: usize) -> impl Iterator<Item = usize> {
    (0..64).filter(move |to| near(from, *to))
}

/// Squares that a rook reaches when `wall` stops it; the wall itself is not among them.
fn rook_moves(from: usize, wall: usize) -> Vec<usize> {
    let mut reached = Vec::new();
    for (rank, file) in [(0, 1), (0, -1), (1, 0), (-1, 0)] {
        let (mut r, mut f) = ((from / 8) as i32 + rank, (from % 8) as i32 + file);
        while (0..8).contains(&r) && (0..8).contains(&f) && (r * 8 + f) as usize != wall {
            reached.push((r * 8 + f) as usize);
            r += rank;
            f += file;
        }
    }
    reached
}

fn index(king: usize, rook: usize, enemy: usize) -> usize {
    (king * 64 + rook) * 64 + enemy
}

struct Table {
    /// Moves to mate with White to move, at least 1.
    white: Vec<u8>,
    /// Moves to mate with Black to move; 0 is mate on the board.
    black: Vec<u8>,
}

/// White king, rook and black king stand apart, and Black's king is not next to White's.
fn stands(king: usize, rook: usize, enemy: usize) -> bool {
    king != rook && rook != enemy && king != enemy && !near(king, enemy)
}

fn attacked(king: usize, rook: usize, square: usize) -> bool {
    near(king, square) || (square != rook && rook_moves(rook, king).contains(&square))
}

fn build() -> Table {
    let mut table = Table {
        white: vec![NEVER; 64 * 64 * 64],
        black: vec![NEVER; 64 * 64 * 64],
    };
    for distance in 0..=20 {
        for king in 0..64 {
            for rook in (0..64).filter(|rook| *rook != king) {
                let rook_to = rook_moves(rook, king);
                for enemy in (0..64).filter(|enemy| stands(king, rook, *enemy)) {
                    let here = index(king, rook, enemy);
                    if table.black[here] == NEVER {
                        let check = rook_to.contains(&enemy);
                        let flights: Vec<usize> = steps(enemy)
                            .filter(|to| *to != king && !attacked(king, rook, *to))
                            .collect();
                        let lost = if distance == 0 {
                            check && flights.is_empty()
                        } else {
                            !flights.is_empty()
                                && flights.iter().all(|to| {
                                    *to != rook && table.white[index(king, rook, *to)] <= distance
                                })
                        };
                        if lost {
                            table.black[here] = distance;
                        }
                    }
                }
            }
        }
        for king in 0..64 {
            for rook in (0..64).filter(|rook| *rook != king) {
                for enemy in (0..64).filter(|enemy| stands(king, rook, *enemy)) {
                    let here = index(king, rook, enemy);
                    let through = rook_moves(rook, king);
                    if table.white[here] != NEVER || through.contains(&enemy) {
                        continue; // known, or Black would be in check with White to move
                    }
                    let by_king = steps(king).any(|to| {
                        to != rook
                            && to != enemy
                            && stands(to, rook, enemy)
                            && table.black[index(to, rook, enemy)] == distance
                    });
                    let by_rook = through
                        .iter()
                        .any(|to| *to != enemy && table.black[index(king, *to, enemy)] == distance);
                    if by_king || by_rook {
                        table.white[here] = distance + 1;
                    }
                }
            }
        }
    }
    table
}

/// The eight symmetries of the board.
fn turned(square: usize, symmetry: usize) -> usize {
    let (mut rank, mut file) = (square / 8, square % 8);
    if symmetry & 1 != 0 {
        file = 7 - file;
    }
    if symmetry & 2 != 0 {
        rank = 7 - rank;
    }
    if symmetry & 4 != 0 {
        (rank, file) = (file, rank);
    }
    rank * 8 + file
}

fn is_first_of_its_kind(king: usize, rook: usize, enemy: usize) -> bool {
    (0..8).all(|s| {
        index(king, rook, enemy) <= index(turned(king, s), turned(rook, s), turned(enemy, s))
    })
}

#[test]
fn the_table_has_the_published_counts() {
    let table = build();
    let mut lost = [0; 17];
    let mut drawn = 0;
    for king in 0..64 {
        for rook in 0..64 {
            for enemy in 0..64 {
                if stands(king, rook, enemy) && is_first_of_its_kind(king, rook, enemy) {
                    match table.black[index(king, rook, enemy)] {
                        NEVER => drawn += 1,
                        moves => lost[usize::from(moves)] += 1,
                    }
                }
            }
        }
    }
    assert_eq!(lost, LOST_IN);
    assert_eq!(drawn, DRAWN);
}

fn fen(king: usize, rook: usize, enemy: usize) -> String {
    let mut rows = Vec::new();
    for rank in (0..8).rev() {
        let mut row = String::new();
        let mut empty = 0;
        for file in 0..8 {
            let square = rank * 8 + file;
            let piece = match square {
                s if s == king => 'K',
                s if s == rook => 'R',
                s if s == enemy => 'k',
                _ => {
                    empty += 1;
                    continue;
                }
            };
            if empty > 0 {
                row += &empty.to_string();
                empty = 0;
            }
            row.push(piece);
        }
        if empty > 0 {
            row += &empty.to_string();
        }
        rows.push(row);
    }
    format!("{} w - - 0 1", rows.join("/"))
}

/// The solver's distance is the table's on 500 positions, spread evenly over all, the furthest among them.
#[test]
fn the_solver_finds_the_distance_of_the_table_on_500_positions() {
    let table = build();
    let mut won: Vec<(u8, String)> = Vec::new();
    for king in 0..64 {
        for rook in 0..64 {
            for enemy in 0..64 {
                let moves = table.white[index(king, rook, enemy)];
                if moves != NEVER && king != rook && is_first_of_its_kind(king, rook, enemy) {
                    won.push((moves, fen(king, rook, enemy)));
                }
            }
        }
    }
    won.sort();
    let step = won.len() / 499;
    let sample: Vec<_> = won
        .iter()
        .step_by(step)
        .take(499)
        .chain(won.last())
        .collect();
    assert_eq!(sample.len(), 500);
    let mut solver = MateSolver::default();
    for (moves, fen) in sample {
        let position = Position::from_fen(fen).unwrap();
        let answer = solver.solve(&position, *moves, u64::MAX, None);
        let Verdict::Forced(line) = answer.verdict else {
            panic!("no mate in {moves}: {fen}");
        };
        assert_eq!(line.len(), 2 * usize::from(*moves) - 1, "{fen}");
        let end = line.iter().fold(position, |at, mv| at.play(*mv));
        assert!(end.chess().is_checkmate(), "{fen}");
    }
}

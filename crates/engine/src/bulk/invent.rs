//! Invented games, for tests and benchmarks: the same for the same seed.
//!
//! Of two kinds: random-legal games, of which hardly two share a position after ply 6; and games of shared prefixes, in
//! which each position has its own ranking of moves, the first chosen most often, until the game leaves the common tree.

use std::io::{self, Write};

use shakmaty::san::San;
use shakmaty::zobrist::Zobrist64;
use shakmaty::{Chess, EnPassantMode, Move, MoveList, Position as _};

use crate::random::Random;

/// What games are wanted.
#[derive(Debug, Clone, Copy)]
pub struct Wanted {
    /// How many.
    pub games: u64,
    /// The first of these has this number; each game depends on its number and the seed alone.
    pub first: u64,
    /// Seed.
    pub seed: u64,
    /// Plies of a game, unless the rules end it sooner.
    pub plies: usize,
    /// Whether they share prefixes.
    pub shared: bool,
    /// Whether each move has a clock comment.
    pub clocks: bool,
}

/// A game leaves the common tree between these plies.
const LEAVES: (usize, usize) = (8, 28);

/// Writes games as PGN.
///
/// # Errors
/// What the output says.
pub fn invent(wanted: &Wanted, out: &mut impl Write) -> io::Result<()> {
    let mut text = Vec::new();
    for number in wanted.first..wanted.first + wanted.games {
        text.clear();
        game(wanted, number, &mut text)?;
        out.write_all(&text)?;
    }
    Ok(())
}

fn game(wanted: &Wanted, number: u64, out: &mut Vec<u8>) -> io::Result<()> {
    let mut random = Random::new(wanted.seed, number);
    let strength: u64 = (0..4).map(|_| random.below(500) as u64).sum();
    let white = 500 + strength + random.below(150) as u64;
    let black = 500 + strength + random.below(150) as u64;
    let result = ["1-0", "0-1", "1/2-1/2", "1-0", "0-1"][random.below(5)];
    let (year, month) = (2005 + random.below(20), 1 + random.below(12));
    writeln!(out, "[Event \"Harbour Street, evening {}\"]", number % 977)?;
    writeln!(out, "[Site \"Harbour Street\"]")?;
    writeln!(
        out,
        "[Date \"{year}.{month:02}.{:02}\"]",
        1 + random.below(28)
    )?;
    writeln!(out, "[Round \"{}\"]", number / 977)?;
    writeln!(out, "[White \"Player {}\"]", random.below(20_000))?;
    writeln!(out, "[Black \"Player {}\"]", random.below(20_000))?;
    writeln!(out, "[Result \"{result}\"]")?;
    writeln!(out, "[WhiteElo \"{white}\"]\n[BlackElo \"{black}\"]\n")?;
    let leaves = LEAVES.0 + random.below(LEAVES.1 - LEAVES.0);
    let mut chess = Chess::default();
    let mut column = 0;
    let mut clock = 600;
    for ply in 0..wanted.plies {
        let moves = chess.legal_moves();
        if moves.is_empty() {
            break;
        }
        let mv = if wanted.shared && ply < leaves {
            ranked(&chess, &moves, &mut random)
        } else {
            moves[random.below(moves.len())]
        };
        let start = out.len();
        if ply % 2 == 0 {
            write!(out, "{}. ", ply / 2 + 1)?;
        }
        write!(out, "{}", San::from_move(&chess, mv))?;
        if wanted.clocks {
            clock = 600 - (clock + random.below(9)) % 600;
            write!(out, " {{ [%clk 0:{:02}:{:02}] }}", clock / 60, clock % 60)?;
        }
        column += out.len() - start + 1;
        if column > 79 {
            out.push(b'\n');
            column = 0;
        } else {
            out.push(b' ');
        }
        chess.play_unchecked(mv);
    }
    writeln!(out, "{result}\n")
}

/// A move by its rank at the position: the n-th is chosen with a chance of 1 to n².
fn ranked(chess: &Chess, moves: &MoveList, random: &mut Random) -> Move {
    let Zobrist64(key) = chess.zobrist_hash(EnPassantMode::Legal);
    let mut order: Vec<usize> = (0..moves.len()).collect();
    order.sort_by_key(|index| Random::new(key, *index as u64).next());
    let all: f64 = (1..=order.len()).map(|n| 1.0 / (n * n) as f64).sum();
    let mut left = random.below(1 << 20) as f64 / f64::from(1 << 20) * all;
    for (n, index) in order.iter().enumerate() {
        left -= 1.0 / ((n + 1) * (n + 1)) as f64;
        if left < 0.0 {
            return moves[*index];
        }
    }
    moves[order[0]]
}

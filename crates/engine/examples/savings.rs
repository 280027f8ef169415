//! Nodes that each technique saves: `cargo run --release --example savings [DEPTH]`.
//!
//! The baseline is the whole search to a fixed depth on a fixed set of positions; beside each technique stands how many
//! times the nodes the search needs without it. A node saved is no strength gained where a technique is selective: see
//! the matches for that.

use engine::position::Position;
use engine::search::{Limits, Request, Searcher, Technique, Techniques};

/// Opening, middlegame and endgame positions; the first two and the eighth after "Perft Results", Chess Programming Wiki.
const POSITIONS: [&str; 10] = [
    "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1",
    "r4rk1/1pp1qppp/p1np1n2/2b1p1B1/2B1P1b1/P1NP1N2/1PP1QPPP/R4RK1 w - - 0 10",
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
    "rnbqkb1r/pppp1ppp/5n2/8/4Pp2/2N5/PPPP2PP/R1BQKBNR w KQkq - 0 4",
    "rnbqkb1r/pppp1ppp/8/4P1n1/2P5/8/PP2PPPP/RNBQKBNR w KQkq - 1 4",
    "r1bq1rk1/pp2bppp/2n1pn2/2pp4/3P1B2/2PBPN2/PP1N1PPP/R2QK2R w KQ - 0 8",
    "r1bqkb1r/1p3ppp/p1np1n2/4p3/4P3/1NN1B3/PPP2PPP/R2QKB1R w KQkq - 0 9",
    "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1",
    "8/5pk1/3p2p1/2pP3p/1pP2P1P/1P3KP1/8/8 w - - 0 1",
    "3r2k1/pp3ppp/2p1b3/8/4P3/2N2P2/PPP3PP/2KR4 w - - 0 20",
];

/// A search without a technique is given up when it needs so many times the nodes of the whole one.
const GIVEN_UP: u64 = 50;

/// Nodes of each position, to a depth or to a limit.
fn nodes(
    depth: u32,
    without: Techniques,
    most: &[u64],
) -> Result<Vec<u64>, Box<dyn std::error::Error>> {
    let mut counts = Vec::new();
    for (index, fen) in POSITIONS.iter().enumerate() {
        let position = Position::from_fen(fen)?;
        let limits = Limits {
            nodes: most.get(index).map(|nodes| nodes * GIVEN_UP),
            ..Limits::depth(depth)
        };
        let request = Request {
            without,
            ..Request::new(&position, limits)
        };
        counts.push(Searcher::new().search(&request)?.nodes);
    }
    Ok(counts)
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let depth: u32 = match std::env::args().nth(1) {
        Some(text) => text.parse()?,
        None => 11,
    };
    let all = nodes(depth, Techniques::NONE, &[])?;
    let total: u64 = all.iter().sum();
    println!("the whole search to depth {depth}: {total} nodes");
    for technique in Technique::ALL {
        let without = nodes(depth, Techniques::NONE.with(*technique), &all)?;
        let ratio = without.iter().sum::<u64>() as f64 / total as f64;
        // The median position says more than the sum, which one position can rule.
        let mut each: Vec<f64> = without
            .iter()
            .zip(&all)
            .map(|(without, with)| *without as f64 / *with as f64)
            .collect();
        each.sort_by(f64::total_cmp);
        let middle = f64::midpoint(each[each.len() / 2 - 1], each[each.len() / 2]);
        println!(
            "without {:20} {ratio:6.2} times, the median position {middle:6.2}",
            technique.name()
        );
    }
    Ok(())
}

//! Nodes a second on a fixed set of positions: `cargo run --release --example speed [NODES [NETWORK [ARITHMETIC]]]`;
//! NETWORK is `hand-made`, `built-in` or a file; the arithmetic of a network is `portable`, `sse2` or `avx2`, or the best
//! that the processor has.

use std::sync::Arc;
use std::time::Instant;

use engine::eval::{Evaluation, Learned, Network};
use engine::position::Position;
use engine::search::{Limits, Request, Searcher};

/// Opening, middlegame and endgame positions; the first two and the seventh after "Perft Results", Chess Programming Wiki.
const POSITIONS: [&str; 8] = [
    "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1",
    "r4rk1/1pp1qppp/p1np1n2/2b1p1B1/2B1P1b1/P1NP1N2/1PP1QPPP/R4RK1 w - - 0 10",
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
    "rnbqkb1r/pppp1ppp/5n2/8/4Pp2/2N5/PPPP2PP/R1BQKBNR w KQkq - 0 4",
    "rnbqkb1r/pppp1ppp/8/4P1n1/2P5/8/PP2PPPP/RNBQKBNR w KQkq - 1 4",
    "r1bq1rk1/pp2bppp/2n1pn2/2pp4/3P1B2/2PBPN2/PP1N1PPP/R2QK2R w KQ - 0 8",
    "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1",
    "8/5pk1/3p2p1/2pP3p/1pP2P1P/1P3KP1/8/8 w - - 0 1",
];

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let nodes: u64 = match std::env::args().nth(1) {
        Some(text) => text.parse()?,
        None => 1_000_000,
    };
    let network = match std::env::args().nth(2).as_deref() {
        Some("hand-made") | None => None,
        Some("built-in") => Some(Network::ours()?),
        Some(path) => Some(Network::from_bytes(&std::fs::read(path)?)?),
    };
    let evaluation = match (network.map(Arc::new), std::env::args().nth(3)) {
        (Some(network), Some(name)) => Learned::compiled_for(network, &name)
            .map(|learned| Evaluation::Learned(Box::new(learned)))
            .ok_or_else(|| format!("this processor has no {name}"))?,
        (Some(network), None) => Evaluation::learned(network),
        (None, _) => Evaluation::hand_made(),
    };
    if let Evaluation::Learned(learned) = &evaluation {
        println!("a network, arithmetic: {}", learned.arithmetic());
    }
    let (mut total, mut depths) = (0, 0);
    let begun = Instant::now();
    for fen in POSITIONS {
        let position = Position::from_fen(fen)?;
        let mut searcher = Searcher::with(evaluation.clone());
        let answer = searcher.search(&Request::new(&position, Limits::nodes(nodes)))?;
        total += answer.nodes;
        depths += answer.depth;
        let score = answer.lines.first().map(|line| line.score);
        println!("depth {:3}  {score:?}  {fen}", answer.depth);
    }
    let seconds = begun.elapsed().as_secs_f64();
    println!(
        "{total} nodes, depths {depths}, {seconds:.2} s, {:.0} nodes/s",
        total as f64 / seconds
    );
    Ok(())
}

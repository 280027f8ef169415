//! What a network says of positions: `cargo run --release --example values -- NETWORK < FENS`.
//!
//! A line for each FEN: the network's own value, reckoned anew, and the learned evaluation's with what it knows of endings;
//! centipawns for the mover.

use std::io::{Write, stdin, stdout};
use std::sync::Arc;

use engine::eval::{Evaluate, Learned, Network};
use engine::position::Position;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let path = std::env::args()
        .nth(1)
        .ok_or("give the file of a network")?;
    let network = Arc::new(Network::from_bytes(&std::fs::read(path)?)?);
    let mut learned = Learned::new(network.clone());
    let mut output = stdout().lock();
    for line in stdin().lines() {
        let position = Position::from_fen(&line?)?;
        learned.refresh(position.chess());
        let value = learned.evaluate(position.chess());
        writeln!(output, "{} {value}", network.value(position.chess()))?;
    }
    Ok(())
}

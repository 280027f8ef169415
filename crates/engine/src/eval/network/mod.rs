//! The learned evaluation: a network of one layer a side, kept up to date move by move (Nasu, Efficiently Updatable
//! Neural-Network-based Evaluation Function for Computer Shogi, 2018). Integers only, the same on every machine.
//!
//! Each side sees the board from its own end, on the wing of its king. Every man on a square is a column of weights; their sum
//! is the side's accumulator. Clamped and squared, the two accumulators are weighted into one number.
//!
//! How it is trained: `training/network`. The layout of the file: `training/network/quantised.py`, and [`Network::from_bytes`].

mod accumulators;
mod aligned;
mod columns;
mod file;
mod kernels;
mod learned;
#[cfg(test)]
mod tests;
#[cfg(target_arch = "x86_64")]
mod x86_64;

pub use file::{Network, NetworkError};
pub use learned::{Evaluation, Learned};

//! Where the terms go: into a value, or into a value and a record of how it came about.
//!
//! Every term is written once, for any [`Sink`]. [`Sum`] only adds; [`Record`] adds the same and keeps the coefficient
//! of each weight, for fitting.

use super::pair::{Pair, pair};
use super::terms::{COUNT, UNIT_COUNT};
use super::weights::{DANGER, WEIGHTS};

/// More units of danger than these count no more.
pub const DANGER_MAX: i32 = 600;
/// Danger costs its square divided by this in the middlegame, in centipawns: a queen at the most. In the endgame
/// it costs nothing.
pub const DANGER_SQUARED: i32 = 400;

/// Takes the terms of one side.
pub trait Sink {
    /// A feature is there `count` times.
    fn add(&mut self, term: usize, count: i32);

    /// The own king is in danger by `count` units of a kind.
    fn danger(&mut self, unit: usize, count: i32);

    /// A feature is there once.
    #[inline]
    fn one(&mut self, term: usize) {
        self.add(term, 1);
    }
}

/// The value of one side's terms.
#[derive(Debug, Clone, Copy, Default)]
pub struct Sum {
    value: Pair,
    danger: i32,
}

impl Sink for Sum {
    #[inline]
    fn add(&mut self, term: usize, count: i32) {
        self.value += WEIGHTS[term] * count;
    }

    #[inline]
    fn one(&mut self, term: usize) {
        self.value += WEIGHTS[term];
    }

    #[inline]
    fn danger(&mut self, unit: usize, count: i32) {
        self.danger += DANGER[unit] * count;
    }
}

impl Sum {
    /// The terms without the king's danger.
    pub fn linear(&self) -> Pair {
        self.value
    }

    /// All terms. Danger grows with the square of what attacks ("King Safety", Chess Programming Wiki).
    pub fn value(&self) -> Pair {
        let danger = self.danger.clamp(0, DANGER_MAX);
        self.value - pair(danger * danger / DANGER_SQUARED, 0)
    }
}

/// The value of one side's terms and the coefficients of the weights.
#[derive(Debug, Clone)]
pub struct Record {
    /// What a [`Sum`] would have.
    pub sum: Sum,
    /// How often each weight counts.
    pub terms: [i32; COUNT],
    /// How often each unit of danger counts.
    pub units: [i32; UNIT_COUNT],
}

impl Record {
    /// Nothing counted yet.
    pub fn new() -> Record {
        Record {
            sum: Sum::default(),
            terms: [0; COUNT],
            units: [0; UNIT_COUNT],
        }
    }
}

impl Sink for Record {
    fn add(&mut self, term: usize, count: i32) {
        self.sum.add(term, count);
        self.terms[term] += count;
    }

    fn danger(&mut self, unit: usize, count: i32) {
        self.sum.danger(unit, count);
        self.units[unit] += count;
    }
}

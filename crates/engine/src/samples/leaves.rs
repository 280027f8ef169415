//! Positions inside a search at which it asks its evaluation: what the evaluation will be asked, rather than what is
//! reached in games.

use std::sync::{Arc, Mutex, PoisonError};

use shakmaty::{Chess, Move};

use crate::eval::Evaluate;
use crate::random::Random;

/// An evaluation that notes some of the positions it is asked about.
#[derive(Clone)]
pub struct Watched<E> {
    evaluation: E,
    /// The search takes a copy of its evaluation: all copies write here.
    seen: Arc<Mutex<Seen>>,
}

struct Seen {
    random: Random,
    /// One position in so many is noted, on average; none when it is 0.
    one_in: usize,
    left: usize,
    positions: Vec<Chess>,
}

impl Seen {
    fn ask(&mut self, chess: &Chess) {
        if self.one_in == 0 {
            return;
        }
        self.left = self.left.saturating_sub(1);
        if self.left == 0 {
            self.positions.push(chess.clone());
            self.left = 1 + self.random.below(2 * self.one_in);
        }
    }
}

impl<E> Watched<E> {
    /// Notes nothing yet.
    pub fn new(evaluation: E) -> Self {
        Watched {
            evaluation,
            seen: Arc::new(Mutex::new(Seen {
                random: Random::new(0, 0),
                one_in: 0,
                left: 0,
                positions: Vec::new(),
            })),
        }
    }

    /// From now on about one position in so many is noted, by these random numbers; none when it is 0.
    pub fn watch(&self, one_in: usize, mut random: Random) {
        let mut seen = self.seen.lock().unwrap_or_else(PoisonError::into_inner);
        seen.left = 1 + random.below(2 * one_in);
        (seen.one_in, seen.random) = (one_in, random);
        seen.positions.clear();
    }

    /// The positions noted since the last call.
    pub fn take(&self) -> Vec<Chess> {
        let mut seen = self.seen.lock().unwrap_or_else(PoisonError::into_inner);
        std::mem::take(&mut seen.positions)
    }
}

impl<E: Evaluate> Evaluate for Watched<E> {
    fn refresh(&mut self, chess: &Chess) {
        self.evaluation.refresh(chess);
    }

    fn push(&mut self, before: &Chess, mv: Move) {
        self.evaluation.push(before, mv);
    }

    fn pop(&mut self) {
        self.evaluation.pop();
    }

    fn evaluate(&mut self, chess: &Chess) -> i32 {
        self.seen
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .ask(chess);
        self.evaluation.evaluate(chess)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::eval::Tapered;
    use crate::position::Position;

    #[test]
    fn about_one_position_in_so_many_is_noted_and_the_value_is_the_evaluation_s() {
        let start = Position::start();
        let mut watched = Watched::new(Tapered::new());
        let mut plain = Tapered::new();
        watched.refresh(start.chess());
        plain.refresh(start.chess());
        let value = plain.evaluate(start.chess());
        let ask = |watched: &mut Watched<Tapered>, times| {
            for _ in 0..times {
                assert_eq!(watched.evaluate(start.chess()), value);
            }
            watched.take().len()
        };
        assert_eq!(ask(&mut watched, 1_000), 0);
        watched.watch(10, Random::new(4, 4));
        let noted = ask(&mut watched, 10_000);
        assert!((850..1_150).contains(&noted), "{noted}");
        let copy = watched.clone();
        ask(&mut watched, 0);
        let mut copied = copy.clone();
        copied.evaluate(start.chess());
        let noted = ask(&mut watched, 1_000);
        assert!((70..130).contains(&noted), "{noted}");
        watched.watch(0, Random::new(4, 4));
        assert_eq!(ask(&mut watched, 1_000), 0);
    }
}

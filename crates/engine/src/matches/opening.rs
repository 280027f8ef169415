//! Openings for matches: random legal moves that leave the sides about level.
//!
//! ```
//! use engine::matches::opening::balanced;
//! let opening = balanced(1, 0);
//! assert!((6..=8).contains(&opening.moves.len()));
//! assert_eq!(opening, balanced(1, 0));
//! ```

use shakmaty::Move;

use crate::eval::Tapered;
use crate::position::Position;
use crate::search::{Limits, Request, Score, Searcher};

use crate::random::Random;

/// Fewest random plies.
const SHORTEST: usize = 6;
/// Most random plies.
const LONGEST: usize = 8;
/// What a first, cheap look may find at most, so that few openings need the second one: centipawns, nodes.
const AT_FIRST: (i32, u64) = (200, 1_000);
/// What the second look may find at most: centipawns, nodes.
const BALANCED: (i32, u64) = (60, 20_000);

/// A short game from the initial position.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Opening {
    /// In UCI spelling.
    pub moves: Vec<String>,
    /// Where it ends.
    pub position: Position,
    /// Keys of the positions before, the first one first.
    pub history: Vec<u64>,
}

impl Opening {
    /// No move at all.
    pub(crate) fn empty() -> Opening {
        Opening {
            moves: Vec::new(),
            position: Position::start(),
            history: Vec::new(),
        }
    }

    /// A legal move more.
    pub(crate) fn play(&mut self, mv: Move) {
        self.moves.push(self.position.uci(mv));
        self.history.push(self.position.key());
        self.position = self.position.play(mv);
    }

    /// So many random plies more, fewer when the game ends.
    pub(crate) fn play_at_random(&mut self, plies: usize, random: &mut Random) {
        for _ in 0..plies {
            let moves = self.position.legal_moves();
            let Some(mv) = moves.get(random.below(moves.len())) else {
                break;
            };
            self.play(*mv);
        }
    }
}

/// The opening of a pair: random plies by the seed and the pair's number alone, the first try of them that is
/// balanced.
#[must_use]
pub fn balanced(seed: u64, pair: u64) -> Opening {
    let mut random = Random::new(seed, pair);
    // By hand, so that another network does not change the openings.
    let mut searcher = Searcher::with(Tapered::new());
    loop {
        let opening = at_random(&mut random);
        let level = |searcher: &mut Searcher<Tapered>, (most, nodes)| {
            let mut request = Request::new(&opening.position, Limits::nodes(nodes));
            request.history = &opening.history;
            let answer = searcher.search(&request).ok();
            let score = answer.and_then(|answer| answer.lines.first().map(|line| line.score));
            matches!(score, Some(Score::Centipawns(value)) if value.abs() <= most)
        };
        // A position without moves has no line, and so no score.
        if level(&mut searcher, AT_FIRST) && level(&mut searcher, BALANCED) {
            return opening;
        }
    }
}

fn at_random(random: &mut Random) -> Opening {
    let plies = SHORTEST + random.below(LONGEST - SHORTEST + 1);
    let mut opening = Opening::empty();
    opening.play_at_random(plies, random);
    opening
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn openings_are_six_to_eight_plies_long_and_differ() {
        let found: Vec<Opening> = (0..12).map(|pair| balanced(7, pair)).collect();
        for opening in &found {
            assert!((SHORTEST..=LONGEST).contains(&opening.moves.len()));
            assert_eq!(opening.moves.len(), opening.history.len());
        }
        for length in SHORTEST..=LONGEST {
            assert!(found.iter().any(|opening| opening.moves.len() == length));
        }
        let mut moves: Vec<_> = found.iter().map(|opening| &opening.moves).collect();
        moves.sort();
        moves.dedup();
        assert_eq!(moves.len(), found.len());
    }

    #[test]
    fn another_seed_gives_another_opening() {
        assert_ne!(balanced(1, 0), balanced(2, 0));
    }

    #[test]
    fn a_search_finds_the_sides_about_level() {
        for pair in 0..4 {
            let opening = balanced(3, pair);
            let mut request = Request::new(&opening.position, Limits::nodes(BALANCED.1));
            request.history = &opening.history;
            let answer = Searcher::new().search(&request).unwrap();
            assert!(
                matches!(answer.lines[0].score, Score::Centipawns(value) if value.abs() <= BALANCED.0)
            );
        }
    }
}

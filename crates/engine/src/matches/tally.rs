//! Results of pairs, and the strength that they speak for.
//!
//! Two games from one opening hang together, so that the pair, not the game, is what is counted. A pair is worth
//! 0 to 2 points in steps of a half, five outcomes in all.

/// Of the normal distribution, for an interval that holds in 95 of 100 cases.
const Z95: f64 = 1.959_963_984_540_054;

/// How many pairs ended with which sum.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Pairs {
    counts: [u64; 5],
}

impl Pairs {
    /// With so many pairs of 0, 1/2, 1, 3/2 and 2 points.
    #[must_use]
    pub fn from_counts(counts: [u64; 5]) -> Pairs {
        Pairs { counts }
    }

    /// One more pair, of so many half points: 0 to 4.
    pub fn add(&mut self, half_points: usize) {
        self.counts[half_points.min(4)] += 1;
    }

    /// Pairs of 0, 1/2, 1, 3/2 and 2 points.
    #[must_use]
    pub fn counts(&self) -> [u64; 5] {
        self.counts
    }

    /// All pairs.
    #[must_use]
    pub fn count(&self) -> u64 {
        self.counts.iter().sum()
    }

    /// The mean score of a game, 0 to 1; `None` without a pair.
    #[must_use]
    pub fn score(&self) -> Option<f64> {
        let count = self.count();
        (count > 0).then(|| {
            let sum: u64 = (0..).zip(self.counts).map(|(value, n)| value * n).sum();
            sum as f64 / (4 * count) as f64
        })
    }

    /// The standard error of [`Pairs::score`], from the spread between pairs; `None` with fewer than two pairs.
    #[must_use]
    pub fn standard_error(&self) -> Option<f64> {
        let mean = self.score()?;
        let count = self.count() as f64;
        let squares: f64 = (0..)
            .zip(self.counts)
            .map(|(value, n)| n as f64 * (f64::from(value) / 4.0 - mean).powi(2))
            .sum();
        (count > 1.0).then(|| (squares / (count - 1.0) / count).sqrt())
    }

    /// Elo, infinite when all was won or lost; `None` without a pair.
    #[must_use]
    pub fn elo(&self) -> Option<f64> {
        self.score().map(elo_of_score)
    }

    /// The bounds of Elo that hold in 95 of 100 matches; `None` when the spread between pairs is not known, or is
    /// nought because all pairs ended alike.
    #[must_use]
    pub fn elo_interval(&self) -> Option<(f64, f64)> {
        let score = self.score()?;
        let error = self.standard_error().filter(|error| *error > 0.0)?;
        let bound = |side: f64| elo_of_score((score + side * Z95 * error).clamp(0.0, 1.0));
        Some((bound(-1.0), bound(1.0)))
    }
}

/// The rating difference that an expected score stands for, by the logistic curve (Elo, The Rating of Chessplayers,
/// 1978, 8.73; from memory): 400 log10(s / (1 - s)).
#[must_use]
pub fn elo_of_score(score: f64) -> f64 {
    400.0 * (score / (1.0 - score)).log10()
}

/// The score that is expected of a rating difference: the inverse of [`elo_of_score`].
#[must_use]
pub fn score_of_elo(elo: f64) -> f64 {
    1.0 / (1.0 + 10.0_f64.powf(-elo / 400.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::random::Random;

    fn close(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
    }

    #[test]
    fn three_points_of_four_are_400_log_3() {
        // s / (1 - s) = 3, and log10(3) = 0.477121254719662
        let pairs = Pairs::from_counts([0, 0, 1, 0, 1]);
        close(pairs.score().unwrap(), 0.75);
        close(pairs.elo().unwrap(), 400.0 * 0.477_121_254_719_662_4);
        close(score_of_elo(400.0 * 0.477_121_254_719_662_4), 0.75);
    }

    #[test]
    fn ten_to_one_is_400() {
        close(score_of_elo(400.0), 10.0 / 11.0);
        close(elo_of_score(0.5), 0.0);
    }

    #[test]
    fn the_standard_error_is_that_of_the_mean_of_pairs() {
        // Scores 0, 1/2, 1/2, 1: mean 1/2, squares 1/4 + 1/4, variance (1/2) / 3, error sqrt((1/6) / 4)
        let pairs = Pairs::from_counts([1, 0, 2, 0, 1]);
        close(pairs.standard_error().unwrap(), (1.0_f64 / 24.0).sqrt());
    }

    #[test]
    fn the_interval_is_even_around_an_even_score() {
        let (low, high) = Pairs::from_counts([10, 20, 40, 20, 10])
            .elo_interval()
            .unwrap();
        close(low, -high);
        // Squares (10 + 10) / 4 + (20 + 20) / 16 = 7.5; error sqrt(7.5 / 99 / 100)
        let half_width = 1.959_963_984_540_054 * (7.5_f64 / 9_900.0).sqrt();
        close(high, elo_of_score(0.5 + half_width));
    }

    #[test]
    fn pairs_that_all_end_alike_give_no_interval() {
        assert_eq!(Pairs::from_counts([0, 0, 50, 0, 0]).elo_interval(), None);
        assert_eq!(
            Pairs::from_counts([0, 0, 0, 0, 3]).elo(),
            Some(f64::INFINITY)
        );
        assert_eq!(Pairs::default().elo(), None);
        assert_eq!(Pairs::from_counts([0, 1, 0, 0, 0]).elo_interval(), None);
    }

    #[test]
    fn the_interval_holds_the_truth_in_95_of_100_matches() {
        // Simulated: outcomes of known chances, whose mean is the true score.
        let chances = [0.05, 0.2, 0.4, 0.25, 0.1];
        let truth: f64 = chances
            .iter()
            .zip(0..)
            .map(|(p, i)| p * f64::from(i) / 4.0)
            .sum();
        let truth = elo_of_score(truth);
        let matches = 4_000;
        let mut held = 0;
        for number in 0..matches {
            let mut random = Random::new(11, number);
            let mut pairs = Pairs::default();
            for _ in 0..200 {
                pairs.add(random.outcome(&chances));
            }
            let (low, high) = pairs.elo_interval().unwrap();
            held += u32::from((low..=high).contains(&truth));
        }
        let share = f64::from(held) / matches as f64;
        // Three standard errors of a share of 0.95 in 4,000 are 0.0103.
        assert!((0.9397..=0.9603).contains(&share), "{share}");
    }
}

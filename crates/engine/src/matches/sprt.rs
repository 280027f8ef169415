//! A test that stops as soon as the games tell one strength from another.
//!
//! Wald's sequential probability ratio test (Sequential Tests of Statistical Hypotheses, Annals of Mathematical
//! Statistics 16, 1945), in its generalised form for hypotheses that leave something open (Li, Liu and Ying,
//! Generalized Sequential Probability Ratio Test for Separate Families of Hypotheses, Sequential Analysis 33, 2014;
//! from memory). Each hypothesis says only what the mean score is; the chances of the five outcomes of a pair are
//! those most likely under it, found as in Owen, Empirical Likelihood, 2001: p / (1 + t (x - s)), with t so that the
//! mean is s.

use super::failure::MatchError;
use super::tally::{Pairs, score_of_elo};

/// Added to the count of each outcome, so that one that has not come up yet is not taken as impossible: half an
/// observation, shared by the five outcomes.
const UNSEEN: f64 = 0.1;
/// Halvings until the root is as exact as numbers are.
const HALVINGS: u32 = 60;

/// Two hypotheses on Elo and the errors allowed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sprt {
    elo: [f64; 2],
    alpha: f64,
    beta: f64,
}

/// Which hypothesis is accepted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// The first: no more than the lower Elo.
    Lower,
    /// The second: at least the higher Elo.
    Higher,
}

impl Sprt {
    /// Tells `elo0` from `elo1`, with a chance of at most `alpha` to accept the second when the first is true, and
    /// of at most `beta` for the reverse.
    ///
    /// # Errors
    /// [`MatchError::Setting`] when the hypotheses are not in order or a chance is not between 0 and 1/2.
    pub fn new(elo0: f64, elo1: f64, alpha: f64, beta: f64) -> Result<Sprt, MatchError> {
        let wrong = |message: &str| Err(MatchError::Setting(format!("--sprt: {message}")));
        // Not `elo0 >= elo1`, which holds for no number that is none.
        if !(elo0 < elo1 && elo0.abs() <= 1000.0 && elo1.abs() <= 1000.0) {
            return wrong("the first Elo must be less than the second, both within 1000");
        }
        let chance = |value: f64| value > 0.0 && value < 0.5;
        if !(chance(alpha) && chance(beta)) {
            return wrong("alpha and beta must be greater than 0 and less than 0.5");
        }
        Ok(Sprt {
            elo: [elo0, elo1],
            alpha,
            beta,
        })
    }

    /// The two hypotheses, in Elo.
    #[must_use]
    pub fn hypotheses(&self) -> [f64; 2] {
        self.elo
    }

    /// At or below the first the lower Elo is accepted, at or above the second the higher one (Wald 1945).
    #[must_use]
    pub fn bounds(&self) -> (f64, f64) {
        (
            (self.beta / (1.0 - self.alpha)).ln(),
            ((1.0 - self.beta) / self.alpha).ln(),
        )
    }

    /// The logarithm of how much likelier the pairs are under the higher Elo.
    #[must_use]
    pub fn log_likelihood_ratio(&self, pairs: &Pairs) -> f64 {
        if pairs.count() == 0 {
            return 0.0;
        }
        let counts = pairs.counts().map(|count| count as f64 + UNSEEN);
        let scores = self.elo.map(score_of_elo);
        let tilts = scores.map(|score| tilt(&counts, score));
        outcomes()
            .zip(counts)
            .map(|(value, count)| {
                let weight = |index: usize| 1.0 + tilts[index] * (value - scores[index]);
                count * (weight(0) / weight(1)).ln()
            })
            .sum()
    }

    /// Which hypothesis is accepted, `None` as long as it is open.
    #[must_use]
    pub fn verdict(&self, pairs: &Pairs) -> Option<Verdict> {
        let (low, high) = self.bounds();
        match self.log_likelihood_ratio(pairs) {
            ratio if ratio <= low => Some(Verdict::Lower),
            ratio if ratio >= high => Some(Verdict::Higher),
            _ => None,
        }
    }
}

fn outcomes() -> impl Iterator<Item = f64> {
    (0..5).map(|value| f64::from(value) / 4.0)
}

/// The t for which the chances have the mean `score`. What it is the root of falls all the way between two poles.
fn tilt(counts: &[f64; 5], score: f64) -> f64 {
    let excess = |t: f64| -> f64 {
        outcomes()
            .zip(counts)
            .map(|(value, count)| count * (value - score) / (1.0 + t * (value - score)))
            .sum()
    };
    let (mut low, mut high) = (-1.0 / (1.0 - score), 1.0 / score);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if excess(middle) > 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::random::Random;

    fn test(elo0: f64, elo1: f64) -> Sprt {
        Sprt::new(elo0, elo1, 0.05, 0.05).unwrap()
    }

    #[test]
    fn the_bounds_are_those_of_wald() {
        let (low, high) = test(0.0, 5.0).bounds();
        // ln(0.95 / 0.05) = ln 19
        assert!((high - 19.0_f64.ln()).abs() < 1e-12);
        assert!((low + 19.0_f64.ln()).abs() < 1e-12);
        let (low, high) = Sprt::new(0.0, 5.0, 0.01, 0.2).unwrap().bounds();
        assert!((low - (0.2_f64 / 0.99).ln()).abs() < 1e-12);
        assert!((high - 80.0_f64.ln()).abs() < 1e-12);
    }

    #[test]
    fn the_chances_under_a_hypothesis_have_its_mean() {
        let counts = [3.0, 20.0, 51.0, 19.0, 7.0];
        for score in [0.3, 0.5, 0.52, 0.7] {
            let t = tilt(&counts, score);
            let chances: Vec<f64> = outcomes()
                .zip(counts)
                .map(|(value, count)| count / 100.0 / (1.0 + t * (value - score)))
                .collect();
            let sum: f64 = chances.iter().sum();
            let mean: f64 = chances
                .iter()
                .zip(outcomes())
                .map(|(p, value)| p * value)
                .sum();
            assert!((sum - 1.0).abs() < 1e-9, "{score}: {sum}");
            assert!((mean - score).abs() < 1e-9, "{score}: {mean}");
        }
    }

    #[test]
    fn decided_games_alone_are_the_test_of_a_coin() {
        // Only pairs of 0 and 2 points: the likelihoods are those of a coin with chance s of heads,
        // n1 ln(s1 / s0) + n0 ln((1 - s1) / (1 - s0)).
        let pairs = Pairs::from_counts([4_000, 0, 0, 0, 6_000]);
        let (s0, s1) = (score_of_elo(0.0), score_of_elo(40.0));
        let by_hand = 6_000.0 * (s1 / s0).ln() + 4_000.0 * ((1.0 - s1) / (1.0 - s0)).ln();
        let found = test(0.0, 40.0).log_likelihood_ratio(&pairs);
        assert!((found - by_hand).abs() < 0.02, "{found} is not {by_hand}");
    }

    #[test]
    fn near_the_hypotheses_it_is_the_test_of_a_normal_mean() {
        // With many pairs: (s1 - s0) (2 m - s0 - s1) / (2 v / n), for pairs of mean m and variance v.
        let counts = [500, 2_500, 4_000, 2_400, 600];
        let pairs = Pairs::from_counts(counts);
        let (s0, s1) = (score_of_elo(0.0), score_of_elo(4.0));
        let mean = pairs.score().unwrap();
        let variance_of_mean = pairs.standard_error().unwrap().powi(2);
        let by_hand = (s1 - s0) * (2.0 * mean - s0 - s1) / (2.0 * variance_of_mean);
        let found = test(0.0, 4.0).log_likelihood_ratio(&pairs);
        assert!((found - by_hand).abs() < 0.02, "{found} is not {by_hand}");
    }

    #[test]
    fn without_games_nothing_is_known() {
        assert_eq!(test(0.0, 5.0).log_likelihood_ratio(&Pairs::default()), 0.0);
        assert_eq!(test(0.0, 5.0).verdict(&Pairs::default()), None);
    }

    #[test]
    fn programs_that_play_alike_are_found_no_stronger() {
        assert_eq!(
            test(0.0, 10.0).verdict(&Pairs::from_counts([0, 0, 400, 0, 0])),
            Some(Verdict::Lower)
        );
    }

    #[test]
    fn hypotheses_out_of_order_are_refused() {
        for (elo0, elo1, alpha) in [
            (5.0, 0.0, 0.05),
            (5.0, 5.0, 0.05),
            (f64::NAN, 5.0, 0.05),
            (0.0, f64::INFINITY, 0.05),
            (0.0, 5.0, 0.0),
            (0.0, 5.0, 0.5),
            (0.0, 5.0, f64::NAN),
        ] {
            assert!(
                Sprt::new(elo0, elo1, alpha, 0.05).is_err(),
                "{elo0} {elo1} {alpha}"
            );
        }
    }

    /// Chances of the five outcomes with the mean of so many Elo: a spread as matches have it, leaning to one side.
    fn chances(elo: f64) -> [f64; 5] {
        let level = [0.06, 0.24, 0.4, 0.24, 0.06];
        let lean = (score_of_elo(elo) - 0.5) * 2.0;
        // Moving a chance of c from 1/2 to 3/2 points, and from 0 to 2, changes the mean by c / 2 and c.
        let c = lean / 3.0;
        [
            level[0] - c,
            level[1] - c,
            level[2],
            level[3] + c,
            level[4] + c,
        ]
    }

    #[test]
    fn the_simulated_chances_have_the_mean_that_is_meant() {
        let mean: f64 = chances(10.0)
            .iter()
            .zip(outcomes())
            .map(|(p, value)| p * value)
            .sum();
        assert!((mean - score_of_elo(10.0)).abs() < 1e-12);
    }

    #[test]
    fn it_errs_about_as_often_as_it_may() {
        let test = test(0.0, 30.0);
        let runs = 600;
        for (truth, right) in [(0.0, Verdict::Lower), (30.0, Verdict::Higher)] {
            let chances = chances(truth);
            let mut wrong = 0;
            for run in 0..runs {
                let mut random = Random::new(5, run);
                let mut pairs = Pairs::default();
                let verdict = loop {
                    pairs.add(random.outcome(&chances));
                    if let Some(verdict) = test.verdict(&pairs) {
                        break verdict;
                    }
                };
                wrong += u32::from(verdict != right);
            }
            let share = f64::from(wrong) / runs as f64;
            // 0.05, and three standard errors of it in 600 runs, 0.027, either way; overshooting makes errors rarer.
            assert!((0.02..=0.077).contains(&share), "{truth}: {share}");
        }
    }
}

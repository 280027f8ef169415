//! What a match has come to, in numbers and in words.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::time::{Duration, Instant};

use super::game::Played;
use super::referee::Ending;
use super::settings::Settings;
use super::sprt::Verdict;
use super::tally::Pairs;
use super::{Pair, Side};

/// What a match has come to.
#[derive(Debug, Clone)]
pub struct Summary {
    /// Pairs by the points of `one`.
    pub pairs: Pairs,
    /// Games that `one` lost, drew and won.
    pub games: [u64; 3],
    /// How games ended.
    endings: BTreeMap<Ending, u64>,
    /// Games lost by a failure, of `one` and of `other`.
    failures: [BTreeMap<Ending, u64>; 2],
    /// Plies that the programs played, without those of the openings.
    pub plies: u64,
    begun: Instant,
    lasted: Option<Duration>,
}

impl Summary {
    pub(super) fn new(begun: Instant) -> Self {
        Summary {
            pairs: Pairs::default(),
            games: [0; 3],
            endings: BTreeMap::new(),
            failures: [BTreeMap::new(), BTreeMap::new()],
            plies: 0,
            begun,
            lasted: None,
        }
    }

    pub(super) fn add(&mut self, pair: &Pair) {
        self.pairs.add(pair.iter().map(Played::half_points).sum());
        for game in pair {
            self.games[game.half_points()] += 1;
            *self.endings.entry(game.ending).or_default() += 1;
            if let Some((side, ending)) = game.failure() {
                *self.failures[side.index()].entry(ending).or_default() += 1;
            }
            self.plies += (game.moves.len() - game.random_plies) as u64;
        }
    }

    pub(super) fn end(&mut self) {
        self.lasted = Some(self.begun.elapsed());
    }

    /// How long it took, or has taken until now.
    #[must_use]
    pub fn lasted(&self) -> Duration {
        self.lasted.unwrap_or_else(|| self.begun.elapsed())
    }

    /// How games ended, with how many did.
    #[must_use]
    pub fn endings_in_words(&self) -> Vec<(&'static str, u64)> {
        counted(&self.endings)
    }

    /// Games lost by a failure of `one` and of `other`, by what it was.
    #[must_use]
    pub fn failures_in_words(&self) -> [Vec<(&'static str, u64)>; 2] {
        self.failures.each_ref().map(counted)
    }

    /// One line for the way.
    #[must_use]
    pub fn progress(&self, settings: &Settings) -> String {
        let [lost, drawn, won] = self.games;
        let mut line = format!(
            "pair {} of {}: +{won} ={drawn} -{lost}, {}",
            self.pairs.count(),
            settings.pairs,
            elo(&self.pairs)
        );
        if let Some(test) = settings.sprt {
            let ratio = test.log_likelihood_ratio(&self.pairs);
            let (low, high) = test.bounds();
            let _ = write!(line, ", LLR {ratio:.2} ({low:.2} to {high:.2})");
        }
        line
    }

    /// The whole result, several lines.
    #[must_use]
    pub fn report(&self, settings: &Settings) -> String {
        let [lost, drawn, won] = self.games;
        let [p0, p1, p2, p3, p4] = self.pairs.counts();
        let seconds = self.lasted().as_secs_f64();
        let games = won + drawn + lost;
        let mut text = format!(
            "games: {games}, in {seconds:.1} s, {:.1} plies each\n\
             one against other: won {won}, drawn {drawn}, lost {lost}\n\
             pairs by points of one: 0: {p0}, 1/2: {p1}, 1: {p2}, 3/2: {p3}, 2: {p4}\n\
             {} (logistic; 95 % interval from the pairs)\n",
            self.plies as f64 / games.max(1) as f64,
            elo(&self.pairs),
        );
        if let Some(test) = settings.sprt {
            let ratio = test.log_likelihood_ratio(&self.pairs);
            let (low, high) = test.bounds();
            let [elo0, elo1] = test.hypotheses();
            let verdict = match test.verdict(&self.pairs) {
                Some(Verdict::Higher) => format!("{elo1} Elo or more is accepted"),
                Some(Verdict::Lower) => format!("{elo0} Elo or less is accepted"),
                None => "undecided".to_owned(),
            };
            let _ = writeln!(
                text,
                "SPRT of {elo0} against {elo1} Elo: LLR {ratio:.2}, bounds {low:.2} and {high:.2}: {verdict}"
            );
        }
        let _ = writeln!(text, "endings: {}", listed(&self.endings_in_words()));
        for (side, failures) in [Side::One, Side::Other]
            .iter()
            .zip(self.failures_in_words())
        {
            if !failures.is_empty() {
                let name = side.name();
                let _ = writeln!(text, "lost by a failure of {name}: {}", listed(&failures));
            }
        }
        text
    }
}

fn elo(pairs: &Pairs) -> String {
    match (pairs.elo(), pairs.elo_interval()) {
        (None, _) => "Elo unknown".to_owned(),
        (Some(elo), None) => format!("Elo {elo:+.1} [all pairs alike: no interval]"),
        (Some(elo), Some((low, high))) => format!("Elo {elo:+.1} [{low:+.1}, {high:+.1}]"),
    }
}

fn counted(endings: &BTreeMap<Ending, u64>) -> Vec<(&'static str, u64)> {
    endings
        .iter()
        .map(|(ending, count)| (ending.words(), *count))
        .collect()
}

fn listed(counts: &[(&'static str, u64)]) -> String {
    let parts: Vec<String> = counts
        .iter()
        .map(|(words, count)| format!("{words} {count}"))
        .collect();
    parts.join(", ")
}

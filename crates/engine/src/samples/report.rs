//! What a run has come to, in numbers and in words.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::time::{Duration, Instant};

use shakmaty::Color;

use crate::matches::referee::Ending;

use super::folder::Folder;
use super::game::Played;
use super::record::RECORD_BYTES;
use super::settings::Settings;

/// What a run has come to.
#[derive(Debug, Clone)]
pub struct Report {
    /// Games that it played.
    pub games: u64,
    /// Positions that it kept.
    pub positions: u64,
    /// Plies that it searched.
    pub plies: u64,
    /// Nodes of those searches.
    pub nodes: u64,
    /// Games and positions in the folder, those of earlier runs included.
    pub there: (u64, u64),
    /// Games in the folder before.
    before: u64,
    /// Games that Black won, that were drawn, that White won.
    results: [u64; 3],
    endings: BTreeMap<Ending, u64>,
    begun: Instant,
    lasted: Option<Duration>,
}

impl Report {
    pub(super) fn new(folder: &Folder) -> Report {
        Report {
            games: 0,
            positions: 0,
            plies: 0,
            nodes: 0,
            there: (folder.games(), folder.positions()),
            before: folder.games(),
            results: [0; 3],
            endings: BTreeMap::new(),
            begun: Instant::now(),
            lasted: None,
        }
    }

    pub(super) fn add(&mut self, game: &Played) {
        self.games += 1;
        self.positions += (game.bytes.len() / RECORD_BYTES) as u64;
        self.plies += game.plies;
        self.nodes += game.nodes;
        let result = match game.winner {
            Some(Color::Black) => 0,
            None => 1,
            Some(Color::White) => 2,
        };
        self.results[result] += 1;
        *self.endings.entry(game.ending).or_default() += 1;
    }

    pub(super) fn end(&mut self, folder: &Folder) {
        self.there = (folder.games(), folder.positions());
        self.lasted = Some(self.begun.elapsed());
    }

    fn seconds(&self) -> f64 {
        let lasted = self.lasted.unwrap_or_else(|| self.begun.elapsed());
        lasted.as_secs_f64().max(1e-3)
    }

    /// One line for the way.
    pub(super) fn progress(&self, settings: &Settings) -> String {
        let seconds = self.seconds();
        let games = self.before + self.games;
        let speed = self.games as f64 / seconds;
        let mut line = format!("games {games}");
        let mut left = settings.time.map(|time| time.as_secs_f64() - seconds);
        if let Some(segments) = settings.segments() {
            let all = segments * settings.games_a_segment;
            let _ = write!(line, " of {all}");
            if speed > 0.0 {
                let games = all.saturating_sub(games) as f64 / speed;
                left = Some(left.map_or(games, |left| left.min(games)));
            }
        }
        let _ = write!(
            line,
            ", positions {} in this run, {speed:.2} games/s, {:.0} positions/s",
            self.positions,
            self.positions as f64 / seconds
        );
        if let Some(left) = left {
            let _ = write!(line, ", {} left", in_words(left));
        }
        line
    }

    /// The whole result, several lines.
    #[must_use]
    pub fn text(&self) -> String {
        let seconds = self.seconds();
        let (all_games, all_positions) = self.there;
        let mut text = format!(
            "games: {} in this run, {all_games} in the folder\n\
             positions: {} in this run, {all_positions} in the folder, {RECORD_BYTES} bytes each\n",
            self.games, self.positions
        );
        if self.games > 0 {
            let [black, drawn, white] = self.results;
            let endings: Vec<String> = self
                .endings
                .iter()
                .map(|(ending, count)| format!("{} {count}", ending.words()))
                .collect();
            let _ = write!(
                text,
                "searched: {} plies, {:.0} nodes each, {:.1} % of them kept\n\
                 speed: {:.2} games/s, {:.1} positions/s, in {seconds:.1} s\n\
                 results: White won {white}, drawn {drawn}, Black won {black}\n\
                 endings: {}\n",
                self.plies,
                self.nodes as f64 / self.plies.max(1) as f64,
                100.0 * self.positions as f64 / self.plies.max(1) as f64,
                self.games as f64 / seconds,
                self.positions as f64 / seconds,
                endings.join(", ")
            );
        }
        text
    }
}

fn in_words(seconds: f64) -> String {
    match seconds.max(0.0).round() as u64 {
        seconds if seconds < 120 => format!("{seconds} s"),
        seconds if seconds < 7_200 => format!("{} min", seconds / 60),
        seconds => format!("{} h {} min", seconds / 3_600, seconds % 3_600 / 60),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_left_is_said_in_fitting_units() {
        for (seconds, words) in [
            (-3.0, "0 s"),
            (119.4, "119 s"),
            (120.0, "2 min"),
            (7_200.0, "2 h 0 min"),
            (86_399.0, "23 h 59 min"),
        ] {
            assert_eq!(in_words(seconds), words);
        }
    }
}

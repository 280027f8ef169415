//! What a folder of positions has in it, in numbers.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;

use super::failure::SampleError;
use super::folder::segments_of;
use super::reader::{ReadError, Samples};
use super::record::{Outcome, Sample};

/// Counts over positions.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Census {
    /// Segments that were read.
    pub segments: u64,
    /// Positions.
    pub positions: u64,
    /// Positions that the mover lost, drew and won, with the sum of their scores.
    outcomes: BTreeMap<Outcome, (u64, i64)>,
    /// Positions by number of men.
    men: BTreeMap<usize, u64>,
    /// Positions whose mover is in check.
    pub checks: u64,
}

impl Census {
    /// Reads every segment of a folder.
    ///
    /// # Errors
    /// [`SampleError::Segment`] names the first one that is damaged; [`SampleError::Disk`] when the folder cannot be read,
    /// [`SampleError::Setting`] when it has no segment.
    pub fn of_folder(path: &Path) -> Result<Census, SampleError> {
        let mut census = Census::default();
        for (_, file) in segments_of(path)? {
            let damaged = |error| SampleError::Segment(file.clone(), error);
            let samples = Samples::open(&file).map_err(|error| damaged(ReadError::Input(error)))?;
            for sample in samples {
                census.add(&sample.map_err(damaged)?);
            }
            census.segments += 1;
        }
        if census.segments == 0 {
            let message = format!("{} has no segment", path.display());
            return Err(SampleError::Setting(message));
        }
        Ok(census)
    }

    /// One more position.
    pub fn add(&mut self, sample: &Sample) {
        self.positions += 1;
        let (count, sum) = self.outcomes.entry(sample.outcome).or_default();
        *count += 1;
        *sum += i64::from(sample.score);
        *self.men.entry(sample.men()).or_default() += 1;
        self.checks += u64::from(sample.checkers().any());
    }

    /// Several lines.
    #[must_use]
    pub fn text(&self) -> String {
        let share = |count: u64| 100.0 * count as f64 / self.positions.max(1) as f64;
        let mut text = format!(
            "segments: {}\npositions: {}\nmovers in check: {}\n",
            self.segments, self.positions, self.checks
        );
        let mut sums = 0;
        for (outcome, name) in [
            (Outcome::Lost, "lost"),
            (Outcome::Drawn, "drawn"),
            (Outcome::Won, "won"),
            (Outcome::Unplayed, "not of the game"),
        ] {
            if outcome == Outcome::Unplayed && !self.outcomes.contains_key(&outcome) {
                continue;
            }
            let (count, sum) = self.outcomes.get(&outcome).copied().unwrap_or_default();
            sums += sum;
            let mean = sum as f64 / count.max(1) as f64;
            let _ = writeln!(
                text,
                "{name}: {count} ({:.1} %), mean score {mean:+.1}",
                share(count)
            );
        }
        let mean = sums as f64 / self.positions.max(1) as f64;
        let _ = writeln!(text, "mean score of all: {mean:+.1}");
        for (men, count) in &self.men {
            let _ = writeln!(text, "{men} men: {count} ({:.1} %)", share(*count));
        }
        text
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::position::Position;

    #[test]
    fn counts_are_those_of_the_positions() {
        let mut census = Census::default();
        for (fen, score, outcome) in [
            ("4k3/8/8/8/8/8/4P3/4K3 w - - 0 1", 90, Outcome::Won),
            ("4k3/8/8/8/8/8/4P3/4K3 w - - 0 1", -20, Outcome::Won),
            ("4k3/8/8/8/8/8/8/R3K3 b - - 0 1", -500, Outcome::Lost),
            ("4k3/8/8/8/8/8/4R3/R3K3 b - - 0 1", 0, Outcome::Drawn),
        ] {
            let position = Position::from_fen(fen).unwrap();
            census.add(&Sample::seen_by_mover(position.chess(), score, outcome));
        }
        assert_eq!(
            census.text(),
            "segments: 0\npositions: 4\nmovers in check: 1\n\
             lost: 1 (25.0 %), mean score -500.0\n\
             drawn: 1 (25.0 %), mean score +0.0\n\
             won: 2 (50.0 %), mean score +35.0\n\
             mean score of all: -107.5\n\
             3 men: 3 (75.0 %)\n4 men: 1 (25.0 %)\n"
        );
    }
}

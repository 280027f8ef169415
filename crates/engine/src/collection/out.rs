//! The Parquet files of one share of the keys: which position goes into which of them.

use std::path::Path;

use super::RARE;
use super::failure::CollectError;
use super::row::Row;
use super::table::{Column, Table};
use super::tally::{Tally, totals};

const FIGURES: &[Column] = &[
    ("key", 64),
    ("move", 16),
    ("white_band", 8),
    ("black_band", 8),
    ("year", 16),
    ("games", 32),
    ("white", 32),
    ("draws", 32),
    ("black", 32),
    ("white_sum", 64),
    ("black_sum", 64),
];
/// Sums of the figures, for questions about all games: `kind` 0 by move, 1 by the average rating of both players (from so
/// many points), 2 by year.
const TOTALS: &[Column] = &[
    ("key", 64),
    ("kind", 8),
    ("value", 16),
    ("games", 32),
    ("white", 32),
    ("draws", 32),
    ("black", 32),
    ("rated", 32),
    ("rating_sum", 64),
];
/// `move` 65535 marks a move order of `games` games; else `game` is a model game of the move.
const EXAMPLES: &[Column] = &[("key", 64), ("move", 16), ("game", 32), ("games", 32)];
const ORDER: u64 = 65535;
const RARES: &[Column] = &[("prefix", 64), ("game", 32)];
/// Bits of a key that are not kept of rare positions.
const CUT: u32 = 24;

/// Tallies by key, ascending.
pub type Hot = std::iter::Peekable<std::vec::IntoIter<(u64, Tally)>>;

/// The next tally, if its key is one that is wanted. (`next_if` would move each tally out and back.)
fn next_where(hot: &mut Hot, wanted: impl Fn(u64) -> bool) -> Option<(u64, Tally)> {
    hot.peek()
        .is_some_and(|(key, _)| wanted(*key))
        .then(|| hot.next())?
}

/// The files of one share of the keys.
pub struct Out {
    totals: Table,
    figures: Table,
    examples: Table,
    rare: Table,
}

impl Out {
    /// Begins them in a folder.
    pub fn new(folder: &Path, file: usize) -> Result<Out, CollectError> {
        let path = |name: &str| folder.join(format!("{name}-{file:02x}.parquet"));
        Ok(Out {
            totals: Table::new(&path("totals"), TOTALS, &["key"], true)?,
            figures: Table::new(&path("figures"), FIGURES, &["key"], true)?,
            examples: Table::new(&path("examples"), EXAMPLES, &["key", "game"], true)?,
            rare: Table::new(&path("rare"), RARES, &["prefix", "game"], false)?,
        })
    }

    /// Rows of one part of the keys, and the tallies of those keys.
    pub fn part(&mut self, rows: &[Row], hot: &mut Hot, part: usize) -> Result<(), CollectError> {
        // key, game and place in one number: what is sorted is small, and most rows are never looked at again
        let mut order: Vec<u128> = rows
            .iter()
            .zip(0_u32..)
            .map(|(row, at)| {
                u128::from(row.key) << 64 | u128::from(row.game) << 32 | u128::from(at)
            })
            .collect();
        order.sort_unstable();
        for run in order.chunk_by(|a, b| a >> 64 == b >> 64) {
            let key = (run[0] >> 64) as u64;
            let own = run.iter().map(|at| &rows[*at as u32 as usize]);
            while let Some((earlier, tally)) = next_where(hot, |hot| hot < key) {
                self.tally(earlier, &tally)?;
            }
            if let Some((_, mut tally)) = next_where(hot, |hot| hot == key) {
                own.for_each(|row| tally.add(row));
                self.tally(key, &tally)?;
            } else if run.len() < RARE {
                for at in run {
                    self.rare(key, (at >> 32) as u32)?;
                }
            } else {
                let mut tally = Tally::default();
                own.for_each(|row| tally.add(row));
                self.tally(key, &tally)?;
            }
        }
        while let Some((key, tally)) = next_where(hot, |key| (key >> 56) as usize == part) {
            self.tally(key, &tally)?;
        }
        Ok(())
    }

    fn rare(&mut self, key: u64, game: u32) -> Result<(), CollectError> {
        self.rare.push(&[key >> CUT, u64::from(game)])
    }

    fn tally(&mut self, key: u64, tally: &Tally) -> Result<(), CollectError> {
        if (tally.games as usize) < RARE {
            return tally
                .first
                .iter()
                .try_for_each(|game| self.rare(key, *game));
        }
        let cells = tally.cells();
        for ((kind, value), total) in totals(&cells) {
            let counts = [
                total.games,
                total.white,
                total.draws,
                total.black,
                total.rated,
            ];
            let [games, won, draws, lost, rated] = counts.map(u64::from);
            let value = u64::from(value);
            self.totals.push(&[
                key,
                kind,
                value,
                games,
                won,
                draws,
                lost,
                rated,
                total.rating_sum,
            ])?;
        }
        for ((mv, white, black, year), cell) in cells {
            let counts = [cell.games, cell.white, cell.draws, cell.black].map(u64::from);
            let [games, won, draws, lost] = counts;
            self.figures.push(&[
                key,
                u64::from(mv),
                u64::from(white),
                u64::from(black),
                u64::from(year),
                games,
                won,
                draws,
                lost,
                cell.white_sum,
                cell.black_sum,
            ])?;
        }
        for (mv, game) in tally.models() {
            self.examples
                .push(&[key, u64::from(mv), u64::from(game), 0])?;
        }
        for (games, first) in tally.orders() {
            self.examples
                .push(&[key, ORDER, u64::from(first), u64::from(games)])?;
        }
        Ok(())
    }

    /// Ends them.
    pub fn finish(self) -> Result<(), CollectError> {
        for table in [self.totals, self.figures, self.examples, self.rare] {
            table.finish()?;
        }
        Ok(())
    }
}

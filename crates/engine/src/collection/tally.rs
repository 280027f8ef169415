//! All that is kept of one position of many games.

use std::collections::HashMap;
use std::hash::BuildHasherDefault;

use super::row::Row;
use super::seen::Mixed;
use super::{BAND, RARE};
use crate::bulk::GameResult;

/// Model games of a move, by rating and by brevity, so many each.
const MODELS: usize = 3;
/// A shorter game is no model: plies (our choice).
const SHORTEST: u16 = 20;
/// Move orders of a position that are kept, the most played first.
pub const ORDERS: usize = 32;

type Map<K, V> = HashMap<K, V, BuildHasherDefault<Mixed>>;

/// What games of one move, rating bands and year come to.
#[derive(Debug, Clone, Copy, Default)]
pub struct Cell {
    /// How many.
    pub games: u32,
    /// Of them won by White, drawn, won by Black; the rest has no known result.
    pub white: u32,
    /// See `white`.
    pub draws: u32,
    /// See `white`.
    pub black: u32,
    /// Sum of White's ratings.
    pub white_sum: u64,
    /// Sum of Black's ratings.
    pub black_sum: u64,
}

/// (move, White's band, Black's band, year).
pub type CellKey = (u16, u16, u16, u16);

#[derive(Debug, Default)]
struct Models {
    /// (rating, game), the highest first.
    best: Vec<(u32, u32)>,
    /// (plies, game), the shortest first.
    short: Vec<(u16, u32)>,
}

/// One position.
#[derive(Debug, Default)]
pub struct Tally {
    /// Games that reach it.
    pub games: u32,
    /// The first of them; all while they are few.
    pub first: Vec<u32>,
    cells: Map<u64, Cell>,
    models: Map<u16, Models>,
    orders: Map<u64, (u32, u32)>,
}

impl Tally {
    /// Counts a row. Rows come in the order of games.
    pub fn add(&mut self, row: &Row) {
        self.games += 1;
        if self.first.len() < RARE {
            self.first.push(row.game);
        }
        let (white, black) = (row.white / BAND, row.black / BAND);
        let key = u64::from(row.mv) << 32
            | u64::from(white) << 24
            | u64::from(black) << 16
            | u64::from(row.year);
        let cell = self.cells.entry(key).or_default();
        cell.games += 1;
        let result = GameResult::from_number(row.result);
        match result {
            GameResult::White => cell.white += 1,
            GameResult::Draw => cell.draws += 1,
            GameResult::Black => cell.black += 1,
            GameResult::Unknown => {}
        }
        cell.white_sum += u64::from(row.white);
        cell.black_sum += u64::from(row.black);
        self.orders.entry(row.path).or_insert((0, row.game)).0 += 1;
        if row.mv != 0 && matches!(result, GameResult::White | GameResult::Black) {
            self.models.entry(row.mv).or_default().add(row);
        }
    }

    /// The cells, in order.
    pub fn cells(&self) -> Vec<(CellKey, Cell)> {
        let mut cells: Vec<(u64, Cell)> =
            self.cells.iter().map(|(key, cell)| (*key, *cell)).collect();
        cells.sort_unstable_by_key(|(key, _)| *key);
        cells
            .into_iter()
            .map(|(key, cell)| {
                let part = |at: u32, bits: u64| (key >> at & bits) as u16;
                (
                    (
                        part(32, 0xffff),
                        part(24, 0xff),
                        part(16, 0xff),
                        part(0, 0xffff),
                    ),
                    cell,
                )
            })
            .collect()
    }

    /// (move, game) of the model games, in order.
    pub fn models(&self) -> Vec<(u16, u32)> {
        let mut found: Vec<(u16, u32)> = self
            .models
            .iter()
            .flat_map(|(mv, models)| {
                let best = models.best.iter().map(|(_, game)| (*mv, *game));
                best.chain(models.short.iter().map(|(_, game)| (*mv, *game)))
            })
            .collect();
        found.sort_unstable();
        found.dedup();
        found
    }

    /// (games, the first of them) of the move orders, the most played first.
    pub fn orders(&self) -> Vec<(u32, u32)> {
        let mut found: Vec<(u32, u32)> = self.orders.values().copied().collect();
        found.sort_unstable_by_key(|(games, first)| (u32::MAX - games, *first));
        found.truncate(ORDERS);
        found
    }
}

impl Models {
    fn add(&mut self, row: &Row) {
        if row.white > 0 && row.black > 0 {
            let rating = u32::from(row.white) + u32::from(row.black);
            insert(&mut self.best, (rating, row.game), |(rating, _)| {
                u32::MAX - rating
            });
        }
        if row.plies >= SHORTEST {
            insert(&mut self.short, (row.plies, row.game), |(plies, _)| {
                u32::from(*plies)
            });
        }
    }
}

/// Keeps the first few by a value; of equals, those that came first.
fn insert<T: Copy>(kept: &mut Vec<T>, new: T, value: impl Fn(&T) -> u32) {
    let at = kept.partition_point(|old| value(old) <= value(&new));
    if at < MODELS {
        kept.truncate(MODELS - 1);
        kept.insert(at, new);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_best_and_the_shortest_are_kept_and_of_equals_the_first() {
        let mut tally = Tally::default();
        for (game, rating, plies) in [
            (0, 1500, 60),
            (1, 2000, 40),
            (2, 1500, 30),
            (3, 1900, 40),
            (4, 1500, 25),
            (5, 1800, 19),
            (6, 2000, 40),
        ] {
            tally.add(&Row {
                game,
                white: rating,
                black: rating,
                plies,
                mv: 5,
                result: 1,
                ..Row::default()
            });
        }
        // best: 1, 6, 3; shortest: 4, 2, and of three with 40 plies the first, 1
        assert_eq!(tally.models(), [(5, 1), (5, 2), (5, 3), (5, 4), (5, 6)]);
    }
}

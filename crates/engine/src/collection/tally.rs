//! All that is kept of one position of many games.

use std::collections::{BTreeMap, HashMap};
use std::hash::BuildHasherDefault;

use super::row::Row;
use super::seen::Mixed;
use super::{BAND, RARE};
use crate::bulk::GameResult;

/// Model games of a move, by rating and by brevity, so many each: as many as are given where no more are wanted, so that
/// these are the same however the games are spread over segments.
const MODELS: usize = 4;
/// A shorter game is no model: plies (our choice).
const SHORTEST: u16 = 20;
/// Move orders of a position that are kept, the most played first.
pub const ORDERS: usize = 32;

/// Rating points of a line of totals.
const STEP: u16 = 200;

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

/// Cells, added up.
#[derive(Debug, Clone, Copy, Default)]
pub struct Total {
    /// As in [`Cell`].
    pub games: u32,
    /// As in [`Cell`].
    pub white: u32,
    /// As in [`Cell`].
    pub draws: u32,
    /// As in [`Cell`].
    pub black: u32,
    /// Players whose rating is known.
    pub rated: u32,
    /// Sum of their ratings.
    pub rating_sum: u64,
}

/// Cells by (0, move), (1, average rating in steps of [`STEP`], where both are known) and (2, year, where it is known).
pub fn totals(cells: &[(CellKey, Cell)]) -> BTreeMap<(u64, u16), Total> {
    let mut found: BTreeMap<(u64, u16), Total> = BTreeMap::new();
    for ((mv, white, black, year), cell) in cells {
        let average = (white + black) * BAND / 2 / STEP * STEP;
        let names = [
            Some((0, *mv)),
            (*white > 0 && *black > 0).then_some((1, average)),
            (*year > 0).then_some((2, *year)),
        ];
        for name in names.into_iter().flatten() {
            let total = found.entry(name).or_default();
            total.games += cell.games;
            total.white += cell.white;
            total.draws += cell.draws;
            total.black += cell.black;
            total.rated += cell.games * (u32::from(*white > 0) + u32::from(*black > 0));
            total.rating_sum += cell.white_sum + cell.black_sum;
        }
    }
    found
}

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
    models: Vec<(u16, Models)>,
    /// (path, games, first game).
    orders: Vec<(u64, u32, u32)>,
    order_of: Map<u64, usize>,
    /// The order that was counted last: the next is mostly the same.
    last: usize,
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
        self.order(row);
        let decisive = matches!(result, GameResult::White | GameResult::Black);
        if row.mv != 0 && decisive && row.plies >= SHORTEST {
            let known = self.models.iter().position(|(mv, _)| *mv == row.mv);
            let at = known.unwrap_or_else(|| {
                self.models.push((row.mv, Models::default()));
                self.models.len() - 1
            });
            self.models[at].1.add(row);
        }
    }

    fn order(&mut self, row: &Row) {
        if self
            .orders
            .get(self.last)
            .is_none_or(|order| order.0 != row.path)
        {
            self.last = *self.order_of.entry(row.path).or_insert(self.orders.len());
            if self.last == self.orders.len() {
                self.orders.push((row.path, 0, row.game));
            }
        }
        self.orders[self.last].1 += 1;
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
        let mut found: Vec<(u32, u32)> = self
            .orders
            .iter()
            .map(|(_, games, first)| (*games, *first))
            .collect();
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
        insert(&mut self.short, (row.plies, row.game), |(plies, _)| {
            u32::from(*plies)
        });
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
            (7, 1000, 40),
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
        // best: 1, 6, 3, and of three with 1500 the first, 0; shortest: 4, 2, and of four with 40 plies 1 and 3; 5 is too short
        let games = [0, 1, 2, 3, 4, 6].map(|game| (5, game));
        assert_eq!(tally.models(), games);
    }
}

//! The games of one chunk, made ready for a segment: a record and the rows of each.

use std::sync::LazyLock;

use shakmaty::zobrist::Zobrist64;
use shakmaty::{Chess, EnPassantMode, Move, Position as _};
use twox_hash::XxHash3_64;

use super::PLIES;
use super::code::write_move;
use super::row::{Row, packed};
use crate::bulk::{Broken, Game, Kind, Visit};

/// The key of the initial position.
static START: LazyLock<Zobrist64> =
    LazyLock::new(|| Chess::default().zobrist_hash(EnPassantMode::Legal));
/// Bytes of a game's record, about.
const RECORD: usize = 200;

/// A game of a batch: where its record and its rows end.
#[derive(Debug, Clone, Copy)]
pub struct Entry {
    /// By which the game is known.
    pub hash: u64,
    /// One past its record's tags.
    pub tags: usize,
    /// One past its record's moves.
    pub moves: usize,
    /// One past its rows.
    pub rows: usize,
    /// The source that it is from.
    pub source: u32,
}

/// Games in the order of their stream.
#[derive(Debug, Default, Clone)]
pub struct Batch {
    /// Records, one after another: tags, then moves.
    pub records: Vec<u8>,
    /// Rows, one after another.
    pub rows: Vec<Row>,
    /// One for each game.
    pub entries: Vec<Entry>,
    /// Games that cannot be read.
    pub broken: Vec<Broken>,
    /// Games without moves.
    pub empty: u64,
    /// Games by other rules.
    pub variants: u64,
    /// Games from a set-up position.
    pub set_up: u64,
    /// Of the games that follow.
    pub source: u32,
    codes: Vec<u8>,
    usual: bool,
    plies: usize,
    first_row: usize,
    path: u64,
    next: Option<Zobrist64>,
}

impl Batch {
    /// For about so many games of a source.
    #[must_use]
    pub fn of(source: u32, games: usize) -> Batch {
        Batch {
            source,
            rows: Vec::with_capacity(games * PLIES),
            records: Vec::with_capacity(games * RECORD),
            entries: Vec::with_capacity(games),
            ..Batch::default()
        }
    }

    fn row(&mut self, chess: &Chess, mv: u16) {
        let key = self
            .next
            .take()
            .unwrap_or_else(|| chess.zobrist_hash(EnPassantMode::Legal));
        let reversible = (chess.halfmoves() as usize).min(self.plies);
        let since = self
            .first_row
            .max(self.rows.len().saturating_sub(reversible));
        let again = reversible >= 4 && self.rows[since..].iter().any(|row| row.key == key.0);
        if !again {
            self.rows.push(Row {
                key: key.0,
                path: self.path,
                mv,
                ply: self.plies as u8,
                ..Row::default()
            });
        }
        self.next = Some(key);
    }
}

fn text(record: &mut Vec<u8>, text: &str) {
    let bytes = &text.as_bytes()[..floor(text, 255)];
    record.push(bytes.len() as u8);
    record.extend_from_slice(bytes);
}

/// The last character border at or before a byte.
fn floor(text: &str, at: usize) -> usize {
    (0..=at.min(text.len()))
        .rev()
        .find(|at| text.is_char_boundary(*at))
        .unwrap_or(0)
}

impl Visit for Batch {
    fn begin(&mut self, _: &Chess, usual: bool) {
        self.first_row = self.entries.last().map_or(0, |entry| entry.rows);
        self.rows.truncate(self.first_row);
        self.codes.clear();
        self.usual = usual;
        self.plies = 0;
        self.path = 0;
        self.next = usual.then_some(*START);
    }

    fn play(&mut self, before: &Chess, mv: Move) {
        if !self.usual {
            return;
        }
        if self.plies < PLIES {
            let bits = packed(mv);
            self.row(before, bits);
            self.next = self
                .next
                .and_then(|key| before.update_zobrist_hash(key, mv, EnPassantMode::Legal));
            self.path = (self.path ^ u64::from(bits))
                .wrapping_mul(0x9E37_79B9_7F4A_7C15)
                .rotate_left(29);
        }
        write_move(before, mv, &mut self.codes);
        self.plies += 1;
    }

    fn game(&mut self, game: &Game, end: &Chess) {
        if !self.usual {
            self.set_up += 1;
            return;
        }
        if self.plies < PLIES {
            self.row(end, 0);
        }
        for row in &mut self.rows[self.first_row..] {
            row.white = game.white;
            row.black = game.black;
            row.year = game.year;
            row.plies = self.plies.min(usize::from(u16::MAX)) as u16;
            row.result = game.result as u8;
        }
        let start = self.records.len();
        self.records.push(game.result as u8);
        for word in [game.white, game.black, game.year, self.plies as u16] {
            self.records.extend_from_slice(&word.to_le_bytes());
        }
        for name in &game.names {
            text(&mut self.records, name);
        }
        let tags = self.records.len();
        self.records.extend_from_slice(&self.codes);
        let hash = XxHash3_64::oneshot(&self.records[start..]);
        self.entries.push(Entry {
            hash,
            tags,
            moves: self.records.len(),
            rows: self.rows.len(),
            source: self.source,
        });
    }

    fn broken(&mut self, broken: Broken) {
        self.broken.push(broken);
    }

    fn left_out(&mut self, kind: Kind) {
        match kind {
            Kind::Empty => self.empty += 1,
            Kind::Variant => self.variants += 1,
        }
    }
}

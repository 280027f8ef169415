//! What is kept of a game: its tags, its result, its moves.

use std::borrow::Cow;

use shakmaty::{Chess, Move};

/// How a game ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum GameResult {
    /// Not known, or not ended.
    #[default]
    Unknown,
    /// White won.
    White,
    /// Drawn.
    Draw,
    /// Black won.
    Black,
}

impl GameResult {
    /// As PGN writes it (standard, 8.2.6).
    #[must_use]
    pub fn spelled(self) -> &'static str {
        match self {
            GameResult::Unknown => "*",
            GameResult::White => "1-0",
            GameResult::Draw => "1/2-1/2",
            GameResult::Black => "0-1",
        }
    }

    /// By its number, 0 to 3 in the order above.
    #[must_use]
    pub fn from_number(number: u8) -> GameResult {
        match number {
            1 => GameResult::White,
            2 => GameResult::Draw,
            3 => GameResult::Black,
            _ => GameResult::Unknown,
        }
    }

    /// What a text says; none when it says nothing of a result.
    #[must_use]
    pub fn read(text: &[u8]) -> Option<GameResult> {
        match text {
            b"1-0" => Some(GameResult::White),
            b"0-1" => Some(GameResult::Black),
            b"1/2-1/2" | b"1/2" => Some(GameResult::Draw),
            b"*" => Some(GameResult::Unknown),
            _ => None,
        }
    }
}

/// Why a game is not among those that are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// It has no moves.
    Empty,
    /// It is played by other rules.
    Variant,
}

/// A game that cannot be read, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Broken {
    /// From 1.
    pub line: usize,
    /// From 1, in characters.
    pub column: usize,
    /// What is wrong there.
    pub reason: String,
}

/// The tags that are kept, as text; empty where a game lacks one.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Game {
    /// Event, Site, Date, Round, White, Black: the order of the standard (8.1.1).
    pub names: [String; 6],
    /// By the Result tag, or else by the end of the moves.
    pub result: GameResult,
    /// White's rating, 0 where it is not known.
    pub white: u16,
    /// Black's rating, 0 where it is not known.
    pub black: u16,
    /// 0 where it is not known.
    pub year: u16,
    /// The main line; empty in a game that is handed to a [`Visit`], which was told each move.
    pub moves: Vec<Move>,
}

/// Names of the tags in [`Game::names`].
pub const NAMES: [&str; 6] = ["Event", "Site", "Date", "Round", "White", "Black"];

/// Is told what a stream holds. After `begin` the moves of a game follow, and then `game`; a `begin` in between starts
/// the same game over, and a `broken` or `left_out` in place of `game` takes it back.
pub trait Visit {
    /// A game begins. `usual`: at the initial position.
    fn begin(&mut self, start: &Chess, usual: bool);
    /// A move of the main line.
    fn play(&mut self, before: &Chess, mv: Move);
    /// The game is whole.
    fn game(&mut self, game: &Game, end: &Chess);
    /// There is a game that cannot be read.
    fn broken(&mut self, broken: Broken);
    /// There is a game that is not counted.
    fn left_out(&mut self, kind: Kind);
}

impl Game {
    /// Takes a tag; true when it makes the game one of another start or other rules.
    pub(super) fn tag(&mut self, name: &str, value: &str) -> bool {
        if let Some(index) = NAMES.iter().position(|known| *known == name) {
            if index == 2 && year(value) != 0 {
                self.year = year(value);
            }
            value.clone_into(&mut self.names[index]);
            return false;
        }
        match name {
            "WhiteElo" => self.white = rating(value),
            "BlackElo" => self.black = rating(value),
            "UTCDate" if self.year == 0 => self.year = year(value),
            "Result" => self.result = GameResult::read(value.as_bytes()).unwrap_or_default(),
            "FEN" | "Variant" => return true,
            _ => {}
        }
        false
    }
}

/// A rating of 100 to 3999; 0 for what is none. The rating lists know no others (`common practice`).
#[must_use]
pub fn rating(text: &str) -> u16 {
    match text.trim().parse() {
        Ok(number) if (100..4000).contains(&number) => number,
        _ => 0,
    }
}

/// The year of a date as PGN writes it, "2019.05.??": 1400 to 2200; 0 for what is none.
#[must_use]
pub fn year(date: &str) -> u16 {
    let digits = date.trim_start();
    let end = digits
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(digits.len());
    match digits[..end].parse() {
        Ok(number) if end == 4 && (1400..=2200).contains(&number) => number,
        _ => 0,
    }
}

/// Bytes as text: UTF-8, or else Latin-1, the character set of the standard (4.1).
pub(super) fn decoded(bytes: &[u8]) -> Cow<'_, str> {
    match std::str::from_utf8(bytes) {
        Ok(text) => Cow::Borrowed(text),
        Err(_) => Cow::Owned(bytes.iter().map(|byte| char::from(*byte)).collect()),
    }
}

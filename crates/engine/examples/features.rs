//! Positions of games as the weights of the evaluation see them, for fitting:
//! `cargo run --release --example features -- --out FOLDER [--seed N] [--most N] < GAMES`.
//!
//! A game a line: `RESULT RANDOM_PLIES MOVE/SCORE MOVE/SCORE ...`, as `generate` writes them. Only quiet positions are
//! taken: not in check, the move played neither takes nor promotes nor checks, its score known and no mate, at least
//! four plies after the random ones, and no bare king, whose game is decided; of these at most `--most` a game, by lot.
//!
//! Writes four files of little-endian numbers. `rows.bin`, 14 bytes a position: game (u32), White's points doubled
//! (u8), score (i16), value (i16), both for White in centipawns, phase in 24ths (u8), scale in hundredths (u8), White on
//! move (u8), number of terms (u16). `terms.bin` (u16) and `counts.bin` (i16): the terms that are not zero, position after
//! position. `units.bin` (i16): all units of danger of White's king and of Black's.

use std::fmt;
use std::fs::File;
use std::io::{BufWriter, Write, stdin};
use std::path::Path;

use engine::eval::{Tapered, Trace};
use engine::random::Random;
use shakmaty::uci::UciMove;
use shakmaty::{Chess, Position as _};

/// Plies after the random ones that are left out.
const UNSETTLED: usize = 4;
/// Scores from here on are mates.
const MATES: i32 = 30_000;

/// Why a line is no game.
#[derive(Debug)]
enum GameError {
    /// The line does not begin with a result and a number.
    Head(usize),
    /// A word is no `MOVE/SCORE`, or the move is not legal.
    Move(usize, String),
}

impl fmt::Display for GameError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            GameError::Head(line) => write!(f, "line {line}: no result and number of random plies"),
            GameError::Move(line, word) => write!(f, "line {line}: {word} is no legal MOVE/SCORE"),
        }
    }
}

impl std::error::Error for GameError {}

struct Options {
    out: String,
    seed: u64,
    most: usize,
}

fn options() -> Result<Options, Box<dyn std::error::Error>> {
    let mut found = Options {
        out: String::new(),
        seed: 1,
        most: 12,
    };
    let mut words = std::env::args().skip(1);
    while let Some(name) = words.next() {
        let value = words
            .next()
            .ok_or_else(|| format!("{name} needs a value"))?;
        match name.as_str() {
            "--out" => found.out = value,
            "--seed" => found.seed = value.parse()?,
            "--most" => found.most = value.parse()?,
            _ => return Err(format!("{name} is no option").into()),
        }
    }
    if found.out.is_empty() {
        return Err("give --out".into());
    }
    Ok(found)
}

/// A game's result (White's points doubled) and its quiet positions with their scores.
fn quiet(line: &str, number: usize) -> Result<(u8, Vec<(Chess, i16)>), GameError> {
    let mut words = line.split_ascii_whitespace();
    let points = match words.next() {
        Some("1-0") => 2,
        Some("1/2-1/2") => 1,
        Some("0-1") => 0,
        _ => return Err(GameError::Head(number)),
    };
    let random_plies: usize = words
        .next()
        .and_then(|word| word.parse().ok())
        .ok_or(GameError::Head(number))?;
    let mut positions = Vec::new();
    let mut chess = Chess::default();
    for (ply, word) in words.enumerate() {
        let wrong = || GameError::Move(number, word.to_owned());
        let (uci, score) = word.split_once('/').ok_or_else(wrong)?;
        let parsed: UciMove = uci.parse().map_err(|_| wrong())?;
        let mv = parsed.to_move(&chess).map_err(|_| wrong())?;
        let before = chess.clone();
        chess.play_unchecked(mv);
        let loud = before.is_check() || mv.is_capture() || mv.is_promotion() || chess.is_check();
        let board = before.board();
        let bare = board.white().count() == 1 || board.black().count() == 1;
        if loud || bare || ply < random_plies + UNSETTLED || score == "?" {
            continue;
        }
        let score: i32 = score.parse().map_err(|_| wrong())?;
        if score.abs() < MATES {
            positions.push((before, i16::try_from(score).map_err(|_| wrong())?));
        }
    }
    Ok((points, positions))
}

struct Files {
    rows: BufWriter<File>,
    terms: BufWriter<File>,
    counts: BufWriter<File>,
    units: BufWriter<File>,
}

impl Files {
    fn create(folder: &Path) -> std::io::Result<Files> {
        let file = |name| Ok::<_, std::io::Error>(BufWriter::new(File::create(folder.join(name))?));
        Ok(Files {
            rows: file("rows.bin")?,
            terms: file("terms.bin")?,
            counts: file("counts.bin")?,
            units: file("units.bin")?,
        })
    }

    fn write(
        &mut self,
        game: u32,
        points: u8,
        score: i16,
        trace: &Trace,
    ) -> Result<(), Box<dyn std::error::Error>> {
        let mut terms = 0_u16;
        for (index, count) in trace.terms.iter().enumerate() {
            if *count != 0 {
                self.terms.write_all(&u16::try_from(index)?.to_le_bytes())?;
                self.counts
                    .write_all(&i16::try_from(*count)?.to_le_bytes())?;
                terms += 1;
            }
        }
        for count in trace.units.iter().flatten() {
            self.units
                .write_all(&i16::try_from(*count)?.to_le_bytes())?;
        }
        let value = if trace.white_to_move {
            trace.value
        } else {
            -trace.value
        };
        self.rows.write_all(&game.to_le_bytes())?;
        self.rows.write_all(&[points])?;
        self.rows.write_all(&score.to_le_bytes())?;
        self.rows.write_all(&i16::try_from(value)?.to_le_bytes())?;
        let small = [u8::try_from(trace.phase)?, u8::try_from(trace.scale)?];
        self.rows.write_all(&small)?;
        self.rows.write_all(&[u8::from(trace.white_to_move)])?;
        self.rows.write_all(&terms.to_le_bytes())?;
        Ok(())
    }
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let options = options()?;
    let mut files = Files::create(Path::new(&options.out))?;
    let (mut games, mut written) = (0_u32, 0_u64);
    for (number, line) in stdin().lines().enumerate() {
        let (points, mut positions) = quiet(&line?, number + 1)?;
        let mut random = Random::new(options.seed, u64::from(games));
        for taken in 0..options.most.min(positions.len()) {
            let chosen = taken + random.below(positions.len() - taken);
            positions.swap(taken, chosen);
            let (chess, score) = &positions[taken];
            files.write(games, points, *score, &Tapered::trace(chess))?;
            written += 1;
        }
        games += 1;
    }
    println!("{games} games, {written} positions");
    Ok(())
}

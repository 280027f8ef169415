//! Games of the engine against itself, for fitting: `cargo run --release --example generate -- --games N --seed S --out FILE
//! [--nodes N] [--threads T] [--seconds S] [--evaluation built-in|hand-made]`.
//!
//! One game a line: `RESULT RANDOM_PLIES MOVE/SCORE MOVE/SCORE ...`, from the initial position, moves in UCI spelling,
//! scores in White's centipawns as searched before the move, `?` for the random plies at the start. A game depends on
//! the seed and its number alone; `--seconds` only decides how many are played.

use std::fs::File;
use std::io::{BufWriter, Write};
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

use engine::eval::Evaluation;
use engine::position::Position;
use engine::random::Random;
use engine::search::{Limits, Request, Score, Searcher};
use shakmaty::{Color, Position as _};

/// Centipawns beyond which a game counts as won, and for how many plies in a row.
const WON: (i32, u32) = (1500, 4);
/// Centipawns within which a game counts as drawn, for how many plies in a row, and from which ply on.
const DRAWN: (i32, u32, usize) = (8, 16, 80);
/// A game that lasts as long is a draw.
const LONGEST: usize = 320;
/// A random opening that leaves one side so far ahead is thrown away.
const LOPSIDED: i32 = 250;

struct Options {
    games: u64,
    seed: u64,
    nodes: u64,
    threads: usize,
    seconds: Option<u64>,
    out: String,
    evaluation: Evaluation,
}

fn options() -> Result<Options, Box<dyn std::error::Error>> {
    let mut found = Options {
        games: u64::MAX,
        seed: 1,
        nodes: 5_000,
        threads: 2,
        seconds: None,
        out: String::new(),
        evaluation: Evaluation::default(),
    };
    let mut words = std::env::args().skip(1);
    while let Some(name) = words.next() {
        let value = words
            .next()
            .ok_or_else(|| format!("{name} needs a value"))?;
        match name.as_str() {
            "--games" => found.games = value.parse()?,
            "--seed" => found.seed = value.parse()?,
            "--nodes" => found.nodes = value.parse()?,
            "--threads" => found.threads = value.parse()?,
            "--seconds" => found.seconds = Some(value.parse()?),
            "--out" => found.out = value,
            "--evaluation" => {
                found.evaluation = match value.as_str() {
                    "built-in" => Evaluation::built_in(),
                    "hand-made" => Evaluation::hand_made(),
                    _ => return Err(format!("{value} is no evaluation").into()),
                }
            }
            _ => return Err(format!("{name} is no option").into()),
        }
    }
    if found.out.is_empty() || (found.games == u64::MAX && found.seconds.is_none()) {
        return Err("give --out and --games or --seconds".into());
    }
    Ok(found)
}

fn centipawns(score: Score) -> i32 {
    match score {
        Score::Centipawns(value) => value,
        Score::Mates(_) => 30_000,
        Score::Mated(_) => -30_000,
    }
}

/// One game, or nothing when the opening is lopsided or ends the game.
fn game(seed: u64, number: u64, nodes: u64, evaluation: &Evaluation) -> Option<String> {
    let mut random = Random::new(seed, number);
    let mut position = Position::start();
    let mut history = Vec::new();
    let mut words = Vec::new();
    let random_plies = 4 + random.below(7);
    for _ in 0..random_plies {
        let moves = position.legal_moves();
        if moves.is_empty() {
            return None;
        }
        let mv = moves[random.below(moves.len())];
        words.push(format!("{}/?", position.uci(mv)));
        history.push(position.key());
        position = position.play(mv);
    }
    let mut searcher = Searcher::with(evaluation.clone());
    let (mut won, mut drawn) = ((0, 0), 0);
    let result = loop {
        let chess = position.chess();
        if chess.is_checkmate() {
            break if chess.turn() == Color::White {
                "0-1"
            } else {
                "1-0"
            };
        }
        let repeated = history
            .iter()
            .rev()
            .take(chess.halfmoves() as usize)
            .filter(|key| **key == position.key())
            .count();
        if chess.is_stalemate()
            || chess.is_insufficient_material()
            || chess.halfmoves() >= 100
            || repeated >= 2
            || words.len() >= LONGEST
        {
            break "1/2-1/2";
        }
        let mut request = Request::new(&position, Limits::nodes(nodes));
        request.history = &history;
        let answer = searcher.search(&request).ok()?;
        let line = answer.lines.first()?;
        let score = chess.turn().fold_wb(1, -1) * centipawns(line.score);
        if words.len() == random_plies && score.abs() > LOPSIDED {
            return None;
        }
        let side = score.signum();
        won = if score.abs() >= WON.0 {
            (side, if won.0 == side { won.1 + 1 } else { 1 })
        } else {
            (0, 0)
        };
        drawn = if score.abs() <= DRAWN.0 { drawn + 1 } else { 0 };
        if won.1 >= WON.1 {
            break if side > 0 { "1-0" } else { "0-1" };
        }
        if words.len() >= DRAWN.2 && drawn >= DRAWN.1 {
            break "1/2-1/2";
        }
        words.push(format!("{}/{score}", position.uci(line.moves[0])));
        history.push(position.key());
        position = position.play(line.moves[0]);
    };
    Some(format!("{result} {random_plies} {}\n", words.join(" ")))
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let options = options()?;
    let out = Mutex::new(BufWriter::new(File::create(&options.out)?));
    let next = AtomicU64::new(0);
    let written = AtomicU64::new(0);
    let begun = Instant::now();
    let until = options
        .seconds
        .map(|seconds| begun + Duration::from_secs(seconds));
    std::thread::scope(|scope| {
        for _ in 0..options.threads {
            scope.spawn(|| {
                loop {
                    let number = next.fetch_add(1, Ordering::Relaxed);
                    let late = until.is_some_and(|until| Instant::now() >= until);
                    if late || written.load(Ordering::Relaxed) >= options.games {
                        break;
                    }
                    let line = game(options.seed, number, options.nodes, &options.evaluation);
                    if let Some(line) = line {
                        written.fetch_add(1, Ordering::Relaxed);
                        let Ok(mut out) = out.lock() else { break };
                        if out.write_all(line.as_bytes()).is_err() {
                            break;
                        }
                    }
                }
            });
        }
    });
    let games = written.load(Ordering::Relaxed);
    let seconds = begun.elapsed().as_secs_f64();
    println!(
        "{games} games in {seconds:.0} s, {:.1} a second",
        games as f64 / seconds
    );
    Ok(())
}

//! The searching thread: jobs come in, what is found goes out.

use std::fmt::Write as _;
use std::io::Write;
use std::process;
use std::sync::atomic::Ordering;
use std::sync::mpsc::Receiver;
use std::thread;
use std::time::{Duration, Instant};

use shakmaty::{Move, Position as _};

use crate::eval::Evaluation;
use crate::mate::{MateSolver, Verdict};
use crate::position::Position;
use crate::search::{Answer, Limits, Line, Progress, Request, Score, Searcher, Techniques};

use super::clock::Plan;
use super::options::Chosen;
use super::signals::Signals;
use super::voice::Voice;

/// Exit status when the search breaks down, as of any Rust program that panics.
const BROKEN: i32 = 101;
/// Within this time of the beginning, lines wait for one another, so that a short search writes once.
const TOGETHER: Duration = Duration::from_millis(10);
/// Bytes from which on a table is not wiped but made anew: fresh memory is taken only as it is used.
const MADE_ANEW: usize = 256 << 20;
/// Nodes after the search for a mate found none, for a move to play all the same.
const NODES_WITHOUT_MATE: u64 = 100_000;

/// The move of the protocol that is none, where the game is over.
const NO_MOVE: &str = "bestmove 0000\n";

pub enum Job {
    /// Another size of the table, in bytes.
    Resize(usize),
    /// What was kept of earlier searches is of no use any more.
    Forget,
    /// Positions are valued otherwise.
    Evaluate(Chosen),
    Search(Box<Search>),
}

pub struct Search {
    pub received: Instant,
    pub position: Position,
    pub history: Vec<u64>,
    pub depth: Option<u32>,
    pub nodes: Option<u64>,
    /// A mate in so many moves.
    pub mate: Option<u8>,
    /// Times from `received` on; while pondering, from the hit on.
    pub plan: Option<Plan>,
    pub pondering: bool,
    pub lines: usize,
    pub threads: usize,
    pub without: Techniques,
    pub root_moves: Option<Vec<Move>>,
    /// Bytes of the table at first.
    pub table_bytes: usize,
}

/// A search that broke down cannot answer; a process that has ended can be noticed.
struct EndsTheProcess;

impl Drop for EndsTheProcess {
    fn drop(&mut self) {
        if thread::panicking() {
            process::exit(BROKEN);
        }
    }
}

/// Does jobs until no more can come.
pub fn work(jobs: &Receiver<Job>, voice: &Voice<impl Write>, signals: &Signals) {
    let _guard = EndsTheProcess;
    // Made at the first search, so that a size set before it costs nothing.
    let mut searcher: Option<Searcher<Evaluation>> = None;
    let mut evaluation = Evaluation::default();
    let mut solver = MateSolver::default();
    let mut remembers = false;
    let mut table_bytes = 0;
    for job in jobs {
        match job {
            Job::Resize(bytes) => {
                if let Some(searcher) = &mut searcher {
                    searcher.resize(bytes);
                    (remembers, table_bytes) = (false, bytes);
                }
            }
            Job::Forget => {
                solver = MateSolver::default();
                if let Some(searcher) = searcher.as_mut().filter(|_| remembers) {
                    if table_bytes < MADE_ANEW {
                        searcher.forget();
                    } else {
                        searcher.resize(table_bytes);
                    }
                    remembers = false;
                }
            }
            Job::Evaluate(chosen) => {
                evaluation = chosen.evaluation();
                if let Some(searcher) = &mut searcher {
                    searcher.evaluate_with(evaluation.clone());
                    remembers = false;
                }
            }
            Job::Search(search) => {
                let searcher = searcher.get_or_insert_with(|| {
                    table_bytes = search.table_bytes;
                    let mut searcher = Searcher::with(evaluation.clone());
                    searcher.resize(table_bytes);
                    searcher
                });
                remembers = true;
                let best = find(searcher, &mut solver, &search, voice, signals);
                if !signals.is_released() {
                    voice.say(""); // what was added so far
                    signals.wait_for_release();
                }
                signals.end();
                if !signals.is_quitting() {
                    voice.say(&best);
                }
            }
        }
        signals.done();
    }
}

/// Searches, tells, and gives the line with the best move.
fn find(
    searcher: &mut Searcher<Evaluation>,
    solver: &mut MateSolver,
    search: &Search,
    voice: &Voice<impl Write>,
    signals: &Signals,
) -> String {
    if search.position.legal_moves().is_empty() {
        let mated = search.position.chess().is_check();
        let score = if mated { "mate 0" } else { "cp 0" };
        voice.say(&format!("info depth 0 score {score}\n"));
        return NO_MOVE.to_owned();
    }
    if let Some(moves) = search.mate
        && let Some(best) = find_mate(solver, search, moves, voice, signals)
    {
        return best;
    }
    let request = Request {
        position: &search.position,
        history: &search.history,
        limits: limits(search),
        lines: search.lines,
        root_moves: search.root_moves.as_deref(),
        table_bytes: None,
        stop: Some(&signals.stop),
        threads: search.threads,
        without: search.without,
    };
    let mut told: Option<Line> = None;
    let answer = searcher.search_telling(&request, &mut |progress| {
        tell(search, progress, voice);
        told = progress.lines.first().cloned();
        let late = match (search.plan, signals.hit()) {
            (Some(plan), Some(hit)) => hit.elapsed() >= plan.soft,
            _ => false,
        };
        if late || voice.is_unheard() {
            signals.stop.store(true, Ordering::Relaxed);
        }
    });
    match answer {
        Ok(answer) => {
            // The last iteration, cut short, may have found a better move that nobody was told of yet.
            if answer.lines.first() != told.as_ref() {
                let progress = Progress {
                    depth: answer.depth.max(1),
                    nodes: answer.nodes,
                    elapsed: search.received.elapsed(),
                    lines: &answer.lines,
                    full: 0,
                };
                tell(search, &progress, voice);
            }
            best_of(search, &answer)
        }
        // Limits are checked before they come here; should one slip through, any legal move is an answer.
        Err(error) => {
            voice.remark(&format!("no search: {error}"));
            let mv = search.position.legal_moves()[0];
            format!("bestmove {}\n", search.position.uci(mv))
        }
    }
}

fn tell(search: &Search, progress: &Progress<'_>, voice: &Voice<impl Write>) {
    let text = info(search, progress);
    if search.received.elapsed() < TOGETHER {
        voice.add(&text);
    } else {
        voice.say(&text);
    }
}

fn left(search: &Search, time: Duration) -> Duration {
    time.saturating_sub(search.received.elapsed())
        .max(Duration::from_millis(1))
}

fn limits(search: &Search) -> Limits {
    // The clock of a search that ponders begins to run later.
    let plan = search.plan.filter(|_| !search.pondering);
    let unlimited = search.nodes.is_none() && search.depth.is_none() && search.plan.is_none();
    let after_mate = (search.mate.is_some() && unlimited).then_some(NODES_WITHOUT_MATE);
    Limits {
        nodes: search.nodes.or(after_mate),
        depth: search.depth,
        time: plan.map(|plan| left(search, plan.hard)),
        soft_time: plan.map(|plan| left(search, plan.soft)),
    }
}

/// The mate, if there is one within so many moves.
fn find_mate(
    solver: &mut MateSolver,
    search: &Search,
    moves: u8,
    voice: &Voice<impl Write>,
    signals: &Signals,
) -> Option<String> {
    if search.root_moves.is_some() {
        voice.remark("mate with searchmoves: searched without trying every move");
        return None;
    }
    let nodes = search.nodes.unwrap_or(u64::MAX);
    let answer = solver.solve(&search.position, moves, nodes, Some(&signals.stop));
    match answer.verdict {
        Verdict::Forced(line) => {
            let count = line.len().div_ceil(2);
            let spelt = spell(&search.position, &line);
            let time = search.received.elapsed().as_millis();
            voice.say(&format!(
                "info depth {} multipv 1 score mate {count} nodes {} time {time} pv {}\n",
                line.len(),
                answer.nodes,
                spelt.join(" ")
            ));
            Some(best_move(&spelt))
        }
        Verdict::None => {
            voice.remark(&format!("no mate in {moves}: every move was tried"));
            None
        }
        Verdict::Unknown => {
            voice.remark(&format!("whether there is a mate in {moves} is not known"));
            None
        }
    }
}

fn spell(from: &Position, moves: &[Move]) -> Vec<String> {
    let mut position = from.clone();
    moves
        .iter()
        .map(|mv| {
            let spelt = position.uci(*mv);
            position = position.play(*mv);
            spelt
        })
        .collect()
}

fn best_of(search: &Search, answer: &Answer) -> String {
    let line = answer.lines.first().map_or(&[][..], |line| &line.moves);
    best_move(&spell(&search.position, &line[..line.len().min(2)]))
}

fn best_move(line: &[String]) -> String {
    match line {
        [] => NO_MOVE.to_owned(),
        [best] => format!("bestmove {best}\n"),
        [best, reply, ..] => format!("bestmove {best} ponder {reply}\n"),
    }
}

fn info(search: &Search, progress: &Progress<'_>) -> String {
    let mut text = String::with_capacity(256 * progress.lines.len());
    let time = progress.elapsed.as_millis();
    let micros = progress.elapsed.as_micros().max(1);
    let speed = u128::from(progress.nodes) * 1_000_000 / micros;
    for (index, line) in progress.lines.iter().enumerate() {
        let _ = write!(
            text,
            "info depth {} multipv {} score {} nodes {} nps {speed} ",
            progress.depth,
            index + 1,
            score(line.score),
            progress.nodes,
        );
        if progress.full > 0 {
            let _ = write!(text, "hashfull {} ", progress.full);
        }
        let _ = write!(text, "time {time} pv");
        for mv in spell(&search.position, &line.moves) {
            text.push(' ');
            text.push_str(&mv);
        }
        text.push('\n');
    }
    text
}

fn score(score: Score) -> String {
    match score {
        Score::Centipawns(value) => format!("cp {value}"),
        Score::Mates(moves) => format!("mate {moves}"),
        Score::Mated(moves) => format!("mate -{moves}"),
    }
}

//! One running program: what it is asked, what it answers, how long it took.

use std::io::{BufRead, BufReader, Write};
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};
use std::sync::mpsc::{self, Receiver, RecvTimeoutError, Sender};
use std::thread;
use std::time::{Duration, Instant};

use super::contestant::Contestant;
use super::failure::MatchError;

/// A program must have started, or made itself ready, within this time.
const START: Duration = Duration::from_secs(30);
/// A program must have ended within this time of `quit`.
const END: Duration = Duration::from_secs(2);
/// MiB of a program's table when nothing is said: enough for short games, and quickly wiped between them.
const HASH: u32 = 16;
/// Centipawns that stand for a mate.
pub const MATE: i32 = 30_000;

/// A move with what the program thinks of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reply {
    /// In UCI spelling, as written.
    pub best: String,
    /// Centipawns for the mover, by the last line of information; a mate is [`MATE`].
    pub score: Option<i32>,
    /// From the question to the answer.
    pub took: Duration,
}

/// Why there is no reply.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoReply {
    /// The program has ended.
    Ended,
    /// It did not answer in time.
    Late,
}

enum Heard {
    Option(String),
    Known,
    Ready,
    Remark(String),
    Best(String, Option<i32>, Instant),
}

/// A program that has been set up.
pub struct Program {
    child: Child,
    input: Option<ChildStdin>,
    heard: Receiver<Heard>,
    broken: bool,
}

impl Program {
    /// Starts a program and sets its options. The remarks are what it said to them.
    pub fn start(
        contestant: &Contestant,
        name: &'static str,
    ) -> Result<(Program, Vec<String>), MatchError> {
        let failed = |why: String| MatchError::Start(name, contestant.command.clone(), why);
        let [program, arguments @ ..] = contestant.words.as_slice() else {
            return Err(failed("the command is empty".to_owned()));
        };
        let mut child = Command::new(program)
            .args(arguments)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .map_err(|error| failed(error.to_string()))?;
        let (telling, heard) = mpsc::channel();
        if let Some(output) = child.stdout.take() {
            thread::spawn(move || listen(output, &telling));
        }
        let mut program = Program {
            input: child.stdin.take(),
            child,
            heard,
            broken: false,
        };
        let remarks = program.set_up(contestant, name)?;
        Ok((program, remarks))
    }

    fn set_up(
        &mut self,
        contestant: &Contestant,
        name: &'static str,
    ) -> Result<Vec<String>, MatchError> {
        let silent = |no_reply| {
            MatchError::Handshake(
                name,
                match no_reply {
                    NoReply::Ended => "the program ended before it was set up".to_owned(),
                    NoReply::Late => format!("no answer to uci within {} s", START.as_secs()),
                },
            )
        };
        let mut known = Vec::new();
        let mut remarks = Vec::new();
        let deadline = Instant::now() + START;
        self.write("uci\n").map_err(silent)?;
        loop {
            match self.hear(deadline).map_err(silent)? {
                Heard::Option(option) => known.push(option.to_lowercase()),
                Heard::Known => break,
                _ => {}
            }
        }
        let mut settings = String::new();
        let given = |wanted: &str| {
            let mut names = contestant.options.iter().map(|(name, _)| name);
            names.any(|name| name.eq_ignore_ascii_case(wanted))
        };
        if known.iter().any(|option| option == "hash") && !given("Hash") {
            settings.push_str(&format!("setoption name Hash value {HASH}\n"));
        }
        for (option, value) in &contestant.options {
            if !known.contains(&option.to_lowercase()) {
                return Err(MatchError::Option(name, option.clone()));
            }
            settings.push_str(&format!("setoption name {option}"));
            if !value.is_empty() {
                settings.push_str(&format!(" value {value}"));
            }
            settings.push('\n');
        }
        settings.push_str("isready\n");
        self.write(&settings).map_err(silent)?;
        loop {
            match self.hear(deadline).map_err(silent)? {
                Heard::Remark(remark) => remarks.push(format!("{name}: {remark}")),
                Heard::Ready => return Ok(remarks),
                _ => {}
            }
        }
    }

    /// Begins another game: the program is told, and ready.
    pub fn begin(&mut self) -> Result<(), NoReply> {
        self.write("ucinewgame\nisready\n")?;
        let deadline = Instant::now() + START;
        while !matches!(self.hear(deadline)?, Heard::Ready) {}
        Ok(())
    }

    /// Asks for a move; `question` is whole lines, the last one `go`.
    pub fn ask(&mut self, question: &str, patience: Duration) -> Result<Reply, NoReply> {
        let asked = Instant::now();
        self.write(question)?;
        loop {
            if let Heard::Best(best, score, at) = self.hear(asked + patience)? {
                return Ok(Reply {
                    best,
                    score,
                    took: at.saturating_duration_since(asked),
                });
            }
        }
    }

    /// Whether it has failed to answer, and must be started anew.
    pub fn is_broken(&self) -> bool {
        self.broken
    }

    fn write(&mut self, lines: &str) -> Result<(), NoReply> {
        let written = self
            .input
            .as_mut()
            .map(|input| input.write_all(lines.as_bytes()));
        match written {
            Some(Ok(())) => Ok(()),
            _ => {
                self.broken = true;
                Err(NoReply::Ended)
            }
        }
    }

    fn hear(&mut self, deadline: Instant) -> Result<Heard, NoReply> {
        let left = deadline.saturating_duration_since(Instant::now());
        self.heard.recv_timeout(left).map_err(|error| {
            self.broken = true;
            match error {
                RecvTimeoutError::Timeout => NoReply::Late,
                RecvTimeoutError::Disconnected => NoReply::Ended,
            }
        })
    }
}

impl Drop for Program {
    fn drop(&mut self) {
        if !self.broken {
            let _ = self.write("quit\n");
            self.input = None;
            let deadline = Instant::now() + END;
            // The channel is closed when the program's output is.
            while self.hear(deadline).is_ok() {}
            let ended = deadline.saturating_duration_since(Instant::now()) > Duration::ZERO;
            if ended && self.child.wait().is_ok() {
                return;
            }
        }
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Reads what a program says until it ends. Only what is asked for is passed on, so that nobody is woken for less.
fn listen(output: ChildStdout, telling: &Sender<Heard>) {
    let mut output = BufReader::new(output);
    let mut line = Vec::new();
    let mut score = None;
    loop {
        line.clear();
        match output.read_until(b'\n', &mut line) {
            Ok(0) | Err(_) => return,
            Ok(_) => {}
        }
        let text = String::from_utf8_lossy(&line);
        let mut words = text.split_whitespace();
        let heard = match words.next() {
            Some("info") => match text.trim().strip_prefix("info string ") {
                Some(remark) => Heard::Remark(remark.to_owned()),
                None => {
                    score = score_in(words).or(score);
                    continue;
                }
            },
            Some("bestmove") => {
                let best = words.next().unwrap_or_default().to_owned();
                Heard::Best(best, score.take(), Instant::now())
            }
            Some("option") => Heard::Option(
                words
                    .skip_while(|word| *word != "name")
                    .skip(1)
                    .take_while(|word| *word != "type")
                    .collect::<Vec<_>>()
                    .join(" "),
            ),
            Some("uciok") => Heard::Known,
            Some("readyok") => Heard::Ready,
            _ => continue,
        };
        if telling.send(heard).is_err() {
            return;
        }
    }
}

/// The score of the best line in an `info`, for the mover.
fn score_in<'a>(mut words: impl Iterator<Item = &'a str>) -> Option<i32> {
    let mut score = None;
    while let Some(word) = words.next() {
        match word {
            "multipv" if words.next() != Some("1") => return None,
            "score" => {
                let kind = words.next();
                let value: i32 = words.next()?.parse().ok()?;
                score = Some(match kind {
                    Some("cp") => value.clamp(-MATE, MATE),
                    // The mover is mated already when it is nought.
                    Some("mate") if value > 0 => MATE,
                    Some("mate") => -MATE,
                    _ => return None,
                });
            }
            "pv" | "string" => break,
            _ => {}
        }
    }
    score
}

#[cfg(test)]
mod tests {
    use super::*;

    fn score(text: &str) -> Option<i32> {
        score_in(text.split_whitespace())
    }

    #[test]
    fn the_score_is_that_of_the_best_line() {
        assert_eq!(
            score("depth 3 multipv 1 score cp -31 nodes 9 pv e2e4"),
            Some(-31)
        );
        assert_eq!(score("depth 3 score mate -2 pv e2e4"), Some(-MATE));
        assert_eq!(score("depth 3 score mate 4 pv e2e4"), Some(MATE));
        assert_eq!(score("depth 3 multipv 2 score cp 5 pv e2e4"), None);
        assert_eq!(score("depth 3 currmove e2e4"), None);
    }
}

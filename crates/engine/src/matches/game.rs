//! One game between two programs.

use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use shakmaty::Color;

use crate::position::Position;

use super::Side;
use super::opening::Opening;
use super::program::{NoReply, Program, Reply};
use super::referee::{Ending, Referee};
use super::settings::{Pace, Settings};

/// A program that plays by nodes has at least this time for a move.
const PATIENCE: Duration = Duration::from_secs(60);
/// Nodes a second that any program reaches.
const SLOWEST: u64 = 10_000;
/// A program that has overstepped its time is waited for so much longer, so that it need not be started anew.
const AFTER_TIME: Duration = Duration::from_secs(2);

/// A game that has been played.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Played {
    /// Who had White.
    pub white: Side,
    /// The colour that won; `None` in a draw.
    pub winner: Option<Color>,
    /// How it ended.
    pub ending: Ending,
    /// Plies of the opening.
    pub random_plies: usize,
    /// All moves in UCI spelling, with White's score, which those of the opening have not.
    pub moves: Vec<(String, Option<i32>)>,
}

impl Played {
    /// Half points of `one`: 0, 1 or 2.
    pub fn half_points(&self) -> usize {
        match self.winner {
            None => 1,
            Some(colour) if self.side(colour) == Side::One => 2,
            Some(_) => 0,
        }
    }

    /// Who lost by a failure of its own, and which.
    pub fn failure(&self) -> Option<(Side, Ending)> {
        match (self.ending, self.winner) {
            (Ending::Crash | Ending::IllegalMove | Ending::Time, Some(winner)) => {
                Some((self.side(winner.other()), self.ending))
            }
            _ => None,
        }
    }

    fn side(&self, colour: Color) -> Side {
        match (colour, self.white) {
            (Color::White, side) => side,
            (Color::Black, Side::One) => Side::Other,
            (Color::Black, Side::Other) => Side::One,
        }
    }

    /// `RESULT PLIES_RANDOM MOVE/SCORE ...` and a line end; a score that was not given is `?`.
    pub fn line(&self) -> String {
        let result = match self.winner {
            None => "1/2-1/2",
            Some(Color::White) => "1-0",
            Some(Color::Black) => "0-1",
        };
        let mut line = format!("{result} {}", self.random_plies);
        for (uci, score) in &self.moves {
            line.push(' ');
            line.push_str(uci);
            match score {
                Some(value) => line.push_str(&format!("/{value}")),
                None => line.push_str("/?"),
            }
        }
        line.push('\n');
        line
    }
}

/// The time of both, White first.
struct Clocks {
    left: [Duration; 2],
    increment: Duration,
}

/// Plays a game; `None` when `enough` was set meanwhile.
pub fn play(
    settings: &Settings,
    white: Side,
    programs: [&mut Program; 2],
    opening: &Opening,
    enough: &AtomicBool,
) -> Option<Played> {
    let [one, other] = programs;
    let mut players = match white {
        Side::One => [one, other],
        Side::Other => [other, one],
    };
    let mut position = opening.position.clone();
    let mut history = opening.history.clone();
    let mut moves: Vec<_> = opening
        .moves
        .iter()
        .map(|uci| (uci.clone(), None))
        .collect();
    let mut told = format!("position startpos moves {}", opening.moves.join(" "));
    let mut referee = Referee::new(settings.agree);
    let mut clocks = match settings.pace {
        Pace::Clock { base, increment } => Some(Clocks {
            left: [base; 2],
            increment,
        }),
        Pace::Nodes(_) | Pace::MoveTime(_) => None,
    };
    for (player, colour) in players.iter_mut().zip([Color::White, Color::Black]) {
        if player.begin().is_err() {
            return Some(ended(
                white,
                Some(colour.other()),
                Ending::Crash,
                opening,
                moves,
            ));
        }
    }
    let (winner, ending) = loop {
        if let Some(end) = Referee::by_rules(&position, &history) {
            break end;
        }
        if enough.load(Ordering::Relaxed) {
            return None;
        }
        let mover = position.turn();
        let index = mover.fold_wb(0, 1);
        let lost = |ending| (Some(mover.other()), ending);
        let question = format!("{told}\n{}\n", go(settings.pace, clocks.as_ref()));
        let (allowed, patience) = time(settings, clocks.as_ref(), index);
        let reply = match players[index].ask(&question, patience) {
            Ok(reply) => reply,
            Err(NoReply::Late) if allowed.is_some() => break lost(Ending::Time),
            Err(NoReply::Late | NoReply::Ended) => break lost(Ending::Crash),
        };
        if allowed.is_some_and(|allowed| reply.took > allowed) {
            break lost(Ending::Time);
        }
        if let Some(clocks) = &mut clocks {
            clocks.left[index] = clocks.left[index].saturating_sub(reply.took) + clocks.increment;
        }
        let Some((uci, after)) = played(&position, &reply) else {
            break lost(Ending::IllegalMove);
        };
        let score = reply.score.map(|value| mover.fold_wb(value, -value));
        told.push(' ');
        told.push_str(&uci);
        moves.push((uci, score));
        history.push(position.key());
        position = after;
        // Mate on the board, and a draw by the rules, come before what the programs think.
        if let Some(end) = Referee::by_rules(&position, &history) {
            break end;
        }
        if let Some(end) = referee.by_score(score, moves.len()) {
            break end;
        }
    };
    Some(ended(white, winner, ending, opening, moves))
}

fn ended(
    white: Side,
    winner: Option<Color>,
    ending: Ending,
    opening: &Opening,
    moves: Vec<(String, Option<i32>)>,
) -> Played {
    Played {
        white,
        winner,
        ending,
        random_plies: opening.moves.len(),
        moves,
    }
}

fn played(position: &Position, reply: &Reply) -> Option<(String, Position)> {
    let mv = position.parse_uci(&reply.best).ok()?;
    Some((position.uci(mv), position.play(mv)))
}

fn go(pace: Pace, clocks: Option<&Clocks>) -> String {
    match (pace, clocks) {
        (Pace::Nodes(nodes), _) => format!("go nodes {nodes}"),
        (Pace::MoveTime(time), _) => format!("go movetime {}", time.as_millis()),
        (Pace::Clock { base, increment }, clocks) => {
            let [white, black] = clocks.map_or([base; 2], |clocks| clocks.left);
            let each = increment.as_millis();
            format!(
                "go wtime {} btime {} winc {each} binc {each}",
                white.as_millis(),
                black.as_millis()
            )
        }
    }
}

/// What a move may take before it is a loss, `None` without a clock; and how long it is waited for.
fn time(
    settings: &Settings,
    clocks: Option<&Clocks>,
    index: usize,
) -> (Option<Duration>, Duration) {
    match settings.pace {
        Pace::Nodes(nodes) => (None, PATIENCE + Duration::from_secs(nodes / SLOWEST)),
        Pace::MoveTime(each) => {
            let allowed = each + settings.grace;
            (Some(allowed), allowed + AFTER_TIME)
        }
        Pace::Clock { base, .. } => {
            let left = clocks.map_or(base, |clocks| clocks.left[index]);
            let allowed = left + settings.grace;
            (Some(allowed), allowed + AFTER_TIME)
        }
    }
}

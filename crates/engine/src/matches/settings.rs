//! How a match is played, and the words of the command line that say it.

use std::path::PathBuf;
use std::thread;
use std::time::Duration;

use super::Side;
use super::contestant::Contestant;
use super::failure::MatchError;
use super::sprt::Sprt;

/// How the command line is used.
pub const USAGE: &str = "\
usage: lineproof-engine match --one COMMAND --other COMMAND --pairs N (--nodes N | --movetime MS | --clock BASE+INC)
  --one COMMAND, --other COMMAND    the programs, as a shell would be told
  --one-option NAME=VALUE           set before the first game; may be repeated (also --other-option)
  --pairs N                         pairs of games, both from one opening
  --nodes N                         nodes a move
  --movetime MS                     milliseconds a move
  --clock BASE+INC                  seconds for the game and for each move, such as 10+0.1
  --sprt ELO0,ELO1[,ALPHA,BETA]     stop as soon as the pairs tell one from the other (0.05 each)
  --seed S                          another seed gives other openings (1)
  --grace MS                        by how much a program may overstep its time (20)
  --at-once K                       games at a time (as many as there are processor cores)
  --games FILE                      write the games, one a line
  --to-the-end                      play on when both programs agree how it will end";

/// Milliseconds by which a program may overstep its time before it is a loss.
const GRACE: Duration = Duration::from_millis(20);

/// What a program may spend.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pace {
    /// Nodes a move.
    Nodes(u64),
    /// Time a move.
    MoveTime(Duration),
    /// Time for the game, and more after each move.
    Clock {
        /// At the beginning.
        base: Duration,
        /// After each move.
        increment: Duration,
    },
}

/// How a match is played.
#[derive(Debug, Clone, PartialEq)]
pub struct Settings {
    /// The program whose gain is measured.
    pub one: Contestant,
    /// The program that it is measured against.
    pub other: Contestant,
    /// Pairs of games; at most, with a test.
    pub pairs: u64,
    /// What a program may spend.
    pub pace: Pace,
    /// The test that may end the match.
    pub sprt: Option<Sprt>,
    /// Chooses the openings.
    pub seed: u64,
    /// Games at a time.
    pub at_once: u64,
    /// Where the games are written.
    pub games: Option<PathBuf>,
    /// Whether the programs' agreement ends a game.
    pub agree: bool,
    /// By how much a program may overstep its time.
    pub grace: Duration,
}

impl Settings {
    /// The program of a side.
    #[must_use]
    pub fn contestant(&self, side: Side) -> &Contestant {
        match side {
            Side::One => &self.one,
            Side::Other => &self.other,
        }
    }

    /// Reads the words of a command line.
    ///
    /// # Errors
    /// [`MatchError::Setting`] that says what is wrong.
    pub fn from_words(words: impl IntoIterator<Item = String>) -> Result<Settings, MatchError> {
        let mut words = words.into_iter();
        let mut commands: [Option<String>; 2] = [None, None];
        let mut options = [Vec::new(), Vec::new()];
        let mut pairs = None;
        let mut pace = None;
        let mut sprt = None;
        let mut seed = 1;
        let mut at_once = None;
        let mut games = None;
        let mut agree = true;
        let mut grace = GRACE;
        while let Some(name) = words.next() {
            if name == "--to-the-end" {
                agree = false;
                continue;
            }
            let mut value = || {
                words
                    .next()
                    .ok_or_else(|| MatchError::Setting(format!("{name} needs a value")))
            };
            match name.as_str() {
                "--one" => commands[0] = Some(value()?),
                "--other" => commands[1] = Some(value()?),
                "--one-option" => options[0].push(value()?),
                "--other-option" => options[1].push(value()?),
                "--pairs" => pairs = Some(count(&name, &value()?)?),
                "--nodes" => set_pace(&mut pace, Pace::Nodes(count(&name, &value()?)?))?,
                "--movetime" => {
                    let time = Duration::from_millis(count(&name, &value()?)?);
                    set_pace(&mut pace, Pace::MoveTime(time))?;
                }
                "--clock" => set_pace(&mut pace, clock(&value()?)?)?,
                "--sprt" => sprt = Some(read_sprt(&value()?)?),
                "--seed" => seed = number(&name, &value()?)?,
                "--grace" => grace = Duration::from_millis(count(&name, &value()?)?),
                "--at-once" => at_once = Some(count(&name, &value()?)?),
                "--games" => games = Some(PathBuf::from(value()?)),
                _ => return Err(MatchError::Setting(format!("{name} is no option"))),
            }
        }
        let missing = |what: &str| MatchError::Setting(format!("{what} is missing"));
        let [one, other] = commands;
        let [one_options, other_options] = options;
        Ok(Settings {
            one: Contestant::new(&one.ok_or_else(|| missing("--one"))?, &one_options)?,
            other: Contestant::new(&other.ok_or_else(|| missing("--other"))?, &other_options)?,
            pairs: pairs.ok_or_else(|| missing("--pairs"))?,
            pace: pace.ok_or_else(|| missing("--nodes, --movetime or --clock"))?,
            sprt,
            seed,
            at_once: at_once.unwrap_or_else(cores),
            games,
            agree,
            grace,
        })
    }
}

fn cores() -> u64 {
    thread::available_parallelism().map_or(1, |count| count.get() as u64)
}

fn number(name: &str, text: &str) -> Result<u64, MatchError> {
    text.parse()
        .map_err(|_| MatchError::Setting(format!("{name} needs a whole number, not '{text}'")))
}

fn count(name: &str, text: &str) -> Result<u64, MatchError> {
    match number(name, text)? {
        0 => Err(MatchError::Setting(format!(
            "{name} must be greater than 0"
        ))),
        // Time beyond it cannot be reckoned with, and nobody waits for so many nodes or pairs.
        found if found > 1 << 40 => Err(MatchError::Setting(format!("{name} is too large"))),
        found => Ok(found),
    }
}

fn set_pace(pace: &mut Option<Pace>, wanted: Pace) -> Result<(), MatchError> {
    match pace.replace(wanted) {
        None => Ok(()),
        Some(_) => Err(MatchError::Setting(
            "give one of --nodes, --movetime and --clock".to_owned(),
        )),
    }
}

fn clock(text: &str) -> Result<Pace, MatchError> {
    let wrong = || {
        MatchError::Setting(format!(
            "--clock is written BASE+INC in seconds, such as 10+0.1, not '{text}'"
        ))
    };
    let (base, increment) = text.split_once('+').ok_or_else(wrong)?;
    let seconds = |part: &str| {
        let found: f64 = part.trim().parse().map_err(|_| wrong())?;
        // A day; more is a slip.
        if (0.0..=86_400.0).contains(&found) {
            Ok(Duration::from_secs_f64(found))
        } else {
            Err(wrong())
        }
    };
    let (base, increment) = (seconds(base)?, seconds(increment)?);
    if base.is_zero() {
        return Err(wrong());
    }
    Ok(Pace::Clock { base, increment })
}

fn read_sprt(text: &str) -> Result<Sprt, MatchError> {
    let wrong = || {
        MatchError::Setting(format!(
            "--sprt is written ELO0,ELO1 or ELO0,ELO1,ALPHA,BETA, not '{text}'"
        ))
    };
    let numbers: Vec<f64> = text
        .split(',')
        .map(|part| part.trim().parse().map_err(|_| wrong()))
        .collect::<Result<_, _>>()?;
    match numbers.as_slice() {
        [elo0, elo1] => Sprt::new(*elo0, *elo1, 0.05, 0.05),
        [elo0, elo1, alpha, beta] => Sprt::new(*elo0, *elo1, *alpha, *beta),
        _ => Err(wrong()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<Settings, String> {
        let words = text.split_whitespace().map(str::to_owned);
        Settings::from_words(words).map_err(|error| error.to_string())
    }

    #[test]
    fn what_is_not_said_has_a_default() {
        let settings = read("--one a --other b --pairs 3 --nodes 5000").unwrap();
        assert_eq!(settings.pace, Pace::Nodes(5000));
        assert_eq!(
            (settings.seed, settings.pairs, settings.agree),
            (1, 3, true)
        );
        assert!(settings.at_once >= 1);
        assert_eq!(settings.sprt, None);
        assert_eq!(settings.grace, Duration::from_millis(20));
    }

    #[test]
    fn a_clock_is_told_in_seconds() {
        let settings = read("--one a --other b --pairs 3 --clock 0.1+0.01").unwrap();
        assert_eq!(
            settings.pace,
            Pace::Clock {
                base: Duration::from_millis(100),
                increment: Duration::from_millis(10)
            }
        );
    }

    #[test]
    fn a_busy_machine_is_given_more_grace() {
        let settings = read("--one a --other b --pairs 3 --movetime 20 --grace 500").unwrap();
        assert_eq!(settings.grace, Duration::from_millis(500));
    }

    #[test]
    fn what_is_wrong_is_said() {
        for (words, message) in [
            ("--one a", "--other is missing"),
            ("--one a --other b --nodes 1", "--pairs is missing"),
            (
                "--one a --other b --pairs 1",
                "--nodes, --movetime or --clock is missing",
            ),
            ("--pairs", "--pairs needs a value"),
            ("--pairs 0", "--pairs must be greater than 0"),
            (
                "--nodes 1 --movetime 1",
                "give one of --nodes, --movetime and --clock",
            ),
            ("--seed x", "--seed needs a whole number, not 'x'"),
            (
                "--clock 10",
                "--clock is written BASE+INC in seconds, such as 10+0.1, not '10'",
            ),
            (
                "--clock nan+1",
                "--clock is written BASE+INC in seconds, such as 10+0.1, not 'nan+1'",
            ),
            (
                "--sprt 1",
                "--sprt is written ELO0,ELO1 or ELO0,ELO1,ALPHA,BETA, not '1'",
            ),
            ("--fast 1", "--fast is no option"),
        ] {
            assert_eq!(read(words).unwrap_err(), message, "{words}");
        }
    }
}

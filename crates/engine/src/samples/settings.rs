//! How positions are gathered, and the words of the command line that say it.

use std::fs;
use std::path::PathBuf;
use std::thread;
use std::time::Duration;

use super::failure::SampleError;
use super::openings::Openings;

/// How the command line is used.
pub const USAGE: &str = "\
usage: lineproof-engine gather --out FOLDER (--games N | --seconds T)
  --out FOLDER                      where the segments are written; run again, it goes on with those that are missing
  --games N                         games in all, whole segments (as many as --seconds allows)
  --seconds T                       begin no further segment after so long
  --nodes N                         nodes a move, on average (5000)
  --seed S                          another seed gives other games (1)
  --segment N                       games a segment (64)
  --openings FILE                   another list of openings
  --leaves K                        positions a move, too, at which its search asked the evaluation (0)
  --leaf-nodes N                    nodes of the search that gives each of them its score (150)
  --network FILE                    play with a network instead of the hand-made evaluation
  --listed PERCENT                  games that begin from the list; the others begin at random (50)
  --at-once K                       games at a time (as many as there are processor cores)
usage: lineproof-engine gather --check FOLDER";

/// Nodes a move where nothing is said.
const NODES: u64 = 5_000;
/// Nodes for a leaf where nothing is said.
const LEAF_NODES: u64 = 150;
/// Games a segment where nothing is said: some 150 KB.
const GAMES_A_SEGMENT: u64 = 64;
/// Games of a hundred from the list where nothing is said.
const LISTED: u64 = 50;
/// No machine plays more games at a time with profit.
const MOST_AT_ONCE: u64 = 1024;

/// What is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Order {
    /// To gather positions.
    Gather(Box<Settings>),
    /// To read those of a folder.
    Check(PathBuf),
}

/// How positions are gathered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Settings {
    /// Where they are written.
    pub out: PathBuf,
    /// Games in all; `None`: as time allows.
    pub games: Option<u64>,
    /// After so long no further segment is begun.
    pub time: Option<Duration>,
    /// Nodes a move, on average.
    pub nodes: u64,
    /// Leaves a move that are kept too, about.
    pub leaves: u64,
    /// Nodes for each of them, on average.
    pub leaf_nodes: u64,
    /// Plays and scores with this network; the hand-made evaluation if there is none.
    pub network: Option<PathBuf>,
    /// Chooses the games.
    pub seed: u64,
    /// Games a segment.
    pub games_a_segment: u64,
    /// The list of openings.
    pub openings: Openings,
    /// Games of a hundred that begin from the list.
    pub listed: u64,
    /// Games at a time.
    pub at_once: u64,
}

impl Settings {
    /// As when nothing more is said: half from our list, 5,000 nodes a move, seed 1, without end.
    ///
    /// # Errors
    /// As [`Openings::ours`].
    pub fn new(out: impl Into<PathBuf>) -> Result<Settings, SampleError> {
        Ok(Settings {
            out: out.into(),
            games: None,
            time: None,
            nodes: NODES,
            leaves: 0,
            leaf_nodes: LEAF_NODES,
            network: None,
            seed: 1,
            games_a_segment: GAMES_A_SEGMENT,
            openings: Openings::ours()?,
            listed: LISTED,
            at_once: thread::available_parallelism().map_or(1, |count| count.get() as u64),
        })
    }

    /// Segments in all, the last one filled up; `None`: as time allows.
    #[must_use]
    pub fn segments(&self) -> Option<u64> {
        self.games.map(|games| games.div_ceil(self.games_a_segment))
    }
}

impl Order {
    /// Reads the words of a command line.
    ///
    /// # Errors
    /// [`SampleError::Setting`] that says what is wrong; [`SampleError::Openings`] and [`SampleError::OpeningLine`] for
    /// the list.
    pub fn from_words(words: impl IntoIterator<Item = String>) -> Result<Order, SampleError> {
        let mut words = words.into_iter();
        let mut settings = Settings::new("")?;
        let mut out = None;
        let mut check = None;
        let mut other = None;
        while let Some(name) = words.next() {
            let value = words
                .next()
                .ok_or_else(|| setting(format!("{name} needs a value")))?;
            match name.as_str() {
                "--check" => {
                    check = Some(PathBuf::from(value));
                    continue;
                }
                "--out" => out = Some(PathBuf::from(value)),
                "--games" => settings.games = Some(count(&name, &value)?),
                "--seconds" => settings.time = Some(Duration::from_secs(count(&name, &value)?)),
                "--nodes" => settings.nodes = count(&name, &value)?,
                "--leaves" => settings.leaves = number(&name, &value)?,
                "--leaf-nodes" => settings.leaf_nodes = count(&name, &value)?,
                "--network" => settings.network = Some(PathBuf::from(value)),
                "--seed" => settings.seed = number(&name, &value)?,
                "--segment" => settings.games_a_segment = count(&name, &value)?,
                "--openings" => settings.openings = list(PathBuf::from(value))?,
                "--listed" => settings.listed = percent(&name, &value)?,
                "--at-once" => settings.at_once = threads(&name, &value)?,
                _ => return Err(setting(format!("{name} is no option"))),
            }
            other = Some(name);
        }
        match (check, other) {
            (Some(folder), None) => return Ok(Order::Check(folder)),
            (Some(_), Some(name)) => {
                return Err(setting(format!("{name} does not go with --check")));
            }
            (None, _) => {}
        }
        settings.out = out.ok_or_else(|| setting("--out is missing".to_owned()))?;
        if settings.games.is_none() && settings.time.is_none() {
            return Err(setting("--games or --seconds is missing".to_owned()));
        }
        Ok(Order::Gather(Box::new(settings)))
    }
}

fn setting(message: String) -> SampleError {
    SampleError::Setting(message)
}

fn list(path: PathBuf) -> Result<Openings, SampleError> {
    match fs::read_to_string(&path) {
        Ok(text) => Openings::from_text(&text),
        Err(error) => Err(SampleError::Openings(path, error.to_string())),
    }
}

fn number(name: &str, text: &str) -> Result<u64, SampleError> {
    text.parse()
        .map_err(|_| setting(format!("{name} needs a whole number, not '{text}'")))
}

fn count(name: &str, text: &str) -> Result<u64, SampleError> {
    match number(name, text)? {
        0 => Err(setting(format!("{name} must be greater than 0"))),
        // Nobody waits for so many, and sums of them stay numbers.
        found if found > 1 << 40 => Err(setting(format!("{name} is too large"))),
        found => Ok(found),
    }
}

fn threads(name: &str, text: &str) -> Result<u64, SampleError> {
    match count(name, text)? {
        found if found > MOST_AT_ONCE => Err(setting(format!("{name} is too large"))),
        found => Ok(found),
    }
}

fn percent(name: &str, text: &str) -> Result<u64, SampleError> {
    match number(name, text)? {
        found if found > 100 => Err(setting(format!("{name} is at most 100"))),
        found => Ok(found),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<Order, String> {
        let words = text.split_whitespace().map(str::to_owned);
        Order::from_words(words).map_err(|error| error.to_string())
    }

    #[test]
    fn what_is_not_said_has_a_default() {
        let Ok(Order::Gather(settings)) = read("--out a --games 100") else {
            panic!("it is no order to gather");
        };
        let numbers = (
            settings.nodes,
            settings.seed,
            settings.listed,
            settings.segments(),
        );
        assert_eq!(numbers, (5_000, 1, 50, Some(2)));
        assert!(settings.at_once >= 1);
        assert_eq!(settings.time, None);
    }

    #[test]
    fn a_folder_can_be_read_only() {
        assert_eq!(read("--check a"), Ok(Order::Check(PathBuf::from("a"))));
    }

    #[test]
    fn what_is_wrong_is_said() {
        for (words, message) in [
            ("", "--out is missing"),
            ("--games 5", "--out is missing"),
            ("--out a", "--games or --seconds is missing"),
            ("--out", "--out needs a value"),
            ("--games 0", "--games must be greater than 0"),
            ("--games 9999999999999", "--games is too large"),
            ("--nodes x", "--nodes needs a whole number, not 'x'"),
            ("--listed 101", "--listed is at most 100"),
            ("--check a --seed 1", "--seed does not go with --check"),
            ("--fast 1", "--fast is no option"),
            ("--at-once 1025", "--at-once is too large"),
        ] {
            assert_eq!(read(words).unwrap_err(), message, "{words}");
        }
        let found = read("--openings no/such/list").unwrap_err();
        assert!(
            found.starts_with("no/such/list cannot be read: "),
            "{found}"
        );
    }
}

//! The options, as they are listed and set.

use std::fs;
use std::sync::Arc;

use crate::eval::{Evaluation, Network};
use crate::position::quoted;
use crate::search::{Techniques, UnknownTechnique};

/// MiB of the table when nothing is said.
const HASH: usize = 64;
/// The most MiB, where the machine's memory is not known.
const HASH_MOST_UNKNOWN: usize = 4096;
/// The most MiB in any case.
const HASH_MOST: usize = 1 << 16;
/// The most lines.
const LINES_MOST: usize = 256;
/// The most threads.
const THREADS_MOST: usize = 256;
/// How the protocol writes a text that is empty.
const EMPTY: &str = "<empty>";
/// The value of `Network` that stands for the one that comes with the program.
const OURS: &str = "built-in";
/// The value of `Network` for the evaluation without one.
const HAND_MADE: &str = "hand-made";

/// What a new value asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Change {
    /// It counts from the next search on.
    Later,
    /// The table gets another size.
    Table,
    /// What was kept of earlier searches is forgotten.
    Forget,
    /// Another evaluation is used, and what the one before found is forgotten.
    Evaluation,
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Options {
    /// MiB of the table.
    pub hash: usize,
    hash_most: usize,
    /// Lines that are told.
    pub lines: usize,
    /// Threads that search.
    pub threads: usize,
    /// Techniques that the search does without.
    pub without: Techniques,
    /// What values positions.
    pub evaluation: Chosen,
}

/// What values positions.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub enum Chosen {
    /// The network that comes with the program.
    #[default]
    Ours,
    /// Counted terms.
    HandMade,
    /// A network from a file.
    Learned(Arc<Network>),
}

impl Chosen {
    pub fn evaluation(self) -> Evaluation {
        match self {
            Chosen::Ours => Evaluation::built_in(),
            Chosen::HandMade => Evaluation::hand_made(),
            Chosen::Learned(network) => Evaluation::learned(network),
        }
    }
}

impl Options {
    pub fn new() -> Self {
        let hash_most = memory().map_or(HASH_MOST_UNKNOWN, |bytes| {
            usize::try_from(bytes >> 21).unwrap_or(HASH_MOST)
        });
        let hash_most = hash_most.clamp(1, HASH_MOST);
        Options {
            hash: HASH.min(hash_most),
            hash_most,
            lines: 1,
            threads: 1,
            without: Techniques::NONE,
            evaluation: Chosen::default(),
        }
    }

    /// The table's size in bytes.
    pub fn table_bytes(&self) -> usize {
        self.hash << 20
    }

    /// The list as `uci` asks for it.
    pub fn list(&self) -> String {
        format!(
            "option name Hash type spin default {} min 1 max {}\n\
             option name Clear Hash type button\n\
             option name MultiPV type spin default 1 min 1 max {LINES_MOST}\n\
             option name Threads type spin default 1 min 1 max {THREADS_MOST}\n\
             option name Ponder type check default false\n\
             option name Without type string default {EMPTY}\n\
             option name Network type string default {OURS}\n",
            HASH.min(self.hash_most),
            self.hash_most,
        )
    }

    /// Sets an option; names are read without regard to case. What is to be said is added to `remarks`.
    pub fn set(
        &mut self,
        name: &str,
        value: Option<&str>,
        remarks: &mut Vec<String>,
    ) -> Result<Change, String> {
        match name.to_ascii_lowercase().as_str() {
            "hash" => {
                let wanted = whole("Hash", value, 1, self.hash_most, remarks)?;
                let change = if wanted == self.hash {
                    Change::Later
                } else {
                    Change::Table
                };
                self.hash = wanted;
                Ok(change)
            }
            "clear hash" => Ok(Change::Forget),
            "multipv" => {
                self.lines = whole("MultiPV", value, 1, LINES_MOST, remarks)?;
                Ok(Change::Later)
            }
            "threads" => {
                self.threads = whole("Threads", value, 1, THREADS_MOST, remarks)?;
                Ok(Change::Later)
            }
            "without" => {
                let names = value.filter(|names| *names != EMPTY).unwrap_or_default();
                self.without = names.parse().map_err(|error: UnknownTechnique| {
                    format!("Without: {error}; it is unchanged")
                })?;
                // What was found with another set of techniques would spoil the measurement.
                Ok(Change::Forget)
            }
            "network" => {
                self.evaluation = match value.unwrap_or_default() {
                    "" | EMPTY | OURS => Chosen::Ours,
                    HAND_MADE => Chosen::HandMade,
                    path => Chosen::Learned(read_network(path)?),
                };
                Ok(Change::Evaluation)
            }
            // It only tells that the other side may ask to ponder.
            "ponder" => match value.unwrap_or_default().to_ascii_lowercase().as_str() {
                "true" | "false" => Ok(Change::Later),
                other => Err(format!("Ponder is true or false, not {}", quoted(other))),
            },
            _ => Err(format!("there is no option {}", quoted(name))),
        }
    }
}

fn read_network(path: &str) -> Result<Arc<Network>, String> {
    let unchanged = |error: &dyn std::fmt::Display| {
        format!("Network: {}: {error}; it is unchanged", quoted(path))
    };
    let bytes = fs::read(path).map_err(|error| unchanged(&error))?;
    let network = Network::from_bytes(&bytes).map_err(|error| unchanged(&error))?;
    Ok(Arc::new(network))
}

/// A whole number between two bounds; beyond them, the bound, and a remark.
fn whole(
    name: &str,
    value: Option<&str>,
    least: usize,
    most: usize,
    remarks: &mut Vec<String>,
) -> Result<usize, String> {
    let text = value.unwrap_or_default();
    let digits = text.strip_prefix(['-', '+']).unwrap_or(text);
    if digits.is_empty() || !digits.bytes().all(|byte| byte.is_ascii_digit()) {
        return Err(format!(
            "{name} needs a whole number, not '{}'",
            quoted(text)
        ));
    }
    let wanted = if text.starts_with('-') {
        0
    } else {
        digits.parse().unwrap_or(usize::MAX)
    };
    let given = wanted.clamp(least, most);
    if given != wanted {
        remarks.push(format!("{name} is {least} to {most}; it is now {given}"));
    }
    Ok(given)
}

/// Bytes that this process may take, where Linux tells.
fn memory() -> Option<u64> {
    let machine = fs::read_to_string("/proc/meminfo").ok().and_then(|text| {
        let line = text.lines().find(|line| line.starts_with("MemTotal:"))?;
        let kib: u64 = line.split_whitespace().nth(1)?.parse().ok()?;
        Some(kib << 10)
    });
    let group = fs::read_to_string("/sys/fs/cgroup/memory.max")
        .ok()
        .and_then(|text| text.trim().parse().ok());
    match (machine, group) {
        (Some(machine), Some(group)) => Some(machine.min(group)),
        (machine, group) => machine.or(group),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set(
        options: &mut Options,
        name: &str,
        value: &str,
    ) -> (Result<Change, String>, Vec<String>) {
        let mut remarks = Vec::new();
        let change = options.set(name, Some(value), &mut remarks);
        (change, remarks)
    }

    #[test]
    fn names_are_read_without_regard_to_case() {
        let mut options = Options::new();
        assert_eq!(
            set(&mut options, "multipv", "3"),
            (Ok(Change::Later), vec![])
        );
        assert_eq!(options.lines, 3);
    }

    #[test]
    fn a_number_out_of_bounds_is_clamped_and_said() {
        let mut options = Options::new();
        for (value, given) in [
            ("0", 1),
            ("-3", 1),
            ("99999999999999999999999", options.hash_most),
        ] {
            let (change, remarks) = set(&mut options, "Hash", value);
            assert!(change.is_ok());
            assert_eq!(options.hash, given);
            assert_eq!(remarks.len(), 1, "{value}");
        }
    }

    #[test]
    fn what_is_no_number_changes_nothing() {
        let mut options = Options::new();
        let before = options.clone();
        for value in ["", "many", "-", "1.5", "١"] {
            assert!(set(&mut options, "Hash", value).0.is_err(), "{value}");
        }
        assert_eq!(options, before);
    }

    #[test]
    fn techniques_are_named_between_commas() {
        let mut options = Options::new();
        assert_eq!(
            set(&mut options, "Without", "null-move, killers").0,
            Ok(Change::Forget)
        );
        assert_eq!(options.without.to_string(), "null-move,killers");
        assert!(set(&mut options, "Without", "magic").0.is_err());
        assert_eq!(options.without.to_string(), "null-move,killers");
        assert_eq!(set(&mut options, "Without", EMPTY).0, Ok(Change::Forget));
        assert_eq!(options.without, Techniques::NONE);
    }

    #[test]
    fn a_network_that_cannot_be_read_changes_nothing() {
        let mut options = Options::new();
        for path in ["/no/such/file", file!()] {
            let said = set(&mut options, "Network", path).0.unwrap_err();
            assert!(said.ends_with("it is unchanged"), "{said}");
        }
        assert_eq!(options, Options::new());
    }

    #[test]
    fn an_evaluation_is_chosen_by_a_word_or_a_file() {
        let mut options = Options::new();
        let file = concat!(env!("CARGO_MANIFEST_DIR"), "/network/network.bin");
        for (value, chosen) in [
            (HAND_MADE, Chosen::HandMade),
            ("", Chosen::Ours),
            (file, Chosen::Learned(Arc::new(Network::ours().unwrap()))),
            (EMPTY, Chosen::Ours),
            (HAND_MADE, Chosen::HandMade),
            (OURS, Chosen::Ours),
        ] {
            let change = set(&mut options, "network", value).0;
            assert_eq!(change, Ok(Change::Evaluation));
            assert_eq!(options.evaluation, chosen, "{value}");
        }
    }

    #[test]
    fn the_table_is_made_anew_only_when_its_size_changes() {
        let mut options = Options::new();
        assert_eq!(set(&mut options, "Hash", "2").0, Ok(Change::Table));
        assert_eq!(set(&mut options, "Hash", "2").0, Ok(Change::Later));
        assert_eq!(options.table_bytes(), 2 << 20);
    }
}

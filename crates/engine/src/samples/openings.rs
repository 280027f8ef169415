//! How games begin: by random moves, or by a line of a list and a few random moves after it.
//!
//! The list is a text, one line an opening: moves in SAN without numbers, ` # `, a name. Lines that begin with `#`, and
//! empty ones, say nothing.

use crate::eval::Evaluate;
use crate::matches::opening::Opening;
use crate::random::Random;
use crate::search::{Score, Searcher};

use super::failure::SampleError;
use super::game::think;

/// The list that comes with the program.
const LIST: &str = include_str!("openings.txt");
/// Fewest and most plies of an opening of random moves alone.
const RANDOM_PLIES: (usize, usize) = (4, 10);
/// Most random plies after a line of the list.
const ADDED_PLIES: usize = 2;
/// A cheap look may find either side so far ahead, gambits and small slips included, but not farther: centipawns, nodes.
const LOPSIDED: (i32, u64) = (250, 1_000);

/// A line of the list.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Listed {
    name: String,
    opening: Opening,
}

/// Where games begin.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Openings {
    listed: Vec<Listed>,
    digest: u64,
}

impl Openings {
    /// The list that comes with the program.
    ///
    /// # Errors
    /// As [`Openings::from_text`]; a test sees to it that there are none.
    pub fn ours() -> Result<Openings, SampleError> {
        Openings::from_text(LIST)
    }

    /// Reads a list.
    ///
    /// # Errors
    /// [`SampleError::OpeningLine`] names the first line that is no opening; [`SampleError::Setting`] when there is none.
    pub fn from_text(text: &str) -> Result<Openings, SampleError> {
        let mut listed = Vec::new();
        for (number, line) in (1..).zip(text.lines().map(str::trim)) {
            if !line.is_empty() && !line.starts_with('#') {
                let found = read(line).map_err(|why| SampleError::OpeningLine(number, why))?;
                listed.push(found);
            }
        }
        if listed.is_empty() {
            return Err(SampleError::Setting("the list has no opening".to_owned()));
        }
        let moves = listed.iter().flat_map(|line| &line.opening.moves);
        let digest = digest(moves.flat_map(|uci| uci.bytes().chain([b' '])));
        Ok(Openings { listed, digest })
    }

    /// Number of lines and a digest of their moves, which tell one list from another.
    #[must_use]
    pub fn signature(&self) -> String {
        format!("{} lines, {:016x}", self.listed.len(), self.digest)
    }

    /// The names, in the order of the list.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.listed.iter().map(|line| line.name.as_str())
    }

    /// An opening that a cheap search finds not lopsided; from the list with a chance of so many in a hundred.
    pub(super) fn choose<E: Evaluate + Clone + Send>(
        &self,
        percent: u64,
        random: &mut Random,
        searcher: &mut Searcher<E>,
    ) -> Result<Opening, SampleError> {
        let from_list = (random.below(100) as u64) < percent;
        loop {
            let opening = if from_list {
                let mut opening = self.listed[random.below(self.listed.len())].opening.clone();
                let plies = random.below(ADDED_PLIES + 1);
                opening.play_at_random(plies, random);
                opening
            } else {
                let (fewest, most) = RANDOM_PLIES;
                let plies = fewest + random.below(most - fewest + 1);
                let mut opening = Opening::empty();
                opening.play_at_random(plies, random);
                opening
            };
            let (most, nodes) = LOPSIDED;
            let answer = think(searcher, &opening.position, &opening.history, nodes, 1)?;
            // A position without moves has no line, and so no score.
            let score = answer.lines.first().map(|line| line.score);
            if matches!(score, Some(Score::Centipawns(value)) if value.abs() <= most) {
                return Ok(opening);
            }
        }
    }
}

fn read(line: &str) -> Result<Listed, String> {
    let Some((moves, name)) = line.split_once(" # ") else {
        return Err("a name is missing: write it after ' # '".to_owned());
    };
    let mut opening = Opening::empty();
    for san in moves.split_whitespace() {
        let mv = opening.position.parse_san(san);
        opening.play(mv.map_err(|error| error.to_string())?);
    }
    if opening.position.legal_moves().is_empty() {
        return Err("the game is over".to_owned());
    }
    Ok(Listed {
        name: name.trim().to_owned(),
        opening,
    })
}

/// 64 bits that tell texts apart (Fowler, Noll and Vo's FNV-1a, RFC 9923; from memory).
pub(super) fn digest(bytes: impl IntoIterator<Item = u8>) -> u64 {
    bytes.into_iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn our_list_is_legal_named_and_without_a_double() {
        let ours = Openings::ours().unwrap();
        assert!(ours.listed.len() >= 300);
        assert!(ours.names().all(|name| name.len() > 3));
        let ends: BTreeSet<u64> = ours
            .listed
            .iter()
            .map(|l| l.opening.position.key())
            .collect();
        assert_eq!(ends.len(), ours.listed.len());
        let longest = ours.listed.iter().map(|l| l.opening.moves.len()).max();
        assert!(longest <= Some(24));
    }

    #[test]
    fn our_list_has_the_gambits() {
        let ours = Openings::ours().unwrap();
        for gambit in [
            "Vienna Gambit",
            "King's Gambit",
            "Danish",
            "Göring",
            "Scotch Gambit",
            "Evans",
            "4. Ng5",
            "Latvian",
            "Elephant",
            "Albin",
            "Budapest",
            "Benko Gambit",
            "Blackmar-Diemer",
            "Smith-Morra",
            "Wing Gambit",
            "Staunton",
            "From's",
            "Englund",
            "Icelandic",
            "Marshall",
            "Jaenisch",
            "Ponziani",
            "Halloween",
            "Cochrane",
            "Philidor Counter",
            "Traxler",
            "Fried Liver",
            "Max Lange",
        ] {
            assert!(ours.names().any(|name| name.contains(gambit)), "{gambit}");
        }
    }

    #[test]
    fn most_of_our_list_can_be_begun_from() {
        let ours = Openings::ours().unwrap();
        let mut searcher = Searcher::new();
        let level = ours.listed.iter().filter(|line| {
            let opening = &line.opening;
            let answer = think(
                &mut searcher,
                &opening.position,
                &opening.history,
                LOPSIDED.1,
                1,
            );
            matches!(answer.unwrap().lines[0].score, Score::Centipawns(v) if v.abs() <= LOPSIDED.0)
        });
        let level = level.count();
        assert!(level * 100 >= ours.listed.len() * 97, "only {level}");
    }

    #[test]
    fn a_line_that_is_no_opening_is_named() {
        for (text, message) in [
            (
                "\n# e4\ne4 e5",
                "line 3 of the openings: a name is missing: write it after ' # '",
            ),
            (
                "e4 e4 # x",
                "line 1 of the openings: e4 is not legal here; that piece can play a5, a6, b5, b6, c5, c6, d5, d6, e5, e6, f5, f6, g5, g6, h5, h6",
            ),
            (
                "f3 e5 g4 Qh4# # x",
                "line 1 of the openings: the game is over",
            ),
            ("# nothing", "the list has no opening"),
        ] {
            assert_eq!(Openings::from_text(text).unwrap_err().to_string(), message);
        }
    }

    #[test]
    fn another_list_has_another_signature() {
        let of = |text| Openings::from_text(text).unwrap().signature();
        assert_eq!(of("e4 # x"), of("# head\ne4 # another name"));
        assert_ne!(of("e4 # x"), of("d4 # x"));
        assert!(of("e4 # x").starts_with("1 lines, "));
    }

    #[test]
    fn the_chance_of_the_list_is_kept() {
        let only = Openings::from_text("e4 e5 Nc3 Nf6 f4 # Vienna Gambit").unwrap();
        let mut searcher = Searcher::new();
        let mut begun = |percent, number| {
            only.choose(percent, &mut Random::new(4, number), &mut searcher)
                .unwrap()
        };
        for number in 0..10 {
            assert!(
                begun(100, number)
                    .moves
                    .starts_with(&only.listed[0].opening.moves)
            );
            let opening = begun(0, number);
            assert!((RANDOM_PLIES.0..=RANDOM_PLIES.1).contains(&opening.moves.len()));
        }
    }
}

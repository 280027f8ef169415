//! The techniques of the search by name, so that each can be switched off and its worth measured.
//!
//! ```
//! use engine::search::{Technique, Techniques};
//! let without: Techniques = "null-move,razoring".parse().unwrap();
//! assert!(without.has(Technique::Razoring) && !without.has(Technique::Killers));
//! ```

use std::fmt;
use std::str::FromStr;

use super::margins::{Margin, Margins};

macro_rules! techniques {
    ($($(#[$doc:meta])* $variant:ident = $name:literal,)*) => {
        /// One technique. What it does stands where it is used; the literature is named here.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        #[repr(u8)]
        pub enum Technique {
            $($(#[$doc])* $variant,)*
        }

        impl Technique {
            /// All of them.
            pub const ALL: &'static [Technique] = &[$(Technique::$variant,)*];

            /// Its name in lists.
            #[must_use]
            pub fn name(self) -> &'static str {
                match self {
                    $(Technique::$variant => $name,)*
                }
            }
        }
    };
}

techniques! {
    /// A narrow first window at the root ("Aspiration Windows", Chess Programming Wiki).
    Aspiration = "aspiration",
    /// Null windows for all moves but the first (Marsland and Campbell, Parallel Search of Strongly Ordered Game Trees, 1982).
    NullWindow = "null-window",
    /// Values of other depths and windows end a node at once (Breuker, Memory versus Search in Games, 1998).
    TableCuts = "table-cuts",
    /// A pass that is good enough (Donninger, Null Move and Deep Search, 1993).
    NullMove = "null-move",
    /// A second look after a pass where zugzwang is likely (David-Tabibi and Netanyahu, Verified Null-Move Pruning, 2002).
    Verification = "verification",
    /// So far ahead that a shallow search will not lose it ("Reverse Futility Pruning", Chess Programming Wiki).
    ReverseFutility = "reverse-futility",
    /// So far behind that only captures can help (Birmingham and Kent, Tree-searching and Tree-pruning Techniques, 1977).
    Razoring = "razoring",
    /// Quiet moves that cannot raise a hopeless value (Heinz, Extended Futility Pruning, 1998).
    Futility = "futility",
    /// Quiet moves late in the order ("Futility Pruning: Move Count Based Pruning", Chess Programming Wiki).
    LateMoves = "late-moves",
    /// Moves that lose material in the exchange they begin ("Static Exchange Evaluation", Chess Programming Wiki).
    ExchangePruning = "exchange-pruning",
    /// Late moves searched less deeply ("Late Move Reductions", Chess Programming Wiki).
    Reductions = "reductions",
    /// No move to try first: a less deep look ("Internal Iterative Reductions", Chess Programming Wiki).
    InternalReduction = "internal-reduction",
    /// A move better than all others is searched deeper (Anantharaman, Campbell and Hsu, Singular Extensions, 1990).
    Singular = "singular",
    /// Several moves good enough after a singular test (Björnsson and Marsland, Multi-cut Alpha-Beta Pruning, 2001).
    MultiCut = "multi-cut",
    /// Checks are searched deeper ("Check Extensions", Chess Programming Wiki).
    CheckExtension = "check-extension",
    /// No mate worth looking for beyond one already found ("Mate Distance Pruning", Chess Programming Wiki).
    MateDistance = "mate-distance",
    /// Moves that cut at the same ply (Akl and Newborn, The Principal Continuation and the Killer Heuristic, 1977).
    Killers = "killers",
    /// The answer that refuted the last move before (Uiterwijk, The Countermove Heuristic, 1992).
    CounterMove = "counter-move",
    /// How often a quiet move cut (Schaeffer, The History Heuristic, 1989; by from and to, "Butterfly Boards", Chess Programming Wiki).
    Butterfly = "butterfly",
    /// The same after the moves before ("History Heuristic: Continuation History", Chess Programming Wiki).
    Continuation = "continuation",
    /// The same for captures ("History Heuristic: Capture History", Chess Programming Wiki).
    CaptureHistory = "capture-history",
    /// Static values corrected by what search found with the same pawns ("Static Evaluation Correction History", Chess Programming Wiki).
    Correction = "correction",
    /// Captures that lose material come last and are not looked at in quiescence ("Quiescence Search", Chess Programming Wiki).
    ExchangeOrder = "exchange-order",
    /// Captures whose gain does not reach the window ("Delta Pruning", Chess Programming Wiki).
    Delta = "delta",
    /// Checks at the first ply of quiescence ("Quiescence Search: Checks", Chess Programming Wiki).
    QuietChecks = "quiet-checks",
}

/// How a search differs from the standard one, for measuring: techniques that it does without, and other margins.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Techniques {
    off: u32,
    margins: Margins,
}

impl Techniques {
    /// No difference.
    pub const NONE: Techniques = Techniques {
        off: 0,
        margins: Margins::STANDARD,
    };

    /// Whether the search does without a technique.
    #[must_use]
    pub fn has(&self, technique: Technique) -> bool {
        self.off >> technique as u8 & 1 != 0
    }

    /// The same without one more.
    #[must_use]
    pub fn with(mut self, technique: Technique) -> Techniques {
        self.off |= 1 << technique as u8;
        self
    }

    /// The value of a margin.
    #[must_use]
    pub fn margin(&self, margin: Margin) -> i32 {
        self.margins.get(margin)
    }

    /// The same with another value of a margin.
    #[must_use]
    pub fn with_margin(mut self, margin: Margin, value: i32) -> Techniques {
        self.margins = self.margins.with(margin, value);
        self
    }
}

impl fmt::Display for Techniques {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let off = Technique::ALL
            .iter()
            .filter(|technique| self.has(**technique))
            .map(|technique| technique.name().to_owned());
        let margins = Margin::ALL
            .iter()
            .filter(|margin| self.margin(**margin) != margin.standard())
            .map(|margin| format!("{}={}", margin.name(), self.margin(*margin)));
        f.write_str(&off.chain(margins).collect::<Vec<_>>().join(","))
    }
}

/// A name that no technique and no margin has, or a margin without a number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnknownTechnique(pub String);

impl fmt::Display for UnknownTechnique {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let techniques = Technique::ALL.iter().map(|t| t.name().to_owned());
        let margins = Margin::ALL.iter().map(|m| format!("{}=NUMBER", m.name()));
        let names: Vec<String> = techniques.chain(margins).collect();
        write!(
            f,
            "{} is no technique of the search; there are {}",
            crate::position::quoted(&self.0),
            names.join(", ")
        )
    }
}

impl std::error::Error for UnknownTechnique {}

/// Values that a margin may have.
const BOUND: i32 = 1_000_000;

impl FromStr for Techniques {
    type Err = UnknownTechnique;

    /// Reads names between commas, a margin as `name=number`; an empty text is no difference.
    fn from_str(text: &str) -> Result<Techniques, UnknownTechnique> {
        let mut set = Techniques::NONE;
        for word in text.split(',').map(str::trim).filter(|n| !n.is_empty()) {
            let unknown = || UnknownTechnique(word.to_owned());
            set = if let Some((name, value)) = word.split_once('=') {
                let margin = Margin::ALL.iter().find(|margin| margin.name() == name);
                let value: i32 = value.parse().map_err(|_| unknown())?;
                set.with_margin(*margin.ok_or_else(unknown)?, value.clamp(-BOUND, BOUND))
            } else {
                let found = Technique::ALL.iter().find(|t| t.name() == word);
                set.with(*found.ok_or_else(unknown)?)
            };
        }
        Ok(set)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_technique_is_read_by_its_name() {
        for technique in Technique::ALL {
            let set: Techniques = technique.name().parse().unwrap();
            assert_eq!(set, Techniques::NONE.with(*technique));
            assert_eq!(set.to_string(), technique.name());
        }
    }

    #[test]
    fn every_margin_is_read_by_its_name() {
        for margin in Margin::ALL {
            let set: Techniques = format!("killers,{}=-7", margin.name()).parse().unwrap();
            assert_eq!(set.margin(*margin), -7);
            assert_eq!(set.to_string(), format!("killers,{}=-7", margin.name()));
        }
        assert!("delta-margin=".parse::<Techniques>().is_err());
        assert!("delta-margin=x".parse::<Techniques>().is_err());
    }

    #[test]
    fn an_unknown_name_is_said_with_the_known_ones() {
        let error = "null-move,magic".parse::<Techniques>().unwrap_err();
        assert!(error.to_string().starts_with("magic is no technique"));
    }
}

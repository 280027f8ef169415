//! Commands as they are written: one line, one command; unknown words are passed over as the protocol says.
//!
//! ```
//! use engine::uci::command::{Command, read};
//! let (command, remarks) = read("joho go depth 3");
//! assert!(matches!(command, Some(Command::Go(go)) if go.depth == Some(3)));
//! assert!(remarks.is_empty());
//! ```

use crate::position::quoted;

/// What the program at the other end wants.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Command {
    /// Who are you, and which options have you?
    Uci,
    /// Answer when all before is done.
    IsReady,
    /// What comes belongs to another game.
    NewGame,
    /// The position to search next.
    Position {
        /// The FEN; the initial position when `None`.
        fen: Option<String>,
        /// Moves from there, in UCI spelling.
        moves: Vec<String>,
    },
    /// Sets an option.
    SetOption {
        /// As written.
        name: String,
        /// As written; `None` without the word `value`.
        value: Option<String>,
    },
    /// Search.
    Go(Go),
    /// End the search, and say the best move.
    Stop,
    /// The move that was pondered on has been played.
    PonderHit,
    /// End.
    Quit,
    /// Words of the protocol that need no answer.
    Nothing,
}

/// How to search.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Go {
    /// Only these moves, in UCI spelling.
    pub search_moves: Vec<String>,
    /// Search in the opponent's time, the last move of the position being a guess.
    pub ponder: bool,
    /// Until told to stop.
    pub infinite: bool,
    /// White's and Black's time left, in milliseconds; may be negative.
    pub time: [Option<i64>; 2],
    /// White's and Black's increment a move, in milliseconds.
    pub increment: [Option<i64>; 2],
    /// Moves to the next time control.
    pub moves_to_go: Option<i64>,
    /// Plies.
    pub depth: Option<i64>,
    /// Nodes.
    pub nodes: Option<i64>,
    /// A mate in so many moves.
    pub mate: Option<i64>,
    /// Milliseconds.
    pub move_time: Option<i64>,
}

/// The command of a line, `None` when no word of it is known; and what is to be said about it.
#[must_use]
pub fn read(line: &str) -> (Option<Command>, Vec<String>) {
    let mut remarks = Vec::new();
    let mut rest = line;
    while let Some((word, after)) = first_word(rest) {
        let command = match word {
            "uci" => Command::Uci,
            "isready" => Command::IsReady,
            "ucinewgame" => Command::NewGame,
            "stop" => Command::Stop,
            "ponderhit" => Command::PonderHit,
            "quit" => Command::Quit,
            "debug" | "register" => Command::Nothing,
            "setoption" => match set_option(after) {
                Some(command) => command,
                None => {
                    remarks.push("setoption needs a name: setoption name N value V".to_owned());
                    Command::Nothing
                }
            },
            "position" => match position(after) {
                Some(command) => command,
                None => {
                    remarks.push("position needs startpos or fen; nothing is changed".to_owned());
                    Command::Nothing
                }
            },
            "go" => Command::Go(go(after, &mut remarks)),
            _ => {
                rest = after;
                continue;
            }
        };
        return (Some(command), remarks);
    }
    (None, remarks)
}

fn first_word(text: &str) -> Option<(&str, &str)> {
    let text = text.trim_start();
    if text.is_empty() {
        return None;
    }
    Some(text.split_once(char::is_whitespace).unwrap_or((text, "")))
}

/// `name` and `value` are words of the protocol, so that both texts may have spaces.
fn set_option(text: &str) -> Option<Command> {
    let mut name: Vec<&str> = Vec::new();
    let mut value: Option<Vec<&str>> = None;
    let mut named = false;
    for word in text.split_whitespace() {
        match (&mut value, word) {
            (None, "name") if !named => named = true,
            (None, "value") if named => value = Some(Vec::new()),
            (None, _) if named => name.push(word),
            (None, _) => {}
            (Some(words), _) => words.push(word),
        }
    }
    (!name.is_empty()).then(|| Command::SetOption {
        name: name.join(" "),
        value: value.map(|words| words.join(" ")),
    })
}

fn position(text: &str) -> Option<Command> {
    let mut words = text.split_whitespace();
    let fen = loop {
        match words.next()? {
            "startpos" => break None,
            "fen" => {
                let fen: Vec<&str> = words.by_ref().take_while(|word| *word != "moves").collect();
                let moves = words.map(str::to_owned).collect();
                return Some(Command::Position {
                    fen: Some(fen.join(" ")),
                    moves,
                });
            }
            _ => {}
        }
    };
    let moves = words
        .skip_while(|word| *word != "moves")
        .skip(1)
        .map(str::to_owned)
        .collect();
    Some(Command::Position { fen, moves })
}

fn go(text: &str, remarks: &mut Vec<String>) -> Go {
    let mut go = Go::default();
    let mut words = text.split_whitespace().peekable();
    while let Some(word) = words.next() {
        let place = match word {
            "infinite" => {
                go.infinite = true;
                continue;
            }
            "ponder" => {
                go.ponder = true;
                continue;
            }
            "searchmoves" => {
                while let Some(mv) = words.next_if(|word| is_spelt_as_move(word)) {
                    go.search_moves.push(mv.to_owned());
                }
                continue;
            }
            "wtime" => &mut go.time[0],
            "btime" => &mut go.time[1],
            "winc" => &mut go.increment[0],
            "binc" => &mut go.increment[1],
            "movestogo" => &mut go.moves_to_go,
            "depth" => &mut go.depth,
            "nodes" => &mut go.nodes,
            "mate" => &mut go.mate,
            "movetime" => &mut go.move_time,
            _ => continue,
        };
        match words.peek().and_then(|word| number(word)) {
            Some(value) => {
                *place = Some(value);
                words.next();
            }
            None => remarks.push(match words.peek() {
                Some(other) => format!(
                    "{word} needs a number, not {}; it is left out",
                    quoted(other)
                ),
                None => format!("{word} needs a number; it is left out"),
            }),
        }
    }
    go
}

/// A whole number; one that is too large or too small becomes the last that there is.
fn number(word: &str) -> Option<i64> {
    let digits = word.strip_prefix(['-', '+']).unwrap_or(word);
    if digits.is_empty() || !digits.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    Some(word.parse().unwrap_or(if word.starts_with('-') {
        i64::MIN
    } else {
        i64::MAX
    }))
}

/// Four letters and digits, and perhaps the piece of a promotion.
fn is_spelt_as_move(word: &str) -> bool {
    let bytes = word.as_bytes();
    let square = |at: usize| {
        matches!(bytes[at], b'a'..=b'h' | b'A'..=b'H') && matches!(bytes[at + 1], b'1'..=b'8')
    };
    word == "0000" || (matches!(bytes.len(), 4 | 5) && square(0) && square(2))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn command(line: &str) -> Command {
        read(line).0.unwrap()
    }

    fn go_of(line: &str) -> (Go, Vec<String>) {
        match read(line) {
            (Some(Command::Go(go)), remarks) => (go, remarks),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn an_unknown_word_before_a_command_is_passed_over() {
        assert_eq!(command("joho isready"), Command::IsReady);
        assert_eq!(read("joho").0, None);
        assert_eq!(read("   ").0, None);
    }

    #[test]
    fn an_option_has_spaces_in_its_name_and_value() {
        assert_eq!(
            command("setoption name Clear Hash"),
            Command::SetOption {
                name: "Clear Hash".to_owned(),
                value: None
            }
        );
        assert_eq!(
            command("setoption name Some File value C:\\my value\\x"),
            Command::SetOption {
                name: "Some File".to_owned(),
                value: Some("C:\\my value\\x".to_owned())
            }
        );
    }

    #[test]
    fn a_position_is_a_fen_or_the_start_and_moves() {
        assert_eq!(
            command("position startpos moves e2e4 e7e5"),
            Command::Position {
                fen: None,
                moves: vec!["e2e4".to_owned(), "e7e5".to_owned()]
            }
        );
        assert_eq!(
            command("position fen 4k3/8/8/8/8/8/8/4K3 w - - 0 1 moves e1e2"),
            Command::Position {
                fen: Some("4k3/8/8/8/8/8/8/4K3 w - - 0 1".to_owned()),
                moves: vec!["e1e2".to_owned()]
            }
        );
    }

    #[test]
    fn the_moves_to_search_end_at_the_next_word() {
        let (go, remarks) = go_of("go searchmoves e2e4 a7a8q depth 5");
        assert_eq!(go.search_moves, ["e2e4", "a7a8q"]);
        assert_eq!(go.depth, Some(5));
        assert!(remarks.is_empty());
    }

    #[test]
    fn a_number_that_overflows_is_the_largest() {
        let (go, _) = go_of("go nodes 99999999999999999999 wtime -99999999999999999999 btime -5");
        assert_eq!(go.nodes, Some(i64::MAX));
        assert_eq!(go.time, [Some(i64::MIN), Some(-5)]);
    }

    #[test]
    fn a_limit_without_a_number_is_left_out_and_said() {
        let (go, remarks) = go_of("go depth infinite nodes");
        assert_eq!((go.depth, go.nodes, go.infinite), (None, None, true));
        assert_eq!(
            remarks,
            [
                "depth needs a number, not infinite; it is left out",
                "nodes needs a number; it is left out"
            ]
        );
    }
}

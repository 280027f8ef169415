//! The second reading of a frame, through the lossless tokenizer: every spelling, and where each word stands.

use shakmaty::{Chess, Position as _};

use super::game::{Broken, Game, GameResult, Kind, Visit, decoded};
use crate::pgn::spelling::read_move;
use crate::pgn::token::{Kind as TokenKind, Token, Tokens, tag_pair};
use crate::pgn::tree::PgnErrorKind;
use crate::position::{FenError, Position, quoted};

/// Reads a frame of any games. `place`: line and column of a byte of it.
pub fn read_again(bytes: &[u8], place: impl Fn(usize) -> (usize, usize), visit: &mut impl Visit) {
    let text = decoded(bytes);
    let tokens = Tokens::read(&text);
    let latin = text.len() != bytes.len();
    let mut reader = Again {
        text: &text,
        visit,
        at: State::default(),
        place: |at| {
            place(if latin {
                text[..at].chars().count()
            } else {
                at
            })
        },
    };
    for token in tokens.iter() {
        reader.token(token);
    }
    reader.end();
}

#[derive(Default)]
struct State {
    game: Game,
    start: Option<Chess>,
    chess: Chess,
    /// Something of a game has been seen: tags, moves, a result.
    tags: bool,
    words: bool,
    moves: usize,
    open: Option<usize>,
    depth: usize,
    marker: Option<GameResult>,
    variant: bool,
    wrong: Option<Broken>,
}

struct Again<'a, V, P> {
    text: &'a str,
    visit: &'a mut V,
    at: State,
    place: P,
}

impl<V: Visit, P: Fn(usize) -> (usize, usize)> Again<'_, V, P> {
    fn token(&mut self, token: Token) {
        let spelled = &self.text[token.start as usize..token.end as usize];
        let at = token.start as usize;
        match token.kind {
            TokenKind::Tag => {
                if self.at.moves > 0 || self.at.marker.is_some() || self.at.words {
                    self.end();
                }
                self.tag(at, spelled);
            }
            TokenKind::UnclosedTag => {
                self.at.tags = true;
                self.wrong(at, &PgnErrorKind::UnclosedTag);
            }
            TokenKind::UnclosedComment => self.wrong(at, &PgnErrorKind::UnclosedComment),
            TokenKind::Comment | TokenKind::LineComment => self.at.words |= self.at.tags,
            TokenKind::Open => {
                self.at.depth += 1;
                if self.at.depth == 1 {
                    self.at.open = Some(at);
                }
            }
            TokenKind::Close if self.at.depth > 0 => self.at.depth -= 1,
            TokenKind::Close => self.wrong(at, &PgnErrorKind::StrayClose),
            _ if self.at.depth > 0 => {}
            TokenKind::Result => {
                if self.at.marker.is_some() {
                    self.end();
                }
                let result = spelled.replace(['–', '—'], "-").replace("½", "1/2");
                self.at.marker = Some(GameResult::read(result.as_bytes()).unwrap_or_default());
            }
            TokenKind::San => {
                if self.at.marker.is_some() {
                    self.end();
                }
                self.mv(at, spelled);
            }
            TokenKind::Null => self.wrong_because(at, "a pass is no move of a game".to_owned()),
            TokenKind::Unknown => {
                let kind = if spelled == "}" {
                    PgnErrorKind::StrayBrace
                } else {
                    PgnErrorKind::NotAMove(spelled.to_owned())
                };
                self.wrong(at, &kind);
            }
            _ => {}
        }
    }

    fn tag(&mut self, at: usize, spelled: &str) {
        let (name, value) = tag_pair(spelled);
        self.at.tags = true;
        if !self.at.game.tag(&name, &value) {
            return;
        }
        if name == "Variant" {
            let plain = ["", "?", "-", "standard", "normal", "chess", "from position"];
            self.at.variant |= !plain.contains(&value.trim().to_lowercase().as_str());
            return;
        }
        match Position::from_fen(&value) {
            Ok(start) if start == Position::start() => {}
            Ok(start) => {
                self.at.chess = start.chess().clone();
                self.at.start = Some(start.chess().clone());
            }
            Err(FenError::OtherRules(_)) => self.at.variant = true,
            Err(error) => self.wrong(at, &PgnErrorKind::WrongFen(error.to_string())),
        }
    }

    fn mv(&mut self, at: usize, spelled: &str) {
        if self.at.wrong.is_some() || self.at.variant {
            self.at.moves += 1;
            return;
        }
        if self.at.moves == 0 {
            let usual = self.at.start.is_none();
            self.visit.begin(&self.at.chess, usual);
        }
        match read_move(&Position::from_chess(self.at.chess.clone()), spelled) {
            Ok(mv) => {
                self.visit.play(&self.at.chess, mv);
                self.at.chess.play_unchecked(mv);
            }
            Err(error) => self.wrong(at, &PgnErrorKind::Move(error)),
        }
        self.at.moves += 1;
    }

    fn wrong(&mut self, at: usize, kind: &PgnErrorKind) {
        self.wrong_because(at, kind.to_string());
    }

    /// Only the first thing that is wrong with a game is told.
    fn wrong_because(&mut self, at: usize, reason: String) {
        if self.at.wrong.is_none() {
            let (line, column) = (self.place)(at);
            self.at.wrong = Some(Broken {
                line,
                column,
                reason: quoted_long(reason),
            });
        }
    }

    /// Ends the game at hand, if there is one.
    fn end(&mut self) {
        if self.at.depth > 0
            && let Some(at) = self.at.open
        {
            self.wrong(at, &PgnErrorKind::UnclosedVariation);
        }
        let mut state = std::mem::take(&mut self.at);
        if state.variant {
            self.visit.left_out(Kind::Variant);
        } else if let Some(broken) = state.wrong {
            self.visit.broken(broken);
        } else if state.moves > 0 {
            if state.game.result == GameResult::Unknown {
                state.game.result = state.marker.unwrap_or_default();
            }
            self.visit.game(&state.game, &state.chess);
        } else if state.tags || state.marker.is_some() {
            self.visit.left_out(Kind::Empty);
        }
    }
}

/// A reason no longer than a message can bear.
fn quoted_long(reason: String) -> String {
    const MOST: usize = 300;
    if reason.len() <= MOST {
        return reason;
    }
    reason
        .split("; ")
        .map(|part| quoted(part).into_owned())
        .collect::<Vec<_>>()
        .join("; ")
}

//! `Pgn`: a text's tokens and places, in columns; offsets are Python string offsets.

use engine::pgn::spelling::read_move;
use engine::pgn::token::{Kind, Tokens};
use engine::pgn::tree::{NONE, Tree};
use pyo3::exceptions::PyIndexError;
use pyo3::prelude::*;

use crate::board::{Board, move_error};

/// A comment: place, anchor, start and end of its inner text, opening, whether it runs to the line's end.
type CommentRow = (u32, u32, usize, usize, bool, bool);
/// A game: root place, (name, value) of its tags, start and end offset, offset of its result or None.
type GameRow = (u32, Vec<(String, String)>, usize, usize, Option<usize>);

fn some(index: u32) -> Option<u32> {
    (index != NONE).then_some(index)
}

/// A PGN text as read: tokens, games, places.
#[pyclass(frozen, module = "lineproof._engine")]
pub struct Pgn {
    tree: Tree,
    /// Byte offset to code point offset of token starts; empty for ASCII, where both are the same.
    points: Vec<u32>,
    length: usize,
}

/// Offset in code points of every token start and of the text's end; empty for ASCII.
fn points(text: &str, tokens: &Tokens) -> Vec<u32> {
    if text.is_ascii() {
        return Vec::new();
    }
    let mut at = 0;
    let mut found = Vec::with_capacity(tokens.len() + 1);
    for token in tokens.iter() {
        found.push(at);
        at += text[token.start as usize..token.end as usize]
            .chars()
            .count() as u32;
    }
    found.push(at);
    found
}

impl Pgn {
    fn place(&self, place: usize) -> PyResult<usize> {
        if place < self.tree.places() {
            Ok(place)
        } else {
            Err(PyIndexError::new_err(format!("there is no place {place}")))
        }
    }

    fn start(&self, token: usize) -> usize {
        match self.points.get(token) {
            Some(start) => *start as usize,
            None if token < self.tree.tokens().len() => {
                self.tree.tokens().get(token).start as usize
            }
            None => self.length,
        }
    }

    fn span(&self, token: u32) -> (usize, usize) {
        (self.start(token as usize), self.start(token as usize + 1))
    }

    /// Every error stands at a token's start.
    fn offset(&self, byte: u32) -> usize {
        let tokens = self.tree.tokens();
        let (mut low, mut high) = (0, tokens.len());
        while low < high {
            let middle = usize::midpoint(low, high);
            if tokens.get(middle).start < byte {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        self.start(low)
    }
}

#[pymethods]
impl Pgn {
    #[new]
    fn new(py: Python<'_>, text: &str) -> Self {
        py.detach(|| {
            let tree = Tree::read(text);
            let points = points(text, tree.tokens());
            Pgn {
                length: points.last().map_or(text.len(), |end| *end as usize),
                tree,
                points,
            }
        })
    }

    /// How many tokens.
    #[getter]
    fn tokens(&self) -> usize {
        self.tree.tokens().len()
    }

    /// Kind, start and end of a token.
    fn token(&self, index: usize) -> PyResult<(&'static str, usize, usize)> {
        if index >= self.tree.tokens().len() {
            return Err(PyIndexError::new_err(format!("there is no token {index}")));
        }
        let (start, end) = self.span(index as u32);
        Ok((self.tree.tokens().get(index).kind.name(), start, end))
    }

    /// The index of the token that holds an offset.
    fn token_at(&self, offset: usize) -> PyResult<usize> {
        let (mut low, mut high) = (0, self.tree.tokens().len());
        while low < high {
            let middle = usize::midpoint(low, high);
            if self.start(middle) <= offset {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        low.checked_sub(1)
            .filter(|_| offset < self.length)
            .ok_or_else(|| PyIndexError::new_err(format!("offset {offset} is outside the text")))
    }

    /// What is wrong, by offset: name, offset, message.
    fn errors(&self) -> Vec<(&'static str, usize, String)> {
        self.tree
            .errors()
            .iter()
            .map(|e| (e.kind.name(), self.offset(e.offset), e.kind.to_string()))
            .collect()
    }

    fn games(&self) -> Vec<GameRow> {
        self.tree
            .games()
            .iter()
            .map(|game| {
                let tags = game
                    .tags
                    .iter()
                    .map(|(_, name, value)| (name.clone(), value.clone()))
                    .collect();
                (
                    game.root,
                    tags,
                    self.start(game.first as usize),
                    self.start(game.end as usize),
                    some(game.result).map(|token| self.start(token as usize)),
                )
            })
            .collect()
    }

    /// How many places.
    #[getter]
    fn places(&self) -> usize {
        self.tree.places()
    }

    fn parent(&self, place: usize) -> PyResult<Option<u32>> {
        Ok(some(self.tree.parent(self.place(place)?)))
    }

    fn next(&self, place: usize) -> PyResult<Option<u32>> {
        Ok(some(self.tree.next(self.place(place)?)))
    }

    fn children(&self, place: usize) -> PyResult<Vec<u32>> {
        Ok(self.tree.children(self.place(place)?))
    }

    fn path(&self, place: usize) -> PyResult<Vec<u32>> {
        Ok(self.tree.path(self.place(place)?))
    }

    fn game(&self, place: usize) -> PyResult<u32> {
        Ok(self.tree.game(self.place(place)?))
    }

    fn ply(&self, place: usize) -> PyResult<u32> {
        Ok(self.tree.ply(self.place(place)?))
    }

    fn depth(&self, place: usize) -> PyResult<u32> {
        Ok(self.tree.depth(self.place(place)?))
    }

    fn key(&self, place: usize) -> PyResult<u64> {
        Ok(self.tree.key(self.place(place)?))
    }

    fn uci(&self, place: usize) -> PyResult<Option<String>> {
        Ok(self.tree.uci(self.place(place)?))
    }

    fn san(&self, place: usize) -> PyResult<Option<String>> {
        Ok(self.tree.san(self.place(place)?))
    }

    fn board(&self, place: usize) -> PyResult<Board> {
        Ok(Board {
            position: self.tree.position(self.place(place)?),
        })
    }

    /// Start and end of the move as written.
    fn written(&self, place: usize) -> PyResult<Option<(usize, usize)>> {
        Ok(some(self.tree.token(self.place(place)?)).map(|token| self.span(token)))
    }

    /// The token of the move.
    fn move_token(&self, place: usize) -> PyResult<Option<u32>> {
        Ok(some(self.tree.token(self.place(place)?)))
    }

    /// The last place whose move, or whose game, begins at or before an offset.
    fn place_at(&self, offset: usize) -> Option<usize> {
        let begin = |place: usize| match self.tree.token(place) {
            NONE => self.start(self.tree.games()[self.tree.game(place) as usize].first as usize),
            token => self.start(token as usize),
        };
        let (mut low, mut high) = (0, self.tree.places());
        while low < high {
            let middle = usize::midpoint(low, high);
            if begin(middle) <= offset {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        low.checked_sub(1)
    }

    /// Kind, start and end of the glyphs and text marks of a place.
    fn glyphs(&self, place: usize) -> PyResult<Vec<(&'static str, usize, usize)>> {
        self.tree
            .glyphs(self.place(place)?)
            .into_iter()
            .map(|token| self.token(token as usize))
            .collect()
    }

    /// Indices of the comments that speak of a place.
    fn comments_of(&self, place: usize) -> PyResult<Vec<u32>> {
        Ok(self.tree.comments_of(self.place(place)?))
    }

    /// How many comments.
    #[getter]
    fn comments(&self) -> usize {
        self.tree.comments().len()
    }

    fn comment(&self, index: usize) -> PyResult<CommentRow> {
        let comment = self
            .tree
            .comments()
            .get(index)
            .ok_or_else(|| PyIndexError::new_err(format!("there is no comment {index}")))?;
        let (start, end) = self.span(comment.token);
        let to_line_end = self.tree.tokens().get(comment.token as usize).kind == Kind::LineComment;
        Ok((
            comment.place,
            comment.anchor,
            start + 1,
            end - usize::from(!to_line_end),
            comment.opening,
            to_line_end,
        ))
    }

    fn with_key(&self, key: u64) -> Vec<u32> {
        self.tree.with_key(key).to_vec()
    }

    fn keys(&self) -> Vec<u64> {
        self.tree.keys()
    }

    /// The places where a line ends, in text order.
    fn leaves(&self) -> Vec<u32> {
        (0..self.tree.places())
            .filter(|place| self.tree.next(*place) == NONE)
            .map(|place| place as u32)
            .collect()
    }
}

/// The move of a text as real files spell it, in UCI spelling and in SAN; a null move is "0000", "--".
#[pyfunction]
pub fn read_san(board: &Board, text: &str) -> PyResult<(String, String)> {
    if matches!(text, "--" | "Z0" | "z0") {
        return match board.position.passed() {
            Some(_) => Ok(("0000".to_owned(), "--".to_owned())),
            None => Err(crate::board::IllegalMoveError::new_err(
                "a side in check cannot pass",
            )),
        };
    }
    let mv = read_move(&board.position, text).map_err(|e| move_error(&e))?;
    Ok((board.position.uci(mv), board.position.san(mv)))
}

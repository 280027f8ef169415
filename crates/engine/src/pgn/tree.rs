//! From tokens to places: every game a tree of positions, in columns, with legal replay.
//!
//! ```
//! use engine::pgn::tree::Tree;
//! let tree = Tree::read("1. e4 e5 (1... c5 {sharp}) 2. Nf3 *");
//! assert_eq!(tree.places(), 5); // the start and four moves
//! assert!(tree.errors().is_empty());
//! assert_eq!(tree.children(1), [2, 3]);
//! ```
//!
//! A place is a position on a spoken line: the start of a game, or what a move leads to. Places are numbered
//! in text order. Reading uses no recursion, so that variations may nest as deep as the text does.

use std::fmt;

use shakmaty::{Move, Role, Square};

use super::spelling::read_move;
use super::token::{Kind, Token, Tokens, tag_pair};
use crate::position::{FenError, MoveError, Position, quoted};

/// What is wrong with a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PgnErrorKind {
    /// A move cannot be played, or is none, or can mean two.
    Move(MoveError),
    /// A null move while in check.
    NullInCheck,
    /// A word stands among the moves.
    NotAMove(String),
    /// A brace comment never ends.
    UnclosedComment,
    /// `}` without `{`.
    StrayBrace,
    /// A variation never ends.
    UnclosedVariation,
    /// `)` without `(`.
    StrayClose,
    /// A variation before the move that it replaces.
    VariationBeforeMove,
    /// A tag pair's line ends before the tag does.
    UnclosedTag,
    /// The FEN tag is no position.
    WrongFen(String),
    /// The Variant tag names other rules.
    Variant(String),
    /// No tag, no move, no comment, no result.
    NoGame,
}

impl PgnErrorKind {
    /// A short name, used outside Rust.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            PgnErrorKind::Move(MoveError::Ambiguous { .. }) => "ambiguous move",
            PgnErrorKind::Move(MoveError::Illegal { .. }) | PgnErrorKind::NullInCheck => {
                "illegal move"
            }
            PgnErrorKind::Move(MoveError::Syntax(_)) | PgnErrorKind::NotAMove(_) => "not a move",
            PgnErrorKind::UnclosedComment => "unclosed comment",
            PgnErrorKind::StrayBrace => "stray brace",
            PgnErrorKind::UnclosedVariation => "unclosed variation",
            PgnErrorKind::StrayClose => "stray close",
            PgnErrorKind::VariationBeforeMove => "variation before move",
            PgnErrorKind::UnclosedTag => "unclosed tag",
            PgnErrorKind::WrongFen(_) => "wrong fen",
            PgnErrorKind::Variant(_) => "variant",
            PgnErrorKind::NoGame => "no game",
        }
    }
}

impl fmt::Display for PgnErrorKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PgnErrorKind::Move(error) => write!(f, "{error}"),
            PgnErrorKind::NullInCheck => write!(f, "a side in check cannot pass"),
            PgnErrorKind::NotAMove(word) => write!(f, "{} is not a move", quoted(word)),
            PgnErrorKind::UnclosedComment => write!(f, "this comment is never closed"),
            PgnErrorKind::StrayBrace => write!(f, "a comment ends here that never began"),
            PgnErrorKind::UnclosedVariation => write!(f, "this variation is never closed"),
            PgnErrorKind::StrayClose => write!(f, "a variation ends here that never began"),
            PgnErrorKind::VariationBeforeMove => {
                write!(f, "a variation begins before there is a move to replace")
            }
            PgnErrorKind::UnclosedTag => write!(f, "this tag is not closed on its line"),
            PgnErrorKind::WrongFen(reason) => write!(f, "the FEN is no legal position: {reason}"),
            PgnErrorKind::Variant(name) => {
                write!(f, "the game is played by other rules ({})", quoted(name))
            }
            PgnErrorKind::NoGame => write!(f, "this is not PGN: it holds no game"),
        }
    }
}

/// An error and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PgnError {
    /// What is wrong.
    pub kind: PgnErrorKind,
    /// Byte offset.
    pub offset: u32,
}

/// No place, no token, no game.
pub const NONE: u32 = u32::MAX;

/// A comment and the position that it speaks of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Comment {
    /// The place whose position it speaks of.
    pub place: u32,
    /// The place that it is written at: where it opens a variation, the variation's first move.
    pub anchor: u32,
    /// Its token.
    pub token: u32,
    /// Whether it opens a game or a variation.
    pub opening: bool,
}

/// A game of the text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Game {
    /// Tag pairs in text order: token, name, value.
    pub tags: Vec<(u32, String, String)>,
    /// Where the moves start.
    pub start: Position,
    /// The place before the first move.
    pub root: u32,
    /// First token of the game.
    pub first: u32,
    /// The token of its result, or [`NONE`].
    pub result: u32,
    /// One past its last token that is not white space.
    pub end: u32,
}

/// The places of a text, in columns.
#[derive(Debug, Clone, Default)]
pub struct Tree {
    tokens: Tokens,
    parent: Vec<u32>,
    next_sibling: Vec<u32>,
    first_child: Vec<u32>,
    game: Vec<u32>,
    token: Vec<u32>,
    mv: Vec<Packed>,
    key: Vec<u64>,
    ply: Vec<u32>,
    depth: Vec<u32>,
    glyphs: Vec<(u32, u32)>,
    comments: Vec<Comment>,
    comment_order: Vec<u32>,
    games: Vec<Game>,
    errors: Vec<PgnError>,
    key_order: Vec<u32>,
}

/// A move in 16 bits: from, to, promotion; castling as the king's two steps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Packed(u16);

const PASS: Packed = Packed(u16::MAX);
const ROOT: Packed = Packed(u16::MAX - 1);
const PROMOTIONS: [Role; 4] = [Role::Knight, Role::Bishop, Role::Rook, Role::Queen];

impl Packed {
    fn new(mv: Move) -> Self {
        let (from, to) = match mv {
            Move::Castle { king, rook } => {
                let file = if rook > king {
                    shakmaty::File::G
                } else {
                    shakmaty::File::C
                };
                (king, Square::from_coords(file, king.rank()))
            }
            _ => (mv.from().unwrap_or(mv.to()), mv.to()),
        };
        let promotion = mv
            .promotion()
            .and_then(|role| PROMOTIONS.iter().position(|p| *p == role))
            .map_or(0, |index| index as u16 + 1);
        Packed(u16::from(u8::from(from)) | u16::from(u8::from(to)) << 6 | promotion << 12)
    }

    fn squares(self) -> (Square, Square) {
        (
            Square::new(u32::from(self.0 & 63)),
            Square::new(u32::from(self.0 >> 6 & 63)),
        )
    }

    fn promotion(self) -> Option<Role> {
        match self.0 >> 12 {
            0 => None,
            index => PROMOTIONS.get(usize::from(index) - 1).copied(),
        }
    }

    fn find(self, position: &Position) -> Option<Move> {
        position
            .legal_moves()
            .iter()
            .copied()
            .find(|mv| Packed::new(*mv) == self)
    }
}

impl Tree {
    /// Reads a text. Errors are collected; after an illegal move the rest of its variation is left unread.
    #[must_use]
    pub fn read(text: &str) -> Self {
        let tree = Tree {
            tokens: Tokens::read(text),
            ..Tree::default()
        };
        Builder {
            text,
            tree,
            frames: Vec::new(),
            last_child: Vec::new(),
            words_after_tags: false,
            over: false,
            result_line: false,
        }
        .run()
    }

    /// The tokens of the text.
    #[must_use]
    pub fn tokens(&self) -> &Tokens {
        &self.tokens
    }

    /// How many places.
    #[must_use]
    pub fn places(&self) -> usize {
        self.parent.len()
    }

    /// The games, in text order.
    #[must_use]
    pub fn games(&self) -> &[Game] {
        &self.games
    }

    /// The errors, by offset.
    #[must_use]
    pub fn errors(&self) -> &[PgnError] {
        &self.errors
    }

    /// The comments, in text order.
    #[must_use]
    pub fn comments(&self) -> &[Comment] {
        &self.comments
    }

    /// The place before, or [`NONE`] for the start of a game.
    #[must_use]
    pub fn parent(&self, place: usize) -> u32 {
        self.parent[place]
    }

    /// The game that a place belongs to.
    #[must_use]
    pub fn game(&self, place: usize) -> u32 {
        self.game[place]
    }

    /// The token of the move that leads here, or [`NONE`] for the start of a game.
    #[must_use]
    pub fn token(&self, place: usize) -> u32 {
        self.token[place]
    }

    /// Half-moves from the start of the game.
    #[must_use]
    pub fn ply(&self, place: usize) -> u32 {
        self.ply[place]
    }

    /// How many variations a place is inside of; 0 for the main line.
    #[must_use]
    pub fn depth(&self, place: usize) -> u32 {
        self.depth[place]
    }

    /// The key of the position, as [`Position::key`].
    #[must_use]
    pub fn key(&self, place: usize) -> u64 {
        self.key[place]
    }

    /// The continuations, the one of the same line first, then the variations in text order.
    #[must_use]
    pub fn children(&self, place: usize) -> Vec<u32> {
        let mut found = Vec::new();
        let mut child = self.first_child[place];
        while child != NONE {
            found.push(child);
            child = self.next_sibling[child as usize];
        }
        found
    }

    /// The first continuation, or [`NONE`].
    #[must_use]
    pub fn next(&self, place: usize) -> u32 {
        self.first_child[place]
    }

    /// The move that leads here in UCI spelling (`0000` for a null move); `None` for the start of a game.
    #[must_use]
    pub fn uci(&self, place: usize) -> Option<String> {
        match self.mv[place] {
            ROOT => None,
            PASS => Some("0000".to_owned()),
            packed => {
                let (from, to) = packed.squares();
                let promotion = packed.promotion().map(Role::char);
                Some(
                    format!("{from}{to}")
                        .chars()
                        .chain(promotion)
                        .collect::<String>(),
                )
            }
        }
    }

    /// The move that leads here in correct SAN (`--` for a null move); `None` for the start of a game.
    #[must_use]
    pub fn san(&self, place: usize) -> Option<String> {
        match self.mv[place] {
            ROOT => None,
            PASS => Some("--".to_owned()),
            packed => {
                let before = self.position(self.parent[place] as usize);
                packed.find(&before).map(|mv| before.san(mv))
            }
        }
    }

    /// The places from the start of the game to this one.
    #[must_use]
    pub fn path(&self, place: usize) -> Vec<u32> {
        let mut path = vec![place as u32];
        let mut at = place;
        while self.parent[at] != NONE {
            path.push(self.parent[at]);
            at = self.parent[at] as usize;
        }
        path.reverse();
        path
    }

    /// The position of a place, by replay from the start of its game.
    #[must_use]
    pub fn position(&self, place: usize) -> Position {
        let mut position = self.games[self.game[place] as usize].start.clone();
        for step in self.path(place) {
            position = match self.mv[step as usize] {
                ROOT => continue,
                PASS => position.passed().unwrap_or(position),
                packed => match packed.find(&position) {
                    Some(mv) => position.play(mv),
                    None => position,
                },
            };
        }
        position
    }

    /// The tokens of the glyphs (NAGs and suffix marks) and text marks at a place, in text order.
    #[must_use]
    pub fn glyphs(&self, place: usize) -> Vec<u32> {
        let place = place as u32;
        let from = self.glyphs.partition_point(|g| g.0 < place);
        self.glyphs[from..]
            .iter()
            .take_while(|g| g.0 == place)
            .map(|g| g.1)
            .collect()
    }

    /// Indices of the comments that speak of a place, in text order.
    #[must_use]
    pub fn comments_of(&self, place: usize) -> Vec<u32> {
        let place = place as u32;
        let of = |index: u32| self.comments[index as usize].place;
        let from = self.comment_order.partition_point(|c| of(*c) < place);
        self.comment_order[from..]
            .iter()
            .copied()
            .take_while(|c| of(*c) == place)
            .collect()
    }

    /// The places with a key, in text order.
    #[must_use]
    pub fn with_key(&self, key: u64) -> &[u32] {
        let of = |place: u32| self.key[place as usize];
        let from = self.key_order.partition_point(|p| of(*p) < key);
        let rest = &self.key_order[from..];
        &rest[..rest.partition_point(|p| of(*p) == key)]
    }

    /// Every key once, ascending.
    #[must_use]
    pub fn keys(&self) -> Vec<u64> {
        let mut keys: Vec<u64> = self
            .key_order
            .iter()
            .map(|p| self.key[*p as usize])
            .collect();
        keys.dedup();
        keys
    }
}

/// One open line: the game's main line or a variation.
struct Frame {
    open: u32,
    at: u32,
    /// A variation's line starts here; it has a move only when `moved`.
    moved: bool,
    /// After an illegal move nothing more of the line is read.
    dead: bool,
    position: Position,
    before: Position,
    /// The first comment of this variation that waits for its first move.
    waiting_comment: usize,
    waiting_glyphs: Vec<u32>,
}

struct Builder<'a> {
    text: &'a str,
    tree: Tree,
    frames: Vec<Frame>,
    last_child: Vec<u32>,
    /// The game has a comment after its tags: another tag begins the next game.
    words_after_tags: bool,
    /// The game has its result.
    over: bool,
    /// No line has ended since the result.
    result_line: bool,
}

impl Builder<'_> {
    fn run(mut self) -> Tree {
        for index in 0..self.tree.tokens.len() {
            let token = self.tree.tokens.get(index);
            self.token(index as u32, token);
        }
        self.close_game();
        self.drop_empty_game();
        let mut tree = self.tree;
        if tree.games.is_empty() && tree.errors.is_empty() {
            tree.errors.push(PgnError {
                kind: PgnErrorKind::NoGame,
                offset: 0,
            });
        }
        tree.errors.sort_by_key(|e| e.offset);
        tree.glyphs.sort_by_key(|g| g.0);
        let mut order: Vec<u32> = (0..tree.comments.len() as u32).collect();
        order.sort_by_key(|c| tree.comments[*c as usize].place);
        tree.comment_order = order;
        let mut order: Vec<u32> = (0..tree.parent.len() as u32).collect();
        order.sort_by_key(|p| tree.key[*p as usize]);
        tree.key_order = order;
        tree
    }

    fn spelled(&self, token: Token) -> &str {
        &self.text[token.start as usize..token.end as usize]
    }

    fn error(&mut self, kind: PgnErrorKind, offset: u32) {
        self.tree.errors.push(PgnError { kind, offset });
    }

    fn token(&mut self, index: u32, token: Token) {
        match token.kind {
            Kind::NewLine => {
                self.result_line = false;
                return;
            }
            Kind::Space | Kind::Escape => return,
            Kind::Tag | Kind::UnclosedTag => {
                if self.in_moves() {
                    self.close_game();
                }
            }
            Kind::Comment | Kind::LineComment | Kind::UnclosedComment => {
                if self.over && !self.result_line {
                    self.close_game();
                }
            }
            Kind::Unknown | Kind::Mark | Kind::Suffix | Kind::Nag => {}
            _ => {
                if self.over {
                    self.close_game();
                }
            }
        }
        if self.frames.is_empty() && self.open_game(index, token) {
            return;
        }
        if let Some(game) = self.tree.games.last_mut() {
            game.end = index + 1;
        }
        match token.kind {
            Kind::Tag => self.tag(index, token),
            Kind::UnclosedTag => self.error(PgnErrorKind::UnclosedTag, token.start),
            Kind::Comment | Kind::LineComment => self.comment(index),
            Kind::UnclosedComment => self.error(PgnErrorKind::UnclosedComment, token.start),
            Kind::San | Kind::Null => self.mv(index, token),
            Kind::Suffix | Kind::Nag | Kind::Mark => self.glyph(index),
            Kind::Open => self.open(index, token),
            Kind::Close => self.close(token),
            Kind::Result => {
                if self.frames.len() == 1 {
                    self.over = true;
                    self.result_line = true;
                    if let Some(game) = self.tree.games.last_mut() {
                        game.result = index;
                    }
                }
            }
            Kind::Unknown => self.unknown(token),
            Kind::Space | Kind::NewLine | Kind::Escape | Kind::Number => {}
        }
    }

    /// Whether the game at hand is past its tags.
    fn in_moves(&self) -> bool {
        !self.frames.is_empty()
            && (self.over || self.frames.len() > 1 || self.frames[0].moved || self.words_after_tags)
    }

    /// Begins a game at a token; true when the token begins none.
    fn open_game(&mut self, index: u32, token: Token) -> bool {
        match token.kind {
            Kind::Unknown => {
                self.unknown(token);
                return true;
            }
            Kind::UnclosedTag => {}
            Kind::Mark | Kind::Suffix | Kind::Nag => return true,
            Kind::Close => {
                self.error(PgnErrorKind::StrayClose, token.start);
                return true;
            }
            _ => {}
        }
        let start = Position::start();
        let root = self.place(NONE, NONE, ROOT, &start);
        self.tree.games.push(Game {
            tags: Vec::new(),
            start: start.clone(),
            root,
            first: index,
            result: NONE,
            end: index + 1,
        });
        self.frames.push(Frame {
            open: NONE,
            at: root,
            moved: false,
            dead: false,
            before: start.clone(),
            position: start,
            waiting_comment: usize::MAX,
            waiting_glyphs: Vec::new(),
        });
        self.over = false;
        self.words_after_tags = false;
        false
    }

    fn close_game(&mut self) {
        if self.frames.len() > 1
            && let Some(open) = self.frames.last().map(|f| f.open)
        {
            let offset = self.tree.tokens.get(open as usize).start;
            self.error(PgnErrorKind::UnclosedVariation, offset);
        }
        self.frames.clear();
        self.over = false;
        self.result_line = false;
    }

    /// Comments after the last game are its own: they begin no game.
    fn drop_empty_game(&mut self) {
        let [.., before, last] = self.tree.games.as_slice() else {
            return;
        };
        let alone = last.root as usize + 1 == self.tree.parent.len();
        if !alone || !last.tags.is_empty() || last.result != NONE {
            return;
        }
        let (root, end) = (last.root, last.end);
        let mut place = before.root;
        while self.tree.first_child[place as usize] != NONE {
            place = self.tree.first_child[place as usize];
        }
        for comment in &mut self.tree.comments {
            if comment.place == root {
                comment.place = place;
                comment.anchor = place;
                comment.opening = false;
            }
        }
        for glyph in &mut self.tree.glyphs {
            if glyph.0 == root {
                glyph.0 = place;
            }
        }
        self.tree.parent.pop();
        self.tree.next_sibling.pop();
        self.tree.first_child.pop();
        self.tree.game.pop();
        self.tree.token.pop();
        self.tree.mv.pop();
        self.tree.key.pop();
        self.tree.ply.pop();
        self.tree.depth.pop();
        self.tree.games.pop();
        if let Some(game) = self.tree.games.last_mut() {
            game.end = end;
        }
    }

    fn place(&mut self, parent: u32, token: u32, mv: Packed, position: &Position) -> u32 {
        let tree = &mut self.tree;
        let index = tree.parent.len() as u32;
        let root = parent == NONE;
        tree.game
            .push((tree.games.len() - usize::from(!root)) as u32);
        tree.ply.push(if root {
            0
        } else {
            tree.ply[parent as usize] + 1
        });
        tree.depth
            .push((self.frames.len() as u32).saturating_sub(1));
        tree.parent.push(parent);
        tree.next_sibling.push(NONE);
        tree.first_child.push(NONE);
        tree.token.push(token);
        tree.mv.push(mv);
        tree.key.push(position.key());
        self.last_child.push(NONE);
        if !root {
            let first = tree.first_child[parent as usize];
            if first == NONE {
                tree.first_child[parent as usize] = index;
            } else {
                let last = self.last_child[parent as usize];
                tree.next_sibling[last as usize] = index;
            }
            self.last_child[parent as usize] = index;
        }
        index
    }

    fn tag(&mut self, index: u32, token: Token) {
        let (name, value) = tag_pair(self.spelled(token));
        let offset = token.start;
        match name.as_str() {
            "FEN" => match Position::from_fen(&value) {
                Ok(start) => self.start_from(start),
                Err(FenError::OtherRules(what)) => {
                    self.error(PgnErrorKind::Variant(format!("its FEN has {what}")), offset);
                }
                Err(error) => self.error(PgnErrorKind::WrongFen(error.to_string()), offset),
            },
            "Variant" => {
                let plain = ["", "?", "-", "standard", "normal", "chess", "from position"];
                if !plain.contains(&value.trim().to_lowercase().as_str()) {
                    self.error(PgnErrorKind::Variant(value.clone()), offset);
                }
            }
            _ => {}
        }
        if let Some(game) = self.tree.games.last_mut() {
            game.tags.push((index, name, value));
        }
    }

    fn start_from(&mut self, start: Position) {
        let Some(game) = self.tree.games.last_mut() else {
            return;
        };
        self.tree.key[game.root as usize] = start.key();
        if let Some(frame) = self.frames.first_mut() {
            frame.before = start.clone();
            frame.position = start.clone();
        }
        game.start = start;
    }

    fn comment(&mut self, token: u32) {
        let comment = self.tree.comments.len();
        self.words_after_tags |= self.tree.games.last().is_some_and(|g| !g.tags.is_empty());
        let inside = self.frames.len() > 1;
        let Some(frame) = self.frames.last_mut() else {
            return;
        };
        if inside && !frame.moved && frame.waiting_comment == usize::MAX {
            frame.waiting_comment = comment;
        }
        let (place, opening) = (frame.at, !frame.moved);
        self.tree.comments.push(Comment {
            place,
            anchor: place,
            token,
            opening,
        });
    }

    fn glyph(&mut self, token: u32) {
        let inside = self.frames.len() > 1;
        let Some(frame) = self.frames.last_mut() else {
            return;
        };
        if inside && !frame.moved {
            frame.waiting_glyphs.push(token);
        } else {
            self.tree.glyphs.push((frame.at, token));
        }
    }

    fn mv(&mut self, index: u32, token: Token) {
        let spelled = self.spelled(token);
        let Some(frame) = self.frames.last() else {
            return;
        };
        if frame.dead {
            return;
        }
        let played = if token.kind == Kind::Null {
            frame
                .position
                .passed()
                .map(|after| (PASS, after))
                .ok_or(PgnErrorKind::NullInCheck)
        } else {
            read_move(&frame.position, spelled)
                .map(|mv| (Packed::new(mv), frame.position.play(mv)))
                .map_err(PgnErrorKind::Move)
        };
        let parent = frame.at;
        match played {
            Ok((mv, after)) => {
                let place = self.place(parent, index, mv, &after);
                let Some(frame) = self.frames.last_mut() else {
                    return;
                };
                frame.before = std::mem::replace(&mut frame.position, after);
                frame.at = place;
                if !frame.moved {
                    frame.moved = true;
                    for token in frame.waiting_glyphs.drain(..) {
                        self.tree.glyphs.push((place, token));
                    }
                    if frame.waiting_comment != usize::MAX {
                        for comment in &mut self.tree.comments[frame.waiting_comment..] {
                            comment.anchor = place;
                        }
                    }
                }
            }
            Err(kind) => {
                self.error(kind, token.start);
                self.kill();
            }
        }
    }

    fn kill(&mut self) {
        if let Some(frame) = self.frames.last_mut() {
            frame.dead = true;
        }
    }

    fn unknown(&mut self, token: Token) {
        let spelled = self.spelled(token);
        let dead = self.frames.last().is_some_and(|f| f.dead);
        if dead {
            return;
        }
        if spelled == "}" {
            self.error(PgnErrorKind::StrayBrace, token.start);
        } else if spelled.contains(char::is_alphanumeric) {
            let kind = PgnErrorKind::NotAMove(spelled.to_owned());
            self.error(kind, token.start);
            self.kill();
        }
    }

    fn open(&mut self, index: u32, token: Token) {
        let Some(frame) = self.frames.last() else {
            return;
        };
        let (dead, moved) = (frame.dead, frame.moved);
        if !moved && !dead {
            self.error(PgnErrorKind::VariationBeforeMove, token.start);
        }
        let Some(frame) = self.frames.last() else {
            return;
        };
        let before = frame.before.clone();
        let at = if moved {
            self.tree.parent[frame.at as usize]
        } else {
            frame.at
        };
        self.frames.push(Frame {
            open: index,
            at,
            moved: false,
            dead: dead || !moved,
            position: before.clone(),
            before,
            waiting_comment: usize::MAX,
            waiting_glyphs: Vec::new(),
        });
    }

    fn close(&mut self, token: Token) {
        if self.frames.len() > 1 {
            self.frames.pop();
        } else {
            self.error(PgnErrorKind::StrayClose, token.start);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(text: &str) -> Vec<(&'static str, u32)> {
        Tree::read(text)
            .errors()
            .iter()
            .map(|e| (e.kind.name(), e.offset))
            .collect()
    }

    #[test]
    fn a_comment_that_opens_a_variation_speaks_of_the_place_before_it() {
        let tree = Tree::read("{a} 1. e4 {b} e5 ({c} 1... c5 {d}) {e} *");
        let found: Vec<(u32, u32, bool)> = tree
            .comments()
            .iter()
            .map(|c| (c.place, c.anchor, c.opening))
            .collect();
        assert_eq!(
            found,
            [
                (0, 0, true),
                (1, 1, false),
                (1, 3, true),
                (3, 3, false),
                (2, 2, false)
            ]
        );
    }

    #[test]
    fn transpositions_share_a_key() {
        let tree = Tree::read("1. Nf3 Nf6 2. Nc3 (2. Ng1 Ng8) *");
        assert_eq!(tree.with_key(tree.key(0)), [0, 5]);
    }

    #[test]
    fn games_part_at_results_and_at_tags() {
        let tree = Tree::read("1. e4 1-0 1. d4\n[Event \"x\"]\n1. c4 *[Event \"y\"] *");
        assert_eq!(tree.games().len(), 4);
        let tree = Tree::read("{file} [Event \"x\"] [Site \"y\"] {words} [Event \"z\"]");
        assert_eq!(tree.games().len(), 2);
        assert!(tree.errors().is_empty());
    }

    #[test]
    fn a_comment_after_the_last_result_belongs_to_that_game() {
        let tree = Tree::read("1. e4 * {a}\n{b}\n");
        assert_eq!(tree.games().len(), 1);
        assert_eq!(tree.comments_of(1).len(), 2);
    }

    #[test]
    fn errors_have_names_and_offsets() {
        assert_eq!(names("1. e4 e5 2. Ke3"), [("illegal move", 12)]);
        assert_eq!(names("1. e4 {x"), [("unclosed comment", 6)]);
        assert_eq!(names("1. e4 (1. d4"), [("unclosed variation", 6)]);
        assert_eq!(names("1. e4) e5"), [("stray close", 5)]);
        assert_eq!(names("(1. e4)"), [("variation before move", 0)]);
        assert_eq!(names("1. e4 ((1. d4))"), [("variation before move", 7)]);
        assert_eq!(names("[FEN \"x\"]"), [("wrong fen", 0)]);
        assert_eq!(names("[Variant \"Atomic\"] *"), [("variant", 0)]);
        assert_eq!(names("1. e4 foo"), [("not a move", 6)]);
        assert_eq!(names("{a} } 1. e4"), [("stray brace", 4)]);
        assert_eq!(names("[A \"b\n1. e4"), [("unclosed tag", 0)]);
        assert_eq!(names(" \n"), [("no game", 0)]);
        assert_eq!(
            names("1. e4 e5 2. Qh5 Ke7 3. Qxe5 --"),
            [("illegal move", 28)]
        );
    }

    #[test]
    fn after_an_illegal_move_the_line_before_it_goes_on() {
        let tree = Tree::read("1. e4 (1. Ke4 d5 (1... x)) e5 *");
        assert_eq!(tree.errors().len(), 1);
        assert_eq!(tree.places(), 3);
    }

    #[test]
    fn variations_nest_three_thousand_deep() {
        let mut text = String::from("1. e4 ");
        for level in 0..3000 {
            text.push_str(if level % 2 == 0 { "(1. d4 " } else { "(1. e4 " });
        }
        text.push_str(&")".repeat(3000));
        let tree = Tree::read(&text);
        assert!(tree.errors().is_empty());
        assert_eq!(tree.places(), 3002);
        assert_eq!(tree.depth(3001), 3000);
    }

    #[test]
    fn every_move_replays_to_its_key() {
        let tree = Tree::read(
            "1. e4 d5 2. e5 f5 3. exf6 e.p. (3. -- Nc6 4. O-O) Kf7 4. fxg7 Kg6 5. gxh8=N+",
        );
        assert_eq!(
            names("1. e4 d5 2. e5 f5 3. exf6 (3. -- Nc6 4. O-O) *"),
            [("illegal move", 40)]
        );
        for place in 0..tree.places() {
            assert_eq!(tree.position(place).key(), tree.key(place));
        }
        assert_eq!(tree.uci(tree.places() - 1).unwrap(), "g7h8n");
    }
}

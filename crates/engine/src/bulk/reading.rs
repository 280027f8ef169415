//! One frame, read; and a visitor that simply gathers.

use shakmaty::{Chess, Move};

use super::frames::{Chunk, Frame};
use super::game::{Broken, Game, Kind, Visit};
use super::second::read_again;
use super::text::read_clean;

/// Reads a frame of a chunk.
pub fn read_frame(chunk: &Chunk, frame: &Frame, visit: &mut impl Visit) {
    let text = &chunk.bytes[frame.start..frame.end];
    let wrong = |reason: &str| {
        let blank = text.iter().take_while(|b| b.is_ascii_whitespace()).count();
        let (line, column) = chunk.place(frame.start + blank);
        Broken {
            line,
            column,
            reason: reason.to_owned(),
        }
    };
    if text.iter().all(u8::is_ascii_whitespace) {
        return;
    }
    if frame.too_long {
        visit.broken(wrong("this is longer than any game"));
    } else if frame.cut_off {
        visit.broken(wrong("the file breaks off in this game"));
    } else if read_clean(text, visit).is_err() {
        read_again(text, |at| chunk.place(frame.start + at), visit);
    }
}

/// All that is in a stream, in memory: for small ones.
#[derive(Debug, Default)]
pub struct Reading {
    /// The games, each with its moves.
    pub games: Vec<Game>,
    /// Of each game: whether it begins at the initial position.
    pub usual: Vec<bool>,
    /// The games that cannot be read.
    pub broken: Vec<Broken>,
    /// Games that are not counted.
    pub left_out: Vec<Kind>,
    moves: Vec<Move>,
    begins_usual: bool,
}

impl Visit for Reading {
    fn begin(&mut self, _: &Chess, usual: bool) {
        self.moves.clear();
        self.begins_usual = usual;
    }

    fn play(&mut self, _: &Chess, mv: Move) {
        self.moves.push(mv);
    }

    fn game(&mut self, game: &Game, _: &Chess) {
        let moves = std::mem::take(&mut self.moves);
        self.games.push(Game {
            moves,
            ..game.clone()
        });
        self.usual.push(self.begins_usual);
    }

    fn broken(&mut self, broken: Broken) {
        self.broken.push(broken);
    }

    fn left_out(&mut self, kind: Kind) {
        self.left_out.push(kind);
    }
}

//! The bulk reader beside pgn-reader, a second reader by other hands, on the same text.
#![allow(clippy::unwrap_used)] // a test ends at the first thing that is not as it must be

use std::io::Read;
use std::ops::ControlFlow;

use engine::bulk::{Frames, GameResult, Reading, Wanted, invent, read_frame};
use pgn_reader::{RawTag, SanPlus, Visitor};
use shakmaty::{Chess, Move, Position as _};

#[derive(Default)]
struct Second {
    games: Vec<(String, Vec<Move>)>,
}

impl Visitor for Second {
    type Tags = String;
    type Movetext = (String, Chess, Vec<Move>);
    type Output = ();

    fn begin_tags(&mut self) -> ControlFlow<(), String> {
        ControlFlow::Continue(String::new())
    }

    fn tag(&mut self, tags: &mut String, name: &[u8], value: RawTag<'_>) -> ControlFlow<()> {
        if name == b"White" {
            *tags = value.decode_utf8_lossy().into_owned();
        }
        ControlFlow::Continue(())
    }

    fn begin_movetext(&mut self, tags: String) -> ControlFlow<(), Self::Movetext> {
        ControlFlow::Continue((tags, Chess::default(), Vec::new()))
    }

    fn san(&mut self, (_, chess, moves): &mut Self::Movetext, san: SanPlus) -> ControlFlow<()> {
        let mv = san.san.to_move(chess).unwrap();
        chess.play_unchecked(mv);
        moves.push(mv);
        ControlFlow::Continue(())
    }

    fn end_game(&mut self, (white, _, moves): Self::Movetext) {
        self.games.push((white, moves));
    }
}

/// Hands out a few bytes at a time, so that every word is cut somewhere.
struct Slow<'a>(&'a [u8], usize);

impl Read for Slow<'_> {
    fn read(&mut self, into: &mut [u8]) -> std::io::Result<usize> {
        let count = self.1.min(self.0.len()).min(into.len());
        into[..count].copy_from_slice(&self.0[..count]);
        self.0 = &self.0[count..];
        Ok(count)
    }
}

fn read(input: impl Read) -> Reading {
    let mut frames = Frames::new(input);
    let mut reading = Reading::default();
    while let Some(chunk) = frames.next_chunk().unwrap() {
        for frame in &chunk.frames {
            read_frame(&chunk, frame, &mut reading);
        }
    }
    reading
}

fn invented(shared: bool, clocks: bool) -> Vec<u8> {
    let wanted = Wanted {
        games: 400,
        first: 0,
        seed: 9,
        plies: 120,
        shared,
        clocks,
    };
    let mut text = Vec::new();
    invent(&wanted, &mut text).unwrap();
    text
}

#[test]
fn it_reads_what_pgn_reader_reads() {
    for (shared, clocks) in [(false, false), (true, true)] {
        let text = invented(shared, clocks);
        let mut second = Second::default();
        pgn_reader::Reader::new(&text[..])
            .visit_all_games(&mut second)
            .unwrap();
        let reading = read(&text[..]);
        assert_eq!(reading.broken, []);
        assert_eq!(second.games.len(), 400);
        assert_eq!(reading.games.len(), 400);
        for (ours, (white, moves)) in reading.games.iter().zip(&second.games) {
            assert_eq!((&ours.names[4], &ours.moves), (white, moves));
            assert_ne!(ours.result, GameResult::Unknown);
        }
    }
}

#[test]
fn it_does_not_matter_how_a_stream_is_cut() {
    let mut text = invented(true, true);
    let games: Vec<usize> = (0..60_000)
        .filter(|at| text[*at..].starts_with(b"[Event "))
        .collect();
    text.truncate(games[games.len() - 1]);
    text.extend_from_slice(
        b"\r\n1. e4 {a\r\n\r\n} e5\r\n\r\n2. Nf3 1-0\r\n\r\n1. d4 d5 2. Ke3 0-1\r\n",
    );
    let whole = read(&text[..]);
    assert_eq!(whole.games.len(), games.len());
    assert_eq!(whole.broken.len(), 1);
    for step in [1, 2, 7, 4096] {
        let slow = read(Slow(&text, step));
        assert_eq!(slow.games, whole.games);
        assert_eq!(slow.broken, whole.broken);
    }
}

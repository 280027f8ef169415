//! What must be true of every input, however wrong. The fuzz targets try inputs that they find themselves; the
//! engine's test `hostile` tries a few thousand by a fixed seed.

use std::cell::RefCell;

use engine::bulk::{Frames, Reading, read_frame};
use engine::collection::{Games, Seen};
use engine::pgn::token::Tokens;
use engine::pgn::tree::Tree;
use engine::position::Position;
use engine::search::{Limits, Request, Searcher};
use shakmaty::Position as _;

/// Nodes of a search from a position that was read: enough to evaluate, capture and cut.
const NODES: u64 = 100;

thread_local! {
    /// Made once: its memory is much larger than what so few nodes need. No search knows of another.
    static SEARCHER: RefCell<Searcher> = RefCell::new(Searcher::new());
}

/// Comes before each conversation.
const SMALL_TABLE: &[u8] = b"setoption name Hash value 1\n";

/// A text is no FEN, or it is a position that can be written, read, played and searched.
pub fn fen(data: &[u8]) {
    let text = String::from_utf8_lossy(data);
    let position = match Position::from_fen(&text) {
        Ok(position) => position,
        Err(error) => {
            assert!(!error.to_string().is_empty());
            return;
        }
    };
    let written = position.fen();
    let again = Position::from_fen(&written).map(|again| (again.key(), again.fen()));
    assert_eq!(
        again.as_ref(),
        Ok(&(position.key(), written)),
        "of {text:?}"
    );
    for mv in position.legal_moves() {
        let (uci, san) = (position.uci(mv), position.san(mv));
        assert_eq!(
            position.parse_uci(&uci).as_ref(),
            Ok(&mv),
            "{uci} after {text:?}"
        );
        assert_eq!(
            position.parse_san(&san).as_ref(),
            Ok(&mv),
            "{san} after {text:?}"
        );
        let after = position.play(mv);
        assert_ne!(after.turn(), position.turn());
    }
    let _ = position.passed();
    let _ = position.capture_gains_pawn();
    let request = Request::new(&position, Limits::nodes(NODES));
    let answer = SEARCHER.with_borrow_mut(|searcher| searcher.search(&request));
    let answer = answer.unwrap_or_else(|error| panic!("{error} after {text:?}"));
    assert_eq!(answer.lines.is_empty(), position.legal_moves().is_empty());
    for line in answer.lines {
        let mut at = position.clone();
        for mv in line.moves {
            assert!(at.chess().is_legal(mv), "{mv:?} in a line after {text:?}");
            at = at.play(mv);
        }
    }
}

/// Whatever is said, the conversation ends with the input, and every line of it is one of the protocol.
pub fn uci(data: &[u8]) {
    // More threads than a machine has are allowed, but they would take all the time of the test.
    if data
        .to_ascii_lowercase()
        .windows(7)
        .any(|word| word == b"threads")
    {
        return;
    }
    // Else most of the time would go into wiping the table.
    let input = [SMALL_TABLE, data].concat();
    let mut said = Vec::new();
    let ended = engine::uci::run(&input[..], &mut said);
    assert!(ended.is_ok(), "{ended:?}");
    let said = String::from_utf8(said).unwrap_or_else(|error| panic!("{error}"));
    assert!(said.is_empty() || said.ends_with('\n'));
    for line in said.lines() {
        let word = line.split(' ').next().unwrap_or_default();
        assert!(
            ["id", "option", "uciok", "readyok", "info", "bestmove"].contains(&word),
            "{line:?}"
        );
    }
}

/// Every character belongs to one token, and every place of the tree is a legal position.
pub fn pgn(data: &[u8]) {
    let text = String::from_utf8_lossy(data);
    let tokens = Tokens::read(&text);
    let mut at = 0;
    for token in tokens.iter() {
        let (start, end) = (token.start as usize, token.end as usize);
        assert_eq!(start, at, "a gap in {text:?}");
        assert!(end > start, "an empty token in {text:?}");
        assert!(text.is_char_boundary(end), "a character is cut in {text:?}");
        at = end;
    }
    assert_eq!(at, text.len(), "the end is not read of {text:?}");

    let tree = Tree::read(&text);
    for place in 0..tree.places() {
        let position = tree.position(place);
        assert_eq!(tree.key(place), position.key(), "place {place} of {text:?}");
        assert!(tree.with_key(position.key()).contains(&(place as u32)));
        for child in tree.children(place) {
            assert_eq!(tree.parent(child as usize), place as u32);
        }
        let path = tree.path(place);
        if let (Some(uci), [.., before, _]) = (tree.uci(place), path.as_slice()) {
            let before = tree.position(*before as usize);
            let played = before.parse_uci(&uci).map(|mv| before.play(mv).key());
            // A null move is written where no move is legal to be read back.
            assert!(
                uci == "0000" || played == Ok(position.key()),
                "{uci} in {text:?}"
            );
        }
        let _ = (tree.san(place), tree.glyphs(place), tree.comments_of(place));
    }
}

/// Hands out a few bytes at a time, so that words are cut.
struct Slow<'a>(&'a [u8], usize);

impl std::io::Read for Slow<'_> {
    fn read(&mut self, into: &mut [u8]) -> std::io::Result<usize> {
        let count = self.1.min(self.0.len()).min(into.len());
        into[..count].copy_from_slice(&self.0[..count]);
        self.0 = &self.0[count..];
        Ok(count)
    }
}

fn gathered(input: impl std::io::Read) -> Reading {
    let mut reading = Reading::default();
    let mut frames = Frames::new(input);
    while let Ok(Some(chunk)) = frames.next_chunk() {
        for frame in &chunk.frames {
            read_frame(&chunk, frame, &mut reading);
        }
    }
    reading
}

/// A stream of games ends in games of legal moves and in broken ones whose place is in it, however it is handed out.
pub fn bulk(data: &[u8]) {
    let reading = gathered(data);
    let text = String::from_utf8_lossy(data);
    for (game, usual) in reading.games.iter().zip(&reading.usual) {
        assert!(!game.moves.is_empty(), "a game of no moves in {text:?}");
        if !usual {
            continue;
        }
        let mut chess = shakmaty::Chess::default();
        for mv in &game.moves {
            assert!(chess.is_legal(*mv), "{mv:?} in {text:?}");
            chess.play_unchecked(*mv);
        }
    }
    let lines = 1 + data.iter().filter(|b| matches!(b, b'\n' | b'\r')).count();
    for broken in &reading.broken {
        assert!((1..=lines).contains(&broken.line), "{broken:?} in {text:?}");
        assert!(
            (1..=data.len() + 1).contains(&broken.column),
            "{broken:?} in {text:?}"
        );
        assert!(!broken.reason.is_empty(), "{broken:?} in {text:?}");
    }
    // few steps, for each costs time; which ones, hangs on the input
    let step = 1 + data.len() / 8 + data.len() % 13;
    let slow = gathered(Slow(data, step));
    assert_eq!(slow.games, reading.games, "{step} at a time of {text:?}");
    assert_eq!(slow.broken, reading.broken, "{step} at a time of {text:?}");
    assert_eq!(slow.left_out, reading.left_out, "{step} of {text:?}");
}

/// A block of stored games is damaged, or holds games of legal moves: one whose packing is sound, and one that is not
/// packed at all. Hashes are damaged, or known again.
pub fn segment(data: &[u8]) {
    let folder = std::env::temp_dir().join(format!("lineproof-segment-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap_or_else(|error| panic!("{error}"));
    let write = |name: &str, bytes: &[u8]| {
        std::fs::write(folder.join(name), bytes).unwrap_or_else(|error| panic!("{error}"));
    };
    let packed = zstd::bulk::compress(data, 1).unwrap_or_else(|error| panic!("{error}"));
    for bytes in [&packed[..], data] {
        write("games.bin", bytes);
        write(
            "games.idx",
            &[0, bytes.len() as u64].map(u64::to_le_bytes).concat(),
        );
        let mut games = Games::open(&folder).unwrap_or_else(|error| panic!("{error}"));
        if let Ok(stored) = games.block(0) {
            for game in stored {
                for (before, mv) in game.moves() {
                    assert!(before.is_legal(mv), "{mv:?}");
                }
                let _ = game.hash();
            }
        }
    }
    write("games.idx", data);
    if let Ok(mut games) = Games::open(&folder) {
        for number in 0..games.blocks().min(4) {
            let _ = games.block(number);
        }
        let _ = games.game(data.len() as u32);
    }
    write("seen.bin", data);
    if let Ok(mut seen) = Seen::open(&folder.join("seen.bin")) {
        let (whole, _) = data.as_chunks::<8>();
        for hash in whole {
            let known = seen.has(u64::from_le_bytes(*hash));
            assert!(matches!(known, Ok(true)), "a hash of the file is not known");
        }
    }
}

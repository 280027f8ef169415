//! What must be true of every input, however wrong. The fuzz targets try inputs that they find themselves; the
//! engine's test `hostile` tries a few thousand by a fixed seed.

use engine::pgn::token::Tokens;
use engine::pgn::tree::Tree;
use engine::position::Position;
use engine::search::{Limits, Request, Searcher};
use shakmaty::Position as _;

/// Nodes of a search from a position that was read: enough to evaluate, capture and cut.
const NODES: u64 = 100;

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
    let answer = Searcher::new().search(&request);
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

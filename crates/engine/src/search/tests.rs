//! What the search answers, checked against exhaustive solutions and the rules.

use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use shakmaty::{Chess, Position as _};

use super::{Answer, Limits, Request, RequestError, Score, Searcher};
use crate::eval::Evaluation;
use crate::position::Position;

fn position(fen: &str) -> Position {
    Position::from_fen(fen).unwrap()
}

fn search(fen: &str, nodes: u64) -> Answer {
    let position = position(fen);
    Searcher::new()
        .search(&Request::new(&position, Limits::nodes(nodes)))
        .unwrap()
}

/// Whether the mover mates within `n` moves, by trying everything.
fn mates_within(chess: &Chess, n: u32) -> bool {
    n > 0
        && chess.legal_moves().iter().any(|mv| {
            let mut after = chess.clone();
            after.play_unchecked(*mv);
            let replies = after.legal_moves();
            if replies.is_empty() {
                return after.is_check();
            }
            n > 1
                && replies.iter().all(|reply| {
                    let mut next = after.clone();
                    next.play_unchecked(*reply);
                    mates_within(&next, n - 1)
                })
        })
}

#[test]
fn short_mates_are_found_at_their_exact_distance() {
    // Composed for this test; the distance comes from the exhaustive search beside it.
    for fen in [
        "6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1",
        "7k/8/5K2/8/8/8/8/R7 w - - 0 1",
        "5r1k/6pp/7N/8/2Q5/8/8/6K1 w - - 0 1",
        "7k/P7/6K1/8/8/8/8/8 w - - 0 1",
        "k7/8/1K6/8/8/8/8/7R w - - 0 1",
        "7k/8/4K3/8/8/8/6Q1/8 w - - 0 1",
        "2k5/8/2K5/8/8/8/8/4R3 w - - 0 1",
        "4k3/R7/8/5K2/8/8/8/1R6 w - - 0 1",
        "8/8/8/8/8/2k5/7r/1K6 b - - 0 1",
    ] {
        let exact = (1..=4)
            .find(|n| mates_within(position(fen).chess(), *n))
            .unwrap_or_else(|| panic!("no mate in four: {fen}"));
        let answer = search(fen, 40_000);
        assert_eq!(answer.lines[0].score, Score::Mates(exact), "{fen}");
        let end = answer.lines[0]
            .moves
            .iter()
            .fold(position(fen), |at, mv| at.play(*mv));
        assert!(end.chess().is_checkmate(), "{fen}");
        assert_eq!(answer.lines[0].moves.len() as u32, 2 * exact - 1, "{fen}");
    }
}

#[test]
fn the_side_that_is_mated_knows_it() {
    // White has one move, then Black mates on the back rank.
    let answer = search("8/8/8/8/8/5k2/1r6/6K1 w - - 0 1", 20_000);
    assert!(matches!(answer.lines[0].score, Score::Mated(_)));
}

#[test]
fn a_position_in_which_every_way_ends_in_stalemate_is_worth_a_draw() {
    let answer = search("k7/P7/K7/8/8/8/8/8 w - - 0 1", 5_000);
    assert_eq!(answer.lines[0].score, Score::Centipawns(0));
}

#[test]
fn a_finished_game_has_no_lines() {
    for fen in [
        "7k/5KQ1/8/8/8/8/8/8 b - - 0 1",
        "7k/5K2/6Q1/8/8/8/8/8 b - - 0 1",
    ] {
        assert_eq!(search(fen, 100).lines, Vec::new());
    }
}

#[test]
fn a_perpetual_check_is_worth_a_draw() {
    // Black is a rook up and about to mate; the white queen checks on e8 and h5 for ever.
    let answer = search("6k1/6p1/8/7Q/8/1q6/r5PP/6K1 w - - 0 1", 100_000);
    assert_eq!(answer.lines[0].score, Score::Centipawns(0));
}

#[test]
fn a_pass_is_not_believed_in_zugzwang() {
    // "Null Move Test-Positions", Chess Programming Wiki: whoever is on move after the key move must spoil his position,
    // so that a pass looks too good (from memory). Valued by hand: a network knows no rook that is walled in for good.
    for (fen, key) in [
        ("8/8/p1p5/1p5p/1P5p/8/PPP2K1p/4R1rk w - - 0 1", "e1f1"),
        ("8/8/1p1r1k2/p1pPN1p1/P3KnP1/1P6/8/3R4 b - - 0 1", "f4d5"),
    ] {
        let start = position(fen);
        let request = Request::new(&start, Limits::nodes(600_000));
        let mut searcher = Searcher::with(Evaluation::hand_made());
        let answer = searcher.search(&request).unwrap();
        assert_eq!(start.uci(answer.lines[0].moves[0]), key, "{fen}");
    }
}

#[test]
fn the_game_before_counts_for_repetition() {
    let mut at = position("7k/8/8/8/8/8/1q6/7K w - - 0 1");
    let mut history = Vec::new();
    for san in ["Kg1", "Kg8", "Kh1", "Kh8", "Kg1", "Kg8", "Kh1"] {
        history.push(at.key());
        at = at.play_san(san).unwrap();
    }
    let back = [at.parse_san("Kh8").unwrap()];
    let request = Request {
        history: &history,
        root_moves: Some(&back),
        ..Request::new(&at, Limits::nodes(5_000))
    };
    let answer = Searcher::new().search(&request).unwrap();
    assert_eq!(answer.lines[0].score, Score::Centipawns(0));
    let fresh = Request {
        history: &[],
        ..request
    };
    let answer = Searcher::new().search(&fresh).unwrap();
    assert_ne!(answer.lines[0].score, Score::Centipawns(0));
}

#[test]
fn the_same_request_has_the_same_answer() {
    let fen = "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1";
    let at = position(fen);
    let request = Request {
        lines: 3,
        ..Request::new(&at, Limits::nodes(40_000))
    };
    let mut searcher = Searcher::new();
    let first = searcher.search(&request).unwrap();
    // Nothing of another search in between is left over.
    searcher
        .search(&Request::new(&Position::start(), Limits::nodes(10_000)))
        .unwrap();
    assert_eq!(searcher.search(&request).unwrap(), first);
    assert_eq!(Searcher::new().search(&request).unwrap(), first);
}

#[test]
fn a_search_cut_short_anywhere_has_a_true_score_and_legal_lines() {
    // Once, a new best move that was not yet searched to its end came out with no score at all
    // (position 252 of Win at Chess, Reinfeld).
    let fen = "1rb1r1k1/p1p2ppp/5n2/2pP4/5P2/2QB4/qNP3PP/2KRB2R b - - 0 1";
    let at = position(fen);
    for nodes in (200..30_000).step_by(331) {
        let request = Request {
            lines: 2,
            ..Request::new(&at, Limits::nodes(nodes))
        };
        let answer = Searcher::new().search(&request).unwrap();
        assert_eq!(answer.lines.len(), 2);
        for line in &answer.lines {
            match line.score {
                Score::Centipawns(value) => assert!(value.abs() < 3_000, "{nodes}: {value}"),
                Score::Mates(n) | Score::Mated(n) => assert!(n < 30, "{nodes}: mate in {n}"),
            }
            let mut here = at.clone();
            for mv in &line.moves {
                assert!(here.legal_moves().contains(mv));
                here = here.play(*mv);
            }
        }
    }
}

#[test]
fn a_stop_is_obeyed_at_once() {
    let stop = AtomicBool::new(false);
    let at = Position::start();
    let request = Request {
        stop: Some(&stop),
        ..Request::new(&at, Limits::default())
    };
    let answer = std::thread::scope(|scope| {
        let running = scope.spawn(|| Searcher::new().search(&request).unwrap());
        std::thread::sleep(Duration::from_millis(100));
        let begun = Instant::now();
        stop.store(true, Ordering::Relaxed);
        let answer = running.join().unwrap();
        assert!(begun.elapsed() < Duration::from_secs(1));
        answer
    });
    assert!(answer.stopped && !answer.lines.is_empty());
}

#[test]
fn requests_that_contradict_themselves_are_refused() {
    let at = Position::start();
    let good = Request::new(&at, Limits::nodes(100));
    let foreign = [Position::start()
        .play_san("e4")
        .unwrap()
        .parse_san("e5")
        .unwrap()];
    let cases = [
        (
            Request {
                limits: Limits::default(),
                ..good
            },
            RequestError::NoLimit,
        ),
        (
            Request {
                limits: Limits::nodes(0),
                ..good
            },
            RequestError::ZeroLimit,
        ),
        (
            Request {
                limits: Limits::depth(0),
                ..good
            },
            RequestError::ZeroLimit,
        ),
        (Request { lines: 0, ..good }, RequestError::NoLines),
        (
            Request {
                root_moves: Some(&[]),
                ..good
            },
            RequestError::RootMove,
        ),
        (
            Request {
                root_moves: Some(&foreign),
                ..good
            },
            RequestError::RootMove,
        ),
    ];
    for (request, error) in cases {
        assert_eq!(Searcher::new().search(&request), Err(error));
    }
}

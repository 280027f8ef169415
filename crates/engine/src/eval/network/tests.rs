//! The learned evaluation against the plainest way of reckoning it.

use std::sync::Arc;

use shakmaty::{Chess, Position as _};

use super::file::made::{Recipe, seal};
use super::file::{FEATURE_MOST, OUTPUT_MOST};
use super::kernels::available;
use super::{Evaluation, Learned, Network, NetworkError};
use crate::eval::{Evaluate, Tapered};
use crate::position::Position;
use crate::random::Random;
use crate::search::{Limits, Request, Score, Searcher};

fn network(recipe: Recipe, seed: u64) -> Arc<Network> {
    Arc::new(Network::from_bytes(&recipe.bytes(seed)).unwrap())
}

fn extreme(width: usize) -> Recipe {
    Recipe {
        width,
        most: [FEATURE_MOST, FEATURE_MOST, OUTPUT_MOST],
        // More would give nothing but the largest values.
        scale: 4,
        extreme: true,
        ..Recipe::SMALL
    }
}

/// Walks about in random games, back as well as forth, asking now and then; both ways of reckoning must agree.
fn walk(network: &Arc<Network>, seed: u64, steps: usize) {
    let mut random = Random::new(seed, 1);
    for kernels in available() {
        let mut learned = Learned::using(network.clone(), kernels);
        let mut line = vec![Chess::default()];
        learned.refresh(&line[0]);
        for _ in 0..steps {
            let here = line.last().unwrap().clone();
            let moves = here.legal_moves();
            if moves.is_empty() || line.len() > 150 || (line.len() > 1 && random.below(4) == 0) {
                for _ in 0..1 + random.below(line.len().min(8) - 1) {
                    learned.pop();
                    line.pop();
                }
            } else {
                let mv = moves[random.below(moves.len())];
                learned.push(&here, mv);
                let mut next = here;
                next.play_unchecked(mv);
                line.push(next);
            }
            if random.below(3) == 0 {
                let here = line.last().unwrap();
                assert_eq!(learned.raw(here), network.value(here), "{}", kernels.name);
                // A pass moves no man, and the search tells nobody of it.
                if let Ok(passed) = here.clone().swap_turn() {
                    assert_eq!(learned.raw(&passed), network.value(&passed));
                }
            }
        }
    }
}

#[test]
fn values_kept_move_by_move_equal_values_made_anew() {
    for (kings, width) in [(1, 64), (4, 32), (8, 96)] {
        let recipe = Recipe {
            kings,
            width,
            ..Recipe::SMALL
        };
        walk(&network(recipe, width as u64), 5, 1500);
    }
}

#[test]
fn the_largest_weights_are_reckoned_right() {
    walk(&network(extreme(1024), 1), 6, 200);
    walk(&network(extreme(64), 2), 7, 400);
}

#[test]
fn castling_en_passant_and_promotion_keep_the_sums() {
    let network = network(Recipe::SMALL, 4);
    let mut learned = Learned::new(network.clone());
    let mut position = Position::start();
    learned.refresh(position.chess());
    let line = "e4 Nc6 e5 d5 exd6 Bg4 Be2 Qd7 Nf3 O-O-O dxc7 Nf6 O-O Bxf3 cxd8=Q+ Nxd8";
    for san in line.split(' ') {
        let mv = position.parse_san(san).unwrap();
        learned.push(position.chess(), mv);
        position = position.play(mv);
        assert_eq!(
            learned.raw(position.chess()),
            network.value(position.chess()),
            "{san}"
        );
    }
}

/// The same position with the colours exchanged.
fn exchanged(chess: &Chess) -> Chess {
    let mut setup = chess.to_setup(shakmaty::EnPassantMode::Legal);
    setup.mirror();
    setup.position(shakmaty::CastlingMode::Standard).unwrap()
}

#[test]
fn both_colours_are_valued_alike() {
    let network = network(Recipe::SMALL, 9);
    let mut random = Random::new(8, 0);
    for _ in 0..20 {
        let mut chess = Chess::default();
        for _ in 0..80 {
            let moves = chess.legal_moves();
            if moves.is_empty() {
                break;
            }
            chess.play_unchecked(moves[random.below(moves.len())]);
            let mut learned = Learned::new(network.clone());
            learned.refresh(&chess);
            let value = learned.evaluate(&chess);
            let other = exchanged(&chess);
            learned.refresh(&other);
            assert_eq!(learned.evaluate(&other), value);
        }
    }
}

#[test]
fn drawn_endings_stay_drawn_and_bare_kings_are_driven_as_before() {
    let mut learned = Learned::new(network(Recipe::SMALL, 3));
    let mut of = |fen: &str| {
        let position = Position::from_fen(fen).unwrap();
        learned.refresh(position.chess());
        let mut tapered = Tapered::new();
        tapered.refresh(position.chess());
        (
            learned.evaluate(position.chess()),
            tapered.evaluate(position.chess()),
        )
    };
    // "Wrong Color Bishop", Chess Programming Wiki, with a black pawn so that the king is not bare.
    let wrong_corner = of("7k/8/8/p6P/8/3B4/8/4K3 w - - 0 1").0;
    assert!(wrong_corner <= 0, "{wrong_corner}");
    let (rook, by_hand) = of("8/8/8/3k4/8/3K4/8/R7 w - - 0 1");
    assert_eq!(rook, by_hand);
    assert_eq!(of("8/8/8/3k4/8/3K4/8/B7 b - - 0 1").0, 0);
}

#[test]
fn a_search_with_a_network_mates_a_bare_king() {
    let mut searcher = Searcher::with(Evaluation::learned(network(Recipe::SMALL, 3)));
    let position = Position::from_fen("8/8/8/8/8/2k5/7R/K7 b - - 0 1").unwrap();
    let mate = Position::from_fen("k7/8/1K6/8/8/8/7R/8 w - - 0 1").unwrap();
    let answer = searcher
        .search(&Request::new(&mate, Limits::nodes(2000)))
        .unwrap();
    assert_eq!(answer.lines[0].score, Score::Mates(1));
    let first = searcher
        .search(&Request::new(&position, Limits::nodes(3000)))
        .unwrap();
    let again = searcher
        .search(&Request::new(&position, Limits::nodes(3000)))
        .unwrap();
    assert_eq!(first.lines, again.lines);
}

#[test]
fn the_network_that_comes_with_the_program_is_whole_and_says_where_it_comes_from() {
    let network = Network::ours().unwrap();
    assert!(
        network
            .text()
            .starts_with("Learned from games of this engine")
    );
    let position = Position::from_fen("4k3/pppp4/8/8/8/8/PPPP4/3QK3 w - - 0 1").unwrap();
    assert!(network.value(position.chess()) > 500);
    let Evaluation::Learned(learned) = Evaluation::built_in() else {
        panic!("positions are valued by hand");
    };
    assert_eq!(learned.network().checksum(), network.checksum());
}

#[test]
fn every_kind_of_damage_has_its_name() {
    let recipe = Recipe {
        width: 32,
        kings: 1,
        outputs: 2,
        ..Recipe::SMALL
    };
    let good = recipe.bytes(1);
    assert_eq!(Network::from_bytes(&good).unwrap().text(), "made");
    let with = |at: usize, value: &[u8]| {
        let mut bytes = good.clone();
        bytes[at..at + value.len()].copy_from_slice(value);
        seal(&mut bytes);
        Network::from_bytes(&bytes).unwrap_err()
    };
    assert_eq!(with(0, b"l"), NetworkError::NoNetwork);
    assert_eq!(with(20, &[33]), NetworkError::Width(33));
    assert_eq!(with(20, &[0, 8]), NetworkError::Width(2048));
    assert_eq!(with(24, &[0]), NetworkError::KingBuckets);
    assert_eq!(with(45, &[1]), NetworkError::KingBuckets);
    assert_eq!(with(28, &[9]), NetworkError::OutputBuckets);
    assert_eq!(with(32, &[0, 0]), NetworkError::Scale(0));
    assert_eq!(with(120, &[0xFF]), NetworkError::Text);
    assert_eq!(with(good.len() - 1, &[0x7F]), NetworkError::Weight);
    assert_eq!(with(128, &[0xFF, 0x7F]), NetworkError::Weight);
    let length = |found| NetworkError::Length {
        expected: good.len(),
        found,
    };
    assert_eq!(
        Network::from_bytes(&good[..good.len() - 1]),
        Err(length(good.len() - 1))
    );
    assert_eq!(
        Network::from_bytes(&[&good[..], &[0]].concat()),
        Err(length(good.len() + 1))
    );
    let mut damaged = good.clone();
    damaged[5000] ^= 1;
    assert_eq!(Network::from_bytes(&damaged), Err(NetworkError::Damaged));
}

#[test]
fn no_bytes_break_the_reader() {
    let recipe = Recipe {
        width: 32,
        kings: 1,
        outputs: 1,
        ..Recipe::SMALL
    };
    let good = recipe.bytes(2);
    for length in (0..200).chain([good.len() / 2, good.len() - 1]) {
        assert!(Network::from_bytes(&good[..length]).is_err());
    }
    let mut random = Random::new(4, 0);
    for _ in 0..300 {
        let mut bytes = good.clone();
        for _ in 0..1 + random.below(4) {
            let at = random.below(200);
            bytes[at] = random.next() as u8;
        }
        seal(&mut bytes);
        if let Ok(network) = Network::from_bytes(&bytes) {
            let mut learned = Learned::new(Arc::new(network));
            let chess = Chess::default();
            learned.refresh(&chess);
            learned.evaluate(&chess);
        }
    }
}

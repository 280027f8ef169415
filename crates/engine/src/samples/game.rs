//! One game of the engine against itself, and the positions that it leaves.

use std::collections::HashSet;
use std::sync::atomic::{AtomicBool, Ordering};

use shakmaty::{Chess, Color, Move, Position as _};

use crate::eval::Evaluate;
use crate::matches::referee::{Ending, Referee};
use crate::position::Position;
use crate::random::Random;
use crate::search::{Answer, Limits, Line, Request, RequestError, Score, Searcher};

use super::failure::SampleError;
use super::leaves::Watched;
use super::openings::Openings;
use super::record::{Outcome, RECORD_BYTES, Sample};

/// Bytes of the search's table, kept from move to move of a game.
const TABLE_BYTES: usize = 1 << 20;
/// The same for the searches that score leaves.
const LEAF_TABLE_BYTES: usize = 1 << 18;
/// A leaf that is worth more, either way, is not kept: centipawns.
const LEAF_SCORE: i32 = 2_000;
/// A search begins no iteration when one part in so many of its nodes is spent, and is cut off when it has spent so many
/// times its nodes: on average it spends about its nodes.
const SLACK: u64 = 2;
/// For so many plies after the opening another good move may be played.
const STRAYING_PLIES: usize = 10;
/// One ply in so many strays.
const STRAYING_ONE_IN: usize = 4;
/// A move that strays is one of so many best lines, and worth at most so many centipawns less than the best.
const STRAYING: (usize, i32) = (4, 40);
/// The search that looks for it has one node in so many.
const STRAYING_NODES: u64 = 4;

/// What all games have in common.
#[derive(Debug, Clone)]
pub struct Rules {
    /// Chooses the games.
    pub seed: u64,
    /// Nodes a move, on average.
    pub nodes: u64,
    /// Leaves a move that are kept too, about.
    pub leaves: u64,
    /// Nodes for each of them, on average.
    pub leaf_nodes: u64,
    /// Where games begin.
    pub openings: Openings,
    /// So many games in a hundred begin from the list.
    pub listed: u64,
}

/// A game that has been played.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Played {
    /// Records, in the order of the moves.
    pub bytes: Vec<u8>,
    /// Plies that were searched.
    pub plies: u64,
    /// Nodes of those searches.
    pub nodes: u64,
    /// Who won.
    pub winner: Option<Color>,
    /// How it ended.
    pub ending: Ending,
}

/// Plays games, and looks again at leaves of their searches.
pub struct Player<E> {
    searcher: Searcher<Watched<E>>,
    watched: Watched<E>,
    /// Gives leaves their scores.
    judge: Searcher<E>,
}

impl<E: Evaluate + Clone + Send> Player<E> {
    /// With a copy of an evaluation.
    pub fn new(evaluation: &E) -> Player<E> {
        let watched = Watched::new(evaluation.clone());
        Player {
            searcher: Searcher::with(watched.clone()),
            watched,
            judge: Searcher::with(evaluation.clone()),
        }
    }

    /// Plays the game of this number: it depends on the rules, the evaluation and the number alone.
    pub fn play(&mut self, rules: &Rules, number: u64) -> Result<Played, SampleError> {
        let mut random = Random::new(rules.seed, number);
        self.watched.watch(0, Random::new(0, 0));
        self.searcher.resize(TABLE_BYTES);
        self.judge.resize(LEAF_TABLE_BYTES);
        let list = &rules.openings;
        let opening = list.choose(rules.listed, &mut random, &mut self.searcher)?;
        self.searcher.forget();
        let gap = rules.nodes.checked_div(rules.leaves);
        let one_in = gap.map_or(0, |gap| gap.max(1) as usize);
        self.watched.watch(one_in, Random::new(!rules.seed, number));
        let begun = opening.history.len();
        let (mut position, mut history) = (opening.position, opening.history);
        let mut referee = Referee::new(true);
        let mut kept: Vec<(Chess, i32)> = Vec::new();
        let mut leaves = Leaves::default();
        let (mut plies, mut nodes) = (0, 0);
        let (winner, ending) = loop {
            if let Some(end) = Referee::by_rules(&position, &history) {
                break end;
            }
            let answer = think(&mut self.searcher, &position, &history, rules.nodes, 1)?;
            // Only a game that is over has no line, and the rules have just let it go on.
            let best = answer.lines.first().ok_or(RequestError::NoLines)?;
            (plies, nodes) = (plies + 1, nodes + answer.nodes);
            nodes += self.look_again(rules, &mut leaves)?;
            let mover = position.turn();
            let score = match best.score {
                Score::Centipawns(value) => value,
                Score::Mates(_) => break (Some(mover), Ending::AgreedWin),
                Score::Mated(_) => break (Some(mover.other()), Ending::AgreedWin),
            };
            if is_quiet(position.chess(), best.moves[0]) && !history.contains(&position.key()) {
                kept.push((position.chess().clone(), score));
            }
            let strays =
                history.len() - begun < STRAYING_PLIES && random.below(STRAYING_ONE_IN) == 0;
            let mv = if strays {
                let (lines, _) = STRAYING;
                let few = (rules.nodes / STRAYING_NODES).max(1);
                let answer = think(&mut self.searcher, &position, &history, few, lines)?;
                stray(&answer.lines, &mut random).unwrap_or(best.moves[0])
            } else {
                best.moves[0]
            };
            history.push(position.key());
            position = position.play(mv);
            if let Some(end) = Referee::by_rules(&position, &history) {
                break end;
            }
            let white = mover.fold_wb(score, -score);
            if let Some(end) = referee.by_score(Some(white), history.len()) {
                break end;
            }
        };
        let mut bytes = Vec::with_capacity((kept.len() + leaves.kept.len()) * RECORD_BYTES);
        for (chess, score) in kept {
            let outcome = Outcome::of(winner, chess.turn());
            bytes.extend(Sample::seen_by_mover(&chess, score, outcome).pack());
        }
        for (chess, score) in leaves.kept {
            bytes.extend(Sample::seen_by_mover(&chess, score, Outcome::Unplayed).pack());
        }
        Ok(Played {
            bytes,
            plies,
            nodes,
            winner,
            ending,
        })
    }

    /// Scores the leaves that were noted, or what their best lines lead to when all is quiet again, and keeps what is
    /// not decided and new; the nodes that it took.
    fn look_again(&mut self, rules: &Rules, leaves: &mut Leaves) -> Result<u64, RequestError> {
        let mut nodes = 0;
        for chess in self.watched.take() {
            let position = Position::from_chess(chess);
            if position.legal_moves().is_empty() {
                continue;
            }
            let answer = think(&mut self.judge, &position, &[], rules.leaf_nodes, 1)?;
            nodes += answer.nodes;
            let best = answer.lines.first().ok_or(RequestError::NoLines)?;
            if let Score::Centipawns(score) = best.score
                && score.abs() <= LEAF_SCORE
                && let Some((position, score)) = settled(position, score, &best.moves)
                && leaves.keys.insert(position.key())
            {
                leaves.kept.push((position.chess().clone(), score));
            }
        }
        Ok(nodes)
    }
}

/// Leaves of the searches of a game.
#[derive(Default)]
struct Leaves {
    kept: Vec<(Chess, i32)>,
    keys: HashSet<u64>,
}

/// The first position of a best line whose next move is quiet, with its mover's score.
fn settled(mut position: Position, mut score: i32, line: &[Move]) -> Option<(Position, i32)> {
    for mv in line {
        if is_quiet(position.chess(), *mv) {
            return Some((position, score));
        }
        position = position.play(*mv);
        score = -score;
    }
    None
}

/// Searches with about so many nodes, as a rule whole iterations, since the score of half a look is that of its first moves.
pub fn think<E: Evaluate + Clone + Send>(
    searcher: &mut Searcher<E>,
    position: &Position,
    history: &[u64],
    nodes: u64,
    lines: usize,
) -> Result<Answer, RequestError> {
    let stop = AtomicBool::new(false);
    let mut request = Request::new(position, Limits::nodes(nodes.saturating_mul(SLACK)));
    request.history = history;
    request.lines = lines;
    request.stop = Some(&stop);
    // Set between two iterations, on this thread: the answer is the same on every run.
    searcher.search_telling(&request, &mut |progress| {
        if progress.nodes >= nodes / SLACK {
            stop.store(true, Ordering::Relaxed);
        }
    })
}

/// Whether what the position is worth can be seen without a further move. The search asks its evaluation at the quiet
/// ends of lines only; where the mover is in check, or the best move takes, promotes or checks, the score speaks of
/// what that move brings, and not of how the men stand.
fn is_quiet(chess: &Chess, best: Move) -> bool {
    let checks = |mv| {
        let mut after = chess.clone();
        after.play_unchecked(mv);
        after.is_check()
    };
    !chess.is_check() && !best.is_capture() && !best.is_promotion() && !checks(best)
}

/// One of the lines that are nearly as good as the best.
fn stray(lines: &[Line], random: &mut Random) -> Option<Move> {
    let value = |line: &Line| match line.score {
        Score::Centipawns(value) => Some(value),
        Score::Mates(_) | Score::Mated(_) => None,
    };
    let (_, most) = STRAYING;
    let best = value(lines.first()?)?;
    let near = |line: &&Line| value(line).is_some_and(|value| value >= best - most);
    let good: Vec<&Line> = lines.iter().filter(near).collect();
    let chosen = good.get(random.below(good.len()))?;
    chosen.moves.first().copied()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::eval::Tapered;
    use crate::samples::Samples;

    fn rules(nodes: u64) -> Rules {
        Rules {
            seed: 9,
            nodes,
            leaves: 0,
            leaf_nodes: 50,
            openings: Openings::ours().unwrap(),
            listed: 50,
        }
    }

    fn at(fen: &str) -> Position {
        Position::from_fen(fen).unwrap()
    }

    #[test]
    fn a_game_depends_on_its_number_alone() {
        let rules = rules(200);
        let mut used = Player::new(&Tapered::new());
        let games: Vec<Played> = (0..4).map(|n| used.play(&rules, n).unwrap()).collect();
        for (number, game) in games.iter().enumerate().rev() {
            let mut fresh = Player::new(&Tapered::new());
            assert_eq!(&fresh.play(&rules, number as u64).unwrap(), game);
        }
        assert_ne!(games[0], games[1]);
    }

    #[test]
    fn leaves_change_no_move_and_stand_after_the_game_without_a_result() {
        let plain = rules(300);
        let more = Rules {
            leaves: 6,
            ..plain.clone()
        };
        let mut player = Player::new(&Tapered::new());
        for number in 0..3 {
            let game = player.play(&plain, number).unwrap();
            let with_leaves = player.play(&more, number).unwrap();
            let again = Player::new(&Tapered::new()).play(&more, number).unwrap();
            assert_eq!(with_leaves, again);
            assert_eq!(with_leaves.plies, game.plies);
            let (played, leaves) = with_leaves.bytes.split_at(game.bytes.len());
            assert_eq!(played, game.bytes);
            let leaves: Vec<Sample> = Samples::new(leaves).map(Result::unwrap).collect();
            let a_move = leaves.len() as f64 / game.plies as f64;
            assert!((0.5..8.0).contains(&a_move), "{a_move}");
            for leaf in leaves {
                assert_eq!(leaf.outcome, Outcome::Unplayed);
                assert!(i32::from(leaf.score).abs() <= LEAF_SCORE);
                assert!(!leaf.checkers().any());
            }
        }
    }

    #[test]
    fn no_position_that_is_kept_is_a_check_and_the_result_alternates_with_the_mover() {
        let rules = rules(150);
        let mut player = Player::new(&Tapered::new());
        let mut decided = 0;
        for number in 0..12 {
            let game = player.play(&rules, number).unwrap();
            let samples: Vec<Sample> = Samples::new(&game.bytes[..]).map(Result::unwrap).collect();
            assert!(samples.len() as u64 <= game.plies);
            for sample in &samples {
                assert!(!sample.checkers().any());
                assert_eq!(sample.outcome == Outcome::Drawn, game.winner.is_none());
            }
            decided += usize::from(
                samples.iter().any(|s| s.outcome == Outcome::Won)
                    && samples.iter().any(|s| s.outcome == Outcome::Lost),
            );
        }
        assert!(decided >= 3);
    }

    #[test]
    fn a_search_ends_with_the_iteration_in_which_half_its_nodes_are_spent() {
        let position = at("r1bq1rk1/pp2bppp/2n1pn2/2pp4/3P1B2/2PBPN2/PP1N1PPP/R2QK2R w KQ - 0 8");
        let mut searcher = Searcher::keeping(TABLE_BYTES);
        let answer = think(&mut searcher, &position, &[], 2_000, 1).unwrap();
        assert!((1_000..4_000).contains(&answer.nodes));
        let request = Request::new(&position, Limits::depth(answer.depth));
        let whole = Searcher::keeping(TABLE_BYTES).search(&request).unwrap();
        assert_eq!(whole.lines[0].moves[0], answer.lines[0].moves[0]);
        assert_eq!(whole.lines[0].score, answer.lines[0].score);
    }

    #[test]
    fn a_position_is_quiet_when_the_best_move_only_moves() {
        for (fen, uci, quiet) in [
            ("4k3/8/8/8/8/8/4P3/4K3 w - - 0 1", "e2e4", true),
            ("4k3/8/8/8/8/3p4/4P3/4K3 w - - 0 1", "e2d3", false),
            ("4k3/8/8/8/8/8/4K3/4R3 w - - 0 1", "e2d2", false),
            ("4k3/8/8/8/8/8/3R4/K7 w - - 0 1", "d2d8", false),
            ("8/P6k/8/8/8/8/8/K7 w - - 0 1", "a7a8q", false),
            ("4k3/8/8/8/8/8/4r3/4K3 w - - 0 1", "e1d1", false),
            ("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1", "e5d6", false),
            ("4k3/8/8/8/8/8/8/R3K3 w Q - 0 1", "e1c1", true),
        ] {
            let position = at(fen);
            let mv = position.parse_uci(uci).unwrap();
            assert_eq!(is_quiet(position.chess(), mv), quiet, "{fen} {uci}");
        }
    }

    #[test]
    fn a_line_is_followed_until_it_is_quiet() {
        // White takes the rook and is taken back; then Black, with a bishop for it, has time for a quiet move.
        let position = at("4k3/8/2p5/3r4/8/5B2/8/4K3 w - - 0 1");
        let line: Vec<Move> = ["f3d5", "c6d5", "e1d2"]
            .iter()
            .scan(position.clone(), |position, uci| {
                let mv = position.parse_uci(uci).unwrap();
                *position = position.play(mv);
                Some(mv)
            })
            .collect();
        let (found, score) = settled(position.clone(), 30, &line).unwrap();
        assert_eq!(found.fen(), "4k3/8/8/3p4/8/8/8/4K3 w - - 0 2");
        assert_eq!(score, 30);
        let (found, score) = settled(position.play(line[0]), -30, &line[1..]).unwrap();
        assert_eq!((found.turn(), score), (Color::White, 30));
        assert!(settled(position, 30, &line[..2]).is_none());
    }

    #[test]
    fn a_straying_move_is_nearly_as_good_as_the_best() {
        let position = Position::start();
        let moves = position.legal_moves();
        let line = |index: usize, score| Line {
            moves: vec![moves[index]],
            score,
        };
        let lines = [
            line(0, Score::Centipawns(30)),
            line(1, Score::Centipawns(-10)),
            line(2, Score::Centipawns(-11)),
            line(3, Score::Mated(3)),
        ];
        let mut seen = [0; 4];
        let mut random = Random::new(1, 1);
        for _ in 0..100 {
            let mv = stray(&lines, &mut random).unwrap();
            seen[moves.iter().position(|other| *other == mv).unwrap()] += 1;
        }
        assert!(seen[0] > 20 && seen[1] > 20);
        assert_eq!(seen[2..], [0, 0]);
        assert_eq!(stray(&[line(0, Score::Mates(2))], &mut random), None);
    }
}

//! When a game is over: by the rules, or because both programs have long agreed how it will end.

use shakmaty::{Color, Position as _};

use crate::position::Position;

/// Both programs give one side so many centipawns or more, for so many plies in a row: it has won.
pub const WON: (i32, u32) = (1_200, 5);
/// Both programs give at most so many centipawns to either side, for so many plies in a row, from this ply on: drawn.
pub const DRAWN: (i32, u32, usize) = (12, 20, 70);
/// A game of so many plies is a draw.
pub const LONGEST: usize = 400;

/// How a game ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ending {
    /// The mover is mated.
    Checkmate,
    /// The mover has no move, and no check (FIDE Laws of Chess 5.2.1).
    Stalemate,
    /// Neither side can mate, as the material alone shows (5.2.2).
    Material,
    /// The third time the same position (9.2).
    Repetition,
    /// Fifty moves of both without a capture or a pawn's move (9.3).
    FiftyMoves,
    /// Both programs agree who wins.
    AgreedWin,
    /// Both programs agree on a draw.
    AgreedDraw,
    /// [`LONGEST`] plies were played.
    TooLong,
    /// A program ended, or did not answer at all.
    Crash,
    /// A program gave a move that is not legal.
    IllegalMove,
    /// A program used more time than it had.
    Time,
}

impl Ending {
    /// As reports say it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Ending::Checkmate => "checkmate",
            Ending::Stalemate => "stalemate",
            Ending::Material => "insufficient material",
            Ending::Repetition => "threefold repetition",
            Ending::FiftyMoves => "fifty moves",
            Ending::AgreedWin => "agreed win",
            Ending::AgreedDraw => "agreed draw",
            Ending::TooLong => "too long",
            Ending::Crash => "crash",
            Ending::IllegalMove => "illegal move",
            Ending::Time => "time forfeit",
        }
    }
}

/// Watches one game.
pub struct Referee {
    agrees: bool,
    ahead: Color,
    ahead_for: u32,
    level_for: u32,
}

impl Referee {
    /// With `agrees` false only the rules and [`LONGEST`] end a game.
    pub fn new(agrees: bool) -> Self {
        Referee {
            agrees,
            ahead: Color::White,
            ahead_for: 0,
            level_for: 0,
        }
    }

    /// Whether the rules end the game, and for whom; the winner is `None` in a draw. `history` holds the keys of all
    /// positions before. A draw that a player may claim is taken as claimed.
    pub fn by_rules(position: &Position, history: &[u64]) -> Option<(Option<Color>, Ending)> {
        let chess = position.chess();
        if chess.is_checkmate() {
            return Some((Some(chess.turn().other()), Ending::Checkmate));
        }
        if chess.is_stalemate() {
            return Some((None, Ending::Stalemate));
        }
        if chess.is_insufficient_material() {
            return Some((None, Ending::Material));
        }
        let key = position.key();
        let reversible = history.iter().rev().take(chess.halfmoves() as usize);
        if reversible.filter(|earlier| **earlier == key).count() >= 2 {
            return Some((None, Ending::Repetition));
        }
        if chess.halfmoves() >= 100 {
            return Some((None, Ending::FiftyMoves));
        }
        if history.len() >= LONGEST {
            return Some((None, Ending::TooLong));
        }
        None
    }

    /// Whether the scores end the game; `score` is White's, `ply` counts the plies played.
    pub fn by_score(&mut self, score: Option<i32>, ply: usize) -> Option<(Option<Color>, Ending)> {
        let (least, in_a_row) = WON;
        match score {
            Some(value) if value.abs() >= least => {
                let side = Color::from_white(value > 0);
                self.ahead_for = if side == self.ahead {
                    self.ahead_for + 1
                } else {
                    1
                };
                self.ahead = side;
            }
            _ => self.ahead_for = 0,
        }
        let (most, level, from) = DRAWN;
        match score {
            Some(value) if value.abs() <= most => self.level_for += 1,
            _ => self.level_for = 0,
        }
        if !self.agrees {
            None
        } else if self.ahead_for >= in_a_row {
            Some((Some(self.ahead), Ending::AgreedWin))
        } else if ply >= from && self.level_for >= level {
            Some((None, Ending::AgreedDraw))
        } else {
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn by_rules(fen: &str) -> Option<(Option<Color>, Ending)> {
        Referee::by_rules(&Position::from_fen(fen).unwrap(), &[])
    }

    #[test]
    fn the_rules_end_a_game() {
        assert_eq!(
            by_rules("R5k1/5ppp/8/8/8/8/8/4K3 b - - 0 1"),
            Some((Some(Color::White), Ending::Checkmate))
        );
        assert_eq!(
            by_rules("k7/2Q5/8/8/8/8/8/4K3 b - - 0 1"),
            Some((None, Ending::Stalemate))
        );
        assert_eq!(
            by_rules("k7/8/8/8/8/8/8/4KB2 w - - 0 1"),
            Some((None, Ending::Material))
        );
        assert_eq!(
            by_rules("k7/8/8/8/8/8/8/4KR2 w - - 100 90"),
            Some((None, Ending::FiftyMoves))
        );
        assert_eq!(by_rules("k7/8/8/8/8/8/8/4KR2 w - - 99 90"), None);
    }

    #[test]
    fn the_third_time_of_a_position_ends_a_game() {
        let mut position = Position::start();
        let mut history = Vec::new();
        for (number, san) in ["Nf3", "Nf6", "Ng1", "Ng8", "Nf3", "Nf6", "Ng1", "Ng8"]
            .iter()
            .enumerate()
        {
            assert_eq!(
                Referee::by_rules(&position, &history),
                None,
                "after {number} plies"
            );
            history.push(position.key());
            position = position.play_san(san).unwrap();
        }
        assert_eq!(
            Referee::by_rules(&position, &history),
            Some((None, Ending::Repetition))
        );
    }

    #[test]
    fn a_win_needs_the_agreement_of_both_several_times_in_a_row() {
        let mut referee = Referee::new(true);
        for ply in 0..4 {
            assert_eq!(referee.by_score(Some(-1_200), ply), None);
        }
        assert_eq!(
            referee.by_score(Some(-1_500), 4),
            Some((Some(Color::Black), Ending::AgreedWin))
        );
        let mut referee = Referee::new(true);
        for ply in 0..50 {
            let score = if ply % 5 == 4 { 1_199 } else { 2_000 };
            assert_eq!(referee.by_score(Some(score), ply), None, "{ply}");
        }
        let mut referee = Referee::new(true);
        for ply in 0..50 {
            let score = if ply % 2 == 0 { 2_000 } else { -2_000 };
            assert_eq!(referee.by_score(Some(score), ply), None, "{ply}");
        }
    }

    #[test]
    fn a_draw_is_agreed_only_late() {
        let mut referee = Referee::new(true);
        let ended: Vec<usize> = (0..100)
            .filter(|ply| referee.by_score(Some(8), *ply).is_some())
            .collect();
        assert_eq!(ended.first(), Some(&70));
    }

    #[test]
    fn a_move_without_a_score_breaks_the_row() {
        let mut referee = Referee::new(true);
        for ply in 0..50 {
            let score = (ply % 4 != 3).then_some(5_000);
            assert_eq!(referee.by_score(score, ply), None);
        }
    }

    #[test]
    fn without_agreement_scores_end_no_game() {
        let mut referee = Referee::new(false);
        for ply in 0..300 {
            assert_eq!(referee.by_score(Some(30_000), ply), None);
        }
    }
}

//! The position that is searched next, with the game before it.

use crate::position::{Position, quoted};

/// A position with the keys of the positions before it. Each `position` command tells the whole game again, so what
/// is known already is not played again.
pub struct Game {
    fen: Option<String>,
    moves: Vec<String>,
    position: Position,
    history: Vec<u64>,
}

impl Game {
    pub fn new() -> Self {
        Game {
            fen: None,
            moves: Vec::new(),
            position: Position::start(),
            history: Vec::new(),
        }
    }

    pub fn position(&self) -> &Position {
        &self.position
    }

    /// Keys of the positions before, the first one first.
    pub fn history(&self) -> &[u64] {
        &self.history
    }

    /// Takes over a position and moves from there; on an error, which is said, nothing is changed.
    pub fn set(&mut self, fen: Option<String>, moves: Vec<String>) -> Result<(), String> {
        let goes_on = fen == self.fen && moves.starts_with(&self.moves);
        let (mut position, mut history, known) = if goes_on {
            (self.position.clone(), Vec::new(), self.moves.len())
        } else {
            let start = match &fen {
                None => Position::start(),
                Some(text) => Position::from_fen(text).map_err(|error| {
                    format!(
                        "the FEN {}: {error}; the position is unchanged",
                        quoted(text)
                    )
                })?,
            };
            (start, Vec::new(), 0)
        };
        for (number, uci) in moves.iter().enumerate().skip(known) {
            let mv = position.parse_uci(uci).map_err(|error| {
                format!("move {}: {error}; the position is unchanged", number + 1)
            })?;
            history.push(position.key());
            position = position.play(mv);
        }
        if goes_on {
            self.history.append(&mut history);
        } else {
            self.history = history;
        }
        self.fen = fen;
        self.moves = moves;
        self.position = position;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn moves(text: &str) -> Vec<String> {
        text.split_whitespace().map(str::to_owned).collect()
    }

    #[test]
    fn a_game_that_goes_on_is_the_same_as_one_told_anew() {
        let mut by_steps = Game::new();
        by_steps.set(None, moves("e2e4")).unwrap();
        by_steps.set(None, moves("e2e4 e7e5 g1f3")).unwrap();
        let mut at_once = Game::new();
        at_once.set(None, moves("e2e4 e7e5 g1f3")).unwrap();
        assert_eq!(by_steps.position(), at_once.position());
        assert_eq!(by_steps.history(), at_once.history());
        assert_eq!(by_steps.history().len(), 3);
    }

    #[test]
    fn a_move_can_be_taken_back() {
        let mut game = Game::new();
        game.set(None, moves("e2e4 e7e5")).unwrap();
        game.set(None, moves("e2e4")).unwrap();
        assert_eq!(game.history().len(), 1);
    }

    #[test]
    fn an_illegal_move_changes_nothing() {
        let mut game = Game::new();
        game.set(None, moves("e2e4")).unwrap();
        let before = game.position().clone();
        let error = game.set(None, moves("e2e4 e7e5 e4e5")).unwrap_err();
        assert_eq!(
            error,
            "move 3: e4e5 is not legal here; no pawn has a move here; the position is unchanged"
        );
        assert_eq!(game.position(), &before);
        assert_eq!(game.history().len(), 1);
    }

    #[test]
    fn a_wrong_fen_changes_nothing() {
        let mut game = Game::new();
        let error = game.set(Some("8/8/8/8/8/8/8/K7 w - - 0 1".to_owned()), Vec::new());
        assert_eq!(
            error.unwrap_err(),
            "the FEN 8/8/8/8/8/8/8/K7 w - - 0 1: a king is missing; the position is unchanged"
        );
        assert_eq!(game.position(), &Position::start());
    }
}

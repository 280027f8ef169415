//! `Board`: one position, immutable.

use engine::position::{MoveError, Position};
use pyo3::create_exception;
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use shakmaty::{Bitboard, CastlingSide, Color, File, Position as _, Rank, Square};

create_exception!(
    lineproof._engine,
    FenError,
    PyValueError,
    "The text is no FEN of a legal position."
);
create_exception!(
    lineproof._engine,
    MoveSyntaxError,
    PyValueError,
    "The text is no move."
);
create_exception!(
    lineproof._engine,
    IllegalMoveError,
    PyValueError,
    "No such move is legal."
);
create_exception!(
    lineproof._engine,
    AmbiguousMoveError,
    PyValueError,
    "Several pieces can make the move."
);

pub fn move_error(error: &MoveError) -> PyErr {
    let text = error.to_string();
    match error {
        MoveError::Syntax(_) => MoveSyntaxError::new_err(text),
        MoveError::Illegal { .. } => IllegalMoveError::new_err(text),
        MoveError::Ambiguous { .. } => AmbiguousMoveError::new_err(text),
    }
}

pub fn side(name: &str) -> PyResult<Color> {
    match name {
        "white" => Ok(Color::White),
        "black" => Ok(Color::Black),
        _ => Err(PyValueError::new_err(format!(
            "{name:?} is no side; say 'white' or 'black'"
        ))),
    }
}

pub fn side_name(color: Color) -> &'static str {
    match color {
        Color::White => "white",
        Color::Black => "black",
    }
}

fn square(name: &str) -> PyResult<Square> {
    name.parse()
        .map_err(|_| PyValueError::new_err(format!("{name:?} is no square")))
}

fn names(squares: Bitboard) -> Vec<String> {
    squares.into_iter().map(|s| s.to_string()).collect()
}

fn set(squares: &[String]) -> PyResult<Bitboard> {
    squares
        .iter()
        .map(|s| square(s).map(Bitboard::from_square))
        .try_fold(Bitboard::EMPTY, |all, one| one.map(|b| all | b))
}

/// One legal position, immutable. Squares are names ("e4"), sides "white" and "black", pieces FEN letters.
#[pyclass(frozen, eq, hash, module = "lineproof._engine")]
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Board {
    pub position: Position,
}

impl std::hash::Hash for Board {
    fn hash<H: std::hash::Hasher>(&self, state: &mut H) {
        self.position.key().hash(state);
    }
}

#[pymethods]
impl Board {
    /// The initial position, or the position of a FEN.
    #[new]
    #[pyo3(signature = (fen=None))]
    fn new(fen: Option<&str>) -> PyResult<Self> {
        let position = match fen {
            None => Position::start(),
            Some(text) => Position::from_fen(text).map_err(|e| FenError::new_err(e.to_string()))?,
        };
        Ok(Board { position })
    }

    #[getter]
    fn fen(&self) -> String {
        self.position.fen()
    }

    #[getter]
    fn key(&self) -> u64 {
        self.position.key()
    }

    #[getter]
    fn turn(&self) -> &'static str {
        side_name(self.position.turn())
    }

    #[getter]
    fn move_number(&self) -> u32 {
        self.position.chess().fullmoves().get()
    }

    #[getter]
    fn in_check(&self) -> bool {
        self.position.chess().is_check()
    }

    #[getter]
    fn is_checkmate(&self) -> bool {
        self.position.chess().is_checkmate()
    }

    #[getter]
    fn is_stalemate(&self) -> bool {
        self.position.chess().is_stalemate()
    }

    /// The squares of the pieces that give check.
    fn checkers(&self) -> Vec<String> {
        names(self.position.chess().checkers())
    }

    /// Every legal move in UCI spelling, sorted.
    fn legal_moves(&self) -> Vec<String> {
        let mut all: Vec<String> = self
            .position
            .legal_moves()
            .iter()
            .map(|m| self.position.uci(*m))
            .collect();
        all.sort();
        all
    }

    /// The move in SAN with its check or mate sign.
    fn san(&self, uci: &str) -> PyResult<String> {
        let mv = self.position.parse_uci(uci).map_err(|e| move_error(&e))?;
        Ok(self.position.san(mv))
    }

    /// A line of moves (UCI) in SAN.
    fn san_line(&self, line: Vec<String>) -> PyResult<Vec<String>> {
        let mut position = self.position.clone();
        let mut spelled = Vec::with_capacity(line.len());
        for uci in line {
            let mv = position.parse_uci(&uci).map_err(|e| move_error(&e))?;
            spelled.push(position.san(mv));
            position = position.play(mv);
        }
        Ok(spelled)
    }

    /// The move of a SAN, in UCI spelling.
    fn parse_san(&self, san: &str) -> PyResult<String> {
        let mv = self.position.parse_san(san).map_err(|e| move_error(&e))?;
        Ok(self.position.uci(mv))
    }

    /// The board after a legal move (UCI).
    fn play(&self, uci: &str) -> PyResult<Self> {
        let mv = self.position.parse_uci(uci).map_err(|e| move_error(&e))?;
        Ok(Board {
            position: self.position.play(mv),
        })
    }

    /// The board after the mover passes; None when he is in check.
    fn passed(&self) -> Option<Self> {
        self.position.passed().map(|position| Board { position })
    }

    /// The piece on a square as a FEN letter, or None.
    fn piece_at(&self, at: &str) -> PyResult<Option<char>> {
        Ok(self
            .position
            .chess()
            .board()
            .piece_at(square(at)?)
            .map(shakmaty::Piece::char))
    }

    /// Every piece: (square, FEN letter), a1 first.
    fn pieces(&self) -> Vec<(String, char)> {
        self.position
            .chess()
            .board()
            .iter()
            .map(|(at, piece)| (at.to_string(), piece.char()))
            .collect()
    }

    /// Squares of the pieces of a side that attack a square, pinned or not. The pieces on `through` are lifted first.
    #[pyo3(signature = (by, at, through=Vec::new()))]
    fn attackers(&self, by: &str, at: &str, through: Vec<String>) -> PyResult<Vec<String>> {
        Ok(names(self.position.attackers(
            side(by)?,
            square(at)?,
            set(&through)?,
        )))
    }

    /// Squares that the piece on a square attacks; the pieces on `through` are lifted first.
    #[pyo3(signature = (at, through=Vec::new()))]
    fn attacks(&self, at: &str, through: Vec<String>) -> PyResult<Vec<String>> {
        Ok(names(self.position.attacks(square(at)?, set(&through)?)))
    }

    /// Squares strictly between two squares on one line; empty when they are on none.
    #[staticmethod]
    fn between(one: &str, other: &str) -> PyResult<Vec<String>> {
        Ok(names(shakmaty::attacks::between(
            square(one)?,
            square(other)?,
        )))
    }

    /// Whether the mover has a capture (or a promotion) that wins a pawn or more when both sides go on taking there.
    fn capture_gains_pawn(&self) -> bool {
        self.position.capture_gains_pawn()
    }

    /// Whether a side has the right to castle on a wing ("king" or "queen"): the right, not the possibility.
    fn may_castle(&self, by: &str, wing: &str) -> PyResult<bool> {
        let wing = match wing {
            "king" => CastlingSide::KingSide,
            "queen" => CastlingSide::QueenSide,
            _ => {
                return Err(PyValueError::new_err(format!(
                    "{wing:?} is no wing; say 'king' or 'queen'"
                )));
            }
        };
        Ok(self.position.may_castle(side(by)?, wing))
    }

    fn __repr__(&self) -> String {
        format!("Board({:?})", self.position.fen())
    }

    fn __str__(&self) -> String {
        let board = self.position.chess().board();
        Rank::ALL
            .iter()
            .rev()
            .map(|rank| {
                File::ALL
                    .iter()
                    .map(|file| {
                        board
                            .piece_at(Square::from_coords(*file, *rank))
                            .map_or('.', shakmaty::Piece::char)
                            .to_string()
                    })
                    .collect::<Vec<_>>()
                    .join(" ")
            })
            .collect::<Vec<_>>()
            .join("\n")
    }
}

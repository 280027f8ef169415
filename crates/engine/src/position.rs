//! A position: the rules of chess by shakmaty, with the questions that a lesson asks of a board.
//!
//! ```
//! use engine::position::Position;
//! let position = Position::from_fen("7k/8/8/8/8/8/4P3/4K3 w - - 0 1").unwrap();
//! assert_eq!(position.legal_moves().len(), 6);
//! ```

use std::borrow::Cow;
use std::fmt;

use crate::search::see::{wins_at_least, worth};
use shakmaty::fen::{Fen, ParseFenError};
use shakmaty::san::{ParseSanError, San, SanError, SanPlus};
use shakmaty::uci::{ParseUciMoveError, UciMove};
use shakmaty::zobrist::Zobrist64;
use shakmaty::{
    Bitboard, CastlingMode, CastlingSide, Chess, Color, EnPassantMode, Move, MoveList,
    Position as _, PositionError, Role, Setup, Square,
};

/// Why a FEN is no position.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FenError {
    /// The text does not follow the FEN grammar (PGN standard, 16.1).
    Syntax(ParseFenError),
    /// The text is well formed, but no legal position.
    Position(Vec<&'static str>),
    /// The text says what only games of other rules have.
    OtherRules(&'static str),
    /// A counter that no game reaches.
    Counter(&'static str, u32),
}

/// Highest counter that a FEN may have: no game that the rules end is as long (FIDE Laws of Chess 9.6.2, from memory).
const COUNTER_MAX: u32 = 9999;

/// Longest quotation of a text in a message, in characters.
const QUOTED: usize = 60;

/// A text as messages quote it: no longer than they can bear.
#[must_use]
pub fn quoted(text: &str) -> Cow<'_, str> {
    match text.char_indices().nth(QUOTED) {
        None => Cow::Borrowed(text),
        Some(_) => Cow::Owned(text.chars().take(QUOTED - 1).chain(['…']).collect()),
    }
}

impl fmt::Display for FenError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FenError::Syntax(error) => write!(f, "{error}"),
            FenError::Position(reasons) => write!(f, "{}", reasons.join("; ")),
            FenError::OtherRules(what) => write!(f, "the FEN is of other rules: it has {what}"),
            FenError::Counter(name, count) => {
                write!(f, "{name} is {count}, more than {COUNTER_MAX}")
            }
        }
    }
}

impl std::error::Error for FenError {}

/// Why a written move cannot be played.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MoveError {
    /// The text is no move at all.
    Syntax(String),
    /// No such move is legal. `candidates` are the legal moves of that kind of piece, in SAN.
    Illegal {
        /// What was written.
        written: String,
        /// The kind of piece that was meant, where that can be told.
        piece: Option<Role>,
        /// The legal moves of the piece that was meant, in SAN.
        candidates: Vec<String>,
    },
    /// Two or more pieces can make the move. `candidates` are the full spellings.
    Ambiguous {
        /// What was written.
        written: String,
        /// The moves that it can mean, in SAN.
        candidates: Vec<String>,
    },
}

impl fmt::Display for MoveError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            MoveError::Syntax(written) => write!(f, "{} is not a move", quoted(written)),
            MoveError::Illegal {
                written,
                piece,
                candidates,
            } if candidates.is_empty() => {
                write!(f, "{} is not legal here", quoted(written))?;
                match piece {
                    Some(Role::King) => f.write_str("; the king has no move here"),
                    Some(role) => write!(f, "; no {} has a move here", role_name(*role)),
                    None => Ok(()),
                }
            }
            MoveError::Illegal {
                written,
                candidates,
                ..
            } => write!(
                f,
                "{} is not legal here; that piece can play {}",
                quoted(written),
                candidates.join(", ")
            ),
            MoveError::Ambiguous {
                written,
                candidates,
            } => write!(
                f,
                "{} can mean {}; write which",
                quoted(written),
                candidates.join(" or ")
            ),
        }
    }
}

impl std::error::Error for MoveError {}

/// A legal position. Cheap to copy (136 bytes); never changes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Position {
    chess: Chess,
}

impl Position {
    /// The initial position.
    #[must_use]
    pub fn start() -> Self {
        Position {
            chess: Chess::default(),
        }
    }

    /// Reads a FEN; the counters may be missing.
    ///
    /// # Errors
    /// [`FenError`] when the text is no FEN, is one of other rules, or the position is not legal.
    pub fn from_fen(text: &str) -> Result<Self, FenError> {
        let fen: Fen = text.trim().parse().map_err(FenError::Syntax)?;
        refuse_other_rules(fen.as_setup())?;
        let chess = fen
            .into_position::<Chess>(CastlingMode::Standard)
            .or_else(PositionError::ignore_too_much_material)
            .map_err(|error| FenError::Position(reasons(&error)))?;
        Ok(Position { chess })
    }

    /// Wraps a shakmaty position.
    #[must_use]
    pub fn from_chess(chess: Chess) -> Self {
        Position { chess }
    }

    /// The shakmaty position inside.
    #[must_use]
    pub fn chess(&self) -> &Chess {
        &self.chess
    }

    /// The FEN, with the en passant square only where such a capture is legal.
    #[must_use]
    pub fn fen(&self) -> String {
        Fen::from_position(&self.chess, EnPassantMode::Legal).to_string()
    }

    /// 64-bit Zobrist key of the position as FIDE Laws of Chess 9.2.3 tell positions apart:
    /// placement, side to move, castling rights, legal en passant only.
    #[must_use]
    pub fn key(&self) -> u64 {
        let Zobrist64(key) = self.chess.zobrist_hash(EnPassantMode::Legal);
        key
    }

    /// The side to move.
    #[must_use]
    pub fn turn(&self) -> Color {
        self.chess.turn()
    }

    /// Every legal move.
    #[must_use]
    pub fn legal_moves(&self) -> MoveList {
        self.chess.legal_moves()
    }

    /// The move in SAN with its check or mate sign.
    #[must_use]
    pub fn san(&self, mv: Move) -> String {
        SanPlus::from_move(self.chess.clone(), mv).to_string()
    }

    /// The move in UCI spelling, castling as the king's two steps.
    #[must_use]
    pub fn uci(&self, mv: Move) -> String {
        mv.to_uci(CastlingMode::Standard).to_string()
    }

    /// Reads a move in SAN, with or without suffixes.
    ///
    /// # Errors
    /// [`MoveError`] when the text is no move, or an illegal or an ambiguous one.
    pub fn parse_san(&self, text: &str) -> Result<Move, MoveError> {
        let san: San = match text.parse::<SanPlus>() {
            Ok(plus) => plus.san,
            Err(ParseSanError { .. }) => return Err(MoveError::Syntax(text.to_owned())),
        };
        san.to_move(&self.chess).map_err(|error| {
            let candidates = self.candidates(&san, error == SanError::AmbiguousSan);
            let written = text.to_owned();
            match error {
                SanError::AmbiguousSan => MoveError::Ambiguous {
                    written,
                    candidates,
                },
                SanError::IllegalSan => MoveError::Illegal {
                    written,
                    piece: role_of(&san),
                    candidates,
                },
            }
        })
    }

    /// Reads a move in UCI spelling.
    ///
    /// # Errors
    /// [`MoveError`] when the text is no move or an illegal one.
    pub fn parse_uci(&self, text: &str) -> Result<Move, MoveError> {
        let uci: UciMove = text
            .parse()
            .map_err(|_: ParseUciMoveError| MoveError::Syntax(text.to_owned()))?;
        uci.to_move(&self.chess).map_err(|_| MoveError::Illegal {
            written: text.to_owned(),
            piece: uci
                .from()
                .and_then(|from| self.chess.board().piece_at(from))
                .filter(|piece| piece.color == self.turn())
                .map(|piece| piece.role),
            candidates: self
                .legal_moves()
                .iter()
                .filter(|m| uci.from().is_some() && m.from() == uci.from())
                .map(|m| self.san(*m))
                .collect(),
        })
    }

    fn candidates(&self, san: &San, exact: bool) -> Vec<String> {
        let moves = self.legal_moves();
        let mut found: Vec<String> = moves
            .iter()
            .filter(|m| match san {
                San::Normal { role, to, .. } => m.role() == *role && (!exact || m.to() == *to),
                San::Castle(_) => m.role() == Role::King,
                _ => false,
            })
            .map(|m| self.san(*m))
            .collect();
        found.sort();
        found
    }

    /// The position after a legal move.
    #[must_use]
    pub fn play(&self, mv: Move) -> Self {
        let mut chess = self.chess.clone();
        chess.play_unchecked(mv);
        Position { chess }
    }

    /// The position after a move in SAN.
    ///
    /// # Errors
    /// As [`Position::parse_san`].
    pub fn play_san(&self, text: &str) -> Result<Self, MoveError> {
        Ok(self.play(self.parse_san(text)?))
    }

    /// The position after the mover passes, one half-move later; `None` when he is in check (a pass is no answer to it).
    #[must_use]
    pub fn passed(&self) -> Option<Self> {
        if self.chess.is_check() {
            return None;
        }
        let mut setup = self.chess.to_setup(EnPassantMode::Always);
        setup.halfmoves = setup.halfmoves.saturating_add(1);
        if setup.turn == Color::Black {
            setup.fullmoves = setup.fullmoves.saturating_add(1);
        }
        setup.swap_turn();
        setup
            .position::<Chess>(CastlingMode::Standard)
            .or_else(PositionError::ignore_too_much_material)
            .or_else(PositionError::ignore_impossible_check)
            .ok()
            .map(|chess| Position { chess })
    }

    /// Pieces of `side` that attack `square`, pinned or not. With `through`, these pieces are taken
    /// off the board first, so that those lined up behind them count too.
    #[must_use]
    pub fn attackers(&self, side: Color, square: Square, through: Bitboard) -> Bitboard {
        let board = self.chess.board();
        let occupied = board.occupied() & !through;
        board.attacks_to(square, side, occupied) & !through
    }

    /// Squares that the piece on `square` attacks; the pieces on `through` are lifted first.
    #[must_use]
    pub fn attacks(&self, square: Square, through: Bitboard) -> Bitboard {
        let board = self.chess.board();
        let occupied = board.occupied() & !through;
        board.piece_at(square).map_or(Bitboard::EMPTY, |piece| {
            shakmaty::attacks::attacks(square, piece, occupied)
        })
    }

    /// Whether the mover has a capture or a promotion that wins a pawn or more in the exchange it begins.
    #[must_use]
    pub fn capture_gains_pawn(&self) -> bool {
        self.legal_moves()
            .iter()
            .filter(|mv| mv.is_capture() || mv.is_promotion())
            .any(|mv| wins_at_least(&self.chess, *mv, worth(Role::Pawn)))
    }

    /// Whether `side` still has the right to castle on that wing (the right, not the possibility).
    #[must_use]
    pub fn may_castle(&self, side: Color, wing: CastlingSide) -> bool {
        self.chess.castles().has(side, wing)
    }
}

fn role_of(san: &San) -> Option<Role> {
    match san {
        San::Normal { role, .. } | San::Put { role, .. } => Some(*role),
        San::Castle(_) => Some(Role::King),
        San::Null => None,
    }
}

fn role_name(role: Role) -> &'static str {
    match role {
        Role::Pawn => "pawn",
        Role::Knight => "knight",
        Role::Bishop => "bishop",
        Role::Rook => "rook",
        Role::Queen => "queen",
        Role::King => "king",
    }
}

/// Refuses what a FEN of chess (PGN standard, 16.1) does not have, and the reader would leave out.
fn refuse_other_rules(setup: &Setup) -> Result<(), FenError> {
    if setup.pockets.is_some() {
        return Err(FenError::OtherRules("pieces in hand"));
    }
    if setup.promoted.any() {
        return Err(FenError::OtherRules("pieces marked as promoted"));
    }
    if setup.remaining_checks.is_some() {
        return Err(FenError::OtherRules("a count of checks"));
    }
    if setup.halfmoves > COUNTER_MAX {
        return Err(FenError::Counter("the half-move clock", setup.halfmoves));
    }
    if setup.fullmoves.get() > COUNTER_MAX {
        return Err(FenError::Counter("the move number", setup.fullmoves.get()));
    }
    Ok(())
}

fn reasons(error: &PositionError<Chess>) -> Vec<&'static str> {
    let kinds = error.kinds();
    let table: [(shakmaty::PositionErrorKinds, &'static str); 8] = [
        (
            shakmaty::PositionErrorKinds::EMPTY_BOARD,
            "the board is empty",
        ),
        (
            shakmaty::PositionErrorKinds::MISSING_KING,
            "a king is missing",
        ),
        (
            shakmaty::PositionErrorKinds::TOO_MANY_KINGS,
            "a side has more than one king",
        ),
        (
            shakmaty::PositionErrorKinds::PAWNS_ON_BACKRANK,
            "a pawn stands on the first or the last rank",
        ),
        (
            shakmaty::PositionErrorKinds::INVALID_CASTLING_RIGHTS,
            "castling rights do not fit the places of king and rooks",
        ),
        (
            shakmaty::PositionErrorKinds::INVALID_EP_SQUARE,
            "the en passant square does not fit",
        ),
        (
            shakmaty::PositionErrorKinds::OPPOSITE_CHECK,
            "the side not to move is in check",
        ),
        (
            shakmaty::PositionErrorKinds::IMPOSSIBLE_CHECK,
            "such a check cannot have come about",
        ),
    ];
    let mut found: Vec<&'static str> = table
        .iter()
        .filter(|(kind, _)| kinds.intersects(*kind))
        .map(|(_, reason)| *reason)
        .collect();
    if found.is_empty() {
        found.push("the position is not legal");
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_illegal_move_names_the_legal_moves_of_that_piece() {
        let error = Position::start().parse_san("Nf4").unwrap_err();
        assert_eq!(
            error.to_string(),
            "Nf4 is not legal here; that piece can play Na3, Nc3, Nf3, Nh3"
        );
    }

    #[test]
    fn an_ambiguous_move_names_its_readings() {
        let position = Position::from_fen("k7/8/8/8/8/2N5/8/K5N1 w - - 0 1").unwrap();
        let error = position.parse_san("Ne2").unwrap_err();
        assert_eq!(error.to_string(), "Ne2 can mean Nce2 or Nge2; write which");
    }

    #[test]
    fn the_key_counts_en_passant_only_where_it_is_legal() {
        let after = Position::start().play_san("e4").unwrap();
        let plain =
            Position::from_fen("rnbqkbnr/pppppppp/8/8/4P3/8/PPPP1PPP/RNBQKBNR b KQkq - 0 1")
                .unwrap();
        assert_eq!(after.key(), plain.key());
    }

    #[test]
    fn a_pass_is_refused_in_check() {
        let position = Position::from_fen("4k3/8/8/8/8/8/4r3/4K3 w - - 0 1").unwrap();
        assert!(position.passed().is_none());
    }

    #[test]
    fn the_number_goes_on_when_black_passes() {
        let after = Position::start().play_san("e4").unwrap();
        let passed = after.passed().unwrap();
        assert_eq!(
            passed.fen(),
            "rnbqkbnr/pppppppp/8/8/4P3/8/PPPP1PPP/RNBQKBNR w KQkq - 1 2"
        );
    }

    #[test]
    fn a_piece_without_moves_is_named() {
        let start = Position::start();
        assert_eq!(
            start.parse_san("Ke2").unwrap_err().to_string(),
            "Ke2 is not legal here; the king has no move here"
        );
        assert_eq!(
            start.parse_san("Qd3").unwrap_err().to_string(),
            "Qd3 is not legal here; no queen has a move here"
        );
        assert_eq!(
            start.parse_uci("e4e5").unwrap_err().to_string(),
            "e4e5 is not legal here"
        );
    }

    #[test]
    fn a_long_word_is_shortened_in_messages() {
        let error = Position::start().parse_san(&"é".repeat(5000)).unwrap_err();
        let shown = "é".repeat(59);
        assert_eq!(error.to_string(), format!("{shown}… is not a move"));
    }

    #[test]
    fn a_fen_of_other_rules_is_refused() {
        for (fen, reason) in [
            (
                "4k3/8/8/8/8/8/8/4K3[Q] w - - 0 1",
                "the FEN is of other rules: it has pieces in hand",
            ),
            (
                "4k3/8/8/8/8/8/8/4K3/Q w - - 0 1",
                "the FEN is of other rules: it has pieces in hand",
            ),
            (
                "4k3/8/8/8/8/8/8/Q~3K3 w - - 0 1",
                "the FEN is of other rules: it has pieces marked as promoted",
            ),
            (
                "4k3/8/8/8/8/8/8/4K3 w - - 0 1 +3+3",
                "the FEN is of other rules: it has a count of checks",
            ),
            (
                "4k3/8/8/8/8/8/8/4K3 w - - 3+3 0 1",
                "the FEN is of other rules: it has a count of checks",
            ),
            (
                "4k3/8/8/8/8/8/8/4K1R1 w G - 0 1",
                "castling rights do not fit the places of king and rooks",
            ),
            (
                "4k3/8/8/8/8/8/8/4K1R1 w K - 0 1",
                "castling rights do not fit the places of king and rooks",
            ),
            (
                "4k3/8/8/8/8/8/8/4K3 w - - 0 4294967295",
                "the move number is 4294967295, more than 9999",
            ),
            (
                "4k3/8/8/8/8/8/8/4K3 w - - 10000 1",
                "the half-move clock is 10000, more than 9999",
            ),
        ] {
            let error = Position::from_fen(fen).unwrap_err();
            assert_eq!(error.to_string(), reason, "{fen}");
        }
    }

    #[test]
    fn castling_rights_may_name_the_files_of_the_corner_rooks() {
        let by_file = Position::from_fen("r3k2r/8/8/8/8/8/8/R3K2R w HAha - 0 1").unwrap();
        assert_eq!(by_file.fen(), "r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1");
    }

    #[test]
    fn a_wrong_fen_says_why() {
        let error = Position::from_fen("8/8/8/8/8/8/8/K7 w - - 0 1").unwrap_err();
        assert_eq!(error.to_string(), "a king is missing");
    }
}

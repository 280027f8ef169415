//! One position with its score and its result, and the 32 bytes that keep it.

use std::fmt;

use shakmaty::{Bitboard, Board, Chess, Color, Piece, Position as _, Role, Square};

/// Bytes of a record.
pub const RECORD_BYTES: usize = 32;
/// No score is kept that is larger, either way: centipawns.
pub const SCORE_MAX: i32 = 8191;
/// What a square can hold.
const DIGITS: u16 = 13;
/// A word's top bit does not belong to its squares.
const SQUARES: u16 = 0x7fff;

/// Why 32 bytes are no record.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Damage {
    /// A word's number of four squares is too large.
    Squares,
    /// The score is out of range.
    Score,
    /// A side has no king, or more than one.
    Kings,
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Damage::Squares => "four squares hold what no square can",
            Damage::Score => "the score is out of range",
            Damage::Kings => "a side has not one king",
        })
    }
}

impl std::error::Error for Damage {}

/// How the game ended for the mover.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// The other side won.
    Lost,
    /// Nobody won.
    Drawn,
    /// The mover won.
    Won,
    /// The position did not occur in a game.
    Unplayed,
}

impl Outcome {
    /// For a side, when `winner` won, or nobody.
    #[must_use]
    pub fn of(winner: Option<Color>, side: Color) -> Outcome {
        match winner {
            None => Outcome::Drawn,
            Some(colour) if colour == side => Outcome::Won,
            Some(_) => Outcome::Lost,
        }
    }
}

/// A position from the mover's side.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sample {
    /// The mover's men are white and move up the board, whatever their colour in the game.
    pub board: Board,
    /// The mover's centipawns, at most [`SCORE_MAX`] either way.
    pub score: i16,
    /// How the game ended for the mover.
    pub outcome: Outcome,
}

impl Sample {
    /// A position of a game, with the mover's centipawns and result.
    #[must_use]
    pub fn seen_by_mover(chess: &Chess, score: i32, outcome: Outcome) -> Sample {
        let mut board = chess.board().clone();
        if chess.turn() == Color::Black {
            board.flip_vertical();
            board.swap_colors();
        }
        Sample {
            board,
            score: score.clamp(-SCORE_MAX, SCORE_MAX) as i16,
            outcome,
        }
    }

    /// The record, as the module describes it.
    #[must_use]
    pub fn pack(&self) -> [u8; RECORD_BYTES] {
        let mut words = [0_u16; 16];
        for (square, piece) in self.board.iter() {
            let place = square.to_usize();
            let own = u16::from(piece.color == Color::Black) * 6;
            let digit = piece.role as u16 + own;
            words[place / 4] += digit * DIGITS.pow(place as u32 % 4);
        }
        let score = i32::from(self.score).clamp(-SCORE_MAX, SCORE_MAX);
        let rest = (score + SCORE_MAX) as u16 * 4 + self.outcome as u16;
        let mut bytes = [0; RECORD_BYTES];
        for (i, word) in words.iter().enumerate() {
            let whole = word | (rest >> i & 1) << 15;
            bytes[2 * i..2 * i + 2].copy_from_slice(&whole.to_le_bytes());
        }
        bytes
    }

    /// Reads a record.
    ///
    /// # Errors
    /// [`Damage`] when no position is packed so.
    pub fn unpack(bytes: &[u8; RECORD_BYTES]) -> Result<Sample, Damage> {
        let mut board = Board::empty();
        let mut rest = 0;
        for (i, pair) in bytes.chunks_exact(2).enumerate() {
            let word = u16::from_le_bytes([pair[0], pair[1]]);
            rest |= (word >> 15) << i;
            let mut squares = word & SQUARES;
            for place in 4 * i..4 * i + 4 {
                if let Some(piece) = piece_of(squares % DIGITS) {
                    board.set_piece_at(Square::new(place as u32), piece);
                }
                squares /= DIGITS;
            }
            if squares > 0 {
                return Err(Damage::Squares);
            }
        }
        let outcome = match rest % 4 {
            0 => Outcome::Lost,
            1 => Outcome::Drawn,
            2 => Outcome::Won,
            _ => Outcome::Unplayed,
        };
        let score = i32::from(rest / 4) - SCORE_MAX;
        if score > SCORE_MAX {
            return Err(Damage::Score);
        }
        let kings = |side: Color| (board.kings() & board.by_color(side)).count();
        if kings(Color::White) != 1 || kings(Color::Black) != 1 {
            return Err(Damage::Kings);
        }
        Ok(Sample {
            board,
            score: score as i16,
            outcome,
        })
    }

    /// Men on the board, pawns and kings included.
    #[must_use]
    pub fn men(&self) -> usize {
        self.board.occupied().count()
    }

    /// The other side's men that attack the mover's king.
    #[must_use]
    pub fn checkers(&self) -> Bitboard {
        self.board
            .king_of(Color::White)
            .map_or(Bitboard::EMPTY, |king| {
                let occupied = self.board.occupied();
                self.board.attacks_to(king, Color::Black, occupied)
            })
    }
}

fn piece_of(digit: u16) -> Option<Piece> {
    let (color, role) = match digit {
        0 => return None,
        1..=6 => (Color::White, digit),
        _ => (Color::Black, digit - 6),
    };
    let role = match role {
        1 => Role::Pawn,
        2 => Role::Knight,
        3 => Role::Bishop,
        4 => Role::Rook,
        5 => Role::Queen,
        _ => Role::King,
    };
    Some(Piece { color, role })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::position::Position;
    use crate::random::Random;

    /// Positions of random games, of both colours to move.
    fn positions(games: u64) -> Vec<Position> {
        let mut found = Vec::new();
        for number in 0..games {
            let mut random = Random::new(21, number);
            let mut position = Position::start();
            for _ in 0..120 {
                let moves = position.legal_moves();
                let Some(mv) = moves.get(random.below(moves.len())) else {
                    break;
                };
                position = position.play(*mv);
                found.push(position.clone());
            }
        }
        found
    }

    #[test]
    fn what_is_packed_is_read_again() {
        let mut random = Random::new(22, 0);
        let positions = positions(100);
        let black = positions.iter().filter(|p| p.turn() == Color::Black);
        assert!(black.count() > 1_000);
        for position in positions {
            let score = random.below(2 * SCORE_MAX as usize + 1) as i32 - SCORE_MAX;
            let every = [
                Outcome::Lost,
                Outcome::Drawn,
                Outcome::Won,
                Outcome::Unplayed,
            ];
            let outcome = every[random.below(4)];
            let sample = Sample::seen_by_mover(position.chess(), score, outcome);
            assert_eq!(i32::from(sample.score), score);
            assert_eq!(sample.outcome, outcome);
            assert_eq!(Sample::unpack(&sample.pack()), Ok(sample));
        }
    }

    #[test]
    fn with_white_to_move_the_board_is_the_game_s() {
        for position in positions(20) {
            let sample = Sample::seen_by_mover(position.chess(), 0, Outcome::Drawn);
            let same = sample.board == *position.chess().board();
            if position.turn() == Color::White {
                assert!(same);
            } else {
                // The mover's king stands where the black one did, the ranks counted from the other end.
                let theirs = position.chess().board().king_of(Color::Black).unwrap();
                assert_eq!(
                    sample.board.king_of(Color::White).unwrap(),
                    theirs.flip_vertical()
                );
            }
        }
    }

    #[test]
    fn a_mirrored_position_has_the_same_record() {
        let mut compared = 0;
        for position in positions(40) {
            let mut setup = position.chess().to_setup(shakmaty::EnPassantMode::Legal);
            setup.mirror();
            let Ok(mirrored) = setup.position::<Chess>(shakmaty::CastlingMode::Standard) else {
                continue; // too much material for the reader of set-ups, which a game can have
            };
            assert_ne!(mirrored.turn(), position.turn());
            let pack = |chess: &Chess| Sample::seen_by_mover(chess, 77, Outcome::Won).pack();
            assert_eq!(pack(&mirrored), pack(position.chess()));
            compared += 1;
        }
        assert!(compared > 2_000);
    }

    #[test]
    fn a_position_packed_by_hand_is_read_as_it_was_meant() {
        // White: king e1, pawn a2, rook h1; Black: king e8, queen d8, knight b7. White is on move, +100, and won.
        let mut words = [0_u16; 16];
        words[1] = 6 + 4 * 2197; // e1 the mover's king: 6; h1 its rook: 4, times 13^3
        words[2] = 1; // a2 its pawn
        words[12] = 8 * 13; // b7 the other side's knight: 8, times 13
        words[14] = 11 * 2197; // d8 its queen: 11, times 13^3
        words[15] = 12; // e8 its king
        // (100 + 8191) * 4 + 2 = 33,166 = binary 1000 0001 1000 1110
        for bit in [1, 2, 3, 7, 8, 15] {
            words[bit] |= 0x8000;
        }
        let mut bytes = [0; RECORD_BYTES];
        for (i, word) in words.iter().enumerate() {
            bytes[2 * i] = (word & 0xff) as u8;
            bytes[2 * i + 1] = (word >> 8) as u8;
        }
        let sample = Sample::unpack(&bytes).unwrap();
        assert_eq!((sample.score, sample.outcome), (100, Outcome::Won));
        let white = Position::from_fen("3qk3/1n6/8/8/8/8/P7/4K2R w K - 0 1").unwrap();
        assert_eq!(sample.board, *white.chess().board());
        assert_eq!(sample.pack(), bytes);
        // The same with the colours exchanged and Black on move.
        let black = Position::from_fen("4k2r/p7/8/8/8/8/1N6/3QK3 b k - 0 1").unwrap();
        let seen = Sample::seen_by_mover(black.chess(), 100, Outcome::Won);
        assert_eq!(seen.pack(), bytes);
    }

    #[test]
    fn scores_are_kept_up_to_their_bound() {
        let start = Position::start();
        for (score, kept) in [(20_000, 8191), (8191, 8191), (-8191, -8191), (-9000, -8191)] {
            for outcome in [Outcome::Lost, Outcome::Won] {
                let sample = Sample::seen_by_mover(start.chess(), score, outcome);
                let read = Sample::unpack(&sample.pack()).unwrap();
                assert_eq!((i32::from(read.score), read.outcome), (kept, outcome));
            }
        }
    }

    #[test]
    fn what_no_position_packs_is_refused() {
        let good = Sample::seen_by_mover(Position::start().chess(), 0, Outcome::Drawn).pack();
        let with_word = |i: usize, word: u16| {
            let mut bytes = good;
            bytes[2 * i..2 * i + 2].copy_from_slice(&word.to_le_bytes());
            Sample::unpack(&bytes)
        };
        assert_eq!(with_word(5, 28_560), Err(Damage::Kings)); // four kings of the other side
        assert_eq!(with_word(5, 28_561), Err(Damage::Squares));
        assert_eq!(Sample::unpack(&[0; RECORD_BYTES]), Err(Damage::Kings));
        let with_rest = |rest: u16| {
            let mut bytes = good;
            for i in 0..16 {
                bytes[2 * i + 1] = bytes[2 * i + 1] & 0x7f | ((rest >> i & 1) as u8) << 7;
            }
            Sample::unpack(&bytes)
        };
        assert_eq!(with_rest(3).unwrap().outcome, Outcome::Unplayed);
        assert_eq!(with_rest(8192 * 4 + 8191 * 4), Err(Damage::Score));
        assert_eq!(with_rest(8191 * 2 * 4 + 2).unwrap().score, 8191);
    }

    #[test]
    fn whatever_bytes_are_read_are_packed_to_the_same_bytes() {
        let mut random = Random::new(23, 0);
        let (mut read, mut refused) = (0, 0);
        for position in positions(60) {
            let mut bytes = Sample::seen_by_mover(position.chess(), 0, Outcome::Drawn).pack();
            for _ in 0..1 + random.below(3) {
                bytes[random.below(RECORD_BYTES)] ^= 1 << random.below(8);
            }
            match Sample::unpack(&bytes) {
                Ok(sample) => {
                    read += 1;
                    assert_eq!(sample.pack(), bytes);
                }
                Err(_) => refused += 1,
            }
        }
        assert!(read > 500 && refused > 500, "{read} {refused}");
    }

    #[test]
    fn a_check_is_seen() {
        let sample = |fen| {
            let position = Position::from_fen(fen).unwrap();
            Sample::seen_by_mover(position.chess(), 0, Outcome::Drawn)
        };
        assert!(sample("4k3/8/8/8/8/8/4R3/4K3 b - - 0 1").checkers().any());
        assert!(!sample("4k3/4p3/8/8/8/8/4R3/4K3 b - - 0 1").checkers().any());
    }
}

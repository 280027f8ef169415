//! The hand-made evaluation: each term is valued for the middlegame and the endgame, and the two values are
//! blended by the material left. Integers only. The terms are the handbooks' (common practice), most of them
//! listed by Shannon (Programming a Computer for Playing Chess, 1950); weights are our own guesses.

use shakmaty::{
    Bitboard, Board, CastlingSide, Chess, Color, Move, Piece, Position as _, Role, Square, attacks,
};

use super::pawns::{Pawns, ahead, beside, pawn_attacks, relative_rank, step};
use super::squares::{FULL_PHASE, Pair, pair, phase, value};
use super::{Evaluate, LIMIT};

const ON_MOVE: i32 = 12;
const BISHOP_PAIR: Pair = pair(28, 48);
const ROOK_OPEN_FILE: Pair = pair(24, 10);
const ROOK_HALF_OPEN_FILE: Pair = pair(12, 6);
const OUTPOST: Pair = pair(18, 10);
/// Mobility: value of a square, and the number of squares that is neither good nor bad.
const KNIGHT_MOBILITY: (Pair, i32) = (pair(5, 5), 4);
const BISHOP_MOBILITY: (Pair, i32) = (pair(5, 5), 6);
const ROOK_MOBILITY: (Pair, i32) = (pair(2, 4), 7);
const QUEEN_MOBILITY: (Pair, i32) = (pair(1, 3), 13);
const ATTACKED_BY_PAWN: Pair = pair(50, 36);
const ROOK_OR_QUEEN_ATTACKED_BY_MINOR: Pair = pair(36, 30);
const LOOSE: Pair = pair(14, 16);
/// In the opening, for each minor piece on its first square, and for a king that can still castle.
const UNDEVELOPED: i32 = -11;
const CAN_CASTLE: i32 = 12;
const QUEEN_OUT_BEFORE_MINORS: i32 = -6;
const CENTRE: Bitboard = Bitboard(0x0000_0018_1800_0000);
const CENTRE_HELD: Pair = pair(5, 0);

/// Sums that a move changes a little: material, places, phase. For White.
#[derive(Debug, Clone, Copy, Default)]
struct Sums {
    value: Pair,
    phase: i32,
}

impl Sums {
    fn of(board: &Board) -> Sums {
        let mut sums = Sums::default();
        for (square, piece) in board.iter() {
            sums.add(piece, square);
        }
        sums
    }

    fn add(&mut self, piece: Piece, square: Square) {
        self.value += value(piece, square);
        self.phase += phase(piece.role);
    }

    fn remove(&mut self, piece: Piece, square: Square) {
        self.value -= value(piece, square);
        self.phase -= phase(piece.role);
    }

    fn after(mut self, turn: Color, mv: Move) -> Sums {
        match mv {
            Move::Normal {
                role,
                from,
                capture,
                to,
                promotion,
            } => {
                self.remove(role.of(turn), from);
                if let Some(taken) = capture {
                    self.remove(taken.of(!turn), to);
                }
                self.add(promotion.unwrap_or(role).of(turn), to);
            }
            Move::EnPassant { from, to } => {
                self.remove(turn.pawn(), from);
                self.remove((!turn).pawn(), Square::from_coords(to.file(), from.rank()));
                self.add(turn.pawn(), to);
            }
            Move::Castle { king, rook } => {
                let side = CastlingSide::from_king_side(king < rook);
                self.remove(turn.king(), king);
                self.remove(turn.rook(), rook);
                self.add(turn.king(), side.king_to(turn));
                self.add(turn.rook(), side.rook_to(turn));
            }
            Move::Put { role, to } => self.add(role.of(turn), to),
        }
        self
    }
}

/// Material, places, mobility, pawns, king safety, threats, development; blended by the material left.
#[derive(Clone)]
pub struct Tapered {
    stack: Vec<Sums>,
    pawns: Pawns,
}

impl Default for Tapered {
    fn default() -> Self {
        Tapered::new()
    }
}

impl Tapered {
    /// An evaluation at no position yet: call [`Evaluate::refresh`] first.
    #[must_use]
    pub fn new() -> Self {
        Tapered {
            stack: Vec::with_capacity(160),
            pawns: Pawns::new(),
        }
    }
}

impl Evaluate for Tapered {
    fn refresh(&mut self, chess: &Chess) {
        self.stack.clear();
        self.stack.push(Sums::of(chess.board()));
    }

    fn push(&mut self, before: &Chess, mv: Move) {
        let sums = self.stack.last().copied().unwrap_or_default();
        self.stack.push(sums.after(before.turn(), mv));
    }

    fn pop(&mut self) {
        self.stack.pop();
    }

    fn evaluate(&mut self, chess: &Chess) -> i32 {
        let board = chess.board();
        let sums = self.stack.last().copied().unwrap_or_default();
        let structure = self.pawns.look(board);
        let mut total = sums.value + structure.value;

        let white = Army::new(board, Color::White);
        let black = Army::new(board, Color::Black);
        let mut attacks_of_white = Attacks::new(&white);
        let mut attacks_of_black = Attacks::new(&black);
        total += pieces(board, &white, &black, &mut attacks_of_white);
        total -= pieces(board, &black, &white, &mut attacks_of_black);
        total += threats(board, &white, &black, &attacks_of_white, &attacks_of_black);
        total -= threats(board, &black, &white, &attacks_of_black, &attacks_of_white);
        total += king_safety(board, &white, &black, &attacks_of_white, &attacks_of_black);
        total -= king_safety(board, &black, &white, &attacks_of_black, &attacks_of_white);
        total += passers(board, structure.passed, &white, &black);
        total -= passers(board, structure.passed, &black, &white);
        let opening = development(chess, Color::White) - development(chess, Color::Black);
        total += pair(opening, 0);

        let phase = sums.phase.clamp(0, FULL_PHASE);
        let mut blended = (total.mg * phase + total.eg * (FULL_PHASE - phase)) / FULL_PHASE;
        blended += drive(board, &white, &black) - drive(board, &black, &white);
        let stronger = if blended >= 0 {
            Color::White
        } else {
            Color::Black
        };
        blended = blended * scale(board, stronger) / 64;

        let for_mover = chess.turn().fold_wb(blended, -blended) + ON_MOVE;
        for_mover.clamp(-LIMIT, LIMIT)
    }
}

/// What the terms of one side share.
struct Army {
    color: Color,
    own: Bitboard,
    pawns: Bitboard,
    pawn_attacks: Bitboard,
    king: Square,
    /// The king's square, its neighbours, and the row before these.
    king_zone: Bitboard,
}

impl Army {
    fn new(board: &Board, color: Color) -> Army {
        let own = board.by_color(color);
        let pawns = own & board.pawns();
        let king = board.king_of(color).unwrap_or(Square::A1);
        let ring = attacks::king_attacks(king).with(king);
        Army {
            color,
            own,
            pawns,
            pawn_attacks: pawn_attacks(pawns, color),
            king,
            king_zone: ring | ring.shift(color.fold_wb(8, -8)),
        }
    }
}

/// What a side attacks, gathered while its pieces are counted.
struct Attacks {
    all: Bitboard,
    twice: Bitboard,
    minors: Bitboard,
    by_role: [Bitboard; 6],
    /// Pieces that reach the enemy king's zone, their weight, and the squares of it that they attack.
    attackers: i32,
    weight: i32,
    squares: i32,
}

impl Attacks {
    fn new(army: &Army) -> Attacks {
        let king = attacks::king_attacks(army.king);
        let mut by_role = [Bitboard::EMPTY; 6];
        by_role[0] = army.pawn_attacks;
        by_role[5] = king;
        Attacks {
            all: army.pawn_attacks | king,
            twice: army.pawn_attacks & king,
            minors: Bitboard::EMPTY,
            by_role,
            attackers: 0,
            weight: 0,
            squares: 0,
        }
    }

    fn add(&mut self, role: Role, reach: Bitboard, zone: Bitboard, weight: i32) {
        self.twice |= self.all & reach;
        self.all |= reach;
        self.by_role[role as usize - 1] |= reach;
        let hits = reach & zone;
        if hits.any() {
            self.attackers += 1;
            self.weight += weight;
            self.squares += hits.count() as i32;
        }
    }
}

fn mobility((each, neutral): (Pair, i32), squares: Bitboard) -> Pair {
    each * (squares.count() as i32 - neutral)
}

/// Mobility, outposts, files, the bishop pair; fills `reached`.
fn pieces(board: &Board, army: &Army, foe: &Army, reached: &mut Attacks) -> Pair {
    let mut total = Pair::default();
    let occupied = board.occupied();
    let free = !(army.pawns | Bitboard::from_square(army.king) | foe.pawn_attacks);
    let zone = foe.king_zone;

    for square in board.knights() & army.own {
        let reach = attacks::knight_attacks(square);
        reached.add(Role::Knight, reach, zone, 20);
        total += mobility(KNIGHT_MOBILITY, reach & free);
        if is_outpost(square, army, foe) {
            total += OUTPOST;
        }
    }
    let bishops = board.bishops() & army.own;
    for square in bishops {
        let reach = attacks::bishop_attacks(square, occupied ^ (board.queens() & army.own));
        reached.add(Role::Bishop, reach, zone, 20);
        total += mobility(BISHOP_MOBILITY, reach & free);
    }
    reached.minors = reached.by_role[1] | reached.by_role[2];
    if (bishops & Bitboard::LIGHT_SQUARES).any() && (bishops & Bitboard::DARK_SQUARES).any() {
        total += BISHOP_PAIR;
    }
    for square in board.rooks() & army.own {
        let reach = attacks::rook_attacks(square, occupied ^ (board.rooks_and_queens() & army.own));
        reached.add(Role::Rook, reach, zone, 28);
        total += mobility(ROOK_MOBILITY, reach & free);
        let file = Bitboard::from_file(square.file());
        if (file & army.pawns).is_empty() {
            total += if (file & foe.pawns).is_empty() {
                ROOK_OPEN_FILE
            } else {
                ROOK_HALF_OPEN_FILE
            };
        }
    }
    for square in board.queens() & army.own {
        let reach = attacks::queen_attacks(square, occupied);
        reached.add(Role::Queen, reach, zone, 44);
        total += mobility(QUEEN_MOBILITY, reach & free);
    }
    total
        + CENTRE_HELD
            * ((reached.all & CENTRE).count() as i32 + (army.pawns & CENTRE).count() as i32)
}

/// A square held by an own pawn, in the enemy's half, that no enemy pawn can ever attack.
fn is_outpost(square: Square, army: &Army, foe: &Army) -> bool {
    let rank = relative_rank(square, army.color);
    let way = ahead(beside(Bitboard::from_square(square)), army.color);
    (3..=5).contains(&rank) && army.pawn_attacks.contains(square) && (way & foe.pawns).is_empty()
}

/// Enemy pieces that are attacked by less, or attacked and not defended.
fn threats(board: &Board, army: &Army, foe: &Army, ours: &Attacks, theirs: &Attacks) -> Pair {
    let mut total = Pair::default();
    let pieces = foe.own & !foe.pawns & !board.kings();
    total += ATTACKED_BY_PAWN * (pieces & army.pawn_attacks).count() as i32;
    let heavy = foe.own & board.rooks_and_queens();
    total += ROOK_OR_QUEEN_ATTACKED_BY_MINOR * (heavy & ours.minors).count() as i32;
    let loose = foe.own & !board.kings() & ours.all & !theirs.all;
    total += LOOSE * loose.count() as i32;
    total
}

/// The cover of a side's king, and the pressure on it.
fn king_safety(board: &Board, army: &Army, foe: &Army, ours: &Attacks, theirs: &Attacks) -> Pair {
    let mut shelter = 0;
    let king = Bitboard::from_square(army.king);
    let forward = ahead(king | beside(king), army.color) | beside(king) | king;
    let files =
        beside(Bitboard::from_file(army.king.file())) | Bitboard::from_file(army.king.file());
    for file in shakmaty::File::ALL {
        let line = Bitboard::from_file(file);
        if (line & files).is_empty() {
            continue;
        }
        let nearest = (line & forward & army.pawns)
            .into_iter()
            .map(|pawn| pawn.rank().distance(army.king.rank()))
            .min();
        shelter += match nearest {
            Some(0 | 1) => 14,
            Some(2) => 7,
            Some(_) => -4,
            None if (line & foe.pawns).is_empty() => -22,
            None => -16,
        };
        let storm = (line & forward & foe.pawns)
            .into_iter()
            .map(|pawn| pawn.rank().distance(army.king.rank()))
            .min();
        shelter -= match storm {
            Some(2) => 10,
            Some(3) => 6,
            _ => 0,
        };
    }

    // Pressure grows with the square of what attacks (common practice), and needs a queen to be worth much.
    let mut danger = 0;
    if theirs.attackers >= 2 || (theirs.attackers == 1 && theirs.by_role[4].any()) {
        let occupied = board.occupied();
        let safe = !foe.own & (!ours.all | (theirs.twice & !ours.twice & ours.by_role[5]));
        let straight = attacks::rook_attacks(army.king, occupied);
        let slanted = attacks::bishop_attacks(army.king, occupied);
        let jumps = attacks::knight_attacks(army.king);
        let weak = army.king_zone & theirs.all & (!ours.all | (ours.by_role[5] & !ours.twice));
        danger += theirs.weight + 6 * theirs.squares + 14 * weak.count() as i32;
        danger += 40 * i32::from((straight & theirs.by_role[3] & safe).any());
        danger += 36 * i32::from(((straight | slanted) & theirs.by_role[4] & safe).any());
        danger += 24 * i32::from((slanted & theirs.by_role[2] & safe).any());
        danger += 34 * i32::from((jumps & theirs.by_role[1] & safe).any());
        danger -= shelter / 2;
        if (board.queens() & foe.own).is_empty() {
            danger -= 60;
        }
    }
    let danger = danger.clamp(0, 500);
    pair(shelter - danger * danger / 420, -danger / 8)
}

/// Passed pawns: whether the way is free, and how near the kings are.
fn passers(board: &Board, passed: Bitboard, army: &Army, foe: &Army) -> Pair {
    let mut total = Pair::default();
    for square in passed & army.pawns {
        let rank = relative_rank(square, army.color) as i32;
        let stop = step(square, army.color);
        if rank >= 3 {
            let near = foe.king.distance(stop) as i32 * 5 - army.king.distance(stop) as i32 * 3;
            total += pair(0, near * (rank - 2) / 2);
        }
        if board.occupied().contains(stop) {
            total -= pair(rank * 2, rank * 6);
        } else if (ahead(Bitboard::from_square(square), army.color) & board.occupied()).is_empty() {
            total += pair(0, rank * 4);
        }
    }
    total
}

/// The opening: pieces still at home, the right to castle, a queen out too early. Middlegame value.
fn development(chess: &Chess, color: Color) -> i32 {
    let board = chess.board();
    let own = board.by_color(color);
    let home = Bitboard::from_rank(color.backrank());
    let minors = own & home & (board.knights() | board.bishops());
    let knights = Bitboard::from_square(Square::B1).with(Square::G1);
    let bishops = Bitboard::from_square(Square::C1).with(Square::F1);
    let first = |squares: Bitboard| color.fold_wb(squares, squares.flip_vertical());
    let at_home =
        (minors & board.knights() & first(knights)) | (minors & board.bishops() & first(bishops));
    let undeveloped = at_home.count() as i32;
    let mut total = UNDEVELOPED * undeveloped;
    if chess.castles().has_color(color) {
        total += CAN_CASTLE;
    }
    if (own & board.queens()).any() && (own & board.queens() & home).is_empty() {
        total += QUEEN_OUT_BEFORE_MINORS * undeveloped;
    }
    total
}

/// Against a bare king: drive it to the edge and bring the own king near.
fn drive(board: &Board, army: &Army, foe: &Army) -> i32 {
    if foe.own.count() > 1
        || (army.own & (board.rooks_and_queens() | board.pawns())).is_empty()
            && army.own.count() < 3
    {
        return 0;
    }
    let (file, rank) = (foe.king.file() as i32, foe.king.rank() as i32);
    let from_centre = (2 * file - 7).abs() + (2 * rank - 7).abs();
    8 * from_centre + 10 * (7 - army.king.distance(foe.king) as i32)
}

/// How much of an advantage can be won, in 64ths: little without pawns, less with bishops on opposite colours.
fn scale(board: &Board, stronger: Color) -> i32 {
    let own = board.by_color(stronger);
    let foe = board.by_color(!stronger);
    if (own & board.pawns()).is_empty() {
        let ours = pieces_worth(board, own);
        let theirs = pieces_worth(board, foe);
        let only_knights = (own & board.knights()).count() == own.count() - 1;
        if ours <= 3 || (ours == 6 && only_knights && theirs == 0) {
            return 0;
        }
        if ours - theirs <= 3 {
            return 12;
        }
    }
    let bishops = board.bishops();
    let one_each = (own & bishops).count() == 1 && (foe & bishops).count() == 1;
    if one_each && (bishops & Bitboard::LIGHT_SQUARES).count() == 1 {
        let others = board.knights() | board.rooks_and_queens();
        return if others.is_empty() { 30 } else { 52 };
    }
    64
}

/// The pieces of a side by the trade's 3, 3, 5, 9.
fn pieces_worth(board: &Board, own: Bitboard) -> i32 {
    let count = |set: Bitboard| (own & set).count() as i32;
    3 * (count(board.knights()) + count(board.bishops()))
        + 5 * count(board.rooks())
        + 9 * count(board.queens())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::position::Position;

    fn of(fen: &str) -> i32 {
        let position = Position::from_fen(fen).unwrap();
        let mut evaluation = Tapered::new();
        evaluation.refresh(position.chess());
        evaluation.evaluate(position.chess())
    }

    #[test]
    fn the_initial_position_is_worth_the_move_only() {
        assert_eq!(
            of("rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"),
            ON_MOVE
        );
    }

    #[test]
    fn reversed_colours_have_the_same_value() {
        let white = of("r1bqkb1r/ppp2ppp/2np1n2/4p3/2B1PP2/2N5/PPPP2PP/R1BQK1NR w KQkq - 0 5");
        let black = of("r1bqk1nr/pppp2pp/2n5/2b1pp2/4P3/2NP1N2/PPP2PPP/R1BQKB1R b KQkq - 0 5");
        assert_eq!(white, black);
    }

    #[test]
    fn sums_kept_move_by_move_equal_sums_made_anew() {
        let mut position = Position::start();
        let mut evaluation = Tapered::new();
        evaluation.refresh(position.chess());
        // En passant, castling on both wings, a promotion with capture.
        let line = "e4 Nc6 e5 d5 exd6 Bg4 Be2 Qd7 Nf3 O-O-O dxc7 Nf6 O-O Bxf3 cxd8=Q+ Nxd8";
        for san in line.split(' ') {
            let mv = position.parse_san(san).unwrap();
            evaluation.push(position.chess(), mv);
            position = position.play(mv);
            let kept = evaluation.evaluate(position.chess());
            let mut fresh = Tapered::new();
            fresh.refresh(position.chess());
            assert_eq!(kept, fresh.evaluate(position.chess()), "{san}");
        }
        for _ in line.split(' ') {
            evaluation.pop();
        }
        assert_eq!(evaluation.evaluate(Position::start().chess()), ON_MOVE);
    }

    #[test]
    fn two_knights_alone_are_worth_a_draw() {
        assert!(of("8/8/8/3k4/8/8/3NN3/4K3 w - - 0 1").abs() <= ON_MOVE);
    }

    #[test]
    fn development_is_worth_something() {
        let developed = of("rnbqkbnr/pppp1ppp/8/4p3/2B1P3/2N2N2/PPPP1PPP/R1BQK2R w KQkq - 0 1");
        assert!(developed > 60);
    }
}

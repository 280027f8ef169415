//! The layout of the table of weights: each term has a run of one or more weights, one after another.
//!
//! A weight is a [`Pair`](super::pair::Pair) in centipawns for the side that has the feature; units of king danger are
//! numbers of their own. The source beside a term names what describes the feature, never its weight. "CPW" is the
//! Chess Programming Wiki, by article; "handbooks" is common practice.

/// A run of weights of one term.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Term {
    /// As in the table of weights.
    pub name: &'static str,
    /// Where the run begins.
    pub first: usize,
    /// How many weights it has.
    pub len: usize,
}

macro_rules! layout {
    ($all:ident, $count:ident: $($(#[$doc:meta])* $name:ident $len:expr;)*) => {
        layout!(@place 0; $($(#[$doc])* $name $len;)*);
        /// All runs, in order.
        pub const $all: &[Term] = &[$(Term {
            name: stringify!($name),
            first: $name,
            len: $len,
        },)*];
        /// How many weights there are.
        pub const $count: usize = $all[$all.len() - 1].first + $all[$all.len() - 1].len;
    };
    (@place $first:expr; $(#[$doc:meta])* $name:ident $len:expr; $($rest:tt)*) => {
        $(#[$doc])*
        pub const $name: usize = $first;
        layout!(@place $name + $len; $($rest)*);
    };
    (@place $first:expr;) => {};
}

layout! { TERMS, COUNT:
    /// By role, pawn to king ("Material", CPW; Shannon, Programming a Computer for Playing Chess, 1950).
    MATERIAL 6;
    /// By role and square seen from the own side, a1 first ("Piece-Square Tables", CPW).
    SQUARES 384;
    /// To be on move ("Tempo", CPW).
    TEMPO 1;
    /// Two bishops on different colours (handbooks; Kaufman, The Evaluation of Material Imbalances, 1999).
    BISHOP_PAIR 1;
    /// Two rooks or more (Kaufman 1999).
    ROOK_PAIR 1;
    /// A knight, for each own pawn above five (Kaufman 1999).
    KNIGHT_WITH_PAWN 1;
    /// A rook, for each own pawn above five (Kaufman 1999).
    ROOK_WITH_PAWN 1;

    /// By number of squares reached in the mobility area ("Mobility", CPW; Shannon 1950).
    KNIGHT_MOBILITY 9;
    /// The same, through the own queen.
    BISHOP_MOBILITY 14;
    /// The same, through own rooks and the queen.
    ROOK_MOBILITY 15;
    /// The same.
    QUEEN_MOBILITY 28;

    /// A knight on a square held by a pawn, that no enemy pawn can attack (Nimzowitsch, My System, 1925).
    KNIGHT_OUTPOST 1;
    /// A bishop on such a square.
    BISHOP_OUTPOST 1;
    /// A knight that can reach such a square in one move.
    OUTPOST_NEAR 1;
    /// A knight or bishop right behind a pawn (handbooks).
    MINOR_BEHIND_PAWN 1;
    /// For each own pawn on a bishop's colour ("Bad Bishop", CPW).
    BAD_BISHOP 1;
    /// For each of them that is blocked.
    BAD_BISHOP_BLOCKED 1;
    /// A bishop that sees both centre squares of a long diagonal (handbooks).
    BISHOP_LONG_DIAGONAL 1;
    /// No pawn on a rook's file ("Rook on Open File", CPW; Nimzowitsch 1925).
    ROOK_OPEN_FILE 1;
    /// No own pawn on it.
    ROOK_HALF_OPEN_FILE 1;
    /// A rook on the seventh rank, with pawns on it or the king behind it ("Rook on Seventh", CPW; Nimzowitsch 1925).
    ROOK_SEVENTH 1;
    /// A rook shut in by its own king; twice when it cannot castle any more ("Trapped Pieces", CPW).
    ROOK_TRAPPED 1;
    /// An own piece pinned to the king ("Pin", CPW).
    PINNED 1;
    /// For each centre square attacked (Shannon 1950).
    CENTRE_HELD 1;

    /// A pawn with an own one before it ("Doubled Pawn", CPW; Shannon 1950).
    DOUBLED 1;
    /// No own pawn on a neighbouring file ("Isolated Pawn", CPW; Shannon 1950).
    ISOLATED 1;
    /// The same, with no enemy pawn before it (handbooks).
    ISOLATED_OPEN 1;
    /// No own pawn level or behind beside it, and its next square held by a pawn ("Backward Pawn", CPW; Shannon 1950).
    BACKWARD 1;
    /// The same, with no enemy pawn before it (handbooks).
    BACKWARD_OPEN 1;
    /// Defended by a pawn, by rank ("Connected Pawns", CPW).
    DEFENDED 8;
    /// A pawn beside it, by rank ("Phalanx", CPW).
    PHALANX 8;
    /// No enemy pawn before it, and as many helpers as guards, by rank ("Candidate Passed Pawn", CPW).
    CANDIDATE 8;
    /// No enemy pawn before it or beside its way, by rank ("Passed Pawn", CPW; Nimzowitsch 1925).
    PASSED 8;
    /// Squares behind the pawns on the middle files that no enemy pawn attacks ("Space", CPW).
    SPACE 1;

    /// A passed pawn that something stands before, by rank (Nimzowitsch 1925, blockade).
    PASSED_BLOCKED 8;
    /// A passed pawn whose next square is neither held nor attacked by the enemy, by rank.
    PASSED_NEXT_SAFE 8;
    /// A passed pawn whose whole way is free and unattacked, by rank.
    PASSED_WAY_SAFE 8;
    /// A passed pawn whose next square is attacked by the own side, by rank.
    PASSED_SUPPORTED 8;
    /// Distance of the own king from the next square of a passed pawn, by rank ("King Pawn Tropism", CPW).
    PASSED_OWN_KING 8;
    /// Distance of the enemy king from it, by rank.
    PASSED_ENEMY_KING 8;
    /// An own rook behind a passed pawn ("Tarrasch Rule", CPW).
    PASSED_ROOK_BEHIND 1;
    /// An enemy rook behind it.
    PASSED_ENEMY_ROOK_BEHIND 1;
    /// A pawn that no king can catch, the enemy having neither pieces nor such a pawn ("Rule of the Square", CPW).
    UNSTOPPABLE 1;
    /// For each move that it still needs.
    UNSTOPPABLE_MOVES 1;
    /// When both sides have such a pawn, for each move by which the own one is quicker (handbooks).
    RACE 1;

    /// The nearest own pawn before the king on its file and the two beside it, by the file's distance from the
    /// edge and the pawn's from the king's rank, 7 for none ("King Safety, Pawn Shield", CPW).
    SHELTER 32;
    /// The nearest enemy pawn on such a file, the same way ("King Safety, Pawn Storm", CPW).
    STORM 32;
    /// The same when an own pawn blocks it, by its distance alone.
    STORM_BLOCKED 8;

    /// A pawn attacks a piece, by the piece's role, knight to queen (handbooks).
    PAWN_ATTACKS 4;
    /// A knight or bishop attacks a man, pawn to queen; pawns and minors when they are weak.
    MINOR_ATTACKS 5;
    /// A rook attacks a weak man, pawn to rook, or a queen.
    ROOK_ATTACKS 5;
    /// The king attacks a weak man.
    KING_ATTACKS 1;
    /// A piece that is attacked and not defended ("Hanging Piece", CPW).
    LOOSE 1;
    /// A pawn that is.
    LOOSE_PAWN 1;
    /// A piece that a safe step of a pawn would attack.
    PUSH_THREAT 1;

    /// By number of minor pieces on their first squares ("Development", CPW).
    UNDEVELOPED 5;
    /// The right to castle on the king's wing ("Castling Rights", CPW).
    CAN_CASTLE_SHORT 1;
    /// The right to castle on the queen's wing.
    CAN_CASTLE_LONG 1;
    /// A queen off the first rank, for each undeveloped minor piece (handbooks).
    QUEEN_OUT_EARLY 1;

    /// A rook or queen against a bare king: a won ending (handbooks).
    BARE_KING 1;
    /// Against a bare king: its distance from the centre, 0 to 6 ("Mop-up Evaluation", CPW).
    DRIVE_TO_EDGE 1;
    /// Against a bare king: how near the kings are, 0 to 7.
    DRIVE_KINGS_NEAR 1;
    /// With bishop and knight: how near the bare king is to a corner of the bishop's colour, 0 to 7
    /// ("KBNK Endgame", CPW).
    DRIVE_TO_CORNER 1;
}

layout! { UNITS, UNIT_COUNT:
    /// Always ("King Safety, Attacking King Zone", CPW).
    DANGER_BASE 1;
    /// A piece that reaches the king's ring, knight to queen.
    DANGER_ATTACKER 4;
    /// For each square of the ring that a piece attacks, counted for each piece.
    DANGER_RING 1;
    /// For each square of the ring that is attacked, and defended by nothing or the king or queen alone.
    DANGER_WEAK 1;
    /// A check from a square where the piece cannot be taken, knight to queen.
    DANGER_SAFE_CHECK 4;
    /// A check that can be taken, knight, bishop or rook.
    DANGER_CHECK 1;
    /// The enemy has no queen.
    DANGER_NO_QUEEN 1;
    /// For each of the three files at the king without an own pawn.
    DANGER_OPEN_FILE 1;
    /// For each own knight or bishop in the ring.
    DANGER_DEFENDER 1;
    /// For each own piece pinned to the king.
    DANGER_PINNED 1;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_runs_follow_one_another_without_a_gap() {
        for (all, count) in [(TERMS, COUNT), (UNITS, UNIT_COUNT)] {
            let mut next = 0;
            for term in all {
                assert_eq!(term.first, next, "{}", term.name);
                next += term.len;
            }
            assert_eq!(next, count);
        }
    }
}

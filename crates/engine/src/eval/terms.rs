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

    /// By number of squares attacked that hold no own man and that no enemy pawn attacks ("Mobility", CPW; Shannon 1950).
    KNIGHT_MOBILITY 9;
    /// The same.
    BISHOP_MOBILITY 14;
    /// The same.
    ROOK_MOBILITY 15;
    /// The same.
    QUEEN_MOBILITY 28;

    /// A knight on a hole: a square of the fifth to seventh rank that no enemy pawn can ever attack (Nimzowitsch, My
    /// System, 1925).
    KNIGHT_OUTPOST 1;
    /// Beside that, when an own pawn defends it there.
    KNIGHT_OUTPOST_HELD 1;
    /// A bishop on a hole.
    BISHOP_OUTPOST 1;
    /// Beside that, when an own pawn defends it there.
    BISHOP_OUTPOST_HELD 1;
    /// For each own pawn on a bishop's colour ("Bad Bishop", CPW).
    BAD_BISHOP 1;
    /// No pawn on a rook's file ("Rook on Open File", CPW; Nimzowitsch 1925).
    ROOK_OPEN_FILE 1;
    /// No own pawn on it.
    ROOK_HALF_OPEN_FILE 1;
    /// A rook on the seventh rank, with pawns on it or the king behind it ("Rook on Seventh", CPW; Nimzowitsch 1925).
    ROOK_SEVENTH 1;
    /// An own piece pinned to the king ("Pin", CPW).
    PINNED 1;
    /// For each centre square attacked (Shannon 1950).
    CENTRE_HELD 1;
    /// Space: for each square beyond the middle of the board that is attacked and that no enemy pawn attacks (handbooks).
    SPACE 1;

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

    /// For each step that a passed pawn can take at once, by rank: to empty squares, none of them attacked by the enemy
    /// unless the own side attacks it too (Nimzowitsch 1925, the lust to expand).
    PASSED_FREE 8;
    /// A passed pawn that can step as far as it goes, by rank.
    PASSED_WAY_FREE 8;
    /// By how much the own king is nearer to the next square of a passed pawn than the enemy's, by rank ("King Pawn
    /// Tropism", CPW).
    PASSED_KINGS 8;
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

    /// The nearest own pawn ahead of the king on its file: one rank away, two, three and more, none ("King Safety, Pawn
    /// Shield", CPW).
    COVER 4;
    /// The same on each neighbouring file.
    COVER_BESIDE 4;
    /// The nearest enemy pawn ahead of the king on each of these files: one rank away to five, further or none ("King
    /// Safety, Pawn Storm", CPW).
    STORM 6;

    /// An enemy man that a pawn attacks, by its role, pawn to queen (handbooks).
    ATTACKED_BY_PAWN 5;
    /// One that a piece worth less attacks, by its role (handbooks): a rook by a minor piece, a queen by any
    /// other piece; nothing but a pawn is worth less than a minor piece.
    ATTACKED_BY_CHEAPER 5;
    /// One that is attacked and not defended, by its role ("Hanging Piece", CPW).
    LOOSE 5;
    /// One that more men attack than defend, by its role (handbooks).
    OUTNUMBERED 5;
    /// A step of a pawn to an empty square that no enemy pawn attacks, from where it would attack a piece (handbooks).
    PAWN_STEP 1;

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
    /// For each attack of a piece, knight to queen, on the king's square or a neighbour of it ("King Safety", CPW).
    DANGER_HITS 4;
    /// For each neighbour square that is attacked, and defended by the king alone.
    DANGER_BARE_SQUARE 1;
    /// For each square that no own man attacks, from which an enemy piece may check in one move.
    DANGER_CHECK 1;
    /// For each file at the king without an own pawn, while the enemy has a rook or queen.
    DANGER_OPEN_FILE 1;
    /// For each own man but pawns within two squares of the king.
    DANGER_GUARD 1;
    /// When the enemy has a queen (handbooks).
    DANGER_QUEEN 1;
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

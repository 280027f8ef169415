//! Weights of the evaluation. Written by a program: do not edit.
//!
//! These are guesses, fitted to nothing: `python training/guesses.py`.

use super::pair::{Pair, pair};
use super::terms::{COUNT, UNIT_COUNT};

/// All weights, in centipawns, laid out as `terms.rs` says.
#[rustfmt::skip]
pub static WEIGHTS: [Pair; COUNT] = [
    // MATERIAL
    pair(92, 112), pair(330, 300), pair(340, 320), pair(480, 530), pair(970, 980), pair(0, 0),
    // SQUARES
    pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(-8, 0), pair(-8, -1), pair(-8, -2), pair(-20, -3), pair(-20, -3), pair(-8, -2), pair(-8, -1), pair(-8, 0),
    pair(-6, 3), pair(-5, 2), pair(-4, 1), pair(-3, 0), pair(-3, 0), pair(-4, 1), pair(-5, 2), pair(-6, 3),
    pair(0, 12), pair(2, 11), pair(10, 10), pair(24, 9), pair(24, 9), pair(10, 10), pair(2, 11), pair(0, 12),
    pair(10, 27), pair(13, 26), pair(16, 25), pair(19, 24), pair(19, 24), pair(16, 25), pair(13, 26), pair(10, 27),
    pair(24, 48), pair(28, 47), pair(32, 46), pair(36, 45), pair(36, 45), pair(32, 46), pair(28, 47), pair(24, 48),
    pair(42, 75), pair(47, 74), pair(52, 73), pair(57, 72), pair(57, 72), pair(52, 73), pair(47, 74), pair(42, 75),
    pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(-32, -24), pair(-23, -17), pair(-14, -10), pair(-5, -3), pair(-5, -3), pair(-14, -10), pair(-23, -17), pair(-32, -24),
    pair(-23, -17), pair(-14, -10), pair(-5, -3), pair(4, 4), pair(4, 4), pair(-5, -3), pair(-14, -10), pair(-23, -17),
    pair(-14, -10), pair(-5, -3), pair(4, 4), pair(13, 11), pair(13, 11), pair(4, 4), pair(-5, -3), pair(-14, -10),
    pair(-5, -3), pair(4, 4), pair(13, 11), pair(22, 18), pair(22, 18), pair(13, 11), pair(4, 4), pair(-5, -3),
    pair(-5, -3), pair(4, 4), pair(13, 11), pair(22, 18), pair(22, 18), pair(13, 11), pair(4, 4), pair(-5, -3),
    pair(-14, -10), pair(-5, -3), pair(4, 4), pair(13, 11), pair(13, 11), pair(4, 4), pair(-5, -3), pair(-14, -10),
    pair(-23, -17), pair(-14, -10), pair(-5, -3), pair(4, 4), pair(4, 4), pair(-5, -3), pair(-14, -10), pair(-23, -17),
    pair(-32, -24), pair(-23, -17), pair(-14, -10), pair(-5, -3), pair(-5, -3), pair(-14, -10), pair(-23, -17), pair(-32, -24),
    pair(-22, -8), pair(-18, -5), pair(-14, -2), pair(-10, 1), pair(-10, 1), pair(-14, -2), pair(-18, -5), pair(-22, -8),
    pair(-6, -5), pair(-2, -2), pair(2, 1), pair(6, 4), pair(6, 4), pair(2, 1), pair(-2, -2), pair(-6, -5),
    pair(-2, -2), pair(2, 1), pair(6, 4), pair(10, 7), pair(10, 7), pair(6, 4), pair(2, 1), pair(-2, -2),
    pair(2, 1), pair(6, 4), pair(10, 7), pair(14, 10), pair(14, 10), pair(10, 7), pair(6, 4), pair(2, 1),
    pair(2, 1), pair(6, 4), pair(10, 7), pair(14, 10), pair(14, 10), pair(10, 7), pair(6, 4), pair(2, 1),
    pair(-2, -2), pair(2, 1), pair(6, 4), pair(10, 7), pair(10, 7), pair(6, 4), pair(2, 1), pair(-2, -2),
    pair(-6, -5), pair(-2, -2), pair(2, 1), pair(6, 4), pair(6, 4), pair(2, 1), pair(-2, -2), pair(-6, -5),
    pair(-10, -8), pair(-6, -5), pair(-2, -2), pair(2, 1), pair(2, 1), pair(-2, -2), pair(-6, -5), pair(-10, -8),
    pair(-6, 0), pair(-2, 0), pair(2, 0), pair(6, 0), pair(6, 0), pair(2, 0), pair(-2, 0), pair(-6, 0),
    pair(-6, 0), pair(-2, 0), pair(2, 0), pair(6, 0), pair(6, 0), pair(2, 0), pair(-2, 0), pair(-6, 0),
    pair(-6, 0), pair(-2, 0), pair(2, 0), pair(6, 0), pair(6, 0), pair(2, 0), pair(-2, 0), pair(-6, 0),
    pair(-6, 0), pair(-2, 0), pair(2, 0), pair(6, 0), pair(6, 0), pair(2, 0), pair(-2, 0), pair(-6, 0),
    pair(-6, 0), pair(-2, 0), pair(2, 0), pair(6, 0), pair(6, 0), pair(2, 0), pair(-2, 0), pair(-6, 0),
    pair(-6, 0), pair(-2, 0), pair(2, 0), pair(6, 0), pair(6, 0), pair(2, 0), pair(-2, 0), pair(-6, 0),
    pair(-6, 0), pair(-2, 0), pair(2, 0), pair(6, 0), pair(6, 0), pair(2, 0), pair(-2, 0), pair(-6, 0),
    pair(-6, 0), pair(-2, 0), pair(2, 0), pair(6, 0), pair(6, 0), pair(2, 0), pair(-2, 0), pair(-6, 0),
    pair(-2, -12), pair(-1, -8), pair(0, -4), pair(1, 0), pair(1, 0), pair(0, -4), pair(-1, -8), pair(-2, -12),
    pair(-1, -8), pair(0, -4), pair(1, 0), pair(2, 4), pair(2, 4), pair(1, 0), pair(0, -4), pair(-1, -8),
    pair(0, -4), pair(1, 0), pair(2, 4), pair(3, 8), pair(3, 8), pair(2, 4), pair(1, 0), pair(0, -4),
    pair(1, 0), pair(2, 4), pair(3, 8), pair(4, 12), pair(4, 12), pair(3, 8), pair(2, 4), pair(1, 0),
    pair(1, 0), pair(2, 4), pair(3, 8), pair(4, 12), pair(4, 12), pair(3, 8), pair(2, 4), pair(1, 0),
    pair(0, -4), pair(1, 0), pair(2, 4), pair(3, 8), pair(3, 8), pair(2, 4), pair(1, 0), pair(0, -4),
    pair(-1, -8), pair(0, -4), pair(1, 0), pair(2, 4), pair(2, 4), pair(1, 0), pair(0, -4), pair(-1, -8),
    pair(-2, -12), pair(-1, -8), pair(0, -4), pair(1, 0), pair(1, 0), pair(0, -4), pair(-1, -8), pair(-2, -12),
    pair(18, -34), pair(34, -24), pair(8, -14), pair(-4, -4), pair(-4, -4), pair(8, -14), pair(34, -24), pair(18, -34),
    pair(2, -24), pair(2, -14), pair(-22, -4), pair(-22, 6), pair(-22, 6), pair(-22, -4), pair(2, -14), pair(2, -24),
    pair(-50, -14), pair(-50, -4), pair(-50, 6), pair(-50, 16), pair(-50, 16), pair(-50, 6), pair(-50, -4), pair(-50, -14),
    pair(-58, -4), pair(-58, 6), pair(-58, 16), pair(-58, 26), pair(-58, 26), pair(-58, 16), pair(-58, 6), pair(-58, -4),
    pair(-66, -4), pair(-66, 6), pair(-66, 16), pair(-66, 26), pair(-66, 26), pair(-66, 16), pair(-66, 6), pair(-66, -4),
    pair(-74, -14), pair(-74, -4), pair(-74, 6), pair(-74, 16), pair(-74, 16), pair(-74, 6), pair(-74, -4), pair(-74, -14),
    pair(-74, -24), pair(-74, -14), pair(-74, -4), pair(-74, 6), pair(-74, 6), pair(-74, -4), pair(-74, -14), pair(-74, -24),
    pair(-74, -34), pair(-74, -24), pair(-74, -14), pair(-74, -4), pair(-74, -4), pair(-74, -14), pair(-74, -24), pair(-74, -34),
    // TEMPO
    pair(12, 12),
    // BISHOP_PAIR
    pair(28, 48),
    // ROOK_PAIR
    pair(-8, -8),
    // KNIGHT_WITH_PAWN
    pair(3, 3),
    // ROOK_WITH_PAWN
    pair(-4, -4),
    // KNIGHT_MOBILITY
    pair(-28, -28), pair(-18, -18), pair(-11, -11), pair(-5, -5), pair(0, 0), pair(5, 5), pair(9, 9), pair(13, 13),
    pair(17, 17),
    // BISHOP_MOBILITY
    pair(-44, -44), pair(-33, -33), pair(-24, -24), pair(-17, -17), pair(-11, -11), pair(-5, -5), pair(0, 0), pair(5, 5),
    pair(9, 9), pair(14, 14), pair(18, 18), pair(22, 22), pair(25, 25), pair(29, 29),
    // ROOK_MOBILITY
    pair(-21, -41), pair(-16, -32), pair(-12, -25), pair(-9, -19), pair(-7, -13), pair(-4, -9), pair(-2, -4), pair(0, 0),
    pair(2, 4), pair(4, 8), pair(6, 11), pair(7, 14), pair(9, 18), pair(10, 21), pair(12, 24),
    // QUEEN_MOBILITY
    pair(-21, -62), pair(-17, -52), pair(-15, -45), pair(-13, -39), pair(-11, -34), pair(-10, -29), pair(-8, -25), pair(-7, -21),
    pair(-6, -17), pair(-4, -13), pair(-3, -10), pair(-2, -6), pair(-1, -3), pair(0, 0), pair(1, 3), pair(2, 6),
    pair(3, 9), pair(4, 11), pair(5, 14), pair(5, 16), pair(6, 19), pair(7, 21), pair(8, 24), pair(9, 26),
    pair(9, 28), pair(10, 30), pair(11, 33), pair(12, 35),
    // KNIGHT_OUTPOST
    pair(22, 14),
    // BISHOP_OUTPOST
    pair(14, 8),
    // OUTPOST_NEAR
    pair(8, 4),
    // MINOR_BEHIND_PAWN
    pair(6, 2),
    // BAD_BISHOP
    pair(-2, -3),
    // BAD_BISHOP_BLOCKED
    pair(-3, -4),
    // BISHOP_LONG_DIAGONAL
    pair(12, 4),
    // ROOK_OPEN_FILE
    pair(24, 10),
    // ROOK_HALF_OPEN_FILE
    pair(12, 6),
    // ROOK_SEVENTH
    pair(14, 16),
    // ROOK_TRAPPED
    pair(-18, -6),
    // PINNED
    pair(-10, -8),
    // CENTRE_HELD
    pair(5, 0),
    // DOUBLED
    pair(-9, -20),
    // ISOLATED
    pair(-9, -12),
    // ISOLATED_OPEN
    pair(-6, -6),
    // BACKWARD
    pair(-6, -8),
    // BACKWARD_OPEN
    pair(-6, -6),
    // DEFENDED
    pair(0, 0), pair(3, 2), pair(6, 5), pair(9, 8), pair(12, 10), pair(15, 12), pair(18, 15), pair(0, 0),
    // PHALANX
    pair(0, 0), pair(2, 2), pair(5, 4), pair(8, 6), pair(10, 8), pair(12, 10), pair(15, 12), pair(0, 0),
    // CANDIDATE
    pair(0, 0), pair(1, 2), pair(1, 4), pair(2, 7), pair(6, 13), pair(13, 25), pair(24, 42), pair(0, 0),
    // PASSED
    pair(0, 0), pair(2, 8), pair(4, 14), pair(8, 24), pair(20, 44), pair(44, 84), pair(80, 140), pair(0, 0),
    // SPACE
    pair(2, 0),
    // PASSED_BLOCKED
    pair(0, 0), pair(-2, -6), pair(-4, -12), pair(-6, -18), pair(-8, -24), pair(-10, -30), pair(-12, -36), pair(0, 0),
    // PASSED_NEXT_SAFE
    pair(0, 0), pair(1, 3), pair(2, 6), pair(3, 9), pair(4, 12), pair(5, 15), pair(6, 18), pair(0, 0),
    // PASSED_WAY_SAFE
    pair(0, 0), pair(2, 5), pair(4, 10), pair(6, 15), pair(8, 20), pair(10, 25), pair(12, 30), pair(0, 0),
    // PASSED_SUPPORTED
    pair(0, 0), pair(1, 3), pair(2, 6), pair(3, 9), pair(4, 12), pair(5, 15), pair(6, 18), pair(0, 0),
    // PASSED_OWN_KING
    pair(0, 0), pair(0, 0), pair(0, 0), pair(0, -2), pair(0, -3), pair(0, -4), pair(0, -6), pair(0, 0),
    // PASSED_ENEMY_KING
    pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 2), pair(0, 5), pair(0, 8), pair(0, 10), pair(0, 0),
    // PASSED_ROOK_BEHIND
    pair(6, 16),
    // PASSED_ENEMY_ROOK_BEHIND
    pair(-6, -12),
    // UNSTOPPABLE
    pair(0, 500),
    // UNSTOPPABLE_MOVES
    pair(0, -12),
    // RACE
    pair(0, 40),
    // SHELTER
    pair(0, 0), pair(14, 0), pair(7, 0), pair(-4, 0), pair(-6, 0), pair(-8, 0), pair(-10, 0), pair(-18, 0),
    pair(0, 0), pair(14, 0), pair(7, 0), pair(-4, 0), pair(-6, 0), pair(-8, 0), pair(-10, 0), pair(-18, 0),
    pair(0, 0), pair(14, 0), pair(7, 0), pair(-4, 0), pair(-6, 0), pair(-8, 0), pair(-10, 0), pair(-18, 0),
    pair(0, 0), pair(14, 0), pair(7, 0), pair(-4, 0), pair(-6, 0), pair(-8, 0), pair(-10, 0), pair(-18, 0),
    // STORM
    pair(0, 0), pair(0, 0), pair(-10, 0), pair(-6, 0), pair(-2, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(0, 0), pair(0, 0), pair(-10, 0), pair(-6, 0), pair(-2, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(0, 0), pair(0, 0), pair(-10, 0), pair(-6, 0), pair(-2, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(0, 0), pair(0, 0), pair(-10, 0), pair(-6, 0), pair(-2, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    // STORM_BLOCKED
    pair(0, 0), pair(0, 0), pair(-10, 0), pair(-6, 0), pair(-2, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    // PAWN_ATTACKS
    pair(44, 34), pair(46, 36), pair(60, 40), pair(56, 36),
    // MINOR_ATTACKS
    pair(4, 10), pair(16, 16), pair(18, 18), pair(36, 30), pair(36, 30),
    // ROOK_ATTACKS
    pair(2, 12), pair(14, 18), pair(14, 18), pair(4, 10), pair(36, 24),
    // KING_ATTACKS
    pair(12, 24),
    // LOOSE
    pair(24, 20),
    // LOOSE_PAWN
    pair(10, 16),
    // PUSH_THREAT
    pair(14, 10),
    // UNDEVELOPED
    pair(0, 0), pair(-11, 0), pair(-22, 0), pair(-33, 0), pair(-44, 0),
    // CAN_CASTLE_SHORT
    pair(14, 0),
    // CAN_CASTLE_LONG
    pair(8, 0),
    // QUEEN_OUT_EARLY
    pair(-6, 0),
    // BARE_KING
    pair(150, 150),
    // DRIVE_TO_EDGE
    pair(16, 16),
    // DRIVE_KINGS_NEAR
    pair(10, 10),
    // DRIVE_TO_CORNER
    pair(32, 32),
];

/// Units of king danger, laid out the same way.
#[rustfmt::skip]
pub static DANGER: [i32; UNIT_COUNT] = [
    0, // DANGER_BASE
    20, 20, 28, 44, // DANGER_ATTACKER
    6, // DANGER_RING
    14, // DANGER_WEAK
    36, 26, 44, 40, // DANGER_SAFE_CHECK
    8, // DANGER_CHECK
    -60, // DANGER_NO_QUEEN
    8, // DANGER_OPEN_FILE
    -6, // DANGER_DEFENDER
    12, // DANGER_PINNED
];

//! Weights of the evaluation. Written by a program: do not edit.
//!
//! Fitted to 489524 positions of 40829 games of the engine against itself; 48966 of them,
//! all of a tenth of the games, were held back. Log-loss in nats a position:
//!
//! ```text
//! the target itself          fit 0.41088  validation 0.41603  against results alone 0.28824
//! a constant                 fit 0.69311  validation 0.69318  against results alone 0.69322
//! material 1, 3, 3, 5, 9     fit 0.53264  validation 0.53965  against results alone 0.54334
//! search score x 0.00678     fit 0.47315  validation 0.48014  against results alone 0.48124
//! before                     fit 0.50375  validation 0.51045  against results alone 0.51461
//! after                      fit 0.49296  validation 0.50106  against results alone 0.50255
//! after, in whole numbers    fit 0.49298  validation 0.50105  against results alone 0.50252
//! ```
//!
//! 92 iterations. `python training/fit.py GAMES... --out crates/engine/src/eval/weights.rs`
//! `--seed 1 --most 12 --blend 0.5 --spread 60 --steps 300 --guesses`

use super::pair::{Pair, pair};
use super::terms::{COUNT, UNIT_COUNT};

/// All weights, in centipawns, laid out as `terms.rs` says.
#[rustfmt::skip]
pub static WEIGHTS: [Pair; COUNT] = [
    // MATERIAL
    pair(56, 141), pair(337, 383), pair(366, 409), pair(466, 679), pair(1108, 1104), pair(0, 0),
    // SQUARES
    pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(-16, 13), pair(4, 3), pair(-6, 12), pair(-26, 6), pair(-28, 8), pair(5, 12), pair(20, 1), pair(-13, 0),
    pair(-11, 11), pair(-6, 7), pair(-11, 2), pair(-8, -1), pair(-4, 10), pair(-3, 6), pair(12, 1), pair(-5, 3),
    pair(-8, 21), pair(0, 11), pair(8, 0), pair(13, -1), pair(10, 0), pair(8, 5), pair(-8, 12), pair(-10, 13),
    pair(-1, 38), pair(12, 22), pair(5, 15), pair(18, 7), pair(18, 8), pair(25, 14), pair(8, 19), pair(5, 21),
    pair(18, 65), pair(26, 51), pair(18, 42), pair(24, 35), pair(37, 39), pair(42, 34), pair(31, 42), pair(34, 39),
    pair(50, 85), pair(51, 91), pair(57, 84), pair(64, 62), pair(60, 72), pair(52, 80), pair(55, 80), pair(38, 78),
    pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(-45, -21), pair(-19, -12), pair(-23, -13), pair(-11, 3), pair(-4, 4), pair(-5, -8), pair(-19, -6), pair(-36, -26),
    pair(-25, -14), pair(-16, 2), pair(-6, -11), pair(1, -2), pair(-2, -2), pair(-11, -2), pair(-3, 7), pair(-12, -5),
    pair(-32, -9), pair(-4, -11), pair(-5, -5), pair(1, 15), pair(7, 20), pair(6, 1), pair(9, -7), pair(-21, -13),
    pair(-4, -5), pair(-9, 5), pair(12, 10), pair(21, 19), pair(27, 26), pair(22, 10), pair(26, 13), pair(17, 5),
    pair(1, -5), pair(8, -4), pair(21, 16), pair(36, 19), pair(23, 21), pair(41, 10), pair(8, 16), pair(15, 3),
    pair(-17, -4), pair(-14, 7), pair(-4, 5), pair(14, 6), pair(11, 14), pair(21, 4), pair(-8, 6), pair(-16, -6),
    pair(-37, -22), pair(-17, -8), pair(-17, -9), pair(13, 12), pair(7, 0), pair(2, -8), pair(-17, -11), pair(-40, -20),
    pair(-49, -21), pair(-21, -9), pair(-13, -13), pair(-9, -6), pair(-5, -4), pair(-20, -17), pair(-22, -13), pair(-46, -32),
    pair(-15, -11), pair(-11, 9), pair(1, 1), pair(-15, 0), pair(-19, 3), pair(-15, 9), pair(-15, -1), pair(-25, 4),
    pair(15, -1), pair(11, -4), pair(3, -2), pair(2, 7), pair(9, -7), pair(-7, 13), pair(11, -15), pair(4, 3),
    pair(-9, -1), pair(11, 11), pair(9, 14), pair(2, 9), pair(1, 21), pair(19, 5), pair(9, -2), pair(-8, 1),
    pair(-14, -8), pair(-3, 10), pair(11, 12), pair(20, 17), pair(28, 5), pair(15, 6), pair(2, 3), pair(18, -12),
    pair(0, 1), pair(6, 2), pair(8, 9), pair(21, 7), pair(14, 4), pair(14, 1), pair(21, 5), pair(0, -3),
    pair(-15, -9), pair(13, 2), pair(2, 15), pair(16, 1), pair(18, 3), pair(15, 9), pair(12, -1), pair(-9, 12),
    pair(-17, -6), pair(-23, -12), pair(-11, 2), pair(-10, 1), pair(1, 3), pair(-2, 7), pair(0, 4), pair(-15, -2),
    pair(-8, -9), pair(-10, 0), pair(-4, 0), pair(2, 6), pair(-3, 4), pair(-6, 4), pair(-12, -7), pair(-6, 0),
    pair(-14, 0), pair(1, -6), pair(-2, 6), pair(20, -15), pair(11, -12), pair(14, -7), pair(-4, -5), pair(-29, 2),
    pair(-17, -2), pair(-4, -10), pair(-12, 0), pair(7, -8), pair(-10, -4), pair(1, -10), pair(-4, -12), pair(-19, -12),
    pair(-24, 2), pair(-21, 2), pair(-8, 0), pair(-11, 2), pair(-4, -2), pair(11, -7), pair(0, 1), pair(-14, 6),
    pair(-19, 14), pair(-10, 6), pair(3, 11), pair(3, 2), pair(0, 7), pair(-5, 4), pair(-7, 5), pair(-6, 2),
    pair(-9, 20), pair(1, 16), pair(4, 13), pair(18, 13), pair(17, -4), pair(13, 7), pair(4, 9), pair(7, 12),
    pair(-3, 16), pair(7, 10), pair(9, 5), pair(16, 10), pair(22, 2), pair(14, 3), pair(20, 2), pair(5, 2),
    pair(-18, 11), pair(-10, 5), pair(13, -4), pair(18, -3), pair(13, -5), pair(8, -4), pair(-12, -8), pair(-3, 3),
    pair(-16, 13), pair(5, 11), pair(5, 7), pair(4, 0), pair(3, 3), pair(9, 6), pair(6, 4), pair(-12, 14),
    pair(-5, -16), pair(7, -8), pair(3, -8), pair(6, -19), pair(4, -2), pair(-10, -8), pair(9, -10), pair(-1, -10),
    pair(-3, -8), pair(6, -6), pair(10, -18), pair(5, -7), pair(16, -18), pair(2, -8), pair(-10, -11), pair(-2, -7),
    pair(-9, -6), pair(5, -7), pair(-3, 6), pair(5, 14), pair(1, 15), pair(9, 11), pair(12, 10), pair(12, -1),
    pair(-5, 7), pair(-4, 3), pair(10, 15), pair(0, 26), pair(16, 21), pair(12, 17), pair(13, 12), pair(3, 9),
    pair(-11, -1), pair(-2, 9), pair(8, 15), pair(12, 10), pair(1, 15), pair(10, 16), pair(6, 13), pair(11, 14),
    pair(-2, -4), pair(-14, 2), pair(7, 18), pair(14, 10), pair(5, 6), pair(12, 13), pair(10, 6), pair(16, 5),
    pair(-12, -10), pair(-13, -6), pair(-3, 8), pair(9, 12), pair(7, 11), pair(9, 6), pair(7, -2), pair(10, -2),
    pair(-11, -15), pair(-4, -6), pair(8, 1), pair(0, -3), pair(4, 5), pair(6, 2), pair(-3, -5), pair(-9, -9),
    pair(6, -43), pair(32, -32), pair(20, -13), pair(-29, -14), pair(-32, -12), pair(-19, -18), pair(26, -21), pair(12, -39),
    pair(15, -22), pair(5, 1), pair(-19, -7), pair(-28, -1), pair(-34, 4), pair(-9, 3), pair(14, -8), pair(11, -20),
    pair(-48, -12), pair(-42, -12), pair(-41, 6), pair(-34, 6), pair(-39, 13), pair(-41, 13), pair(-21, 1), pair(-65, -6),
    pair(-61, -13), pair(-58, 2), pair(-62, 4), pair(-66, 9), pair(-64, 20), pair(-60, 10), pair(-52, 8), pair(-60, -3),
    pair(-64, -2), pair(-65, 11), pair(-65, 15), pair(-71, 8), pair(-71, 11), pair(-66, 15), pair(-62, 17), pair(-69, -5),
    pair(-71, -8), pair(-72, 9), pair(-72, 15), pair(-75, 12), pair(-74, 12), pair(-75, 16), pair(-73, 16), pair(-70, -1),
    pair(-73, -17), pair(-72, -8), pair(-74, 2), pair(-73, 8), pair(-72, 9), pair(-72, 1), pair(-73, -13), pair(-74, -25),
    pair(-75, -34), pair(-74, -26), pair(-74, -19), pair(-74, -6), pair(-74, -5), pair(-72, -8), pair(-74, -27), pair(-75, -35),
    // TEMPO
    pair(23, 13),
    // BISHOP_PAIR
    pair(29, 61),
    // ROOK_PAIR
    pair(2, 18),
    // KNIGHT_WITH_PAWN
    pair(3, 4),
    // ROOK_WITH_PAWN
    pair(9, -7),
    // KNIGHT_MOBILITY
    pair(-35, -54), pair(-20, -19), pair(-11, -6), pair(-6, 16), pair(1, 19), pair(4, 32), pair(11, 32), pair(17, 28),
    pair(28, 19),
    // BISHOP_MOBILITY
    pair(-38, -54), pair(-24, -31), pair(-15, -20), pair(-9, -4), pair(-6, 10), pair(-3, 16), pair(2, 14), pair(5, 24),
    pair(8, 26), pair(7, 26), pair(19, 19), pair(19, 17), pair(25, 22), pair(25, 11),
    // ROOK_MOBILITY
    pair(-29, -68), pair(-20, -27), pair(-15, -28), pair(-11, -7), pair(-10, 2), pair(-5, 10), pair(-7, 17), pair(-2, 20),
    pair(0, 23), pair(6, 26), pair(8, 23), pair(7, 29), pair(17, 29), pair(19, 20), pair(6, 37),
    // QUEEN_MOBILITY
    pair(-9, -66), pair(-11, -53), pair(-11, -52), pair(-11, -40), pair(-9, -40), pair(-6, -40), pair(-3, -20), pair(0, -15),
    pair(-3, -5), pair(3, 2), pair(3, 13), pair(6, 19), pair(10, 26), pair(7, 33), pair(11, 37), pair(7, 35),
    pair(13, 38), pair(10, 28), pair(20, 34), pair(18, 32), pair(22, 20), pair(14, 9), pair(8, 12), pair(3, -2),
    pair(5, 5), pair(-3, -10), pair(8, 23), pair(7, 19),
    // KNIGHT_OUTPOST
    pair(21, -11),
    // KNIGHT_OUTPOST_HELD
    pair(6, 14),
    // BISHOP_OUTPOST
    pair(-4, -1),
    // BISHOP_OUTPOST_HELD
    pair(22, 3),
    // BAD_BISHOP
    pair(-3, -2),
    // ROOK_OPEN_FILE
    pair(46, 2),
    // ROOK_HALF_OPEN_FILE
    pair(21, 10),
    // ROOK_SEVENTH
    pair(24, 16),
    // PINNED
    pair(-40, -55),
    // CENTRE_HELD
    pair(2, 0),
    // SPACE
    pair(-2, 3),
    // DOUBLED
    pair(-7, -24),
    // ISOLATED
    pair(-6, -7),
    // ISOLATED_OPEN
    pair(-1, -9),
    // BACKWARD
    pair(-2, -8),
    // BACKWARD_OPEN
    pair(-10, -3),
    // DEFENDED
    pair(0, 0), pair(3, 2), pair(10, 10), pair(11, 8), pair(17, 13), pair(32, 15), pair(30, 15), pair(0, 0),
    // PHALANX
    pair(0, 0), pair(6, 2), pair(7, 1), pair(11, 9), pair(16, 22), pair(23, 8), pair(17, 20), pair(0, 0),
    // CANDIDATE
    pair(0, 0), pair(1, -6), pair(8, 0), pair(3, 7), pair(3, 19), pair(15, 34), pair(24, 42), pair(0, 0),
    // PASSED
    pair(0, 0), pair(1, 3), pair(-5, 12), pair(-4, 44), pair(13, 84), pair(46, 122), pair(111, 184), pair(0, 0),
    // PASSED_FREE
    pair(0, 0), pair(3, 0), pair(3, 3), pair(2, 7), pair(5, 21), pair(27, 46), pair(30, 67), pair(0, 0),
    // PASSED_WAY_FREE
    pair(0, 0), pair(-1, 7), pair(-11, 8), pair(-8, 7), pair(-13, 5), pair(3, 25), pair(30, 79), pair(0, 0),
    // PASSED_KINGS
    pair(0, 0), pair(-3, 3), pair(0, 1), pair(-3, 10), pair(-3, 21), pair(3, 24), pair(5, 32), pair(0, 0),
    // PASSED_ROOK_BEHIND
    pair(8, 24),
    // PASSED_ENEMY_ROOK_BEHIND
    pair(-23, -50),
    // UNSTOPPABLE
    pair(-1, 480),
    // UNSTOPPABLE_MOVES
    pair(-3, -72),
    // RACE
    pair(0, 60),
    // COVER
    pair(13, -3), pair(4, -1), pair(-5, -4), pair(-16, 9),
    // COVER_BESIDE
    pair(8, -9), pair(4, -8), pair(-1, -8), pair(-5, 5),
    // STORM
    pair(19, 13), pair(-26, -2), pair(-4, -4), pair(-2, -3), pair(4, -12), pair(-2, -11),
    // ATTACKED_BY_PAWN
    pair(-10, 3), pair(59, 30), pair(53, 36), pair(64, 41), pair(61, 36),
    // ATTACKED_BY_CHEAPER
    pair(0, 0), pair(0, 0), pair(0, 0), pair(54, 33), pair(68, 57),
    // LOOSE
    pair(10, 8), pair(-4, 9), pair(-4, 12), pair(17, 10), pair(6, 9),
    // OUTNUMBERED
    pair(10, 43), pair(43, 38), pair(42, 39), pair(13, 13), pair(-1, 5),
    // PAWN_STEP
    pair(15, 14),
    // UNDEVELOPED
    pair(-1, -6), pair(-16, -5), pair(-24, 1), pair(-32, 8), pair(-37, 3),
    // CAN_CASTLE_SHORT
    pair(45, -11),
    // CAN_CASTLE_LONG
    pair(19, -5),
    // QUEEN_OUT_EARLY
    pair(-6, 4),
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
    25, 26, 21, 23, // DANGER_HITS
    10, // DANGER_BARE_SQUARE
    42, // DANGER_CHECK
    25, // DANGER_OPEN_FILE
    -14, // DANGER_GUARD
    68, // DANGER_QUEEN
];

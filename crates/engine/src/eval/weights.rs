//! Weights of the evaluation. Written by a program: do not edit.
//!
//! Fitted to 313674 positions of 26165 games of the engine against itself; 31375 of them,
//! all of a tenth of the games, were held back. Log-loss in nats a position:
//!
//! ```text
//! the target itself          fit 0.41151  validation 0.41501  against results alone 0.28452
//! a constant                 fit 0.69312  validation 0.69328  against results alone 0.69337
//! material 1, 3, 3, 5, 9     fit 0.52772  validation 0.53525  against results alone 0.54189
//! search score x 0.00664     fit 0.47553  validation 0.48170  against results alone 0.48531
//! before                     fit 0.50320  validation 0.50995  against results alone 0.51819
//! after                      fit 0.49232  validation 0.49902  against results alone 0.50099
//! after, in whole numbers    fit 0.49234  validation 0.49906  against results alone 0.50100
//! ```
//!
//! 133 iterations. `python training/fit.py GAMES... --out crates/engine/src/eval/weights.rs`
//! `--seed 1 --most 12 --blend 0.5 --spread 60 --steps 300 --guesses`

use super::pair::{Pair, pair};
use super::terms::{COUNT, UNIT_COUNT};

/// All weights, in centipawns, laid out as `terms.rs` says.
#[rustfmt::skip]
pub static WEIGHTS: [Pair; COUNT] = [
    // MATERIAL
    pair(55, 94), pair(266, 306), pair(286, 316), pair(394, 539), pair(928, 898), pair(0, 0),
    // SQUARES
    pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(-6, 6), pair(3, 3), pair(-1, 6), pair(-16, -1), pair(-18, 8), pair(7, 6), pair(12, 0), pair(-7, 4),
    pair(-5, 8), pair(-6, 10), pair(-5, 4), pair(-4, 5), pair(-3, 6), pair(-1, 4), pair(5, 3), pair(-5, 9),
    pair(-2, 17), pair(0, 16), pair(6, 11), pair(11, 7), pair(9, 5), pair(8, 11), pair(-8, 18), pair(-7, 16),
    pair(5, 28), pair(11, 15), pair(5, 26), pair(14, 13), pair(14, 18), pair(14, 16), pair(5, 22), pair(9, 19),
    pair(11, 45), pair(20, 36), pair(21, 46), pair(24, 36), pair(31, 48), pair(44, 34), pair(34, 41), pair(35, 37),
    pair(40, 78), pair(42, 75), pair(53, 76), pair(63, 64), pair(56, 73), pair(47, 62), pair(49, 81), pair(52, 61),
    pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(-31, -21), pair(-17, -9), pair(-21, -18), pair(-9, 4), pair(-6, 2), pair(-7, -7), pair(-16, -6), pair(-37, -27),
    pair(-23, -17), pair(-6, -6), pair(-7, -3), pair(-1, -2), pair(0, 0), pair(-8, -2), pair(-17, -2), pair(-8, -6),
    pair(-28, -16), pair(-2, -3), pair(-2, 1), pair(2, 8), pair(2, 12), pair(7, -3), pair(5, -5), pair(-17, -8),
    pair(-8, 2), pair(8, -2), pair(2, 9), pair(11, 13), pair(14, 13), pair(21, 15), pair(6, 3), pair(10, -5),
    pair(3, -4), pair(1, 8), pair(12, 9), pair(22, 14), pair(21, 11), pair(34, 3), pair(6, 9), pair(17, -4),
    pair(-14, -6), pair(-5, 4), pair(-8, 4), pair(20, 8), pair(16, 7), pair(12, 4), pair(-14, -3), pair(-7, -14),
    pair(-47, -22), pair(-20, -10), pair(-21, -3), pair(1, 8), pair(7, 7), pair(-5, 0), pair(-18, -1), pair(-27, -16),
    pair(-60, -28), pair(-23, -13), pair(-16, -15), pair(-9, -1), pair(-6, -1), pair(-14, -7), pair(-24, -20), pair(-37, -32),
    pair(-7, -7), pair(-6, 5), pair(0, -2), pair(-17, -2), pair(-10, -3), pair(-12, 7), pair(-16, -5), pair(-21, 3),
    pair(1, -7), pair(6, -3), pair(6, -4), pair(2, -1), pair(5, -2), pair(-2, 9), pair(6, -5), pair(-2, -1),
    pair(-10, -11), pair(18, -4), pair(8, 6), pair(0, 8), pair(1, 13), pair(14, 4), pair(4, 7), pair(1, -1),
    pair(-17, 4), pair(0, 2), pair(5, 8), pair(15, 16), pair(19, 11), pair(9, 7), pair(8, 0), pair(10, -15),
    pair(-11, -2), pair(1, 7), pair(8, 7), pair(18, 2), pair(15, 14), pair(4, 4), pair(16, 3), pair(7, -7),
    pair(-8, -9), pair(6, 7), pair(3, 1), pair(1, 7), pair(11, 3), pair(6, 15), pair(13, -7), pair(-9, 7),
    pair(-13, 0), pair(-14, -8), pair(-15, 2), pair(-4, -5), pair(-2, 10), pair(4, 2), pair(-5, 0), pair(-8, -5),
    pair(-9, -8), pair(-18, -8), pair(-7, -4), pair(-3, 1), pair(-2, -3), pair(-11, 3), pair(-15, -5), pair(-1, -3),
    pair(-11, -5), pair(-1, -6), pair(-4, 1), pair(14, -12), pair(10, -10), pair(11, -11), pair(-4, -3), pair(-26, -7),
    pair(-25, 1), pair(0, -5), pair(-15, 0), pair(5, -8), pair(-12, 5), pair(9, -15), pair(-3, -14), pair(-15, -11),
    pair(-25, 1), pair(-16, -1), pair(-8, -5), pair(-12, -7), pair(0, -3), pair(1, -11), pair(6, -3), pair(-7, -6),
    pair(-17, 10), pair(-10, 4), pair(1, 6), pair(-4, 4), pair(1, -1), pair(-1, -3), pair(-8, -2), pair(-7, 7),
    pair(-8, 8), pair(-5, 14), pair(5, 5), pair(12, 2), pair(7, -7), pair(16, 4), pair(4, 4), pair(-4, 7),
    pair(-4, 10), pair(-1, 5), pair(1, 1), pair(11, 6), pair(16, 3), pair(13, 1), pair(14, 10), pair(3, -4),
    pair(-9, 3), pair(-16, 4), pair(7, -5), pair(11, 0), pair(14, -3), pair(12, -3), pair(-13, -1), pair(-8, -1),
    pair(-12, 11), pair(2, 2), pair(9, 11), pair(6, -1), pair(8, 9), pair(6, 8), pair(6, 5), pair(-14, 7),
    pair(-3, -15), pair(-2, -10), pair(2, -10), pair(3, -17), pair(4, -15), pair(-2, -8), pair(7, -9), pair(-11, -13),
    pair(-7, -8), pair(-2, -5), pair(2, -10), pair(4, -3), pair(11, -13), pair(2, -6), pair(-4, -9), pair(-3, -10),
    pair(-6, -6), pair(4, -12), pair(-2, 1), pair(6, -1), pair(3, 2), pair(7, 7), pair(5, 4), pair(11, -8),
    pair(-11, 0), pair(-7, 3), pair(10, 2), pair(4, 10), pair(8, 16), pair(9, 15), pair(3, 13), pair(7, 8),
    pair(-12, -4), pair(-13, 2), pair(5, 5), pair(7, 7), pair(-2, 9), pair(8, 8), pair(1, 10), pair(6, 13),
    pair(-16, -7), pair(-19, 2), pair(3, 10), pair(4, 4), pair(6, -1), pair(8, 9), pair(1, -4), pair(4, -1),
    pair(-16, -15), pair(-13, -5), pair(1, 7), pair(3, 13), pair(9, 16), pair(15, 8), pair(13, -2), pair(5, -5),
    pair(-21, -16), pair(-7, -7), pair(8, -1), pair(-5, -6), pair(3, 1), pair(1, -3), pair(-6, -9), pair(-14, -10),
    pair(7, -38), pair(25, -38), pair(16, -24), pair(-21, -22), pair(-23, -23), pair(-21, -16), pair(8, -21), pair(-1, -38),
    pair(17, -23), pair(3, -10), pair(-18, -9), pair(-20, -4), pair(-32, -4), pair(-4, -4), pair(4, -11), pair(-3, -21),
    pair(-48, -12), pair(-36, -8), pair(-23, 0), pair(-26, 2), pair(-40, 7), pair(-46, 11), pair(-22, 3), pair(-54, -4),
    pair(-57, -14), pair(-58, -4), pair(-61, 4), pair(-66, 8), pair(-63, 23), pair(-58, 15), pair(-56, 9), pair(-61, -5),
    pair(-65, -7), pair(-65, 20), pair(-68, 13), pair(-70, 14), pair(-70, 12), pair(-66, 18), pair(-62, 19), pair(-66, -2),
    pair(-71, -2), pair(-72, 17), pair(-71, 18), pair(-76, 19), pair(-72, 18), pair(-72, 26), pair(-73, 19), pair(-72, -8),
    pair(-73, -17), pair(-73, -1), pair(-79, -5), pair(-75, 4), pair(-73, 12), pair(-74, -4), pair(-72, -5), pair(-74, -20),
    pair(-75, -34), pair(-74, -21), pair(-74, -15), pair(-74, -3), pair(-73, 0), pair(-73, -10), pair(-74, -26), pair(-74, -33),
    // TEMPO
    pair(17, 11),
    // BISHOP_PAIR
    pair(18, 48),
    // ROOK_PAIR
    pair(-20, 8),
    // KNIGHT_WITH_PAWN
    pair(1, 5),
    // ROOK_WITH_PAWN
    pair(-1, 1),
    // KNIGHT_MOBILITY
    pair(-32, -44), pair(-20, -21), pair(-16, -9), pair(-13, 2), pair(-9, 9), pair(-6, 15), pair(-3, 20), pair(4, 11),
    pair(11, 6),
    // BISHOP_MOBILITY
    pair(-35, -47), pair(-23, -31), pair(-18, -20), pair(-14, -4), pair(-11, -1), pair(-10, 6), pair(-7, 8), pair(-7, 13),
    pair(-4, 17), pair(-2, 16), pair(9, 5), pair(10, 6), pair(23, 11), pair(23, 7),
    // ROOK_MOBILITY
    pair(-27, -67), pair(-21, -26), pair(-17, -25), pair(-13, -19), pair(-13, -8), pair(-10, -4), pair(-10, 7), pair(-7, 9),
    pair(-5, 6), pair(0, 10), pair(3, 11), pair(0, 17), pair(-1, 21), pair(13, 9), pair(3, 24),
    // QUEEN_MOBILITY
    pair(-15, -63), pair(-15, -52), pair(-16, -57), pair(-15, -44), pair(-16, -45), pair(-13, -31), pair(-9, -28), pair(-10, -25),
    pair(-10, -17), pair(-6, -13), pair(-6, -5), pair(-7, 8), pair(-4, 4), pair(-4, 15), pair(0, 20), pair(3, 23),
    pair(-4, 19), pair(3, 17), pair(9, 13), pair(14, 18), pair(6, 12), pair(13, 1), pair(8, 11), pair(4, 0),
    pair(5, 7), pair(2, 3), pair(9, 26), pair(8, 22),
    // KNIGHT_OUTPOST
    pair(11, -7),
    // KNIGHT_OUTPOST_HELD
    pair(10, 10),
    // BISHOP_OUTPOST
    pair(-5, -1),
    // BISHOP_OUTPOST_HELD
    pair(19, 1),
    // MINOR_BEHIND_PAWN
    pair(2, 12),
    // BAD_BISHOP
    pair(-2, 0),
    // BAD_BISHOP_BLOCKED
    pair(-4, -1),
    // ROOK_OPEN_FILE
    pair(31, -1),
    // ROOK_HALF_OPEN_FILE
    pair(13, 7),
    // ROOK_SEVENTH
    pair(17, 10),
    // PINNED
    pair(-29, -46),
    // CENTRE_HELD
    pair(1, -2),
    // DOUBLED
    pair(-5, -15),
    // ISOLATED
    pair(-4, -5),
    // ISOLATED_OPEN
    pair(-3, -7),
    // BACKWARD
    pair(-1, -1),
    // BACKWARD_OPEN
    pair(-11, -3),
    // DEFENDED
    pair(0, 0), pair(3, 2), pair(8, 11), pair(8, 5), pair(8, 13), pair(23, 14), pair(23, 17), pair(0, 0),
    // PHALANX
    pair(0, 0), pair(4, 4), pair(5, 2), pair(6, 5), pair(11, 12), pair(18, -4), pair(16, 16), pair(0, 0),
    // CANDIDATE
    pair(0, 0), pair(0, -5), pair(7, 0), pair(2, 8), pair(0, 18), pair(12, 34), pair(24, 42), pair(0, 0),
    // PASSED
    pair(0, 0), pair(2, 6), pair(0, 18), pair(-4, 38), pair(22, 55), pair(45, 65), pair(85, 122), pair(0, 0),
    // SPACE
    pair(3, -3),
    // PASSED_BLOCKED
    pair(0, 0), pair(-6, -5), pair(-2, 4), pair(2, -8), pair(-6, -4), pair(-7, -19), pair(-31, -46), pair(0, 0),
    // PASSED_NEXT_SAFE
    pair(0, 0), pair(0, 2), pair(-2, 8), pair(-4, 5), pair(7, 16), pair(12, 30), pair(4, 30), pair(0, 0),
    // PASSED_WAY_SAFE
    pair(0, 0), pair(-1, 2), pair(-7, 13), pair(-9, 16), pair(-4, 25), pair(8, 39), pair(10, 42), pair(0, 0),
    // PASSED_SUPPORTED
    pair(0, 0), pair(-2, -1), pair(2, 7), pair(-4, 10), pair(17, 10), pair(21, 25), pair(22, 55), pair(0, 0),
    // PASSED_OWN_KING
    pair(0, 0), pair(0, -1), pair(0, 0), pair(4, -9), pair(-2, -12), pair(-4, -12), pair(-4, -15), pair(0, 0),
    // PASSED_ENEMY_KING
    pair(0, 0), pair(-1, 2), pair(-1, -2), pair(-3, 9), pair(-3, 17), pair(-1, 27), pair(0, 28), pair(0, 0),
    // PASSED_ROOK_BEHIND
    pair(8, 10),
    // PASSED_ENEMY_ROOK_BEHIND
    pair(-19, -47),
    // UNSTOPPABLE
    pair(-1, 467),
    // UNSTOPPABLE_MOVES
    pair(-3, -90),
    // RACE
    pair(0, 54),
    // COVER
    pair(11, -5), pair(4, 0), pair(-2, -3), pair(-17, 7),
    // COVER_BESIDE
    pair(10, -10), pair(6, -7), pair(6, -10), pair(-5, 1),
    // STORM
    pair(15, -1), pair(-9, -9), pair(-5, -3), pair(-1, -2), pair(0, -5), pair(-3, -6),
    // ATTACKED_BY_PAWN
    pair(0, 7), pair(43, 25), pair(40, 23), pair(54, 30), pair(50, 35),
    // ATTACKED_BY_CHEAPER
    pair(0, 0), pair(0, 0), pair(0, 0), pair(45, 27), pair(52, 49),
    // LOOSE
    pair(4, 6), pair(-2, 8), pair(-3, -1), pair(14, 8), pair(8, 12),
    // OUTNUMBERED
    pair(10, 32), pair(28, 28), pair(30, 35), pair(8, 8), pair(-1, 6),
    // PAWN_STEP
    pair(12, 6),
    // UNDEVELOPED
    pair(-5, -9), pair(-15, -4), pair(-22, 6), pair(-31, 6), pair(-37, 0),
    // CAN_CASTLE_SHORT
    pair(32, -14),
    // CAN_CASTLE_LONG
    pair(8, -1),
    // QUEEN_OUT_EARLY
    pair(-5, -13),
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
    16, 27, 18, 21, // DANGER_HITS
    9, // DANGER_BARE_SQUARE
    41, // DANGER_CHECK
    20, // DANGER_OPEN_FILE
    -4, // DANGER_GUARD
];

//! Weights of the evaluation. Written by a program: do not edit.
//!
//! Fitted to 313674 positions of 26165 games of the engine against itself; 31375 of them,
//! all of a tenth of the games, were held back. Log-loss in nats a position:
//!
//! ```text
//! the target itself          fit 0.41151  validation 0.41501  against results alone 0.28452
//! a constant                 fit 0.69312  validation 0.69328  against results alone 0.69337
//! material 1, 3, 3, 5, 9     fit 0.52773  validation 0.53525  against results alone 0.54190
//! search score x 0.00664     fit 0.47553  validation 0.48170  against results alone 0.48531
//! before                     fit 0.50172  validation 0.50851  against results alone 0.51528
//! after                      fit 0.49108  validation 0.49804  against results alone 0.49940
//! after, in whole numbers    fit 0.49110  validation 0.49802  against results alone 0.49936
//! ```
//!
//! 103 iterations. `python training/fit.py GAMES... --out crates/engine/src/eval/weights.rs`
//! `--seed 1 --most 12 --blend 0.5 --spread 60 --steps 300 --guesses`

use super::pair::{Pair, pair};
use super::terms::{COUNT, UNIT_COUNT};

/// All weights, in centipawns, laid out as `terms.rs` says.
#[rustfmt::skip]
pub static WEIGHTS: [Pair; COUNT] = [
    // MATERIAL
    pair(57, 94), pair(263, 306), pair(282, 315), pair(393, 540), pair(925, 900), pair(0, 0),
    // SQUARES
    pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(-9, 10), pair(3, 5), pair(-3, 5), pair(-18, -5), pair(-11, -2), pair(-2, 3), pair(13, 4), pair(-3, 8),
    pair(-5, 10), pair(-6, 12), pair(-5, 3), pair(-4, 1), pair(5, -1), pair(-3, 1), pair(4, 7), pair(-5, 11),
    pair(-4, 18), pair(-2, 17), pair(4, 9), pair(11, 5), pair(10, 1), pair(5, 9), pair(-10, 18), pair(-8, 18),
    pair(6, 30), pair(10, 17), pair(6, 26), pair(14, 12), pair(16, 15), pair(15, 15), pair(8, 25), pair(9, 21),
    pair(10, 48), pair(20, 37), pair(20, 45), pair(28, 34), pair(36, 46), pair(39, 33), pair(35, 43), pair(32, 38),
    pair(39, 79), pair(44, 76), pair(52, 75), pair(62, 64), pair(57, 74), pair(47, 64), pair(49, 82), pair(51, 63),
    pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0), pair(0, 0),
    pair(-31, -20), pair(-15, -11), pair(-22, -15), pair(-10, 5), pair(-5, 2), pair(-9, -6), pair(-15, -8), pair(-36, -27),
    pair(-22, -16), pair(-8, -5), pair(-8, -1), pair(-7, 4), pair(-6, 5), pair(-10, 0), pair(-17, -2), pair(-8, -5),
    pair(-26, -18), pair(-6, -2), pair(-3, 1), pair(-1, 10), pair(-3, 13), pair(5, -4), pair(1, -6), pair(-17, -9),
    pair(-7, 1), pair(8, 0), pair(3, 8), pair(10, 13), pair(10, 14), pair(20, 13), pair(4, 4), pair(10, -6),
    pair(6, -5), pair(1, 9), pair(12, 9), pair(19, 13), pair(20, 9), pair(27, 4), pair(5, 9), pair(18, -6),
    pair(-12, -7), pair(-5, 3), pair(-1, 2), pair(22, 5), pair(18, 5), pair(14, 3), pair(-13, -3), pair(-7, -15),
    pair(-41, -22), pair(-16, -11), pair(-16, -3), pair(2, 7), pair(7, 7), pair(-2, 1), pair(-17, -2), pair(-23, -15),
    pair(-60, -27), pair(-22, -13), pair(-15, -15), pair(-9, -1), pair(-6, -1), pair(-13, -6), pair(-24, -21), pair(-36, -31),
    pair(-6, -8), pair(-7, 6), pair(3, -3), pair(-17, 1), pair(-7, -2), pair(-11, 10), pair(-16, -4), pair(-21, 1),
    pair(-1, -7), pair(3, -5), pair(7, -3), pair(0, 4), pair(0, 4), pair(0, 11), pair(3, -6), pair(-1, 0),
    pair(-5, -12), pair(18, -5), pair(4, 3), pair(1, 9), pair(3, 13), pair(8, 2), pair(4, 7), pair(2, -2),
    pair(-13, 4), pair(3, 2), pair(7, 10), pair(8, 12), pair(12, 7), pair(12, 7), pair(9, 0), pair(13, -13),
    pair(-13, -2), pair(1, 8), pair(9, 8), pair(9, -2), pair(6, 11), pair(4, 5), pair(15, 4), pair(7, -7),
    pair(-6, -9), pair(7, 7), pair(0, -2), pair(1, 7), pair(10, 5), pair(6, 13), pair(15, -7), pair(-8, 7),
    pair(-10, 0), pair(-16, -11), pair(-13, 2), pair(-2, -4), pair(1, 11), pair(6, 3), pair(-6, -2), pair(-3, -5),
    pair(-9, -9), pair(-16, -8), pair(-7, -4), pair(-2, 2), pair(-2, -1), pair(-10, 3), pair(-15, -5), pair(-1, -4),
    pair(-9, -6), pair(-1, -7), pair(-7, -1), pair(6, -10), pair(3, -9), pair(3, -10), pair(-2, -5), pair(-15, -9),
    pair(-22, 3), pair(2, -4), pair(-12, 1), pair(6, -5), pair(-9, 7), pair(10, -13), pair(0, -12), pair(-7, -10),
    pair(-24, 2), pair(-13, 1), pair(-6, -4), pair(-11, -5), pair(3, -1), pair(2, -9), pair(6, -2), pair(-5, -5),
    pair(-11, 8), pair(-5, 5), pair(3, 5), pair(-2, 4), pair(5, -1), pair(1, -1), pair(-4, -1), pair(-6, 6),
    pair(-5, 5), pair(-4, 13), pair(5, 3), pair(11, 0), pair(5, -7), pair(11, 4), pair(4, 3), pair(-7, 7),
    pair(-6, 7), pair(-3, 3), pair(-2, -2), pair(6, 5), pair(11, 1), pair(9, -1), pair(8, 9), pair(-3, -6),
    pair(-7, 2), pair(-15, 3), pair(4, -4), pair(9, 1), pair(11, -4), pair(10, -3), pair(-11, 0), pair(-8, 0),
    pair(-15, 12), pair(2, 2), pair(8, 11), pair(5, 0), pair(7, 10), pair(7, 9), pair(4, 6), pair(-15, 8),
    pair(-4, -16), pair(-13, -10), pair(-7, -11), pair(-6, -22), pair(-2, -16), pair(-6, -8), pair(3, -8), pair(-10, -13),
    pair(-8, -9), pair(-3, -5), pair(2, -11), pair(-1, 1), pair(5, -7), pair(0, -6), pair(-5, -8), pair(-6, -11),
    pair(-2, -5), pair(5, -13), pair(-3, 2), pair(5, 0), pair(0, 2), pair(3, 9), pair(6, 2), pair(11, -9),
    pair(-9, -1), pair(-5, 4), pair(13, 3), pair(7, 7), pair(9, 15), pair(7, 12), pair(2, 11), pair(5, 4),
    pair(-8, -3), pair(-10, 4), pair(6, 6), pair(6, 7), pair(-1, 9), pair(8, 7), pair(-2, 6), pair(4, 10),
    pair(-12, -6), pair(-17, 3), pair(6, 9), pair(7, 4), pair(10, 0), pair(9, 9), pair(3, -4), pair(4, -1),
    pair(-12, -14), pair(-8, -3), pair(5, 8), pair(6, 15), pair(10, 16), pair(16, 9), pair(13, -1), pair(5, -5),
    pair(-17, -14), pair(-5, -6), pair(9, -1), pair(-3, -5), pair(5, 1), pair(2, -3), pair(-4, -8), pair(-12, -10),
    pair(10, -35), pair(21, -42), pair(17, -18), pair(-12, -11), pair(-12, -10), pair(-11, -13), pair(8, -25), pair(3, -32),
    pair(15, -21), pair(0, -17), pair(-23, -9), pair(-24, 5), pair(-33, 5), pair(-10, -3), pair(0, -16), pair(1, -18),
    pair(-48, -12), pair(-38, -16), pair(-24, -1), pair(-27, 7), pair(-41, 12), pair(-45, 8), pair(-26, -4), pair(-51, -4),
    pair(-57, -16), pair(-59, -12), pair(-63, 1), pair(-66, 13), pair(-63, 29), pair(-59, 12), pair(-58, 0), pair(-60, -8),
    pair(-65, -8), pair(-66, 12), pair(-68, 10), pair(-70, 19), pair(-70, 18), pair(-67, 16), pair(-64, 9), pair(-66, -6),
    pair(-71, -3), pair(-72, 12), pair(-71, 17), pair(-76, 24), pair(-72, 23), pair(-72, 24), pair(-73, 14), pair(-72, -10),
    pair(-73, -17), pair(-73, -4), pair(-79, -6), pair(-74, 7), pair(-73, 14), pair(-74, -5), pair(-72, -8), pair(-74, -20),
    pair(-75, -34), pair(-74, -21), pair(-74, -15), pair(-74, -2), pair(-73, 1), pair(-73, -10), pair(-74, -27), pair(-74, -33),
    // TEMPO
    pair(17, 11),
    // BISHOP_PAIR
    pair(18, 48),
    // ROOK_PAIR
    pair(-22, 5),
    // KNIGHT_WITH_PAWN
    pair(1, 4),
    // ROOK_WITH_PAWN
    pair(0, 0),
    // KNIGHT_MOBILITY
    pair(-33, -37), pair(-21, -23), pair(-16, -10), pair(-11, -1), pair(-7, 8), pair(-5, 14), pair(-1, 16), pair(3, 14),
    pair(5, 8),
    // BISHOP_MOBILITY
    pair(-36, -51), pair(-26, -35), pair(-18, -21), pair(-15, -8), pair(-11, 1), pair(-9, 7), pair(-6, 8), pair(-7, 14),
    pair(-3, 17), pair(-5, 20), pair(8, 8), pair(9, 6), pair(20, 10), pair(29, 8),
    // ROOK_MOBILITY
    pair(-43, -54), pair(-20, -51), pair(-13, -18), pair(-11, -21), pair(-11, -13), pair(-11, -5), pair(-10, 3), pair(-8, 8),
    pair(-6, 10), pair(-4, 11), pair(3, 13), pair(1, 17), pair(2, 23), pair(9, 18), pair(13, 24),
    // QUEEN_MOBILITY
    pair(-21, -62), pair(-11, -53), pair(-19, -50), pair(-15, -44), pair(-15, -42), pair(-14, -42), pair(-10, -29), pair(-11, -18),
    pair(-9, -14), pair(-7, -13), pair(-4, -11), pair(-3, 1), pair(-3, 3), pair(-4, 11), pair(-6, 22), pair(1, 22),
    pair(0, 21), pair(0, 16), pair(6, 12), pair(13, 14), pair(11, 13), pair(12, 3), pair(13, 16), pair(2, 3),
    pair(4, 4), pair(5, 6), pair(10, 27), pair(8, 22),
    // KNIGHT_OUTPOST
    pair(16, 3),
    // BISHOP_OUTPOST
    pair(17, -1),
    // OUTPOST_NEAR
    pair(10, 4),
    // MINOR_BEHIND_PAWN
    pair(1, 10),
    // BAD_BISHOP
    pair(-2, 0),
    // BAD_BISHOP_BLOCKED
    pair(-3, 0),
    // BISHOP_LONG_DIAGONAL
    pair(8, 5),
    // ROOK_OPEN_FILE
    pair(25, -2),
    // ROOK_HALF_OPEN_FILE
    pair(9, 2),
    // ROOK_SEVENTH
    pair(11, 7),
    // ROOK_TRAPPED
    pair(-6, -8),
    // PINNED
    pair(-27, -33),
    // CENTRE_HELD
    pair(-1, -1),
    // DOUBLED
    pair(-8, -15),
    // ISOLATED
    pair(-4, -6),
    // ISOLATED_OPEN
    pair(-4, -5),
    // BACKWARD
    pair(-1, -1),
    // BACKWARD_OPEN
    pair(-10, -3),
    // DEFENDED
    pair(0, 0), pair(3, 2), pair(7, 9), pair(7, 4), pair(9, 10), pair(24, 9), pair(22, 13), pair(0, 0),
    // PHALANX
    pair(0, 0), pair(3, 4), pair(5, 1), pair(6, 5), pair(12, 11), pair(18, -3), pair(15, 16), pair(0, 0),
    // CANDIDATE
    pair(0, 0), pair(1, -5), pair(6, 0), pair(2, 7), pair(-2, 19), pair(15, 34), pair(24, 42), pair(0, 0),
    // PASSED
    pair(0, 0), pair(2, 8), pair(2, 21), pair(-4, 42), pair(21, 60), pair(46, 72), pair(86, 129), pair(0, 0),
    // SPACE
    pair(1, -2),
    // PASSED_BLOCKED
    pair(0, 0), pair(-6, -6), pair(-5, 3), pair(4, -10), pair(-8, -6), pair(-10, -20), pair(-30, -45), pair(0, 0),
    // PASSED_NEXT_SAFE
    pair(0, 0), pair(-2, 1), pair(-1, 6), pair(-3, 2), pair(5, 12), pair(11, 26), pair(4, 29), pair(0, 0),
    // PASSED_WAY_SAFE
    pair(0, 0), pair(-1, 3), pair(-7, 14), pair(-7, 16), pair(-3, 24), pair(10, 39), pair(10, 41), pair(0, 0),
    // PASSED_SUPPORTED
    pair(0, 0), pair(-3, -1), pair(1, 7), pair(-5, 10), pair(14, 11), pair(18, 26), pair(22, 55), pair(0, 0),
    // PASSED_OWN_KING
    pair(0, 0), pair(-1, -1), pair(-1, 0), pair(3, -9), pair(-2, -12), pair(-5, -12), pair(-4, -15), pair(0, 0),
    // PASSED_ENEMY_KING
    pair(0, 0), pair(1, 1), pair(0, -2), pair(-2, 8), pair(-3, 16), pair(0, 25), pair(1, 26), pair(0, 0),
    // PASSED_ROOK_BEHIND
    pair(5, 10),
    // PASSED_ENEMY_ROOK_BEHIND
    pair(-18, -46),
    // UNSTOPPABLE
    pair(-1, 468),
    // UNSTOPPABLE_MOVES
    pair(-3, -89),
    // RACE
    pair(0, 54),
    // SHELTER
    pair(-3, 0), pair(6, -10), pair(5, -3), pair(5, 0), pair(-6, 9), pair(-10, 12), pair(-7, 8), pair(-20, 9),
    pair(6, 7), pair(13, -4), pair(8, -2), pair(-2, 5), pair(-9, 1), pair(-2, 2), pair(-9, 1), pair(-14, 9),
    pair(10, 5), pair(13, 0), pair(-1, 2), pair(-6, -3), pair(-15, -9), pair(-2, 4), pair(-8, -1), pair(-18, 3),
    pair(9, 3), pair(8, 0), pair(-1, -3), pair(1, -13), pair(-5, -14), pair(-15, -8), pair(-15, -4), pair(-17, -6),
    // STORM
    pair(-1, 5), pair(9, -7), pair(-3, 8), pair(-12, 5), pair(7, -2), pair(-2, -3), pair(5, -6), pair(-5, -3),
    pair(0, 8), pair(9, -11), pair(-23, 2), pair(-3, -1), pair(-7, 4), pair(-4, 1), pair(-3, -4), pair(-9, -2),
    pair(-3, 7), pair(-3, -8), pair(-7, 4), pair(-5, 2), pair(-2, 7), pair(7, -4), pair(7, -2), pair(-4, 2),
    pair(2, 13), pair(2, 2), pair(-7, 9), pair(-10, 6), pair(0, -2), pair(2, -4), pair(-2, 0), pair(-10, 1),
    // STORM_BLOCKED
    pair(0, 0), pair(-4, 0), pair(-8, -13), pair(-3, -4), pair(-3, -4), pair(3, -5), pair(-2, -1), pair(0, 0),
    // PAWN_ATTACKS
    pair(49, 33), pair(48, 34), pair(60, 32), pair(47, 32),
    // MINOR_ATTACKS
    pair(3, 13), pair(12, 27), pair(26, 23), pair(47, 33), pair(44, 41),
    // ROOK_ATTACKS
    pair(6, 13), pair(28, 18), pair(28, 18), pair(0, 4), pair(58, 36),
    // KING_ATTACKS
    pair(13, 30),
    // LOOSE
    pair(16, 8),
    // LOOSE_PAWN
    pair(13, 26),
    // PUSH_THREAT
    pair(12, 13),
    // UNDEVELOPED
    pair(-5, -9), pair(-16, -3), pair(-24, 6), pair(-31, 5), pair(-35, 0),
    // CAN_CASTLE_SHORT
    pair(27, -12),
    // CAN_CASTLE_LONG
    pair(6, -2),
    // QUEEN_OUT_EARLY
    pair(-9, -8),
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
    -22, // DANGER_BASE
    29, 24, 28, 35, // DANGER_ATTACKER
    5, // DANGER_RING
    18, // DANGER_WEAK
    54, 40, 78, 68, // DANGER_SAFE_CHECK
    18, // DANGER_CHECK
    -95, // DANGER_NO_QUEEN
    7, // DANGER_OPEN_FILE
    -23, // DANGER_DEFENDER
    16, // DANGER_PINNED
];

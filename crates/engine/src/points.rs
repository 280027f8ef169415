//! Expected score in points: what a number of centipawns is worth out of 100.
//!
//! The logistic `100 / (1 + exp(-0.8 * pawns))`, which serves until a win/draw/loss model is fitted to games.
//! Kept as a table of integers, so that it is the same on every machine.
//!
//! ```
//! use engine::points::points;
//! assert_eq!((points(0), points(100), points(-100)), (50, 69, 31));
//! ```

/// `EDGES[p - 1]` is the least number of centipawns that is worth `p` points:
/// the ceiling of `125 * ln((p - 0.5) / (100.5 - p))`.
const EDGES: [i16; 100] = [
    -661, -523, -457, -414, -381, -355, -333, -314, -297, -281, -267, -255, -243, -232, -221, -211,
    -202, -193, -185, -177, -169, -161, -154, -147, -140, -134, -127, -121, -114, -108, -102, -97,
    -91, -85, -80, -74, -69, -63, -58, -53, -48, -42, -37, -32, -27, -22, -17, -12, -7, -2, 3, 8,
    13, 18, 23, 28, 33, 38, 43, 49, 54, 59, 64, 70, 75, 81, 86, 92, 98, 103, 109, 115, 122, 128,
    135, 141, 148, 155, 162, 170, 178, 186, 194, 203, 212, 222, 233, 244, 256, 268, 282, 298, 315,
    334, 356, 382, 415, 458, 524, 662,
];

/// Expected score, 0 to 100, of the side for which `centipawns` is reckoned.
#[must_use]
pub fn points(centipawns: i32) -> u8 {
    let reached = EDGES.partition_point(|edge| i32::from(*edge) <= centipawns);
    u8::try_from(reached).unwrap_or(100)
}

/// Expected score when mate is forced: 100 for the side that mates, 0 for the side that is mated.
#[must_use]
pub fn points_of_mate(mates: bool) -> u8 {
    if mates { 100 } else { 0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_the_logistic_at_every_centipawn() {
        for centipawns in -2000..=2000 {
            let exact = 100.0 / (1.0 + (-0.8 * f64::from(centipawns) / 100.0).exp());
            assert_eq!(f64::from(points(centipawns)), exact.round(), "{centipawns}");
        }
    }

    #[test]
    fn the_two_sides_share_a_hundred_points() {
        for centipawns in -2000..=2000 {
            assert_eq!(points(centipawns) + points(-centipawns), 100);
        }
    }
}

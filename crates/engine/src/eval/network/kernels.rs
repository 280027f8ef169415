//! The arithmetic on accumulators, compiled for what processors have: chosen once, when an evaluation is made.
//!
//! All is done in integers that cannot overflow, so that any order of adding gives the same bits:
//!
//! * an accumulator is a bias and at most 32 columns, each within 992: below 33 * 992 < 2^15. Cached and updated ones wrap
//!   on the way, which additions and subtractions undo.
//! * a square is at most 255 * 255 >> 3 = 8128, an output weight at most 1023, so a product at most 8,314,944. Sums are
//!   kept in at least eight lanes of 32 bits, which get 2 * 1024 / 8 = 256 products each at most: 2,128,625,664 < 2^31. The lanes
//!   are added with 64 bits.

use super::file::SQUARE_SHIFT;

/// A column to add or to take away.
type Column<'a> = &'a [i16];
/// Two of them, or the accumulators of mover and other with their weights.
type Two<'a> = [&'a [i16]; 2];

/// The arithmetic for one kind of processor. All slices of a call have one length, a multiple of 32.
pub struct Kernels {
    /// What it is called.
    pub name: &'static str,
    /// `to = from + add - take`.
    pub one_one: fn(&mut [i16], &[i16], Column<'_>, Column<'_>),
    /// `to = from + add - take - take`.
    pub one_two: fn(&mut [i16], &[i16], Column<'_>, Two<'_>),
    /// `to = from + add + add - take - take`.
    pub two_two: fn(&mut [i16], &[i16], Two<'_>, Two<'_>),
    /// `to += add`.
    pub add: fn(&mut [i16], Column<'_>),
    /// `to -= take`.
    pub take: fn(&mut [i16], Column<'_>),
    /// The sum of clamped squares times weights, of the mover's accumulator and the other's.
    pub output: fn(Two<'_>, Two<'_>) -> i64,
}

#[inline(always)]
pub fn one_one(to: &mut [i16], from: &[i16], add: &[i16], take: &[i16]) {
    for (((to, from), add), take) in to.iter_mut().zip(from).zip(add).zip(take) {
        *to = from.wrapping_add(*add).wrapping_sub(*take);
    }
}

#[inline(always)]
pub fn one_two(to: &mut [i16], from: &[i16], add: &[i16], take: [&[i16]; 2]) {
    let taken = take[0].iter().zip(take[1]);
    for (((to, from), add), (a, b)) in to.iter_mut().zip(from).zip(add).zip(taken) {
        *to = from.wrapping_add(*add).wrapping_sub(*a).wrapping_sub(*b);
    }
}

#[inline(always)]
pub fn two_two(to: &mut [i16], from: &[i16], add: [&[i16]; 2], take: [&[i16]; 2]) {
    let added = add[0].iter().zip(add[1]);
    let taken = take[0].iter().zip(take[1]);
    for (((to, from), (a, b)), (c, d)) in to.iter_mut().zip(from).zip(added).zip(taken) {
        *to = from
            .wrapping_add(*a)
            .wrapping_add(*b)
            .wrapping_sub(*c)
            .wrapping_sub(*d);
    }
}

#[inline(always)]
pub fn add(to: &mut [i16], column: &[i16]) {
    for (to, add) in to.iter_mut().zip(column) {
        *to = to.wrapping_add(*add);
    }
}

#[inline(always)]
pub fn take(to: &mut [i16], column: &[i16]) {
    for (to, take) in to.iter_mut().zip(column) {
        *to = to.wrapping_sub(*take);
    }
}

/// Lanes of the portable sum.
const LANES: usize = 8;

fn output(sums: [&[i16]; 2], weights: [&[i16]; 2]) -> i64 {
    let mut lanes = [0_i32; LANES];
    for (sums, weights) in sums.into_iter().zip(weights) {
        let (sums, _) = sums.as_chunks::<LANES>();
        let (weights, _) = weights.as_chunks::<LANES>();
        for (sums, weights) in sums.iter().zip(weights) {
            for ((lane, sum), weight) in lanes.iter_mut().zip(sums).zip(weights) {
                // 16 bits suffice, and many processors multiply them faster.
                let clamped = (*sum).clamp(0, 255) as u16;
                let square = ((clamped * clamped) >> SQUARE_SHIFT) as i16;
                *lane += i32::from(square) * i32::from(*weight);
            }
        }
    }
    lanes.into_iter().map(i64::from).sum()
}

static PORTABLE: Kernels = Kernels {
    name: "portable",
    one_one: |to, from, add, take| one_one(to, from, add, take),
    one_two: |to, from, add, take| one_two(to, from, add, take),
    two_two: |to, from, add, take| two_two(to, from, add, take),
    add: |to, column| add(to, column),
    take: |to, column| take(to, column),
    output,
};

/// All that this processor can do, the best last.
pub fn available() -> Vec<&'static Kernels> {
    let mut found = vec![&PORTABLE];
    #[cfg(target_arch = "x86_64")]
    found.extend(super::x86_64::available());
    found
}

/// The best that this processor can do.
pub fn best() -> &'static Kernels {
    available().last().copied().unwrap_or(&PORTABLE)
}

#[cfg(test)]
mod tests {
    use super::super::file::{FEATURE_MOST, OUTPUT_MOST, WIDTH_MOST};
    use super::*;
    use crate::random::Random;

    fn numbers(random: &mut Random, len: usize, most: i16) -> Vec<i16> {
        (0..len)
            .map(|_| (random.below(2 * most as usize + 1) as i32 - i32::from(most)) as i16)
            .collect()
    }

    #[test]
    fn every_kind_of_processor_gives_the_same_bits() {
        let mut random = Random::new(3, 0);
        for width in [32, 64, 96, 256, 512, 768, 1024] {
            for _ in 0..20 {
                let from = numbers(&mut random, width, i16::MAX);
                let other = numbers(&mut random, width, 400);
                let column = [(); 4].map(|()| numbers(&mut random, width, FEATURE_MOST));
                let weights = numbers(&mut random, 2 * width, OUTPUT_MOST);
                let results = available().into_iter().map(|kernels| {
                    let mut to = [(); 5].map(|()| vec![0; width]);
                    let [a, b, c, d] = column.each_ref().map(Vec::as_slice);
                    (kernels.one_one)(&mut to[0], &from, a, b);
                    (kernels.one_two)(&mut to[1], &from, a, [b, c]);
                    (kernels.two_two)(&mut to[2], &from, [a, b], [c, d]);
                    to[3].copy_from_slice(&from);
                    (kernels.add)(&mut to[3], a);
                    to[4].copy_from_slice(&from);
                    (kernels.take)(&mut to[4], a);
                    let halves = [&weights[..width], &weights[width..]];
                    (to, (kernels.output)([&from, &other], halves))
                });
                let results: Vec<_> = results.collect();
                assert!(results.iter().all(|result| *result == results[0]));
                let expected: i64 = from
                    .iter()
                    .chain(&other)
                    .zip(&weights)
                    .map(|(sum, weight)| {
                        let clamped = i64::from(*sum).clamp(0, 255);
                        (clamped * clamped / 8) * i64::from(*weight)
                    })
                    .sum();
                assert_eq!(results[0].1, expected);
            }
        }
    }

    #[test]
    fn the_largest_sums_do_not_overflow() {
        let sums = vec![i16::MAX; WIDTH_MOST];
        for weight in [OUTPUT_MOST, -OUTPUT_MOST] {
            let weights = vec![weight; WIDTH_MOST];
            let expected = 2 * WIDTH_MOST as i64 * (255 * 255 / 8) * i64::from(weight);
            for kernels in available() {
                let found = (kernels.output)([&sums, &sums], [&weights, &weights]);
                assert_eq!(found, expected, "{}", kernels.name);
            }
        }
    }
}

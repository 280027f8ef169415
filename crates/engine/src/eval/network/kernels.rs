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
fn one_one(to: &mut [i16], from: &[i16], add: &[i16], take: &[i16]) {
    for (((to, from), add), take) in to.iter_mut().zip(from).zip(add).zip(take) {
        *to = from.wrapping_add(*add).wrapping_sub(*take);
    }
}

#[inline(always)]
fn one_two(to: &mut [i16], from: &[i16], add: &[i16], take: [&[i16]; 2]) {
    let taken = take[0].iter().zip(take[1]);
    for (((to, from), add), (a, b)) in to.iter_mut().zip(from).zip(add).zip(taken) {
        *to = from.wrapping_add(*add).wrapping_sub(*a).wrapping_sub(*b);
    }
}

#[inline(always)]
fn two_two(to: &mut [i16], from: &[i16], add: [&[i16]; 2], take: [&[i16]; 2]) {
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
fn add(to: &mut [i16], column: &[i16]) {
    for (to, add) in to.iter_mut().zip(column) {
        *to = to.wrapping_add(*add);
    }
}

#[inline(always)]
fn take(to: &mut [i16], column: &[i16]) {
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
                let clamped = i32::from((*sum).clamp(0, 255));
                *lane += ((clamped * clamped) >> SQUARE_SHIFT) * i32::from(*weight);
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
    {
        if is_x86_feature_detected!("avx2") {
            found.push(&x86_64::AVX2);
        }
        if is_x86_feature_detected!("avx512f") && is_x86_feature_detected!("avx512bw") {
            found.push(&x86_64::AVX512);
        }
    }
    found
}

/// The best that this processor can do.
pub fn best() -> &'static Kernels {
    available().last().copied().unwrap_or(&PORTABLE)
}

// A function that is compiled for a feature of some processors can only be called where it is known to be there. The
// two tables below are private to this file, and `available` gives them out only where it is.
#[cfg(target_arch = "x86_64")]
#[allow(unsafe_code)]
mod x86_64 {
    use std::arch::x86_64::*;

    use super::{Kernels, SQUARE_SHIFT};

    /// The plain loops again, compiled for some features.
    macro_rules! kernels {
        ($table:ident, $name:literal, $features:literal, $output:ident) => {
            pub static $table: Kernels = {
                #[target_feature(enable = $features)]
                fn one_one(to: &mut [i16], from: &[i16], add: &[i16], take: &[i16]) {
                    super::one_one(to, from, add, take);
                }
                #[target_feature(enable = $features)]
                fn one_two(to: &mut [i16], from: &[i16], add: &[i16], take: [&[i16]; 2]) {
                    super::one_two(to, from, add, take);
                }
                #[target_feature(enable = $features)]
                fn two_two(to: &mut [i16], from: &[i16], add: [&[i16]; 2], take: [&[i16]; 2]) {
                    super::two_two(to, from, add, take);
                }
                #[target_feature(enable = $features)]
                fn add(to: &mut [i16], column: &[i16]) {
                    super::add(to, column);
                }
                #[target_feature(enable = $features)]
                fn take(to: &mut [i16], column: &[i16]) {
                    super::take(to, column);
                }
                // SAFETY: `available` gives this table out only where the processor has the features.
                Kernels {
                    name: $name,
                    one_one: |to, from, add, take| unsafe { one_one(to, from, add, take) },
                    one_two: |to, from, add, take| unsafe { one_two(to, from, add, take) },
                    two_two: |to, from, add, take| unsafe { two_two(to, from, add, take) },
                    add: |to, column| unsafe { add(to, column) },
                    take: |to, column| unsafe { take(to, column) },
                    output: |sums, weights| unsafe { $output(sums, weights) },
                }
            };
        };
    }

    kernels!(AVX2, "avx2", "avx2", output_avx2);
    kernels!(AVX512, "avx512", "avx512f,avx512bw", output_avx512);

    // Written out, because a compiler does not see that pairs of 16-bit products may be added at once.
    #[target_feature(enable = "avx2")]
    fn output_avx2(sums: [&[i16]; 2], weights: [&[i16]; 2]) -> i64 {
        const SHIFT: i32 = SQUARE_SHIFT as i32;
        let (zero, most) = (_mm256_setzero_si256(), _mm256_set1_epi16(255));
        let mut lanes = zero;
        for (sums, weights) in sums.into_iter().zip(weights) {
            let (sums, _) = sums.as_chunks::<16>();
            let (weights, _) = weights.as_chunks::<16>();
            for (sums, weights) in sums.iter().zip(weights) {
                let clamped = _mm256_min_epi16(_mm256_max_epi16(bytemuck::cast(*sums), zero), most);
                let squares = _mm256_srli_epi16::<SHIFT>(_mm256_mullo_epi16(clamped, clamped));
                let products = _mm256_madd_epi16(squares, bytemuck::cast(*weights));
                lanes = _mm256_add_epi32(lanes, products);
            }
        }
        let lanes: [i32; 8] = bytemuck::cast(lanes);
        lanes.into_iter().map(i64::from).sum()
    }

    #[target_feature(enable = "avx512f,avx512bw")]
    fn output_avx512(sums: [&[i16]; 2], weights: [&[i16]; 2]) -> i64 {
        let (zero, most) = (_mm512_setzero_si512(), _mm512_set1_epi16(255));
        let mut lanes = zero;
        for (sums, weights) in sums.into_iter().zip(weights) {
            let (sums, _) = sums.as_chunks::<32>();
            let (weights, _) = weights.as_chunks::<32>();
            for (sums, weights) in sums.iter().zip(weights) {
                let clamped = _mm512_min_epi16(_mm512_max_epi16(bytemuck::cast(*sums), zero), most);
                let squares =
                    _mm512_srli_epi16::<SQUARE_SHIFT>(_mm512_mullo_epi16(clamped, clamped));
                let products = _mm512_madd_epi16(squares, bytemuck::cast(*weights));
                lanes = _mm512_add_epi32(lanes, products);
            }
        }
        let lanes: [i32; 16] = bytemuck::cast(lanes);
        lanes.into_iter().map(i64::from).sum()
    }
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

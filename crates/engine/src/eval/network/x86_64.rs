//! The arithmetic on x86-64 processors: what all of them have, AVX2, and AVX-512.
//!
//! The sum of the output is written out, because a compiler does not see that pairs of 16-bit products may be added at once.
//! The rest is the plain loops, compiled once more.

use std::arch::x86_64::*;

use super::file::SQUARE_SHIFT;
use super::kernels::{self, Kernels};

const SHIFT: i32 = SQUARE_SHIFT as i32;

/// What this processor has, the best last.
pub fn available() -> Vec<&'static Kernels> {
    let mut found = vec![&SSE2];
    if is_x86_feature_detected!("avx2") {
        found.push(&AVX2);
    }
    if is_x86_feature_detected!("avx512bw") {
        found.push(&AVX512);
    }
    found
}

#[allow(unsafe_code)]
static SSE2: Kernels = Kernels {
    name: "sse2",
    one_one: |to, from, add, take| kernels::one_one(to, from, add, take),
    one_two: |to, from, add, take| kernels::one_two(to, from, add, take),
    two_two: |to, from, add, take| kernels::two_two(to, from, add, take),
    add: |to, column| kernels::add(to, column),
    take: |to, column| kernels::take(to, column),
    // SAFETY: every x86-64 processor has SSE2.
    output: |sums, weights| unsafe { output_sse2(sums, weights) },
};

#[target_feature(enable = "sse2")]
fn output_sse2(sums: [&[i16]; 2], weights: [&[i16]; 2]) -> i64 {
    let (zero, most) = (_mm_setzero_si128(), _mm_set1_epi16(255));
    // Eight lanes in two halves: four would not bear the largest sums.
    let mut lanes = [zero; 2];
    for (sums, weights) in sums.into_iter().zip(weights) {
        let (sums, _) = sums.as_chunks::<16>();
        let (weights, _) = weights.as_chunks::<16>();
        for (sums, weights) in sums.iter().zip(weights) {
            let sums: [__m128i; 2] = bytemuck::cast(*sums);
            let weights: [__m128i; 2] = bytemuck::cast(*weights);
            for ((lanes, sum), weight) in lanes.iter_mut().zip(sums).zip(weights) {
                let clamped = _mm_min_epi16(_mm_max_epi16(sum, zero), most);
                let squares = _mm_srli_epi16::<SHIFT>(_mm_mullo_epi16(clamped, clamped));
                *lanes = _mm_add_epi32(*lanes, _mm_madd_epi16(squares, weight));
            }
        }
    }
    let lanes: [i32; 8] = bytemuck::cast(lanes);
    lanes.into_iter().map(i64::from).sum()
}

/// A function compiled for AVX2 may only be called where the processor has it: this table, which nobody outside this file can
/// name, is given out by [`available`] only there. So is the next.
#[allow(unsafe_code)]
static AVX2: Kernels = Kernels {
    name: "avx2",
    // SAFETY: see above, for all of them.
    one_one: |to, from, add, take| unsafe { one_one_avx2(to, from, add, take) },
    one_two: |to, from, add, take| unsafe { one_two_avx2(to, from, add, take) },
    two_two: |to, from, add, take| unsafe { two_two_avx2(to, from, add, take) },
    add: |to, column| unsafe { add_avx2(to, column) },
    take: |to, column| unsafe { take_avx2(to, column) },
    output: |sums, weights| unsafe { output_avx2(sums, weights) },
};

#[allow(unsafe_code)]
static AVX512: Kernels = Kernels {
    name: "avx512",
    // SAFETY: see above, for all of them.
    one_one: |to, from, add, take| unsafe { one_one_avx512(to, from, add, take) },
    one_two: |to, from, add, take| unsafe { one_two_avx512(to, from, add, take) },
    two_two: |to, from, add, take| unsafe { two_two_avx512(to, from, add, take) },
    add: |to, column| unsafe { add_avx512(to, column) },
    take: |to, column| unsafe { take_avx512(to, column) },
    output: |sums, weights| unsafe { output_avx512(sums, weights) },
};

#[target_feature(enable = "avx2")]
fn one_one_avx2(to: &mut [i16], from: &[i16], add: &[i16], take: &[i16]) {
    kernels::one_one(to, from, add, take);
}

#[target_feature(enable = "avx2")]
fn one_two_avx2(to: &mut [i16], from: &[i16], add: &[i16], take: [&[i16]; 2]) {
    kernels::one_two(to, from, add, take);
}

#[target_feature(enable = "avx2")]
fn two_two_avx2(to: &mut [i16], from: &[i16], add: [&[i16]; 2], take: [&[i16]; 2]) {
    kernels::two_two(to, from, add, take);
}

#[target_feature(enable = "avx2")]
fn add_avx2(to: &mut [i16], column: &[i16]) {
    kernels::add(to, column);
}

#[target_feature(enable = "avx2")]
fn take_avx2(to: &mut [i16], column: &[i16]) {
    kernels::take(to, column);
}

#[target_feature(enable = "avx2")]
fn output_avx2(sums: [&[i16]; 2], weights: [&[i16]; 2]) -> i64 {
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

#[target_feature(enable = "avx512bw")]
fn one_one_avx512(to: &mut [i16], from: &[i16], add: &[i16], take: &[i16]) {
    kernels::one_one(to, from, add, take);
}

#[target_feature(enable = "avx512bw")]
fn one_two_avx512(to: &mut [i16], from: &[i16], add: &[i16], take: [&[i16]; 2]) {
    kernels::one_two(to, from, add, take);
}

#[target_feature(enable = "avx512bw")]
fn two_two_avx512(to: &mut [i16], from: &[i16], add: [&[i16]; 2], take: [&[i16]; 2]) {
    kernels::two_two(to, from, add, take);
}

#[target_feature(enable = "avx512bw")]
fn add_avx512(to: &mut [i16], column: &[i16]) {
    kernels::add(to, column);
}

#[target_feature(enable = "avx512bw")]
fn take_avx512(to: &mut [i16], column: &[i16]) {
    kernels::take(to, column);
}

#[target_feature(enable = "avx512bw")]
fn output_avx512(sums: [&[i16]; 2], weights: [&[i16]; 2]) -> i64 {
    let (zero, most) = (_mm512_setzero_si512(), _mm512_set1_epi16(255));
    let mut lanes = zero;
    for (sums, weights) in sums.into_iter().zip(weights) {
        let (sums, _) = sums.as_chunks::<32>();
        let (weights, _) = weights.as_chunks::<32>();
        for (sums, weights) in sums.iter().zip(weights) {
            let clamped = _mm512_min_epi16(_mm512_max_epi16(bytemuck::cast(*sums), zero), most);
            let squares =
                _mm512_srli_epi16::<{ SQUARE_SHIFT }>(_mm512_mullo_epi16(clamped, clamped));
            let products = _mm512_madd_epi16(squares, bytemuck::cast(*weights));
            lanes = _mm512_add_epi32(lanes, products);
        }
    }
    let lanes: [i32; 16] = bytemuck::cast(lanes);
    lanes.into_iter().map(i64::from).sum()
}

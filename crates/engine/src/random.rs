//! Random numbers that are the same everywhere (Steele, Lea and Flood, Fast Splittable Pseudorandom Number
//! Generators, 2014).
//!
//! ```
//! use engine::random::Random;
//! assert_eq!(Random::new(1, 7).below(100), Random::new(1, 7).below(100));
//! ```

/// A sequence of numbers.
pub struct Random(u64);

impl Random {
    /// Numbers for a seed and a place in its sequence of sequences.
    #[must_use]
    pub fn new(seed: u64, place: u64) -> Self {
        let mut random = Random(seed);
        random.0 = random.next() ^ place.wrapping_mul(0xD134_2543_DE82_EF95);
        random.next();
        random
    }

    /// The next number, any of 64 bits.
    #[allow(clippy::should_implement_trait)] // it never ends
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// 0 to `count` - 1.
    pub fn below(&mut self, count: usize) -> usize {
        (self.next() % count.max(1) as u64) as usize
    }

    /// An outcome, by its chance.
    #[cfg(test)]
    pub fn outcome(&mut self, chances: &[f64]) -> usize {
        let unit = (self.next() >> 11) as f64 / (1_u64 << 53) as f64;
        let mut sum = 0.0;
        chances
            .iter()
            .position(|chance| {
                sum += chance;
                unit < sum
            })
            .unwrap_or(chances.len() - 1)
    }
}

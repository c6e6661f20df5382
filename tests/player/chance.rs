//! Chance from a seed: xorshift, so that a play can be played again.

/// A source of chance.
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        // Scrambled (SplitMix64), so that neighbouring seeds play differently; never zero.
        let mut z = seed.wrapping_add(0x9E37_79B9_7F4A_7C15);
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        Self((z ^ (z >> 31)) | 1)
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    /// A number below `end`.
    pub fn below(&mut self, end: usize) -> usize {
        (self.next() >> 11) as usize % end.max(1)
    }

    pub fn one_in(&mut self, times: usize) -> bool {
        self.below(times) == 0
    }

    /// One of these.
    pub fn of<'a, T>(&mut self, all: &'a [T]) -> Option<&'a T> {
        all.get(self.below(all.len()))
    }

    /// A number from `least` to `most`.
    pub fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * (self.below(10_001) as f64) / 10_000.0
    }
}

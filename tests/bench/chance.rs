//! Chance from a seed (SplitMix64), so that a story can be told again.

/// A number from the environment.
pub fn told(name: &str, otherwise: u64) -> u64 {
    let told = std::env::var(name).ok();
    told.and_then(|told| told.parse().ok()).unwrap_or(otherwise)
}

/// A source of chance.
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
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

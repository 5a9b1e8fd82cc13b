//! Chance that is the same on every machine.

/// SplitMix64 (Steele, Lea & Flood, OOPSLA 2014).
#[derive(Clone, Debug)]
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Chance {
        Chance(seed)
    }

    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub fn yes(&mut self, share: f64) -> bool {
        self.between(0.0, 1.0) < share
    }

    /// Nearly normal, mean 0 and standard deviation 1: the sum of four even ones.
    pub fn normal(&mut self) -> f64 {
        let bits = self.next();
        let sum: u64 = (0..4).map(|i| bits >> (16 * i) & 0xffff).sum();
        (sum as f64 / 65_535.0 - 2.0) * 3.0_f64.sqrt()
    }
}

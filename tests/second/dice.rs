//! Numbers without end from a seed, the same on every machine.

/// Xorshift with 64 bits of state and a multiplication at the end.
#[derive(Debug)]
pub(super) struct Dice(u64);

impl Dice {
    pub(super) fn of(seed: u64) -> Self {
        // Neighbouring seeds must not begin alike, and no state may be nothing.
        let mixed = seed.wrapping_add(1).wrapping_mul(0x9E37_79B9_7F4A_7C15);
        let mut dice = Self(mixed | 1);
        for _ in 0..8 {
            dice.next();
        }
        dice
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D)
    }

    /// From 0 to below 1.
    fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub(super) fn within(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// The same in tenths.
    pub(super) fn tenths(&mut self, low: f64, high: f64) -> f64 {
        (self.within(low, high) * 10.0).round() / 10.0
    }

    /// A whole number from `low` to `high`, both possible.
    pub(super) fn whole(&mut self, low: u32, high: u32) -> u32 {
        low + (self.next() % u64::from(high - low + 1)) as u32
    }

    pub(super) fn chance(&mut self, share: f64) -> bool {
        self.unit() < share
    }

    pub(super) fn pick<T: Clone>(&mut self, from: &[T]) -> T {
        from[(self.next() % from.len() as u64) as usize].clone()
    }

    /// Something in so many cases of one, else nothing.
    pub(super) fn maybe<T>(&mut self, share: f64, make: impl FnOnce(&mut Self) -> T) -> Option<T> {
        self.chance(share).then(|| make(self))
    }
}

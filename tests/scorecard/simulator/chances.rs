//! Chances that come out the same on every run.

/// A linear congruential generator.
///
/// Multiplier and increment: Knuth, The Art of Computer Programming 2, 3.3.4 (MMIX); from memory.
#[derive(Clone, Debug)]
pub(crate) struct Chances(u64);

impl Chances {
    /// The chances of one chick: another seed or number gives another row.
    pub(crate) fn of(seed: u64, number: u32) -> Self {
        let mut chances = Self(seed ^ (u64::from(number) << 32));
        // The first values of neighbouring seeds lie close together.
        for _ in 0..8 {
            chances.even();
        }
        chances
    }

    /// A seed for chances that draw nothing from these.
    pub(crate) fn bits(mut self) -> u64 {
        self.even();
        self.0
    }

    /// Even between 0 and 1.
    pub(crate) fn even(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        f64::from(u32::try_from(self.0 >> 32).unwrap_or_default()) / 4_294_967_296.0
    }

    /// Even between two values.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.even()
    }

    /// Standard normal, never beyond six: the sum of twelve even values less six.
    pub(crate) fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.even()).sum::<f64>() - 6.0
    }

    /// Yes with this chance.
    pub(crate) fn happens(&mut self, chance: f64) -> bool {
        self.even() < chance
    }
}

//! The level that the readings say, and its pace.

/// The level now.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LevelNow {
    /// Most likely weight with an empty crop, g.
    pub grams: f64,
    /// Its standard deviation, g.
    pub sd_g: f64,
    /// The pace; `None` with too few readings.
    pub pace: Option<Pace>,
}

/// Gain or loss a day, as the filter sees it now.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pace {
    /// Gain, below zero for a loss, g/day.
    pub g_per_day: f64,
    /// Its standard deviation, g/day.
    pub sd_g_per_day: f64,
    /// The same gain in per cent of the level a day.
    pub pct_per_day: f64,
}

//! Two rules that a breeder can write on a slip of paper.

/// Share of the handover weight below which both rules ring: "not more than 10 %", lay advice on
/// weaning.
const SHARE: f64 = 0.9;

/// A rule that needs the readings only, and what it says today.
#[derive(Clone, Debug, Default)]
pub(crate) struct Paper {
    readings: Vec<(i32, f64)>,
}

impl Paper {
    /// Takes today's reading.
    pub(crate) fn read(&mut self, day: i32, grams: f64) {
        self.readings.push((day, grams));
    }

    /// Whether the latest reading lies below 90 % of the handover weight.
    pub(crate) fn single_calls(&self, handover_g: f64) -> bool {
        self.readings
            .last()
            .is_some_and(|(_, grams)| *grams < SHARE * handover_g)
    }

    /// Whether the median of the last three readings lies below 90 % of the handover weight. With
    /// fewer than three it waits.
    pub(crate) fn median_calls(&self, handover_g: f64) -> bool {
        let mut last: Vec<f64> = self
            .readings
            .iter()
            .rev()
            .take(3)
            .map(|read| read.1)
            .collect();
        last.sort_by(f64::total_cmp);
        last.len() == 3 && last.get(1).is_some_and(|grams| *grams < SHARE * handover_g)
    }
}

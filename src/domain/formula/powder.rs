//! What the label of a hand-feeding powder says, and how much energy that is.

use thiserror::Error;

use crate::domain::plan::care_plan::{CarePlan, PowderLabel as PlanLabel};

/// Water in a powder whose label does not say, 9 % by mass. Standing: common practice, 8 to 10.
pub const USUAL_MOISTURE_PCT: f64 = 9.0;

/// Energy of a regular powder whose label does not say, 3.6 kcal/g.
///
/// Standing: ours, near the poultry equation on a generic label (20 % protein, 12 fat, 48 starch).
pub const REGULAR_KCAL_PER_G: f64 = 3.6;

/// Energy of a high-fat powder whose label does not say, 3.85 kcal/g. Standing: ours, as above with
/// 17 % fat.
pub const HIGH_FAT_KCAL_PER_G: f64 = 3.85;

/// A powder is high in fat from here, 13 % as fed.
///
/// Standing: common practice of generic labels: 8 to 12 % regular, 13 to 18 % for macaws.
pub const HIGH_FAT_FROM_PCT: f64 = 13.0;

/// Kilojoules in a thermochemical kilocalorie, exact. Source: NIST SP 811, Appendix B.
pub const KILOJOULES_PER_KILOCALORIE: f64 = 4.184;

/// Protein on a label, in per cent as fed. Standing: ours, to catch slips of typing.
pub const PROTEIN_PCT: (f64, f64) = (5.0, 45.0);

/// Fat on a label, in per cent as fed. Standing: ours, to catch slips of typing.
pub const FAT_PCT: (f64, f64) = (1.0, 40.0);

/// Carbohydrate on a label, in per cent as fed. Standing: ours, to catch slips of typing.
pub const CARBOHYDRATE_PCT: (f64, f64) = (5.0, 85.0);

/// Moisture on a label, in per cent. Standing: ours, to catch slips of typing.
pub const MOISTURE_PCT: (f64, f64) = (0.0, 20.0);

/// Energy on a label, in kcal per 100 g. Standing: ours; catches kJ typed for kcal.
pub const KCAL_PER_100_G: (f64, f64) = (200.0, 600.0);

/// Why a label is refused; every range holds its ends.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum PowderError {
    /// Protein is outside [`PROTEIN_PCT`].
    #[error("protein is outside {} to {} %: {given_pct}", PROTEIN_PCT.0, PROTEIN_PCT.1)]
    Protein {
        /// The share given.
        given_pct: f64,
    },
    /// Fat is outside [`FAT_PCT`].
    #[error("fat is outside {} to {} %: {given_pct}", FAT_PCT.0, FAT_PCT.1)]
    Fat {
        /// The share given.
        given_pct: f64,
    },
    /// Carbohydrate is outside [`CARBOHYDRATE_PCT`].
    #[error("carbohydrate is outside {} to {} %: {given_pct}", CARBOHYDRATE_PCT.0, CARBOHYDRATE_PCT.1)]
    Carbohydrate {
        /// The share given.
        given_pct: f64,
    },
    /// Moisture is outside [`MOISTURE_PCT`].
    #[error("moisture is outside {} to {} %: {given_pct}", MOISTURE_PCT.0, MOISTURE_PCT.1)]
    Moisture {
        /// The share given.
        given_pct: f64,
    },
    /// The parts add up to more than the whole.
    #[error("protein, fat, carbohydrate and moisture add up to more than 100 %: {sum_pct}")]
    MoreThanWhole {
        /// The sum.
        sum_pct: f64,
    },
    /// Energy is outside [`KCAL_PER_100_G`].
    #[error("energy is outside {} to {} kcal per 100 g: {given_kcal}", KCAL_PER_100_G.0, KCAL_PER_100_G.1)]
    Energy {
        /// The energy given.
        given_kcal: f64,
    },
}

/// What stands on a label, as typed; shares as fed, not of the dry matter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PowderLabel {
    /// Protein, in per cent.
    pub protein_pct: f64,
    /// Fat, in per cent.
    pub fat_pct: f64,
    /// Carbohydrate without fibre, in per cent, where the label says.
    pub carbohydrate_pct: Option<f64>,
    /// Moisture, in per cent, where the label says.
    pub moisture_pct: Option<f64>,
    /// Energy, in kcal per 100 g, where the label says.
    pub kcal_per_100_g: Option<f64>,
}

/// Where the energy of a powder comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EnergySource {
    /// Printed on the label.
    Label,
    /// Estimated from protein, fat and carbohydrate by [`EnergyMethod::Poultry`].
    Estimate,
    /// Neither given: the usual figure for a regular or a high-fat powder.
    Usual,
}

/// A powder whose label has been checked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Powder {
    /// Protein by mass as fed, 0 to 1.
    pub protein_share: f64,
    /// Fat by mass as fed, 0 to 1.
    pub fat_share: f64,
    /// Water by mass, 0 to 1.
    pub moisture_share: f64,
    /// Energy in kcal per gram as fed.
    pub kcal_per_g: f64,
    /// Where the energy comes from.
    pub energy_source: EnergySource,
}

/// A way to reckon energy from protein, fat and carbohydrate.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EnergyMethod {
    /// 4, 9 and 4 kcal/g: for people, too high for powders.
    Atwater,
    /// 3.5, 8.5 and 3.5 kcal/g: for pet food, on the low side.
    ModifiedAtwater,
    /// 0.1551, 0.3431 and 0.1669 MJ/kg for each per cent, carbohydrate taken as starch.
    ///
    /// Source: World's Poultry Science Association and European Union equation for poultry.
    Poultry,
}

impl EnergyMethod {
    /// Energy in kcal per 100 g, from shares in per cent.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::formula::powder::EnergyMethod;
    /// // 20 x 4 + 12 x 9 + 48 x 4
    /// assert_eq!(EnergyMethod::Atwater.kcal_per_100_g(20.0, 12.0, 48.0), 380.0);
    /// ```
    pub fn kcal_per_100_g(self, protein_pct: f64, fat_pct: f64, carbohydrate_pct: f64) -> f64 {
        // One MJ/kg is 100 kJ per 100 g.
        let poultry = 100.0 / KILOJOULES_PER_KILOCALORIE;
        let (protein, fat, carbohydrate) = match self {
            Self::Atwater => (4.0, 9.0, 4.0),
            Self::ModifiedAtwater => (3.5, 8.5, 3.5),
            Self::Poultry => (0.1551 * poultry, 0.3431 * poultry, 0.1669 * poultry),
        };
        protein_pct * protein + fat_pct * fat + carbohydrate_pct * carbohydrate
    }
}

impl Powder {
    /// Checks a label and fills in what it leaves out.
    ///
    /// # Errors
    /// A [`PowderError`] for the first figure out of range, or [`PowderError::MoreThanWhole`].
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::formula::powder::{EnergySource, Powder, PowderError, PowderLabel};
    /// let label = PowderLabel {
    ///     protein_pct: 20.0,
    ///     fat_pct: 12.0,
    ///     carbohydrate_pct: None,
    ///     moisture_pct: None,
    ///     kcal_per_100_g: None,
    /// };
    /// assert_eq!(Powder::from_label(&label).unwrap().energy_source, EnergySource::Usual);
    /// let slip = PowderLabel { fat_pct: 120.0, ..label };
    /// assert_eq!(Powder::from_label(&slip), Err(PowderError::Fat { given_pct: 120.0 }));
    /// ```
    pub fn from_label(label: &PowderLabel) -> Result<Self, PowderError> {
        let given_pct = label.protein_pct;
        check(given_pct, PROTEIN_PCT, PowderError::Protein { given_pct })?;
        let given_pct = label.fat_pct;
        check(given_pct, FAT_PCT, PowderError::Fat { given_pct })?;
        let moisture_pct = label.moisture_pct.unwrap_or(USUAL_MOISTURE_PCT);
        let given_pct = moisture_pct;
        check(given_pct, MOISTURE_PCT, PowderError::Moisture { given_pct })?;
        if let Some(given_pct) = label.carbohydrate_pct {
            let refusal = PowderError::Carbohydrate { given_pct };
            check(given_pct, CARBOHYDRATE_PCT, refusal)?;
        }
        let carbohydrate_pct = label.carbohydrate_pct.unwrap_or(0.0);
        let sum_pct = label.protein_pct + label.fat_pct + moisture_pct + carbohydrate_pct;
        check(
            sum_pct,
            (0.0, 100.0),
            PowderError::MoreThanWhole { sum_pct },
        )?;
        let (kcal_per_g, energy_source) = energy(label)?;
        Ok(Self {
            protein_share: label.protein_pct / 100.0,
            fat_share: label.fat_pct / 100.0,
            moisture_share: moisture_pct / 100.0,
            kcal_per_g,
            energy_source,
        })
    }

    /// The powder of a plan: its label, or else the usual regular powder (20 % protein, 12 % fat).
    ///
    /// `None` for a label that is no powder's. Standing of the usual powder: common practice (19 to 22 %
    /// protein, 8 to 12 % fat on generic labels).
    pub fn of_plan(plan: &CarePlan) -> Option<Self> {
        let usual = PowderLabel {
            protein_pct: 20.0,
            fat_pct: 12.0,
            carbohydrate_pct: None,
            moisture_pct: None,
            kcal_per_100_g: None,
        };
        match plan.powder_label {
            Some(label) => Self::from_plan_label(label).ok(),
            None => Self::from_label(&usual).ok(),
        }
    }

    /// The powder of a label in a plan.
    ///
    /// # Errors
    /// As [`Powder::from_label`].
    pub fn from_plan_label(label: PlanLabel) -> Result<Self, PowderError> {
        Self::from_label(&PowderLabel {
            protein_pct: label.protein.as_pct(),
            fat_pct: label.fat.as_pct(),
            carbohydrate_pct: None,
            moisture_pct: None,
            kcal_per_100_g: Some(f64::from(label.energy_kcal)),
        })
    }

    /// Whether the powder is high in fat, see [`HIGH_FAT_FROM_PCT`].
    pub fn is_high_fat(&self) -> bool {
        HIGH_FAT_FROM_PCT / 100.0 <= self.fat_share
    }
}

fn energy(label: &PowderLabel) -> Result<(f64, EnergySource), PowderError> {
    if let Some(given_kcal) = label.kcal_per_100_g {
        check(
            given_kcal,
            KCAL_PER_100_G,
            PowderError::Energy { given_kcal },
        )?;
        return Ok((given_kcal / 100.0, EnergySource::Label));
    }
    if let Some(carbohydrate_pct) = label.carbohydrate_pct {
        let (protein_pct, fat_pct) = (label.protein_pct, label.fat_pct);
        let kcal = EnergyMethod::Poultry.kcal_per_100_g(protein_pct, fat_pct, carbohydrate_pct);
        return Ok((kcal / 100.0, EnergySource::Estimate));
    }
    let kcal_per_g = if label.fat_pct < HIGH_FAT_FROM_PCT {
        REGULAR_KCAL_PER_G
    } else {
        HIGH_FAT_KCAL_PER_G
    };
    Ok((kcal_per_g, EnergySource::Usual))
}

fn check(given: f64, (low, high): (f64, f64), refusal: PowderError) -> Result<(), PowderError> {
    if low <= given && given <= high {
        return Ok(());
    }
    Err(refusal)
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::powder::{EnergySource, Powder, PowderError, PowderLabel};

    const LABEL: PowderLabel = PowderLabel {
        protein_pct: 20.0,
        fat_pct: 12.0,
        carbohydrate_pct: None,
        moisture_pct: None,
        kcal_per_100_g: None,
    };

    fn refused(label: PowderLabel) -> Option<PowderError> {
        Powder::from_label(&label).err()
    }

    #[test]
    fn every_figure_is_taken_at_its_limits_and_refused_beyond() {
        let nothing = |_| None;
        let protein = |given_pct| {
            refused(PowderLabel {
                protein_pct: given_pct,
                ..LABEL
            })
        };
        let fat = |given_pct| {
            refused(PowderLabel {
                fat_pct: given_pct,
                ..LABEL
            })
        };
        let carbohydrate = |pct| {
            refused(PowderLabel {
                carbohydrate_pct: Some(pct),
                fat_pct: 1.0,
                protein_pct: 5.0,
                ..LABEL
            })
        };
        let moisture = |pct| {
            refused(PowderLabel {
                moisture_pct: Some(pct),
                ..LABEL
            })
        };
        let energy = |kcal| {
            refused(PowderLabel {
                kcal_per_100_g: Some(kcal),
                ..LABEL
            })
        };
        assert_eq!([5.0, 45.0].map(protein), [5.0, 45.0].map(nothing));
        assert_eq!([1.0, 40.0].map(fat), [1.0, 40.0].map(nothing));
        assert_eq!([5.0, 85.0].map(carbohydrate), [5.0, 85.0].map(nothing));
        assert_eq!([0.0, 20.0].map(moisture), [0.0, 20.0].map(nothing));
        assert_eq!([200.0, 600.0].map(energy), [200.0, 600.0].map(nothing));
        for given_pct in [4.9, 45.1] {
            assert_eq!(protein(given_pct), Some(PowderError::Protein { given_pct }));
        }
        for given_pct in [0.9, 40.1] {
            assert_eq!(fat(given_pct), Some(PowderError::Fat { given_pct }));
        }
        for given_pct in [4.9, 85.1] {
            assert_eq!(
                carbohydrate(given_pct),
                Some(PowderError::Carbohydrate { given_pct })
            );
        }
        for given_pct in [-0.1, 20.1] {
            assert_eq!(
                moisture(given_pct),
                Some(PowderError::Moisture { given_pct })
            );
        }
        // 1500 is a label in kJ.
        for given_kcal in [199.9, 600.1, 1500.0] {
            assert_eq!(energy(given_kcal), Some(PowderError::Energy { given_kcal }));
        }
        assert!(protein(f64::NAN).is_some());
    }

    #[test]
    fn parts_may_add_up_to_the_whole_and_no_more() {
        // 20 + 12 + 9 leaves 59 for carbohydrate.
        let with = |pct| {
            refused(PowderLabel {
                carbohydrate_pct: Some(pct),
                ..LABEL
            })
        };
        assert_eq!(with(59.0), None);
        assert!(matches!(
            with(59.1),
            Some(PowderError::MoreThanWhole { .. })
        ));
    }

    #[test]
    fn a_label_beats_an_estimate_and_an_estimate_beats_the_usual() {
        let usual = Powder::from_label(&LABEL).unwrap();
        let with_starch = PowderLabel {
            carbohydrate_pct: Some(48.0),
            ..LABEL
        };
        let estimate = Powder::from_label(&with_starch).unwrap();
        let with_kcal = PowderLabel {
            kcal_per_100_g: Some(400.0),
            ..with_starch
        };
        let printed = Powder::from_label(&with_kcal).unwrap();
        assert_eq!(
            (usual.kcal_per_g, usual.energy_source),
            (3.6, EnergySource::Usual)
        );
        assert_eq!(estimate.energy_source, EnergySource::Estimate);
        assert_eq!(
            (printed.kcal_per_g, printed.energy_source),
            (4.0, EnergySource::Label)
        );
    }

    #[test]
    fn high_fat_begins_at_its_limit() {
        for (fat_pct, is_high_fat, kcal_per_g) in
            [(12.9, false, 3.6), (13.0, true, 3.85), (13.1, true, 3.85)]
        {
            let powder = Powder::from_label(&PowderLabel { fat_pct, ..LABEL }).unwrap();
            assert_eq!(powder.is_high_fat(), is_high_fat, "{fat_pct}");
            assert_eq!(powder.kcal_per_g, kcal_per_g, "{fat_pct}");
        }
    }
}

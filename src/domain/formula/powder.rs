//! What the label of a hand-feeding powder says, and how much energy that is.

use thiserror::Error;

use crate::domain::plan::care_plan::{CarePlan, PowderLabel};

/// A powder is high in fat from here, 13 % as fed.
///
/// Standing: common practice of generic labels: 8 to 12 % regular, 13 to 18 % for macaws.
pub const HIGH_FAT_FROM_PCT: f64 = 13.0;

/// Protein on a label, in per cent as fed. Standing: ours, to catch slips of typing.
pub const PROTEIN_PCT: (f64, f64) = (5.0, 45.0);

/// Fat on a label, in per cent as fed. Standing: ours, to catch slips of typing.
pub const FAT_PCT: (f64, f64) = (1.0, 40.0);

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
    /// Energy is outside [`KCAL_PER_100_G`].
    #[error("energy is outside {} to {} kcal per 100 g: {given_kcal}", KCAL_PER_100_G.0, KCAL_PER_100_G.1)]
    Energy {
        /// The energy given.
        given_kcal: f64,
    },
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
}

impl Powder {
    /// The usual regular powder.
    ///
    /// Standing: common practice (19 to 22 % protein, 8 to 12 % fat and 8 to 10 % water on generic
    /// labels). The energy is ours, near the poultry equation on such a label with 48 % starch.
    pub const USUAL: Self = Self {
        protein_share: 0.20,
        fat_share: 0.12,
        moisture_share: 0.09,
        kcal_per_g: 3.6,
    };

    /// The powder of a plan: its label, or else the usual one. `None` for a label that is no powder's.
    pub fn of_plan(plan: &CarePlan) -> Option<Self> {
        match plan.powder_label {
            Some(label) => Self::from_plan_label(label).ok(),
            None => Some(Self::USUAL),
        }
    }

    /// The powder of a label in a plan, with the water of the usual one: plans hold no moisture.
    ///
    /// # Errors
    /// A [`PowderError`] for the first figure out of range.
    pub fn from_plan_label(label: PowderLabel) -> Result<Self, PowderError> {
        let (protein_pct, fat_pct) = (label.protein.as_pct(), label.fat.as_pct());
        Self::of_label(protein_pct, fat_pct, f64::from(label.energy_kcal))
    }

    /// The powder of a label: protein and fat in per cent, energy in kcal per 100 g, with the water of
    /// the usual one.
    ///
    /// # Errors
    /// A [`PowderError`] for the first figure out of range.
    pub fn of_label(
        protein_pct: f64,
        fat_pct: f64,
        kcal_per_100_g: f64,
    ) -> Result<Self, PowderError> {
        let given_pct = protein_pct;
        check(given_pct, PROTEIN_PCT, PowderError::Protein { given_pct })?;
        let given_pct = fat_pct;
        check(given_pct, FAT_PCT, PowderError::Fat { given_pct })?;
        let given_kcal = kcal_per_100_g;
        check(
            given_kcal,
            KCAL_PER_100_G,
            PowderError::Energy { given_kcal },
        )?;
        Ok(Self {
            protein_share: protein_pct / 100.0,
            fat_share: fat_pct / 100.0,
            kcal_per_g: kcal_per_100_g / 100.0,
            ..Self::USUAL
        })
    }

    /// Whether the powder is high in fat, see [`HIGH_FAT_FROM_PCT`].
    pub fn is_high_fat(&self) -> bool {
        HIGH_FAT_FROM_PCT / 100.0 <= self.fat_share
    }
}

fn check(given: f64, (low, high): (f64, f64), refusal: PowderError) -> Result<(), PowderError> {
    if low <= given && given <= high {
        return Ok(());
    }
    Err(refusal)
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::powder::{Powder, PowderError};
    use crate::domain::plan::care_plan::PowderLabel;
    use crate::domain::quantity::units::Percent;

    /// Protein and fat in tenths of a per cent.
    fn label(energy_kcal: u16, fat: i32, protein: i32) -> PowderLabel {
        PowderLabel {
            energy_kcal,
            fat: Percent::tenths_held(fat),
            protein: Percent::tenths_held(protein),
        }
    }

    #[test]
    fn every_figure_is_taken_at_its_limits_and_refused_beyond() {
        let refused = |kcal, fat, protein| Powder::from_plan_label(label(kcal, fat, protein)).err();
        for (kcal, fat, protein) in [(200, 10, 50), (600, 400, 450), (360, 120, 200)] {
            assert_eq!(refused(kcal, fat, protein), None);
        }
        for (tenths, given_pct) in [(49, 4.9), (451, 45.1)] {
            let refusal = PowderError::Protein { given_pct };
            assert_eq!(refused(360, 120, tenths), Some(refusal));
        }
        for (tenths, given_pct) in [(9, 0.9), (401, 40.1)] {
            assert_eq!(
                refused(360, tenths, 200),
                Some(PowderError::Fat { given_pct })
            );
        }
        // 1500 is a label in kJ.
        for (kcal, given_kcal) in [(199, 199.0), (601, 601.0), (1500, 1500.0)] {
            assert_eq!(
                refused(kcal, 120, 200),
                Some(PowderError::Energy { given_kcal })
            );
        }
    }

    #[test]
    fn a_label_is_taken_as_printed() {
        let powder = Powder::from_plan_label(label(385, 170, 190)).unwrap();
        assert_eq!(
            (powder.protein_share, powder.fat_share, powder.kcal_per_g),
            (0.19, 0.17, 3.85)
        );
    }

    #[test]
    fn high_fat_begins_at_its_limit() {
        for (fat, is_high_fat) in [(129, false), (130, true), (131, true)] {
            let powder = Powder::from_plan_label(label(360, fat, 200)).unwrap();
            assert_eq!(powder.is_high_fat(), is_high_fat, "{fat}");
        }
    }
}

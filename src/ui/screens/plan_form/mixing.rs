//! What the mix is reckoned with beside the powder share: label, fat supplement, spoon.

use leptos::prelude::*;

use crate::domain::formula::mixing::{MixError, SUPPLEMENT_G_PER_100_ML, check};
use crate::domain::formula::powder::{Powder, PowderError};
use crate::domain::formula::weighing_out::Spoon;
use crate::domain::plan::care_plan::{CarePlan, PowderLabel};
use crate::domain::quantity::units::{Grams, NumberError, Percent};
use crate::ui::parts::field::FieldKind;
use crate::ui::screens::plan_form::text::{AtFault, Text, TextField, optional};
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// The fields as typed. Powder is weighed in grams, whatever the unit on screen.
#[derive(Debug, Clone, Copy)]
pub struct MixingText {
    energy: Text,
    label_fat: Text,
    protein: Text,
    supplement: Text,
    ten_spoons: Text,
}

/// The parts of a plan that these fields hold.
#[derive(Debug, Clone, Copy)]
pub struct MixingParts {
    /// The powder's label.
    pub powder_label: Option<PowderLabel>,
    /// Fat supplement in 100 ml of mix.
    pub fat_supplement_per_100_ml: Grams,
    /// Powder in ten level spoons.
    pub ten_spoons: Option<Grams>,
}

impl MixingText {
    /// The fields of a plan.
    pub fn new(writing: Writing, plan: &CarePlan) -> Self {
        let label = plan.powder_label;
        let tenths = |tenths: Option<i32>| {
            Text::new(tenths.map_or_else(String::new, |tenths| writing.tenths(tenths)))
        };
        let supplement = Some(plan.fat_supplement_per_100_ml.tenths());
        Self {
            energy: Text::new(
                label.map_or_else(String::new, |label| label.energy_kcal.to_string()),
            ),
            label_fat: tenths(label.map(|label| label.fat.tenths())),
            protein: tenths(label.map(|label| label.protein.tenths())),
            supplement: tenths(supplement.filter(|tenths| *tenths > 0)),
            ten_spoons: tenths(plan.ten_spoons.map(Grams::tenths)),
        }
    }

    /// Every field.
    pub const fn all(self) -> [Text; 5] {
        [
            self.energy,
            self.label_fat,
            self.protein,
            self.supplement,
            self.ten_spoons,
        ]
    }

    /// What was typed.
    ///
    /// # Errors
    /// [`AtFault`] when a field says what is wrong with it.
    pub fn parts(self, writing: Writing) -> Result<MixingParts, AtFault> {
        let number = |error: NumberError| writing.number_error(error);
        let refused = |error: MixError| writing.mix_error(error);
        let label = self.label(writing);
        let supplement = self.supplement.take(optional(self.supplement, |text| {
            let grams = Grams::parse(text).map_err(number)?;
            let given_g = grams.as_g();
            let refusal = MixError::Supplement { given_g };
            check(given_g, SUPPLEMENT_G_PER_100_ML, refusal).map_err(refused)?;
            Ok::<Grams, String>(grams)
        }));
        let ten_spoons = self.ten_spoons.take(optional(self.ten_spoons, |text| {
            let grams = Grams::parse(text).map_err(number)?;
            Spoon::from_ten_level_spoons(grams.as_g()).map_err(refused)?;
            Ok::<Grams, String>(grams)
        }));
        Ok(MixingParts {
            powder_label: label?,
            fat_supplement_per_100_ml: supplement.ok_or(AtFault)?.unwrap_or(Grams::whole(0)),
            ten_spoons: ten_spoons.ok_or(AtFault)?,
        })
    }

    fn label(self, writing: Writing) -> Result<Option<PowderLabel>, AtFault> {
        let number = |error: NumberError| writing.number_error(error);
        let all = [self.energy, self.label_fat, self.protein];
        if all.iter().all(|text| text.is_empty()) {
            for text in all {
                text.fault.set(String::new());
            }
            return Ok(None);
        }
        let whole = |text: String| text.parse::<u16>().ok().ok_or(NumberError::NotANumber);
        let energy = match self.energy.get() {
            text if text.is_empty() => Err(NumberError::Empty),
            text => whole(text),
        };
        let energy = self.energy.take(energy.map_err(number));
        let share = |text: Text| text.take(Percent::parse(&text.get()).map_err(number));
        let (fat, protein) = (share(self.label_fat), share(self.protein));
        let (Some(energy_kcal), Some(fat), Some(protein)) = (energy, fat, protein) else {
            return Err(AtFault);
        };
        let label = PowderLabel {
            energy_kcal,
            fat,
            protein,
        };
        let Err(error) = Powder::from_plan_label(label) else {
            return Ok(Some(label));
        };
        let field = match error {
            PowderError::Energy { .. } => self.energy,
            PowderError::Fat { .. } => self.label_fat,
            PowderError::Protein { .. } => self.protein,
        };
        field.fault.set(writing.powder_error(error));
        Err(AtFault)
    }
}

/// The fields of the mix.
#[component]
pub fn MixingRows(
    /// What is typed.
    mixing: MixingText,
) -> impl IntoView {
    let say = AppState::here().language();
    let optional = say.optional();
    view! {
        <TextField id="ten-spoons" label=say.plan_spoons() text=mixing.ten_spoons kind=FieldKind::Number unit="g" hint=say.plan_spoons_hint() />
        <TextField id="fat-supplement" label=say.plan_part_fat() text=mixing.supplement kind=FieldKind::Number unit="g" hint=optional />
        <TextField id="label-energy" label=say.plan_label_energy() text=mixing.energy kind=FieldKind::Number unit="kcal" hint=optional />
        <TextField id="label-fat" label=say.plan_label_fat() text=mixing.label_fat kind=FieldKind::Number unit="%" hint=optional />
        <TextField id="label-protein" label=say.plan_label_protein() text=mixing.protein kind=FieldKind::Number unit="%" hint=optional />
    }
}

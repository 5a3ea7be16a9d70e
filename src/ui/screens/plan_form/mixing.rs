//! What the mix is reckoned with beside the powder share: label, fat supplement, spoon.

use leptos::prelude::*;

use crate::domain::formula::mixing::{MixError, RecipeShare, SUPPLEMENT_G_PER_100_ML, check};
use crate::domain::formula::powder::{Powder, PowderError};
use crate::domain::formula::weighing_out::Spoon;
use crate::domain::plan::care_plan::{CarePlan, PlanFault, PowderLabel};
use crate::domain::plan::species::Species;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::{Celsius, Grams, NumberError, Percent};
use crate::domain::warnings::plan_checks::{CheckVerdict, water_check};
use crate::ui::parts::button::button;
use crate::ui::parts::field::FieldKind;
use crate::ui::parts::live::live;
use crate::ui::screens::plan_form::text::{AtFault, Text, TextField, optional};
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// The fields as typed. Powder is weighed in grams, whatever the unit on screen.
#[derive(Debug, Clone, Copy)]
pub struct MixingText {
    /// The water to mix with.
    pub water: Text,
    energy: Text,
    label_fat: Text,
    protein: Text,
    supplement: Text,
    ten_spoons: Text,
    spoon_ml: Text,
    water_parts: Text,
    wanted_fat: Text,
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
    /// The water to mix with.
    pub mixing_water: Celsius,
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
            water: Text::new(writing.temperature_number(plan.mixing_water)),
            energy: Text::new(
                label.map_or_else(String::new, |label| label.energy_kcal.to_string()),
            ),
            label_fat: tenths(label.map(|label| label.fat.tenths())),
            protein: tenths(label.map(|label| label.protein.tenths())),
            supplement: tenths(supplement.filter(|tenths| *tenths > 0)),
            ten_spoons: tenths(plan.ten_spoons.map(Grams::tenths)),
            spoon_ml: Text::new(String::new()),
            water_parts: Text::new(String::new()),
            wanted_fat: Text::new(String::new()),
        }
    }

    /// Every field that the plan keeps; the others only help to find what it keeps.
    pub const fn all(self) -> [Text; 6] {
        [
            self.water,
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
        let water = self.water.take(
            writing
                .read_temperature(&self.water.get())
                .map_err(number)
                .and_then(|water| {
                    let fault = PlanFault::WaterTooHot;
                    let is_too_hot = CarePlan::HOTTEST_WATER < water;
                    let fault = is_too_hot.then(|| writing.language.plan_fault(fault).to_owned());
                    fault.map_or(Ok(water), Err)
                }),
        );
        Ok(MixingParts {
            mixing_water: water.ok_or(AtFault)?,
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
    /// The powder share, in per cent.
    powder: Text,
    /// The species, once chosen.
    species: Signal<Option<Species>>,
    /// What says that nobody has confirmed the water.
    water_mark: &'static str,
) -> impl IntoView {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let optional = say.optional();
    let fat_need = move || species.get().and_then(|species| writing.fat_need(species));
    let degree = writing.temperature_unit();
    let water_hint = [water_mark, say.plan_water_hint()].join(" ");
    // Asked about while it is typed: it is often the mix that was meant.
    let doubt = live(move || {
        let water = writing.read_temperature(&mixing.water.text.get()).ok()?;
        let check = water_check(water, Percent::parse(&powder.text.get()).ok()?)?;
        let is_asked = check.verdict() == CheckVerdict::Unusual;
        is_asked.then(|| view! { <p class="fault">{writing.plan_check(check)}</p> })
    });
    view! {
        <TextField id="mixing-water" label=say.plan_part_water() text=mixing.water kind=FieldKind::Number unit=degree hint=water_hint />
        <div id="water-answer" aria-live="polite">{doubt}</div>
        <TextField id="ten-spoons" label=say.plan_spoons() text=mixing.ten_spoons kind=FieldKind::Number unit="g" hint=say.plan_spoons_hint() />
        <RecipeRows mixing powder />
        <TextField id="fat-supplement" label=say.plan_part_fat() text=mixing.supplement kind=FieldKind::Number unit="g" hint=optional />
        {move || fat_need().map(|need| view! { <p class="hint">{need}</p> })}
        <TextField id="label-energy" label=say.plan_label_energy() text=mixing.energy kind=FieldKind::Number unit="kcal" hint=optional />
        <TextField id="label-fat" label=say.plan_label_fat() text=mixing.label_fat kind=FieldKind::Number unit="%" hint=optional />
        <TextField id="label-protein" label=say.plan_label_protein() text=mixing.protein kind=FieldKind::Number unit="%" hint=optional />
        <FatWanted mixing powder />
    }
}

/// A recipe by volume, and the share by weight that it is kept as.
#[component]
fn RecipeRows(mixing: MixingText, powder: Text) -> impl IntoView {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let answer = live(move || {
        let typed = [mixing.water_parts, mixing.ten_spoons, mixing.spoon_ml];
        let [parts, ten_spoons, spoon_ml] = typed.map(|field| field.text.get());
        let share = match writing.recipe_typed(&parts, &ten_spoons, &spoon_ml)? {
            Ok(share) => share,
            Err(fault) => return Some(view! { <p class="fault">{fault}</p> }.into_any()),
        };
        let take = match share {
            RecipeShare::Weighed(share) => Some(rounded(share * 1_000.0)),
            RecipeShare::Between(..) => None,
        };
        let take = take.map(|tenths| {
            let take = move |_| powder.text.set(writing.tenths(tenths));
            button(writing.recipe_take(tenths), take)
        });
        Some(view! { <p>{writing.recipe(share)}</p> {take} }.into_any())
    });
    view! {
        <TextField id="spoon-ml" label=say.plan_spoon_ml() text=mixing.spoon_ml kind=FieldKind::Number unit="ml" hint=say.plan_spoon_ml_hint() />
        <TextField id="water-parts" label=say.plan_recipe() text=mixing.water_parts kind=FieldKind::Number hint=say.plan_recipe_hint() />
        <div id="recipe-answer" aria-live="polite">{answer}</div>
    }
}

/// How much fat supplement reaches a wanted share of fat.
#[component]
fn FatWanted(mixing: MixingText, powder: Text) -> impl IntoView {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let answer = live(move || {
        let typed = [mixing.wanted_fat, mixing.label_fat, mixing.protein, powder];
        let [wanted, fat, protein, powder] = typed.map(|field| field.text.get());
        let (class, text) = match writing.fat_typed(&wanted, (&fat, &protein), &powder)? {
            Ok(answer) => ("", answer),
            Err(fault) => ("fault", fault),
        };
        Some(view! { <p class=class>{text}</p> })
    });
    view! {
        <TextField id="wanted-fat" label=say.plan_wanted_fat() text=mixing.wanted_fat kind=FieldKind::Number unit="%" hint=say.plan_wanted_fat_hint() />
        <div id="fat-answer" aria-live="polite">{answer}</div>
    }
}

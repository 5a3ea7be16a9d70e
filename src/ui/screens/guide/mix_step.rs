//! What goes into the cup, and how warm the water must be.

use leptos::prelude::*;

use crate::domain::formula::heat_balance::{CupStuff, HeatPart, WATER_SPECIFIC_HEAT, mix_c};
use crate::domain::formula::mixing::{MixAmounts, MixWanted, USUAL_ALLOWANCE_ML, mix_amounts};
use crate::domain::formula::nutrition::{MixWarning, mix_contents};
use crate::domain::formula::powder::Powder;
use crate::domain::formula::weighing_out::{Spoon, WeighedOut};
use crate::domain::journal::entries::Change;
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::topic::Topic;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::{Celsius, Grams, Millilitres, NumberError};
use crate::ui::clock;
use crate::ui::parts::breeders_word::breeders_words;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::live::live;
use crate::ui::screens::guide::dock::{Forward, GuideDock};
use crate::ui::screens::guide::under_way::Feed;
use crate::ui::state::AppState;
use crate::words::Language;
use crate::words::format::{MassUnit, Writing};

/// What goes into the cup, as it is weighed on a scale of 1 g.
fn weighed_out(plan: &CarePlan, volume: Millilitres) -> Option<WeighedOut> {
    let wanted = MixWanted::of_plan(plan, volume.as_ml(), USUAL_ALLOWANCE_ML);
    mix_amounts(&wanted)
        .and_then(|amounts| amounts.on_the_scale())
        .ok()
}

/// A tenth of an ounce is far too coarse for what goes into a cup.
const fn in_grams(writing: Writing) -> Writing {
    Writing {
        mass: MassUnit::Gram,
        ..writing
    }
}

fn grams(value: f64) -> Grams {
    Grams::tenths_held(rounded(value * 10.0))
}

/// The empty cup, as typed.
#[derive(Debug, Clone, Copy)]
struct Cup {
    writing: Writing,
    text: RwSignal<String>,
    stuff: RwSignal<Option<usize>>,
}

impl Cup {
    /// The one counted at the last mix.
    fn remembered(state: AppState) -> Self {
        let writing = in_grams(state.writing_now());
        let cup = state.copies.cup();
        let text = cup.map(|(mass, _)| writing.mass_typed(mass));
        let stuff = cup.map_or(CupStuff::Plastic, |(_, stuff)| stuff);
        let place = CupStuff::ALL.iter().position(|known| *known == stuff);
        Self {
            writing,
            text: RwSignal::new(text.unwrap_or_default()),
            stuff: RwSignal::new(place),
        }
    }

    /// Nothing typed is no cup.
    fn mass(self) -> Option<Result<Grams, NumberError>> {
        let typed = self.text.get();
        (!typed.trim().is_empty()).then(|| self.writing.read_mass(&typed))
    }

    /// What is wrong with the mass.
    fn fault(self) -> String {
        match self.mass() {
            Some(Err(error)) => self.writing.number_error(error),
            Some(Ok(_)) | None => String::new(),
        }
    }

    /// What the water must warm too.
    fn counted(self) -> Option<(Grams, CupStuff)> {
        let mass = self.mass()?.ok()?;
        let stuff = CupStuff::ALL.get(self.stuff.get()?)?;
        Some((mass, *stuff))
    }

    /// Keeps it for the next mix; what is no mass does not take the place of what was kept.
    fn remember(self, state: AppState) {
        if !state.is_demo.get() && self.fault().is_empty() {
            state.copies.remember_cup(self.counted());
        }
    }
}

/// Powder, water, supplement.
#[component]
pub fn MixStep(
    /// The feed under way.
    feed: Feed,
    /// The plan in force.
    plan: StoredValue<CarePlan>,
) -> impl IntoView {
    let plan = plan.get_value();
    let writing = in_grams(feed.state.writing_now());
    let say = writing.language;
    let guide = feed.guide.get_untracked();
    let Some(out) = weighed_out(&plan, guide.volume) else {
        return view! { <div class="scroll guide__step"><p>{say.plan_unconfirmed()}</p></div> <Forward feed word=say.guide_next() /> }
            .into_any();
    };
    let [powder, water, fat_supplement] = amounts_weighed(&out.amounts);
    let share_pct = out.amounts.powder_fraction().unwrap_or_default() * 100.0;
    let cup = Cup::remembered(feed.state);
    // What is counted unasked stands open.
    let is_open = !cup.text.with_untracked(String::is_empty);
    let (water_c, amounts) = (plan.mixing_water, out.amounts);
    let water_at = live(move || water_line(writing, water_c, &feed, &amounts, cup.counted()));
    let spoons = in_spoons(&plan, &out, say);
    let mixed = move |_| {
        let change = Change::MixMade {
            powder,
            water,
            fat_supplement,
        };
        note_mix(&feed, cup, change);
    };
    let is_first = feed.state.outlook.with_untracked(|outlook| {
        let next = outlook
            .as_ref()
            .and_then(|outlook| outlook.next_feed.as_ref());
        next.is_some_and(|next| next.is_first_home && next.slot == guide.slot)
    });
    let first = is_first.then(|| writing.first_mix(guide.volume, plan.powder_fraction));
    let scale_error = writing.scale_error(share_pct, out.share_error * 100.0);
    let warnings = mix_warnings(&plan, &out, writing);
    // Who came back to read it again has mixed already.
    let is_mixed = guide.mixed.is_some();
    view! {
        <div class="scroll guide__step">
{first.map(|line| view! { <p>{line}</p> })}
        <p class="guide__lead">{say.guide_mix_lead()}</p>
        <dl class="amounts">
            <dt>{say.guide_mix_water()}</dt>
            <dd>{writing.mass(water)}</dd>
            <dt>{say.guide_mix_powder()}</dt>
            <dd>{writing.mass(powder)} {spoons}</dd>
            {(fat_supplement.tenths() > 0).then(|| view! { <dt>{say.guide_mix_fat()}</dt> <dd>{writing.mass(fat_supplement)}</dd> })}
        </dl>
        <p class="guide__lead" data-water="true">{water_at}</p>
        {breeders_words(&[Topic::PowderName, Topic::Recipe])}
        <details class="group" open=is_open>
            <summary>{say.mix_cup()}</summary>
            <Field
                id="cup-mass"
                label=say.mix_cup_mass()
                text=cup.text
                kind=FieldKind::Number
                unit=writing.mass_unit()
                hint=say.mix_cup_hint()
                fault=Signal::derive(move || cup.fault())
            />
            <Choice legend=say.mix_cup_stuff() name="cup-stuff" options=say.cup_stuffs() chosen=cup.stuff />
        </details>
        <p class="hint">{writing.powder_share(share_pct)}</p>
        {scale_error.map(|line| view! { <p class="hint">{line}</p> })}
        <p class="hint">{writing.enough_for(guide.volume, Millilitres::whole(rounded(USUAL_ALLOWANCE_ML)))}</p>
        {warnings.into_iter().map(|warning| view! { <p class="fault">{warning}</p> }).collect_view()}
        <p class="hint">{say.guide_mix_no_microwave()}</p>
        </div>
{if is_mixed {
            view! { <Forward feed word=say.guide_next() /> }.into_any()
        } else {
            view! {
                <GuideDock feed>
                    <button type="button" class="button button--main guide__next" on:click=mixed>{say.guide_mixed()}</button>
                </GuideDock>
            }
            .into_any()
        }}
    }
    .into_any()
}

/// Powder, water and fat supplement, as they are weighed.
fn amounts_weighed(amounts: &MixAmounts) -> [Grams; 3] {
    [amounts.powder_g, amounts.water_g, amounts.supplement_g].map(grams)
}

/// The plan's water, and what powder and cup from the room make of it.
fn water_line(
    writing: Writing,
    water: Celsius,
    feed: &Feed,
    amounts: &MixAmounts,
    cup: Option<(Grams, CupStuff)>,
) -> String {
    let room_c = feed.guide.with_untracked(|guide| guide.room.as_c());
    let cup = cup.map(|(mass, stuff)| HeatPart::cup(mass.as_g(), stuff, room_c));
    let poured = HeatPart::of(amounts.water_g, WATER_SPECIFIC_HEAT, water.as_c());
    let powder = HeatPart::powder(amounts.powder_g, room_c);
    let parts: Vec<HeatPart> = [poured, powder].into_iter().chain(cup).collect();
    mix_c(&parts).map_or_else(
        |_| String::new(),
        |mix_c| writing.mix_starts(water, mix_c, feed.serving),
    )
}

/// Notes what was mixed, keeps the cup for the next mix and goes on.
fn note_mix(feed: &Feed, cup: Cup, mix: Change) {
    match feed.state.dispatch(mix) {
        Ok(_) => {
            untrack(|| cup.remember(feed.state));
            let now = clock::now();
            feed.change(|guide| guide.mix(now));
            feed.step_on();
        }
        Err(refusal) => feed.state.say_refusal(&refusal),
    }
}

/// The powder in level spoons, once ten of them were weighed.
fn in_spoons(plan: &CarePlan, out: &WeighedOut, say: Language) -> Option<String> {
    let spoon = Spoon::from_ten_level_spoons(plan.ten_spoons?.as_g()).ok()?;
    let spooned = out.amounts.in_spoons(&spoon).ok()?;
    let half = if spooned.half_spoons % 2 == 1 {
        say.guide_mix_half()
    } else {
        ""
    };
    Some(format!(
        " = {} {} {half}",
        spooned.half_spoons / 2,
        say.guide_mix_spoons()
    ))
}

fn mix_warnings(plan: &CarePlan, out: &WeighedOut, writing: Writing) -> Vec<&'static str> {
    let contents = Powder::of_plan(plan).and_then(|powder| {
        let contents = mix_contents(&out.amounts, &powder).ok()?;
        Some(contents.warnings(&powder))
    });
    // An unweighed recipe by volume is thin by nature: one to two is 17 to 20 %.
    let is_weighed = plan.ten_spoons.is_some();
    let is_told = |warning: &MixWarning| match warning {
        MixWarning::TooThin { .. } => is_weighed,
        MixWarning::TooThick { .. }
        | MixWarning::SupplementOverVolumeCap { .. }
        | MixWarning::SupplementOverDryMatterCap { .. }
        | MixWarning::SupplementInHighFatPowder { .. } => true,
    };
    contents
        .unwrap_or_default()
        .into_iter()
        .filter(is_told)
        .map(|warning| writing.language.mix_warning(warning))
        .collect()
}

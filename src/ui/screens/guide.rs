//! One feed, one step a screen: what to see, one big button, and Stop always in the same place.

use leptos::prelude::*;

use crate::domain::count::rounded;
use crate::domain::guards::{Guard, feeding_guards};
use crate::domain::guide::{CupOutlook, Guide, ReadingRefusal, Step};
use crate::domain::heat_balance::{HeatPart, water_needed_c};
use crate::domain::journal::{Change, CropFeel, CropState, Response, WhyPassedOver};
use crate::domain::mixing::{MixWanted, USUAL_ALLOWANCE_ML, mix_amounts};
use crate::domain::nutrition::mix_contents;
use crate::domain::outlook::Outlook;
use crate::domain::plan::CarePlan;
use crate::domain::powder::Powder;
use crate::domain::serving_heat::TemperatureUnit;
use crate::domain::serving_heat::{ServingVerdict, TypedTemperature, typed_temperature};
use crate::domain::units::{Celsius, Grams, Millilitres};
use crate::domain::volume::{draws, draws_for_small_hand};
use crate::domain::weighing_out::{Spoon, WeighedOut};
use crate::store::guide_text::{guide_from_text, guide_to_text};
use crate::ui::parts::drawing::{Drawing, DrawingKind};
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::page::Heading;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::ui::{clock, platform};
use crate::words::Language;
use crate::words::format::Writing;
use crate::words::guards::{guard, title};

const REASONS: [WhyPassedOver; 4] = [
    WhyPassedOver::CropNotEmpty,
    WhyPassedOver::NotFit,
    WhyPassedOver::Advised,
    WhyPassedOver::NotPossible,
];

/// The feed under way and what may be done with it.
#[derive(Debug, Clone, Copy)]
struct Feed {
    state: AppState,
    guide: RwSignal<Guide>,
    is_stopping: RwSignal<bool>,
}

impl Feed {
    /// Changes the guide and puts it away at once, so that a reload finds it.
    fn change(self, change: impl FnOnce(&mut Guide)) {
        self.guide.update(change);
        self.state
            .copies
            .remember_guide(&self.guide.with_untracked(guide_to_text));
    }

    fn to(self, step: Step) {
        self.change(|guide| guide.step = step);
        // Only once the step is drawn: what is drawn anew loses the focus.
        request_animation_frame(platform::focus_heading);
    }

    fn step_on(self) {
        if let Some(next) = self.guide.with_untracked(|guide| guide.step.next()) {
            self.to(next);
        }
    }

    fn begin_anew(self) {
        let now = clock::now();
        let plan = self
            .state
            .outlook
            .get_untracked()
            .map(|outlook| outlook.chick.plan.clone());
        if let Some(plan) = plan {
            self.change(|guide| *guide = Guide::begin(now, &plan, guide.slot));
            self.is_stopping.set(false);
            request_animation_frame(platform::focus_heading);
        }
    }

    /// Notes how the feed ended and leaves the guide.
    fn end(self, change: Change, said: String) {
        match self.state.dispatch(change) {
            Ok(id) => {
                self.state.copies.remember_guide("");
                self.state.say(said, vec![id]);
                self.state.go(Route::Now);
            }
            Err(refusal) => self.state.say(
                self.state.language().refusal(&refusal).to_owned(),
                Vec::new(),
            ),
        }
    }

    fn refused(self) {
        let guide = self.guide.get_untracked();
        let writing = self.state.writing_now();
        if guide.given.tenths() > 0 {
            return self.log(Response::Slow);
        }
        let say = writing.language;
        let said = format!("{}: {}", say.feed(guide.slot), say.strip_refused());
        self.end(Change::FeedRefused { slot: guide.slot }, said);
    }

    fn log(self, response: Response) {
        let guide = self.guide.get_untracked();
        let served_at = guide.readings.last().map(|reading| reading.cup);
        let (slot, taken, offered) = (guide.slot, guide.given, guide.volume);
        let change = Change::Fed {
            slot,
            taken,
            offered,
            served_at,
            response,
        };
        self.end(change, self.state.writing_now().feed_noted(slot, taken));
    }

    /// Leaves the feed out; what went in so far is logged, not left out.
    fn leave_out(self, why: WhyPassedOver) {
        if self.guide.with_untracked(|guide| guide.given.tenths() > 0) {
            return self.log(Response::Slow);
        }
        let slot = self.guide.with_untracked(|guide| guide.slot);
        let say = self.state.language();
        let said = format!("{}: {}", say.feed(slot), say.why_passed_over(why));
        self.end(Change::FeedPassedOver { slot, why }, said);
    }
}

/// The feed guide: the feed that was under way, else the next one.
#[component]
pub fn GuideScreen() -> impl IntoView {
    let state = AppState::here();
    let now = clock::now();
    let Some(outlook) = state.outlook.get_untracked() else {
        return ().into_any();
    };
    let kept = state.copies.guide().and_then(|text| guide_from_text(&text));
    let kept = kept.filter(|guide| {
        now.minutes_since(guide.begun) < 6 * 60 && outlook.chick.plan.feed(guide.slot).is_some()
    });
    let next = outlook.next_feed.as_ref().map(|feed| feed.slot);
    let guide = kept.or_else(|| Some(Guide::begin(now, &outlook.chick.plan, next?)));
    let Some(guide) = guide else {
        return view! { <p>{state.language().now_no_feed()}</p> }.into_any();
    };
    let feed = Feed {
        state,
        guide: RwSignal::new(guide),
        is_stopping: RwSignal::new(false),
    };
    state.notice.set(None);
    platform::keep_screen_on();
    let plan = StoredValue::new(outlook.chick.plan.clone());
    let step = Memo::new(move |_| feed.guide.with(|guide| guide.step));
    let body = move || {
        if feed.is_stopping.get() {
            return view! { <StopSheet feed /> }.into_any();
        }
        let plan = plan.get_value();
        match step.get() {
            Step::Crop => view! { <CropStep feed /> }.into_any(),
            Step::Mix => view! { <MixStep feed plan /> }.into_any(),
            Step::Warmth => view! { <WarmthStep feed /> }.into_any(),
            Step::DrawUp => view! { <DrawUpStep feed plan /> }.into_any(),
            Step::Hold => view! { <HoldStep feed /> }.into_any(),
            Step::Response => view! { <ResponseStep feed /> }.into_any(),
            Step::Give => view! { <GiveStep feed plan /> }.into_any(),
            Step::After => view! { <AfterStep feed /> }.into_any(),
        }
    };
    view! { <div class="guide"><GuideHead feed step /> {body}</div> }.into_any()
}

/// Which step this is, and Stop.
#[component]
fn GuideHead(feed: Feed, step: Memo<Step>) -> impl IntoView {
    let say = feed.state.language();
    let name = feed.guide.with_untracked(|guide| say.feed(guide.slot));
    let place = move || format!("{name} · {}/{}", step.get().number(), Step::ALL.len());
    view! {
        <header class="guide__head">
            <p class="hint">{place}</p>
            <button
                type="button"
                class="button guide__stop"
                aria-pressed=move || feed.is_stopping.get().to_string()
                on:click=move |_| feed.is_stopping.update(|stopping| *stopping = !*stopping)
            >
                {say.guide_stop()}
            </button>
        </header>
        {move || view! { <Heading text=say.guide_step(step.get()) /> }}
        <StaleMix feed step />
    }
}

/// Says on every step with mixed food that the mix is too old, with the way to begin anew.
#[component]
fn StaleMix(feed: Feed, step: Memo<Step>) -> impl IntoView {
    let say = feed.state.language();
    let is_stale = Memo::new(move |_| {
        let has_mix = (Step::Warmth..=Step::Give).contains(&step.get());
        let now = feed.state.now.get();
        has_mix && feed.guide.with(|guide| guide.is_stale(now))
    });
    move || {
        is_stale.get().then(|| {
            view! {
                <div class="question" role="alert">
                    <p>{say.guide_stale()}</p>
                    <button type="button" class="button" on:click=move |_| feed.begin_anew()>{say.guide_anew()}</button>
                </div>
            }
        })
    }
}

/// The three ways out.
#[component]
fn StopSheet(feed: Feed) -> impl IntoView {
    let say = feed.state.language();
    let reasons = REASONS.map(|why| {
        view! {
            <button type="button" class="button" on:click=move |_| feed.leave_out(why)>
                {say.why_passed_over(why)}
            </button>
        }
    });
    view! {
        <section class="group" aria-label=say.guide_stop_title()>
            <a class="wrong-link" href=Route::Wrong.to_hash()>
                <span aria-hidden="true">"!"</span>
                {say.now_wrong()}
            </a>
            <button type="button" class="button" on:click=move |_| feed.state.go(Route::Now)>{say.guide_wait()}</button>
            <p class="hint">{say.guide_wait_hint()}</p>
            <h2>{say.guide_leave()}</h2>
            <div class="acts">{reasons.collect_view()}</div>
            <button type="button" class="button" on:click=move |_| feed.begin_anew()>{say.guide_anew()}</button>
            <button type="button" class="button button--main" on:click=move |_| feed.is_stopping.set(false)>
                {say.guide_go_on()}
            </button>
        </section>
    }
}

#[component]
fn Forward(feed: Feed, word: &'static str) -> impl IntoView {
    view! { <button type="button" class="button button--main guide__next" on:click=move |_| feed.step_on()>{word}</button> }
}

#[component]
fn CropStep(feed: Feed) -> impl IntoView {
    let say = feed.state.language();
    let is_full = RwSignal::new(false);
    let empty = move |_| {
        let change = Change::CropSeen {
            state: CropState::Empty,
            feel: CropFeel::NotNoted,
        };
        if feed.state.dispatch(change).is_ok() {
            feed.step_on();
        }
    };
    let full = move |_| is_full.set(true);
    let warning = move || is_full.get().then(|| view! { <FullCrop feed /> });
    let guards = feed.state.outlook.get_untracked();
    let guards = guards.map_or_else(Vec::new, |outlook| {
        feeding_guards(clock::now(), &outlook.chick, None)
    });
    if !guards.is_empty() {
        return guarded(say, guards).into_any();
    }
    view! {
        <Drawing kind=DrawingKind::Crop />
        <p class="guide__lead">{say.guide_crop_look()}</p>
        <p class="hint">{say.guide_crop_cold()}</p>
        {warning}
        {move || {
            (!is_full.get())
                .then(|| {
                    view! {
                        <button type="button" class="button" on:click=full>{say.guide_crop_full()}</button>
                        <button type="button" class="button button--main guide__next" on:click=empty>
                            {say.guide_crop_empty()}
                        </button>
                    }
                })
        }}
    }
    .into_any()
}

/// What forbids a feed now, each with its reason and what to do; there is no way on from here but Stop.
fn guarded(say: Language, guards: Vec<Guard>) -> impl IntoView {
    let cards = guards.into_iter().map(|forbids| {
        let words = guard(say, forbids);
        view! {
            <li class="guard" data-level=level_name(forbids.level())>
                <LevelMark level=forbids.level() />
                <span>
                    <strong>{words.why} ". "</strong>
                    {words.act}
                </span>
            </li>
        }
    });
    view! {
        <section class="question" role="alert">
            <h2>{title(say)}</h2>
            <ul class="plain-list">{cards.collect_view()}</ul>
            <div class="acts">
                <a class="button" href=Route::Crop.to_hash()>{say.guide_look_again()}</a>
                <a class="button" href=Route::Wrong.to_hash()>{say.now_wrong()}</a>
            </div>
            <p class="hint">{say.caution_short()}</p>
        </section>
    }
}

/// A full crop ends the feed for now; what was seen is noted.
#[component]
fn FullCrop(feed: Feed) -> impl IntoView {
    let say = feed.state.language();
    let note = move |state: CropState| {
        let said = format!("{}: {}", say.now_crop(), say.crop_state(state));
        if let Ok(id) = feed.state.dispatch(Change::CropSeen {
            state,
            feel: CropFeel::NotNoted,
        }) {
            feed.state.say(said, vec![id]);
            feed.state.go(Route::Now);
        }
    };
    view! {
        <div class="question" role="alert">
            <p>{say.guide_crop_wait()}</p>
            <div class="acts">
                <button type="button" class="button" on:click=move |_| note(CropState::Emptying)>
                    {say.crop_state(CropState::Emptying)}
                </button>
                <button type="button" class="button" on:click=move |_| note(CropState::NotMoving)>
                    {say.crop_state(CropState::NotMoving)}
                </button>
            </div>
        </div>
    }
}

/// What goes into the cup, as it is weighed on a scale of 1 g.
fn weighed_out(plan: &CarePlan, volume: Millilitres) -> Option<WeighedOut> {
    let wanted = MixWanted {
        volume_ml: volume.as_ml(),
        allowance_ml: USUAL_ALLOWANCE_ML,
        powder_share: plan.powder_share.as_pct() / 100.0,
        supplement_g_per_100_ml: plan.fat_supplement_per_100_ml.as_g(),
    };
    mix_amounts(&wanted)
        .and_then(|amounts| amounts.on_the_scale())
        .ok()
}

fn grams(value: f64) -> Grams {
    Grams::tenths_held(rounded(value * 10.0))
}

#[component]
fn MixStep(feed: Feed, plan: CarePlan) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let guide = feed.guide.get_untracked();
    let Some(out) = weighed_out(&plan, guide.volume) else {
        return view! { <p>{say.plan_unconfirmed()}</p> <Forward feed word=say.guide_next() /> }
            .into_any();
    };
    let (powder, water, fat) = (
        grams(out.amounts.powder_g),
        grams(out.amounts.water_g),
        grams(out.amounts.supplement_g),
    );
    let share_pct = out.amounts.powder_share().unwrap_or_default() * 100.0;
    let others = [HeatPart::powder(out.amounts.powder_g, guide.room.as_c())];
    let aim = f64::from(plan.serve_from.tenths() + plan.serve_to.tenths()) / 20.0;
    let water_c = water_needed_c(aim, out.amounts.water_g, &others).ok();
    let water_at =
        water_c.map(|celsius| writing.water_at(Celsius::tenths_held(rounded(celsius * 10.0))));
    let spoons = plan
        .ten_spoons
        .and_then(|ten| Spoon::from_ten_level_spoons(ten.as_g()).ok());
    let spoons = spoons
        .and_then(|spoon| out.amounts.in_spoons(&spoon).ok())
        .map(|spooned| {
            let half = if spooned.half_spoons % 2 == 1 {
                say.guide_mix_half()
            } else {
                ""
            };
            format!(
                " = {} {} {half}",
                spooned.half_spoons / 2,
                say.guide_mix_spoons()
            )
        });
    let mixed = move |_| {
        let change = Change::MixMade {
            powder,
            water,
            fat_supplement: fat,
        };
        if feed.state.dispatch(change).is_ok() {
            let now = clock::now();
            feed.change(|guide| guide.mix(now));
            feed.step_on();
        }
    };
    let warnings = mix_warnings(&plan, &out, writing);
    view! {
        <p class="guide__lead">{say.guide_mix_lead()}</p>
        <dl class="amounts">
            <dt>{say.guide_mix_water()}</dt>
            <dd>{writing.mass(water)}</dd>
            <dt>{say.guide_mix_powder()}</dt>
            <dd>{writing.mass(powder)} {spoons}</dd>
            {(fat.tenths() > 0).then(|| view! { <dt>{say.guide_mix_fat()}</dt> <dd>{writing.mass(fat)}</dd> })}
        </dl>
        <p class="guide__lead">{water_at}</p>
        <p class="hint">{writing.scale_error(share_pct, out.share_error * 100.0)}</p>
        {warnings.into_iter().map(|warning| view! { <p class="fault">{warning}</p> }).collect_view()}
        <p class="hint">{say.guide_mix_no_microwave()}</p>
        <button type="button" class="button button--main guide__next" on:click=mixed>{say.guide_mixed()}</button>
    }
    .into_any()
}

fn mix_warnings(plan: &CarePlan, out: &WeighedOut, writing: Writing) -> Vec<&'static str> {
    let contents = Powder::of_plan(plan).and_then(|powder| {
        let contents = mix_contents(&out.amounts, &powder).ok()?;
        Some(contents.warnings(&powder))
    });
    contents
        .unwrap_or_default()
        .into_iter()
        .map(|warning| writing.language.mix_warning(warning))
        .collect()
}

#[component]
fn WarmthStep(feed: Feed) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let (text, fault) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let slip = RwSignal::new(None::<Celsius>);
    let take = move |cup: Celsius| {
        let mut answer = Ok(());
        feed.change(|guide| answer = guide.measure(clock::now(), cup));
        match answer {
            Ok(()) => {
                text.set(String::new());
                slip.set(None);
            }
            Err(ReadingRefusal::Cooling(error)) => fault.set(say.cooling_error(error).to_owned()),
        }
    };
    let measured = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        fault.set(String::new());
        slip.set(None);
        match parse_temperature(&text.get_untracked(), writing) {
            Err(sentence) => fault.set(sentence),
            Ok((cup, false)) => take(cup),
            Ok((cup, true)) => slip.set(Some(cup)),
        }
    };
    let question = move || {
        slip.get().map(|cup| {
            view! {
                <div class="question" role="alert">
                    <p>{say.guide_warm_slip()} " " {other_unit(cup, writing)} "?"</p>
                    <button type="button" class="button" on:click=move |_| take(cup)>{other_unit(cup, writing)}</button>
                </div>
            }
        })
    };
    let may_feed = move || {
        feed.guide
            .with(|guide| guide.may_feed(feed.state.now.get()))
    };
    let forward = move || may_feed().then(|| view! { <Forward feed word=say.guide_next() /> });
    view! {
        <p class="guide__lead">{say.guide_warm_lead()}</p>
        <CupNow feed />
        {forward}
        <form class="form" on:submit=measured>
            <Field id="cup" label=say.guide_warm_field() kind=FieldKind::Number text unit=writing.temperature_unit() fault />
            {question}
            <button type="submit" class="button">{say.guide_warm_measured()}</button>
        </form>
        <button type="button" class="button" on:click=move |_| feed.change(Guide::warm_again)>{say.guide_warm_bath()}</button>
        <p class="hint">{say.guide_mix_no_microwave()} " " {say.guide_warm_tip()}</p>
    }
}

/// A typed temperature; the flag says that it is probably meant in the other unit.
fn parse_temperature(text: &str, writing: Writing) -> Result<(Celsius, bool), String> {
    let thousandths = crate::domain::units::parse_thousandths(text)
        .map_err(|error| writing.number_error(error))?;
    let given = f64::from(i32::try_from(thousandths).unwrap_or(i32::MAX)) / 1_000.0;
    let held = |celsius: f64| Celsius::tenths_held(rounded(celsius * 10.0));
    match typed_temperature(given, writing.temperature) {
        TypedTemperature::AsSet { temp_c } => Ok((held(temp_c), false)),
        TypedTemperature::ProbablyOther { temp_c, .. } => Ok((held(temp_c), true)),
        TypedTemperature::Implausible => Err(writing.language.guide_warm_implausible().to_owned()),
    }
}

fn other_unit(cup: Celsius, writing: Writing) -> String {
    let temperature = match writing.temperature {
        TemperatureUnit::Celsius => TemperatureUnit::Fahrenheit,
        TemperatureUnit::Fahrenheit => TemperatureUnit::Celsius,
    };
    Writing {
        temperature,
        ..writing
    }
    .temperature(cup)
}

/// What the cup is like now, and when it may be fed.
#[component]
fn CupNow(feed: Feed) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let verdict = move || feed.guide.with(Guide::verdict);
    let now_c = move || {
        let cup = feed
            .guide
            .with(|guide| guide.cup_now_c(feed.state.now.get()))?;
        let cup = Celsius::tenths_held(rounded(cup * 10.0));
        Some(format!(
            "{} {}",
            say.guide_warm_now(),
            writing.temperature(cup)
        ))
    };
    let window = move || {
        feed.guide.with(|guide| {
            let now = guide.minutes(feed.state.now.get());
            match guide.cup_outlook() {
                CupOutlook::NotMeasured | CupOutlook::Unknown => None,
                CupOutlook::Guessed(window) => {
                    let is_cold = guide.verdict() == Some(ServingVerdict::TooCold);
                    if is_cold || guide.may_feed(feed.state.now.get()) {
                        Some(writing.window(0.0, window.quick.feed_by_min - now))
                    } else {
                        Some(writing.measure_again(window.quick.ready_min - now))
                    }
                }
                CupOutlook::Measured(window) => {
                    Some(writing.window(window.ready_min - now, window.feed_by_min - now))
                }
            }
        })
    };
    let heat = move || match verdict() {
        None => "none",
        Some(ServingVerdict::TooCold) => "cold",
        Some(ServingVerdict::Good | ServingVerdict::Ideal) => "good",
        Some(ServingVerdict::Amber) => "amber",
        Some(ServingVerdict::TooHot) => "hot",
        Some(ServingVerdict::BurnDanger) => "burns",
    };
    view! {
        <section class="cup" data-heat=heat>
            <p class="cup__verdict" role="status">{move || verdict().map(|verdict| say.serving_verdict(verdict))}</p>
            <p class="cup__now">{now_c}</p>
            <p class="cup__window">{window}</p>
        </section>
    }
}

#[component]
fn DrawUpStep(feed: Feed, plan: CarePlan) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let volume = feed.guide.with_untracked(|guide| guide.volume);
    let list = |draws: Vec<i32>| {
        let volumes = draws
            .into_iter()
            .map(|tenths| writing.volume(Millilitres::tenths_held(tenths)));
        volumes.collect::<Vec<_>>().join(" + ")
    };
    let small = list(draws_for_small_hand(volume.tenths(), plan.syringe.tenths()));
    let usual = list(draws(volume.tenths(), plan.syringe.tenths()));
    let is_smaller = small != usual;
    view! {
        <Drawing kind=DrawingKind::Syringe />
        <p class="guide__lead">{say.guide_draw_lead()}</p>
        <p class="guide__number">{usual}</p>
        {is_smaller.then(|| view! { <p class="hint">{say.guide_draw_small_hand()} ": " {small}</p> })}
        <Forward feed word=say.guide_next() />
    }
}

#[component]
fn HoldStep(feed: Feed) -> impl IntoView {
    let say = feed.state.language();
    view! {
        <Drawing kind=DrawingKind::Beak />
        <p class="guide__lead">{say.guide_hold_lead()}</p>
        <Forward feed word=say.guide_hold_ready() />
    }
}

#[component]
fn ResponseStep(feed: Feed) -> impl IntoView {
    let say = feed.state.language();
    view! {
        <p class="guide__lead">{say.guide_response_lead()}</p>
        <p class="hint">{say.guide_response_never()}</p>
        <button type="button" class="button" on:click=move |_| feed.refused()>{say.guide_response_no()}</button>
        <Forward feed word=say.guide_response_yes() />
    }
}

#[component]
fn GiveStep(feed: Feed, plan: CarePlan) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let volume = feed.guide.with_untracked(|guide| guide.volume);
    let counted = move || {
        feed.guide
            .with(|guide| writing.given_of(guide.given, guide.volume))
    };
    let next_draw = move || {
        let left = feed
            .guide
            .with(|guide| guide.volume.tenths() - guide.given.tenths());
        let draw = draws(left, plan.syringe.tenths())
            .first()
            .copied()
            .filter(|tenths| *tenths > 0)?;
        let draw = Millilitres::tenths_held(draw);
        let give = move |_| feed.change(|guide| guide.give(draw));
        Some(view! {
            <button type="button" class="button button--main guide__next" on:click=give>
                "+ " {writing.volume(draw)} " " {say.guide_given()}
            </button>
        })
    };
    let small = (volume.tenths() > 50).then(|| {
        let five = Millilitres::whole(5);
        view! {
            <button type="button" class="button" on:click=move |_| feed.change(|guide| guide.give(five))>
                "+ " {writing.volume(five)}
            </button>
        }
    });
    view! {
        <p class="guide__number" role="status">{counted}</p>
        <p class="guide__lead">{say.guide_give_lead()}</p>
        {next_draw}
        <div class="acts">
            {small}
            <button type="button" class="button" on:click=move |_| feed.step_on()>{say.guide_give_done()}</button>
        </div>
    }
}

#[component]
fn AfterStep(feed: Feed) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let counted = move || {
        feed.guide
            .with(|guide| writing.given_of(guide.given, guide.volume))
    };
    let log = move |_| {
        if feed.guide.with_untracked(|guide| guide.given.tenths() == 0) {
            feed.refused();
        } else {
            let is_whole = feed
                .guide
                .with_untracked(|guide| guide.given == guide.volume);
            feed.log(if is_whole {
                Response::Eager
            } else {
                Response::NotNoted
            });
        }
    };
    view! {
        <p class="guide__number">{counted}</p>
        <p class="guide__lead">{say.guide_after_lead()}</p>
        <p>{say.guide_after_not()}</p>
        <p class="hint">{say.guide_after_throw()}</p>
        <button type="button" class="button button--main guide__next" on:click=log>{say.guide_after_log()}</button>
    }
}

/// A band for the Now screen while a feed is under way.
pub fn feed_under_way(outlook: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let say = state.language();
    let guide = state.copies.guide().and_then(|text| guide_from_text(&text));
    let guide = guide.filter(|guide| outlook.now.minutes_since(guide.begun) < 6 * 60);
    guide.map(|guide| {
        let is_stale = guide.is_stale(outlook.now);
        view! {
            <section class="question">
                <p>{say.feed(guide.slot)} ": " {say.guide_step(guide.step)}</p>
                {is_stale.then(|| view! { <p>{say.guide_stale()}</p> })}
                <a class="button" href=Route::Guide.to_hash()>{say.guide_go_on()}</a>
            </section>
        }
    })
}

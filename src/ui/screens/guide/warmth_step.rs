//! The cup on its way into the window.

use leptos::prelude::*;

use crate::domain::formula::serving_heat::{
    ServingVerdict, TemperatureUnit, TypedTemperature, typed_temperature,
};
use crate::domain::instruction::feed_session::{CupOutlook, FeedSession, ReadingRefusal, Taken};
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Celsius;
use crate::ui::clock;
use crate::ui::parts::button::button;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::heat_scale::HeatScale;
use crate::ui::parts::live::live;
use crate::ui::screens::guide::dock::GuideDock;
use crate::ui::screens::guide::under_way::Feed;
use crate::words::format::Writing;

/// Cool to the window.
#[component]
pub fn WarmthStep(
    /// The feed under way.
    feed: Feed,
) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let (text, fault) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let slip = RwSignal::new(None::<Celsius>);
    let take = move |cup: Celsius| {
        let mut answer = Ok(Taken::Fits);
        feed.change(|guide| answer = guide.measure(clock::now(), cup));
        if answer.is_ok() {
            text.set(String::new());
            slip.set(None);
        }
        match answer {
            Ok(Taken::Fits) => {}
            Ok(Taken::OtherPlace) => fault.set(say.guide_other_place().to_owned()),
            Ok(Taken::Alone) => fault.set(say.guide_warmer().to_owned()),
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
    let question = live(move || {
        slip.get().map(|cup| {
            view! {
                <div class="question" role="alert">
                    <p>{say.guide_warm_slip()} " " {other_unit(cup, writing)} "?"</p>
                    {button(writing.slip_yes(cup), move |_| take(cup))}
                </div>
            }
        })
    });
    let may_feed = move || {
        feed.guide
            .with(|guide| guide.may_feed(feed.state.now.get(), feed.serving))
    };
    let is_unread = Memo::new(move |_| feed.guide.with(|guide| guide.readings.is_empty()));
    // One button to take a reading: beside the field where the way on is free, else in the dock.
    let may_go_on = Memo::new(move |_| may_feed());
    let beside = live(move || {
        may_go_on.get().then(
            || view! { <button type="submit" class="button">{say.guide_warm_measured()}</button> },
        )
    });
    let on = move || {
        if may_go_on.get() {
            view! {
                <button type="button" class="button button--main guide__next" on:click=move |_| feed.step_on()>
                    {say.guide_next()}
                </button>
            }
            .into_any()
        } else {
            view! {
                <button type="submit" form="cup-form" class="button button--main">{say.guide_warm_measured()}</button>
            }
            .into_any()
        }
    };
    view! {
            <div class="scroll guide__step">
    <p class="aim">
                <span>{say.guide_aim()}</span>
                " "
                <strong>{writing.aim_numbers(feed.serving)}</strong>
                " "
                <span class="aim__unit">{writing.temperature_unit()}</span>
            </p>
            {move || is_unread.get().then(|| view! { <p class="guide__under">{say.guide_warm_lead()}</p> })}
            <CupNow feed />
            <form class="form" id="cup-form" on:submit=measured>
                <Field
                    id="cup"
                    label=say.guide_warm_field()
                    kind=FieldKind::Number
                    text
                    unit=writing.temperature_unit()
                    fault
                />
                {question}
                {beside}
            </form>
            {button(say.guide_warm_bath(), move |_| feed.change(FeedSession::warm_again))}
            <p class="hint" data-bath="true">{writing.bath()}</p>
            <p class="hint">{say.guide_mix_no_microwave()} " " {say.guide_warm_tip()}</p>
            </div>
    <GuideDock feed>{on}</GuideDock>
        }
}

/// A typed temperature; the flag says that it is probably meant in the other unit.
fn parse_temperature(text: &str, writing: Writing) -> Result<(Celsius, bool), String> {
    let thousandths = crate::domain::quantity::units::parse_thousandths(text)
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
    let verdict = move || feed.guide.with(|guide| guide.verdict(feed.serving));
    let now_c = live(move || {
        let cup = feed
            .guide
            .with(|guide| guide.cup_now_c(feed.state.now.get()))?;
        let cup = Celsius::tenths_held(rounded(cup * 10.0));
        Some(format!(
            "{} {}",
            say.guide_warm_now(),
            writing.temperature(cup)
        ))
    });
    let window = live(move || {
        feed.guide.with(|guide| {
            let now = guide.minutes(feed.state.now.get());
            match guide.cup_outlook(feed.serving) {
                CupOutlook::NotMeasured | CupOutlook::Unknown => None,
                CupOutlook::Guessed(window) => {
                    let is_cold = guide.verdict(feed.serving) == Some(ServingVerdict::TooCold);
                    if is_cold || guide.may_feed(feed.state.now.get(), feed.serving) {
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
    });
    let reading = Signal::derive(move || {
        let last = feed.guide.with(|guide| guide.readings.last().copied());
        last.map(|reading| reading.cup.as_c())
    });
    let last = live(move || {
        let last = feed.guide.with(|guide| guide.readings.last().copied())?;
        let time = feed.state.zone.with(|zone| zone.lived(last.at)).time;
        Some(view! {
            <span class="hint">{writing.measured_at(time)}</span>
            " "
            <strong>{writing.temperature_number(last.cup)}</strong>
            " "
            <span class="aim__unit">{writing.temperature_unit()}</span>
        })
    });
    let heat = move || match verdict() {
        None => "none",
        Some(ServingVerdict::TooCold) => "cold",
        Some(ServingVerdict::Good) => "good",
        Some(ServingVerdict::Amber) => "amber",
        Some(ServingVerdict::TooHot) => "hot",
        Some(ServingVerdict::BurnDanger) => "burns",
    };
    view! {
        <section class="cup" data-heat=heat>
            <p class="cup__read">{last}</p>
            <HeatScale serving=feed.serving reading />
            <p class="cup__verdict" role="status">{move || verdict().map(|verdict| writing.serving_verdict(verdict))}</p>
            <p class="cup__now">{now_c}</p>
            <p class="cup__window">{window}</p>
        </section>
    }
}

//! The weight: one sentence, the chart, one line a weighing; what is worked out of them under More.

use leptos::prelude::*;

use crate::domain::journal::chick::WeaningStep;
use crate::domain::journal::entries::{Change, CropAtWeighing, EntryId, Refusal};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::Level;
use crate::share::weight_picture::{chart_drawn, full_chart_svg};
use crate::ui::parts::button::button;
use crate::ui::parts::call_card::call_buttons;
use crate::ui::parts::chart_card::{ChartCard, ChartPoint, ChartShown};
use crate::ui::parts::correct::correct;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::live::{listed, live, whenever};
use crate::ui::parts::page::Heading;
use crate::ui::route::Route;
use crate::ui::screens::weight_picture::Sending;
use crate::ui::state::AppState;
use crate::words::format::Writing;
use crate::words::weight::WeightState;

/// Lines shown before the rest is asked for.
const FIRST_LINES: usize = 5;

/// Feeds dropped that are named below the chart, the latest.
const DROPS_NAMED: usize = 3;

/// Weight curve and table.
#[component]
pub fn WeightScreen() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let of_outlook = move |outlook: &Outlook| lines(outlook, writing);
    let lines = Memo::new(move |_| {
        state
            .outlook
            .with(|outlook| outlook.as_deref().map(of_outlook).unwrap_or_default())
    });
    let has_weights = Memo::new(move |_| lines.with(|lines| !lines.is_empty()));
    let chart = Memo::new(move |_| {
        let shown = |outlook: &Outlook| chart(outlook, writing);
        state
            .outlook
            .with(|outlook| outlook.as_deref().and_then(shown))
    });
    let is_due = Memo::new(move |_| {
        let due = |outlook: &Outlook| outlook.is_to_be_weighed() && !outlook.is_call_next();
        state
            .outlook
            .with(|outlook| outlook.as_deref().is_some_and(due))
    });
    let sending = Sending::here();
    let body = live(move || {
        if has_weights.get() {
            view! {
                <div class="columns">
                    <div class="column">
                        <Verdict />
                        <ChartCard chart>{sending.shown()}</ChartCard>
                    </div>
                    <div class="column">
                        <Lines lines />
                        <More />
                    </div>
                </div>
            }
            .into_any()
        } else {
            view! { <p>{say.weight_none()}</p> }.into_any()
        }
    });
    view! {
        <div class="scroll weight">
            <div class="only-read"><Heading text=say.weight_title() /></div>
            {body}
        </div>
        <div class="dock">
            {move || has_weights.get().then(|| sending.button())}
            <a class="button" class:button--main=is_due href=Route::Weigh.to_hash()>{say.now_weigh()}</a>
        </div>
    }
}

/// What the weight means, with its level, and whom to call where it is due.
#[component]
fn Verdict() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let said = Memo::new(move |_| {
        let outlook = state.outlook.get()?;
        let WeightState {
            weight,
            stands,
            means,
        } = writing.weight_state(&outlook)?;
        let stands = if stands.is_empty() { weight } else { stands };
        Some((outlook.weight_level(), outlook.level, stands, means))
    });
    let calls = Memo::new(move |_| calls(state));
    view! {
        {move || said.get().map(|(of_weight, highest, stands, means)| {
            let is_other = of_weight.is_none_or(|level| level < highest);
            view! {
                <div class="verdict">
                    <LevelMark level=of_weight.unwrap_or(Level::Settled) />
                    <p><strong>{stands}</strong> " " {means}</p>
                </div>
                {is_other.then(|| other_level(highest, of_weight, state))}
            }
        })}
        {move || calls.get().map(|(level, plan)| call_buttons(level, Some(&plan)))}
    }
}

/// Whom the weight is called about, or what comes before everything else.
fn calls(state: AppState) -> Option<(Level, CarePlan)> {
    let outlook = state.outlook.get()?;
    let of_weight = outlook.weight_level().filter(|level| level.is_call());
    let next = outlook.is_call_next().then_some(outlook.level);
    Some((next.max(of_weight)?, outlook.chick.plan.clone()))
}

/// That the level is higher for another reason than the weight, or for one more.
fn other_level(level: Level, of_weight: Option<Level>, state: AppState) -> impl IntoView {
    let say = state.language();
    let why = if of_weight.is_some_and(Level::is_call) {
        say.weight_now_more()
    } else {
        say.weight_now_other()
    };
    view! {
        <a class="verdict__other" data-level=level_name(level) href=Route::Now.to_hash()>
            <LevelMark level />
            <span><strong>{say.level(level)} "."</strong> " " {why}</span>
        </a>
    }
}

/// One weighing, ready to show.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
struct Line {
    id: EntryId,
    at: Moment,
    day: String,
    mass: String,
    typed: String,
    change: String,
    crop: CropAtWeighing,
    facts: Vec<(&'static str, String)>,
}

/// Every weighing, latest first.
fn lines(outlook: &Outlook, writing: Writing) -> Vec<Line> {
    let say = writing.language;
    let reference = outlook.chick.plan.reference.map(|handed| handed.weight);
    let mut before = None;
    let mut lines = Vec::new();
    for weighing in &outlook.chick.weighings {
        let weight = weighing.what.weight;
        let is_empty = weighing.what.crop == CropAtWeighing::Empty;
        let change = before
            .filter(|_| is_empty)
            .map(|before| weight.as_g() - before);
        let against = reference.and_then(|handed| weight.since(handed).loss_pct_of(handed));
        let against = against.filter(|_| is_empty);
        let crop = match weighing.what.crop {
            CropAtWeighing::Empty => say.weigh_empty(),
            CropAtWeighing::AfterFeed => say.weigh_after(),
            CropAtWeighing::NotSure => say.weigh_not_sure(),
        };
        let mut facts = vec![
            (say.log_time(), writing.time(weighing.lived().time)),
            (say.weigh_crop(), crop.to_owned()),
        ];
        facts.extend(against.map(|loss| (say.weight_against(), writing.against_handover(loss))));
        if outlook.weight.trend.doubted.contains(&weighing.id) {
            facts.push((say.weight_weight(), say.weight_doubted().to_owned()));
        }
        lines.push(Line {
            id: weighing.id,
            at: weighing.at,
            day: writing.day(weighing.lived().day),
            mass: writing.mass(weight),
            typed: writing.mass_typed(weight),
            change: change
                .map(|change| writing.mass_change(change))
                .unwrap_or_default(),
            crop: weighing.what.crop,
            facts,
        });
        if is_empty {
            before = Some(weight.as_g());
        }
    }
    lines.reverse();
    lines
}

/// The chart with what is said of each of its points.
pub fn chart(outlook: &Outlook, writing: Writing) -> Option<ChartShown> {
    let say = writing.language;
    let drawn = chart_drawn(writing, outlook)?;
    let mut before = None;
    let weighings = outlook.chick.weighings.iter().zip(drawn.places);
    let points = weighings.map(|(weighing, place)| {
        let (weight, day) = (weighing.what.weight, weighing.lived().day);
        let title = format!("{}, {}", writing.day(day), writing.mass(weight));
        let is_doubted = outlook.weight.trend.doubted.contains(&weighing.id);
        let detail = match weighing.what.crop {
            _ if is_doubted => say.weight_doubted().to_owned(),
            CropAtWeighing::AfterFeed => say.weight_food_off().to_owned(),
            CropAtWeighing::NotSure => say.crop_at_weighing(CropAtWeighing::NotSure).to_owned(),
            CropAtWeighing::Empty => {
                let since = before.and_then(|(before, day)| {
                    let loss = weight.since(before).loss_pct_of(before)?;
                    Some(writing.change_since(-loss, day))
                });
                since.unwrap_or_default()
            }
        };
        if weighing.what.crop == CropAtWeighing::Empty {
            before = Some((weight, day));
        }
        ChartPoint {
            place,
            title,
            detail,
        }
    });
    let points = points.collect();
    let steps = outlook.chick.weaning.iter().rev();
    let drops = steps
        .filter(|step| step.at <= outlook.now)
        .filter_map(|step| {
            let WeaningStep::Dropped { slot, .. } = step.what else {
                return None;
            };
            Some(writing.feed_dropped_on(&say.feed(slot).to_lowercase(), step.lived().day))
        });
    Some(ChartShown {
        svg: drawn.svg,
        points,
        drops: drops.take(DROPS_NAMED).collect(),
    })
}

/// One line a weighing; correcting and removing stand behind it.
#[component]
fn Lines(lines: Memo<Vec<Line>>) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let some = move |from: usize, count: usize| {
        lines.with(|lines| {
            lines
                .iter()
                .skip(from)
                .take(count)
                .cloned()
                .collect::<Vec<_>>()
        })
    };
    let count = move || lines.with(Vec::len);
    let has_more = Memo::new(move |_| count() > FIRST_LINES);
    let correcting = RwSignal::new(None::<EntryId>);
    let list = move |from: usize, most: usize| {
        let row = move |line| view! { <LineRow line correcting /> };
        let rows = listed(move || some(from, most), Line::clone, row);
        view! { <ul class="unfolds">{rows}</ul> }
    };
    view! {
        {list(0, FIRST_LINES)}
        {move || has_more.get().then(|| view! {
            <details class="fold">
                <summary><strong>{move || writing.all_weighings(count())}</strong></summary>
                {list(FIRST_LINES, usize::MAX)}
            </details>
        })}
    }
}

#[component]
fn LineRow(line: Line, correcting: RwSignal<Option<EntryId>>) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let facts = line.facts.iter().cloned().map(|(name, fact)| {
        view! { <dt>{name}</dt> <dd>{fact}</dd> }
    });
    let facts = facts.collect_view();
    let (id, of_form) = (line.id, line.clone());
    let is_correcting = move || correcting.get() == Some(id);
    let open_or_close = move |_| {
        correcting.update(|open| *open = open.is_none_or(|open| open != id).then_some(id));
    };
    view! {
        <li>
            <details class="unfold">
                <summary>
                    <span class="unfold__what">{line.day}</span>
                    <strong class="unfold__number">{line.mass}</strong>
                    <span class="unfold__change">{line.change}</span>
                </summary>
                <dl class="facts">{facts}</dl>
                <div class="acts">
                    <button
                        type="button"
                        class="button"
                        aria-expanded=move || is_correcting().to_string()
                        on:click=open_or_close
                    >
                        {say.weight_correct()}
                    </button>
                    {button(say.remove(), move |_| state.take_back(&[id]))}
                </div>
                {move || is_correcting().then(|| view! { <CorrectWeight line=of_form.clone() /> })}
            </details>
        </li>
    }
}

/// The right weight for one that was typed wrongly.
#[component]
fn CorrectWeight(line: Line) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let (text, fault) = (
        RwSignal::new(line.typed.clone()),
        RwSignal::new(String::new()),
    );
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let weight = match writing.read_mass(&text.get_untracked()) {
            Ok(weight) => weight,
            Err(error) => return fault.set(writing.number_error(error)),
        };
        let right = Change::Weighed {
            weight,
            crop: line.crop,
        };
        let kept = correct(state, line.id, line.at, right, writing.mass(weight));
        if let Err(refusal) = kept {
            let refusal: Refusal = refusal;
            fault.set(say.refusal(&refusal).to_owned());
        }
    };
    view! {
        <form class="form" on:submit=keep>
            <Field id="right-weight" label=say.weight_right() kind=FieldKind::Number text unit=writing.mass_unit() fault />
            <button type="submit" class="button">{say.keep()}</button>
        </form>
    }
}

/// Level, band, forecast and chances, for those who ask.
#[component]
fn More() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let (is_open, full) = (RwSignal::new(false), RwSignal::new(None));
    let worked_out = Memo::new(move |_| {
        let outlook = state.outlook.get().filter(|_| is_open.get())?;
        Some((
            full_chart_svg(writing, &outlook)?,
            figures(&outlook, writing),
        ))
    });
    whenever(move || full.set(worked_out.get()));
    let shown = live(move || {
        full.get().map(|(svg, figures): (String, Vec<String>)| {
            let figures = figures.into_iter().map(|figure| view! { <li>{figure}</li> });
            view! {
                <div class="chart__picture chart__picture--still" role="img" aria-label=say.weight_chart() inner_html=svg></div>
                <ul class="plain-list">{figures.collect_view()}</ul>
                <p class="hint">{say.weight_key()}</p>
            }
        })
    });
    let toggled = move |_| is_open.update(|is_open| *is_open = !*is_open);
    view! {
        <details class="fold" on:toggle=toggled>
            <summary>
                <span>
                    <strong>{say.weight_more()}</strong>
                    <span class="hint fold__hint">{say.weight_more_hint()}</span>
                </span>
            </summary>
            {shown}
        </details>
    }
}

/// Pace, chances and the day the limit would be reached, as sentences.
fn figures(outlook: &Outlook, writing: Writing) -> Vec<String> {
    let trend = &outlook.weight.trend;
    let level = trend.now.map(|now| writing.level_now(now.grams, now.sd_g));
    let pace = trend.slope.map(|slope| writing.pace(slope.g_per_day.value));
    let peak = trend.peak_loss_pct.map(|loss| writing.below_peak(loss));
    let chances = trend
        .below_limit
        .map(|below| writing.chances_below_limit(below.now, below.in_days));
    let crossing = trend.crossing.map(|crossing| {
        let day = |moment: Moment| outlook.day_of(moment);
        writing.crossing(
            day(crossing.earliest),
            day(crossing.likely),
            crossing.latest.map(day),
        )
    });
    // A day at which a limit is reached would contradict a level that is settled.
    let crossing = crossing.filter(|_| outlook.weight_level() != Some(Level::Settled));
    let too_few = trend
        .now
        .is_none()
        .then(|| writing.language.weight_too_few().to_owned());
    let growth = writing.growth(trend);
    [level, pace, peak, chances, crossing, too_few, growth]
        .into_iter()
        .flatten()
        .collect()
}

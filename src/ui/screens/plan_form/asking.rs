//! What an owner answers who wants another value in a part of the breeder's.

use leptos::prelude::*;

use crate::domain::journal::entries::{ChickId, EntryId, Journal, Refusal};
use crate::domain::plan::ask_first::AskFirst;
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::parts::{Side, changed_parts};
use crate::domain::plan::plan_line::plan_difference;
use crate::domain::quantity::order::set_of;
use crate::ui::clock;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::FieldKind;
use crate::ui::parts::live::live;
use crate::ui::parts::when::{When, WhenText};
use crate::ui::screens::plan_form::text::{Text, TextField};
use crate::ui::state::AppState;
use crate::words::Language;

/// How another value comes into a part of the breeder's.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Way {
    Ask,
    Said,
    Tell,
}

const WAYS: [Way; 3] = [Way::Ask, Way::Said, Way::Tell];
/// Where it could harm the chick.
const SAFE_WAYS: [Way; 2] = [Way::Ask, Way::Said];

impl Way {
    const fn word(self, say: Language) -> &'static str {
        match self {
            Self::Ask => say.plan_ask_ask(),
            Self::Said => say.plan_ask_said(),
            Self::Tell => say.plan_ask_tell(),
        }
    }
}

/// The question and its answer as typed.
#[derive(Debug, Clone, Copy)]
pub struct AskingText {
    /// What would have to be asked for; `None` until the question is asked.
    risks: RwSignal<Option<Vec<AskFirst>>>,
    chosen: RwSignal<Option<usize>>,
    fault: RwSignal<String>,
    who: Text,
    when: WhenText,
}

impl AskingText {
    /// Not asked yet.
    pub fn new(state: AppState) -> Self {
        Self {
            risks: RwSignal::new(None),
            chosen: RwSignal::new(None),
            fault: RwSignal::new(String::new()),
            who: Text::new(String::new()),
            when: WhenText::now(state),
        }
    }

    /// Keeps the plan of a chick, or asks first what its breeder says to it; `None` while the question is
    /// open. The answer is what was noted, and what to say of it.
    pub fn keep(
        self,
        state: AppState,
        chick: ChickId,
        plan: &CarePlan,
    ) -> Option<Result<(Vec<EntryId>, &'static str), Refusal>> {
        let say = state.language();
        let Some(risks) = asked(state, chick, plan) else {
            return Some(state.set_plan(chick, plan).map(|ids| (ids, "")));
        };
        let ways = ways(&risks);
        let is_new = self.risks.get_untracked().as_ref() != Some(&risks);
        if is_new {
            self.chosen.set(None);
            self.fault.set(String::new());
            self.risks.set(Some(risks));
            return None;
        }
        let chosen = self.chosen.get_untracked();
        let Some(way) = chosen.and_then(|index| ways.get(index)) else {
            self.fault.set(say.fault_choose().to_owned());
            return None;
        };
        self.fault.set(String::new());
        let (kept, said) = match way {
            Way::Tell => (state.set_plan(chick, plan), say.plan_is_told()),
            Way::Ask => (state.ask_for(chick, plan, None), say.plan_is_asked()),
            Way::Said => {
                let who = self.who.take(if self.who.is_empty() {
                    Err(say.fault_name_needed().to_owned())
                } else {
                    Ok(self.who.get())
                });
                let (who, at) = (who?, self.when.moment(state)?);
                if at > clock::now().plus_minutes(Journal::CLOCK_SLACK_MINUTES) {
                    self.when.say_fault(say.refusal(&Refusal::InTheFuture));
                    return None;
                }
                let kept = state.ask_for(chick, plan, Some((at, who)));
                (kept, say.entry_plan_said())
            }
        };
        Some(kept.map(|ids| (ids, said)))
    }
}

fn ways(risks: &[AskFirst]) -> &'static [Way] {
    if risks.is_empty() { &WAYS } else { &SAFE_WAYS }
}

/// What would have to be asked for; `None` when nobody is asked: this is the breeder's phone, the plan never
/// came from a breeder, or nothing of hers changes.
fn asked(state: AppState, chick: ChickId, plan: &CarePlan) -> Option<Vec<AskFirst>> {
    let plans = state
        .journal
        .with_untracked(|journal| journal.plans(chick))?;
    let (_, old) = plans.now()?;
    let mut lines = plan_difference(old, plan).into_iter();
    let is_of_hers = lines.any(|line| line.part().side() == Side::Breeder);
    let is_asked = is_of_hers && plans.is_from_breeder();
    if !is_asked || state.author(chick).side == Side::Breeder {
        return None;
    }
    let parts = changed_parts(old, plan);
    let risks = set_of(parts.iter().flat_map(|part| plans.ask_first(part)));
    Some(risks.into_iter().collect())
}

/// The question, below the plan.
#[component]
pub fn AskingRows(
    /// What it holds.
    asking: AskingText,
) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let question = live(move || {
        let risks = asking.risks.get()?;
        let ways = ways(&risks);
        let options = ways.iter().map(|way| way.word(say)).collect();
        let is_said = move || {
            let chosen = asking.chosen.get();
            chosen.and_then(|index| ways.get(index)) == Some(&Way::Said)
        };
        let why = (!risks.is_empty()).then(|| {
            let lines = risks.into_iter();
            let lines = lines.map(|risk| view! { <li>{writing.ask_first(risk)}</li> });
            view! {
                <p>{say.plan_ask_only()}</p>
                <ul class="plain-list">{lines.collect_view()}</ul>
            }
        });
        Some(view! {
            <section class="question" data-ask="breeder" aria-live="polite">
                {why}
                <Choice
                    legend=say.plan_ask_title()
                    name="ask-breeder"
                    options
                    chosen=asking.chosen
                    fault=asking.fault
                />
                {move || is_said().then(|| view! {
                    <TextField id="said-by" label=say.plan_ask_who() text=asking.who kind=FieldKind::Text />
                    <When when=asking.when />
                })}
            </section>
        })
    });
    view! { {question} }
}

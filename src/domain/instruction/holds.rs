//! Everything that keeps food back now, with its reason.
//!
//! **Invariant.** What keeps food back is lifted by what was seen or said, never by time alone: what is
//! old becomes a question.

use std::collections::BTreeMap;

use crate::domain::feeding::crop;
use crate::domain::feeding::scheduled::ScheduledFeed;
use crate::domain::homecoming::first_days::SETTLE_MINUTES;
use crate::domain::instruction::first::First;
use crate::domain::instruction::lifting::{
    Answer, Lift, is_lifted, may_be_gone, of_finding, of_sign, word_against,
};
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{CropState, Droppings};
use crate::domain::journal::signs::Sign;
use crate::domain::plan::care_plan::Role;
use crate::domain::quantity::order::sorted_by;
use crate::domain::time::moment::{Day, Moment};
use crate::domain::warnings::crop_ladder::{self, CropAllows};
use crate::domain::warnings::level::{Finding, Level, RuleId};
use crate::domain::warnings::rules::{crop_static, droppings_seen, sign_seen};

/// A crop filled so lately counts as full without a look, minutes: half the usual emptying time of
/// 4 h. Ours.
pub const FED_LATELY_MINUTES: i64 = 120;

/// What keeps food back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Why {
    /// A sign that was seen.
    Sign(Sign),
    /// What a rule found.
    Found(Finding),
    /// The breeder or a vet said no.
    Said(Role),
    /// There is food in the crop.
    FoodInCrop,
    /// It was fed a short while ago.
    FedLately,
    /// Food came back up: no more at this sitting.
    FoodCameBack,
    /// The next feed is not due yet.
    NotYetDue,
    /// Something is to be done first.
    First(First),
}

/// How food is kept back, most strictly first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Demand {
    /// No food.
    DoNotFeed,
    /// No food before this person was asked.
    Ask(Role),
    /// Something else first.
    First(First),
    /// No food before this moment.
    Wait(Moment),
}

/// One thing that keeps food back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hold {
    /// What it is.
    pub why: Why,
    /// How it keeps food back.
    pub demand: Demand,
    /// How worried to be.
    pub level: Level,
    /// Since when, as far as it was noted.
    pub since: Moment,
}

impl Hold {
    /// Whether it stands against giving food at all, not only before the crop was looked at.
    pub const fn is_against_food(&self) -> bool {
        match self.demand {
            Demand::DoNotFeed | Demand::Ask(_) | Demand::Wait(_) => true,
            Demand::First(first) => match first {
                First::Settle | First::Cool | First::Warm | First::IsItGone(_) => true,
                First::Weigh | First::LookAtCrop => false,
            },
        }
    }
}

/// What the answer is made from.
#[derive(Debug, Clone, Copy)]
pub struct HoldFacts<'a> {
    /// Now.
    pub now: Moment,
    /// The day of care lived now.
    pub today: Day,
    /// The chick.
    pub chick: &'a Chick,
    /// Every finding.
    pub findings: &'a [Finding],
    /// The next feed to give.
    pub next: Option<&'a ScheduledFeed>,
    /// Whether it is away and not yet expected here.
    pub is_away: bool,
    /// Whether the day's weighing is still ahead.
    pub is_to_be_weighed: bool,
}

/// Everything that keeps food back now, most worrying first.
pub fn holds(facts: &HoldFacts<'_>) -> Vec<Hold> {
    let mut holds = of_signs(facts);
    holds.extend(of_findings(facts));
    holds.extend(old_blood(facts));
    holds.extend(of_words(facts));
    holds.extend(of_crop(facts));
    let (now, chick) = (facts.now, facts.chick);
    if let Some(arrived) = &chick.arrived
        && (0..SETTLE_MINUTES).contains(&now.minutes_since(arrived.at))
    {
        holds.push(first(First::Settle, arrived.at));
    }
    if facts.is_to_be_weighed {
        holds.push(first(First::Weigh, now));
    }
    sorted_by(holds, |one, other| {
        let by_level = other.level.cmp(&one.level);
        by_level.then(one.demand.cmp(&other.demand))
    })
}

const fn first(what: First, since: Moment) -> Hold {
    Hold {
        why: Why::First(what),
        demand: Demand::First(what),
        level: Level::Watch,
        since,
    }
}

const fn wait(why: Why, until: Moment, since: Moment) -> Hold {
    Hold {
        why,
        demand: Demand::Wait(until),
        level: Level::Watch,
        since,
    }
}

/// What is due to the signs seen; how long ago lifts none of them.
fn of_signs(facts: &HoldFacts<'_>) -> Vec<Hold> {
    let (now, chick) = (facts.now, facts.chick);
    let mut seen: BTreeMap<Sign, (Moment, Moment)> = BTreeMap::new();
    for sighting in chick.signs.iter().filter(|sighting| sighting.at <= now) {
        let gone = gone_at(now, chick, sighting.what);
        let latest = seen
            .entry(sighting.what)
            .or_insert((sighting.at, sighting.at));
        // The first sighting since it was gone, and the latest.
        if gone.is_some_and(|gone| latest.0 <= gone) {
            latest.0 = sighting.at;
        }
        latest.1 = sighting.at;
    }
    seen.into_iter()
        .filter_map(|(sign, (since, latest))| {
            let is_gone = gone_at(now, chick, sign).is_some_and(|gone| gone >= latest);
            let level = sign_seen::level(sign);
            let why = Why::Sign(sign);
            let hold = |demand, lift| {
                let is_lifted =
                    (is_gone && lift == Lift::Seen) || is_lifted(now, chick, level, lift, latest);
                (!is_lifted).then_some(Hold {
                    why,
                    demand,
                    level,
                    since,
                })
            };
            let is_old = now.minutes_since(latest) > sign_seen::shown_minutes(sign);
            let hold = match of_sign(sign) {
                Answer::Free => None,
                Answer::Forbid(lift) => hold(Demand::DoNotFeed, lift),
                Answer::Ask(who, lift) => hold(Demand::Ask(who), lift),
                Answer::First(first) => hold(Demand::First(first), Lift::Seen),
                Answer::NoMoreNow => {
                    let until = latest.plus_minutes(FED_LATELY_MINUTES);
                    (!is_gone && now < until).then(|| wait(Why::FoodCameBack, until, latest))
                }
            };
            match hold {
                // What may be gone by itself is asked about when nobody looked for so long.
                Some(_) if is_old && may_be_gone(sign) => Some(first(First::IsItGone(sign), since)),
                Some(_) | None => hold,
            }
        })
        .collect()
}

fn gone_at(now: Moment, chick: &Chick, sign: Sign) -> Option<Moment> {
    chick
        .signs_gone
        .get(&sign)
        .copied()
        .filter(|gone| *gone <= now)
}

/// Blood in the latest droppings that were looked at, more than a day ago.
fn old_blood(facts: &HoldFacts<'_>) -> Option<Hold> {
    let (now, chick) = (facts.now, facts.chick);
    let (sign, level) = (Sign::BloodInDroppings, Level::VetToday);
    let look = chick.droppings.iter().rev().find(|look| look.at <= now);
    let is_blood = |look| matches!(look, Droppings::Bloody | Droppings::TarBlack);
    let blood = look.filter(|look| is_blood(look.what))?;
    let is_gone = gone_at(now, chick, sign).is_some_and(|gone| gone >= blood.at);
    let is_old = now.minutes_since(blood.at) > droppings_seen::DAY_MINUTES;
    let is_open = is_old && !is_gone && !is_lifted(now, chick, level, Lift::Seen, blood.at);
    is_open.then(|| first(First::IsItGone(sign), blood.at))
}

/// What is due to the findings.
fn of_findings(facts: &HoldFacts<'_>) -> Vec<Hold> {
    let (now, chick) = (facts.now, facts.chick);
    facts
        .findings
        .iter()
        .filter_map(|finding| {
            let seen = seen_at(now, chick, finding.rule);
            let (demand, lift) = match of_finding(finding) {
                Answer::Free | Answer::NoMoreNow => return None,
                Answer::Forbid(lift) => (Demand::DoNotFeed, lift),
                Answer::Ask(who, lift) => (Demand::Ask(who), lift),
                Answer::First(first) => (Demand::First(first), Lift::Seen),
            };
            let level = finding.level;
            let hold = Hold {
                why: Why::Found(*finding),
                demand,
                level,
                since: since(now, chick, finding.rule).min(seen),
            };
            (!is_lifted(now, chick, level, lift, seen)).then_some(hold)
        })
        .collect()
}

/// When what a rule judges was last seen.
fn seen_at(now: Moment, chick: &Chick, rule: RuleId) -> Moment {
    let sign_of = |is_kind: fn(Sign) -> bool| {
        let of_kind = chick.signs.iter().filter(move |seen| is_kind(seen.what));
        of_kind.map(|seen| seen.at)
    };
    let looks = chick.crops.iter().map(|look| look.at);
    let weighings = chick.weighings.iter().map(|weighing| weighing.at);
    match rule {
        RuleId::SignSeen(sign) => {
            let seen = chick.signs.iter().filter(|seen| seen.what == sign);
            latest(now, seen.map(|seen| seen.at))
        }
        RuleId::CropStatic => latest(now, looks.chain(sign_of(crop_static::is_bad))),
        RuleId::CropOvernight | RuleId::CropLate | RuleId::CropSlow => latest(now, looks),
        RuleId::DroppingsSeen(look) => {
            let seen = chick.droppings.iter().filter(|seen| seen.what == look);
            latest(now, seen.map(|seen| seen.at))
        }
        RuleId::FewDroppings => latest(now, chick.droppings_counts.iter().map(|count| count.at)),
        RuleId::ServedHot
        | RuleId::ServedCold
        | RuleId::VolumeOverCeiling
        | RuleId::GapTooShort
        | RuleId::RefusedFeeds
        | RuleId::MissedFeeds
        | RuleId::NoFoodNoted
        | RuleId::DayIntake
        | RuleId::TransitGap => latest(now, chick.feeds.iter().map(|feed| feed.at)),
        RuleId::DullLoss => {
            let is_dull = |sign| matches!(sign, Sign::Dull | Sign::Limp);
            latest(now, weighings.chain(sign_of(is_dull)))
        }
        RuleId::PeakLoss
        | RuleId::HandoverLoss
        | RuleId::StableLoss
        | RuleId::FallingWeight
        | RuleId::ArrivalLoss
        | RuleId::OneDayLoss
        | RuleId::GrowthStalled
        | RuleId::NoWeighing => latest(now, weighings),
        RuleId::RoomTemperature => latest(now, chick.rooms.iter().map(|room| room.at)),
        RuleId::VetVisitDue => now,
    }
}

fn latest(now: Moment, moments: impl Iterator<Item = Moment>) -> Moment {
    moments.filter(|at| *at <= now).max().unwrap_or(now)
}

/// Since when food was found in the crop, look after look; `now` for what is no look at the crop.
fn since(now: Moment, chick: &Chick, rule: RuleId) -> Moment {
    let is_of_crop = matches!(
        rule,
        RuleId::CropStatic | RuleId::CropOvernight | RuleId::CropLate
    );
    let fed = chick.last_given(now).map(|feed| feed.at);
    let looks = chick.crops.iter().rev().filter(|look| look.at <= now);
    let with_food = looks.take_while(|look| {
        look.what.state != CropState::Flat && fed.is_none_or(|fed| look.at > fed)
    });
    let first = with_food.last().filter(|_| is_of_crop);
    first.map_or(now, |look| look.at)
}

/// What the breeder or a vet said against a feed, as long as it holds.
fn of_words(facts: &HoldFacts<'_>) -> Option<Hold> {
    word_against(facts.now, facts.chick).map(|no| Hold {
        why: Why::Said(no.what.who),
        demand: Demand::DoNotFeed,
        level: Level::Watch,
        since: no.at,
    })
}

/// What the look at the crop, or its absence, asks for.
fn of_crop(facts: &HoldFacts<'_>) -> Option<Hold> {
    let (now, chick) = (facts.now, facts.chick);
    let look = crop::latest_look(now, chick);
    let fed = chick.last_given(now);
    let look_first = |since| Some(first(First::LookAtCrop, since));
    if let Some(rung) = crop_ladder::rung(now, chick) {
        let is_lifted = is_lifted(now, chick, rung.level, Lift::Seen, rung.seen);
        return match rung.allows {
            CropAllows::Feed => day_look(facts),
            CropAllows::Wait(_) | CropAllows::Warmth(_) | CropAllows::Nothing if is_lifted => None,
            CropAllows::Wait(until) if now < until => Some(wait(Why::FoodInCrop, until, rung.seen)),
            CropAllows::Warmth(until) if now < until => Some(first(First::Warm, rung.seen)),
            // A finding of its own keeps food back meanwhile.
            CropAllows::Wait(_) | CropAllows::Warmth(_) | CropAllows::Nothing => {
                look_first(rung.seen)
            }
        };
    }
    let old = look.filter(|look| look.what.state != CropState::Flat);
    if let Some(old) = old
        && !is_lifted(now, chick, Level::CallBreeder, Lift::Seen, old.at)
    {
        return look_first(old.at);
    }
    let is_empty_since = |fed: Moment| look.is_some_and(|look| look.at > fed);
    let lately = fed.map(|fed| (fed.at, fed.at.plus_minutes(FED_LATELY_MINUTES)));
    if let Some((fed, until)) = lately
        && now < until
        && !is_empty_since(fed)
    {
        return Some(wait(Why::FedLately, until, fed));
    }
    day_look(facts)
}

/// Once a day, before its first food, somebody looks at the crop. A weighing is no look.
fn day_look(facts: &HoldFacts<'_>) -> Option<Hold> {
    let (now, chick) = (facts.now, facts.chick);
    let looked = crop::latest_look(now, chick);
    let looked = looked.map(|look| crop_ladder::care_day(look.at, look.offset));
    let fed = chick.last_given(now);
    let fed = fed.map(|feed| crop_ladder::care_day(feed.at, feed.offset));
    let today = facts.today;
    let is_today = |day: Option<Day>| day.is_some_and(|day| day >= today);
    (!is_today(looked) && !is_today(fed)).then(|| first(First::LookAtCrop, now))
}

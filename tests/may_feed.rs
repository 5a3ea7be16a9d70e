//! May I feed now: one answer, and nothing that is offered beside it contradicts it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test may stop at the first surprise"
)]

use proptest::prelude::*;
use proptest::sample::select;

use perchlight::domain::formula::serving_heat::Serving;
use perchlight::domain::homecoming::life_stage::LifeStage;
use perchlight::domain::instruction::answer::{Instruction, Nothing};
use perchlight::domain::instruction::feed_session::{FeedSession, Step};
use perchlight::domain::instruction::first::First;
use perchlight::domain::instruction::holds::{Hold, Why};
use perchlight::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, CropFeel, CropState, Droppings, Paper, Response,
};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::plan::care_plan::{CarePlan, PlanField, Role, Slot};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Celsius, Grams, Millilitres};
use perchlight::domain::time::moment::{Day, Moment, Offset};
use perchlight::domain::warnings::level::{Finding, Level, RuleId, Value};
use perchlight::domain::weaning::Verdict;
use perchlight::words::Language;
use perchlight::words::format::Writing;

const CHICK: ChickId = ChickId([7; 12]);

/// A macaw on three feeds a day, 07:00, 14:00 and 21:00, of so many millilitres as its plan wants.
fn macaw() -> Scenario {
    let day_zero = Day::from_date(2026, 11, 2).unwrap();
    let plan = CarePlan::default_for(Species::GreenWingedMacaw);
    Scenario::new(CHICK, plan, day_zero, Offset::UTC)
}

fn look_at(script: &Scenario, now: Moment) -> Outlook {
    outlook(now, &script.journal(), CHICK, &script.zone()).unwrap()
}

fn look(script: &Scenario, day: i32, hour: i32, minute: i32) -> Outlook {
    look_at(script, script.at(day, hour, minute))
}

const fn crop(state: CropState) -> Change {
    let feel = CropFeel::NotNoted;
    Change::CropSeen { state, feel }
}

const fn sign(sign: Sign) -> Change {
    Change::SignSeen { sign }
}

const fn gone(sign: Sign) -> Change {
    Change::SignGone { sign }
}

fn said(who: Role, may_feed: bool) -> Change {
    Change::AdviceNoted {
        who,
        about: String::new(),
        may_feed,
        ml: None,
        until: None,
    }
}

/// A chick weighed, its crop flat, at its morning feed of day 1, after a feed the evening before.
fn ready() -> Scenario {
    let mut script = macaw();
    script.feed(0, 21, 0, Slot::Bedtime, 60);
    script.weigh(1, 1_000);
    script.note(1, 6, 50, crop(CropState::Flat));
    script
}

fn is_feed(outlook: &Outlook) -> bool {
    matches!(outlook.instruction, Instruction::Feed { .. })
}

// What was seen: "Vet today" and under it "Morning feed now · 60 ml" with a filled "Feed now".
#[test]
fn food_left_in_the_morning_is_a_matter_for_the_vet_in_every_place() {
    let mut script = macaw();
    script.feed(0, 21, 0, Slot::Bedtime, 60);
    script.note(1, 7, 0, crop(CropState::Quarter));
    let outlook = look(&script, 1, 7, 5);
    assert_eq!(outlook.level, Level::VetToday);
    assert!(matches!(
        outlook.instruction,
        Instruction::DoNotFeed {
            why: Why::Found(Finding {
                rule: RuleId::CropOvernight,
                ..
            }),
            level: Level::VetToday,
            ..
        }
    ));
    let line = Writing::metric(Language::English).instruction_line(&outlook);
    assert!(line.starts_with("Do not feed. Call the vet now."), "{line}");
    assert!(!line.contains("ml"), "{line}");
}

// The same under "Emergency: cold": the guide went on, and the log took 60 ml without a question.
#[test]
fn a_cold_chick_is_not_fed_and_no_step_of_the_guide_goes_on() {
    let mut script = ready();
    script.note(1, 6, 55, sign(Sign::Cold));
    let outlook = look(&script, 1, 7, 0);
    assert_eq!(outlook.level, Level::Emergency);
    assert!(outlook.instruction.forbids());
    assert_eq!(outlook.instruction.call(), Some(Level::Emergency));
    let plan = outlook.plan_of_feed(Slot::Morning);
    let mut guide = FeedSession::begin(outlook.now, CHICK, &plan, Slot::Morning);
    for step in Step::ALL {
        guide.step = step;
        let stops = !guide.holds(&outlook.holds).is_empty();
        assert_eq!(stops, step != Step::After, "{step:?}");
    }
    script.note(1, 7, 30, gone(Sign::Cold));
    assert!(is_feed(&look(&script, 1, 7, 30)));
}

// A plan of 37.0 to 37.8 °C was told "too cold" at every reading that it allows.
#[test]
fn a_cup_inside_the_plans_window_is_not_called_cold() {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    plan.serve_from = Celsius::tenths_held(370);
    plan.serve_to = Celsius::tenths_held(378);
    let serving = Serving::of(plan.serve_from, plan.serve_to);
    let now = macaw().at(1, 7, 0);
    let may_feed = |tenths| {
        let mut guide = FeedSession::begin(now, CHICK, &plan, Slot::Morning);
        guide.measure(now, Celsius::tenths_held(tenths)).unwrap();
        guide.may_feed(now, serving)
    };
    assert!(!may_feed(369));
    assert!(may_feed(370));
    assert!(may_feed(378));
    assert!(!may_feed(379));
}

// Bringing back was offered in emergencies: "ill" was a reason for one more feed.
#[test]
fn a_feed_is_not_brought_back_while_feeding_is_forbidden() {
    let mut script = macaw();
    let (slot, by_breeder) = (Slot::Midday, true);
    script.note(1, 8, 0, Change::FeedDropped { slot, by_breeder });
    for kind in [Sign::Cold, Sign::Dull, Sign::SourCrop, Sign::Bleeding] {
        let mut script = script.clone();
        script.note(2, 8, 0, sign(kind));
        let verdict = look(&script, 2, 8, 5).weaning.verdict;
        assert!(
            matches!(verdict, Verdict::NotYet { .. }),
            "{kind:?}: {verdict:?}"
        );
    }
    script.note(2, 8, 0, sign(Sign::Lame));
    let verdict = look(&script, 2, 8, 5).weaning.verdict;
    assert!(matches!(verdict, Verdict::BringBack { .. }), "{verdict:?}");
}

// A sour crop is an emergency; its guard said "call the breeder, look again in two hours".
#[test]
fn a_sour_crop_goes_to_the_vet_unfed() {
    let mut script = ready();
    script.note(1, 6, 55, sign(Sign::SourCrop));
    let outlook = look(&script, 1, 7, 0);
    assert_eq!(outlook.instruction.call(), Some(Level::Emergency));
    let line = Writing::metric(Language::English).instruction_line(&outlook);
    assert!(
        line.starts_with("Do not feed. Call the vet now and set off."),
        "{line}"
    );
}

/// Who must be asked or called before a feed by the trade's dossier and a vet's reading of the rules;
/// `None` for signs that keep no food back.
const fn asked(sign: Sign) -> Option<Role> {
    match sign {
        Sign::LabouredBreathing
        | Sign::ClickStays
        | Sign::SourCrop
        | Sign::Vomiting
        | Sign::CropPatch
        | Sign::NoDroppingEightHours
        | Sign::BloodInDroppings
        | Sign::Dull
        | Sign::Limp
        | Sign::Cold
        | Sign::StaysOverheated
        | Sign::Dehydrated
        | Sign::WentDownWrong
        | Sign::FedTooHot
        | Sign::SwallowedObject
        | Sign::Bleeding
        | Sign::SeizureOrTrauma
        | Sign::Prolapse
        | Sign::Wobbles
        | Sign::Discharge
        | Sign::MouthPlaques
        | Sign::Shock
        | Sign::FeatherBleeds => Some(Role::AvianVet),
        Sign::ClickCleared | Sign::NoDroppingFourHours => Some(Role::Breeder),
        Sign::BroughtBackOnce
        | Sign::BadDroppingsOverADay
        | Sign::UndigestedFood
        | Sign::Overheated
        | Sign::BegsAllDay
        | Sign::Lame
        | Sign::Bruised => None,
    }
}

/// Signs that only a vet's word lifts: bite, burn, swallowed object, bleeding, fit and gasping.
const VETS: [Sign; 11] = [
    Sign::Prolapse,
    Sign::Shock,
    Sign::FeatherBleeds,
    Sign::LabouredBreathing,
    Sign::ClickStays,
    Sign::CropPatch,
    Sign::WentDownWrong,
    Sign::FedTooHot,
    Sign::SwallowedObject,
    Sign::Bleeding,
    Sign::SeizureOrTrauma,
];

#[test]
fn each_sign_asks_for_its_own_person_and_is_lifted_by_what_it_declares() {
    for kind in Sign::ALL {
        let mut script = ready();
        script.note(1, 6, 55, sign(kind));
        let seen = look(&script, 1, 7, 0);
        assert_eq!(
            seen.instruction.forbids(),
            asked(kind).is_some(),
            "{kind:?}"
        );
        let Some(who) = asked(kind) else {
            continue;
        };
        let is_vets = seen.instruction.call() >= Some(Level::VetToday);
        assert_eq!(is_vets, who != Role::Breeder, "{kind:?}");
        let feeds_after = |change: Change| {
            let mut script = script.clone();
            script.note(1, 7, 5, change);
            is_feed(&look(&script, 1, 7, 10))
        };
        let is_word_wanted = VETS.contains(&kind) || kind == Sign::ClickCleared;
        assert_eq!(feeds_after(gone(kind)), !is_word_wanted, "{kind:?} gone");
        assert!(feeds_after(said(Role::AvianVet, true)), "{kind:?}: the vet");
        assert_eq!(
            feeds_after(said(Role::Breeder, true)),
            who == Role::Breeder,
            "{kind:?}: the breeder"
        );
    }
}

#[test]
fn a_word_lifts_nothing_that_was_seen_after_it_and_ends_when_it_says() {
    let mut script = ready();
    script.note(1, 6, 51, sign(Sign::Bleeding));
    script.note(
        1,
        6,
        52,
        Change::AdviceNoted {
            who: Role::AvianVet,
            about: "thin mix".to_owned(),
            may_feed: true,
            ml: Some(Millilitres::whole(20)),
            until: Some(script.at(1, 8, 0)),
        },
    );
    let outlook = look(&script, 1, 7, 0);
    let (slot, volume) = (Slot::Morning, Millilitres::whole(20));
    assert_eq!(outlook.instruction, Instruction::Feed { slot, volume });
    let planned = outlook.plan_of_feed(slot);
    assert_eq!(planned.feed(slot).unwrap().volume, volume);
    assert!(look(&script, 1, 8, 0).instruction.forbids());
    script.note(1, 7, 1, sign(Sign::Bleeding));
    assert!(look(&script, 1, 7, 2).instruction.forbids());
}

#[test]
fn a_word_never_makes_a_feed_larger_than_the_plan() {
    let mut script = ready();
    let planned = look(&script, 1, 7, 0).plan_of_feed(Slot::Morning);
    script.note(
        1,
        6,
        55,
        Change::AdviceNoted {
            who: Role::Breeder,
            about: String::new(),
            may_feed: true,
            ml: Some(Millilitres::whole(250)),
            until: None,
        },
    );
    let slot = Slot::Morning;
    let volume = planned.feed(slot).unwrap().volume;
    let instruction = look(&script, 1, 7, 0).instruction;
    assert_eq!(instruction, Instruction::Feed { slot, volume });
}

#[test]
fn a_no_holds_until_a_vet_or_its_own_end_says_otherwise() {
    let forbids = |script: &Scenario, minute| look(script, 1, 7, minute).instruction.forbids();
    let mut script = ready();
    script.note(1, 6, 55, said(Role::AvianVet, false));
    assert!(forbids(&script, 0));
    script.note(1, 7, 1, said(Role::Breeder, true));
    assert!(forbids(&script, 2), "the breeder does not overrule the vet");
    script.note(1, 7, 3, said(Role::AvianVet, true));
    assert!(!forbids(&script, 4));
    script.note(1, 7, 5, said(Role::Breeder, false));
    assert!(forbids(&script, 6));
    script.note(1, 7, 7, said(Role::Breeder, true));
    assert!(!forbids(&script, 8));
}

#[test]
fn time_alone_turns_no_ban_into_a_feed() {
    // Cold, then nobody noted anything for four days; each later morning was looked at and weighed.
    let at_morning = |kind| {
        let mut script = ready();
        script.note(1, 6, 55, sign(kind));
        script.feed(4, 21, 0, Slot::Bedtime, 60);
        script.weigh(5, 1_000);
        script.note(5, 6, 50, crop(CropState::Flat));
        look(&script, 5, 7, 0).instruction
    };
    let asks = Instruction::First(First::IsItGone(Sign::Cold));
    assert_eq!(at_morning(Sign::Cold), asks);
    assert!(at_morning(Sign::Bleeding).forbids());
    // Food in the crop, and a day without a look.
    let mut script = ready();
    script.note(1, 14, 0, crop(CropState::HalfOrMore));
    let instruction = look(&script, 2, 14, 1).instruction;
    assert_eq!(instruction, Instruction::First(First::LookAtCrop));
}

#[test]
fn food_kept_back_longer_than_the_longest_gap_says_to_call_again() {
    // the longest gap of the plan: 21:00 to 07:00, ten hours
    let is_again = |script: &Scenario, hour, minute| {
        let instruction = look(script, 1, hour, minute).instruction;
        assert!(instruction.forbids());
        matches!(
            instruction,
            Instruction::DoNotFeed {
                is_call_again: true,
                ..
            }
        )
    };
    let mut script = ready();
    script.note(1, 7, 0, sign(Sign::Bleeding));
    assert!(!is_again(&script, 17, 0));
    assert!(is_again(&script, 17, 1));
    let agreed = String::new();
    let whom = Role::AvianVet;
    script.note(1, 12, 0, Change::Called { whom, agreed });
    assert!(!is_again(&script, 22, 0));
    assert!(is_again(&script, 22, 1));
}

#[test]
fn the_crop_is_looked_at_once_a_day_and_a_weighing_is_no_look() {
    let mut script = macaw();
    script.feed(0, 21, 0, Slot::Bedtime, 60);
    let first = |script: &Scenario, minute| look(script, 1, 7, minute).instruction;
    assert_eq!(first(&script, 0), Instruction::First(First::Weigh));
    script.weigh(1, 1_000);
    assert_eq!(first(&script, 0), Instruction::First(First::LookAtCrop));
    script.note(1, 7, 1, crop(CropState::Flat));
    assert!(is_feed(&look(&script, 1, 7, 2)));
    // By day some food is normal: nobody is sent to look before midday.
    script.feed(1, 7, 5, Slot::Morning, 60);
    assert!(is_feed(&look(&script, 1, 14, 10)));
}

#[test]
fn a_trace_in_the_morning_is_warmed_and_looked_at_again_in_an_hour() {
    let mut script = macaw();
    script.feed(0, 21, 0, Slot::Bedtime, 60);
    script.weigh(1, 1_000);
    script.note(1, 7, 0, crop(CropState::Trace));
    let at = |script: &Scenario, hour, minute| look(script, 1, hour, minute).instruction;
    assert_eq!(at(&script, 7, 59), Instruction::First(First::Warm));
    assert_eq!(at(&script, 8, 0), Instruction::First(First::LookAtCrop));
    script.note(1, 8, 1, crop(CropState::Trace));
    assert!(at(&script, 8, 2).forbids(), "the same after ten hours");
    script.note(1, 8, 30, crop(CropState::Flat));
    assert!(is_feed(&look(&script, 1, 8, 31)));
}

#[test]
fn a_breeders_word_lifts_a_slow_crop_but_not_one_for_the_vet() {
    let feeds = |state, minutes: i32, who| {
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 60);
        script.note(1, 7, minutes, crop(state));
        script.note(1, 7, minutes + 1, said(who, true));
        is_feed(&look(&script, 1, 7, minutes + 2))
    };
    assert!(feeds(CropState::Quarter, 420, Role::Breeder));
    assert!(!feeds(CropState::HalfOrMore, 500, Role::Breeder));
    assert!(feeds(CropState::HalfOrMore, 500, Role::AvianVet));
}

#[test]
fn without_a_feed_in_force_there_is_nothing_to_feed() {
    let mut script = macaw();
    for slot in Slot::ALL {
        let by_breeder = true;
        script.note(1, 5, 0, Change::FeedDropped { slot, by_breeder });
    }
    let instruction = look(&script, 3, 7, 0).instruction;
    assert_eq!(instruction, Instruction::Nothing(Nothing::NoFeed));
}

/// Blood and a whole day without any are asked about; the rest is fed: less food is no help against it.
#[test]
fn each_look_at_the_droppings_says_whether_to_ask_before_the_feed() {
    let after = |changes: &[Change]| {
        let mut script = ready();
        for change in changes {
            script.note(1, 6, 58, change.clone());
        }
        look(&script, 1, 7, 0).instruction
    };
    for seen in Droppings::ALL {
        let is_asked = matches!(seen, Droppings::Bloody | Droppings::TarBlack);
        let instruction = after(&[Change::DroppingsSeen { look: seen }]);
        assert_eq!(instruction.forbids(), is_asked, "{seen:?}");
    }
    let red = |was_eaten| Change::DroppingsSeen {
        look: Droppings::Bloody.with_red_food(was_eaten),
    };
    assert!(!after(&[red(true)]).forbids());
    assert!(after(&[red(false)]).forbids());
    let paper = Paper::Day;
    assert!(after(&[Change::DroppingsCounted { paper, count: 0 }]).forbids());
    assert!(!after(&[Change::DroppingsCounted { paper, count: 1 }]).forbids());
}

/// Liquid for more than twelve hours, or half of its usual number: a call, and it is fed all the same.
#[test]
fn liquid_stool_for_long_and_few_droppings_keep_no_food_back() {
    let mut script = ready();
    let look_liquid = || Change::DroppingsSeen {
        look: Droppings::LiquidStool,
    };
    script.note(0, 18, 0, look_liquid());
    script.note(1, 6, 58, look_liquid());
    let outlook = look(&script, 1, 7, 0);
    assert_eq!(outlook.level, Level::VetToday);
    assert!(is_feed(&outlook), "{:?}", outlook.instruction);
    let mut script = ready();
    for (day, count) in [(-3, 20), (-2, 20), (-1, 20), (0, 10)] {
        let paper = Paper::Day;
        script.note(day, 21, 10, Change::DroppingsCounted { paper, count });
    }
    let outlook = look(&script, 1, 7, 0);
    assert_eq!(outlook.level, Level::CallBreeder);
    assert!(is_feed(&outlook), "{:?}", outlook.instruction);
}

fn changes() -> impl Strategy<Value = Change> {
    let slot = || select(vec![Slot::Morning, Slot::Midday, Slot::Bedtime]);
    let feels = [CropFeel::Soft, CropFeel::Firm, CropFeel::NotNoted];
    let looks = [Droppings::Normal, Droppings::Bloody, Droppings::Watery];
    prop_oneof![
        3 => select(Sign::ALL.to_vec()).prop_map(sign),
        2 => select(Sign::ALL.to_vec()).prop_map(gone),
        3 => (select(CropState::ALL.to_vec()), select(feels.to_vec()))
            .prop_map(|(state, feel)| Change::CropSeen { state, feel }),
        1 => select(looks.to_vec()).prop_map(|look| Change::DroppingsSeen { look }),
        1 => (0..3_u8).prop_map(|count| Change::DroppingsCounted { paper: Paper::Day, count }),
        3 => (slot(), 0..800_i32, proptest::option::of(370..450_i32)).prop_map(
            |(slot, tenths, served)| Change::Fed {
                counts_as: Some(slot),
                taken: Millilitres::tenths_held(tenths),
                offered: Millilitres::tenths_held(tenths),
                served_at: served.map(Celsius::tenths_held),
                response: Response::Slow,
            }
        ),
        2 => (600..1_200_i32).prop_map(|grams| Change::Weighed {
            weight: Grams::whole(grams),
            crop: CropAtWeighing::Empty,
        }),
        1 => Just(Change::Arrived),
    ]
}

/// Whether a finding keeps food back, by the table of each rule.
fn keeps_back(finding: &Finding) -> bool {
    match finding.rule {
        RuleId::CropStatic | RuleId::DullLoss => true,
        RuleId::SignSeen(sign) => asked(sign).is_some(),
        RuleId::CropOvernight | RuleId::CropLate => finding.level >= Level::CallBreeder,
        // 43.3 °C burns.
        RuleId::ServedHot => {
            matches!(finding.value, Value::Celsius(served) if served.tenths() >= 433)
        }
        RuleId::DroppingsSeen(look) => look == Droppings::Bloody,
        // None in a whole day is as none in 8 waking hours; few come from little food.
        RuleId::FewDroppings => finding.level >= Level::VetToday,
        RuleId::PeakLoss
        | RuleId::HandoverLoss
        | RuleId::StableLoss
        | RuleId::FallingWeight
        | RuleId::ArrivalLoss
        | RuleId::OneDayLoss
        | RuleId::GrowthStalled => finding.level == Level::Emergency,
        RuleId::TransitGap
        | RuleId::RefusedFeeds
        | RuleId::MissedFeeds
        | RuleId::NoFoodNoted
        | RuleId::DayIntake
        | RuleId::CropSlow
        | RuleId::VolumeOverCeiling
        | RuleId::GapTooShort
        | RuleId::ServedCold
        | RuleId::RoomTemperature
        | RuleId::NoWeighing
        | RuleId::VetVisitDue => false,
    }
}

proptest! {
    /// No word of anybody is in these journals, so nothing that forbids is lifted but by being seen.
    #[test]
    fn a_feed_is_never_the_answer_while_something_forbids_it(
        notes in proptest::collection::vec((0..6 * 1_440_i32, changes()), 0..40),
        minute in 0..7 * 1_440_i32,
    ) {
        let mut script = macaw();
        for (noted, change) in notes.into_iter().filter(|(noted, _)| *noted <= minute) {
            script.note(0, 5, noted, change);
        }
        let outlook = look_at(&script, script.at(0, 5, minute));
        let is_nothing = matches!(outlook.instruction, Instruction::Nothing(_));
        prop_assert!(!is_nothing, "feeds are in force at home");
        let forbidding = outlook.findings.iter().find(|finding| keeps_back(finding));
        if let Some(finding) = forbidding {
            prop_assert!(outlook.instruction.forbids(), "{finding:?}: {:?}", outlook.instruction);
        }
        if is_feed(&outlook) {
            prop_assert!(!outlook.holds.iter().any(Hold::is_against_food), "{:?}", outlook.holds);
        }
        for language in Language::ALL {
            let line = Writing::metric(language).instruction_line(&outlook);
            prop_assert!(line.ends_with('.') && !line.contains(['{', '}']), "{line}");
        }
    }
}

#[test]
fn feeds_that_nobody_named_are_asked_for_and_never_pass_for_weaned() {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    plan.set_feeds(Vec::new());
    assert!(plan.unconfirmed.contains(&PlanField::Feeds));
    let day_zero = Day::from_date(2026, 11, 2).unwrap();
    let mut script = Scenario::new(CHICK, plan.clone(), day_zero, Offset::UTC);
    // Five weeks of the same weight, seen to drink: of a chick without feeds that would be weaned.
    script.note(1, 8, 0, Change::DrinkingSeen);
    for day in 1..=35 {
        script.weigh(day, 1_000);
    }
    let seen = look(&script, 35, 12, 0);
    assert_eq!(seen.instruction, Instruction::Nothing(Nothing::NotKnown));
    assert_eq!(seen.stage, LifeStage::Weaning);

    // Said by the breeder, the same plan without a feed is a weaned chick's.
    plan.unconfirmed.remove(&PlanField::Feeds);
    let mut script = Scenario::new(CHICK, plan, day_zero, Offset::UTC);
    script.note(1, 8, 0, Change::DrinkingSeen);
    for day in 1..=35 {
        script.weigh(day, 1_000);
    }
    let seen = look(&script, 35, 12, 0);
    assert_eq!(seen.instruction, Instruction::Nothing(Nothing::NoFeed));
    assert_eq!(seen.stage, LifeStage::Weaned);
}

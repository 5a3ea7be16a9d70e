//! Feed times on the way from the breeder's clock to the owner's, and the first feed at home.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests may panic"
)]

use perchlight::domain::feeding::schedule::{feeds, next_feed};
use perchlight::domain::feeding::scheduled::{FeedState, ScheduledFeed};
use perchlight::domain::homecoming::first_days::first_days;
use perchlight::domain::journal::entries::{Change, ChickId, WhyPassedOver};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::outlook::outlook;
use perchlight::domain::plan::care_plan::{CarePlan, ClockShift, Journey, Slot};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::Millilitres;
use perchlight::domain::time::moment::{Day, Moment, Offset, WallTime};
use perchlight::domain::time::zone::Zone;

#[path = "common/zones.rs"]
pub mod zones;

const CHICK: ChickId = ChickId([7; 12]);

/// Offset of New York in winter, minutes. IANA, file northamerica: -5:00 from 1 November 2026.
const NEW_YORK: i32 = -300;

fn day() -> Day {
    Day::from_date(2026, 11, 3).unwrap()
}

/// A moment on the clock of New York in winter, days after the third of November 2026.
fn new_york(days: i32, hour: i32, minute: i32) -> Moment {
    Zone::fixed(Offset::from_minutes(NEW_YORK))
        .moment_of(day().plus(days), WallTime::from_minutes(0))
        .plus_minutes(i64::from(hour * 60 + minute))
}

/// Three feeds of 60 ml at 07:00, 14:00 and 21:00, and a journey.
fn plan(journey: Option<Journey>) -> CarePlan {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    for feed in &mut plan.feeds {
        feed.volume = Millilitres::whole(60);
    }
    plan.journey = journey;
    plan
}

fn journey(left: Moment, hours: i64, breeder_min: i32, shift: ClockShift) -> Journey {
    Journey {
        left,
        expected: left.plus_minutes(hours * 60),
        breeder_offset: Offset::from_minutes(breeder_min),
        shift,
        last_fed: None,
    }
}

/// A chick added on 2 November 2026, 05:00 UTC, so that nothing is left out as before its time.
fn script(journey: Option<Journey>) -> Scenario {
    Scenario::new(CHICK, plan(journey), day().plus(-1), Offset::UTC)
}

/// The wall times at the owner's, day by day, of all feeds planned from `first` for `days` days.
fn wall_times(script: &Scenario, owner: &Zone, first: Day, days: i32) -> Vec<(i32, String)> {
    let now = script.at(0, 5, 0);
    let chick = script.chick().unwrap();
    feeds(now, &chick, owner, first, first.plus(days))
        .iter()
        .map(|feed| owner.lived(feed.due))
        .map(|lived| (lived.day.since(day()), lived.time.text()))
        .collect()
}

fn listed(times: &[(i32, &str)]) -> Vec<(i32, String)> {
    times
        .iter()
        .map(|(day, time)| (*day, (*time).to_owned()))
        .collect()
}

#[test]
fn feeds_move_west_by_an_hour_a_day_until_they_are_on_the_owners_clock() {
    let left = new_york(0, 15, 0);
    let script = script(Some(journey(left, 6, NEW_YORK, ClockShift::Gradual)));
    let owner = zones::zone("America/Los_Angeles");
    // Los Angeles is 3 h behind: 21:00 in New York is 18:00; then an hour later each day.
    assert_eq!(
        wall_times(&script, &owner, day(), 4),
        listed(&[
            (0, "04:00"),
            (0, "11:00"),
            (0, "18:00"),
            (1, "05:00"),
            (1, "12:00"),
            (1, "19:00"),
            (2, "06:00"),
            (2, "13:00"),
            (2, "20:00"),
            (3, "07:00"),
            (3, "14:00"),
            (3, "21:00"),
            (4, "07:00"),
            (4, "14:00"),
            (4, "21:00"),
        ])
    );
}

#[test]
fn at_once_the_owners_clock_counts_from_leaving_and_no_feed_is_doubled() {
    let left = new_york(0, 15, 0);
    let script = script(Some(journey(left, 6, NEW_YORK, ClockShift::AtOnce)));
    let owner = zones::zone("America/Los_Angeles");
    // Fed at 14:00 in New York, 11:00 here; 14:00 here comes 3 h later and is the same feed.
    assert_eq!(
        wall_times(&script, &owner, day(), 1),
        listed(&[
            (0, "04:00"),
            (0, "11:00"),
            (0, "21:00"),
            (1, "07:00"),
            (1, "14:00"),
            (1, "21:00"),
        ])
    );
}

#[test]
fn a_day_nine_hours_longer_has_room_for_one_feed_more() {
    // Fed at 07:00, left at 08:00; 07:00 at the owner's is 16:00 in New York.
    let left = new_york(0, 8, 0);
    let script = script(Some(journey(left, 20, NEW_YORK, ClockShift::AtOnce)));
    let owner = Zone::fixed(Offset::from_minutes(NEW_YORK - 540));
    let slots: Vec<Slot> = feeds(
        script.at(0, 5, 0),
        &script.chick().unwrap(),
        &owner,
        day(),
        day(),
    )
    .iter()
    .map(|feed| feed.slot)
    .collect();
    assert_eq!(
        slots,
        [Slot::Morning, Slot::Morning, Slot::Midday, Slot::Bedtime]
    );
}

#[test]
fn a_night_cut_short_by_a_journey_east_still_has_six_hours() {
    // Fed at 21:00, left at 21:30; 07:00 at the owner's, 5 h ahead, is 02:00 in New York.
    let left = new_york(0, 21, 30);
    let script = script(Some(journey(left, 8, NEW_YORK, ClockShift::AtOnce)));
    let owner = zones::zone("Europe/London");
    let chick = script.chick().unwrap();
    let scheduled = feeds(script.at(0, 5, 0), &chick, &owner, day(), day().plus(1));
    let bedtime = scheduled
        .iter()
        .position(|feed| feed.planned == new_york(0, 21, 0))
        .unwrap();
    assert_eq!(scheduled[bedtime + 1].planned, new_york(1, 2, 0));
    assert_eq!(scheduled[bedtime + 1].due, new_york(1, 3, 0));
}

#[test]
fn a_plan_without_a_journey_follows_the_wall_clock_through_the_night_it_changes() {
    let owner = zones::zone("America/New_York");
    // 1 November 2026, 02:00: clocks go back (IANA, file northamerica).
    let first = Day::from_date(2026, 11, 1).unwrap();
    let script = Scenario::new(CHICK, plan(None), first.plus(-2), Offset::UTC);
    let chick = script.chick().unwrap();
    let scheduled = feeds(script.at(0, 5, 0), &chick, &owner, first.plus(-1), first);
    let gap = scheduled[3].due.minutes_since(scheduled[2].due);
    assert_eq!(gap, 11 * 60);
}

#[test]
fn no_journey_doubles_a_feed_or_shortens_a_night_below_six_hours() {
    let whole_hours = |from: i32, to: i32| (from..=to).map(|hours| hours * 60);
    let mut checked = 0;
    for breeder in whole_hours(-11, 13) {
        for owner in whole_hours(-11, 13) {
            for left_hour in (0..24).step_by(3) {
                for shift in [ClockShift::AtOnce, ClockShift::Gradual] {
                    let left = new_york(2, left_hour, 10);
                    let script = script(Some(journey(left, 8, breeder, shift)));
                    let zone = Zone::fixed(Offset::from_minutes(owner));
                    let chick = script.chick().unwrap();
                    let now = script.at(0, 5, 0);
                    let list = feeds(now, &chick, &zone, day().plus(-1), day().plus(18));
                    assert_feeds_are_apart(&list);
                    let end = list.last().unwrap();
                    assert_eq!(zone.lived(end.due).time.text(), "21:00");
                    checked += 1;
                }
            }
        }
    }
    assert_eq!(checked, 25 * 25 * 8 * 2);
}

fn assert_feeds_are_apart(list: &[ScheduledFeed]) {
    for pair in list.windows(2) {
        let gap = pair[1].due.minutes_since(pair[0].due);
        assert!((1..=20 * 60).contains(&gap), "{gap}: {pair:?}");
        if pair[0].day != pair[1].day {
            assert!(gap >= 360, "{gap}: {pair:?}");
        }
    }
    for (index, feed) in list.iter().enumerate() {
        let again = list[index + 1..].iter().find(|next| next.slot == feed.slot);
        if let Some(again) = again {
            // Three feeds a day are 8 h apart on the average.
            let apart = again.planned.minutes_since(feed.planned);
            assert!(apart >= 480, "{apart}: {feed:?} {again:?}");
        }
    }
}

/// Left at 08:00 UTC on day 0 of the script, both at one clock.
fn on_its_way() -> Scenario {
    let plain = script(None);
    script(Some(journey(plain.at(0, 8, 0), 8, 0, ClockShift::AtOnce)))
}

fn arrived(hour: i32, minute: i32) -> Scenario {
    let mut script = on_its_way();
    script.note(0, hour, minute, Change::Arrived);
    script
}

fn next(script: &Scenario, now: Moment) -> ScheduledFeed {
    next_feed(now, &script.chick().unwrap(), &script.zone()).unwrap()
}

#[test]
fn the_feed_missed_on_the_way_is_the_first_at_home_once_the_chick_is_warm() {
    let script = arrived(16, 0);
    let first = next(&script, script.at(0, 16, 0));
    assert!(first.is_first_home);
    assert_eq!(
        (first.slot, first.planned, first.due),
        (Slot::Midday, script.at(0, 14, 0), script.at(0, 16, 30))
    );
    // half to three quarters of 60 ml
    assert_eq!(first.volume, Millilitres::whole(45));
    assert_eq!(first.state, FeedState::Due);
    assert_eq!(next(&script, script.at(0, 17, 31)).state, FeedState::Late);
    // Bedtime keeps 4 h and may be moved to 23:00: until 19:00.
    assert_eq!(next(&script, script.at(0, 18, 59)).slot, Slot::Midday);
    let bedtime = next(&script, script.at(0, 19, 0));
    assert_eq!(
        (bedtime.slot, bedtime.due),
        (Slot::Bedtime, script.at(0, 19, 0))
    );
    assert!(bedtime.is_first_home);
}

#[test]
fn after_the_first_feed_the_plan_goes_on_with_whole_volumes_and_the_gap_kept() {
    let mut script = arrived(18, 0);
    script.feed(0, 18, 45, Slot::Midday, 40);
    let bedtime = next(&script, script.at(0, 19, 0));
    assert!(!bedtime.is_first_home);
    assert_eq!(
        (bedtime.slot, bedtime.due, bedtime.volume),
        (Slot::Bedtime, script.at(0, 22, 45), Millilitres::whole(60))
    );
}

#[test]
fn a_late_arrival_waits_for_no_feed_of_its_own_and_bedtime_comes_forward() {
    // Bedtime at 21:00 keeps 4 h; a first feed before 19:00 moves it by two hours at most.
    let first = |hour, minute| {
        let script = arrived(hour, minute);
        let first = next(&script, script.at(0, hour, minute));
        assert!(first.is_first_home);
        (
            first.slot,
            first.due.minutes_since(script.at(0, hour, minute)),
        )
    };
    assert_eq!(first(18, 29), (Slot::Midday, 30));
    assert_eq!(first(18, 30), (Slot::Bedtime, 30));
    assert_eq!(first(18, 31), (Slot::Bedtime, 30));
    // Without food since 08:00 it is more than 8 h; never later than the plan.
    assert_eq!(first(20, 40), (Slot::Bedtime, 20));
}

#[test]
fn a_short_journey_moves_nothing() {
    let script = arrived(12, 0);
    let first = next(&script, script.at(0, 12, 0));
    assert!(first.is_first_home);
    assert_eq!((first.slot, first.due), (Slot::Midday, script.at(0, 14, 0)));
}

#[test]
fn a_feed_on_the_way_leaves_the_next_one_at_its_time_and_small() {
    let mut script = on_its_way();
    script.feed(0, 14, 0, Slot::Midday, 30);
    script.note(0, 17, 0, Change::Arrived);
    let first = next(&script, script.at(0, 17, 0));
    assert_eq!(
        (first.slot, first.due),
        (Slot::Bedtime, script.at(0, 21, 0))
    );
    assert!(first.is_first_home);
}

#[test]
fn a_little_food_early_on_the_way_does_not_stand_for_the_feed_missed_later() {
    let mut script = on_its_way();
    script.feed(0, 9, 0, Slot::Morning, 30);
    script.note(0, 16, 0, Change::Arrived);
    let first = next(&script, script.at(0, 16, 0));
    assert!(first.is_first_home);
    assert_eq!(
        (first.slot, first.due),
        (Slot::Midday, script.at(0, 16, 30))
    );
}

#[test]
fn a_feed_refused_on_the_way_brings_the_next_one_forward() {
    let mut script = on_its_way();
    script.note(0, 14, 0, Change::refused(Some(Slot::Midday)));
    script.note(0, 17, 0, Change::Arrived);
    // without food since 08:00; bedtime keeps its 4 h and moves by 2 h at most
    let first = next(&script, script.at(0, 17, 0));
    assert!(first.is_first_home);
    assert_eq!(
        (first.slot, first.due),
        (Slot::Bedtime, script.at(0, 19, 0))
    );
}

#[test]
fn a_feed_due_at_the_arrival_waits_until_the_chick_is_warm() {
    let script = arrived(14, 0);
    let first = next(&script, script.at(0, 14, 0));
    assert!(first.is_first_home);
    assert_eq!(
        (first.slot, first.due),
        (Slot::Midday, script.at(0, 14, 30))
    );
}

#[test]
fn an_arrival_that_nobody_noted_is_taken_for_the_one_expected() {
    // expected at 16:00
    let script = on_its_way();
    assert!(!next(&script, script.at(0, 15, 59)).is_first_home);
    // the chick may be anywhere, so that no feed is moved, but each that is open is a small one
    for (hour, slot, due) in [(16, Slot::Midday, 14), (17, Slot::Bedtime, 21)] {
        let first = next(&script, script.at(0, hour, 0));
        assert!(first.is_first_home, "{hour}:00");
        assert_eq!((first.slot, first.due), (slot, script.at(0, due, 0)));
        assert_eq!(first.volume, Millilitres::whole(45));
    }
}

#[test]
fn a_feed_due_at_the_departure_was_the_breeders() {
    let plain = script(None);
    let mut script = script(Some(journey(plain.at(0, 14, 0), 1, 0, ClockShift::AtOnce)));
    script.note(0, 15, 0, Change::Arrived);
    let first = next(&script, script.at(0, 15, 0));
    assert!(first.is_first_home);
    assert_eq!(
        (first.slot, first.due),
        (Slot::Bedtime, script.at(0, 21, 0))
    );
}

#[test]
fn an_arrival_noted_at_the_minute_of_leaving_brings_no_feed_forward() {
    let plain = script(None);
    let mut script = script(Some(journey(plain.at(0, 12, 0), 1, 0, ClockShift::AtOnce)));
    // eight hours later would be 13:00
    script.feed(0, 5, 0, Slot::Morning, 60);
    script.note(0, 12, 0, Change::Arrived);
    let first = next(&script, script.at(0, 12, 0));
    assert_eq!((first.slot, first.due), (Slot::Midday, script.at(0, 14, 0)));
}

#[test]
fn a_first_feed_left_out_hands_on_to_the_next() {
    let mut script = arrived(16, 0);
    let why = WhyPassedOver::CropNotEmpty;
    let slot = Slot::Midday;
    script.leave_out(0, 16, 40, slot, why);
    let first = next(&script, script.at(0, 16, 41));
    assert_eq!(
        (first.slot, first.due),
        (Slot::Bedtime, script.at(0, 21, 0))
    );
    assert!(first.is_first_home);
}

#[test]
fn an_arrival_without_a_journey_in_the_plan_makes_the_next_feed_small() {
    let mut script = script(None);
    script.note(0, 10, 0, Change::Arrived);
    let first = next(&script, script.at(0, 10, 0));
    assert_eq!((first.slot, first.due), (Slot::Midday, script.at(0, 14, 0)));
    assert_eq!(first.volume, Millilitres::whole(45));
    assert!(!next(&script, script.at(1, 10, 1)).is_first_home);
}

#[test]
fn the_plan_of_the_first_feed_alone_is_smaller_and_thinner() {
    let script = arrived(16, 0);
    let now = script.at(0, 16, 30);
    let outlook = outlook(now, &script.journal(), CHICK, &script.zone()).unwrap();
    let of = |slot| {
        let plan = outlook.plan_of_feed(slot);
        let volume = plan.feed(slot).unwrap().volume;
        (volume.tenths(), plan.powder_fraction.tenths())
    };
    // 75 % of 60 ml and 20 % powder (common practice); the plan's own are 60 ml and 25 %.
    assert_eq!(of(Slot::Midday), (450, 200));
    assert_eq!(of(Slot::Bedtime), (600, 250));
}

#[test]
fn the_outlook_says_where_the_chick_is_on_its_way() {
    let mut script = on_its_way();
    let way = |script: &Scenario, hour| {
        let zone = script.zone();
        outlook(script.at(0, hour, 0), &script.journal(), CHICK, &zone)
            .unwrap()
            .transit
    };
    assert!(!way(&script, 7).unwrap().has_left);
    let transit = way(&script, 12).unwrap();
    assert!(transit.has_left);
    assert_eq!((transit.minutes, transit.minutes_at_arrival), (240, 480));
    script.note(0, 16, 0, Change::Arrived);
    assert_eq!(way(&script, 16), None);
    let dates = first_days(&script.chick().unwrap(), &script.zone()).unwrap();
    assert_eq!(dates.arrived, day().plus(-1));
}

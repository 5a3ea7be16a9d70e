//! Law 5: a healthy life of 26 weeks, fully noted, rings nobody; after weaning nothing stands out.

use perchlight::domain::instruction::answer::Instruction;
use perchlight::domain::instruction::first::First;
use perchlight::domain::journal::entries::{Change, CropState, Droppings, SolidsEaten};
use perchlight::domain::time::moment::WallTime;

use crate::acts::Who;
use crate::home::Home;
use crate::laws::law;

const DAYS: i32 = 26 * 7;

/// Days after the arrival on which the breeder lets a feed go, one after the other.
const DROPS: [i32; 3] = [21, 35, 49];

/// From here on the bird is weighed once a week: two weeks after the last feed, and four weeks of daily
/// weighings (`trade` practice: daily to weaning and four weeks on).
const WEEKLY_FROM: i32 = DROPS[2] + 14 + 28;

/// Weight without noise, g: 8 % down from the handover over the six weeks from the second on, by a
/// drop of around 10 % from the maximum (Duerr & Gage 2020, p. 599), then flat.
fn grams(day: i32) -> i32 {
    1_000 - 80 * (day - 7).clamp(0, 42) / 42
}

#[test]
fn a_healthy_life_of_26_weeks_rings_nobody() {
    let mut home = Home::handed_over();
    let start = home.zone.lived(home.now).day;
    for day in 0..DAYS {
        for minute in (0..24 * 60).step_by(30) {
            let at = home
                .zone
                .moment_of(start.plus(day), WallTime::from_minutes(minute));
            if at < home.now {
                continue;
            }
            home.now = at;
            a_half_hour(&mut home, day, minute);
            let outlook = home.outlook(Who::Owner);
            law(5, !outlook.level.is_call(), || {
                format!("day {day}, minute {minute}: {:?}", outlook.findings)
            });
            let is_weaned = day > WEEKLY_FROM;
            law(5, !is_weaned || outlook.findings.is_empty(), || {
                format!("weaned, day {day}, minute {minute}: {:?}", outlook.findings)
            });
        }
    }
}

fn a_half_hour(home: &mut Home, day: i32, minute: i32) {
    let (owner, now) = (Who::Owner, home.now);
    if minute == 390 && (day < WEEKLY_FROM || day % 7 == 0) {
        home.weighed_at(owner, grams(day));
    }
    if minute == 600 {
        let look = Droppings::Normal;
        home.note(owner, now, Change::DroppingsSeen { look });
        let (what, eaten) = ("pellets".to_owned(), SolidsEaten::Meal);
        home.note(owner, now, Change::SolidsSeen { what, eaten });
    }
    if minute == 660 && day == 2 {
        let said = "healthy".to_owned();
        home.note(owner, now, Change::VetSeen { said });
    }
    if minute == 660 && DROPS.contains(&day) {
        home.dropped();
    }
    if day == 10 && minute == 600 {
        home.note(owner, now, Change::DrinkingSeen);
    }
    if let Instruction::First(First::LookAtCrop) = home.outlook(owner).instruction {
        home.crop_of(owner, CropState::Flat);
    }
    let outlook = home.outlook(owner);
    let is_due = outlook
        .next_feed
        .as_ref()
        .is_some_and(|feed| feed.due <= now);
    if let Instruction::Feed { volume, .. } = outlook.instruction
        && is_due
    {
        home.fed(owner, now, volume, volume);
    }
}

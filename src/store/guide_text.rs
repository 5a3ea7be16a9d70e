//! A feed under way as one line of text, so that a call, a locked screen or a reload loses nothing.
//!
//! Form: `1 slot step begun volume room mixed given` and then `at:cup` for each reading, all numbers
//! whole: seconds, and tenths of a millilitre or degree. A line that is not whole gives no guide; the
//! feed is then begun anew, and nothing of the journal depends on it.

use crate::domain::guide::{CupReading, Guide, Step};
use crate::domain::moment::Moment;
use crate::domain::plan::Slot;
use crate::domain::units::{Celsius, Millilitres};

/// Version of the form.
const VERSION: &str = "1";
/// Most readings that are read back.
const MOST_READINGS: usize = 60;

/// The guide as text.
pub fn guide_to_text(guide: &Guide) -> String {
    let place = |found: Option<usize>| found.unwrap_or_default();
    let slot = place(Slot::ALL.iter().position(|slot| *slot == guide.slot));
    let step = place(Step::ALL.iter().position(|step| *step == guide.step));
    let mixed = guide.mixed.map_or(0, Moment::seconds);
    let mut text = format!(
        "{VERSION} {slot} {step} {} {} {} {mixed} {}",
        guide.begun.seconds(),
        guide.volume.tenths(),
        guide.room.tenths(),
        guide.given.tenths()
    );
    for reading in &guide.readings {
        text.extend([
            " ",
            &reading.at.seconds().to_string(),
            ":",
            &reading.cup.tenths().to_string(),
        ]);
    }
    text
}

/// The guide of a text; `None` when it is not whole.
pub fn guide_from_text(text: &str) -> Option<Guide> {
    let mut words = text.split(' ');
    if words.next()? != VERSION {
        return None;
    }
    let slot = *Slot::ALL.get(words.next()?.parse::<usize>().ok()?)?;
    let step = *Step::ALL.get(words.next()?.parse::<usize>().ok()?)?;
    let begun = moment(words.next()?)?;
    let volume = Millilitres::from_tenths(words.next()?.parse().ok()?).ok()?;
    let room = Celsius::from_tenths(words.next()?.parse().ok()?).ok()?;
    let mixed = match words.next()? {
        "0" => None,
        seconds => Some(moment(seconds)?),
    };
    let given = Millilitres::from_tenths(words.next()?.parse().ok()?).ok()?;
    let mut readings = Vec::new();
    for word in words.take(MOST_READINGS) {
        let (at, cup) = word.split_once(':')?;
        readings.push(CupReading {
            at: moment(at)?,
            cup: Celsius::from_tenths(cup.parse().ok()?).ok()?,
        });
    }
    Some(Guide {
        slot,
        step,
        begun,
        volume,
        room,
        mixed,
        readings,
        given,
    })
}

fn moment(text: &str) -> Option<Moment> {
    let seconds: i64 = text.parse().ok()?;
    let moment = Moment::from_seconds(seconds);
    (moment.seconds() == seconds).then_some(moment)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::domain::plan::CarePlan;
    use crate::domain::species::Species;
    use crate::store::guide_text::*;

    #[test]
    fn a_feed_under_way_comes_back_as_it_was() {
        let now = Moment::from_seconds(1_790_000_000);
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let mut guide = Guide::begin(now, &plan, Slot::Bedtime);
        assert_eq!(guide_from_text(&guide_to_text(&guide)), Some(guide.clone()));
        guide.mix(now.plus_minutes(2));
        guide
            .measure(now.plus_minutes(3), Celsius::tenths_held(455))
            .unwrap();
        guide
            .measure(now.plus_minutes(8), Celsius::tenths_held(431))
            .unwrap();
        guide.step = Step::Give;
        guide.give(Millilitres::whole(30));
        assert_eq!(guide_from_text(&guide_to_text(&guide)), Some(guide));
    }

    #[test]
    fn a_line_that_is_cut_never_gives_another_step() {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let text = guide_to_text(&Guide::begin(
            Moment::from_seconds(1_790_000_000),
            &plan,
            Slot::Bedtime,
        ));
        for length in 0..text.rfind(' ').unwrap() {
            assert_eq!(guide_from_text(&text[..length]), None, "{length}");
        }
    }

    proptest! {
        #[test]
        fn any_text_is_read_without_a_panic(text in ".{0,80}") {
            guide_from_text(&text);
        }
    }
}

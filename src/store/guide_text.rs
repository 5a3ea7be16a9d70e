//! Feeds under way as text, one line a chick, so that a call, a locked screen or a reload loses nothing.
//!
//! Form: `2 chick slot step begun volume room mixed given` and then `at:cup` for each reading, all numbers
//! whole: seconds, and tenths of a millilitre or degree. A line that is not whole gives no guide; the
//! feed is then begun anew, and nothing of the journal depends on it.

use crate::domain::instruction::feed_session::{CupReading, FeedSession, Step};
use crate::domain::journal::entries::ChickId;
use crate::domain::plan::care_plan::Slot;
use crate::domain::quantity::units::{Celsius, Millilitres};
use crate::domain::time::moment::Moment;
use crate::store::id_text::{id_from_text, id_to_text};

/// Version of the form.
const VERSION: &str = "2";
/// Most readings that are read back.
const MOST_READINGS: usize = 60;

/// Most other chicks whose feeds under way are kept.
const MOST_OTHERS: usize = 7;

/// The guide of a chick; `None` when there is none.
pub fn guide_of(text: &str, chick: ChickId) -> Option<FeedSession> {
    let mut guides = text.lines().filter_map(guide_from_text);
    guides.find(|guide| guide.chick == chick)
}

/// The text with this guide in place of its chick's former one.
pub fn with_guide(text: &str, guide: &FeedSession) -> String {
    let others = without_guide(text, guide.chick);
    let others = others.lines().take(MOST_OTHERS);
    let mut lines = vec![guide_to_text(guide)];
    lines.extend(others.map(str::to_owned));
    lines.join("\n")
}

/// The text without a chick's guide and without what is none.
pub fn without_guide(text: &str, chick: ChickId) -> String {
    let is_other = |line: &&str| guide_from_text(line).is_some_and(|guide| guide.chick != chick);
    let lines: Vec<&str> = text.lines().filter(is_other).collect();
    lines.join("\n")
}

/// The guide as text.
pub fn guide_to_text(guide: &FeedSession) -> String {
    let place = |found: Option<usize>| found.unwrap_or_default();
    let slot = place(Slot::ALL.iter().position(|slot| *slot == guide.slot));
    let step = place(Step::ALL.iter().position(|step| *step == guide.step));
    let mixed = guide.mixed.map_or(0, Moment::seconds);
    let mut text = format!(
        "{VERSION} {} {slot} {step} {} {} {} {mixed} {}",
        id_to_text(guide.chick.0),
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
pub fn guide_from_text(text: &str) -> Option<FeedSession> {
    let mut words = text.split(' ');
    if words.next()? != VERSION {
        return None;
    }
    let chick = ChickId(id_from_text(words.next()?)?);
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
    Some(FeedSession {
        chick,
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

    use crate::domain::plan::care_plan::CarePlan;
    use crate::domain::plan::species::Species;
    use crate::store::guide_text::*;

    const CHICK: ChickId = ChickId([7; 12]);

    #[test]
    fn each_chick_has_a_feed_under_way_of_its_own() {
        let now = Moment::from_seconds(1_790_000_000);
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let of = |number| FeedSession::begin(now, ChickId([number; 12]), &plan, Slot::Bedtime);
        let mut text = with_guide("", &of(1));
        text = with_guide(&text, &of(2));
        let mut first = of(1);
        first.step = Step::Give;
        text = with_guide(&text, &first);
        assert_eq!(text.lines().count(), 2);
        assert_eq!(guide_of(&text, first.chick), Some(first.clone()));
        assert_eq!(guide_of(&text, ChickId([2; 12])), Some(of(2)));
        text = without_guide(&format!("{text}\nno guide"), first.chick);
        assert_eq!(guide_of(&text, first.chick), None);
        assert_eq!(text, guide_to_text(&of(2)));
        // however many there were, the text stays short
        for number in 10..30 {
            text = with_guide(&text, &of(number));
        }
        assert_eq!(text.lines().count(), 1 + MOST_OTHERS);
    }

    #[test]
    fn a_feed_under_way_comes_back_as_it_was() {
        let now = Moment::from_seconds(1_790_000_000);
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let mut guide = FeedSession::begin(now, CHICK, &plan, Slot::Bedtime);
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
        let text = guide_to_text(&FeedSession::begin(
            Moment::from_seconds(1_790_000_000),
            CHICK,
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

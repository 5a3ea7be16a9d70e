//! The weight chart of a chick, from its outlook: what is drawn where.

use crate::domain::journal::chick::WeaningStep;
use crate::domain::journal::entries::CropAtWeighing;
use crate::domain::outlook::Outlook;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Day, Lived, Moment};
use crate::domain::weight::noise::Noise;
use crate::domain::weight::readings;
use crate::domain::weight::weight_filter::Point;
use crate::share::weight_chart::{Dot, Span, WeightChart};

/// The chart, and the day that its day 0 is: the handover day or the first reading's, whichever is
/// earlier.
///
/// Days along the chart are wall-clock days as they were lived, so that each morning stands at its
/// own hour also after a flight. After-feed readings are drawn with the food taken off; a reading
/// with the crop not known is drawn as it was read and plays no part in the level.
pub fn chart_of(outlook: &Outlook) -> (WeightChart, Day) {
    let (chick, trend) = (&outlook.chick, &outlook.weight.trend);
    let mut weighings = chick.weighings.as_slice();
    let until_now = weighings.partition_point(|weighing| weighing.at <= outlook.now);
    weighings = weighings.get(..until_now).unwrap_or_default();
    let first_reading = weighings
        .first()
        .map_or(outlook.lived.day, |weighing| weighing.lived().day);
    let reference = chick.plan.reference;
    let first_day = reference.map_or(first_reading, |reference| reference.day.min(first_reading));
    let days = LivedDays::new(outlook, first_day);
    let counted = readings::readings(chick, Noise::of(outlook.now, chick));
    let mut counted = counted.iter().peekable();
    let readings = weighings.iter().map(|weighing| {
        let dot = match weighing.what.crop {
            _ if trend.doubted.contains(&weighing.id) => Dot::Doubted,
            CropAtWeighing::Empty => Dot::Empty,
            CropAtWeighing::AfterFeed | CropAtWeighing::NotSure => Dot::AfterFeed,
        };
        let without_food = counted.next_if(|reading| reading.id == weighing.id);
        let grams = without_food.map_or(weighing.what.weight.as_g(), |reading| reading.grams);
        (day_of(weighing.lived(), first_day), grams, dot)
    });
    let drops = chick
        .weaning
        .iter()
        .filter(|step| step.at <= outlook.now && matches!(step.what, WeaningStep::Dropped { .. }));
    let band = days.spans(&trend.path);
    let points = trend.path.iter().zip(&band);
    let level = points.map(|(point, span)| (span.day, point.grams));
    let fan = days.spans(&trend.fan);
    let tomorrow = f64::from(outlook.lived.day.since(first_day) + 1);
    let handover = reference.map(|reference| reference.weight.as_g());
    let chart = WeightChart {
        readings: readings.collect(),
        level: level.collect(),
        last_day: fan.last().map_or(tomorrow, |span| span.day.max(tomorrow)),
        band,
        fan,
        handover,
        // The weight that its name tells: a fall can call before the plan's limit does.
        limit: outlook.weight.call_at.map(Grams::as_g),
        drops: drops
            .map(|step| day_of(step.lived(), first_day))
            .filter(|day| 0.0 <= *day)
            .collect(),
    };
    (chart, first_day)
}

/// The chart that is shown and sent: readings, lines and drops. What is worked out from them, level, band
/// and forecast, is for those who ask for more.
pub fn plain_chart_of(outlook: &Outlook) -> (WeightChart, Day) {
    let (mut chart, first_day) = chart_of(outlook);
    chart.level.clear();
    chart.band.clear();
    chart.fan.clear();
    chart.last_day = f64::from(outlook.lived.day.since(first_day) + 1);
    (chart, first_day)
}

/// Lived days from midnight of `first_day`.
fn day_of(lived: Lived, first_day: Day) -> f64 {
    f64::from(lived.day.since(first_day)) + f64::from(lived.time.minutes()) / 1_440.0
}

/// Where moments between the readings lie along lived days: in proportion between their neighbours.
struct LivedDays {
    known: Vec<(Moment, f64)>,
}

impl LivedDays {
    fn new(outlook: &Outlook, first_day: Day) -> Self {
        let weighings = outlook.chick.weighings.iter();
        let mut known: Vec<(Moment, f64)> = weighings
            .filter(|weighing| weighing.at < outlook.now)
            .map(|weighing| (weighing.at, day_of(weighing.lived(), first_day)))
            .collect();
        known.push((outlook.now, day_of(outlook.lived, first_day)));
        Self { known }
    }

    fn at(&self, moment: Moment) -> f64 {
        let later = self.known.partition_point(|(known, _)| *known <= moment);
        let before = later.checked_sub(1).and_then(|place| self.known.get(place));
        match (before, self.known.get(later)) {
            (Some((start, from)), Some((end, to))) => {
                from + (to - from) * moment.days_since(*start) / end.days_since(*start)
            }
            (Some((known, day)), None) | (None, Some((known, day))) => {
                day + moment.days_since(*known)
            }
            (None, None) => 0.0,
        }
    }

    fn spans(&self, points: &[Point]) -> Vec<Span> {
        let span = |point: &Point| Span {
            day: self.at(point.at),
            low: point.low_95(),
            high: point.high_95(),
        };
        points.iter().map(span).collect()
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::outlook::outlook;
    use crate::domain::plan::care_plan::{CarePlan, Reference, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::quantity::units::{Grams, Percent};
    use crate::domain::time::moment::Offset;
    use crate::domain::time::zone::{OffsetChange, Zone};
    use crate::share::chart_of::*;

    fn scenario() -> Scenario {
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        plan.reference = Some(Reference {
            weight: Grams::whole(1_040),
            day: day.plus(-1),
        });
        plan.loss_limit = Percent::whole(10);
        Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC)
    }

    fn chart(script: &Scenario, zone: &Zone, now: Moment) -> (WeightChart, Day) {
        chart_of(&outlook(now, &script.journal(), ChickId([7; 12]), zone).unwrap())
    }

    #[test]
    fn the_chart_begins_on_the_handover_day_and_ends_after_tomorrow_or_the_fan() {
        let mut script = scenario();
        let (empty, first_day) = chart(&script, &script.zone(), script.at(1, 12, 0));
        assert_eq!(first_day, Day::from_date(2026, 11, 1).unwrap());
        assert_eq!((empty.readings.len(), empty.last_day), (0, 3.0));
        script
            .weigh(1, 1_030)
            .weigh(2, 1_031)
            .weigh(3, 1_029)
            .weigh(4, 1_030);
        script.weigh(5, 1_030).weigh(7, 1_030);
        let now = script.at(7, 12, 0);
        let (chart, _) = chart(&script, &script.zone(), now);
        let seen = outlook(now, &script.journal(), ChickId([7; 12]), &script.zone()).unwrap();
        // Day 1 of the script is day 2 of the chart; 06:45 is 0.28125 of a day.
        assert_eq!(chart.readings[0], (2.281_25, 1_030.0, Dot::Empty));
        assert_eq!(chart.handover, Some(1_040.0));
        // The line lies at the weight that its name tells, here above the plan's 936 g (10 % of 1040 g): a
        // fall of steady mornings calls before.
        assert_eq!(chart.limit, seen.weight.call_at.map(Grams::as_g));
        assert!(chart.limit > Some(936.0));
        // Three days from now: day 8 + 0.5 + 3.
        assert!((chart.last_day - 11.5).abs() < 1e-9, "{}", chart.last_day);
        assert_eq!(chart.band.len(), chart.level.len());
        // Halfway between the weighings of days 5 and 7, where the level has a point.
        assert!(
            chart
                .level
                .iter()
                .any(|(day, _)| (day - 7.281_25).abs() < 1e-9)
        );
        assert_eq!(chart.fan.first().map(|span| span.day), Some(8.281_25));
    }

    #[test]
    fn dots_tell_full_crops_and_doubt_apart_and_ticks_tell_drops() {
        let mut script = scenario();
        script.weigh(1, 1_030).weigh(2, 1_031).weigh(3, 1_029);
        script.weigh(4, 1_030).weigh(5, 1_200);
        script.feed(6, 7, 0, Slot::Morning, 60);
        let weighed = |crop| Change::Weighed {
            weight: Grams::whole(1_090),
            crop,
        };
        script.note(6, 7, 30, weighed(CropAtWeighing::AfterFeed));
        script.note(6, 8, 0, weighed(CropAtWeighing::NotSure));
        let slot = Slot::Midday;
        let by_breeder = false;
        script.note(6, 12, 0, Change::FeedDropped { slot, by_breeder });
        script.note(6, 18, 0, Change::FeedBroughtBack { slot });
        let (chart, _) = chart(&script, &script.zone(), script.at(6, 20, 0));
        let dots: Vec<Dot> = chart.readings.iter().map(|(_, _, dot)| *dot).collect();
        assert_eq!(dots[4..], [Dot::Doubted, Dot::AfterFeed, Dot::AfterFeed]);
        // 60 ml × 1.06 g/ml = 63.6 g are taken off; with the crop not known nothing is.
        assert!((chart.readings[5].1 - (1_090.0 - 63.6)).abs() < 1e-9);
        assert_eq!(chart.readings[6].1, 1_090.0);
        assert_eq!(chart.drops, [7.5]);
    }

    #[test]
    fn mornings_stand_at_their_own_hour_after_a_flight_west() {
        let mut script = scenario();
        for day in 1..=4 {
            script.weigh(day, 1_030);
        }
        // On day 5 the clock is five hours behind; 06:45 there is 11:45 at home.
        let west = Offset::from_minutes(-300);
        let mut entries = script.journal().entries().to_vec();
        let mut weighing = entries.last().unwrap().clone();
        weighing.at = script.at(5, 11, 45);
        weighing.offset = west;
        weighing.id.0[0] ^= 1;
        entries.push(weighing);
        let journal = crate::domain::journal::entries::Journal::from_entries(entries);
        let flight = OffsetChange {
            from: script.at(4, 20, 0),
            offset: west,
        };
        let zone = Zone::new(Offset::UTC, vec![flight]);
        let now = script.at(5, 12, 0);
        let (chart, _) = chart_of(&outlook(now, &journal, ChickId([7; 12]), &zone).unwrap());
        let days: Vec<f64> = chart.readings.iter().map(|(day, _, _)| *day).collect();
        assert_eq!(days[3..], [5.281_25, 6.281_25]);
        assert!(chart.level.is_sorted_by(|one, next| one.0 < next.0));
        // The 29 hours between the two are one lived day, and the level's points thirds of it.
        let [.., third, two_thirds, last] = chart.level.as_slice() else {
            panic!("{:?}", chart.level);
        };
        assert!((third.0 - (5.281_25 + 1.0 / 3.0)).abs() < 1e-4, "{third:?}");
        assert!((two_thirds.0 - (5.281_25 + 2.0 / 3.0)).abs() < 1e-4);
        assert_eq!(last.0, 6.281_25);
    }
}

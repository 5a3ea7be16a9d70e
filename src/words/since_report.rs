//! Words of a report: the line that goes with it, and what happened since the one before.

use crate::domain::homecoming::since_report::SinceReport;
use crate::domain::journal::chick::WeaningStep;
use crate::domain::outlook::Outlook;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Millilitres;
use crate::domain::warnings::rules::day_intake::latest_day;
use crate::words::Language;
use crate::words::format::Writing;
use crate::words::signs::sign;

impl Writing {
    /// How the chick is in a line of a message: "Ember, day 5: 998 g (−1 % since handover), ate 170 of 180 ml,
    /// droppings as usual. Settled."
    pub fn report_line(self, outlook: &Outlook) -> String {
        let say = self.language;
        let look = outlook.chick.droppings.last();
        let look = look.map(|look| say.droppings(look.what));
        let told = [
            self.report_weight(outlook),
            self.report_eaten(outlook),
            look.map(|look| format!("{} {look}", say.report_droppings())),
        ];
        let told: Vec<String> = told.into_iter().flatten().collect();
        let (who, level) = (self.report_who(outlook), say.level(outlook.level));
        if told.is_empty() {
            return format!("{who}: {level}.");
        }
        format!("{who}: {}. {level}.", told.join(", "))
    }

    /// The chick and its day at home, the first being the day of its arrival: "Ember, day 5".
    pub fn report_who(self, outlook: &Outlook) -> String {
        let chick = &outlook.chick;
        let name = self.name_of(chick);
        let home = chick.arrived.as_ref().map(|arrived| arrived.lived().day);
        let day = home.map(|home| outlook.lived.day.since(home) + 1);
        match (self.language, day.filter(|day| *day > 0)) {
            (Language::English, Some(day)) => format!("{name}, day {day}"),
            (Language::Spanish, Some(day)) => format!("{name}, día {day}"),
            (_, None) => name,
        }
    }

    fn report_weight(self, outlook: &Outlook) -> Option<String> {
        let latest = outlook.weight.latest.as_ref()?;
        let mut weight = self.mass(latest.what.weight);
        let day = latest.lived().day;
        if day != outlook.lived.day {
            weight = format!("{weight}, {}", self.day(day));
        }
        let Some(loss) = outlook.weight.handover_loss_pct else {
            return Some(weight);
        };
        let pct = rounded(loss.abs());
        let sign = match (pct, loss > 0.0) {
            (0, _) => "",
            (_, true) => "\u{2212}",
            (_, false) => "+",
        };
        Some(match self.language {
            Language::English => format!("{weight} ({sign}{pct}\u{a0}% since handover)"),
            Language::Spanish => format!("{weight} ({sign}{pct}\u{a0}% desde la entrega)"),
        })
    }

    /// What was eaten of what was planned, on the latest day of which every feed is answered.
    fn report_eaten(self, outlook: &Outlook) -> Option<String> {
        let today = outlook.lived.day;
        let (day, taken, asked) = latest_day(&outlook.feeds, today)?;
        let taken = self.tenths(taken);
        let asked = self.volume(Millilitres::tenths_held(asked));
        let when = match (self.language, day == today) {
            (_, true) => "",
            (Language::English, false) => " yesterday",
            (Language::Spanish, false) => " ayer",
        };
        Some(match self.language {
            Language::English => format!("ate {taken} of {asked}{when}"),
            Language::Spanish => format!("comió {taken} de {asked}{when}"),
        })
    }

    /// The heading of what happened since the last report, or since the coming home.
    pub fn since_title(self, since: &SinceReport) -> String {
        let day = self.day(since.from.day);
        match (self.language, since.is_report) {
            (Language::English, true) => format!("Since the last report, {day}"),
            (Language::English, false) => format!("Since it came home, {day}"),
            (Language::Spanish, true) => format!("Desde el último informe, {day}"),
            (Language::Spanish, false) => format!("Desde que llegó a casa, {day}"),
        }
    }

    /// What happened since then, label and value.
    pub fn since_lines(self, outlook: &Outlook, since: &SinceReport) -> Vec<(String, String)> {
        let say = self.language;
        let none = say.since_none().to_owned();
        let weight = since.weights.map_or_else(
            || none.clone(),
            |(lowest, highest)| {
                let (lowest, highest) = (self.mass(lowest), self.mass(highest));
                match say {
                    Language::English => format!("lowest {lowest}, highest {highest}"),
                    Language::Spanish => format!("mínimo {lowest}, máximo {highest}"),
                }
            },
        );
        let signs: Vec<&str> = since
            .signs
            .iter()
            .map(|seen| sign(say, *seen).seen)
            .collect();
        let steps: Vec<String> = since
            .steps
            .iter()
            .map(|step| {
                let day = self.day(step.lived().day);
                match step.what {
                    WeaningStep::Dropped { slot, .. } => {
                        format!("{}: {} ({day})", say.feed(slot), say.since_dropped())
                    }
                    WeaningStep::BroughtBack { slot } => {
                        format!("{}: {} ({day})", say.feed(slot), say.since_back())
                    }
                }
            })
            .collect();
        let or_none = |told: String| if told.is_empty() { none.clone() } else { told };
        let refused = match since.refusals {
            0 => none.clone(),
            refusals => refusals.to_string(),
        };
        let quiet = match since.days_without_notes {
            0 => none.clone(),
            days => self.days(days),
        };
        let lines = [
            (say.weigh_field(), weight),
            (
                say.since_eaten(),
                or_none(self.report_eaten(outlook).unwrap_or_default()),
            ),
            (say.since_refused(), refused),
            (say.vet_signs(), or_none(signs.join("; "))),
            (say.since_steps(), or_none(steps.join("; "))),
            (say.since_quiet(), quiet),
        ];
        lines
            .into_iter()
            .map(|(label, value)| (label.to_owned(), value))
            .collect()
    }
}

texts! {
    report_droppings: "droppings", "heces";
    since_none: "none", "ninguno";
    since_eaten: "Eaten", "Comido";
    since_refused: "Offers refused", "Tomas que no quiso";
    since_steps: "Feeds dropped or brought back", "Tomas quitadas o recuperadas";
    since_quiet: "Days without notes", "Días sin anotar";
    since_dropped: "dropped", "quitada";
    since_back: "brought back", "recuperada";
    report_of: "Report of", "Informe de";
    report_copied: "Copied. Paste it into a message to the breeder.", "Copiado. Péguelo en un mensaje al criador.";
    report_as_file: "As a file", "Como archivo";
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, Droppings};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::outlook::outlook;
    use crate::domain::plan::care_plan::{Reference, Slot};
    use crate::domain::quantity::units::Grams;
    use crate::domain::warnings::rules::trial::{plan, with_plan};
    use crate::words::since_report::*;

    /// Day 4 of a chick of 1,010 g at handover on three feeds of 60 ml: 998 g are 1.2 % less; 60, 50 and
    /// 60 ml of 180 are 170.
    fn day_four() -> Scenario {
        let mut plan = plan();
        "Saffron".clone_into(&mut plan.name);
        plan.reference = plan.reference.map(|reference| Reference {
            weight: Grams::whole(1_010),
            ..reference
        });
        for feed in &mut plan.feeds {
            feed.volume = Millilitres::whole(60);
        }
        let mut script = with_plan(plan);
        script.note(0, 6, 0, Change::Arrived);
        for day in 0..=4 {
            script.weigh(day, if day == 4 { 998 } else { 1_006 });
            script
                .feed(day, 7, 0, Slot::Morning, 60)
                .feed(day, 14, 0, Slot::Midday, 50)
                .feed(day, 21, 0, Slot::Bedtime, 60);
        }
        let look = Droppings::Normal;
        script.note(4, 9, 0, Change::DroppingsSeen { look });
        script
    }

    fn line(language: Language, hour: i32) -> String {
        let script = day_four();
        let chick = script.chick().unwrap().id;
        let seen = outlook(
            script.at(4, hour, 30),
            &script.journal(),
            chick,
            &script.zone(),
        );
        let line = Writing::metric(language).report_line(&seen.unwrap());
        line.replace('\u{a0}', " ")
    }

    #[test]
    fn a_report_goes_with_one_line_of_plain_words() {
        assert_eq!(
            line(Language::English, 21),
            "Saffron, day 5: 998 g (\u{2212}1 % since handover), ate 170 of 180 ml, droppings as usual. Settled."
        );
        assert_eq!(
            line(Language::Spanish, 21),
            "Saffron, día 5: 998 g (\u{2212}1 % desde la entrega), comió 170 de 180 ml, heces como siempre. Normal."
        );
    }

    #[test]
    fn before_the_day_is_over_it_tells_of_the_day_before() {
        assert!(line(Language::English, 12).contains("ate 170 of 180 ml yesterday"));
    }
}

//! Sentences built from numbers.

use crate::domain::journal::entries::{SameFoodAnswer, WhyPassedOver};
use crate::domain::plan::care_plan::Slot;
use crate::domain::quantity::units::{Grams, Millilitres};
use crate::domain::time::moment::{Day, Lived, WallTime};
use crate::words::Language;
use crate::words::format::Writing;

impl Language {
    /// What was just noted about a feed that was refused.
    pub fn feed_refused(self, feed: Option<Slot>) -> String {
        format!("{}: {}", self.feed_or_food(feed), self.strip_refused())
    }

    /// The name of a planned feed, or of food that counts for none.
    pub const fn feed_or_food(self, feed: Option<Slot>) -> &'static str {
        match feed {
            Some(slot) => self.feed(slot),
            None => self.pick("Food", "Comida"),
        }
    }

    /// The short name of a planned feed, or of food that counts for none.
    pub const fn slot_or_extra(self, feed: Option<Slot>) -> &'static str {
        match feed {
            Some(slot) => self.slot(slot),
            None => self.pick("extra", "extra"),
        }
    }

    /// That a note counts for no planned feed.
    pub const fn counts_as_extra(self) -> &'static str {
        self.pick(
            "Counts as extra food, not as a planned feed",
            "Cuenta como comida extra, no como una toma del plan",
        )
    }

    /// What notes of food near to each other are.
    pub const fn same_food_answer(self, answer: SameFoodAnswer) -> &'static str {
        match answer {
            SameFoodAnswer::NotedTwice => self.pick(
                "The same food, noted twice",
                "La misma comida, anotada dos veces",
            ),
            SameFoodAnswer::TwoParts => {
                self.pick("One feed, in two parts", "Una toma, en dos partes")
            }
            SameFoodAnswer::TwoFeeds => self.pick("Two feeds", "Dos tomas"),
        }
    }

    /// What was just noted about a feed that was left out.
    pub fn feed_left_out(self, slot: Slot, why: WhyPassedOver) -> String {
        format!("{}: {}", self.feed(slot), self.why_passed_over(why))
    }
}

impl Writing {
    /// Of when the last-known text is, which may be read much later.
    pub fn as_of(self, lived: Lived) -> String {
        let (day, time) = (self.date(lived.day), self.time(lived.time));
        match self.language {
            Language::English => format!("As of {day}, {time}"),
            Language::Spanish => format!("Lo último, {day}, {time}"),
        }
    }

    /// How far a weight is from the handover weight.
    pub fn against_handover(self, loss_pct: f64) -> String {
        let pct = self.pct(loss_pct.abs());
        let is_same = self.one_decimal(loss_pct.abs()) == self.one_decimal(0.0);
        match (self.language, is_same, loss_pct < 0.0) {
            (Language::English, true, _) => "same as at handover".to_owned(),
            (Language::English, false, true) => format!("{pct} above handover"),
            (Language::English, false, false) => format!("{pct} below handover"),
            (Language::Spanish, true, _) => "igual que en la entrega".to_owned(),
            (Language::Spanish, false, true) => format!("un {pct} más que en la entrega"),
            (Language::Spanish, false, false) => format!("un {pct} menos que en la entrega"),
        }
    }

    /// The same with the plan's limit.
    pub fn against_handover_with_limit(self, loss_pct: f64, limit_pct: f64) -> String {
        let limit = self.pct(limit_pct);
        match self.language {
            Language::English => format!("{} (limit {limit})", self.against_handover(loss_pct)),
            Language::Spanish => format!("{} (límite {limit})", self.against_handover(loss_pct)),
        }
    }

    /// "in 1 h 20 min", "now", "45 min late".
    pub fn countdown(self, minutes_to_go: i64) -> String {
        let span = self.minutes(minutes_to_go);
        match (self.language, minutes_to_go) {
            (_, 1..) => span,
            (Language::English, 0) => "now".to_owned(),
            (Language::Spanish, 0) => "ahora".to_owned(),
            (Language::English, _) => format!("{span} late"),
            (Language::Spanish, _) => format!("{span} de retraso"),
        }
    }

    /// How often a syringe is filled for one feed, and with how much each time, in tenths.
    pub fn draws(self, tenths: &[i32]) -> String {
        match (self.language, tenths) {
            (Language::English, [_]) => "1 syringeful".to_owned(),
            (Language::Spanish, [_]) => "1 jeringa".to_owned(),
            (Language::English, _) => {
                format!("{} syringefuls: {}", tenths.len(), self.sum_of(tenths))
            }
            (Language::Spanish, _) => format!("{} jeringas: {}", tenths.len(), self.sum_of(tenths)),
        }
    }

    /// Volumes in tenths, one after the other: `30 ml + 10 ml`.
    pub fn sum_of(self, tenths: &[i32]) -> String {
        let volumes = tenths.iter();
        let volumes = volumes.map(|tenths| self.volume(Millilitres::tenths_held(*tenths)));
        volumes.collect::<Vec<_>>().join(" + ")
    }

    /// What was just noted about a feed.
    pub fn feed_noted(self, feed: Option<Slot>, taken: Millilitres) -> String {
        format!(
            "{}, {}",
            self.language.feed_or_food(feed),
            self.volume(taken)
        )
    }

    /// Which planned feed a note counts for.
    pub fn counts_as(self, feed: Option<(Slot, WallTime)>) -> String {
        let Some((slot, planned)) = feed else {
            return self.language.counts_as_extra().to_owned();
        };
        let (slot, planned) = (self.language.feed(slot), self.time(planned));
        match self.language {
            Language::English => format!("Counts as: {slot}, {planned}"),
            Language::Spanish => format!("Cuenta como: {slot}, {planned}"),
        }
    }

    /// The question whether a planned feed was given.
    pub fn was_it_given(self, slot: Slot, planned: Lived) -> String {
        let (slot, planned) = (self.language.feed(slot), self.lived(planned));
        match self.language {
            Language::English => format!("{slot}, {planned}: was it given?"),
            Language::Spanish => format!("{slot}, {planned}: ¿se dio?"),
        }
    }

    /// The question what notes of food near to each other are.
    pub fn same_food(self, notes: &[String]) -> String {
        let notes = notes.join(" / ");
        match self.language {
            Language::English => format!("{notes}. What are these?"),
            Language::Spanish => format!("{notes}. ¿Qué son?"),
        }
    }

    /// A feed of the plan that was dropped.
    pub fn stays_dropped(self, on: Lived) -> String {
        let on = self.date(on.day);
        match self.language {
            Language::English => format!("dropped on {on}, stays dropped"),
            Language::Spanish => format!("quitada el {on}, sigue quitada"),
        }
    }

    /// Beside a feed that is begun before its time.
    pub fn before_its_time(self, next: Slot, due: WallTime, wait: &str) -> String {
        let (feed, due) = (self.language.feed(next), self.the_time(due));
        match self.language {
            Language::English => format!(
                "Do not feed yet, unless your breeder or vet says so: {feed} is due at {due}, in {wait}."
            ),
            Language::Spanish => format!(
                "No dé la toma todavía, salvo que lo diga su criador o su veterinario. {feed}: a {due}, dentro de {wait}."
            ),
        }
    }

    /// The question about a weight that does not fit.
    pub fn weight_question(self, typed: Grams, last: Grams) -> String {
        let (typed, last) = (self.mass(typed), self.mass(last));
        match self.language {
            Language::English => format!("Is {typed} right? The last was {last}."),
            Language::Spanish => format!("¿Es correcto {typed}? El último fue {last}."),
        }
    }

    /// The offer of what was perhaps meant.
    pub fn weight_meant(self, meant: Grams) -> String {
        let meant = self.mass(meant);
        match self.language {
            Language::English => format!("I meant {meant}"),
            Language::Spanish => format!("Quise decir {meant}"),
        }
    }

    /// The level with its 95 % range.
    pub fn level_now(self, grams: f64, sd_g: f64) -> String {
        let tenths =
            |grams: f64| Grams::tenths_held(crate::domain::quantity::count::rounded(grams) * 10);
        let level = self.mass(tenths(grams));
        let range = self.mass(tenths(sd_g * crate::domain::statistics::normal::Z_95));
        match self.language {
            Language::English => format!("About {level} (±{range})."),
            Language::Spanish => format!("Unos {level} (±{range})."),
        }
    }

    /// The pace of the last two weeks.
    pub fn pace(self, per_day_g: f64) -> String {
        let size = self.mass(Grams::tenths_held(crate::domain::quantity::count::rounded(
            per_day_g.abs() * 10.0,
        )));
        match (self.language, per_day_g < 0.0) {
            (Language::English, true) => format!("It now loses {size} a day."),
            (Language::English, false) => format!("It now gains {size} a day."),
            (Language::Spanish, true) => {
                format!("Ahora pierde {size} al día.")
            }
            (Language::Spanish, false) => format!("Ahora gana {size} al día."),
        }
    }

    /// How far the level is below its peak.
    pub fn below_peak(self, loss_pct: f64) -> String {
        let loss = self.pct(loss_pct);
        match self.language {
            Language::English => format!("{loss} below its highest weight since handover."),
            Language::Spanish => {
                format!("Un {loss} por debajo de su peso máximo desde la entrega.")
            }
        }
    }

    /// The chances that the level is below the limit today and in one to three days.
    pub fn chances_below_limit(self, now: f64, in_days: [f64; 3]) -> String {
        let chance = |chance: f64| {
            let pct = crate::domain::quantity::count::rounded(chance * 100.0);
            match pct {
                0 => "<1\u{a0}%".to_owned(),
                100 => ">99\u{a0}%".to_owned(),
                pct => format!("{pct}\u{a0}%"),
            }
        };
        let days = in_days.map(chance).join(", ");
        match self.language {
            Language::English => format!(
                "Chance of being below the limit: {} today; {days} in 1, 2 and 3 days.",
                chance(now)
            ),
            Language::Spanish => {
                format!(
                    "Probabilidad de estar por debajo del límite: {} hoy; {days} dentro de 1, 2 y 3 días.",
                    chance(now)
                )
            }
        }
    }

    /// When the limit is reached at this pace.
    pub fn crossing(self, earliest: Day, likely: Day, latest: Option<Day>) -> String {
        let (earliest, likely) = (self.day(earliest), self.day(likely));
        let latest = latest.map(|day| self.day(day));
        match (self.language, latest) {
            (Language::English, Some(latest)) => {
                format!("At this pace the limit is reached on {likely} ({earliest} to {latest}).")
            }
            (Language::English, None) => {
                format!(
                    "At this pace the limit is reached on {likely} ({earliest} at the earliest)."
                )
            }
            (Language::Spanish, Some(latest)) => {
                format!("A este ritmo llega al límite el {likely} (del {earliest} al {latest}).")
            }
            (Language::Spanish, None) => {
                format!("A este ritmo llega al límite el {likely} (no antes del {earliest}).")
            }
        }
    }

    /// How many entries a backup would bring in.
    pub fn backup_preview(self, all: usize, new: usize) -> String {
        match (self.language, all, new) {
            (Language::English, 1, 0) => "It holds 1 entry. It is here already.".to_owned(),
            (Language::English, 1, _) => "It holds 1 entry; new here: 1.".to_owned(),
            (Language::English, _, _) => format!("It holds {all} entries; new here: {new}."),
            (Language::Spanish, 1, _) => format!("Contiene 1 anotación; nuevas aquí: {new}."),
            (Language::Spanish, _, _) => format!("Contiene {all} anotaciones; nuevas aquí: {new}."),
        }
    }
}

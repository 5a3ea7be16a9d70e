//! The way to the new home, and the first feed there.

use crate::domain::homecoming::first_days::SETTLE_MINUTES;
use crate::domain::homecoming::journey::JourneyFault;
use crate::domain::homecoming::transit::{Cover, TransitLevels};
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::units::{Millilitres, Percent};
use crate::domain::time::moment::{Lived, WallTime};
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    way_before: "Before the journey", "Antes del viaje";
    way_on: "On its way", "De camino";
    way_log: "Log a feed on the way", "Anotar una toma por el camino";
    way_first: "First feed at home", "Primera toma en casa";
    way_dry: "Look at droppings and crop. Wrinkled skin or sunken eyes: ring the vet first, a dry chick gets fluids before formula.", "Mire excrementos y buche. Piel arrugada u ojos hundidos: llame antes al veterinario, un pollo seco recibe líquidos antes que papilla.";

    plan_journey: "The journey", "El viaje";
    plan_journey_hint: "By the breeder's clock. Leave it empty when there is none.", "Según el reloj del criador. Déjelo vacío si no hay viaje.";
    plan_left_day: "Leaves on", "Sale el";
    plan_left_time: "Leaves at", "Sale a las";
    plan_fed_day: "Fed last on, before leaving", "Última toma antes de salir, el";
    plan_fed_time: "Fed last at", "Última toma a las";
    plan_fed_ml: "How much", "Cuánto";
    fault_fed_late: "The last feed lies before the leaving, by a day at most.", "La última toma es antes de la salida, como mucho un día.";
    fault_fed_half: "The last feed needs day, time and amount.", "La última toma necesita día, hora y cantidad.";
    plan_expected_day: "Arrives on", "Llega el";
    plan_expected_time: "Arrives at", "Llega a las";
    plan_offset: "Breeder's clock, hours from UTC", "Reloj del criador, horas desde UTC";
    plan_offset_hint: "such as -5 or +5:30; empty: the same as here", "por ejemplo -5 o +5:30; vacío: igual que aquí";
    plan_shift: "How do feeds come to the owner's clock?", "¿Cómo pasan las tomas al reloj del dueño?";
    plan_shift_at_once: "at once", "de una vez";
    plan_shift_gradual: "60 minutes a day at most", "como mucho 60 minutos al día";
    fault_offset: "That is no clock's distance from UTC. Type -14 to +14, such as -5 or +5:30.", "Ningún reloj está así de UTC. Escriba de -14 a +14, como -5 o +5:30.";
    fault_journey_half: "A journey needs day and time of leaving and of arriving.", "Un viaje necesita día y hora de salida y de llegada.";
}

impl Language {
    /// A journey that was not taken.
    pub const fn journey_fault(self, fault: JourneyFault) -> &'static str {
        match fault {
            JourneyFault::ArrivesBeforeLeaving => self.pick(
                "It must arrive after it leaves. Check days and times.",
                "Debe llegar después de salir. Revise días y horas.",
            ),
            JourneyFault::TooLong => self.pick(
                "That is more than two days on the way. Check the days.",
                "Son más de dos días de camino. Revise los días.",
            ),
        }
    }
}

impl Writing {
    /// When it leaves or has left.
    pub fn leaves(self, left: Lived, has_left: bool) -> String {
        let left = self.lived(left);
        match (self.language, has_left) {
            (Language::English, true) => format!("Left {left}."),
            (Language::English, false) => format!("Leaves {left}."),
            (Language::Spanish, true) => format!("Salió {left}."),
            (Language::Spanish, false) => format!("Sale {left}."),
        }
    }

    /// When it is expected, and in how long.
    pub fn expected(self, expected: Lived, in_minutes: i64) -> String {
        let (at, minutes) = (self.lived(expected), self.minutes(in_minutes));
        match (self.language, in_minutes < 0) {
            (Language::English, false) => format!("Expected {at}, in {minutes}."),
            (Language::English, true) => format!("Was expected {at}, {minutes} ago."),
            (Language::Spanish, false) => format!("Llegada prevista {at}, en {minutes}."),
            (Language::Spanish, true) => format!("Se esperaba {at}, hace {minutes}."),
        }
    }

    /// How long it has been without a feed.
    pub fn without_feed(self, minutes: i64) -> String {
        let minutes = self.minutes(minutes.max(0));
        match self.language {
            Language::English => format!("{minutes} since its last feed"),
            Language::Spanish => format!("{minutes} desde su última toma"),
        }
    }

    /// The levels of the time without a feed, each with its standing.
    pub fn transit_levels(self, levels: TransitLevels) -> String {
        let [plan, alarm, emergency] =
            [levels.plan, levels.alarm, levels.emergency].map(|minutes| self.minutes(minutes));
        let say = self.language;
        let common = say.standing(Standing::CommonPractice);
        let last = match levels.cover {
            Cover::Feathered => common,
            Cover::DownOrPins | Cover::OpeningPins => say.standing(Standing::Ours),
        };
        match say {
            Language::English => format!(
                "Plan {plan} at most ({common}), ring the breeder at {alarm} ({common}), \
                 emergency at {emergency} ({last})."
            ),
            Language::Spanish => format!(
                "Prevea {plan} como mucho ({common}), llame al criador a las {alarm} ({common}), \
                 emergencia a las {emergency} ({last})."
            ),
        }
    }

    /// A journey that is longer than should be planned.
    pub fn long_journey(self, minutes_at_arrival: i64, plan: i64) -> String {
        let (long, plan) = (self.minutes(minutes_at_arrival), self.minutes(plan));
        match self.language {
            Language::English => format!(
                "At the expected arrival it will be {long} without a feed, longer than {plan}. \
                 Ask the breeder about a feed on the way."
            ),
            Language::Spanish => format!(
                "A la llegada prevista serán {long} sin toma, más de {plan}. Pregunte al criador \
                 por una toma en el camino."
            ),
        }
    }

    /// The first act after the arrival.
    pub fn warm_until(self, until: WallTime, is_over: bool) -> String {
        let (until, least) = (self.time(until), self.minutes(SETTLE_MINUTES));
        match (self.language, is_over) {
            (Language::English, false) => {
                format!("Warm and quiet until {until}, {least} at least.")
            }
            (Language::English, true) => {
                format!("Warm and quiet: {least} are over. Feel that it is warm.")
            }
            (Language::Spanish, false) => {
                format!("Calor y calma hasta las {until}, al menos {least}.")
            }
            (Language::Spanish, true) => {
                format!("Calor y calma: pasaron {least}. Compruebe que está caliente.")
            }
        }
    }

    /// How much the first feed is, and how thick.
    pub fn first_feed(
        self,
        (least, most): (Millilitres, Millilitres),
        usual: Millilitres,
        powder: Percent,
    ) -> String {
        let (least, most) = (self.tenths(least.tenths()), self.volume(most));
        let (usual, powder) = (self.volume(usual), self.tenths(powder.tenths()));
        match self.language {
            Language::English => format!(
                "Weigh it, then feed {least} to {most} instead of {usual}, with {powder}\u{a0}% \
                 powder, the breeder's own."
            ),
            Language::Spanish => format!(
                "Péselo y dé de {least} a {most} en vez de {usual}, con {powder}\u{a0}% de polvo, \
                 el del criador."
            ),
        }
    }

    /// What is different in the cup of the first feed.
    pub fn first_mix(self, most: Millilitres, powder: Percent) -> String {
        let (most, powder) = (self.volume(most), self.tenths(powder.tenths()));
        match self.language {
            Language::English => format!(
                "First feed at home: {most} at most, {powder}\u{a0}% powder (common practice)."
            ),
            Language::Spanish => format!(
                "Primera toma en casa: {most} como mucho, {powder}\u{a0}% de polvo (práctica común)."
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::transit::{DOWN_OR_PINS, FEATHERED};
    use crate::words::journey::*;

    const ENGLISH: Writing = Writing::metric(Language::English);

    #[test]
    fn each_level_of_the_hours_without_a_feed_tells_its_standing() {
        let plain = |text: String| text.replace('\u{a0}', " ");
        assert_eq!(
            plain(ENGLISH.transit_levels(FEATHERED.value)),
            "Plan 8 h at most (common practice), ring the breeder at 10 h (common practice), \
             emergency at 12 h (common practice)."
        );
        let pins = plain(ENGLISH.transit_levels(DOWN_OR_PINS.value));
        assert!(
            pins.ends_with("emergency at 6 h (ours, not tested on birds)."),
            "{pins}"
        );
    }

    #[test]
    fn half_to_three_quarters_of_the_first_feed_are_written_out() {
        let ml = Millilitres::whole;
        let text = ENGLISH.first_feed((ml(30), ml(45)), ml(60), Percent::whole(20));
        assert_eq!(
            text.replace('\u{a0}', " "),
            "Weigh it, then feed 30 to 45 ml instead of 60 ml, with 20 % powder, the breeder's own."
        );
    }
}

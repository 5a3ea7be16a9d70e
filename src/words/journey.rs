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
    way_on: "On the way", "De camino";
    way_log: "Log a feed on the way", "Anotar una toma por el camino";
    way_first: "First feed at home", "Primera toma en casa";
    way_dry: "Look at the droppings and the crop. Wrinkled skin or sunken eyes? Call the vet before you feed: a dehydrated chick needs fluids before formula.", "Mire las heces y el buche. ¿Piel arrugada u ojos hundidos? Llame al veterinario antes de darle de comer: un polluelo deshidratado necesita líquidos antes que papilla.";

    plan_journey: "The journey", "El viaje";
    plan_journey_hint: "By the breeder's clock. No journey? Leave it empty.", "Según la hora del criador. ¿No hay viaje? Déjelo vacío.";
    plan_left_day: "Leaves on", "Día de salida";
    plan_left_time: "Leaves at", "Hora de salida";
    plan_fed_day: "Last fed before leaving, on", "Día de la última toma antes de salir";
    plan_fed_time: "Last fed at", "Hora de la última toma";
    plan_fed_ml: "How much", "Cuánto";
    fault_fed_late: "The last feed must be before leaving, at most a day before.", "La última toma tiene que ser antes de la salida, como mucho un día antes.";
    fault_fed_half: "Give day, time and amount of the last feed.", "Indique día, hora y cantidad de la última toma.";
    plan_expected_day: "Arrives on", "Día de llegada";
    plan_expected_time: "Arrives at", "Hora de llegada";
    plan_offset: "Breeder's time zone, hours from UTC", "Zona horaria del criador, horas desde UTC";
    plan_offset_hint: "such as -5 or +5:30; empty: the same as here", "por ejemplo -5 o +5:30; vacío: igual que aquí";
    plan_shift: "How do the feeds move to the owner's time?", "¿Cómo pasan las tomas a la hora del dueño?";
    plan_shift_at_once: "all at once", "de una vez";
    plan_shift_gradual: "60 minutes a day at most", "como mucho 60 minutos al día";
    fault_offset: "No time zone is that far from UTC. Type -14 to +14, such as -5 or +5:30.", "Ninguna zona horaria está tan lejos de UTC. Escriba de -14 a +14, como -5 o +5:30.";
    fault_journey_half: "Give day and time of leaving and of arriving.", "Indique día y hora de la salida y de la llegada.";
}

impl Language {
    /// A journey that was not taken.
    pub const fn journey_fault(self, fault: JourneyFault) -> &'static str {
        match fault {
            JourneyFault::ArrivesBeforeLeaving => self.pick(
                "It must arrive after it leaves. Check days and times.",
                "La llegada debe ser después de la salida. Revise días y horas.",
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
        let left = self.on_lived(left);
        match (self.language, has_left) {
            (Language::English, true) => format!("Left {left}."),
            (Language::English, false) => format!("Leaves {left}."),
            (Language::Spanish, true) => format!("Salió {left}."),
            (Language::Spanish, false) => format!("Sale {left}."),
        }
    }

    /// When it is expected, and in how long.
    pub fn expected(self, expected: Lived, in_minutes: i64) -> String {
        let (at, minutes) = (self.on_lived(expected), self.minutes(in_minutes));
        match (self.language, in_minutes < 0) {
            (Language::English, false) => format!("Expected {at}, in {minutes}."),
            (Language::English, true) => format!("Was expected {at}: {minutes} ago."),
            (Language::Spanish, false) => format!("Llegada prevista: {at}, dentro de {minutes}."),
            (Language::Spanish, true) => format!("Se esperaba {at}, hace {minutes}."),
        }
    }

    /// How long it has been without a feed.
    pub fn without_feed(self, minutes: i64) -> String {
        let minutes = self.minutes(minutes.max(0));
        match self.language {
            Language::English => format!("{minutes} without food"),
            Language::Spanish => format!("{minutes} sin comer"),
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
                "Without food: {plan} at most ({common}). After {alarm} call the breeder ({common}). After {emergency} it is an emergency ({last})."
            ),
            Language::Spanish => format!(
                "Sin comer, {plan} como máximo ({common}). Si pasan {alarm}, llame al criador ({common}). Si pasan {emergency}, es una emergencia ({last})."
            ),
        }
    }

    /// A journey that is longer than should be planned.
    pub fn long_journey(self, minutes_at_arrival: i64, plan: i64) -> String {
        let (long, plan) = (self.minutes(minutes_at_arrival), self.minutes(plan));
        match self.language {
            Language::English => format!(
                "Ask the breeder about a feed on the way: at arrival it will be {long} without food, longer than {plan}."
            ),
            Language::Spanish => format!(
                "Pregunte al criador por una toma en el camino: a la llegada llevará {long} sin comer, más de {plan}."
            ),
        }
    }

    /// The first act after the arrival.
    pub fn warm_until(self, until: WallTime, is_over: bool) -> String {
        let (until, least) = (self.the_time(until), self.minutes(SETTLE_MINUTES));
        match (self.language, is_over) {
            (Language::English, false) => {
                format!("Keep it warm and quiet until {until}, at least {least}.")
            }
            (Language::English, true) => {
                format!("The {least} of rest are over. Feel: is it warm?")
            }
            (Language::Spanish, false) => {
                format!("Téngalo al calor y tranquilo hasta {until}, al menos {least}.")
            }
            (Language::Spanish, true) => {
                format!("Ya pasaron los {least} de descanso. Tóquelo: ¿está tibio?")
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
                "Weigh it first. Then offer {least} to {most}, not the usual {usual}. Use the breeder's powder, mixed thinner ({powder}\u{a0}%)."
            ),
            Language::Spanish => format!(
                "Péselo primero. Luego ofrézcale de {least} a {most}, no los {usual} de siempre. Use la papilla del criador, más líquida ({powder}\u{a0}% de polvo)."
            ),
        }
    }

    /// What is different in the cup of the first feed.
    pub fn first_mix(self, most: Millilitres, powder: Percent) -> String {
        let (most, powder) = (self.volume(most), self.tenths(powder.tenths()));
        match self.language {
            Language::English => format!(
                "First feed at home: at most {most}, with {powder}\u{a0}% powder (common practice)."
            ),
            Language::Spanish => format!(
                "Primera toma en casa: como máximo {most}, con {powder}\u{a0}% de polvo (práctica común)."
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
            "Without food: 8 h at most (common practice). After 10 h call the breeder (common practice). After 12 h it is an emergency (common practice)."
        );
        let pins = plain(ENGLISH.transit_levels(DOWN_OR_PINS.value));
        assert!(
            pins.ends_with("After 6 h it is an emergency (our own limit, not tested on birds)."),
            "{pins}"
        );
    }

    #[test]
    fn half_to_three_quarters_of_the_first_feed_are_written_out() {
        let ml = Millilitres::whole;
        let text = ENGLISH.first_feed((ml(30), ml(45)), ml(60), Percent::whole(20));
        assert_eq!(
            text.replace('\u{a0}', " "),
            "Weigh it first. Then offer 30 to 45 ml, not the usual 60 ml. Use the breeder's powder, mixed thinner (20 %)."
        );
    }
}

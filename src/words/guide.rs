//! The feed guide: one sentence a step, and what to look for.

use crate::domain::formula::cooling::CoolingError;
use crate::domain::formula::nutrition::MixWarning;
use crate::domain::formula::serving_heat::{
    BATH_AT_MOST_C, BATH_C, BURN_C, Serving, ServingVerdict, TemperatureUnit,
};
use crate::domain::instruction::feed_session::Step;
use crate::domain::journal::entries::CropState;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::{Celsius, Millilitres};
use crate::domain::time::moment::WallTime;
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    guide_stop: "Stop", "Parar";
    guide_next: "Next", "Siguiente";
    guide_stop_title: "Stop this feed?", "¿Parar esta toma?";
    guide_wait: "Wait and come back", "Esperar y volver";
    guide_wait_hint: "You can go on from here later. Throw mixed food away after an hour.", "Puede seguir aquí más tarde. La papilla preparada se tira al cabo de una hora.";
    guide_leave: "Leave this feed out", "No dar esta toma";
    guide_go_on: "Go on feeding", "Seguir con la toma";
    guide_anew: "Start again", "Empezar de nuevo";
    guide_stale: "Throw this mix away and start again: it is more than an hour old.", "Tire esta papilla y empiece de nuevo: tiene más de una hora.";

    guide_weigh_title: "Weigh it first", "Péselo primero";
    guide_weigh_lead: "Before the first feed the crop is empty: only now is the weight the chick's own.", "Antes de la primera toma el buche está vacío: solo ahora el peso es el suyo.";
    guide_call_later: "Go on to the feed", "Seguir con la toma";
    guide_weigh_later: "Go on without weighing", "Seguir sin pesar";

    guide_crop_look: "Look from the side, feel gently.", "Mire de lado y palpe con suavidad.";
    guide_crop_tap: "Tap the picture that looks most like yours.", "Toque el dibujo que más se parezca.";
    guide_crop_hard: "Hard, doughy, like a balloon, or sour", "Duro, pastoso, como un globo o agrio";
    guide_look_again: "Look at the crop again", "Mirar otra vez el buche";
    guide_crop_cold: "Is it warm, bright and breathing quietly? If not, do not feed: tap Stop.", "¿Está tibio al tacto, activo y respira sin ruido? Si no, no dé la toma: toque «Parar».";

    guide_mix_lead: "Put the cup on the scale. Weigh in the water first, then the powder. A fat supplement goes into the warm water.", "Ponga el vaso en la báscula. Pese primero el agua y luego el polvo. Si lleva suplemento graso, disuélvalo en el agua tibia.";
    guide_mix_powder: "Powder", "Papilla en polvo";
    guide_mix_water: "Water", "Agua";
    guide_mix_fat: "Fat supplement", "Suplemento graso";
    guide_mix_spoons: "level spoons", "cucharas rasas";
    guide_mix_half: "and a half", "y media";
    guide_mix_no_microwave: "Do not use a microwave: it leaves hot spots that burn. Stir well and measure in several places.", "No use microondas: deja zonas que queman. Remueva bien y mida en varios sitios.";
    guide_mix_thin: "Ask your breeder: this is thin for a feathered chick (below 18 % powder).", "Pregunte a su criador: es muy líquida para un polluelo emplumado (menos de 18 % de polvo).";
    guide_mix_thick: "Ask your breeder: this is thick (above 33 % powder) and slows the crop.", "Pregunte a su criador: es muy espesa (más de 33 % de polvo) y el buche se vacía más despacio.";
    guide_mix_fat_much: "More fat supplement than 2.5 g in 100 ml (our own limit). Give it only if your breeder or vet asked for it.", "Más suplemento graso que 2,5 g en 100 ml (valor propio). Solo si lo pidió el criador o el veterinario.";
    guide_mix_fat_double: "Ask your breeder before you add a fat supplement: this powder is high in fat already.", "Pregunte a su criador antes de añadir un suplemento graso: esta papilla ya es rica en grasa.";
    guide_mixed: "It is mixed", "Ya está preparada";

    guide_warm_lead: "Stir. Measure in the cup. Type what the thermometer says.", "Remueva. Mida en el vaso. Escriba lo que marca el termómetro.";
    guide_aim: "Aim for", "Temperatura buena";
    guide_scale_cool: "too cool", "demasiado fría";
    guide_scale_aim: "aim", "buena";
    guide_warm_field: "Thermometer", "Termómetro";
    guide_warm_implausible: "A cup of formula cannot have that temperature. Check the number and the unit.", "Un vaso de papilla no puede tener esa temperatura. Revise el número y la unidad.";
    guide_warm_measured: "Measured", "Medido";
    guide_warm_bath: "The cup is in a warm bath", "El vaso está al baño maría";
    guide_warm_now: "about now", "ahora unos";
    guide_warm_slip: "Did you mean", "¿Quiso decir";
    guide_heat_old: "Measure the cup again before you give it: the last reading is more than five minutes old.", "Mida otra vez el vaso antes de dar la papilla: la última medida tiene más de cinco minutos.";
    guide_given_already: "I gave it already: note it", "Ya la di: anotarla";
    guide_heat_again: "Measure again", "Medir otra vez";
    guide_see_why: "See why", "Ver por qué";
    guide_warmer: "Stir, then measure again in several places: it is warmer than before, so only this reading counts.", "Remueva y mida otra vez en varios sitios: está más caliente que antes, así que solo vale esta medida.";
    guide_other_place: "The hottest place counts: feed by that one. Stir, wait two minutes, measure again.", "Vale la zona más caliente. Remueva, espere dos minutos y mida otra vez.";
    guide_warm_tip: "Measure once more at the syringe tip before you feed.", "Antes de darla, mida otra vez en la punta de la jeringa.";

    guide_draw_lead: "Fill all from the same cup, the largest first. No air.", "Llene todo del mismo vaso, primero lo mayor. Sin aire.";
    guide_draw_small_hand: "For a small hand", "Para una mano pequeña";

    guide_hold_lead: "Hold head and neck from behind. Put the tip in at the left side of the beak (the bird's left) and point it to the bird's right. Do not push on the upper beak.", "Sujete la cabeza y el cuello por detrás. Ponga la punta en el lado izquierdo del pico (izquierda del ave) y apunte hacia la derecha del ave. No empuje la parte de arriba del pico.";
    guide_hold_ready: "Position is good", "Está en buena posición";

    guide_response_lead: "Touch the corners of the beak with warm fingers. Does it bob its head up and down and swallow?", "Toque las comisuras del pico con los dedos tibios. ¿Mueve la cabeza arriba y abajo y traga?";
    guide_response_yes: "Yes, it bobs and swallows", "Sí, la mueve y traga";
    guide_response_no: "No, it does not respond", "No, no responde";
    guide_response_never: "No bobbing, no food. Never push food into a chick that does not bob and swallow.", "Si no responde, no hay toma. Nunca empuje papilla si no mueve la cabeza y traga.";

    guide_give_lead: "Push a little at a time, in time with the bobs. Stop at once if it stops bobbing, coughs, or food shows at the nostrils.", "Dé poco a poco, al ritmo en que mueve la cabeza y traga. Pare al instante si deja de hacerlo, tose o le sale papilla por la nariz.";
    guide_give_done: "Enough", "Ya está";
    guide_given: "given", "dados";
    guide_all_given: "All of it is given. Tap Enough.", "Ya se dio todo. Toque «Ya está».";

    guide_after_clean: "Wipe beak and chest with warm water, so that no food dries there.", "Limpie el pico y el pecho con agua tibia, para que no se seque papilla.";
    guide_after_crop: "Look at the crop: round and soft is right now.", "Mire el buche: ahora debe estar redondo y blando.";
    guide_after_droppings: "Droppings (optional)", "Heces (opcional)";
    guide_after_lead: "Put it back warm and leave it alone: do not handle it with a full crop. Normal now: a swallow or two, a shake of the head, falling asleep.", "Déjelo al calor y tranquilo: con el buche lleno no se le toca. Es normal que trague una o dos veces, sacuda la cabeza y se duerma.";
    guide_after_not: "Not normal: clicking, gasping, bubbles at the nostrils, turning blue. Then tap Help.", "No es normal: ruidos al respirar, boquear, burbujas en la nariz, ponerse azul. Entonces toque «Ayuda».";
    guide_after_throw: "Throw the rest away. Wash the tools with hot water and soap, disinfect, rinse, dry.", "Tire lo que sobra. Lave los utensilios con agua caliente y jabón, desinfecte, enjuague y seque.";
    guide_after_log: "Log this feed", "Anotar esta toma";
}

impl Language {
    /// A step's heading.
    pub const fn guide_step(self, step: Step) -> &'static str {
        match step {
            Step::Crop => self.pick("How full is the crop?", "¿Cuánto hay en el buche?"),
            Step::Mix => self.pick("Mix", "Preparar la papilla"),
            Step::Warmth => self.pick("Temperature", "Temperatura"),
            Step::DrawUp => self.pick("Draw up", "Llenar"),
            Step::Hold => self.pick("Hold", "Sujetar"),
            Step::Response => self.pick("Does it want food?", "¿Pide comida?"),
            Step::Give => self.pick("Give", "Dar"),
            Step::After => self.pick("After", "Después"),
        }
    }

    /// What a crop feels like that holds so much, below its picture.
    pub const fn crop_state_feel(self, state: CropState) -> &'static str {
        match state {
            CropState::Flat => self.pick("loose skin", "piel suelta"),
            CropState::Trace => self.pick("a soft teaspoon", "una cucharadita blanda"),
            CropState::Quarter => self.pick("soft, a little round", "blando, algo redondo"),
            CropState::HalfOrMore => self.pick("round, still soft", "redondo y blando"),
        }
    }

    /// What is wrong with a mix.
    pub const fn mix_warning(self, warning: MixWarning) -> &'static str {
        match warning {
            MixWarning::TooThin { .. } => self.guide_mix_thin(),
            MixWarning::TooThick { .. } => self.guide_mix_thick(),
            MixWarning::SupplementOverVolumeCap { .. }
            | MixWarning::SupplementOverDryMatterCap { .. } => self.guide_mix_fat_much(),
            MixWarning::SupplementInHighFatPowder { .. } => self.guide_mix_fat_double(),
        }
    }

    /// Why a reading is not taken, and what to do.
    pub const fn cooling_error(self, error: CoolingError) -> &'static str {
        match error {
            CoolingError::SameMoment { .. } => self.pick(
                "Wait a little and measure again: this is the same minute as the last reading.",
                "Espere un poco y mida otra vez: es el mismo minuto que la última medida.",
            ),
            CoolingError::Unchanged { .. } => self.pick(
                "Wait a few minutes and measure again: it reads the same as before.",
                "Espere unos minutos y mida otra vez: marca lo mismo que antes.",
            ),
            CoolingError::NotWarmerThanRoom { .. } | CoolingError::CrossesRoom { .. } => self.pick(
                "Check both numbers: the cup cannot be colder than the room.",
                "Revise los dos números: el vaso no puede estar más frío que la habitación.",
            ),
            CoolingError::NotANumber
            | CoolingError::WrongOrder { .. }
            | CoolingError::MovesAway { .. }
            | CoolingError::HalfTime { .. }
            | CoolingError::NeverReached { .. } => self.pick(
                "Measure again: these readings do not fit together.",
                "Mida otra vez: estas medidas no encajan.",
            ),
        }
    }
}

impl Writing {
    /// What a reading of the cup means, and what to do.
    pub fn serving_verdict(self, verdict: ServingVerdict) -> String {
        let say = self.language;
        let words = match verdict {
            ServingVerdict::TooCold => {
                let lead = say.pick(
                    "Too cold: it slows the crop. Warm it in a bath now, or throw it away and mix fresh.",
                    "Demasiado fría: el buche se vacía más despacio. Caliéntela ya al baño maría, o tírela y prepare otra.",
                );
                return format!("{lead} {}", self.bath());
            }
            ServingVerdict::Good => say.pick("Good to feed.", "Se puede dar."),
            ServingVerdict::Amber => say.pick(
                "Not yet: stir, wait a little, measure again.",
                "Aún no: remueva, espere un poco y mida otra vez.",
            ),
            ServingVerdict::TooHot => say.pick(
                "Too hot: do not feed. Let it cool, stir, measure again.",
                "Demasiado caliente: no la dé. Deje que se enfríe, remueva y mida otra vez.",
            ),
            ServingVerdict::BurnDanger => say.pick(
                "DO NOT FEED: this burns the crop. Let it cool, stir, measure again.",
                "NO LA DÉ: quema el buche. Deje que se enfríe, remueva y mida otra vez.",
            ),
        };
        words.to_owned()
    }

    /// How a cup is warmed in a bath.
    pub fn bath(self) -> String {
        let degrees = |celsius: f64| self.degrees(Celsius::tenths_held(rounded(celsius * 10.0)));
        let (bath, most) = (degrees(BATH_C), degrees(BATH_AT_MOST_C));
        match self.language {
            Language::English => format!(
                "Warm bath: stand the cup in water at {bath}, never above {most}. Then stir and measure again, in the middle and at the edge."
            ),
            Language::Spanish => format!(
                "Baño maría: ponga el vaso en agua a {bath}, nunca a más de {most}. Después remueva y mida otra vez, en el centro y en el borde."
            ),
        }
    }

    /// The plan's serving window without its unit: "39.0–40.5".
    pub fn aim_numbers(self, serving: Serving) -> String {
        let number =
            |celsius: f64| self.temperature_number(Celsius::tenths_held(rounded(celsius * 10.0)));
        format!("{}–{}", number(serving.from_c), number(serving.to_c))
    }

    /// From which temperature the crop is burnt, below the scale.
    pub fn burns_from(self) -> String {
        let burns = self.temperature_number(Celsius::tenths_held(rounded(BURN_C * 10.0)));
        match self.language {
            Language::English => format!("burns from {burns}"),
            Language::Spanish => format!("quema desde {burns}"),
        }
    }

    /// When the cup was measured.
    pub fn measured_at(self, time: WallTime) -> String {
        let time = self.the_time(time);
        match self.language {
            Language::English => format!("Measured {time}"),
            Language::Spanish => format!("Medida a {time}"),
        }
    }

    /// When the cup is ready and until when it may be fed, in minutes from now.
    pub fn window(self, ready_min: f64, feed_by_min: f64) -> String {
        let ready = self.clock_minutes(ready_min);
        let by = self.clock_minutes(feed_by_min);
        match (self.language, ready_min <= 0.0, feed_by_min <= 0.0) {
            (Language::English, _, true) => "It has cooled too far.".to_owned(),
            (Language::Spanish, _, true) => "Se ha enfriado demasiado.".to_owned(),
            (Language::English, true, false) => format!("Ready. Feed within {by}."),
            (Language::Spanish, true, false) => format!("Lista. Désela antes de que pasen {by}."),
            (Language::English, false, false) => format!("Ready in {ready}, feed before {by}."),
            (Language::Spanish, false, false) => {
                format!("Lista dentro de {ready}; désela antes de que pasen {by}.")
            }
        }
    }

    /// When to measure again after a single reading, in minutes from now: when a quick cup is ready.
    pub fn measure_again(self, ready_min: f64) -> String {
        let ready = self.clock_minutes(ready_min);
        match (self.language, ready_min <= 0.0) {
            (Language::English, true) => "Measure again now.".to_owned(),
            (Language::Spanish, true) => "Mida otra vez ya.".to_owned(),
            (Language::English, false) => format!("Measure again in about {ready}."),
            (Language::Spanish, false) => format!("Mida otra vez dentro de unos {ready}."),
        }
    }

    /// Minutes and seconds: `3:20 min`.
    pub fn clock_minutes(self, minutes: f64) -> String {
        let seconds = crate::domain::quantity::count::whole(minutes * 60.0).max(0);
        format!("{}:{:02}\u{a0}min", seconds / 60, seconds % 60)
    }

    /// What was given of what was offered.
    pub fn given_of(self, given: Millilitres, offered: Millilitres) -> String {
        let (given, offered) = (self.volume(given), self.volume(offered));
        match self.language {
            Language::English => format!("{given} of {offered} given"),
            Language::Spanish => format!("{given} de {offered} dados"),
        }
    }

    /// The plan's water, and how warm the mix starts with this powder and cup.
    pub fn mix_starts(self, water: Celsius, mix_c: f64, serving: Serving) -> String {
        let held = |celsius: f64| Celsius::tenths_held(rounded(celsius * 10.0));
        let window = self.warmth(held(serving.from_c), held(serving.to_c));
        let (water, mix) = (self.temperature(water), self.temperature(held(mix_c)));
        match (self.language, serving.verdict(mix_c)) {
            (Language::English, ServingVerdict::TooCold) => format!(
                "First warm the cup: fill it with hot water, wait a minute, pour that water away. Then mix with water at {water}, never hotter. In a cold cup the mix would start at about {mix}, colder than it is fed ({window})."
            ),
            (Language::Spanish, ServingVerdict::TooCold) => format!(
                "Caliente antes el vaso: llénelo de agua caliente, espere un minuto y tire esa agua. Luego prepare la papilla con agua a {water}, nunca más caliente. En un vaso frío empezaría a unos {mix}, por debajo de lo que se da ({window})."
            ),
            (Language::English, ServingVerdict::Good) => {
                format!("Water at {water}. The mix starts at about {mix}.")
            }
            (Language::Spanish, ServingVerdict::Good) => {
                format!("Agua a {water}. La papilla empieza a unos {mix}.")
            }
            (
                Language::English,
                ServingVerdict::Amber | ServingVerdict::TooHot | ServingVerdict::BurnDanger,
            ) => {
                format!("Water at {water}. The mix starts at about {mix}: let it cool to {window}.")
            }
            (
                Language::Spanish,
                ServingVerdict::Amber | ServingVerdict::TooHot | ServingVerdict::BurnDanger,
            ) => format!(
                "Agua a {water}. La papilla empieza a unos {mix}: deje que se enfríe hasta {window}."
            ),
        }
    }

    /// What rounding to the scale does to the share of powder; `None` when nothing of it can be read.
    pub fn scale_error(self, share_pct: f64, error_pct: f64) -> Option<String> {
        if rounded(error_pct * 10.0) == 0 {
            return None;
        }
        let share = self.pct(share_pct);
        let error = self.pct(error_pct.abs());
        Some(match (self.language, error_pct < 0.0) {
            (Language::English, false) => {
                format!("On a 1 g scale that is {share} powder, {error} more than planned.")
            }
            (Language::English, true) => {
                format!("On a 1 g scale that is {share} powder, {error} less than planned.")
            }
            (Language::Spanish, false) => {
                format!("En una báscula de 1 g es {share} de polvo, {error} más de lo previsto.")
            }
            (Language::Spanish, true) => {
                format!("En una báscula de 1 g es {share} de polvo, {error} menos de lo previsto.")
            }
        })
    }

    /// Why there is more in the cup than is fed.
    pub fn enough_for(self, volume: Millilitres, allowance: Millilitres) -> String {
        let (volume, allowance) = (self.volume(volume), self.volume(allowance));
        match self.language {
            Language::English => {
                format!(
                    "Enough for {volume}, and {allowance} more for what stays in cup and syringe."
                )
            }
            Language::Spanish => {
                format!(
                    "Alcanza para {volume} y {allowance} más por lo que queda en el vaso y la jeringa."
                )
            }
        }
    }

    /// When it was mixed and until when it may be given.
    pub fn mix_keeps(self, mixed: WallTime, until: WallTime) -> String {
        let (mixed, until) = (self.the_time(mixed), self.the_time(until));
        match self.language {
            Language::English => format!("Mixed at {mixed}. Throw it away at {until}."),
            Language::Spanish => format!("Preparada a {mixed}. Tírela a {until}."),
        }
    }

    /// The answer to a slip of the unit: in the other unit as it was typed, and as it is taken.
    pub fn slip_yes(self, taken: Celsius) -> String {
        let (tenths, unit) = match self.temperature {
            TemperatureUnit::Celsius => (taken.tenths_fahrenheit(), "°F"),
            TemperatureUnit::Fahrenheit => (taken.tenths(), "°C"),
        };
        let (typed, taken) = (self.tenths(tenths), self.temperature(taken));
        match self.language {
            Language::English => format!("Yes, {typed}\u{a0}{unit} ({taken})"),
            Language::Spanish => format!("Sí, {typed}\u{a0}{unit} ({taken})"),
        }
    }

    /// The way back from a draw that was counted wrongly.
    pub fn take_back(self, draw: Millilitres) -> String {
        let draw = self.volume(draw);
        match self.language {
            Language::English => format!("Do not count the last {draw}"),
            Language::Spanish => format!("No contar los últimos {draw}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::words::guide::*;

    fn writing(temperature: TemperatureUnit) -> Writing {
        Writing {
            temperature,
            ..Writing::metric(Language::English)
        }
    }

    #[test]
    fn a_cup_that_cools_the_mix_too_far_is_warmed_and_the_water_gets_no_hotter() {
        let serving = Serving {
            from_c: 39.0,
            to_c: 40.5,
        };
        let said = |mix_c| {
            let english = writing(TemperatureUnit::Celsius);
            let said = english.mix_starts(Celsius::whole(44), mix_c, serving);
            said.replace('\u{a0}', " ")
        };
        assert!(
            said(38.9).starts_with("First warm the cup"),
            "{}",
            said(38.9)
        );
        assert!(
            said(38.9).contains("water at 44.0 °C, never hotter"),
            "{}",
            said(38.9)
        );
        let good = "Water at 44.0 °C. The mix starts at about 39.0 °C.";
        assert_eq!(said(39.0), good);
        assert!(
            said(40.6).ends_with("let it cool to 39.0–40.5 °C."),
            "{}",
            said(40.6)
        );
    }

    #[test]
    fn a_cold_cup_is_warmed_in_a_bath_that_cannot_burn() {
        let said = writing(TemperatureUnit::Celsius).serving_verdict(ServingVerdict::TooCold);
        let said = said.replace('\u{a0}', " ");
        assert!(said.contains("at 42 °C, never above 43 °C"), "{said}");
    }

    #[test]
    fn a_slip_is_answered_in_both_units() {
        // 40 x 1.8 + 32 = 104
        let yes = |unit| {
            writing(unit)
                .slip_yes(Celsius::whole(40))
                .replace('\u{a0}', " ")
        };
        assert_eq!(yes(TemperatureUnit::Celsius), "Yes, 104 °F (40.0 °C)");
        assert_eq!(yes(TemperatureUnit::Fahrenheit), "Yes, 40 °C (104.0 °F)");
    }

    #[test]
    fn an_error_of_the_scale_too_small_to_be_read_is_not_told() {
        let told = |error| writing(TemperatureUnit::Celsius).scale_error(25.0, error);
        assert_eq!([told(0.0), told(0.049), told(-0.049)], [None, None, None]);
        assert!(told(0.05).unwrap().contains("0.1\u{a0}% more"));
        assert!(told(-0.05).unwrap().contains("0.1\u{a0}% less"));
    }
}

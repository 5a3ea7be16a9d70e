//! The feed guide: one sentence a step, and what to look for.

use crate::domain::formula::cooling::CoolingError;
use crate::domain::formula::nutrition::MixWarning;
use crate::domain::formula::serving_heat::{Serving, ServingVerdict, TemperatureUnit};
use crate::domain::instruction::feed_session::Step;
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
    guide_wait_hint: "Everything stays as it is. Mixed food is thrown away after an hour.", "Todo queda como está. La mezcla se tira al cabo de una hora.";
    guide_leave: "Leave this feed out", "Saltar esta toma";
    guide_go_on: "Go on feeding", "Seguir con la toma";
    guide_anew: "Begin anew", "Empezar de nuevo";
    guide_stale: "More than an hour has passed since this was mixed. Throw the mix away and begin anew.", "Ha pasado más de una hora desde la mezcla. Tírela y empiece de nuevo.";

    guide_crop_look: "Look and feel gently: how much is in the crop?", "Mire y palpe con suavidad: ¿cuánto hay en el buche?";
    guide_look_again: "Look at the crop again", "Mirar el buche otra vez";
    guide_crop_cold: "Warm, bright, breathing quietly? If not, do not feed: tap Stop.", "¿Caliente, despierto, respira tranquilo? Si no, no dé la toma: toque Parar.";

    guide_mix_lead: "Weigh into the cup, water first. Dissolve a fat supplement in the warm water.", "Pese en la taza, primero el agua. Disuelva el suplemento graso en el agua caliente.";
    guide_mix_powder: "Powder", "Polvo";
    guide_mix_water: "Water", "Agua";
    guide_mix_fat: "Fat supplement", "Suplemento graso";
    guide_mix_spoons: "level spoons", "cucharas rasas";
    guide_mix_half: "and a half", "y media";
    guide_mix_water_at: "Water at about", "Agua a unos";
    guide_mix_no_microwave: "No microwave: it leaves hot spots that burn. Stir well and measure in several places.", "Sin microondas: deja puntos que queman. Remueva bien y mida en varios sitios.";
    guide_mix_thin: "This is thin for a feathered chick (below 18 % powder). Ask your breeder.", "Es claro para un pollo emplumado (menos de 18 % de polvo). Pregunte a su criador.";
    guide_mix_thick: "This is thick (above 33 % powder): it slows the crop. Ask your breeder.", "Es espeso (más de 33 % de polvo): frena el buche. Pregunte a su criador.";
    guide_mix_fat_much: "More fat supplement than the cap of 2.5 g in 100 ml (ours). Only if breeder or vet asked for it.", "Más suplemento graso que el tope de 2,5 g en 100 ml (nuestro). Solo si lo pidió el criador o el veterinario.";
    guide_mix_fat_double: "The powder is high in fat already. Ask your breeder before you add a fat supplement.", "El polvo ya es rico en grasa. Pregunte a su criador antes de añadir un suplemento graso.";
    guide_mixed: "It is mixed", "Ya está mezclado";

    guide_warm_lead: "Stir, measure in the cup, type what the thermometer says.", "Remueva, mida en la taza y escriba lo que dice el termómetro.";
    guide_warm_field: "Thermometer", "Termómetro";
    guide_warm_implausible: "That is no temperature of a cup of formula. Check the number and the unit.", "Esa no es la temperatura de una taza de papilla. Revise el número y la unidad.";
    guide_warm_measured: "Measured", "Medido";
    guide_warm_bath: "The cup is in a warm bath", "La taza está en un baño caliente";
    guide_warm_now: "about now", "ahora unos";
    guide_warm_slip: "Did you mean", "¿Quiso decir";
    guide_heat_old: "The cup was measured more than five minutes ago. Measure it again before you give it.", "La taza se midió hace más de cinco minutos. Mídala otra vez antes de darla.";
    guide_given_already: "Given already: note it", "Ya dada: anótela";
    guide_heat_again: "Measure again", "Medir otra vez";
    guide_see_why: "See why", "Ver por qué";
    guide_warmer: "It is warmer than before, so only this reading counts. Stir, then measure again in several places.", "Está más caliente que antes: solo vale esta medida. Remueva y mida otra vez en varios sitios.";
    guide_warm_tip: "Measure once more at the syringe tip before you feed.", "Mida otra vez en la punta de la jeringa antes de dar.";

    guide_draw_lead: "Fill from the same cup. The largest first, no air.", "Llene de la misma taza. Primero la mayor, sin aire.";
    guide_draw_small_hand: "For a small hand", "Para una mano pequeña";

    guide_hold_lead: "Support head and neck from behind. Come from the bird's left side of the beak, point toward its right. Do not push on the upper beak.", "Sujete cabeza y cuello por detrás. Entre por el lado izquierdo del pico del ave, apuntando a su derecha. No empuje el pico superior.";
    guide_hold_ready: "It stands well", "Está bien colocado";

    guide_response_lead: "Touch the corners of the beak with warm fingers. Does it bob and swallow?", "Toque las comisuras del pico con dedos calientes. ¿Cabecea y traga?";
    guide_response_yes: "Yes, it bobs", "Sí, cabecea";
    guide_response_no: "No, it does not want", "No, no quiere";
    guide_response_never: "No response, no food. Never push food into a chick that does not bob.", "Sin respuesta, sin comida. Nunca empuje comida a un pollo que no cabecea.";

    guide_give_lead: "Small pushes in time with the bobs. Stop at once when it stops bobbing, coughs, or food shows at the nostrils.", "Empujones pequeños al ritmo del cabeceo. Pare en seco si deja de cabecear, tose o sale comida por las narinas.";
    guide_give_done: "Enough", "Basta";
    guide_given: "given", "dados";

    guide_after_lead: "Put it back warm and leave it alone: no handling with a full crop. A swallow or two, a head shake and a sleepy chick are normal.", "Déjelo caliente y tranquilo: nada de manoseo con el buche lleno. Tragar, sacudir la cabeza y dormirse es normal.";
    guide_after_not: "Not normal: clicking, gasping, bubbles at the nostrils, blue. Then tap Stop and Something's wrong.", "No es normal: chasquidos, jadeo, burbujas en las narinas, color azul. Entonces toque Parar y Algo va mal.";
    guide_after_throw: "Throw the rest away. Wash the tools hot, disinfect, rinse, dry.", "Tire lo que sobra. Lave los utensilios con agua caliente, desinfecte, aclare y seque.";
    guide_after_log: "Log this feed", "Anotar esta toma";
}

impl Language {
    /// A step's heading.
    pub const fn guide_step(self, step: Step) -> &'static str {
        match step {
            Step::Crop => self.pick("How full is the crop?", "¿Cómo está el buche?"),
            Step::Mix => self.pick("Mix", "Mezclar"),
            Step::Warmth => self.pick("Temperature", "Temperatura"),
            Step::DrawUp => self.pick("Draw up", "Cargar"),
            Step::Hold => self.pick("Hold", "Sujetar"),
            Step::Response => self.pick("Feeding response?", "¿Responde?"),
            Step::Give => self.pick("Give", "Dar"),
            Step::After => self.pick("After", "Después"),
        }
    }

    /// What a reading of the cup means, and what to do.
    pub const fn serving_verdict(self, verdict: ServingVerdict) -> &'static str {
        match verdict {
            ServingVerdict::TooCold => self.pick(
                "Too cold: it slows the crop. Warm the cup in a bath of at most 43 °C within this feed, or throw it away and mix fresh.",
                "Demasiado fría: frena el buche. Caliente la taza en un baño de 43 °C como mucho dentro de esta toma, o tírela y mezcle de nuevo.",
            ),
            ServingVerdict::Good => self.pick("Good to feed.", "Bien para dar."),
            ServingVerdict::Amber => self.pick(
                "Not yet: stir, wait a little, measure again.",
                "Aún no: remueva, espere un poco y mida otra vez.",
            ),
            ServingVerdict::TooHot => self.pick(
                "Too hot to feed. Let it cool, stir, measure again.",
                "Demasiado caliente. Deje que enfríe, remueva y mida otra vez.",
            ),
            ServingVerdict::BurnDanger => self.pick(
                "BURNS: at this heat formula burns the crop. Do not feed. Let it cool.",
                "QUEMA: a este calor la mezcla quema el buche. No la dé. Deje que enfríe.",
            ),
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
                "That is the same minute as the last reading. Wait a little and measure again.",
                "Es el mismo momento que la última medida. Espere un poco y mida otra vez.",
            ),
            CoolingError::Unchanged { .. } => self.pick(
                "It reads the same as before. Wait a few minutes and measure again.",
                "Marca lo mismo que antes. Espere unos minutos y mida otra vez.",
            ),
            CoolingError::NotWarmerThanRoom { .. } | CoolingError::CrossesRoom { .. } => self.pick(
                "The cup cannot be colder than the room. Check both numbers.",
                "La taza no puede estar más fría que la sala. Revise los dos números.",
            ),
            CoolingError::NotANumber
            | CoolingError::WrongOrder { .. }
            | CoolingError::MovesAway { .. }
            | CoolingError::HalfTime { .. }
            | CoolingError::NeverReached { .. } => self.pick(
                "These readings do not fit together. Measure again.",
                "Estas medidas no encajan. Mida otra vez.",
            ),
        }
    }
}

impl Writing {
    /// The plan's serving window: "Aim for 39.0–40.5 °C".
    pub fn aim_for(self, serving: Serving) -> String {
        let held = |celsius: f64| Celsius::tenths_held(rounded(celsius * 10.0));
        let window = self.warmth(held(serving.from_c), held(serving.to_c));
        match self.language {
            Language::English => format!("Aim for {window}"),
            Language::Spanish => format!("Busque {window}"),
        }
    }

    /// When the cup is ready and until when it may be fed, in minutes from now.
    pub fn window(self, ready_min: f64, feed_by_min: f64) -> String {
        let ready = self.clock_minutes(ready_min);
        let by = self.clock_minutes(feed_by_min);
        match (self.language, ready_min <= 0.0, feed_by_min <= 0.0) {
            (Language::English, _, true) => "The window is over.".to_owned(),
            (Language::Spanish, _, true) => "La ventana ha pasado.".to_owned(),
            (Language::English, true, false) => format!("Ready. Feed within {by}."),
            (Language::Spanish, true, false) => format!("Lista. Dar en {by}."),
            (Language::English, false, false) => format!("Ready in {ready}, feed before {by}."),
            (Language::Spanish, false, false) => format!("Lista en {ready}, dar antes de {by}."),
        }
    }

    /// When to measure again after a single reading, in minutes from now: when a quick cup is ready.
    pub fn measure_again(self, ready_min: f64) -> String {
        let ready = self.clock_minutes(ready_min);
        match (self.language, ready_min <= 0.0) {
            (Language::English, true) => "Measure again now.".to_owned(),
            (Language::Spanish, true) => "Mida otra vez ahora.".to_owned(),
            (Language::English, false) => format!("Measure again in about {ready}."),
            (Language::Spanish, false) => format!("Mida otra vez en unos {ready}."),
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

    /// The water's temperature for the mix to land in the window.
    pub fn water_at(self, water: Celsius) -> String {
        format!(
            "{} {}",
            self.language.guide_mix_water_at(),
            self.temperature(water)
        )
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
                format!("Enough for {volume} plus {allowance} for what stays in cup and syringe.")
            }
            Language::Spanish => {
                format!("Basta para {volume} más {allowance} por lo que queda en taza y jeringa.")
            }
        }
    }

    /// When it was mixed and until when it may be given.
    pub fn mix_keeps(self, mixed: WallTime, until: WallTime) -> String {
        let (mixed, until) = (self.time(mixed), self.time(until));
        match self.language {
            Language::English => format!("Mixed at {mixed}. Throw it away at {until}."),
            Language::Spanish => format!("Mezclado a las {mixed}. Tírelo a las {until}."),
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
            Language::English => format!("Take back the last {draw}"),
            Language::Spanish => format!("Retirar los últimos {draw}"),
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

//! What the mix is reckoned with, and what a day of it holds.

use crate::domain::formula::day_energy::DayEnergy;
use crate::domain::formula::heat_balance::{CupStuff, WARMEST_WATER_C};
use crate::domain::formula::mixing::{MixError, SUPPLEMENT_G_PER_100_ML, TEN_SPOONS_G};
use crate::domain::formula::powder::{FAT_PCT, KCAL_PER_100_G, PROTEIN_PCT, PowderError};
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Celsius;
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    mix_cup: "A cold cup takes heat too", "La taza fría también quita calor";
    mix_cup_mass: "Empty cup", "Taza vacía";
    mix_cup_hint: "Weigh it once. Only the temperature of the water changes.", "Pésela una vez. Solo cambia la temperatura del agua.";
    mix_cup_stuff: "Made of", "De qué es";
    plan_room_from: "Room from", "Habitación desde";
    plan_room_to: "Room up to", "Habitación hasta";
    plan_spoons: "Powder in ten level spoons", "Polvo en diez cucharas rasas";
    plan_spoons_hint: "Weigh ten once, without the cup; then the guide counts spoons too.", "Pese diez una vez, sin la taza; así la guía cuenta también cucharas.";
    plan_label_energy: "Powder label: energy in 100 g", "Etiqueta del polvo: energía en 100 g";
    plan_label_fat: "Powder label: fat", "Etiqueta del polvo: grasa";
    plan_label_protein: "Powder label: protein", "Etiqueta del polvo: proteína";
}

impl Language {
    /// What a cup may be made of, in the order of the domain's list.
    pub fn cup_stuffs(self) -> Vec<&'static str> {
        let name = |stuff| match stuff {
            CupStuff::Plastic => self.pick("plastic", "plástico"),
            CupStuff::GlassOrChina => self.pick("glass or china", "vidrio o loza"),
            CupStuff::Steel => self.pick("steel", "acero"),
        };
        CupStuff::ALL.into_iter().map(name).collect()
    }
}

impl Writing {
    /// The water cannot be hot enough for this cup.
    pub fn water_too_hot(self) -> String {
        let warmest = self.temperature(Celsius::tenths_held(rounded(WARMEST_WATER_C * 10.0)));
        match self.language {
            Language::English => format!(
                "This cup would need water above {warmest}. Warm it first with hot water, pour that \
                 away, and use a light cup."
            ),
            Language::Spanish => format!(
                "Esta taza pediría agua a más de {warmest}. Caliéntela antes con agua caliente, \
                 tírela y use una taza ligera."
            ),
        }
    }

    /// What a day's feeds hold beside the textbook band: to see a slip, not to feed by.
    pub fn day_energy(self, day: DayEnergy) -> String {
        let (volume, kcal, (low, high)) = (self.volume(day.volume), day.kcal, day.growth_kcal);
        let powder = if day.has_label {
            self.language
                .pick("by the powder's label", "según la etiqueta del polvo")
        } else {
            self.language
                .pick("with a usual powder", "con un polvo corriente")
        };
        match self.language {
            Language::English => format!(
                "The day's {volume} hold about {kcal}\u{a0}kcal {powder}; the textbook growth band \
                 is {low}–{high}. A check of plan and label, not an order: the chick and its crop \
                 decide."
            ),
            Language::Spanish => format!(
                "Los {volume} del día tienen unas {kcal}\u{a0}kcal {powder}; la banda de \
                 crecimiento de los libros es {low}–{high}. Sirve para revisar plan y etiqueta, no \
                 es una orden: deciden el pollo y su buche."
            ),
        }
    }

    /// A part of the mix that was not taken, with the range it must lie in.
    pub fn mix_error(self, error: MixError) -> String {
        match error {
            MixError::TenSpoons { .. } => {
                let (low, high) = whole(TEN_SPOONS_G);
                match self.language {
                    Language::English => format!(
                        "Ten level spoons of powder weigh {low} to {high} g. Was it one spoon, or \
                         the cup too?"
                    ),
                    Language::Spanish => format!(
                        "Diez cucharas rasas de polvo pesan de {low} a {high} g. ¿Era una sola, o \
                         con la taza?"
                    ),
                }
            }
            MixError::Supplement { .. } => {
                let (low, high) = whole(SUPPLEMENT_G_PER_100_ML);
                match self.language {
                    Language::English => {
                        format!("Please type {low} to {high} g in 100 ml of mix.")
                    }
                    Language::Spanish => {
                        format!("Escriba de {low} a {high} g en 100 ml de mezcla.")
                    }
                }
            }
            MixError::Volume { .. }
            | MixError::Allowance { .. }
            | MixError::PowderShare { .. }
            | MixError::BulkDensity { .. }
            | MixError::WaterParts { .. }
            | MixError::NoPowder { .. }
            | MixError::NoWater { .. }
            | MixError::WantedFat { .. } => self
                .language
                .pick(
                    "This cannot be mixed. Check the numbers of the plan.",
                    "Esto no se puede mezclar. Revise los números del plan.",
                )
                .to_owned(),
        }
    }

    /// A label that is no powder's.
    pub fn powder_error(self, error: PowderError) -> String {
        let (name, range, unit) = match error {
            PowderError::Energy { .. } => (
                self.language.pick("energy", "energía"),
                KCAL_PER_100_G,
                self.language.pick(
                    "kcal in 100 g; 4.2 kJ are 1 kcal",
                    "kcal en 100 g; 4,2 kJ son 1 kcal",
                ),
            ),
            PowderError::Fat { .. } => (self.language.pick("fat", "grasa"), FAT_PCT, "%"),
            PowderError::Protein { .. } => {
                (self.language.pick("protein", "proteína"), PROTEIN_PCT, "%")
            }
        };
        let (low, high) = whole(range);
        match self.language {
            Language::English => {
                format!("A powder's label gives {name} from {low} to {high} {unit}.")
            }
            Language::Spanish => {
                format!("Una etiqueta de polvo da {name} de {low} a {high} {unit}.")
            }
        }
    }
}

fn whole((low, high): (f64, f64)) -> (i32, i32) {
    (rounded(low), rounded(high))
}

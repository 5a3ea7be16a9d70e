//! What is wrong with typed text, a plan or an entry, in one sentence beside its field.

use crate::domain::journal::entries::Refusal;
use crate::domain::plan::care_plan::PlanFault;
use crate::domain::quantity::units::NumberError;
use crate::words::Language;
use crate::words::format::Writing;

impl Writing {
    /// A number that was not taken, with the range it must lie in.
    pub fn number_error(self, error: NumberError) -> String {
        match error {
            NumberError::Empty => self
                .language
                .pick("Type a number.", "Escriba un número.")
                .to_owned(),
            NumberError::NotANumber => self
                .language
                .pick(
                    "Type digits only, such as 84.5.",
                    "Escriba solo cifras, como 84,5.",
                )
                .to_owned(),
            NumberError::BothSigns => self
                .language
                .pick(
                    "Use either a point or a comma, not both.",
                    "Use un punto o una coma, no los dos.",
                )
                .to_owned(),
            NumberError::Negative => self
                .language
                .pick(
                    "Type a number that is not below zero.",
                    "Escriba un número que no sea menor que cero.",
                )
                .to_owned(),
            NumberError::ThousandsOrDecimals => self
                .language
                .pick(
                    "Leave the point or comma out: 1012. For decimals write 1.0.",
                    "Quite el punto o la coma: 1012. Para decimales escriba 1,0.",
                )
                .to_owned(),
            NumberError::OutOfRange(range) => {
                let (low, high) = (self.tenths(range.low), self.tenths(range.high));
                match self.language {
                    Language::English => format!("Type a number from {low} to {high}."),
                    Language::Spanish => format!("Escriba un número de {low} a {high}."),
                }
            }
        }
    }
}

impl Language {
    /// An entry that was not taken.
    pub fn refusal(self, refusal: &Refusal) -> &'static str {
        match refusal {
            Refusal::InTheFuture => self.pick(
                "Check day and time: that is in the future.",
                "Revise día y hora: todavía no ha llegado.",
            ),
            Refusal::BeforeHatching => self.pick(
                "Check the day: that is before the chick hatched.",
                "Revise el día: es antes de que naciera el polluelo.",
            ),
            Refusal::NoSuchChick => self.pick(
                "That chick is not on this phone.",
                "Ese polluelo no está en este teléfono.",
            ),
            Refusal::ChickIsThere => self.pick(
                "This chick is on this phone already.",
                "Este polluelo ya está en este teléfono.",
            ),
            Refusal::NoSuchEntry => self.pick(
                "That entry is not in this journal.",
                "Esa anotación no está en este diario.",
            ),
            Refusal::ChickStays => self.pick(
                "This entry added the chick: it cannot be undone.",
                "Esta anotación añadió el polluelo: no se puede deshacer.",
            ),
            Refusal::PlanIsNewer => self.pick(
                "Undo the later change of the plan first.",
                "Deshaga antes el cambio posterior del plan.",
            ),
            Refusal::NotTyped => self.pick(
                "Two cards are two birds: only a chick that was typed in, without a card, can be joined to a card.",
                "Dos fichas son dos polluelos: solo uno añadido a mano, sin ficha, se puede unir a una ficha.",
            ),
            Refusal::AskTheBreeder => self.pick(
                "Ask the breeder first, or note what the breeder said on the telephone.",
                "Pregunte antes al criador, o anote lo que dijo por teléfono.",
            ),
            Refusal::WeightOutOfRange => self.pick(
                "Check the number and the unit: a chick weighs from 5 to 3000 g.",
                "Revise el número y la unidad: un polluelo pesa de 5 a 3000 g.",
            ),
            Refusal::VolumeOutOfRange => self.pick(
                "Check the number: one feed is never more than 300 ml.",
                "Revise el número: una toma nunca pasa de 300 ml.",
            ),
            Refusal::MoreTakenThanOffered => self.pick(
                "Check the two numbers: it cannot take more than you offered.",
                "Revise los dos números: no puede tomar más de lo que le ofreció.",
            ),
            Refusal::PhotoSize => self.pick(
                "This picture is empty or too large.",
                "Esta imagen está vacía o es demasiado grande.",
            ),
            Refusal::TextTooLong => self.pick(
                "Shorten the text: at most 1000 characters.",
                "Acorte el texto: como máximo 1000 caracteres.",
            ),
            Refusal::Plan(faults) => faults.first().map_or("", |fault| self.plan_fault(*fault)),
        }
    }

    /// A plan that was not taken.
    pub const fn plan_fault(self, fault: PlanFault) -> &'static str {
        match fault {
            PlanFault::TooManyFeeds => self.pick("Type at most six feeds a day.", "Escriba como máximo seis tomas al día."),
            PlanFault::SlotTwice => self.pick("This feed is listed twice.", "Esta toma aparece dos veces."),
            PlanFault::FeedsOutOfOrder => self.pick("Check the times: the feeds must follow each other through the day.", "Revise las horas: las tomas deben ir en orden a lo largo del día."),
            PlanFault::FeedVolume => self.pick("A feed is from 0.5 to 300 ml.", "Una toma es de 0,5 a 300 ml."),
            PlanFault::WindowUpsideDown => self.pick("The lowest serving temperature must be below the highest.", "La temperatura mínima debe estar por debajo de la máxima."),
            PlanFault::WindowOutside => self.pick("Serve within 37 to 41 °C (98.6 to 105.8 °F): cooler formula slows the crop, hotter formula can burn it. The water to mix with may be hotter.", "Dé la papilla entre 37 y 41 °C (98,6 y 105,8 °F): más fría, el buche se vacía más despacio; más caliente, puede quemarlo. El agua para prepararla puede estar más caliente."),
            PlanFault::WaterTooHot => self.pick("Type at most 50 °C (122 °F, our own limit): with hotter water the mix starts above what burns the crop.", "Escriba como máximo 50 °C (122 °F, valor propio): con agua más caliente, la papilla recién hecha está tan caliente que quema el buche."),
            PlanFault::RoomUpsideDown => self.pick("The lowest room temperature must be below the highest.", "La temperatura mínima de la habitación debe estar por debajo de la máxima."),
            PlanFault::SyringeTooSmall => self.pick("A syringe holds at least 1 ml.", "Una jeringa tiene al menos 1 ml."),
            PlanFault::LossLimit => self.pick("The weight loss must be from 3 to 15 %.", "La pérdida de peso debe ser de 3 a 15 %."),
            PlanFault::Waits => self.pick("Waits last from 1 minute to 24 hours. Type at most four, each longer than the one before.", "Las esperas duran de 1 minuto a 24 horas. Escriba como máximo cuatro, cada una más larga que la anterior."),
            PlanFault::ContactNumber => self.pick("Type only digits, with a + in front if you like, such as +1 555 0100.", "Escriba solo cifras, con un + delante si quiere, como +1 555 0100."),
            PlanFault::TextTooLong => self.pick("Shorten the text: at most 60 characters for names, 1000 for notes.", "Acorte el texto: como máximo 60 caracteres para nombres, 1000 para notas."),
        }
    }
}

texts! {
    fault_file: "This file is too large, or is not text.", "Este archivo es demasiado grande o no es texto.";
    fault_species_needed: "Choose the species.", "Elija la especie.";
    fault_name_needed: "Give the chick a name.", "Dé un nombre al polluelo.";
    fault_no_date: "Choose a day.", "Elija un día.";
    fault_no_time: "Type a time of day, such as 21:00.", "Escriba una hora, como 21:00.";
    fault_day_ahead: "Check the day: it is in the future.", "Revise el día: todavía no ha llegado.";
    fault_hatched_long_ago: "Check the year: that is more than two years ago.", "Revise el año: fue hace más de dos años.";
    fault_weighed_before_hatching: "Check the day: that is before it hatched.", "Revise el día: es antes de que naciera.";
    fault_no_feeds: "Give at least one feed with its time.", "Indique al menos una toma con su hora.";
    fault_days: "Type a whole number of days from 0 to 60.", "Escriba un número entero de días, de 0 a 60.";
    fault_count: "Type a whole number from 0 to 255.", "Escriba un número entero, de 0 a 255.";
    fault_look_above: "Look above: something is missing or not right. It is marked.", "Mire arriba: falta algo o no está bien. Está marcado.";
    fault_choose: "Choose one.", "Elija una opción.";
    fault_text_needed: "Write something first.", "Escriba algo primero.";
}

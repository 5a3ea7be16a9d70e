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
                .pick("Please type a number.", "Escriba un número.")
                .to_owned(),
            NumberError::NotANumber => self
                .language
                .pick(
                    "That is not a number. Digits only, such as 84.5.",
                    "Eso no es un número. Solo cifras, como 84,5.",
                )
                .to_owned(),
            NumberError::BothSigns => self
                .language
                .pick(
                    "Please use either a point or a comma, not both.",
                    "Use un punto o una coma, no los dos.",
                )
                .to_owned(),
            NumberError::Negative => self
                .language
                .pick(
                    "The number must not be below zero.",
                    "El número no puede ser menor que cero.",
                )
                .to_owned(),
            NumberError::ThousandsOrDecimals => self
                .language
                .pick(
                    "That could be thousands or decimals. Leave the sign out: 1012, or write 1.0.",
                    "Eso podrían ser miles o decimales. Quite el signo: 1012, o escriba 1,0.",
                )
                .to_owned(),
            NumberError::OutOfRange(range) => {
                let (low, high) = (self.tenths(range.low), self.tenths(range.high));
                match self.language {
                    Language::English => format!("Please type a number from {low} to {high}."),
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
                "That time is still to come. Check day and time.",
                "Esa hora aún no ha llegado. Revise día y hora.",
            ),
            Refusal::BeforeHatching => self.pick(
                "That is before the chick hatched. Check the day.",
                "Eso es antes de que naciera el pollo. Revise el día.",
            ),
            Refusal::NoSuchChick => self.pick(
                "There is no such chick on this phone.",
                "No hay tal pollo en este teléfono.",
            ),
            Refusal::ChickIsThere => self.pick(
                "This chick is on this phone already.",
                "Este pollo ya está en este teléfono.",
            ),
            Refusal::NoSuchEntry => self.pick(
                "That entry is not in this journal.",
                "Esa anotación no está en este diario.",
            ),
            Refusal::ChickStays => self.pick(
                "What adds a chick cannot be taken back.",
                "Lo que añade un pollo no se puede deshacer.",
            ),
            Refusal::PlanIsNewer => self.pick(
                "The plan was changed again since. Take back the later change first.",
                "El plan se cambió de nuevo después. Deshaga antes el cambio posterior.",
            ),
            Refusal::NotTyped => self.pick(
                "Only a chick that was typed in and has no card can be joined to a card: two cards are two birds.",
                "Solo un pollo escrito a mano y sin tarjeta se puede unir a una tarjeta: dos tarjetas son dos pollos.",
            ),
            Refusal::AskTheBreeder => self.pick(
                "The breeder has to say so first: ask, or note what was said on the telephone.",
                "Antes tiene que decirlo el criador: pregúntele, o anote lo que dijo por teléfono.",
            ),
            Refusal::WeightOutOfRange => self.pick(
                "A chick weighs from 5 to 3000 g. Check the number and the unit.",
                "Un pollo pesa de 5 a 3000 g. Revise el número y la unidad.",
            ),
            Refusal::VolumeOutOfRange => self.pick(
                "One feed holds 300 ml at the very most. Check the number.",
                "Una toma tiene 300 ml como mucho. Revise el número.",
            ),
            Refusal::MoreTakenThanOffered => self.pick(
                "More was taken than was offered. Check the two numbers.",
                "Tomó más de lo ofrecido. Revise los dos números.",
            ),
            Refusal::TextTooLong => self.pick(
                "The text is too long: 1000 characters at most.",
                "El texto es demasiado largo: 1000 caracteres como máximo.",
            ),
            Refusal::Plan(faults) => faults.first().map_or("", |fault| self.plan_fault(*fault)),
        }
    }

    /// A plan that was not taken.
    pub const fn plan_fault(self, fault: PlanFault) -> &'static str {
        match fault {
            PlanFault::TooManyFeeds => self.pick("At most six feeds a day.", "Como máximo seis tomas al día."),
            PlanFault::SlotTwice => self.pick("The same feed stands there twice.", "La misma toma aparece dos veces."),
            PlanFault::FeedsOutOfOrder => self.pick("The feeds must follow each other through the day. Check the times.", "Las tomas deben seguirse a lo largo del día. Revise las horas."),
            PlanFault::FeedVolume => self.pick("A feed holds from 0.5 to 300 ml.", "Una toma tiene de 0,5 a 300 ml."),
            PlanFault::WindowUpsideDown => self.pick("The lowest serving temperature must be below the highest.", "La temperatura mínima debe estar por debajo de la máxima."),
            PlanFault::RoomUpsideDown => self.pick("The lowest room temperature must be below the highest.", "La temperatura mínima de la sala debe estar por debajo de la máxima."),
            PlanFault::SyringeTooSmall => self.pick("A syringe holds at least 1 ml.", "Una jeringa tiene al menos 1 ml."),
            PlanFault::LossLimit => self.pick("The loss limit lies between 3 and 15 %.", "El límite de pérdida está entre 3 y 15 %."),
            PlanFault::Waits => self.pick("A gap and a wait before offering again last from 1 minute to 24 hours, at most four, each longer than the one before.", "Un intervalo y una espera antes de volver a ofrecer duran de 1 minuto a 24 horas, como máximo cuatro, cada una más larga que la anterior."),
            PlanFault::ContactNumber => self.pick("A telephone number has digits only, with a leading + if you like, such as +1 555 0100.", "Un teléfono tiene solo cifras, con un + delante si quiere, como +1 555 0100."),
            PlanFault::TextTooLong => self.pick("A text is too long: 60 characters for names, 1000 for notes.", "Un texto es demasiado largo: 60 caracteres para nombres, 1000 para notas."),
        }
    }
}

texts! {
    fault_file: "The file is too large or cannot be read as text.", "El archivo es demasiado grande o no se puede leer como texto.";
    fault_species_needed: "Please choose the species.", "Elija la especie.";
    fault_name_needed: "Please give the chick a name.", "Dé un nombre al pollo.";
    fault_no_date: "That is no day. Please choose one.", "Eso no es un día. Elija uno.";
    fault_no_time: "That is no time of day, such as 21:00.", "Eso no es una hora, como 21:00.";
    fault_day_ahead: "That day is still to come.", "Ese día aún no ha llegado.";
    fault_hatched_long_ago: "That is more than two years ago. Check the year.", "Eso fue hace más de dos años. Revise el año.";
    fault_weighed_before_hatching: "That is before it hatched.", "Eso es antes de que naciera.";
    fault_no_feeds: "Please give at least one feed with its time.", "Indique al menos una toma con su hora.";
    fault_days: "Please type a whole number of days from 0 to 60.", "Escriba un número entero de días, de 0 a 60.";
    fault_look_above: "Something above is missing or not right; it is marked.", "Arriba falta algo o no está bien; está marcado.";
    fault_choose: "Please choose one.", "Elija una opción.";
    fault_text_needed: "Please write something first.", "Escriba algo primero.";
}

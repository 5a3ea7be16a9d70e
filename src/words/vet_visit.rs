//! Words for calls to a vet, visits and appointments.

use crate::domain::homecoming::vet_visit::{Booked, VetContact, booked};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::time::moment::Lived;
use crate::words::Language;
use crate::words::exchange::labelled;
use crate::words::format::Writing;

impl Writing {
    /// What a vet did for a chick, in the width of a column: "seen Tue 3 Dec", "called Tue 3 Dec".
    pub fn vet_contact(self, contact: VetContact) -> String {
        let say = self.language;
        match contact {
            VetContact::NotHome => "?".to_owned(),
            VetContact::None => say.breeder_no().to_owned(),
            VetContact::Called(day) => format!("{} {}", say.vet_called_short(), self.day(day)),
            VetContact::Seen(day) => format!("{} {}", say.vet_seen_short(), self.day(day)),
        }
    }

    /// When a vet last saw it, and what was said.
    pub fn vet_saw(self, outlook: &Outlook) -> Option<String> {
        let mut visits = outlook.chick.vet_visits.iter().rev();
        let visit = visits.find(|visit| visit.at <= outlook.now)?;
        Some(labelled(&self.lived(visit.lived()), &visit.what))
    }

    /// The appointment that lies ahead.
    pub fn visit_ahead(self, outlook: &Outlook) -> Option<String> {
        let booked = booked(outlook.now, outlook.lived, &outlook.chick)?;
        (!booked.is_past).then(|| self.lived(booked.on))
    }

    /// An appointment: "Vet on Tue 3 Dec, 10:30".
    pub fn visit_booked(self, on: Lived) -> String {
        let (day, time) = (self.day(on.day), self.the_time(on.time));
        match self.language {
            Language::English => format!("Vet on {day}, {time}"),
            Language::Spanish => format!("Veterinario el {day}, a {time}"),
        }
    }

    /// The title of an appointment in the calendar.
    pub fn visit_title(self, plan: &CarePlan) -> String {
        let name = self.calendar_name(plan);
        match self.language {
            Language::English => format!("{name}: vet"),
            Language::Spanish => format!("{name}: veterinario"),
        }
    }

    /// An appointment that is still open, and what is asked once its time has passed.
    pub fn visit_open(self, booked: Booked) -> String {
        let on = self.visit_booked(booked.on);
        let asked = if booked.is_past {
            self.language.vet_was_it_seen()
        } else {
            ""
        };
        format!("{on}. {asked}").trim_end().to_owned()
    }
}

texts! {
    vet_called_short: "called", "llamado el";
    vet_seen_short: "seen", "visto el";
    vet_saw: "Seen by a vet", "Visto por un veterinario";
    vet_was_it_seen: "Did a vet see it?", "¿Lo vio un veterinario?";
    vet_visits: "Visits", "Visitas";
    vet_saw_it: "A vet saw it", "Lo vio un veterinario";
    vet_said: "What did the vet say? (optional)", "¿Qué dijo el veterinario? (opcional)";
    vet_saw_keep: "Note the visit", "Anotar la visita";
    vet_book: "Appointment", "Cita";
    vet_book_keep: "Keep the appointment", "Guardar la cita";
    vet_book_ahead: "An appointment lies ahead. Note a visit that has been as a visit.", "Una cita es para más adelante. Lo que ya fue se anota como visita.";
}

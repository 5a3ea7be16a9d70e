//! Words for the stages of a life, for whoever follows a chick, and for what is asked about both.

use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::journal::entries::Carer;
use crate::domain::time::moment::{Day, Lived};
use crate::domain::warnings::level::Level;
use crate::domain::warnings::placed_state::PlacedState;
use crate::words::Language;
use crate::words::format::Writing;

impl Language {
    /// Rearing and stage, in the order in which a breeder or vet asks for them.
    pub const fn life_stage(self, stage: LifeStage) -> &'static str {
        match stage {
            LifeStage::WithBreeder => self.pick(
                "hand-fed, not weaned, still with its breeder",
                "criado a mano, sin destetar, aún con su criador",
            ),
            LifeStage::OnTheWay => self.pick(
                "hand-fed, not weaned, on its way to its home",
                "criado a mano, sin destetar, de camino a su hogar",
            ),
            LifeStage::SettlingIn | LifeStage::Weaning => {
                self.pick("hand-fed, not weaned", "criado a mano, sin destetar")
            }
            LifeStage::Weaned => self.pick("hand-reared, weaned", "criado a mano, destetado"),
            LifeStage::Grown => self.pick("hand-reared, grown", "criado a mano, adulto"),
            LifeStage::Died => self.pick("hand-reared, died", "criado a mano, muerto"),
        }
    }

    /// Why no feed is next.
    pub const fn no_feed(self, stage: LifeStage) -> &'static str {
        match stage {
            LifeStage::WithBreeder => self.pick(
                "Still with its breeder: no feed is due here.",
                "Aún con su criador: aquí no toca ninguna toma.",
            ),
            LifeStage::OnTheWay | LifeStage::SettlingIn | LifeStage::Weaning => {
                self.pick("No more feeds in the plan.", "No hay más tomas en el plan.")
            }
            LifeStage::Weaned => self.pick(
                "Weaned: no more feeds. Weigh once a week.",
                "Destetado: ya no hay tomas. Pese una vez por semana.",
            ),
            LifeStage::Grown => self.pick("Grown: no more feeds.", "Adulto: ya no hay tomas."),
            LifeStage::Died => self.pick(
                "There are no reminders any more.",
                "Ya no hay recordatorios.",
            ),
        }
    }

    /// Somebody to whom a chick can be handed.
    pub const fn carer(self, to: Carer) -> &'static str {
        match to {
            Carer::Owner => self.pick("its owner, for good", "su dueño, para siempre"),
            Carer::Breeder => self.pick("its breeder", "su criador"),
            Carer::Sitter => self.pick("a sitter, for some days", "un cuidador, por unos días"),
            Carer::Clinic => self.pick("a clinic, for some days", "una clínica, por unos días"),
        }
    }
}

impl Writing {
    /// How a placed chick is: its level, the level of the day on which it was last heard of, or silence.
    pub fn placed_state(self, state: PlacedState) -> String {
        let say = self.language;
        match state {
            PlacedState::Now(level) => say.level(level).to_owned(),
            PlacedState::On(level, lived) => self.on_day(say.level(level), lived.day),
            PlacedState::Silent { last: None, days } => match say {
                Language::English => format!("No report for {}", self.days_of(days)),
                Language::Spanish => format!("Sin informes desde hace {}", self.days_of(days)),
            },
            PlacedState::Silent {
                last: Some((level, lived)),
                days,
            } => self.silent(level, lived, days),
            PlacedState::Unheard => say.life_unheard().to_owned(),
            PlacedState::Died => say.entry_died().to_owned(),
        }
    }

    fn on_day(self, what: &str, day: Day) -> String {
        let day = self.day(day);
        match self.language {
            Language::English => format!("{what} on {day}"),
            Language::Spanish => format!("{what} el {day}"),
        }
    }

    /// A calm level of the past is left out: silence is not calm.
    fn silent(self, level: Level, lived: Lived, days: i64) -> String {
        let say = self.language;
        let (days, last) = (self.days_of(days), self.day(lived.day));
        let then = match level {
            Level::Settled => String::new(),
            Level::Watch | Level::RingBreeder | Level::VetToday | Level::Emergency => match say {
                Language::English => format!(", then: {}", say.level(level)),
                Language::Spanish => format!(", entonces: {}", say.level(level)),
            },
        };
        match say {
            Language::English => format!("No report for {days}, the last on {last}{then}"),
            Language::Spanish => {
                format!("Sin informes desde hace {days}, el último el {last}{then}")
            }
        }
    }

    /// "8 days".
    pub(crate) fn days_of(self, days: i64) -> String {
        self.days(i32::try_from(days).unwrap_or(i32::MAX))
    }

    /// When the next report is due.
    pub fn report_due(self, due: Lived) -> String {
        let due = self.day(due.day);
        match self.language {
            Language::English => format!("Next report due on {due}."),
            Language::Spanish => format!("Próximo informe: el {due}."),
        }
    }

    /// A question or statement about the chick, with its name in place of `{name}`.
    pub fn about(self, pattern: &str, name: &str) -> String {
        let unnamed = self.language.life_unnamed();
        pattern.replace("{name}", if name.is_empty() { unnamed } else { name })
    }
}

texts! {
    life_unnamed: "the chick", "el pollo";
    life_unheard: "No report yet", "Aún sin informes";
    life_home: "Is {name} home?", "¿Ya está {name} en casa?";
    life_home_yes: "Yes, it is home", "Sí, ya está en casa";
    life_home_since: "Home since", "En casa desde";
    life_home_not_yet: "Not yet", "Todavía no";
    life_left: "Is {name} no longer with you?", "¿Ya no está {name} con usted?";
    life_left_hint: "Until you answer, this phone goes on with every reminder and alarm.", "Hasta que responda, este teléfono sigue con todos los recordatorios y avisos.";
    life_left_yes: "It is no longer with me", "Ya no está conmigo";
    life_left_no: "It is still with me", "Sigue conmigo";
    life_paused: "{name} is with somebody else for now.", "{name} está con otra persona por ahora.";
    life_paused_hint: "This phone reminds you of nothing meanwhile. The phone of whoever has it must hold its card and records.", "Mientras tanto este teléfono no le recuerda nada. El teléfono de quien lo tiene debe tener su tarjeta y sus registros.";
    life_back: "Is {name} back?", "¿Ha vuelto {name}?";
    life_back_yes: "Yes, it is back", "Sí, ha vuelto";
    life_followed: "You follow {name}: somebody else cares for it.", "Usted sigue a {name}: otra persona lo cuida.";
    life_followed_hint: "What stands here is what the last report said. Ask its carer for a report, and take it in.", "Aquí está lo que dijo el último informe. Pida un informe a quien lo cuida e incorpórelo.";
    life_plan_of: "The plan", "El plan";
    life_role: "This phone", "Este teléfono";
    life_role_carer: "cares for it: feeds, alarms", "lo cuida: tomas y avisos";
    life_role_follower: "follows it: reports only", "lo sigue: solo informes";
    life_hand: "Hand {name} to somebody", "Dejar a {name} con alguien";
    life_hand_to: "To whom?", "¿Con quién?";
    life_hand_name: "Name", "Nombre";
    life_hand_act: "Note the handing over", "Anotar la entrega";
    life_drinking: "Have you seen {name} drink water?", "¿Ha visto a {name} beber agua?";
    life_drinking_hint: "Fourteen days without formula: it counts as weaned once its weight is flat and somebody saw it drink.", "Catorce días sin papilla: cuenta como destetado cuando su peso es parejo y alguien lo ha visto beber.";
    life_drinking_yes: "Yes, I saw it drink", "Sí, lo he visto beber";
    life_grown_act: "It is grown: no more weighing reminders", "Ya es adulto: sin más avisos de pesar";
    life_died_act: "It died", "Ha muerto";
    life_died_sure: "Every reminder and alarm for {name} then ends. The record stays, and you can send it to your breeder and vet.", "Entonces terminan todos los recordatorios y avisos de {name}. El registro queda, y puede enviarlo a su criador y a su veterinario.";
    life_died_note: "Yes, note that {name} died", "Sí, anotar que {name} ha muerto";
    life_died: "{name} has died. We are sorry.", "{name} ha muerto. Lo sentimos.";
    life_died_hint: "There are no reminders any more. The record stays here; you can send it to your breeder and vet.", "Ya no hay recordatorios. El registro queda aquí; puede enviarlo a su criador y a su veterinario.";
    life_send_record: "Send the record", "Enviar el registro";
    life_remove: "Remove {name} from this phone", "Quitar a {name} de este teléfono";
    life_remove_sure: "Its plan, weights, feeds and reminders then no longer show on this phone. Nothing is erased: it stands under \"Removed chicks\" and can be shown again. Other phones are not touched.", "Su plan, pesos, tomas y recordatorios dejan de verse en este teléfono. No se borra nada: queda en \"Pollos quitados\" y se puede mostrar de nuevo. Los otros teléfonos no cambian.";
    life_remove_act: "Yes, remove it from this phone", "Sí, quitarlo de este teléfono";
    life_removed: "Removed chicks", "Pollos quitados";
    life_removed_hint: "Their records are still on this phone.", "Sus registros siguen en este teléfono.";
    life_show_again: "Show {name} again", "Mostrar otra vez a {name}";
    life_erase: "Erase the whole record of {name}", "Borrar todo el registro de {name}";
    life_erase_sure: "Every weight, feed, note and plan of {name} then goes from this phone for good, from both of its copies. Undo does not bring it back; a backup or another phone that has it still can. No other chick is touched.", "Todos los pesos, tomas, notas y planes de {name} se van entonces de este teléfono para siempre, de sus dos copias. Deshacer no los devuelve; sí puede una copia de seguridad u otro teléfono que los tenga. No se toca ningún otro pollo.";
    life_erase_name: "To confirm, type: {name}", "Para confirmar, escriba: {name}";
    life_erase_wrong: "That is not its name: nothing was erased.", "Ese no es su nombre: no se ha borrado nada.";
    life_erase_act: "Erase it for good", "Borrarlo para siempre";
    life_erased: "Erased from this phone", "Borrado de este teléfono";
    life_erase_failed: "Not everything could be erased: the browser's storage did not answer. Try again.", "No se pudo borrar todo: el almacenamiento del navegador no respondió. Inténtelo otra vez.";
    life_removed_came: "You removed {name} from this phone. What came in was kept with its records and stays hidden.", "Usted quitó a {name} de este teléfono. Lo que llegó se guardó con sus registros y sigue oculto.";
    life_same: "Is {name} the same bird as one that was typed in here?", "¿Es {name} el mismo pollo que uno escrito aquí?";
    life_same_hint: "Its notes then stand under the card's plan. Twins stay two.", "Sus notas quedan entonces bajo el plan de la tarjeta. Dos hermanos siguen siendo dos.";
    life_same_as: "The same bird as {name}", "El mismo que {name}";
    life_same_no: "No, another bird", "No, es otro";
}

#[cfg(test)]
mod tests {
    use crate::domain::time::moment::{Moment, Offset};
    use crate::words::life::*;

    /// 2026-11-03T21:00:00Z, a Tuesday.
    fn tuesday() -> Lived {
        Moment::from_seconds(1_793_739_600).lived(Offset::UTC)
    }

    fn said(state: PlacedState) -> String {
        let text = Writing::metric(Language::English).placed_state(state);
        text.replace('\u{a0}', " ")
    }

    #[test]
    fn an_older_state_is_said_with_its_day() {
        assert_eq!(said(PlacedState::Now(Level::Settled)), "Settled");
        assert_eq!(
            said(PlacedState::On(Level::Settled, tuesday())),
            "Settled on Tue 3 Nov"
        );
    }

    #[test]
    fn silence_is_never_settled() {
        for language in Language::ALL {
            let writing = Writing::metric(language);
            let calm = writing.language.level(Level::Settled);
            let last = Some((Level::Settled, tuesday()));
            for last in [None, last] {
                let text = writing.placed_state(PlacedState::Silent { last, days: 8 });
                assert!(!text.contains(calm), "{text}");
            }
        }
        let last = Some((Level::VetToday, tuesday()));
        assert_eq!(
            said(PlacedState::Silent { last, days: 8 }),
            "No report for 8 days, the last on Tue 3 Nov, then: Vet today"
        );
    }

    #[test]
    fn only_a_chick_that_is_not_weaned_is_called_so() {
        for stage in LifeStage::ALL {
            let is_said = Language::English.life_stage(stage).contains("not weaned");
            let is_so = match stage {
                LifeStage::WithBreeder
                | LifeStage::OnTheWay
                | LifeStage::SettlingIn
                | LifeStage::Weaning => true,
                LifeStage::Weaned | LifeStage::Grown | LifeStage::Died => false,
            };
            assert_eq!(is_said, is_so, "{stage:?}");
        }
    }
}

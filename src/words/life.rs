//! Words for the stages of a life, for whoever follows a chick, and for what is asked about both.

use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::journal::entries::Carer;
use crate::domain::time::moment::{Day, Lived};
use crate::domain::warnings::level::Level;
use crate::domain::warnings::placed_state::PlacedState;
use crate::words::Language;
use crate::words::format::Writing;
use crate::words::names::isolated;

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
                "Do not feed here: it is still with its breeder.",
                "Aquí no hay que darle ninguna toma: aún está con su criador.",
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
            Level::Watch | Level::CallBreeder | Level::VetToday | Level::Emergency => match say {
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
        let name = isolated(name);
        let name = if name.is_empty() { unnamed } else { &name };
        pattern.replace("{name}", name)
    }
}

texts! {
    life_unnamed: "the chick", "el polluelo";
    life_unheard: "No report yet", "Aún sin informes";
    life_home: "Is {name} home?", "¿Ya está {name} en casa?";
    life_home_yes: "Yes, it is home", "Sí, ya está en casa";
    life_home_not_yet: "Not yet", "Todavía no";
    life_role_asked: "Who holds this phone?", "¿De quién es este teléfono?";
    life_role_asked_hint: "{name} came in from another phone. Until you answer, this phone counts down and warns as a carer's.", "{name} ha llegado de otro teléfono. Hasta que responda, este teléfono avisa como el de un cuidador.";
    life_role_name: "Your name, so that each sees who did what", "Su nombre, para que se vea quién hizo qué";
    life_role_both: "We both care for it", "Lo cuidamos entre los dos";
    life_role_both_said: "Both phones count down and warn. Neither hears of the other by itself: send what is new after each feed.", "Los dos teléfonos avisan. Ninguno se entera solo de lo del otro: envíe lo nuevo después de cada toma.";
    life_role_mine: "It is mine: this phone is new", "Es mío: este teléfono es nuevo";
    life_role_mine_said: "You go on from the last note. Check when it was last fed.", "Sigue desde la última nota. Compruebe cuándo comió por última vez.";
    life_role_follow: "I follow it: reports only", "Solo recibo informes";
    life_left: "Is {name} still with you?", "¿Sigue {name} en su casa?";
    life_left_hint: "Until you answer, every reminder and alarm stays on.", "Hasta que responda, siguen todos los recordatorios y avisos.";
    life_left_yes: "No, it is somewhere else", "No, está en otro sitio";
    life_left_no: "Yes, it is with me", "Sí, está conmigo";
    life_paused: "{name} is with somebody else for now.", "{name} está con otra persona por ahora.";
    life_paused_hint: "This phone gives no reminders meanwhile. Send its card and records to whoever has it.", "Mientras tanto este teléfono no avisa de nada. Envíe la ficha y los datos a quien lo tenga.";
    life_back: "Is {name} back?", "¿Ha vuelto {name}?";
    life_back_yes: "Yes, it is back", "Sí, ha vuelto";
    life_followed: "Somebody else cares for {name}. Here you see the reports.", "A {name} lo cuida otra persona. Aquí ve sus informes.";
    life_followed_hint: "This is what the last report said. Ask its carer for a new one, then import it.", "Esto es lo que dijo el último informe. Pida uno nuevo a quien lo cuida e impórtelo.";
    life_plan_of: "The plan", "El plan";
    life_role: "This phone", "Este teléfono";
    life_role_carer: "I care for it: feeds and alarms", "yo lo cuido: tomas y avisos";
    life_role_follower: "I follow it: reports only", "solo recibo informes";
    life_hand: "Hand {name} to somebody", "Dejar a {name} con alguien";
    life_hand_to: "To whom?", "¿Con quién?";
    life_hand_name: "Name", "Nombre";
    life_hand_act: "Note it", "Anotarlo";
    life_drinking: "Have you seen {name} drink water?", "¿Ha visto a {name} beber agua?";
    life_drinking_hint: "Fourteen days without formula: it counts as weaned once its weight is steady and somebody has seen it drink.", "Catorce días sin papilla: cuenta como destetado cuando el peso es estable y alguien lo ha visto beber.";
    life_drinking_yes: "Yes, I saw it drink", "Sí, lo he visto beber";
    life_grown_act: "It is grown: no more weighing reminders", "Ya es adulto: sin más avisos de pesar";
    life_died_act: "It died", "Ha muerto";
    life_died_sure: "All reminders and alarms for {name} end. The record stays; you can send it to your breeder and vet.", "Terminan todos los recordatorios y avisos de {name}. Los datos quedan; puede enviarlos a su criador y a su veterinario.";
    life_died_note: "Yes, note that {name} died", "Sí, anotar que {name} ha muerto";
    life_died: "{name} has died. We are sorry.", "{name} ha muerto. Lo sentimos.";
    life_died_hint: "Tell your breeder. Do you want to know why? Keep the body wrapped in the fridge, not in the freezer, and call the vet today. There are no more reminders; the record stays here, and you can send it.", "Avise a su criador. ¿Quiere saber por qué? Guarde el cuerpo envuelto en la nevera, no en el congelador, y llame hoy al veterinario. Ya no hay recordatorios; los datos quedan aquí y puede enviarlos.";
    life_send_record: "Send the record", "Enviar los datos";
    life_remove: "Remove {name} from this phone", "Eliminar a {name} de este teléfono";
    life_remove_sure: "Its plan, weights, feeds and reminders no longer show on this phone. Nothing is erased: you find it under \"Removed chicks\" and can show it again. Other phones do not change.", "El plan, los pesos, las tomas y los recordatorios dejan de verse en este teléfono. No se borra nada: queda en «Polluelos eliminados» y puede mostrarlo otra vez. Los otros teléfonos no cambian.";
    life_remove_act: "Yes, remove it from this phone", "Sí, eliminarlo de este teléfono";
    life_removed: "Removed chicks", "Polluelos eliminados";
    life_removed_hint: "Their records are still on this phone.", "Sus datos siguen en este teléfono.";
    life_show_again: "Show {name} again", "Mostrar otra vez a {name}";
    life_erase: "Erase the whole record of {name}", "Borrar todos los datos de {name}";
    life_erase_sure: "Every weight, feed, note and plan of {name} goes from this phone for good. You cannot undo this; only a backup or another phone that has them can bring them back. Other chicks do not change.", "Todos los pesos, tomas, notas y planes de {name} se borran de este teléfono para siempre. No se puede deshacer; solo se recuperan de una copia de seguridad o de otro teléfono que los tenga. Los otros polluelos no cambian.";
    life_erase_name: "To confirm, type: {name}", "Para confirmar, escriba: {name}";
    life_erase_wrong: "That is not its name: nothing was erased.", "Ese no es el nombre: no se borró nada.";
    life_erase_act: "Erase it for good", "Borrarlo para siempre";
    life_erased: "Erased from this phone", "Borrado de este teléfono";
    life_erase_failed: "Try again: not everything was erased, because the browser's storage did not answer.", "Inténtelo otra vez: no se pudo borrar todo, porque el almacenamiento del navegador no respondió.";
    life_removed_came: "You removed {name} from this phone. What you imported was added to its records and stays hidden.", "Eliminó a {name} de este teléfono. Lo que importó se guardó con sus datos y sigue oculto.";
    life_same: "Is {name} the same bird as one you typed in here?", "¿Es {name} el mismo polluelo que uno añadido aquí a mano?";
    life_same_hint: "If it is, its notes move under the card's plan. Two birds of one clutch stay two.", "Si lo es, sus notas pasan al plan de la ficha. Dos hermanos siguen siendo dos.";
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

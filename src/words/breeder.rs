//! Words for a breeder of many chicks: her own details, her list, the table, the next card.

use crate::domain::homecoming::clutch::Clutch;
use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::homecoming::placement::Place;
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::quantity::count::rounded;
use crate::domain::time::moment::{Age, Day};
use crate::domain::warnings::level::{Finding, Level};
use crate::domain::warnings::placed_state::PlacedState;
use crate::words::Language;
use crate::words::format::Writing;
use crate::words::rules::finding_title;

impl Language {
    /// A group of a breeder's chicks.
    pub const fn place(self, place: Place) -> &'static str {
        match place {
            Place::WithMe => self.pick("With me", "Conmigo"),
            Place::Reserved => self.pick("Reserved", "Reservados"),
            Place::OnTheWay => self.pick("On the way", "De viaje"),
            Place::Placed => self.pick("Placed", "Entregados"),
            Place::Weaned => self.pick("Weaned", "Destetados"),
            Place::Archived => self.pick("Archived", "Archivados"),
        }
    }

    /// A stage in one or two words, in the table.
    pub const fn short_stage(self, stage: LifeStage) -> &'static str {
        match stage {
            LifeStage::WithBreeder => self.pick("with me", "conmigo"),
            LifeStage::OnTheWay => self.pick("on the way", "de viaje"),
            LifeStage::SettlingIn => self.pick("settling in", "adaptación"),
            LifeStage::Weaning => self.pick("weaning", "en destete"),
            LifeStage::Weaned => self.pick("weaned", "destetado"),
            LifeStage::Grown => self.pick("grown", "adulto"),
            LifeStage::Died => self.pick("died", "muerto"),
        }
    }
}

impl Writing {
    /// How a chick is, as its breeder reads it: the word of the level, then its reason. Silence is never a level.
    /// Of a chick that has not left nothing calm is said but where it is.
    pub fn breeder_state(
        self,
        place: Place,
        state: PlacedState,
        reason: Option<&Finding>,
    ) -> (String, String) {
        let say = self.language;
        let level = |level: Level| say.level_for(level, true);
        let reason = reason
            .map(|finding| finding_title(self, finding))
            .unwrap_or_default();
        match state {
            PlacedState::Now(Level::Settled) if !place.is_elsewhere() => {
                (format!("{}.", say.place(place)), String::new())
            }
            PlacedState::Now(now) => (format!("{}.", level(now)), reason),
            PlacedState::On(then, lived) => {
                let day = self.day(lived.day);
                let word = match say {
                    Language::English => format!("{} on {day}.", level(then)),
                    Language::Spanish => format!("{} el {day}.", level(then)),
                };
                (word, reason)
            }
            PlacedState::Silent { last: None, .. } => {
                (say.breeder_not_known().to_owned(), self.placed_state(state))
            }
            PlacedState::Silent {
                last: Some((then, lived)),
                days,
            } => {
                let (days, day) = (self.days_of(days), self.day(lived.day));
                let silence = match say {
                    Language::English => format!("No report for {days}, the last on {day}"),
                    Language::Spanish => {
                        format!("Sin informes desde hace {days}, el último el {day}")
                    }
                };
                // A calm level of the past is left out: silence is not calm.
                let before = if then == Level::Settled {
                    String::new()
                } else {
                    format!(": {}. {reason}", level(then))
                };
                let before = before.trim_end_matches([' ', '.']);
                (
                    say.breeder_not_known().to_owned(),
                    format!("{silence}{before}"),
                )
            }
            PlacedState::Unheard => (say.life_unheard().to_owned(), String::new()),
            PlacedState::Died => (say.entry_died().to_owned(), String::new()),
        }
    }

    /// Questions of an owner that wait for an answer; empty for none.
    pub fn asks(self, count: usize) -> String {
        match (self.language, count) {
            (_, 0) => String::new(),
            (Language::English, 1) => "1 question for you".to_owned(),
            (Language::English, _) => format!("{count} questions for you"),
            (Language::Spanish, 1) => "1 pregunta para usted".to_owned(),
            (Language::Spanish, _) => format!("{count} preguntas para usted"),
        }
    }

    /// "day 11", of the days in the new home; the day of the arrival is day 0.
    pub fn placed_day(self, days: i64) -> String {
        match self.language {
            Language::English => format!("day {days}"),
            Language::Spanish => format!("día {days}"),
        }
    }

    /// An age in the width of a column: `13 w 1 d`.
    pub fn short_age(self, age: Age) -> String {
        let (weeks, days) = age.weeks_and_days();
        match self.language {
            Language::English => format!("{weeks}\u{a0}w\u{a0}{days}\u{a0}d"),
            Language::Spanish => format!("{weeks}\u{a0}sem.\u{a0}{days}\u{a0}d"),
        }
    }

    /// Stage and feeds a day: "weaning, 2 feeds a day".
    pub fn stage_and_feeds(self, stage: LifeStage, feeds: usize) -> String {
        let stage_word = self.language.short_stage(stage);
        match stage {
            LifeStage::SettlingIn | LifeStage::Weaning => {
                format!("{stage_word}, {}", self.feeds_left(feeds))
            }
            LifeStage::WithBreeder
            | LifeStage::OnTheWay
            | LifeStage::Weaned
            | LifeStage::Grown
            | LifeStage::Died => stage_word.to_owned(),
        }
    }

    /// A loss against the handover weight as a change: "−10.2 %".
    pub fn handover_change(self, loss_pct: f64) -> String {
        if rounded(loss_pct * 10.0) == 0 {
            return self.pct(0.0);
        }
        let sign = if loss_pct > 0.0 { "\u{2212}" } else { "+" };
        format!("{sign}{}", self.pct(loss_pct.abs()))
    }

    /// The share of the plan that was eaten: "92 %"; a question mark when it is not known.
    pub fn eaten(self, pct: Option<f64>) -> String {
        pct.map_or_else(|| "?".to_owned(), |pct| format!("{}\u{a0}%", rounded(pct)))
    }

    /// When the last report came: "today", "yesterday", "5 days ago".
    pub fn heard(self, days: Option<i64>) -> String {
        match (self.language, days) {
            (Language::English, None) => "none yet".to_owned(),
            (Language::English, Some(0)) => "within a day".to_owned(),
            (Language::English, Some(1)) => "1 day ago".to_owned(),
            (Language::English, Some(days)) => format!("{days} days ago"),
            (Language::Spanish, None) => "aún ninguno".to_owned(),
            (Language::Spanish, Some(0)) => "en el último día".to_owned(),
            (Language::Spanish, Some(1)) => "hace 1 día".to_owned(),
            (Language::Spanish, Some(days)) => format!("hace {days} días"),
        }
    }

    /// Which plan the owner holds: "3, current", "3, old".
    pub fn plan_held(self, number: usize, is_current: bool) -> String {
        let word = if is_current {
            self.language.breeder_plan_current()
        } else {
            self.language.breeder_plan_old()
        };
        format!("{number}, {word}")
    }

    /// A clutch in the filter: "Scarlet macaw, 24 Aug to 30 Aug".
    pub fn clutch(self, clutch: Clutch) -> String {
        let species = self.language.species(clutch.species);
        let day = |day: Day| self.date(day);
        if clutch.first == clutch.last {
            return format!("{species}, {}", day(clutch.first));
        }
        let (first, last) = (self.day_and_month(clutch.first), day(clutch.last));
        match self.language {
            Language::English => format!("{species}, {first} to {last}"),
            Language::Spanish => format!("{species}, del {first} al {last}"),
        }
    }

    /// What of a template goes into the next card, in a line or two.
    pub fn template_lines(self, plan: &CarePlan) -> Vec<String> {
        let say = self.language;
        let feeds = plan
            .feeds
            .iter()
            .map(|feed| format!("{} {}", self.time(feed.time), self.volume(feed.volume)));
        let feeds = feeds.collect::<Vec<_>>().join(", ");
        let powder = self.pct(plan.powder_fraction.as_pct());
        let from = self.warmth(plan.serve_from, plan.serve_to);
        let limit = self.pct(plan.loss_limit.as_pct());
        let formula = match say {
            Language::English => format!("{powder} powder, served at {from}"),
            Language::Spanish => format!("{powder} de papilla en polvo, a {from}"),
        };
        let call = match say {
            Language::English => format!("Call at a loss of {limit}"),
            Language::Spanish => format!("Llamar si pierde un {limit}"),
        };
        vec![feeds, formula, call]
    }

    /// What several texts hold: "3 reports, 12 new entries".
    pub fn reports_found(self, texts: usize, new: usize) -> String {
        match self.language {
            Language::English => {
                let texts = if texts == 1 {
                    "1 text".to_owned()
                } else {
                    format!("{texts} texts")
                };
                let new = if new == 1 {
                    "1 new entry".to_owned()
                } else {
                    format!("{new} new entries")
                };
                format!("{texts} read, {new}")
            }
            Language::Spanish => {
                let texts = if texts == 1 {
                    "1 texto leído".to_owned()
                } else {
                    format!("{texts} textos leídos")
                };
                let new = if new == 1 {
                    "1 anotación nueva".to_owned()
                } else {
                    format!("{new} anotaciones nuevas")
                };
                format!("{texts}, {new}")
            }
        }
    }

    /// How many entries of a chick are new here.
    pub fn new_entries(self, count: usize) -> String {
        match (self.language, count) {
            (Language::English, 0) => "nothing new".to_owned(),
            (Language::English, 1) => "1 new entry".to_owned(),
            (Language::English, _) => format!("{count} new entries"),
            (Language::Spanish, 0) => "nada nuevo".to_owned(),
            (Language::Spanish, 1) => "1 anotación nueva".to_owned(),
            (Language::Spanish, _) => format!("{count} anotaciones nuevas"),
        }
    }

    /// A group with the number of its chicks: "Placed (6)".
    pub fn place_count(self, place: Place, count: usize) -> String {
        format!("{} ({count})", self.language.place(place))
    }
}

texts! {
    breeder_title: "My chicks", "Mis polluelos";
    breeder_chicks: "Chicks", "Polluelos";
    breeder_settings: "Settings", "Ajustes";
    breeder_details: "My details", "Mis datos";
    breeder_details_hint: "Typed once: they go into every new card, and into your backup.", "Se escriben una sola vez: van en cada ficha nueva y en su copia de seguridad.";
    breeder_name: "Your name, as owners know you", "Su nombre, como lo conocen los dueños";
    breeder_number: "Your telephone", "Su teléfono";
    breeder_hours: "When can owners call you?", "¿Cuándo pueden llamarle los dueños?";
    breeder_second: "Who is called when you do not answer?", "¿A quién se llama si usted no contesta?";
    breeder_words: "The same in every card", "Lo mismo en cada ficha";
    breeder_after_refusal: "What to do after one refusal", "Qué hacer si no quiere una toma";
    breeder_ask: "Ask me before any feed is dropped", "Preguntarme antes de quitar una toma";
    breeder_note: "Anything else for every owner", "Algo más para todos los dueños";
    breeder_save: "Save", "Guardar";
    breeder_saved: "Saved for the next cards", "Guardado para las próximas fichas";
    breeder_new_card: "New card", "Ficha nueva";
    breeder_import: "Import reports", "Importar informes";
    breeder_template: "Template", "Plantilla";
    breeder_other_species: "Another species, or other amounts", "Otra especie u otras cantidades";
    breeder_first_card: "The first card of a species is typed in full; it is the template of the next ones.", "La primera ficha de una especie se escribe entera; sirve de plantilla para las siguientes.";
    breeder_from_template: "From your template", "De su plantilla";
    breeder_for_whom: "Who takes it? (optional)", "¿Quién se lo lleva? (opcional)";
    breeder_owner: "Owner", "Dueño";
    breeder_weight_today: "Weight today, with an empty crop", "Peso de hoy, con el buche vacío";
    breeder_make_card: "Make the card", "Hacer la ficha";
    breeder_send_card: "Send card", "Enviar ficha";
    breeder_none: "No chicks yet. Make the first card.", "Aún no hay polluelos. Haga la primera ficha.";
    breeder_none_here: "No chicks in this group.", "No hay polluelos en este grupo.";
    breeder_need: "Need a call", "Hay que llamar";
    breeder_others: "All others", "Los demás";
    breeder_no_need: "Nobody needs a call.", "No hace falta llamar a nadie.";
    breeder_not_known: "Not known.", "No se sabe.";
    breeder_all: "All", "Todos";
    breeder_all_clutches: "All clutches", "Todas las nidadas";
    breeder_all_species: "All species", "Todas las especies";
    breeder_filter_clutch: "Clutch", "Nidada";
    breeder_filter_species: "Species", "Especie";
    breeder_filter_hint: "A clutch is told by species and hatch day: chicks up to 6 days apart (our own limit).", "Una nidada se reconoce por la especie y el día de nacimiento: hasta 6 días de diferencia (valor propio).";
    breeder_sorted: "Sorted by who needs a call. No report counts as need, never as Settled. Eaten: share of the planned formula over 3 days.", "Primero, a quién hay que llamar. La falta de informes cuenta como motivo, nunca como «Normal». Comido: parte de la papilla prevista en 3 días.";
    breeder_column_chick: "Chick", "Polluelo";
    breeder_column_stage: "Stage", "Etapa";
    breeder_column_days: "Placed", "Entregado";
    breeder_column_weight: "Weight", "Peso";
    breeder_column_change: "Since handover", "Desde la entrega";
    breeder_column_eaten: "Eaten", "Comido";
    breeder_column_report: "Report", "Informe";
    breeder_column_plan: "Plan held", "Plan que tiene";
    breeder_column_vet: "Vet", "Veterinario";
    breeder_yes: "yes", "sí";
    breeder_no: "no", "no";
    breeder_plan_current: "current", "actual";
    breeder_plan_old: "old", "anterior";
    breeder_table: "All chicks as a table (CSV)", "Todos los polluelos en una tabla (CSV)";
    breeder_call: "Call", "Llamar a";
    breeder_remarks: "My remarks", "Mis notas";
    breeder_remarks_hint: "They are yours alone: in your backup, and in no card, report or link.", "Son solo suyas: van en su copia de seguridad y en ninguna ficha, informe ni enlace.";
    breeder_remark: "New remark", "Nota nueva";
    breeder_remark_keep: "Keep the remark", "Guardar la nota";
    breeder_left: "It has left me", "Ya no está conmigo";
    breeder_left_noted: "Noted: it has left", "Anotado: ya no está con usted";
    breeder_reserve: "Note who takes it", "Anotar quién se lo lleva";
    breeder_its_owner: "Note its owner's name and number", "Anotar el nombre y el teléfono del dueño";
    breeder_filters: "Clutch and species", "Nidada y especie";
    breeder_reserved: "Reserved", "Reservado";
    breeder_put_away: "Put it away", "Archivar";
    breeder_put_away_hint: "It goes to Archived, and no report is asked for. Nothing is erased.", "Pasa a Archivados y no se pide ningún informe. No se borra nada.";
    breeder_take_out: "Show it again", "Mostrarlo otra vez";
    breeder_use_template: "Use its numbers for the next cards", "Usar sus números en las próximas fichas";
    breeder_template_saved: "This is now the template of its species", "Ahora es la plantilla de su especie";
    breeder_weigh: "Weigh", "Pesar";
    breeder_its_plan: "Plan", "Plan";
    breeder_its_journal: "Journal", "Diario";
    breeder_its_report: "Report and card", "Informe y ficha";
    breeder_reports_hint: "Paste everything at once, as many links as you like, or choose several files. Nothing is imported before you see it.", "Pegue todo junto, cuantos enlaces quiera, o elija varios archivos. No se importa nada antes de que lo vea.";
    breeder_reports_paste: "Messages from owners", "Mensajes de los dueños";
    breeder_reports_files: "Files from owners", "Archivos de los dueños";
    breeder_reports_read: "Read them", "Leerlos";
    breeder_reports_take: "Import them all", "Importar todo";
    breeder_reports_older: "older than the last report you have", "anterior al último informe que tiene";
    breeder_reports_unknown: "a chick that is new here", "un polluelo nuevo aquí";
    breeder_reports_failed: "Not readable", "No se puede leer";
    table_ring: "ring or chip", "anilla o chip";
    table_species: "species", "especie";
    table_hatched: "hatched", "nacido";
    table_owner: "owner", "dueño";
    table_number: "telephone", "teléfono";
    table_group: "group", "grupo";
    table_feeds_a_day: "feeds a day", "tomas al día";
    table_days_placed: "days placed", "días entregado";
    table_state: "state", "estado";
    table_reason: "reason", "motivo";
    table_last_report: "last report", "último informe";
    table_silent_days: "days of silence", "días sin informes";
    table_change_pct: "since handover (%)", "desde la entrega (%)";
    table_eaten_pct: "eaten of the plan (%)", "comido de lo previsto (%)";
    table_plan_number: "plan held", "plan que tiene";
    table_plan_current: "plan is current", "plan actual";
    table_vet_seen: "seen by a vet on", "visto por un veterinario el";
    table_vet_called: "vet called on", "veterinario llamado el";
    table_asks: "questions for the breeder", "preguntas para el criador";
}

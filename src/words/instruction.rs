//! Words for the one answer to "may I feed now", and for what keeps food back. The act comes first.

use crate::domain::instruction::answer::{Instruction, Nothing};
use crate::domain::instruction::first::First;
use crate::domain::instruction::holds::{Demand, Why};
use crate::domain::journal::chick::{Advice, Noted};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::Role;
use crate::domain::time::moment::{Lived, Moment};
use crate::domain::warnings::level::Level;
use crate::words::Language;
use crate::words::advice::advice;
use crate::words::format::Writing;
use crate::words::rules::finding_title;
use crate::words::signs::sign as sign_words;

texts! {
    do_not_feed: "Do not feed", "No dé de comer";
    first_crop: "Look at the crop first", "Mire primero el buche";
    first_weigh: "Weigh it first", "Péselo primero";
    held_away: "On its way: nothing to feed here.", "De camino: aquí no toca nada.";
    held_others: "This too keeps food back", "También lo impide";
    held_again: "No food for longer than the longest gap of the plan: call again.", "Más tiempo sin comida que el mayor intervalo del plan: llame otra vez.";
    held_still: "Still so", "Sigue igual";
    held_gone: "It is gone", "Ya pasó";
    log_held: "Do not give food now. If it was given already, note it and say so when you call.", "No dé comida ahora. Si ya se la dio, anótelo y dígalo cuando llame.";
    log_held_given: "It was given: note it", "Ya se dio: anotar";
    log_held_not: "It was not given", "No se dio";
    advice_title: "The breeder or vet said…", "El criador o el veterinario dijo…";
    advice_who: "Who said it?", "¿Quién lo dijo?";
    advice_may: "May it be fed?", "¿Puede comer?";
    advice_yes: "Yes", "Sí";
    advice_no: "No", "No";
    advice_ml: "How much at a feed? (optional)", "¿Cuánto por toma? (opcional)";
    advice_hours: "For how many hours? (optional)", "¿Durante cuántas horas? (opcional)";
    advice_text: "In their words (optional)", "Con sus palabras (opcional)";
    advice_bound: "A breeder's word does not lift what is for the vet.", "La palabra del criador no levanta lo que es del veterinario.";
}

impl Language {
    /// Who said something about feeding.
    const fn said_by(self, who: Role) -> &'static str {
        match who {
            Role::Breeder => self.pick("The breeder said", "El criador dijo"),
            Role::AvianVet => self.pick("The vet said", "El veterinario dijo"),
            Role::EmergencyVet => {
                self.pick("The emergency vet said", "El veterinario de urgencias dijo")
            }
        }
    }

    /// Whom to call for what keeps food back; `None` when nobody is.
    pub const fn held_call(self, level: Level) -> Option<&'static str> {
        match level {
            Level::Settled | Level::Watch => None,
            Level::RingBreeder => Some(self.pick(
                "Call the breeder. No answer in 30 minutes? Call the vet.",
                "Llame al criador. ¿No contesta en 30 minutos? Llame al veterinario.",
            )),
            Level::VetToday => Some(self.pick(
                "Call the vet now. Closed? Call the out-of-hours vet.",
                "Llame ahora al veterinario. ¿Cerrado? Llame al de urgencias.",
            )),
            Level::Emergency => Some(self.pick(
                "Call the vet now and set off.",
                "Llame ahora al veterinario y salga.",
            )),
        }
    }

    /// What is to be done first.
    pub const fn first(self, first: First) -> &'static str {
        match first {
            First::Settle => self.pick("Warmth and quiet first", "Primero calor y calma"),
            First::Cool => self.pick("Cool it first", "Primero refrésquelo"),
            First::Warm => self.pick("Warm it first", "Primero caliéntelo"),
            First::IsItGone(_) => self.pick("Is it still so?", "¿Sigue igual?"),
            First::Weigh => self.first_weigh(),
            First::LookAtCrop => self.first_crop(),
        }
    }

    const fn first_act(self, first: First) -> &'static str {
        match first {
            First::Settle => self.pick(
                "Half an hour of warmth and quiet. Look at the droppings and the crop.",
                "Media hora de calor y calma. Mire los excrementos y el buche.",
            ),
            First::Cool => self.pick(
                "Shade and air. When it is calm again, note the sign as gone.",
                "Sombra y aire. Cuando esté tranquilo, anote que la señal pasó.",
            ),
            First::Warm => self.pick(
                "A trace is left after the night. Keep it warm and look at the crop again in an \
                 hour. No feed before it is flat.",
                "Queda un resto después de la noche. Manténgalo caliente y mire el buche otra vez \
                 en una hora. Sin toma hasta que esté vacío.",
            ),
            First::IsItGone(_) => self.pick(
                "This was seen, and nobody noted since that it is gone. Look, then say.",
                "Se vio, y nadie anotó después que pasara. Mire y dígalo.",
            ),
            First::Weigh => self.pick(
                "The crop is empty only before the first feed.",
                "El buche solo está vacío antes de la primera toma.",
            ),
            First::LookAtCrop => self.pick(
                "Look and feel gently. Flat: feed. Food left: the app says what to do.",
                "Mire y palpe con suavidad. Vacío: dé la toma. Queda comida: la app dice qué \
                 hacer.",
            ),
        }
    }
}

impl Writing {
    /// The answer in one line: "Do not feed", "Ask the vet before any feed".
    pub fn held_title(self, demand: Demand, until: impl Fn(Moment) -> String) -> String {
        let say = self.language;
        match demand {
            Demand::DoNotFeed => say.do_not_feed().to_owned(),
            Demand::Ask(Role::Breeder) => say
                .pick(
                    "Ask the breeder before the next feed",
                    "Pregunte al criador antes de la próxima toma",
                )
                .to_owned(),
            Demand::Ask(Role::AvianVet | Role::EmergencyVet) => say
                .pick(
                    "Ask the vet before any feed",
                    "Pregunte al veterinario antes de cualquier toma",
                )
                .to_owned(),
            Demand::First(first) => say.first(first).to_owned(),
            Demand::Wait(moment) => {
                let time = until(moment);
                match say {
                    Language::English => format!("Wait until {time}"),
                    Language::Spanish => format!("Espere hasta las {time}"),
                }
            }
        }
    }

    /// Why food is kept back.
    pub fn held_why(self, why: Why) -> String {
        let say = self.language;
        let text = match why {
            Why::Sign(sign) | Why::First(First::IsItGone(sign)) => sign_words(say, sign).seen,
            Why::Found(finding) => return finding_title(self, &finding),
            Why::Said(who) => {
                let said = say.said_by(who);
                return format!("{said}: {}", say.pick("no food", "nada de comida"));
            }
            Why::FoodInCrop => say.pick(
                "There is still food in the crop",
                "Todavía hay comida en el buche",
            ),
            Why::FedLately => say.pick("It was fed a short while ago", "Comió hace poco"),
            Why::FoodCameBack => say.pick("Food came back up", "Devolvió comida"),
            Why::NotYetDue => say.pick(
                "The next feed is not due yet",
                "Aún no toca la próxima toma",
            ),
            Why::First(First::Settle) => say.pick("It has just arrived", "Acaba de llegar"),
            Why::First(First::Cool) => say.pick("It is overheated", "Está acalorado"),
            Why::First(First::Warm) => say.pick(
                "A trace is left in the crop after the night",
                "Queda un resto en el buche después de la noche",
            ),
            Why::First(First::Weigh) => say.pick("Not weighed today", "Hoy no se ha pesado"),
            Why::First(First::LookAtCrop) => say.pick(
                "Nobody has looked at the crop since",
                "Nadie ha mirado el buche desde entonces",
            ),
        };
        text.to_owned()
    }

    /// What to do instead of feeding: first aid, then what lifts it.
    pub const fn held_act(self, why: Why) -> &'static str {
        let say = self.language;
        match why {
            Why::First(first) => say.first_act(first),
            Why::Sign(sign) => sign_words(say, sign).first,
            Why::Found(finding) => advice(say, finding.rule).act,
            Why::Said(_) => say.pick(
                "Keep to it. When they say otherwise, note it here.",
                "Hágales caso. Cuando digan otra cosa, anótelo aquí.",
            ),
            Why::FoodInCrop => say.pick(
                "Keep it warm. Then look at the crop again.",
                "Manténgalo caliente. Luego mire el buche otra vez.",
            ),
            Why::FedLately => say.pick(
                "Wait for the next feed of the plan. If somebody else fed it, that was this feed.",
                "Espere a la siguiente toma del plan. Si otra persona la dio, era esta toma.",
            ),
            Why::FoodCameBack => say.pick(
                "No more at this sitting. Listen to its breathing.",
                "Nada más en esta toma. Escuche cómo respira.",
            ),
            Why::NotYetDue => say.pick("Leave it warm and quiet.", "Déjelo caliente y tranquilo."),
        }
    }

    /// The answer without its reason; `None` where there is only the next feed to name.
    pub fn instruction_title(self, outlook: &Outlook) -> Option<String> {
        let say = self.language;
        let time = |moment: Moment| self.time(moment.lived(outlook.offset).time);
        let title = |demand, level| {
            let title = self.held_title(demand, time);
            match say.held_call(level) {
                Some(call) => format!("{title}. {call}"),
                None => format!("{title}."),
            }
        };
        match outlook.instruction {
            Instruction::Feed { .. }
            | Instruction::WaitUntil {
                why: Why::NotYetDue,
                ..
            } => None,
            Instruction::WaitUntil { until, .. } => Some(title(Demand::Wait(until), Level::Watch)),
            Instruction::First(first) => Some(title(Demand::First(first), Level::Watch)),
            Instruction::AskFirst { who, level, .. } => Some(title(Demand::Ask(who), level)),
            Instruction::DoNotFeed { level, .. } => Some(title(Demand::DoNotFeed, level)),
            Instruction::Nothing(Nothing::NoFeed) => Some(say.now_no_feed().to_owned()),
            Instruction::Nothing(Nothing::Away) => Some(say.held_away().to_owned()),
        }
    }

    /// The whole answer for a page or a file.
    pub fn instruction_line(self, outlook: &Outlook) -> String {
        let say = self.language;
        let why = match outlook.instruction {
            Instruction::AskFirst { why, .. }
            | Instruction::DoNotFeed { why, .. }
            | Instruction::WaitUntil { why, .. } => Some(why),
            Instruction::First(first) => Some(Why::First(first)),
            Instruction::Feed { .. } | Instruction::Nothing(_) => None,
        };
        let title = self.instruction_title(outlook).unwrap_or_else(|| {
            let next = outlook.next_feed.as_ref().map(|feed| {
                let time = self.time(feed.due.lived(outlook.offset).time);
                format!("{}: {} {time}.", say.now_next(), say.feed(feed.slot))
            });
            next.unwrap_or_default()
        });
        match why.filter(|why| *why != Why::NotYetDue) {
            Some(why) => format!("{title} {}.", self.held_why(why)),
            None => title,
        }
    }

    /// What the breeder or a vet said, and until when it holds.
    pub fn advice_line(self, advice: &Noted<Advice>) -> String {
        let until = advice.what.until.map(|until| until.lived(advice.offset));
        self.advice(&advice.what, until)
    }

    /// "The vet said: it may be fed, 30 ml at most, until Tue 3 Nov, 18:00 (a thin mix)".
    pub fn advice(self, advice: &Advice, until: Option<Lived>) -> String {
        let say = self.language;
        let said = say.said_by(advice.who);
        let may = if advice.may_feed {
            say.pick("it may be fed", "puede comer")
        } else {
            say.pick("no food", "nada de comida")
        };
        let most = advice.ml.map(|ml| {
            let ml = self.volume(ml);
            match say {
                Language::English => format!(", {ml} at most"),
                Language::Spanish => format!(", {ml} como mucho"),
            }
        });
        let until = until.map(|until| {
            let until = self.lived(until);
            match say {
                Language::English => format!(", until {until}"),
                Language::Spanish => format!(", hasta {until}"),
            }
        });
        let about = advice.about.trim();
        let about = (!about.is_empty()).then(|| format!(" ({about})"));
        let parts = [most, until, about].map(Option::unwrap_or_default);
        format!("{said}: {may}{}", parts.concat())
    }
}

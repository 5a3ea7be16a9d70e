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
use crate::words::now::sentences;
use crate::words::rules::finding_title;
use crate::words::signs::sign as sign_words;

texts! {
    do_not_feed: "Do not feed", "No dé de comer";
    first_crop: "Look at the crop first", "Mire primero el buche";
    first_weigh: "Weigh it first", "Péselo primero";
    now_not_known: "Ask when and how much it is fed. Call the breeder before its next feed.", "Pregunte a qué hora y cuánto se le da. Llame al criador antes de la siguiente toma.";
    now_type_amounts: "Type in what the breeder says", "Escribir lo que diga el criador";
    held_away: "It is on the way: do not feed here.", "Está de camino: aquí no hay que darle nada.";
    held_others: "Also a reason not to feed", "También es motivo para no dar de comer";
    held_again: "Call again: it has had no food for longer than the longest gap of the plan.", "Llame otra vez: lleva sin comer más que el intervalo más largo del plan.";
    night_only: "Only if the crop is flat or holds a trace, and the chick is warm and wakes up to eat. Else let it sleep.", "Solo si el buche está plano o queda un resto, y el polluelo está tibio y se despierta para comer. Si no, déjelo dormir.";
    now_as_planned: "Feed as planned, unless they say otherwise when you call.", "Siga con las tomas del plan, salvo que le digan otra cosa cuando llame.";
    night_sleep: "Nothing more tonight. If it is warm and calm, let it sleep.", "Nada más esta noche. Si está tibio y tranquilo, déjelo dormir.";
    held_still: "Still so", "Sigue igual";
    held_gone: "It is gone", "Ya no lo tiene";
    log_held: "Give no food now. Fed already? Note it, and say so when you call.", "No le dé de comer ahora. ¿Ya comió? Anótelo y dígalo cuando llame.";
    log_held_given: "It was given: note it", "Ya se dio: anotarlo";
    log_held_not: "It was not given", "No se dio";
    advice_title: "The breeder or vet said…", "El criador o el veterinario dijo…";
    advice_who: "Who said it?", "¿Quién lo dijo?";
    advice_may: "May it be fed?", "¿Puede comer?";
    advice_yes: "Yes", "Sí";
    advice_no: "No", "No";
    advice_ml: "How much at a feed? (optional)", "¿Cuánto por toma? (opcional)";
    advice_hours: "For how many hours? (optional)", "¿Durante cuántas horas? (opcional)";
    advice_text: "In their words (optional)", "Con sus palabras (opcional)";
    advice_bound: "For this, only a vet can say that it may be fed.", "En esto, solo un veterinario puede decir que se le dé de comer.";
}

impl Language {
    /// Who said something about feeding.
    const fn said_by(self, who: Role) -> &'static str {
        match who {
            Role::Breeder => self.pick("The breeder said", "El criador dijo"),
            Role::AvianVet => self.pick("The vet said", "El veterinario dijo"),
            Role::EmergencyVet => self.pick("The out-of-hours vet said", "En urgencias dijeron"),
        }
    }

    /// Whom to call for what keeps food back; `None` when nobody is.
    pub const fn held_call(self, level: Level) -> Option<&'static str> {
        match level {
            Level::Settled | Level::Watch => None,
            Level::CallBreeder => Some(self.pick(
                "Call the breeder. No answer in 30 minutes? Call the vet.",
                "Llame al criador. ¿No contesta en 30 minutos? Llame al veterinario.",
            )),
            Level::VetToday => Some(self.pick(
                "Call the vet now. Closed? Call the out-of-hours vet.",
                "Llame ya al veterinario. ¿Está cerrado? Llame a urgencias (guardia).",
            )),
            Level::Emergency => Some(self.pick(
                "Call the vet now and set off.",
                "Llame ya al veterinario y póngase en camino.",
            )),
        }
    }

    /// What is to be done first.
    pub const fn first(self, first: First) -> &'static str {
        match first {
            First::Settle => self.pick("First warmth and quiet", "Primero calor y calma"),
            First::Cool => self.pick("Cool it first", "Primero llévelo a un sitio fresco"),
            First::Warm => self.pick("Warm it first", "Primero dele calor"),
            First::IsItGone(_) => self.pick("Is it still so?", "¿Sigue igual?"),
            First::Weigh => self.first_weigh(),
            First::LookAtCrop => self.first_crop(),
        }
    }

    const fn first_act(self, first: First) -> &'static str {
        match first {
            First::Settle => self.pick(
                "Give it half an hour of warmth and quiet. Then look at the droppings and the crop.",
                "Déjelo media hora al calor y tranquilo. Luego mire las heces y el buche.",
            ),
            First::Cool => self.pick(
                "Move it into shade and air. When it is calm again, note that the sign is gone.",
                "Llévelo a la sombra, con aire. Cuando esté tranquilo, anote que ya no lo tiene.",
            ),
            First::Warm => self.pick(
                "Do not feed until the crop is flat. Keep the chick warm. Look again in an hour.",
                "No dé la toma hasta que el buche esté plano. Manténgalo al calor. Mire otra vez dentro de una hora.",
            ),
            First::IsItGone(_) => self.pick(
                "Look again: somebody saw this and nobody has noted that it is gone.",
                "Mire otra vez: alguien lo vio y nadie anotó que ya no lo tenga.",
            ),
            First::Weigh => self.pick(
                "Weigh before the first feed: only then is the crop empty.",
                "Pese antes de la primera toma: solo entonces está vacío el buche.",
            ),
            First::LookAtCrop => self.pick(
                "Look, and feel gently. Flat? Feed. Food left? The app tells you what to do.",
                "Mire y palpe con suavidad. ¿Plano? Dé la toma. ¿Queda comida? La app le dirá qué hacer.",
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
                    Language::Spanish => format!("Espere hasta {time}"),
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
                return format!("{said}: {}", say.pick("no food", "no darle de comer"));
            }
            Why::FoodInCrop => say.pick(
                "There is still food in the crop",
                "Todavía hay comida en el buche",
            ),
            Why::FedLately => say.pick("It was fed a short while ago", "Comió hace poco"),
            Why::FoodCameBack => say.pick("It brought food back up", "Regurgitó papilla"),
            Why::NotYetDue => say.pick(
                "The next feed is not due yet",
                "Aún no toca la próxima toma",
            ),
            Why::First(First::Settle) => say.pick("It has just arrived", "Acaba de llegar"),
            Why::First(First::Cool) => say.pick("It is too hot", "Tiene demasiado calor"),
            Why::First(First::Warm) => say.pick(
                "A trace is left in the crop after the night",
                "Queda un resto en el buche después de la noche",
            ),
            Why::First(First::Weigh) => say.pick("Not weighed today", "Hoy no se ha pesado"),
            Why::First(First::LookAtCrop) => say.pick(
                "Nobody has looked at the crop since the last feed",
                "Nadie ha mirado el buche desde la última toma",
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
                "Do as they said. If they say something else, note it here.",
                "Haga lo que le dijeron. Si dicen otra cosa, anótelo aquí.",
            ),
            Why::FoodInCrop => say.pick(
                "Keep the chick warm. Then look at the crop again.",
                "Mantenga al polluelo al calor. Luego mire otra vez el buche.",
            ),
            Why::FedLately => say.pick(
                "Wait for the next feed of the plan. If somebody else fed it, that was this feed.",
                "Espere a la siguiente toma del plan. Si otra persona le dio de comer, era esta toma.",
            ),
            Why::FoodCameBack => say.pick(
                "Stop this feed. Listen to its breathing.",
                "Pare esta toma. Escuche cómo respira.",
            ),
            Why::NotYetDue => say.pick("Leave it warm and quiet.", "Déjelo al calor y tranquilo."),
        }
    }

    /// What to do and not to do until somebody answers, one instruction a line.
    pub fn first_aid(self, why: Why) -> Vec<String> {
        let say = self.language;
        let avoid = match why {
            Why::Sign(sign) => Some(sign_words(say, sign).avoid),
            Why::Found(finding) => Some(advice(say, finding.rule).avoid),
            Why::Said(_)
            | Why::FoodInCrop
            | Why::FedLately
            | Why::FoodCameBack
            | Why::NotYetDue
            | Why::First(_) => None,
        };
        let lines = [Some(self.held_act(why)), avoid].into_iter().flatten();
        lines.flat_map(sentences).collect()
    }

    /// The answer without its reason; `None` where there is only the next feed to name.
    pub fn instruction_title(self, outlook: &Outlook) -> Option<String> {
        let say = self.language;
        let time = |moment: Moment| self.the_time(moment.lived(outlook.offset).time);
        // Where something else is worse, that says whom to call.
        let title = |demand, level: Level| {
            let title = self.held_title(demand, time);
            match say.held_call(outlook.level.max(level)) {
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
            Instruction::WaitUntil { until, .. } => {
                Some(format!("{}.", self.held_title(Demand::Wait(until), time)))
            }
            Instruction::First(first) => {
                Some(format!("{}.", self.held_title(Demand::First(first), time)))
            }
            Instruction::AskFirst { who, level, .. } => Some(title(Demand::Ask(who), level)),
            Instruction::DoNotFeed { level, .. } => Some(title(Demand::DoNotFeed, level)),
            Instruction::Nothing(Nothing::NoFeed) => Some(say.now_no_feed().to_owned()),
            Instruction::Nothing(Nothing::NotKnown) => Some(say.now_not_known().to_owned()),
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
            say.pick("it may be fed", "se le puede dar de comer")
        } else {
            say.pick("no food", "no darle de comer")
        };
        let most = advice.ml.map(|ml| {
            let ml = self.volume(ml);
            match say {
                Language::English => format!(", {ml} at most"),
                Language::Spanish => format!(", {ml} como máximo"),
            }
        });
        let until = until.map(|until| {
            let until = self.on_lived(until);
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

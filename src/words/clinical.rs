//! Words of the clinical history: the short terms that a vet reads aloud.

use crate::domain::feeding::day_food::{DayFood, Intake};
use crate::domain::feeding::scheduled::{FeedState, ScheduledFeed};
use crate::domain::journal::chick::{Chick, DroppingsCount};
use crate::domain::journal::entries::{Droppings, Paper};
use crate::domain::journal::signs::Sign;
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::Role;
use crate::domain::plan::topic::Topic;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Day, Lived};
use crate::words::Language;
use crate::words::exchange::labelled;
use crate::words::format::Writing;

/// A feed of which this share of the plan's amount was taken is not told apart, per cent. Ours: an owner's
/// syringe is no exacter.
const WHOLE_FEED_PCT: i32 = 90;

impl Language {
    /// A sign, as a finding by telephone or at the table.
    pub const fn clinical_sign(self, sign: Sign) -> &'static str {
        match sign {
            Sign::LabouredBreathing => self.pick("laboured breathing at rest", "disnea en reposo"),
            Sign::ClickCleared => self.pick(
                "click, wheeze or cough at a feed, cleared",
                "ruidos respiratorios o tos al comer, ya no",
            ),
            Sign::ClickStays => self.pick(
                "click or wheeze over 5 min or recurring",
                "ruidos respiratorios más de 5 min o que vuelven",
            ),
            Sign::SourCrop => self.pick(
                "crop sour, full of air or not emptying",
                "buche agrio, con aire o sin vaciarse",
            ),
            Sign::Vomiting => self.pick("vomiting", "vómitos"),
            Sign::BroughtBackOnce => self.pick(
                "one regurgitation after a feed, bright",
                "una regurgitación tras la toma, activo",
            ),
            Sign::CropPatch => self.pick(
                "skin lesion or leak over the crop",
                "lesión o fuga en la piel del buche",
            ),
            Sign::NoDroppingFourHours => self.pick(
                "no droppings for 4 waking hours after a feed",
                "sin heces 4 h despierto tras una toma",
            ),
            Sign::NoDroppingEightHours => {
                self.pick("no droppings for 8 waking hours", "sin heces 8 h despierto")
            }
            Sign::BadDroppingsOverADay => self.pick(
                "abnormal droppings over a day",
                "heces anormales más de un día",
            ),
            Sign::UndigestedFood => self.pick(
                "undigested food in the droppings",
                "comida sin digerir en las heces",
            ),
            Sign::BloodInDroppings => self.pick("blood in the droppings", "sangre en las heces"),
            Sign::Dull => self.pick("fluffed up, lethargic", "plumas infladas, letárgico"),
            Sign::Limp => self.pick(
                "cannot stand or hold its head up",
                "no se tiene en pie o no sostiene la cabeza",
            ),
            Sign::Cold => self.pick(
                "cold, or shivering while dry",
                "frío, o tiembla estando seco",
            ),
            Sign::Overheated => self.pick("overheated, panting", "demasiado calor, jadea"),
            Sign::StaysOverheated => self.pick(
                "panting after 20 min of cooling",
                "jadea tras 20 min al fresco",
            ),
            Sign::Dehydrated => self.pick("signs of dehydration", "signos de deshidratación"),
            Sign::BegsAllDay => self.pick("begs all day", "pide comida todo el día"),
            Sign::WentDownWrong => self.pick(
                "suspected aspiration: gasping or blue",
                "posible aspiración: boquea o cianosis",
            ),
            Sign::FedTooHot => self.pick(
                "fed formula at 43.3 °C or more",
                "comió papilla a 43,3 °C o más",
            ),
            Sign::Lame => self.pick(
                "lame, splayed leg, swollen toe or tight ring",
                "cojera, pata abierta, dedo hinchado o anilla apretada",
            ),
            Sign::SwallowedObject => {
                self.pick("swallowed a foreign body", "ingirió un cuerpo extraño")
            }
            Sign::Bleeding => self.pick("bleeding that does not stop", "hemorragia que no para"),
            Sign::SeizureOrTrauma => self.pick(
                "seizure, unconscious, trauma, bite or fumes",
                "convulsión, inconsciencia, golpe, mordedura o humos",
            ),
            Sign::Prolapse => self.pick("tissue out of the vent", "tejido fuera de la cloaca"),
            Sign::Wobbles => self.pick("ataxia or head tilt", "ataxia o cabeza ladeada"),
            Sign::Discharge => self.pick(
                "nasal or eye discharge, or eye swollen or shut",
                "secreción nasal u ocular, u ojo hinchado o cerrado",
            ),
            Sign::MouthPlaques => self.pick(
                "plaques or sores in the mouth",
                "placas o llagas en la boca",
            ),
            Sign::Shock => self.pick(
                "pale, weak, fast breathing after a fright or accident",
                "pálido, débil, respira deprisa tras susto o accidente",
            ),
            Sign::Bruised => self.pick(
                "bruise or swelling under the skin",
                "hematoma o bulto bajo la piel",
            ),
            Sign::FeatherBleeds => self.pick(
                "broken blood feather, bleeding",
                "pluma en crecimiento rota, sangra",
            ),
        }
    }

    /// How many droppings were counted: on the day's paper, unless it says so.
    pub fn count_of_day(self, counted: DroppingsCount) -> String {
        let count = counted.count;
        match counted.paper {
            Paper::Day => count.to_string(),
            Paper::Night => format!("{count} {}", self.pick("(night)", "(noche)")),
        }
    }

    /// What droppings look like, in one or two words.
    pub const fn clinical_droppings(self, look: Droppings) -> &'static str {
        match look {
            Droppings::Normal => self.pick("as usual", "como siempre"),
            Droppings::SmallOrFew => self.pick("scant or dark", "escasas u oscuras"),
            Droppings::Watery => self.pick("polyuria, stool formed", "poliuria, sólido con forma"),
            Droppings::LiquidStool => self.pick("diarrhoea", "diarrea"),
            Droppings::GreenOrBlack => self.pick("green or black", "verdes o negras"),
            Droppings::Undigested => self.pick("undigested food", "comida sin digerir"),
            Droppings::Bloody => self.pick("red: blood", "rojas: sangre"),
            Droppings::EmeraldGreen => {
                self.pick("emerald green, scant", "verde esmeralda, escasas")
            }
            Droppings::TarBlack => self.pick("black, tarry", "negras, como alquitrán"),
            Droppings::LimeUrates => self.pick("lime urates", "uratos verde lima"),
            Droppings::WetAfterFruit => self.pick("wet after fruit", "acuosas tras fruta"),
            Droppings::RedAfterFood => self.pick("red after red food", "rojas por la comida"),
        }
    }
}

impl Writing {
    /// What the page is and when it was made.
    pub fn history_title(self, lived: Lived) -> String {
        let (date, time) = (self.date(lived.day), self.the_time(lived.time));
        match self.language {
            Language::English => format!("Clinical history for the avian vet, {date}, {time}"),
            Language::Spanish => {
                format!("Historia clínica para el veterinario de aves, {date}, {time}")
            }
        }
    }

    /// The heading of the table of so many days.
    pub fn last_days(self, days: usize) -> String {
        match self.language {
            Language::English => format!("Last {days} days"),
            Language::Spanish => format!("Últimos {days} días"),
        }
    }

    /// Gain or loss against the handover weight, with its sign and without a unit: "−1.2", "0.0".
    pub fn signed_pct(self, loss_pct: f64) -> String {
        let number = self.one_decimal(loss_pct.abs());
        let is_same = number == self.one_decimal(0.0);
        let sign = match (is_same, loss_pct > 0.0) {
            (true, _) => "",
            (false, true) => "\u{2212}",
            (false, false) => "+",
        };
        format!("{sign}{number}")
    }

    /// What was eaten of what was planned: a share once the day is over, millilitres while it goes on; what nobody
    /// noted makes it a least.
    pub fn eaten_of_plan(self, food: &DayFood, is_today: bool) -> String {
        let Some(share) = food.share_pct() else {
            let none = food.eaten.tenths() == 0;
            let nothing = if is_today {
                self.language.vet_not_yet()
            } else {
                "\u{2013}"
            };
            return if none {
                nothing.to_owned()
            } else {
                self.volume(food.eaten)
            };
        };
        let least = if food.unanswered() > 0 {
            "\u{2265} "
        } else {
            ""
        };
        if is_today {
            let of = self.language.pick("of", "de");
            let (eaten, planned) = (self.tenths(food.eaten.tenths()), self.volume(food.planned));
            format!("{least}{eaten} {of} {planned}")
        } else {
            format!("{least}{}\u{a0}%", rounded(share))
        }
    }

    /// The feeds of a day that were not given as planned, those of one fate together: "midday, bedtime refused".
    pub fn feed_events(self, feeds: &[ScheduledFeed]) -> Vec<String> {
        let mut told: Vec<(String, Vec<&str>)> = Vec::new();
        for feed in feeds {
            let Some(what) = self.feed_fate(feed) else {
                continue;
            };
            let slot = self.language.slot(feed.slot);
            match told.iter_mut().find(|(other, _)| *other == what) {
                Some((_, slots)) => slots.push(slot),
                None => told.push((what, vec![slot])),
            }
        }
        let told = told.into_iter();
        told.map(|(what, slots)| format!("{} {what}", slots.join(", ")))
            .collect()
    }

    /// What became of a feed; `None` for one that was given as planned, or is still to come.
    fn feed_fate(self, feed: &ScheduledFeed) -> Option<String> {
        let say = self.language;
        let part = |taken: Millilitres| {
            let of = say.pick("of", "de");
            format!(
                "{} {of} {}",
                self.tenths(taken.tenths()),
                self.volume(feed.volume)
            )
        };
        Some(match &feed.state {
            FeedState::Done(sitting)
                if sitting.taken.tenths() * 100 < feed.volume.tenths() * WHOLE_FEED_PCT =>
            {
                part(sitting.taken)
            }
            FeedState::Refused(sitting) | FeedState::TryAgain(sitting)
                if sitting.taken.tenths() > 0 =>
            {
                part(sitting.taken)
            }
            FeedState::Refused(_) | FeedState::TryAgain(_) => say.vet_refused().to_owned(),
            FeedState::LeftOut(why) => {
                format!("{} ({})", say.entry_left_out(), say.why_passed_over(*why))
            }
            FeedState::Unanswered => say.vet_not_noted().to_owned(),
            FeedState::Done(_)
            | FeedState::Upcoming
            | FeedState::Due
            | FeedState::Late
            | FeedState::PutOff
            | FeedState::OnTheWay => return None,
        })
    }

    /// "115 ml and 110 kcal per kg a day, mean of 2 to 4 Dec".
    pub fn intake(self, intake: Intake) -> String {
        let say = self.language;
        let ml = rounded(intake.ml_per_kg);
        let kcal = intake.kcal_per_kg.map(|kcal| {
            let and = say.pick("and", "y");
            format!(" {and} {}\u{a0}kcal", rounded(kcal))
        });
        let kcal = kcal.unwrap_or_default();
        let (first, last) = (
            self.day_and_month(intake.first),
            self.day_and_month(intake.last),
        );
        let days = match (say, first == last) {
            (_, true) => last,
            (Language::English, false) => format!("mean of {first} to {last}"),
            (Language::Spanish, false) => format!("media del {first} al {last}"),
        };
        let powder = if intake.has_label || intake.kcal_per_kg.is_none() {
            ""
        } else {
            say.vet_usual_powder()
        };
        match say {
            Language::English => format!("{ml}\u{a0}ml{kcal} per kg a day, {days}{powder}"),
            Language::Spanish => format!("{ml}\u{a0}ml{kcal} por kg al día, {days}{powder}"),
        }
    }

    /// How much more was noted than a line has room for.
    pub fn and_more(self, count: usize) -> String {
        match self.language {
            Language::English => format!("and {count} more"),
            Language::Spanish => format!("y {count} más"),
        }
    }

    /// Whom the owner's phone calls when, and what the vet was called for before.
    pub fn vet_called(self, chick: &Chick) -> Option<String> {
        let mut calls = chick.calls.iter().rev();
        let call = calls.find(|call| match call.what.whom {
            Role::AvianVet | Role::EmergencyVet => true,
            Role::Breeder => false,
        })?;
        Some(labelled(&self.lived(call.lived()), &call.what.agreed))
    }

    /// Since when it is in this home, and for how many days.
    pub fn home_since_day(self, home: Day, today: Day) -> String {
        let day = today.since(home);
        match self.language {
            Language::English => format!("{}, day {day}", self.date(home)),
            Language::Spanish => format!("{}, día {day}", self.date(home)),
        }
    }

    /// What the reader would ask for and nobody noted.
    pub fn not_known(self, outlook: &Outlook, is_crop_seen: bool, food: &[DayFood]) -> Vec<String> {
        let say = self.language;
        let chick = &outlook.chick;
        let plan = &chick.plan;
        let recent = outlook.now.plus_minutes(-24 * 60);
        let is_recent = |at| recent <= at && at <= outlook.now;
        let has_droppings = chick.droppings.iter().any(|look| is_recent(look.at));
        let has_room = chick.rooms.iter().any(|room| is_recent(room.at));
        let open = food.iter().map(DayFood::unanswered).sum::<usize>();
        let weighed = outlook.weight.is_weighed_today;
        let lacking = [
            (!weighed).then_some(say.vet_no_weight()),
            (!is_crop_seen).then_some(say.vet_no_crop()),
            (!has_droppings).then_some(say.vet_no_droppings()),
            (!has_room).then_some(say.vet_no_room()),
            plan.said(Topic::PowderName)
                .is_empty()
                .then_some(say.vet_no_powder()),
            plan.reference.is_none().then_some(say.vet_no_handover()),
            plan.hatched.is_none().then_some(say.vet_no_age()),
            plan.said(Topic::Sex).is_empty().then_some(say.vet_no_sex()),
            plan.said(Topic::Papers)
                .is_empty()
                .then_some(say.vet_no_tests()),
        ];
        let mut lines: Vec<String> = lacking.into_iter().flatten().map(str::to_owned).collect();
        if open > 0 {
            lines.push(match say {
                Language::English => format!("feeds of these days not noted: {open}"),
                Language::Spanish => format!("tomas de estos días sin anotar: {open}"),
            });
        }
        lines
    }
}

texts! {
    vet_reason: "Reason for the visit", "Motivo de la consulta";
    vet_reason_none: "Not written.", "Sin escribir.";
    vet_owner: "Owner", "Dueño";
    vet_ring: "Ring or chip", "Anilla o chip";
    vet_sex: "Sex", "Sexo";
    vet_age: "Age", "Edad";
    vet_rearing: "Reared", "Cría";
    vet_home_since: "In this home since", "En este hogar desde";
    vet_called: "Vet called", "Llamada al veterinario";
    vet_weight: "Weight, crop empty", "Peso, buche vacío";
    vet_change: "Compared", "Comparado";
    vet_one_day: "Since the day before", "Desde el día anterior";
    vet_handover: "At handover", "En la entrega";
    vet_peak: "Highest weight", "Peso máximo";
    vet_feeds: "Feeds now", "Tomas ahora";
    vet_wings: "Wings", "Alas";
    vet_tests: "Tests, papers", "Análisis, papeles";
    vet_last_food: "Last food", "Última comida";
    vet_emptying: "Crop empties in", "El buche se vacía en";
    vet_usual_droppings: "Droppings a day", "Heces al día";
    vet_day: "Day", "Día";
    vet_of_handover: "% of handover", "% desde la entrega";
    vet_eaten: "Eaten of plan", "Comido del plan";
    vet_droppings: "Droppings, number", "Heces, número";
    vet_crop_morning: "Crop, morning", "Buche, mañana";
    vet_signs: "Signs and events", "Signos y sucesos";
    vet_with_food: "* With food in the crop, or crop not felt: not comparable with the others.", "* Con comida en el buche o sin palparlo: no comparable con los demás.";
    vet_not_yet: "not yet", "aún nada";
    vet_not_noted: "not noted", "sin anotar";
    vet_refused: "refused", "rechazada";
    vet_diet: "Diet", "Dieta";
    vet_formula: "Formula", "Papilla";
    vet_eaten_per_kg: "Eaten", "Comido";
    vet_usual_powder: " (label not known: a usual powder)", " (sin etiqueta: papilla en polvo habitual)";
    vet_solids_seen: "Solids seen eaten", "Sólidos que comió";
    vet_solids_offered: "Solids, as planned", "Sólidos, según el plan";
    vet_breeder_says: "Breeder's notes", "Notas del criador";
    vet_surroundings: "Surroundings", "Entorno";
    vet_measured: "measured", "medido";
    vet_planned: "planned, not measured", "según el plan, sin medir";
    vet_not_known: "Not known", "No se sabe";
    vet_no_weight: "weight today", "peso de hoy";
    vet_no_crop: "crop this morning", "buche de esta mañana";
    vet_no_droppings: "droppings in the last 24 h", "heces de las últimas 24 h";
    vet_no_room: "room temperature in the last 24 h", "temperatura de la habitación en las últimas 24 h";
    vet_no_powder: "name of the powder", "nombre de la papilla en polvo";
    vet_no_handover: "weight at handover", "peso en la entrega";
    vet_no_age: "hatch day", "día de nacimiento";
    vet_no_sex: "sex", "sexo";
    vet_no_tests: "tests made", "análisis hechos";
    vet_gone: " (gone)", " (ya no)";
    vet_no_judge: "From the owner's notes and readings; no vet has judged them.", "De las notas y mediciones del dueño; ningún veterinario las ha valorado.";
}

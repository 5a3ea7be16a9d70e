//! The checks of a plan in sentences, each with its limits.

use crate::domain::feeding::planned::NIGHT_GAP_MINUTES;
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::quantity::units::{Celsius, Percent};
use crate::domain::warnings::level::Level;
use crate::domain::warnings::plan_checks::{CheckVerdict, LONGEST_NIGHT_MINUTES, PlanCheck, Stop};
use crate::domain::warnings::rules::served_hot::BURN_FROM;
use crate::words::Language;
use crate::words::format::Writing;

impl Writing {
    /// One check: the number beside its limits, and what follows when it is past them.
    pub fn plan_check(self, check: PlanCheck) -> String {
        let say = self.language;
        let past_window = say.plan_check_window();
        let (numbers, past) = match check {
            PlanCheck::LargestFeed {
                most,
                weight,
                usual,
                by_weight,
                by_species,
            } => {
                let numbers = [most, usual, by_weight].map(|volume| self.volume(volume));
                let [most, usual, by_weight] = numbers;
                let weight = self.mass(weight);
                let species = by_species.map(|limit| self.volume(limit));
                let text = match (say, species) {
                    (Language::English, Some(species)) => format!(
                        "Largest feed {most} at {weight}: usual up to {usual} (10\u{a0}%), at most {by_weight} (12\u{a0}%, our own limit) and {species} for the species (our own limit)."
                    ),
                    (Language::English, None) => format!(
                        "Largest feed {most} at {weight}: usual up to {usual} (10\u{a0}%), at most {by_weight} (12\u{a0}%, our own limit)."
                    ),
                    (Language::Spanish, Some(species)) => format!(
                        "Toma mayor, {most} con {weight}: lo habitual es hasta {usual} (10\u{a0}%), como máximo {by_weight} (12\u{a0}%, valor propio) y {species} para la especie (valor propio)."
                    ),
                    (Language::Spanish, None) => format!(
                        "Toma mayor, {most} con {weight}: lo habitual es hasta {usual} (10\u{a0}%), como máximo {by_weight} (12\u{a0}%, valor propio)."
                    ),
                };
                let level = match check.verdict() {
                    CheckVerdict::Over => Level::CallBreeder,
                    CheckVerdict::Unusual | CheckVerdict::InOrder => Level::Watch,
                };
                (text, self.owner_is_told(level))
            }
            PlanCheck::NoWeight => return say.plan_check_no_weight().to_owned(),
            PlanCheck::NightGap { minutes } => {
                let gap = self.minutes(minutes);
                let (least, most) = (NIGHT_GAP_MINUTES, LONGEST_NIGHT_MINUTES);
                let (least, most) = (self.minutes(least), self.minutes(most));
                let is_long = check.verdict() == CheckVerdict::Unusual;
                let limit = match (say, is_long) {
                    (Language::English, false) => format!("at least {least}"),
                    (Language::Spanish, false) => format!("al menos {least}"),
                    (Language::English, true) => format!("usually up to {most}, our own limit"),
                    (Language::Spanish, true) => format!("lo habitual, hasta {most}, valor propio"),
                };
                let text = say.plan_check_night_gap();
                let past = if is_long {
                    say.plan_check_long_night()
                } else {
                    say.plan_check_night()
                };
                let text = format!("{text}: {gap} ({limit}).");
                (text, past.to_owned())
            }
            PlanCheck::Water {
                water,
                powder,
                hottest,
            } => return self.water_check(check.verdict(), water, powder, hottest),
            PlanCheck::Window { from, to } => {
                let (least, most) = CarePlan::SERVE_WITHIN;
                let (window, limits) = (self.warmth(from, to), self.warmth(least, most));
                let text = match say {
                    Language::English => format!("Served at {window}, within {limits}."),
                    Language::Spanish => format!("Se da a {window}, dentro de {limits}."),
                };
                let past = match say {
                    Language::English => {
                        format!("Served at {window}, not within {limits}. {past_window}")
                    }
                    Language::Spanish => {
                        format!("Se da a {window}, fuera de {limits}. {past_window}")
                    }
                };
                return match check.verdict() {
                    CheckVerdict::InOrder => text,
                    CheckVerdict::Unusual | CheckVerdict::Over => past,
                };
            }
        };
        match check.verdict() {
            CheckVerdict::InOrder => numbers,
            CheckVerdict::Unusual | CheckVerdict::Over => format!("{numbers} {past}"),
        }
    }

    /// What keeps a card from going out.
    pub fn plan_stop(self, stop: Stop) -> String {
        match stop {
            Stop::Number(check) => self.plan_check(check),
            Stop::NoBreedersNumber => self.language.plan_stop_number().to_owned(),
        }
    }

    fn water_check(
        self,
        verdict: CheckVerdict,
        water: Celsius,
        powder: Percent,
        hottest: Celsius,
    ) -> String {
        let [water, hottest, burn] = [water, hottest, BURN_FROM].map(|one| self.temperature(one));
        let powder = self.pct(powder.as_pct());
        match (self.language, verdict) {
            (Language::English, CheckVerdict::InOrder) => {
                format!("Water at {water}: at most {hottest} for {powder} powder.")
            }
            (Language::Spanish, CheckVerdict::InOrder) => {
                format!("Agua a {water}: como máximo {hottest} con {powder} de polvo.")
            }
            (Language::English, CheckVerdict::Unusual | CheckVerdict::Over) => format!(
                "Is this the water, not the mix? Who said it? Above {hottest} a mix of {powder} powder can start at {burn}, where it burns the crop."
            ),
            (Language::Spanish, CheckVerdict::Unusual | CheckVerdict::Over) => format!(
                "¿Es el agua y no la papilla? ¿Quién lo dijo? Con agua a más de {hottest}, una papilla con {powder} de polvo puede llegar a {burn}, y eso quema el buche."
            ),
        }
    }

    /// What the owner's phone makes of a number past its limit.
    fn owner_is_told(self, level: Level) -> String {
        let level = self.language.level(level);
        match self.language {
            Language::English => {
                format!("The owner's phone will say \u{201c}{level}\u{201d} at once.")
            }
            Language::Spanish => {
                format!("El teléfono del dueño dirá «{level}» enseguida.")
            }
        }
    }
}

texts! {
    plan_checked: "Compared with the limits", "Comparado con los límites";
    plan_check_no_weight: "Type the handover weight: without it the amounts cannot be checked.", "Escriba el peso de entrega: sin él no se pueden comprobar las cantidades.";
    plan_check_night_gap: "Night without a feed", "Noche sin toma";
    plan_check_long_night: "Its crop is empty 4 to 6 hours after a feed.", "El buche está vacío de 4 a 6 horas después de una toma.";
    plan_stop: "This card does not go out yet", "Esta ficha todavía no se puede enviar";
    plan_stop_number: "Type your telephone number: the owner has nobody to call.", "Escriba su teléfono: el dueño no tendría a quién llamar.";
    plan_stop_change: "Change the plan", "Cambiar el plan";
    plan_stop_again: "I know, send it so", "Lo sé, enviarla así";
    plan_check_night: "The crop has to empty once a day.", "El buche tiene que vaciarse una vez al día.";
    plan_check_window: "Cooler formula slows the crop; hotter formula can burn it.", "Más fría, el buche se vacía más despacio; más caliente, puede quemarlo.";
}

#[cfg(test)]
mod tests {
    use crate::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
    use crate::domain::warnings::plan_checks::PlanCheck;
    use crate::words::Language;
    use crate::words::format::Writing;

    const ENGLISH: Writing = Writing::metric(Language::English);

    fn said(check: PlanCheck) -> String {
        ENGLISH.plan_check(check).replace('\u{a0}', " ")
    }

    fn feed(tenth_ml: i32) -> String {
        said(PlanCheck::LargestFeed {
            most: Millilitres::tenths_held(tenth_ml),
            weight: Grams::whole(1_000),
            usual: Millilitres::whole(100),
            by_weight: Millilitres::whole(120),
            by_species: Some(Millilitres::whole(120)),
        })
    }

    #[test]
    fn a_volume_stands_beside_its_ceilings() {
        assert_eq!(
            feed(600),
            "Largest feed 60 ml at 1000 g: usual up to 100 ml (10 %), at most 120 ml (12 %, our own limit) and 120 ml for the species (our own limit)."
        );
    }

    #[test]
    fn past_a_limit_it_says_what_the_owner_will_read() {
        assert!(feed(1_100).ends_with("The owner's phone will say \u{201c}Watch\u{201d} at once."));
        assert!(feed(1_201).ends_with("will say \u{201c}Call the breeder\u{201d} at once."));
        let short = said(PlanCheck::NightGap { minutes: 359 });
        assert_eq!(
            short,
            "Night without a feed: 5 h 59 min (at least 6 h). The crop has to empty once a day."
        );
        let warm = said(PlanCheck::Window {
            from: Celsius::whole(39),
            to: Celsius::whole(42),
        });
        assert!(warm.contains("not within"), "{warm}");
        let hot = said(PlanCheck::Water {
            water: Celsius::whole(47),
            powder: Percent::whole(25),
            hottest: Celsius::tenths_held(464),
        });
        assert!(
            hot.contains("Above 46.4 °C a mix of 25.0 % powder can start at 43.3 °C"),
            "{hot}"
        );
    }
}

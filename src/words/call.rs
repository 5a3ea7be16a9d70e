//! What to say on the telephone: the facts in the order in which a breeder or vet asks for them.

use crate::domain::journal::chick::{Chick, FeedNote, FeedOutcome, Noted};
use crate::domain::journal::entries::{CropFeel, CropState, Droppings};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::Role;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::Finding;
use crate::domain::warnings::rules::sign_seen;
use crate::words::Language;
use crate::words::format::Writing;
use crate::words::rules::finding_title;

/// Most findings that are read out: whoever listens asks for more.
const MOST_FINDINGS: usize = 5;
/// Feeds that are read out.
const FEEDS: usize = 3;

/// Sentences to read aloud: who, what is seen, weight, last feeds, crop, droppings, room, since when.
///
/// What nobody noted is said to be unknown, so that the listener need not ask.
pub fn what_to_say(writing: Writing, outlook: &Outlook) -> Vec<String> {
    let chick = &outlook.chick;
    let mut said = vec![
        who(writing, outlook),
        findings(writing, &outlook.findings),
        weight(writing, outlook),
        feeds(writing, outlook.now, chick),
        crop(writing, outlook.now, chick),
        droppings(writing, outlook.now, chick),
    ];
    said.extend(droppings_counted(writing, outlook.now, chick));
    said.push(room(writing, outlook.now, chick));
    said.extend(since(writing, outlook.now, chick));
    said
}

impl Language {
    /// What to do when somebody does not answer.
    pub const fn call_unanswered(self, whom: Role) -> &'static str {
        match whom {
            Role::Breeder => self.pick(
                "No answer in 30 minutes? Call the vet.",
                "¿No contesta en 30 minutos? Llame al veterinario.",
            ),
            Role::AvianVet => self.pick(
                "Call the out-of-hours vet.",
                "Llame al veterinario de urgencias.",
            ),
            Role::EmergencyVet => self.pick(
                "Call the next number here. No vet answers? Call any animal clinic with oxygen and warmth, and ask it to call one that treats parrots.",
                "Llame al siguiente número de aquí. ¿No contesta ningún veterinario? Llame a cualquier clínica con oxígeno y calor, y pida que llamen a uno que trate loros.",
            ),
        }
    }
}

/// A text inside a sentence: in Spanish without its capital.
fn inside(language: Language, text: &str) -> String {
    let mut rest = text.chars();
    match (language, rest.next()) {
        (Language::Spanish, Some(first)) => first.to_lowercase().chain(rest).collect(),
        (Language::English, _) | (_, None) => text.to_owned(),
    }
}

fn who(writing: Writing, outlook: &Outlook) -> String {
    let plan = &outlook.chick.plan;
    let species = inside(writing.language, writing.language.species(plan.species));
    let age = outlook.age.map(|age| writing.age(age));
    let (unnamed, ageless) = match writing.language {
        Language::English => ("a chick", "age not known"),
        Language::Spanish => ("un polluelo", "edad desconocida"),
    };
    let name = if plan.name.is_empty() {
        unnamed
    } else {
        &plan.name
    };
    let age = age.unwrap_or_else(|| ageless.to_owned());
    let stage = writing.language.life_stage(outlook.stage);
    match writing.language {
        Language::English => format!("I am calling about {name}: {species}, {age}, {stage}."),
        Language::Spanish => format!("Llamo por {name}: {species}, {age}, {stage}."),
    }
}

fn findings(writing: Writing, findings: &[Finding]) -> String {
    let is_call = |finding: &&Finding| finding.level.is_call();
    let calls = findings.iter().filter(is_call).count();
    let titles: Vec<String> = findings
        .iter()
        .take(if calls > 0 { calls } else { findings.len() }.min(MOST_FINDINGS))
        .map(|finding| inside(writing.language, &finding_title(writing, finding)))
        .collect();
    match (writing.language, titles.is_empty()) {
        (Language::English, true) => "My notes show nothing unusual. I have a question.".to_owned(),
        (Language::Spanish, true) => {
            "En mis notas no hay nada anormal. Tengo una pregunta.".to_owned()
        }
        (Language::English, false) => format!("What I see: {}.", titles.join("; ")),
        (Language::Spanish, false) => format!("Lo que veo: {}.", titles.join("; ")),
    }
}

fn weight(writing: Writing, outlook: &Outlook) -> String {
    let language = writing.language;
    let Some(latest) = &outlook.weight.latest else {
        return language
            .pick(
                "I have not weighed it with an empty crop yet.",
                "Aún no lo he pesado con el buche vacío.",
            )
            .to_owned();
    };
    let (mass, at) = (
        writing.mass(latest.what.weight),
        writing.lived(latest.lived()),
    );
    let now = match language {
        Language::English => format!("Weight with an empty crop: {mass}, {at}."),
        Language::Spanish => format!("Peso con el buche vacío: {mass}, {at}."),
    };
    let Some((before, loss)) = outlook
        .chick
        .plan
        .reference
        .zip(outlook.weight.handover_loss_pct)
    else {
        return now;
    };
    let (handover, change) = (writing.mass(before.weight), writing.pct(loss.abs()));
    let compared = match (language, loss < 0.0) {
        (Language::English, false) => "less",
        (Language::English, true) => "more",
        (Language::Spanish, false) => "menos",
        (Language::Spanish, true) => "más",
    };
    match language {
        Language::English => format!("{now} At handover {handover}: {change} {compared} now."),
        Language::Spanish => format!("{now} En la entrega {handover}: ahora {change} {compared}."),
    }
}

fn feeds(writing: Writing, now: Moment, chick: &Chick) -> String {
    let language = writing.language;
    let notes = chick.feeds.iter().rev().filter(|feed| feed.at <= now);
    let said: Vec<String> = notes
        .take(FEEDS)
        .map(|feed| one_feed(writing, feed))
        .collect();
    if said.is_empty() {
        return language
            .pick(
                "I have not noted a feed yet.",
                "Aún no he anotado ninguna toma.",
            )
            .to_owned();
    }
    let label = language.pick("Last feeds", "Últimas tomas");
    format!("{label}: {}.", said.join("; "))
}

fn one_feed(writing: Writing, feed: &Noted<FeedNote>) -> String {
    let language = writing.language;
    let at = writing.lived(feed.lived());
    let outcome = match feed.what.outcome {
        FeedOutcome::Given {
            taken, served_at, ..
        } => {
            let served = served_at.map(|served| format!(", {}", writing.temperature(served)));
            format!("{}{}", writing.volume(taken), served.unwrap_or_default())
        }
        FeedOutcome::Refused { .. } => language.pick("refused", "no la quiso").to_owned(),
        FeedOutcome::PassedOver { why, .. } => {
            let label = language.pick("left out", "no dada");
            format!("{label} ({})", language.why_passed_over(why))
        }
    };
    format!("{at}: {outcome}")
}

fn crop(writing: Writing, now: Moment, chick: &Chick) -> String {
    let language = writing.language;
    let Some(look) = chick.crops.iter().rev().find(|look| look.at <= now) else {
        return language
            .pick("I have not noted the crop.", "No anoté cómo está el buche.")
            .to_owned();
    };
    let state = language.crop_state(look.what.state);
    let feel = match look.what.feel {
        CropFeel::Soft | CropFeel::Firm => format!(", {}", language.crop_feel(look.what.feel)),
        CropFeel::NotNoted => String::new(),
    };
    let label = language.pick("Crop", "Buche");
    format!("{label}: {state}{feel}, {}.", writing.lived(look.lived()))
}

fn droppings(writing: Writing, now: Moment, chick: &Chick) -> String {
    let language = writing.language;
    let Some(look) = chick.droppings.iter().rev().find(|look| look.at <= now) else {
        return language
            .pick(
                "I have not noted the droppings.",
                "No anoté cómo son las heces.",
            )
            .to_owned();
    };
    let (label, seen) = (
        language.pick("Droppings", "Heces"),
        language.droppings(look.what),
    );
    format!("{label}: {seen}, {}.", writing.lived(look.lived()))
}

/// The latest count of the droppings and what is usual, when they were counted.
fn droppings_counted(writing: Writing, now: Moment, chick: &Chick) -> Option<String> {
    let language = writing.language;
    let mut counts = chick.droppings_counts.iter().rev();
    let counted = counts.find(|counted| counted.at <= now)?;
    let label = language.pick("Droppings counted", "Heces contadas");
    let usual = writing.usual_droppings(now, chick);
    let usual = usual.map(|(label, about)| format!(" {label}: {about}."));
    Some(format!(
        "{label}: {}, {}.{}",
        language.counted(counted.what),
        writing.lived(counted.lived()),
        usual.unwrap_or_default()
    ))
}

fn room(writing: Writing, now: Moment, chick: &Chick) -> String {
    let language = writing.language;
    let Some(room) = chick.rooms.iter().rev().find(|room| room.at <= now) else {
        return language
            .pick(
                "I have not noted the room's temperature.",
                "No anoté la temperatura de la habitación.",
            )
            .to_owned();
    };
    let (label, warmth) = (
        language.pick("Room", "Habitación"),
        writing.temperature(room.what),
    );
    format!("{label}: {warmth}, {}.", writing.lived(room.lived()))
}

/// Since when: the first sighting of what is wrong, and how long the chick has been here.
fn since(writing: Writing, now: Moment, chick: &Chick) -> Vec<String> {
    let language = writing.language;
    let first = first_sighting(now, chick).map(|lived| match language {
        Language::English => format!("I first noted it {lived}.", lived = writing.lived(lived)),
        Language::Spanish => format!("Lo anoté por primera vez: {}.", writing.lived(lived)),
    });
    let home = chick.arrived.as_ref().map(|arrived| {
        let day = writing.day(arrived.lived().day);
        match language {
            Language::English => format!("It has been with me since {day}."),
            Language::Spanish => format!("Está conmigo desde el {day}."),
        }
    });
    first.into_iter().chain(home).collect()
}

/// The first of the sightings that lead up to what is wrong now: signs, a crop that does not move,
/// droppings that are not as usual.
fn first_sighting(now: Moment, chick: &Chick) -> Option<crate::domain::time::moment::Lived> {
    let signs = sign_seen::present(now, chick)
        .into_iter()
        .filter_map(|seen| {
            let gone = chick.signs_gone.get(&seen.what);
            let is_of_spell = |at: Moment| gone.is_none_or(|gone| at > *gone);
            chick
                .signs
                .iter()
                .find(|earlier| earlier.what == seen.what && is_of_spell(earlier.at))
                .map(|earlier| (earlier.at, earlier.lived()))
        });
    let crops = chick.crops.iter().rev().filter(|look| look.at <= now);
    let crop = crops
        .take_while(|look| look.what.state != CropState::Flat)
        .last()
        .map(|look| (look.at, look.lived()));
    let looks = chick.droppings.iter().rev().filter(|look| look.at <= now);
    let droppings = looks
        .take_while(|look| look.what != Droppings::Normal)
        .last()
        .map(|look| (look.at, look.lived()));
    signs
        .chain(crop)
        .chain(droppings)
        .min()
        .map(|(_, lived)| lived)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, Paper};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::journal::signs::Sign;
    use crate::domain::outlook::outlook;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::quantity::units::Celsius;
    use crate::domain::warnings::rules::trial::{
        crop as crop_look, droppings as look, plan, sign, with_plan,
    };
    use crate::words::call::*;

    fn said(language: Language, script: &Scenario, now: Moment) -> Vec<String> {
        let chick = script.chick().unwrap().id;
        let outlook = outlook(now, &script.journal(), chick, &script.zone()).unwrap();
        let writing = Writing::metric(language);
        let plain = |text: String| text.replace('\u{a0}', " ");
        what_to_say(writing, &outlook)
            .into_iter()
            .map(plain)
            .collect()
    }

    #[test]
    fn the_facts_come_in_the_order_of_the_questions() {
        let mut plan = plan();
        plan.name = "Pilar".to_owned();
        let mut script = with_plan(plan);
        script.note(0, 12, 0, Change::Arrived);
        script.weigh(1, 890).feed(1, 6, 0, Slot::Morning, 80);
        script.note(1, 12, 0, crop_look(CropState::HalfOrMore));
        script.note(1, 12, 5, look(Droppings::Watery));
        let (paper, count) = (Paper::Night, 2);
        script.note(1, 7, 0, Change::DroppingsCounted { paper, count });
        let room = Celsius::tenths_held(245);
        script.note(1, 12, 10, Change::RoomSeen { room });
        script.note(1, 12, 20, sign(Sign::Dull));
        let slot = Slot::Midday;
        script.note(1, 14, 0, Change::refused(Some(slot)));
        let said = said(Language::English, &script, script.at(1, 14, 30));
        assert_eq!(
            said[0],
            "I am calling about Pilar: Green-winged macaw, 12 weeks 1 day, hand-fed, not weaned."
        );
        assert!(
            said[1].starts_with("What I see: Crop does not empty"),
            "{}",
            said[1]
        );
        // (1000 - 890) / 1000 = 11 %
        assert_eq!(
            said[2],
            "Weight with an empty crop: 890 g, Tue 3 Nov, 06:45. At handover 1000 g: 11.0 % less now."
        );
        assert_eq!(
            said[3],
            "Last feeds: Tue 3 Nov, 14:00: refused; Tue 3 Nov, 06:00: 80 ml."
        );
        assert_eq!(said[4], "Crop: half or more, Tue 3 Nov, 12:00.");
        assert_eq!(
            said[5],
            "Droppings: much clear water, stool formed, Tue 3 Nov, 12:05."
        );
        assert_eq!(
            said[6],
            "Droppings counted: 2 (the night's paper), Tue 3 Nov, 07:00."
        );
        assert_eq!(said[7], "Room: 24.5 °C, Tue 3 Nov, 12:10.");
        assert_eq!(said[8], "I first noted it Tue 3 Nov, 12:00.");
        assert_eq!(said[9], "It has been with me since Mon 2 Nov.");
        assert_eq!(said.len(), 10);
    }

    /// The last feed dropped and given on day 20, one weight, seen to drink: weaned on day 34.
    #[test]
    fn a_weaned_bird_is_not_called_unweaned() {
        let mut script = with_plan(plan());
        script.feed(20, 7, 0, Slot::Morning, 80);
        for slot in [Slot::Morning, Slot::Midday, Slot::Bedtime] {
            let by_breeder = true;
            script.note(20, 12, 0, Change::FeedDropped { slot, by_breeder });
        }
        script.note(22, 9, 0, Change::DrinkingSeen);
        for day in 20..=34 {
            script.weigh(day, 950);
        }
        let who = |day| said(Language::English, &script, script.at(day, 12, 0)).remove(0);
        assert!(who(33).ends_with("hand-fed, not weaned."), "{}", who(33));
        assert!(who(34).ends_with("hand-reared, weaned."), "{}", who(34));
        let spanish = said(Language::Spanish, &script, script.at(34, 12, 0)).remove(0);
        assert!(spanish.ends_with("criado a mano, destetado."), "{spanish}");
    }

    #[test]
    fn what_nobody_noted_is_said_to_be_unknown() {
        let mut plan = plan();
        plan.hatched = None;
        let script = with_plan(plan);
        for language in Language::ALL {
            let said = said(language, &script, script.at(0, 6, 0));
            assert_eq!(said.len(), 7, "{said:?}");
            assert!(said.iter().all(|line| line.ends_with('.')), "{said:?}");
        }
        let english = said(Language::English, &script, script.at(0, 6, 0));
        assert!(english[0].contains("a chick: Green-winged macaw, age not known"));
        assert_eq!(english[4], "I have not noted the crop.");
    }

    #[test]
    fn a_gain_is_called_more() {
        let mut script = with_plan(plan());
        script.weigh(1, 1_050);
        let said = said(Language::Spanish, &script, script.at(1, 8, 0));
        assert!(said[2].ends_with("ahora 5,0 % más."), "{}", said[2]);
    }
}

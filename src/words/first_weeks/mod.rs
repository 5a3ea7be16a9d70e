//! The cards of the first weeks: titles, lines, drawings in words, sources, and how they are searched.
//!
//! **Invariant.** A number that is a constant of the domain stands in a line as `{name}`, see `NUMBERS` below.

pub mod english;
pub mod spanish;

use crate::domain::formula::serving_heat::TemperatureUnit;
use crate::domain::homecoming::first_days::{QUARANTINE_DAYS, VET_DAYS};
use crate::domain::homecoming::first_weeks::{BURN_SHOWS_DAYS, Card, Picture, Source};
use crate::domain::homecoming::life_stage::WEANED_DAYS;
use crate::domain::instruction::feed_session::MIX_KEEPS_MINUTES;
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::quantity::order::sorted_by;
use crate::domain::quantity::units::Celsius;
use crate::domain::warnings::rules::droppings_seen::LIQUID_MINUTES;
use crate::domain::warnings::rules::missed_feeds::{HUNGRY_IN_PINS_MINUTES, HUNGRY_MINUTES};
use crate::domain::warnings::rules::served_hot::{BURN_FROM, WINDOW_TO};
use crate::domain::weaning::stage::WEIGH_ON_DAYS;
use crate::domain::weaning::triggers::BEGGING_DAYS;
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    weeks_title: "First weeks", "Primeras semanas";
    weeks_today: "For today", "Para hoy";
    weeks_all: "All cards", "Todas las fichas";
    weeks_search: "Search, such as fumes or begging", "Buscar, por ejemplo humos o pide";
    weeks_from: "Where this comes from", "De dónde viene";
    weeks_breeder_first: "What your breeder and your vet say comes first.", "Antes está lo que digan su criador y su veterinario.";
}

/// What a card says, its numbers still to be filled in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CardText {
    /// One instruction a line.
    pub lines: &'static [&'static str],
    /// Words by which it is found too.
    pub search: &'static str,
}

/// A drawing in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PictureWords {
    /// What it shows, for those who do not see it.
    pub shows: &'static str,
    /// Words below it, from left to right.
    pub parts: &'static [&'static str],
}

/// Writes a constant of the domain.
type Number = fn(Writing) -> String;

/// The constants that lines name, and the names of screens.
const NUMBERS: [(&str, Number); 19] = [
    ("{room}", Writing::room_range),
    ("{serve}", |writing| writing.degrees(WINDOW_TO)),
    ("{burn}", |writing| writing.degrees(BURN_FROM)),
    ("{burn_days}", |writing| writing.days(BURN_SHOWS_DAYS.value)),
    ("{vet}", |writing| writing.days(VET_DAYS.value)),
    ("{quarantine}", |writing| {
        writing.days(QUARANTINE_DAYS.value)
    }),
    ("{weaned}", |writing| writing.days(WEANED_DAYS)),
    ("{weigh_on}", |writing| writing.days(WEIGH_ON_DAYS)),
    ("{begging}", |writing| {
        writing.days(i32::try_from(BEGGING_DAYS).unwrap_or(i32::MAX))
    }),
    ("{retry}", |writing| {
        writing.minutes(CarePlan::RETRIES_MINUTES[0].into())
    }),
    ("{retry2}", |writing| {
        writing.minutes(CarePlan::RETRIES_MINUTES[1].into())
    }),
    ("{hungry}", |writing| writing.minutes(HUNGRY_MINUTES)),
    ("{pins}", |writing| writing.minutes(HUNGRY_IN_PINS_MINUTES)),
    ("{liquid}", |writing| writing.minutes(LIQUID_MINUTES)),
    ("{mix}", |writing| writing.minutes(MIX_KEEPS_MINUTES)),
    ("{advice_page}", |writing| {
        writing.language.advice_title().to_owned()
    }),
    ("{home_page}", |writing| {
        writing.language.home_title().to_owned()
    }),
    ("{handover_page}", |writing| {
        writing.language.handover_title().to_owned()
    }),
    ("{wrong_page}", |writing| {
        writing.language.wrong_title().to_owned()
    }),
];

impl Language {
    /// The title of a card. Apart from its lines: the first screen names a card and holds none.
    pub const fn card_title(self, card: Card) -> &'static str {
        match card {
            Card::Carrier => self.pick("Carrier and car", "El transportín y el viaje"),
            Card::FirstNight => self.pick("The first night", "La primera noche"),
            Card::Refusal => self.pick("It will not eat", "No quiere comer"),
            Card::Weighing => self.pick("Weighing", "Pesar"),
            Card::VetVisit => self.pick(
                "The first visit to the vet",
                "La primera visita al veterinario",
            ),
            Card::Perch => self.pick("Perch, floor and warm spot", "Percha, suelo y zona cálida"),
            Card::Air => self.pick("Fumes at home", "Humos y vapores en casa"),
            Card::Room => self.pick("A walk through the room", "Un repaso a la habitación"),
            Card::OtherBirds => self.pick("Other birds and quarantine", "Otras aves y cuarentena"),
            Card::Holding => self.pick("Holding it at a feed", "Cómo sujetarlo en la toma"),
            Card::Foods => self.pick("Solid foods", "Alimento sólido"),
            Card::Poisons => self.pick("What is poison", "Qué es veneno"),
            Card::Tool => self.pick("Spoon and syringe", "Cuchara y jeringa"),
            Card::Water => self.pick("Water", "El agua"),
            Card::Droppings => self.pick("Droppings", "Las heces"),
            Card::Cleaning => self.pick(
                "Cleaning beak, chest and tools",
                "Limpiar pico, pecho y utensilios",
            ),
            Card::Keel => self.pick("The breastbone by touch", "La quilla al tacto"),
            Card::Begging => self.pick("Begging: hunger or company?", "Pide: ¿hambre o compañía?"),
            Card::Powder => self.pick("Storing the powder", "Guardar la papilla en polvo"),
            Card::CropBurn => {
                self.pick("Looking for a crop burn", "Quemadura de buche: cómo mirar")
            }
            Card::ReturnedFood => self.pick("Food that comes back", "Regurgitó: qué mirar"),
            Card::Flying => self.pick("Flying and wings", "Volar y alas"),
            Card::Bath => self.pick("Bath and feathers", "Baño y plumas"),
            Card::SecondCarer => {
                self.pick("A second carer, a holiday", "Otro cuidador, vacaciones")
            }
            Card::Papers => self.pick("The bird's papers", "Los papeles del ave"),
            Card::PowderGone => self.pick(
                "No powder, or another brand",
                "Sin papilla, o de otra marca",
            ),
            Card::ToolFails => self.pick(
                "Scale or thermometer fails",
                "Falla la báscula o termómetro",
            ),
            Card::Prescribed => {
                self.pick("The vet prescribed something", "El veterinario recetó algo")
            }
            Card::AfterWeaning => {
                self.pick("The weeks after weaning", "Las semanas tras el destete")
            }
        }
    }

    const fn card_text(self, card: Card) -> CardText {
        match self {
            Self::English => english::text(card),
            Self::Spanish => spanish::text(card),
        }
    }

    /// A drawing in words.
    pub const fn picture(self, picture: Picture) -> PictureWords {
        let (shows, parts): (_, &[&str]) = match (self, picture) {
            (Self::English, Picture::Keel) => (
                "Three breasts cut across. Hollow: the flesh falls in beside a sharp keel. Flat: the flesh slopes straight down from the keel. Round: the flesh bulges and the keel hardly stands out.",
                &["hollow", "flat", "round"],
            ),
            (Self::Spanish, Picture::Keel) => (
                "Tres pechos en corte. Hundido: la carne se hunde junto a una quilla afilada. Plano: la carne baja recta desde la quilla. Redondo: la carne abomba y la quilla apenas sobresale.",
                &["hundido", "plano", "redondo"],
            ),
            (Self::English, Picture::WarmSpot) => (
                "A cage from the side. A perch just above the floor, a thermometer at each end, and a warm pad under one half of the floor.",
                &["warm half", "cooler half"],
            ),
            (Self::Spanish, Picture::WarmSpot) => (
                "Una jaula de lado. Una percha casi en el suelo, un termómetro en cada lado y una manta térmica bajo la mitad del suelo.",
                &["mitad cálida", "mitad fresca"],
            ),
            (Self::English, Picture::Scale) => (
                "Left: an empty box on the scale, which shows 0. Right: the chick in the box, its tail over the edge.",
                &["box on, tare: 0", "chick in, wait"],
            ),
            (Self::Spanish, Picture::Scale) => (
                "Izquierda: una caja vacía en la báscula, que marca 0. Derecha: el polluelo en la caja, la cola por fuera.",
                &["caja y tara: 0", "polluelo, espere"],
            ),
            (Self::English, Picture::Holding) => (
                "The chick from the front, upright on a towel. A hand behind the head holds it from both sides. The tool comes from the left side of its beak, on your right.",
                &["its right", "its left: the tool"],
            ),
            (Self::Spanish, Picture::Holding) => (
                "El polluelo de frente, derecho sobre una toalla. Una mano detrás sostiene la cabeza por los dos lados. El utensilio entra por el lado izquierdo de su pico, a la derecha de usted.",
                &["derecha del ave", "izquierda: utensilio"],
            ),
            (Self::English, Picture::CropPlaces) => (
                "The chick from the front. The crop lies across the foot of the neck, on the upper chest.",
                &["the crop; look below"],
            ),
            (Self::Spanish, Picture::CropPlaces) => (
                "El polluelo de frente. El buche cruza la base del cuello, en lo alto del pecho.",
                &["el buche: mire abajo"],
            ),
        };
        PictureWords { shows, parts }
    }

    /// Where a card comes from: author and year, or its kind.
    const fn card_source(self, source: Source) -> &'static str {
        match source {
            Source::Breeders => self.pick(
                "breeders' common practice",
                "práctica común de los criadores",
            ),
            Source::VetPages => self.pick(
                "client pages of avian vets",
                "páginas de veterinarios de aves para clientes",
            ),
            Source::DuerrGage2020 => self.pick(
                "a vets' book: Duerr & Gage 2020",
                "un libro de veterinarios: Duerr & Gage 2020",
            ),
            Source::Doneley2018 => self.pick(
                "a vets' congress: Doneley 2018",
                "un congreso de veterinarios: Doneley 2018",
            ),
            Source::Rivera2008 => self.pick(
                "a vet's articles: Rivera 2008",
                "artículos de una veterinaria: Rivera 2008",
            ),
            Source::Wissman2012 => self.pick(
                "a vet's article: Wissman 2012",
                "un artículo de una veterinaria: Wissman 2012",
            ),
            Source::VetTimes2019 => self.pick("Vet Times, 18 Feb 2019", "Vet Times, 18 feb 2019"),
            Source::Kramer2015 => self.pick(
                "a vets' congress: Kramer 2015",
                "un congreso de veterinarios: Kramer 2015",
            ),
            Source::Shuster2012 => self.pick(
                "a journal: Shuster and others 2012",
                "una revista científica: Shuster y otros 2012",
            ),
            Source::Groffen2008 => self.pick(
                "a journal: Groffen and others 2008",
                "una revista científica: Groffen y otros 2008",
            ),
            Source::Roudybush1986 => self.pick(
                "a research report: Roudybush 1986",
                "un informe de investigación: Roudybush 1986",
            ),
            Source::Harrison1994 => self.pick(
                "a vets' book: Harrison 1994",
                "un libro de veterinarios: Harrison 1994",
            ),
            Source::Romagnano => self.pick(
                "a vet's article: Romagnano",
                "un artículo de una veterinaria: Romagnano",
            ),
            Source::Digney1998 => self.pick(
                "Digney 1998, as a teaching manual gives it",
                "Digney 1998, según un manual de enseñanza",
            ),
            Source::Muser1995 => self.pick("a symposium: Muser 1995", "un simposio: Muser 1995"),
            Source::Watchbird => self.pick(
                "a magazine of aviculture: Watchbird",
                "una revista de avicultura: Watchbird",
            ),
            Source::Governments => self.pick(
                "governments' pages on protected species",
                "páginas oficiales sobre especies protegidas",
            ),
        }
    }

    /// Sources and standing of a card.
    pub fn card_from(self, card: Card) -> String {
        let sources = card
            .sources()
            .iter()
            .map(|source| self.card_source(*source));
        let sources = sources.collect::<Vec<_>>().join("; ");
        let standing = self.standing(card.standing());
        match self {
            Self::English => format!("Source: {sources}. Standing: {standing}."),
            Self::Spanish => format!("Fuente: {sources}. Valor: {standing}."),
        }
    }
}

impl Writing {
    /// The lines of a card, its numbers filled in.
    pub fn card_lines(self, card: Card) -> Vec<String> {
        let lines = self.language.card_text(card).lines.iter();
        lines.map(|line| self.with_limits(line)).collect()
    }

    /// The line that names the card of today.
    pub fn weeks_line(self, card: Card) -> String {
        let say = self.language;
        format!("{}: {}", say.weeks_title(), say.card_title(card))
    }

    /// The cards in which every typed word begins a word, those named by one first; all cards for none.
    pub fn cards_found(self, typed: &str) -> Vec<Card> {
        let wanted = folded_words(typed);
        let has_all = |card: &Card| {
            let words = self.card_words(*card);
            let begins = |wanted: &String| words.iter().any(|word| word.starts_with(wanted));
            wanted.iter().all(begins)
        };
        let found: Vec<Card> = Card::ALL.into_iter().filter(has_all).collect();
        let is_beside = |card: &Card| {
            let title = folded_words(self.language.card_title(*card));
            let is_named = |wanted: &String| title.iter().any(|word| word.starts_with(wanted));
            !wanted.iter().any(is_named)
        };
        sorted_by(found, |one, other| is_beside(one).cmp(&is_beside(other)))
    }

    fn card_words(self, card: Card) -> Vec<String> {
        let lines = self.card_lines(card).join(" ");
        let (title, search) = (
            self.language.card_title(card),
            self.language.card_text(card).search,
        );
        folded_words(&format!("{title} {lines} {search}"))
    }

    fn with_limits(self, line: &str) -> String {
        NUMBERS
            .iter()
            .filter(|(name, _)| line.contains(name))
            .fold(line.to_owned(), |line, (name, number)| {
                line.replace(name, &number(self))
            })
    }

    /// A temperature without a decimal that is 0: `41 °C`.
    pub(crate) fn degrees(self, temperature: Celsius) -> String {
        format!(
            "{}\u{a0}{}",
            self.degrees_number(temperature),
            self.temperature_unit()
        )
    }

    fn degrees_number(self, temperature: Celsius) -> String {
        self.tenths(match self.temperature {
            TemperatureUnit::Celsius => temperature.tenths(),
            TemperatureUnit::Fahrenheit => temperature.tenths_fahrenheit(),
        })
    }

    fn room_range(self) -> String {
        let from = self.degrees_number(CarePlan::ROOM_FROM);
        let to = self.degrees(CarePlan::ROOM_TO);
        match self.language {
            Language::English => format!("{from} to {to}"),
            Language::Spanish => format!("de {from} a {to}"),
        }
    }
}

/// The words of a text in lower case without accents: `¿Óxido?` is `oxido`.
fn folded_words(text: &str) -> Vec<String> {
    let is_mark = |letter: &char| ('\u{300}'..='\u{36f}').contains(letter);
    let lower = text.chars().flat_map(char::to_lowercase);
    let folded: String = lower.filter(|letter| !is_mark(letter)).map(plain).collect();
    let words = folded.split(|letter: char| !letter.is_alphanumeric());
    let words = words.filter(|word| !word.is_empty());
    words.map(str::to_owned).collect()
}

/// A letter of English or Spanish without its accent.
const fn plain(letter: char) -> char {
    match letter {
        'á' => 'a',
        'é' => 'e',
        'í' => 'i',
        'ó' => 'o',
        'ú' | 'ü' => 'u',
        'ñ' => 'n',
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use crate::words::first_weeks::*;

    /// Half a screen at 360 × 740.
    const MOST_WORDS: usize = 90;

    const WRITINGS: [Writing; 2] = [
        Writing::metric(Language::English),
        Writing::metric(Language::Spanish),
    ];

    fn ordinary(text: &str) -> String {
        text.replace('\u{a0}', " ")
    }

    #[test]
    fn every_card_says_something_in_each_language_on_half_a_screen() {
        let mut long = Vec::new();
        for writing in WRITINGS {
            for card in Card::ALL {
                let (lines, title) = (writing.card_lines(card), writing.language.card_title(card));
                assert!(lines.len() >= 4, "{card:?}");
                assert!(title.chars().count() <= 34, "{title}");
                let all = format!("{title} {}", lines.join(" "));
                let count = all.split(|c: char| c.is_whitespace()).count();
                if count > MOST_WORDS {
                    long.push(format!("{} {card:?}: {count}", writing.language.tag()));
                }
            }
        }
        assert!(long.is_empty(), "{long:#?}");
    }

    #[test]
    fn every_card_says_where_it_comes_from_and_how_far_that_goes() {
        for language in Language::ALL {
            for card in Card::ALL {
                let from = language.card_from(card);
                assert!(from.contains(language.standing(card.standing())), "{from}");
                assert!(
                    from.contains(language.card_source(card.sources()[0])),
                    "{from}"
                );
            }
        }
        let carrier = Language::English.card_from(Card::SecondCarer);
        assert!(
            carrier.ends_with("Standing: our own limit, not tested on birds."),
            "{carrier}"
        );
    }

    #[test]
    fn the_two_languages_give_the_same_instructions() {
        for card in Card::ALL {
            let [english, spanish] = Language::ALL.map(|language| language.card_text(card));
            assert_eq!(english.lines.len(), spanish.lines.len(), "{card:?}");
            for (line, other) in english.lines.iter().zip(spanish.lines) {
                for (name, _) in NUMBERS {
                    assert_eq!(
                        line.contains(name),
                        other.contains(name),
                        "{line} / {other}"
                    );
                }
            }
        }
    }

    /// A line that holds `45 days` in so many letters would stay behind when the limit is changed.
    #[test]
    fn a_number_of_the_domain_comes_from_there_and_every_one_is_used() {
        for writing in WRITINGS {
            let texts = Card::ALL.map(|card| writing.language.card_text(card).lines);
            let lines: Vec<&str> = texts.into_iter().flatten().copied().collect();
            for (name, number) in NUMBERS {
                assert!(lines.iter().any(|line| line.contains(name)), "{name}");
                let written = ordinary(&number(writing));
                let copied: Vec<_> = lines
                    .iter()
                    .filter(|line| ordinary(line).contains(&written))
                    .collect();
                assert!(copied.is_empty(), "{name}: {copied:?}");
            }
            for card in Card::ALL {
                let left = writing
                    .card_lines(card)
                    .into_iter()
                    .find(|line| line.contains(['{', '}']));
                assert_eq!(left, None);
            }
        }
    }

    #[test]
    fn a_number_is_written_in_the_unit_chosen() {
        let line = |writing: Writing| ordinary(&writing.card_lines(Card::CropBurn).join(" "));
        assert!(line(WRITINGS[0]).contains("at 43.3 °C or more"));
        assert!(line(WRITINGS[1]).contains("a 43,3 °C o más"));
        let american = Writing {
            temperature: TemperatureUnit::Fahrenheit,
            ..WRITINGS[0]
        };
        // 43.3 × 1.8 + 32 = 109.94; 24 and 27 °C are 75.2 and 80.6 °F.
        assert!(line(american).contains("at 109.9 °F or more"));
        let carrier = ordinary(&american.card_lines(Card::Carrier).join(" "));
        assert!(carrier.contains("Inside 75.2 to 80.6 °F"));
    }

    #[test]
    fn a_card_is_found_by_the_beginnings_of_its_words_without_case_and_accents() {
        let [english, spanish] = WRITINGS;
        assert_eq!(english.cards_found("fumes pan")[0], Card::Air);
        assert!(english.cards_found("FUM").contains(&Card::Air));
        assert!(spanish.cards_found("humos").contains(&Card::Air));
        assert_eq!(spanish.cards_found("antiadh sarten"), [Card::Air]);
        assert!(spanish.cards_found("vomito").contains(&Card::ReturnedFood));
        assert!(
            spanish
                .cards_found("vo\u{301}mito")
                .contains(&Card::ReturnedFood)
        );
        assert!(spanish.cards_found("anos").is_empty());
        assert!(english.cards_found("refus").contains(&Card::Refusal));
        assert!(english.cards_found("avocado").contains(&Card::Poisons));
        assert!(spanish.cards_found("palta").contains(&Card::Poisons));
        assert!(english.cards_found("fumes zebra").is_empty());
        // The middle of a word is no beginning.
        assert!(english.cards_found("vocado").is_empty());
        assert_eq!(english.cards_found("  "), Card::ALL);
    }

    #[test]
    fn every_drawing_is_told_in_words_and_every_title_is_its_own() {
        for language in Language::ALL {
            for picture in Card::ALL.into_iter().filter_map(Card::picture) {
                let words = language.picture(picture);
                assert!(words.shows.len() > 60 && !words.parts.is_empty());
            }
            let mut titles = Card::ALL.map(|card| language.card_title(card)).to_vec();
            titles.sort_unstable();
            titles.dedup();
            assert_eq!(titles.len(), Card::ALL.len());
        }
    }
}

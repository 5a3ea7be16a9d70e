//! A breeder's season: what her table says of each chick, in which order, and several reports read at once.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod readers;

use perchlight::domain::homecoming::clutch::{Clutch, clutches};
use perchlight::domain::homecoming::departure::left_at;
use perchlight::domain::homecoming::placement::Place;
use perchlight::domain::homecoming::reports::last_heard;
use perchlight::domain::homecoming::vet_visit::VetContact;
use perchlight::domain::journal::entries::{Carer, Change, ChickId};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::outlook::outlook;
use perchlight::domain::plan::care_plan::{CarePlan, Reference, Role, Slot};
use perchlight::domain::plan::parts::Author;
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Grams, Millilitres, Percent};
use perchlight::domain::time::moment::{Day, Moment, Offset};
use perchlight::domain::warnings::level::Level;
use perchlight::share::breeder_table::{BreederRow, Filter, breeder_rows};
use perchlight::share::card::card_to_link_text;
use perchlight::share::chicks_csv::chicks_csv;
use perchlight::share::import::{Imported, read_texts};
use perchlight::share::link::entries_to_link_text;
use perchlight::share::placed::Placed;
use perchlight::store::import_error::ImportError;
use perchlight::words::Language;
use perchlight::words::format::Writing;

fn day_zero() -> Day {
    Day::from_date(2026, 11, 2).unwrap()
}

fn macaw(name: &str) -> CarePlan {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    name.clone_into(&mut plan.name);
    for feed in &mut plan.feeds {
        feed.volume = Millilitres::whole(60);
    }
    plan.reference = Some(Reference {
        weight: Grams::whole(1_000),
        day: day_zero(),
    });
    plan
}

/// A chick of the breeder, handed over to its owner on day 0.
fn placed(number: u8, plan: CarePlan) -> Scenario {
    let mut script = with_breeder(number, plan);
    let name = String::new();
    let to = Carer::Owner;
    script.note(0, 6, 0, Change::HandedOver { to, name });
    script.note(0, 8, 0, Change::Arrived);
    script
}

fn with_breeder(number: u8, plan: CarePlan) -> Scenario {
    let mut script = Scenario::new(ChickId([number; 12]), plan, day_zero(), Offset::UTC);
    let sets = vec![script.chick().unwrap().plans.added().id];
    let said_by = String::new();
    script.note(0, 5, 0, Change::PartAgreed { sets, said_by });
    let (to, name) = (Carer::Breeder, String::new());
    script.note(0, 5, 0, Change::HandedOver { to, name });
    script
}

/// Weighs at 1,000 g and gives every feed of these days.
fn noted(script: &mut Scenario, days: std::ops::Range<i32>) {
    for day in days {
        script.weigh(day, 1_000);
        script.feed(day, 7, 0, Slot::Morning, 60);
        script.feed(day, 14, 0, Slot::Midday, 60);
        script.feed(day, 21, 0, Slot::Bedtime, 60);
    }
}

fn judged(script: &Scenario, now: Moment) -> Placed {
    let (journal, chick) = (script.journal(), script.chick().unwrap());
    let is_followed = left_at(&chick).is_some();
    let followed = is_followed.then(|| last_heard(now, &journal, chick.id));
    let at = followed.flatten().unwrap_or(now);
    let outlook = outlook(at, &journal, chick.id, &script.zone()).unwrap();
    Placed { outlook, followed }
}

fn table(now: Moment, scripts: &[Scenario]) -> Vec<BreederRow> {
    let placed: Vec<Placed> = scripts.iter().map(|script| judged(script, now)).collect();
    breeder_rows(now, &placed, |_| false)
}

fn names(rows: &[BreederRow]) -> Vec<&str> {
    rows.iter().map(|row| row.row.name.as_str()).collect()
}

/// What the row says of the state, with plain spaces.
fn said(row: &BreederRow) -> String {
    let writing = Writing::metric(Language::English);
    let (word, reason) = writing.breeder_state(row.place, row.row.state, row.reason.as_ref());
    format!("{word} {reason}")
        .replace('\u{a0}', " ")
        .trim()
        .to_owned()
}

#[test]
fn who_needs_a_call_comes_first_and_silence_is_need() {
    let mut ill = placed(1, macaw("Ill"));
    noted(&mut ill, 0..10);
    ill.weigh(10, 850);
    let mut silent = placed(2, macaw("Silent"));
    noted(&mut silent, 0..2);
    let mut calm = placed(3, macaw("Calm"));
    noted(&mut calm, 0..10);
    let mut asks = placed(4, macaw("Asks"));
    noted(&mut asks, 0..10);
    let mut wish = asks.chick().unwrap().plan;
    wish.loss_limit = Percent::whole(12);
    asks.set_plan(9, 22, 0, &wish, Author::OWNER_ASKING);
    let home = with_breeder(5, macaw("Home"));
    let now = ill.at(10, 8, 0);
    let rows = table(now, &[calm, home, asks, silent, ill]);
    assert_eq!(names(&rows), ["Ill", "Silent", "Asks", "Calm", "Home"]);
    let need: Vec<bool> = rows.iter().map(BreederRow::needs_call).collect();
    assert_eq!(need, [true, true, false, false, false]);
    assert_eq!(rows[2].asks, 1);
    // 150 g of 1,000 g.
    assert_eq!(rows[0].row.handover_loss_pct, Some(15.0));
    assert!(
        said(&rows[0]).starts_with("Call the owner.")
            || rows[0].row.state.level() > Some(Level::CallBreeder)
    );
    assert!(!said(&rows[0]).contains("breeder"), "{}", said(&rows[0]));
}

/// Reports are due daily for seven days, then every third day; 12 h overdue is silence (the breeder's own rule
/// where she set days).
#[test]
fn silence_begins_twelve_hours_after_a_report_was_due_and_is_never_settled() {
    let mut script = placed(1, macaw("Basil"));
    noted(&mut script, 0..3);
    // Last noted on day 2 at 21:00: due on day 3 at 21:00, silent from day 4 at 09:00.
    let row = |day, hour, minute| {
        table(script.at(day, hour, minute), std::slice::from_ref(&script)).remove(0)
    };
    assert!(!row(4, 8, 59).needs_call());
    assert_eq!(said(&row(4, 8, 59)), "Settled on Wed 4 Nov.");
    assert!(row(4, 9, 0).needs_call());
    assert_eq!(
        said(&row(4, 9, 0)),
        "Not known. No report for 1 day, the last on Wed 4 Nov"
    );
    assert_eq!(
        said(&row(10, 22, 0)),
        "Not known. No report for 8 days, the last on Wed 4 Nov"
    );
    assert!(!said(&row(10, 22, 0)).contains("Settled"));
    assert_eq!(row(10, 22, 0).row.quiet_days, Some(8));
    assert_eq!(row(10, 22, 0).placed_days, Some(10));
}

#[test]
fn a_chick_that_has_not_left_is_not_silent_and_one_put_away_needs_nobody() {
    let mut home = with_breeder(1, macaw("Home"));
    home.weigh(0, 1_000);
    let rows = table(home.at(30, 12, 0), &[home.clone()]);
    assert_eq!(rows[0].place, Place::WithMe);
    assert!(!rows[0].needs_call());
    assert_eq!((rows[0].placed_days, rows[0].row.quiet_days), (None, None));
    let gone = placed(2, macaw("Gone"));
    let now = gone.at(30, 12, 0);
    let judged = [judged(&gone, now)];
    assert!(breeder_rows(now, &judged, |_| false)[0].needs_call());
    let away = &breeder_rows(now, &judged, |_| true)[0];
    assert_eq!((away.place, away.needs_call()), (Place::Archived, false));
}

#[test]
fn a_row_tells_weight_food_plan_and_vet_as_they_were_at_the_last_report() {
    let mut plan = macaw("Basil");
    plan.owner_name = "Mira".to_owned();
    plan.owner_number = "+1 555 0100".to_owned();
    plan.hatched = Some(day_zero().plus(-84));
    let mut script = placed(1, plan.clone());
    noted(&mut script, 0..2);
    // Half of it on day 2: 60 + 60 + 60 twice and 30 + 30 + 30 of 3 × 180 ml: 450 / 540 = 83.3 %.
    script.weigh(2, 990);
    for (hour, slot) in [(7, Slot::Morning), (14, Slot::Midday), (21, Slot::Bedtime)] {
        script.feed(2, hour, 0, slot, 30);
    }
    script.weigh(3, 980);
    let row = table(script.at(3, 8, 0), std::slice::from_ref(&script)).remove(0);
    let pct = row.eaten_pct.unwrap();
    assert!((pct - 83.333).abs() < 0.01, "{pct}");
    assert_eq!(row.weight, Some(Grams::whole(980)));
    // 20 g of 1,000 g.
    assert_eq!(row.row.handover_loss_pct, Some(2.0));
    assert!(row.curve.is_some());
    assert_eq!(
        (row.owner.as_str(), row.owner_number.as_str()),
        ("Mira", "+1 555 0100")
    );
    // 84 days at handover and three since: 12 weeks 3 days.
    assert_eq!(row.age.unwrap().weeks_and_days(), (12, 3));
    assert_eq!(row.place, Place::Placed);
    assert_eq!((row.vet, row.is_plan_current), (VetContact::None, true));
    // A call noted to a vet, which is no visit, and a set of the breeder's that her owner has not taken.
    let (whom, agreed) = (Role::AvianVet, String::new());
    script.note(3, 9, 0, Change::Called { whom, agreed });
    plan.loss_limit = Percent::whole(8);
    script.set_plan(3, 10, 0, &plan, Author::BREEDER_AFAR);
    let row = table(script.at(3, 11, 0), std::slice::from_ref(&script)).remove(0);
    let third = script.at(3, 9, 0).lived(Offset::UTC).day;
    assert_eq!(
        (row.vet, row.is_plan_current),
        (VetContact::Called(third), false)
    );
    let sets = script.chick().unwrap().plans.untaken();
    script.note(3, 12, 0, Change::PartTaken { sets });
    assert!(
        table(script.at(3, 13, 0), &[script])
            .remove(0)
            .is_plan_current
    );
}

#[test]
fn an_owner_whom_the_breeder_notes_later_is_shown_until_the_owner_s_own_word() {
    let mut script = placed(1, macaw("Basil"));
    let owner = |script: &Scenario| {
        let row = table(script.at(2, 8, 0), std::slice::from_ref(script)).remove(0);
        (row.owner, row.owner_number)
    };
    assert_eq!(owner(&script), (String::new(), String::new()));
    let mut noted = script.chick().unwrap().plan;
    noted.owner_name = "Mira".to_owned();
    noted.owner_number = "+1 555 0110".to_owned();
    script.set_plan(1, 9, 0, &noted, Author::BREEDER_AFAR);
    assert_eq!(
        owner(&script),
        ("Mira".to_owned(), "+1 555 0110".to_owned())
    );
    noted.owner_name = "Mira Example".to_owned();
    noted.owner_number = "+1 555 0111".to_owned();
    script.set_plan(1, 10, 0, &noted, Author::OWNER);
    let own = ("Mira Example".to_owned(), "+1 555 0111".to_owned());
    assert_eq!(owner(&script), own);
}

#[test]
fn a_report_of_before_a_newer_one_changes_no_row() {
    let mut script = placed(1, macaw("Basil"));
    noted(&mut script, 0..4);
    let whole = script.journal();
    let now = script.at(4, 9, 0);
    let before = table(now, std::slice::from_ref(&script));
    let mut old = placed(1, macaw("Basil"));
    noted(&mut old, 0..2);
    let mut joined = whole.clone();
    assert_eq!(
        joined.join(&old.journal()),
        0,
        "the newer report holds all of the older one"
    );
    assert_eq!(table(now, &[script]), before);
}

#[test]
fn filters_show_one_group_one_clutch_one_species() {
    let hatched = |days: i32, name: &str, species| {
        let mut plan = CarePlan {
            species,
            ..macaw(name)
        };
        plan.hatched = Some(day_zero().plus(-days));
        plan
    };
    let scarlet = Species::ScarletMacaw;
    let scripts = [
        placed(1, hatched(80, "A", scarlet)),
        with_breeder(2, hatched(77, "B", scarlet)),
        with_breeder(3, hatched(40, "C", scarlet)),
        with_breeder(4, hatched(78, "D", Species::GreenWingedMacaw)),
    ];
    let rows = table(scripts[0].at(0, 12, 0), &scripts);
    let found = clutches(rows.iter().map(|row| (row.species, row.hatched)));
    let first = Clutch {
        first: day_zero().plus(-80),
        last: day_zero().plus(-77),
        species: scarlet,
    };
    assert!(found.contains(&first));
    let shown = |filter: Filter| {
        let mut shown: Vec<&str> = Vec::new();
        shown.extend(
            rows.iter()
                .filter(|row| filter.shows(row))
                .map(|row| row.row.name.as_str()),
        );
        shown.sort_unstable();
        shown
    };
    let all = Filter::default();
    assert_eq!(shown(all), ["A", "B", "C", "D"]);
    assert_eq!(
        shown(Filter {
            clutch: Some(first),
            ..all
        }),
        ["A", "B"]
    );
    assert_eq!(
        shown(Filter {
            place: Some(Place::WithMe),
            ..all
        }),
        ["B", "C", "D"]
    );
    assert_eq!(
        shown(Filter {
            species: Some(Species::GreenWingedMacaw),
            ..all
        }),
        ["D"]
    );
    let both = Filter {
        place: Some(Place::Placed),
        clutch: Some(first),
        species: Some(scarlet),
    };
    assert_eq!(shown(both), ["A"]);
}

#[test]
fn one_table_holds_all_chicks_and_is_read_back() {
    let mut plan = macaw("=Basil, \"the\n second\"");
    plan.ring = "GB 1".to_owned();
    plan.owner_name = "Mira".to_owned();
    plan.owner_number = "+1 555 0100".to_owned();
    plan.hatched = Some(day_zero().plus(-84));
    let mut script = placed(1, plan);
    noted(&mut script, 0..3);
    script.weigh(3, 965);
    let rows = table(
        script.at(3, 8, 0),
        &[script, with_breeder(2, macaw("Dill"))],
    );
    let csv = chicks_csv(Writing::metric(Language::English), &rows);
    let records = readers::csv_records(csv.trim_start_matches('\u{feff}')).unwrap();
    assert_eq!(records.len(), 3);
    let headings = &records[0];
    assert!(records.iter().all(|record| record.len() == headings.len()));
    let cell = |record: &[String], heading: &str| {
        let place = headings.iter().position(|known| known == heading);
        record[place.unwrap_or_else(|| panic!("no {heading} in {headings:?}"))].clone()
    };
    let basil = &records[1..]
        .iter()
        .find(|record| record[0].contains("Basil"))
        .unwrap();
    // The apostrophe keeps spreadsheets from running a typed text that begins like a formula.
    assert_eq!(cell(basil, "chick"), "'=Basil, \"the\n second\"");
    assert_eq!(cell(basil, "ring or chip"), "GB 1");
    assert_eq!(cell(basil, "telephone"), "'+1 555 0100");
    assert_eq!(cell(basil, "hatched"), "2026-08-10");
    assert_eq!(cell(basil, "weight (g)"), "965");
    assert_eq!(cell(basil, "since handover (%)"), "-3.5");
    assert_eq!(cell(basil, "eaten of the plan (%)"), "100");
    assert_eq!(cell(basil, "last report"), "2026-11-05");
    assert_eq!(cell(basil, "days of silence"), "0");
    assert_eq!(cell(basil, "days placed"), "3");
    let dill = &records[1..]
        .iter()
        .find(|record| record[0] == "Dill")
        .unwrap();
    assert_eq!(cell(dill, "group"), "With me");
    for empty in [
        "last report",
        "days of silence",
        "days placed",
        "eaten of the plan (%)",
    ] {
        assert_eq!(cell(dill, empty), "", "{empty}");
    }
}

#[test]
fn several_links_in_one_text_are_read_one_by_one() {
    let scripts: Vec<Scenario> = (1..=3)
        .map(|number| placed(number, macaw("Basil")))
        .collect();
    let link = |script: &Scenario| entries_to_link_text(script.journal().entries()).unwrap();
    let card = card_to_link_text(&scripts[0].journal().entries_of_plan(ChickId([1; 12])));
    let first = format!("https://example.org/app/#{}", link(&scripts[0]));
    let text = format!(
        "Mira: {first}\n> Tom writes:\nhttps://example.org/#{}\nagain {first}\nhttps://example.org/#{} cut\n{card}",
        link(&scripts[1]),
        &link(&scripts[2])[..40],
    );
    let read = read_texts(&text);
    let entries = |script: &Scenario| Ok(Imported::Entries(script.journal().entries().to_vec()));
    assert_eq!(read.len(), 4, "the same link twice is one");
    assert_eq!(read[0], entries(&scripts[0]));
    assert_eq!(read[1], entries(&scripts[1]));
    assert!(
        read[2].is_err(),
        "a link that was cut says so and spoils no other"
    );
    assert!(matches!(read[3], Ok(Imported::Card(_))));
    assert_eq!(read_texts("Good morning"), [Err(ImportError::NotOurs)]);
}

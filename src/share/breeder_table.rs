//! What a breeder sees of all her chicks at a glance: who needs a call, and what is known of each.

use crate::domain::homecoming::clutch::Clutch;
use crate::domain::homecoming::departure::reports_from;
use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::homecoming::placement::{Place, place};
use crate::domain::homecoming::vet_visit::VetContact;
use crate::domain::journal::chick::{Chick, Noted, Weighing};
use crate::domain::journal::entries::{Carer, CropAtWeighing};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::parts::PartKind;
use crate::domain::plan::species::Species;
use crate::domain::quantity::order::sorted_by;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Age, Day, Moment};
use crate::domain::warnings::level::{Finding, Level};
use crate::domain::warnings::placed_state::PlacedState;
use crate::domain::weight::eaten::eaten_pct;
use crate::share::placed::{Placed, PlacedRow, rows};
use crate::share::small_curve::{SmallCurve, small_curve};

/// Days over which the small curve goes back. Ours: long enough for a slow fall to show.
const CURVE_DAYS: f64 = 21.0;

/// One chick of a breeder.
#[derive(Debug, Clone, PartialEq)]
pub struct BreederRow {
    /// How it is, and its place in the order.
    pub row: PlacedRow,
    /// Its group.
    pub place: Place,
    /// Where it stands in its life.
    pub stage: LifeStage,
    /// Its species.
    pub species: Species,
    /// Its hatch day, when known.
    pub hatched: Option<Day>,
    /// Its age today.
    pub age: Option<Age>,
    /// Who has it or will have it; may be empty.
    pub owner: String,
    /// That person's number; may be empty.
    pub owner_number: String,
    /// Whole days since it is in its new home; none before.
    pub placed_days: Option<i64>,
    /// What is most worrying at the last report; none when nothing is or nothing was heard.
    pub reason: Option<Finding>,
    /// The latest weight with an empty crop, else that of the handover.
    pub weight: Option<Grams>,
    /// Its weights of the last weeks.
    pub curve: Option<SmallCurve>,
    /// What was taken of the planned food over the last days before the report, per cent.
    pub eaten_pct: Option<f64>,
    /// The day of the last report, as it was lived there.
    pub heard_on: Option<Day>,
    /// Whether its owner holds the plan as the breeder left it.
    pub is_plan_current: bool,
    /// Whether a vet saw it since it arrived, or was called.
    pub vet: VetContact,
    /// How many questions of its owner wait for the breeder's answer.
    pub asks: usize,
}

impl BreederRow {
    /// Whether somebody is to be called about it: a level of call, or silence; never about a chick that is put
    /// away or has not left.
    pub fn needs_call(&self) -> bool {
        match self.place {
            Place::OnTheWay | Place::Placed | Place::Weaned => self.row.state.needs_somebody(),
            Place::WithMe | Place::Reserved => {
                self.row.state.level_now().is_some_and(Level::is_call)
            }
            Place::Archived => false,
        }
    }
}

/// Which chicks are shown.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Filter {
    /// Of this group only.
    pub place: Option<Place>,
    /// Of this clutch only.
    pub clutch: Option<Clutch>,
    /// Of this species only.
    pub species: Option<Species>,
}

impl Filter {
    /// Whether a chick is shown.
    pub fn shows(&self, row: &BreederRow) -> bool {
        let is_of_clutch = |clutch: Clutch| clutch.holds(row.species, row.hatched);
        self.place.is_none_or(|place| place == row.place)
            && self.clutch.is_none_or(is_of_clutch)
            && self.species.is_none_or(|species| species == row.species)
    }
}

/// The rows at `now`: who needs a call first, then whose owner waits for an answer, then the others as
/// [`rows`] orders them. `is_put_away` tells which chicks nobody asks for any more.
pub fn breeder_rows(
    now: Moment,
    placed: &[Placed],
    is_put_away: impl Fn(&Chick) -> bool,
) -> Vec<BreederRow> {
    let made = rows(now, placed).into_iter().filter_map(|row| {
        let mut of = placed.iter();
        let placed = of.find(|placed| placed.outlook.chick.id == row.chick)?;
        Some(breeder_row(
            now,
            placed,
            row,
            is_put_away(&placed.outlook.chick),
        ))
    });
    // A stable sort: within a class the order of the rows stays.
    sorted_by(made.collect(), |one: &BreederRow, other: &BreederRow| {
        let class = |row: &BreederRow| (row.needs_call(), 0 < row.asks);
        class(other).cmp(&class(one))
    })
}

fn breeder_row(now: Moment, placed: &Placed, row: PlacedRow, is_put_away: bool) -> BreederRow {
    let outlook = &placed.outlook;
    let (chick, plan) = (&outlook.chick, &outlook.chick.plan);
    let heard = placed.followed.flatten();
    let today = now.lived(outlook.offset).day;
    let place = place(now, outlook.stage, chick, is_put_away);
    let is_home = match place {
        Place::Placed | Place::Weaned => true,
        Place::WithMe | Place::Reserved | Place::OnTheWay | Place::Archived => false,
    };
    let placed_days = now.minutes_since(reports_from(chick)).max(0) / 1_440;
    let is_known = match row.state {
        PlacedState::Now(_) | PlacedState::On(..) => true,
        PlacedState::Silent { last, .. } => last.is_some(),
        PlacedState::Unheard | PlacedState::Died => false,
    };
    let asked = chick.proposals().into_iter();
    let asked = asked.filter(|proposal| proposal.is_asked).count();
    let told = chick.plans.not_agreed().into_iter();
    let told = told.filter(|told| !told.is_declined).count();
    let (owner, owner_number) = owner_of(chick);
    let latest = outlook.weight.latest.as_ref();
    let latest = latest.map(|latest| latest.what.weight);
    BreederRow {
        place,
        stage: outlook.stage,
        species: plan.species,
        hatched: plan.hatched,
        age: plan.hatched.and_then(|hatched| Age::on(today, hatched)),
        owner,
        owner_number,
        placed_days: is_home.then_some(placed_days),
        reason: reason(outlook).filter(|_| is_known),
        weight: latest.or(plan.reference.map(|reference| reference.weight)),
        curve: curve(placed),
        eaten_pct: eaten_pct(chick, outlook.lived.day, outlook.offset).filter(|_| is_home),
        heard_on: heard.map(|heard| heard.lived(outlook.offset).day),
        is_plan_current: chick.plans.untaken().is_empty(),
        vet: VetContact::of(chick),
        asks: asked + told,
        row,
    }
}

/// Who has the chick, and that person's number: as the plan in force says, else as the breeder noted it and nobody
/// took yet, else by the name to whom it was handed.
fn owner_of(chick: &Chick) -> (String, String) {
    let own = |plan: &CarePlan| (plan.owner_name.clone(), plan.owner_number.clone());
    let is_known = |(name, number): &(String, String)| !name.is_empty() || !number.is_empty();
    let proposals = chick.proposals().into_iter();
    let noted = proposals.filter(|proposal| !proposal.is_asked && proposal.kind == PartKind::Vets);
    let noted = noted.map(|proposal| own(&proposal.plan));
    let handed = chick.handed_over.iter().rev();
    let handed = handed.filter(|handed| handed.what.to == Carer::Owner);
    let handed = handed.map(|handed| (handed.what.name.clone(), String::new()));
    let mut said = [own(&chick.plan)].into_iter().chain(noted).chain(handed);
    said.find(is_known).unwrap_or_default()
}

/// What makes the level; nothing does at *Settled*.
fn reason(outlook: &Outlook) -> Option<Finding> {
    let mut findings = outlook.findings.iter().copied();
    let of_level =
        |finding: &Finding| Level::Settled < finding.level && finding.level == outlook.level;
    findings.find(of_level)
}

/// The weights with an empty crop up to the last report, and the weight that would call.
fn curve(placed: &Placed) -> Option<SmallCurve> {
    let outlook = &placed.outlook;
    let weighings = outlook.chick.weighings.iter();
    let is_told = |weighing: &&Noted<Weighing>| {
        weighing.what.crop == CropAtWeighing::Empty && weighing.at <= outlook.now
    };
    let points = weighings.filter(is_told).map(|weighing| {
        let ago = outlook.now.days_since(weighing.at);
        (-ago, weighing.what.weight.as_g())
    });
    let points: Vec<(f64, f64)> = points.filter(|(day, _)| -CURVE_DAYS <= *day).collect();
    small_curve(&points, outlook.weight.call_at.map(Grams::as_g))
}

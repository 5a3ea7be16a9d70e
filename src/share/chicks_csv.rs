//! All chicks of a breeder as one table for spreadsheets, in the form of [`crate::share::table_of`].

use crate::domain::homecoming::vet_visit::VetContact;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Day;
use crate::share::breeder_table::BreederRow;
use crate::share::csv::Cell;
use crate::share::csv::push_row;
use crate::share::table_of::{plain, started};
use crate::words::format::Writing;

/// The rows in their order. What is not known or not to be said of a chick is an empty cell.
pub fn chicks_csv(writing: Writing, rows: &[BreederRow]) -> String {
    let say = writing.language;
    let mut table = started(&[
        say.table_chick(),
        say.table_ring(),
        say.table_species(),
        say.table_hatched(),
        say.table_owner(),
        say.table_number(),
        say.table_group(),
        say.table_feeds_a_day(),
        say.table_days_placed(),
        say.table_state(),
        say.table_reason(),
        say.table_last_report(),
        say.table_silent_days(),
        say.table_weight(),
        say.table_change_pct(),
        say.table_eaten_pct(),
        say.table_plan_number(),
        say.table_plan_current(),
        say.table_vet_seen(),
        say.table_vet_called(),
        say.table_asks(),
    ]);
    for row in rows {
        let (word, reason) = writing.breeder_state(row.place, row.row.state, row.reason.as_ref());
        let yes_or_no = |is_so: bool| {
            if is_so {
                say.breeder_yes()
            } else {
                say.breeder_no()
            }
        };
        let days = |days: Option<i64>| days.map(|days| days.to_string()).unwrap_or_default();
        let tenths = |number: Option<f64>| {
            number
                .map(|number| plain(rounded(number * 10.0)))
                .unwrap_or_default()
        };
        let (seen, called) = match row.vet {
            VetContact::Seen(day) => (Some(day), None),
            VetContact::Called(day) => (None, Some(day)),
            VetContact::NotHome | VetContact::None => (None, None),
        };
        let change = row.row.handover_loss_pct.map(|loss| -loss);
        push_row(
            &mut table,
            &[
                Cell::Typed(&row.row.name),
                Cell::Typed(&row.row.ring),
                Cell::Exact(say.species(row.species)),
                Cell::Exact(&row.hatched.map(Day::iso).unwrap_or_default()),
                Cell::Typed(&row.owner),
                Cell::Typed(&row.owner_number),
                Cell::Exact(say.place(row.place)),
                Cell::Exact(&row.row.feeds_left.to_string()),
                Cell::Exact(&days(row.placed_days)),
                Cell::Exact(word.trim_end_matches('.')),
                Cell::Exact(&reason),
                Cell::Exact(&row.heard_on.map(Day::iso).unwrap_or_default()),
                Cell::Exact(&days(row.row.quiet_days)),
                Cell::Exact(&row.weight.map(Grams::tenths).map(plain).unwrap_or_default()),
                Cell::Exact(&tenths(change)),
                Cell::Exact(&tenths(row.eaten_pct)),
                Cell::Exact(&row.row.plan.number.to_string()),
                Cell::Exact(yes_or_no(row.is_plan_current)),
                Cell::Exact(&seen.map(Day::iso).unwrap_or_default()),
                Cell::Exact(&called.map(Day::iso).unwrap_or_default()),
                Cell::Exact(&row.asks.to_string()),
            ],
        );
    }
    table
}

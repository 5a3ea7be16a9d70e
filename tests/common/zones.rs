//! Zone tables for tests, from the IANA database inside jiff; the machine's own is not read.

use jiff::Timestamp;
use jiff::tz::{Offset as IanaOffset, TimeZoneDatabase};
use perchlight::domain::time::moment::{Moment, Offset};
use perchlight::domain::time::zone::{OffsetChange, Zone};

/// The table of an IANA zone over the whole range of [`Moment`].
///
/// # Panics
/// When the database has no such zone, or an offset is no whole minute.
pub fn zone(name: &str) -> Zone {
    let rules = TimeZoneDatabase::bundled()
        .get(name)
        .unwrap_or_else(|error| panic!("no zone {name}: {error}"));
    let start = Timestamp::from_second(Moment::EARLIEST.seconds()).unwrap();
    let changes = rules
        .following(start)
        .map(|change| (change.timestamp().as_second(), minutes(change.offset())))
        .take_while(|&(second, _)| second <= Moment::LATEST.seconds())
        .map(|(second, offset)| OffsetChange {
            from: Moment::from_seconds(second),
            offset,
        })
        .collect();
    Zone::new(minutes(rules.to_offset(start)), changes)
}

fn minutes(offset: IanaOffset) -> Offset {
    assert_eq!(offset.seconds() % 60, 0, "an offset of whole minutes");
    Offset::from_minutes(offset.seconds() / 60)
}

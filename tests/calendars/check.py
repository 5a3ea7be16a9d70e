"""Reads the calendar files with icalendar and recurring-ical-events and holds them against the plan.

The plan (default of the green-winged macaw): 07:00, 14:00 and 21:00 for fourteen days; changed on the
fourth day at 10:00, when the midday feed is dropped; then taken out. The weighing is half an hour before the
first feed. Names of RFC 5545.
"""
import datetime as dt
import sys
from pathlib import Path

import icalendar
import recurring_ical_events

NAME = 'Saffron, "the loud; one" \\ \U0001f99c with a name so long that lines fold'
FIRST = dt.date(2026, 10, 20)


def read(name):
    calendar = icalendar.Calendar.from_ical((Path(sys.argv[1]) / name).read_bytes())
    assert str(calendar["VERSION"]) == "2.0" and calendar["PRODID"], name
    for part in calendar.walk():
        assert not part.errors, (name, part.errors)
    return calendar


def occurrences(calendar):
    found = recurring_ical_events.of(calendar).between(FIRST, FIRST + dt.timedelta(days=60))
    return sorted(event["DTSTART"].dt for event in found if str(event["STATUS"]) == "CONFIRMED")


def wanted(first, days, times_of_day, not_before):
    """Every feed at its wall time, days from the first one that is still to come."""
    times = []
    for time in times_of_day:
        start = dt.datetime.combine(first, time)
        if start <= not_before:
            start += dt.timedelta(days=1)
        times += [start + dt.timedelta(days=day) for day in range(days)]
    return sorted(times)


WEIGHING, MORNING, MIDDAY, BEDTIME = (dt.time(6, 30), dt.time(7), dt.time(14), dt.time(21))


def by_uid(calendar):
    events = {str(event["UID"]): event for event in calendar.walk("VEVENT")}
    assert len(events) == len(list(calendar.walk("VEVENT"))), "a UID stands twice"
    return events


first, changed, removal = (read(f"{name}.ics") for name in ("first", "changed", "removal"))
assert occurrences(first) == wanted(FIRST, 14, (WEIGHING, MORNING, MIDDAY, BEDTIME), dt.datetime(2026, 10, 20, 6)), occurrences(first)
fourth = FIRST + dt.timedelta(days=3)
assert occurrences(changed) == wanted(fourth, 14, (WEIGHING, MORNING, BEDTIME), dt.datetime(2026, 10, 23, 10)), occurrences(changed)
for calendar in (first, changed):
    for event in calendar.walk("VEVENT"):
        # Floating: no zone, so that breakfast stays at seven also after a flight.
        assert event["DTSTART"].dt.tzinfo is None and "TZID" not in event["DTSTART"].params
        assert event["DTSTAMP"].dt.utcoffset() == dt.timedelta(0)
        if str(event["STATUS"]) == "CANCELLED":
            assert not event.walk("VALARM") and "Feed" not in str(event["SUMMARY"])
            continue
        is_weighing = event["DTSTART"].dt.time() == WEIGHING
        assert NAME in str(event["SUMMARY"]) and ("ml" in str(event["SUMMARY"])) != is_weighing, event["SUMMARY"]
        (alarm,) = event.walk("VALARM")
        assert str(alarm["ACTION"]) == "DISPLAY" and str(alarm["DESCRIPTION"])
        assert dt.timedelta(hours=-1) <= alarm["TRIGGER"].dt <= dt.timedelta(0)
before, after, gone = by_uid(first), by_uid(changed), by_uid(removal)
# A name that begins with a date is of one feed told for itself, as the smaller first one at home.
daily = [{uid for uid in events if not uid[:4].isdigit()} for events in (before, after)]
assert len(daily[0]) == 4 and daily[1] == daily[0], daily
assert set(before) | set(after) <= set(gone), set(before) | set(after) - set(gone)
dropped = [uid for uid, event in after.items() if str(event["STATUS"]) == "CANCELLED"]
assert [before[uid]["DTSTART"].dt.time() for uid in dropped] == [MIDDAY], dropped
for uid, event in after.items():
    if uid in before:
        assert event["SEQUENCE"] > before[uid]["SEQUENCE"], "a later file must replace the earlier one"
for uid, event in gone.items():
    assert str(event["STATUS"]) == "CANCELLED"
    assert uid not in after or event["SEQUENCE"] > after[uid]["SEQUENCE"]
assert str(removal["METHOD"]) == "CANCEL"
print(f"icalendar {icalendar.__version__}: {len(daily[0]) - 1} feeds and the weighing, {len(occurrences(first))} times, then {len(dropped)} cancelled, then all taken out: all as planned")

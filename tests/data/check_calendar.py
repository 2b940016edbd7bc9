"""Read the plan's calendar back with Python's icalendar, a parser that shares no code with the
crate that wrote it. Run `cargo test --test plan_texts` first, then this with the file's path:

    python check_calendar.py target/tmp/plan.ics
"""
import datetime
import sys

import icalendar

text = open(sys.argv[1], "rb").read()
calendar = icalendar.Calendar.from_ical(text)
events = [part for part in calendar.walk() if part.name == "VEVENT"]
assert calendar["VERSION"] == "2.0" and "PRODID" in calendar
assert len(events) > 50, len(events)
for event in events:
    start, end = event["DTSTART"].dt, event["DTEND"].dt
    assert type(start) is datetime.date and type(end) is datetime.date and end > start
    assert event["DTSTAMP"].dt == datetime.datetime(2027, 11, 1, tzinfo=datetime.timezone.utc)
    assert not event.errors, event.errors
days = [event for event in events if event["UID"].startswith("day-")]
assert all(event["DTSTART"].dt.weekday() in (0, 2, 4) for event in days)
assert any(event["DTSTART"].dt == datetime.date(2028, 2, 28) for event in days)
name = str(calendar["X-WR-CALNAME"]).replace("\\;", ";").replace("\\,", ",").replace("\\\\", "\\")
assert "Zo\u00eb; \"Sample\", Athlete \\ with a long, long, long name" in name
assert all("\n- " in event["DESCRIPTION"] for event in days)
print(f"{len(events)} events, {len(days)} throwing days: read back without an error")

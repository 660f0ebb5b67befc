"""Reads a calendar from standard input with two parsers, and tells as JSON what each understood of its events."""

import datetime
import json
import sys

import icalendar
import vobject

text = sys.stdin.buffer.read().decode("utf-8")


def last(end):
    return (end - datetime.timedelta(days=1)).isoformat()


def by_icalendar():
    calendar = icalendar.Calendar.from_ical(text)
    faults = [str(fault) for part in calendar.walk() for fault in part.errors]
    events = [
        {
            "uid": str(event["UID"]),
            "kind": str(event["CATEGORIES"].cats[0]),
            "from": event.decoded("DTSTART").isoformat(),
            "to": last(event.decoded("DTEND")),
            "summary": str(event["SUMMARY"]),
            "description": str(event["DESCRIPTION"]),
            "sequence": int(event["SEQUENCE"]),
        }
        for event in calendar.walk("VEVENT")
    ]
    again = icalendar.Calendar.from_ical(calendar.to_ical())
    return {"name": str(calendar["NAME"]), "faults": faults, "events": events, "same": again == calendar}


def by_vobject():
    calendar = vobject.readOne(text)
    calendar.validate(raiseException=True)
    events = [
        {
            "uid": event.uid.value,
            "kind": event.categories.value[0],
            "from": event.dtstart.value.isoformat(),
            "to": last(event.dtend.value),
            "summary": event.summary.value,
            "description": event.description.value,
            "sequence": int(event.sequence.value),
        }
        for event in getattr(calendar, "vevent_list", [])
    ]
    return {"name": calendar.name_list[0].value if hasattr(calendar, "name_list") else None, "events": events}


json.dump({"icalendar": by_icalendar(), "vobject": by_vobject()}, sys.stdout)

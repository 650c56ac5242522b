#!/bin/bash
# The demo's tables and re-checks as others read them: the four CSV files by Python's csv, rechecks.ics by icalendar.
# usage: quote_tables.sh COTTER
set -euo pipefail
cotter=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"

"$cotter" demo --out demo > /dev/null
unzip -q demo/*_r2.zip -d unpacked
"$cotter" quote --book demo/book NUR-07 --json > quote.json
"$cotter" quote --book demo/book NUR-07 > quote.txt
grep -q 'cheapest' quote.txt

/usr/bin/python3 - unpacked/*/data quote.json << 'PY'
import csv, decimal, io, json, pathlib, sys
import icalendar

data, said = pathlib.Path(sys.argv[1]), json.load(open(sys.argv[2]))
job = json.loads((data / "job.json").read_text())
cents = lambda text: int(decimal.Decimal(text) * 100)

# quote.csv: every line and total as in job.json, and the lines add up to the totals.
raw = (data / "quote.csv").read_bytes()
assert raw.endswith(b"\r\n") and b"\n" not in raw.replace(b"\r\n", b"")
rows = list(csv.DictReader(raw.decode().splitlines(keepends=True)))
quotes = {q["id"]: q for q in job["records"]["quote"]}
assert len(quotes) == 3
for key, quote in quotes.items():
    mine = [r for r in rows if r["quote_id"] == key]
    lines = [r for r in mine if r["line"]]
    assert [(int(r["line"]), r["text"], cents(r["low"]), cents(r["high"])) for r in lines] == \
        [(x["number"], x["text"], x["low"], x["high"]) for x in quote["lines"]]
    total, = (r for r in mine if r["kind"] == "total")
    for end in ("low", "high"):
        assert cents(total[end]) == quote["total_" + end]
        assert sum(cents(r[end]) for r in mine if r["kind"] not in ("core", "total")) == quote["total_" + end]
assert {r["answer"] for r in rows} == {"", "accepted", "declined"}

# readings.csv, torques.csv, levels.csv: read back, every record and value as in job.json; written again the same bytes.
def table(name):
    text = (data / name).read_bytes().decode()
    rows = list(csv.reader(text.splitlines(keepends=True)))
    again = io.StringIO(newline="")
    csv.writer(again, lineterminator="\r\n").writerows(rows)
    assert again.getvalue() == text, name
    return [dict(zip(rows[0], row)) for row in rows[1:]]
plain = lambda text: text[1:] if text.startswith("'") else text
readings = table("readings.csv")
wanted = [(r["id"], p.get("where", ""), p["value"], r.get("unit", "1")) for r in job["records"]["reading"] for p in r.get("points", [])]
assert [(r["reading_id"], plain(r["point"]), r["value"], r["unit"]) for r in readings if r["value"]] == wanted
assert {r["reading_id"] for r in readings} == {r["id"] for r in job["records"]["reading"]}
wanted = [(t["id"], str(n), str(nut), p["setting"]["value"]) for t in job["records"]["torque"]
          for n, p in enumerate(t.get("passes", []), 1) for nut in p["tightened"]]
assert [(r["torque_id"], r["pass"], r["fastener"], r["setting"]) for r in table("torques.csv")] == wanted
wanted = [(v["id"], v["fluid"], v.get("added", {}).get("value", ""), v.get("added", {}).get("unit", "")) for v in job["records"]["level"]]
assert [(r["level_id"], plain(r["fluid"]), r["added"], r["added_unit"]) for r in table("levels.csv")] == wanted
assert wanted and readings

# The explanation adds up too.
for why in said["why"]:
    assert sum(r["high"] for r in why["reasons"] if not r["beside"]) == why["high"], why

# rechecks.ics: lines folded at 75 bytes, entries of this job, each with its source, written again unchanged.
text = (data / "rechecks.ics").read_bytes()
assert all(len(line) <= 75 for line in text.split(b"\r\n")) and b"\n" not in text.replace(b"\r\n", b"")
calendar = icalendar.Calendar.from_ical(text)
events = calendar.walk("VEVENT")
assert events and len({str(e["UID"]) for e in events}) == len(events)
for event in events:
    assert str(event["UID"]).startswith(job["job"]) and int(event["SEQUENCE"]) == job["revision"] - 1
    assert event["DTEND"].dt > event["DTSTART"].dt and event["DTSTAMP"].dt.utcoffset().total_seconds() == 0
    assert "Source: " in event["DESCRIPTION"] and "NUR-07" in event["SUMMARY"]
again = icalendar.Calendar.from_ical(calendar.to_ical()).walk("VEVENT")
assert [e.to_ical() for e in again] == [e.to_ical() for e in events]
print(f"{len(rows)} rows, {len(events)} re-checks: all as it should be")
PY

#!/usr/bin/env bash
# `cotter trailers` on a ledger of the invented office: one row a trailer, the gravest first, the same words as find and
# history; filters; JSON; and one clear line for what is wrong.
#
# usage: trailers.sh COTTER OFFICE_MAKER
set -euo pipefail
cotter=$(realpath "$1") maker=$(realpath "$2")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"

"$maker" packets "$work/batch" 12 0 2 0 0 6
"$cotter" receive --ledger office.ledger batch >receipts
"$cotter" trailers --ledger office.ledger >rows
"$cotter" trailers --ledger office.ledger --json >rows.json
"$cotter" find --ledger office.ledger --json >jobs.json
python3 - <<'PYTHON'
import json
import subprocess

rows, jobs = json.load(open("rows.json")), json.load(open("jobs.json"))
lines = open("rows").read().splitlines()
order = ["do not tow", "not before repair", "cannot tell", "nothing found from outside", "nothing found against it"]
assert len(rows) == 6 and len(lines) == len(rows), (len(rows), lines)
places = [order.index(r["towing"]["outcome"]) for r in rows]
assert places == sorted(places), places
said = {r["trailer"]: r["towing"]["says"] for r in rows}
for row, line in zip(rows, lines):
    tow = row["towing"]
    assert line.startswith(tow["outcome"]) and row["unit"] in line, line
    assert f'{tow["looked_at"]} of' in line and row["last"][:10] in line, line
    assert tow["reason"] and tow["reason"][:60] in line and tow["looked_at"] <= tow["of"], line
assert len(jobs) == 12
for job in jobs:
    assert job["towing"]["says"] == said[job["trailer"]], job["unit"]
open("unit", "w").write(rows[0]["unit"])
open("outcome", "w").write(rows[0]["towing"]["outcome"].replace(" ", "-"))
open("count", "w").write(str(sum(p == places[0] for p in places)))
open("says", "w").write(rows[0]["towing"]["says"])
PYTHON
"$cotter" history --ledger office.ledger "$(cat unit)" | grep -qF -- "$(cat says)"
"$cotter" find --ledger office.ledger "$(cat unit)" | grep -qF -- "$(cut -c1-200 says)"
[ "$("$cotter" trailers --ledger office.ledger --outcome "$(cat outcome)" | wc -l)" = "$(cat count)" ]
[ "$("$cotter" trailers --ledger office.ledger --limit 1 | wc -l)" = 1 ]
[ "$("$cotter" trailers --ledger office.ledger "$(cat unit)" | wc -l)" = 1 ]
[ "$("$cotter" trailers --ledger office.ledger --outcome nothing-found-against-it)" = "No trailer on file has this answer." ]
! grep -qi "nothing open" rows

# One line and the right exit code for what is wrong.
wrong() { # code, words, command…
    local code=$1 words=$2 got=0
    shift 2
    "$@" >/dev/null 2>line || got=$?
    if [ "$got" != "$code" ] || ! grep -q -- "$words" line; then
        echo "wanted $code and '$words', got $got and: $(cat line)" >&2
        exit 1
    fi
}
wrong 1 "there is no ledger here" "$cotter" trailers --ledger none.ledger
[ "$(wc -l <line)" = 1 ]
wrong 2 "outcome" "$cotter" trailers --ledger office.ledger --outcome fine
echo "$(wc -l <rows) trailers"

#!/bin/bash
# The demo packet as a stranger sees it: the same bytes in any time zone and locale, and sound to public tools.
# usage: demo_packet.sh COTTER SCHEMA
set -euo pipefail
cotter=$1
schema=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"

step() { echo "--- $*"; }
hash_of() { sha256sum "$1"/*.zip | cut -d ' ' -f 1; }

step "twice, in other time zones and locales: the same SHA-256"
TZ=America/Chicago LC_ALL=C "$cotter" demo --out a > /dev/null
TZ=Asia/Kolkata LC_ALL=de_DE.UTF-8 "$cotter" demo --out b > /dev/null
[[ $(hash_of a) == "$(hash_of b)" ]]
TZ=Pacific/Apia "$cotter" demo --out a > /dev/null # again over the first
[[ $(hash_of a) == "$(hash_of b)" ]]
packet=$(echo a/*.zip)

step "cotter check"
"$cotter" check "$packet"

step "unzip, sha256sum, ssh-keygen"
unzip -tq "$packet"
unzip -q "$packet" -d unpacked
cd unpacked/*/
sha256sum --quiet -c manifest-sha256.txt
sha256sum --quiet -c tagmanifest-sha256.txt
ssh-keygen -Y check-novalidate -n cotter-packet -s tagmanifest-sha256.txt.sig < tagmanifest-sha256.txt
key=$("$cotter" check --json "$work/$packet" | /usr/bin/python3 -c 'import json,sys; print(json.load(sys.stdin)[0]["signer_key"])')
echo "demo namespaces=\"cotter-packet\" $key" > "$work/allowed"
ssh-keygen -Y verify -f "$work/allowed" -I demo -n cotter-packet -s tagmanifest-sha256.txt.sig < tagmanifest-sha256.txt

step "job.json against its schema by another validator"
/usr/bin/python3 - "$schema" data/job.json << 'PY'
import json, sys, jsonschema
schema, job = (json.load(open(p)) for p in sys.argv[1:])
jsonschema.Draft202012Validator.check_schema(schema)
jsonschema.Draft202012Validator(schema).validate(job)
PY

step "the report by qpdf, pdffonts and pdftotext"
qpdf --check data/report.pdf | tail -1
pdffonts data/report.pdf > "$work/fonts"
[[ $(tail -n +3 "$work/fonts" | awk '{ print $(NF-4) }' | sort -u) == yes ]]
pdftotext -layout data/report.pdf "$work/report.txt"
grep -q 'Gärtnerei Grünholz' "$work/report.txt"

step "no position, serial number, maker note or thumbnail left in any photo"
private=$(exiftool -q -if '$GPSLatitude or $SerialNumber or $LensSerialNumber or $MakerNotes or $ThumbnailImage or $OwnerName' \
    -p '$FileName' data/photos data/tagged || true)
[[ -z $private ]] || { echo "private data in: $private"; exit 1; }

step "a photo swapped inside is noticed"
cp -r . "$work/swapped"
mapfile -t photos < <(ls "$work"/swapped/data/photos/*)
cp "${photos[0]}" "${photos[1]}"
! "$cotter" check "$work/swapped" > "$work/swapped.log" || exit 1
grep -q 'has been changed' "$work/swapped.log"

step "bad input: one line, exit 1, nothing left behind"
refused() { # expected words, command…
    local words=$1; shift
    local code=0
    "$@" > /dev/null 2> "$work/line" || code=$?
    [[ $code -eq 1 && $(wc -l < "$work/line") -eq 1 ]] || { echo "not one line and exit 1: $*"; cat "$work/line"; exit 1; }
    grep -q "$words" "$work/line" || { echo "unexpected words:"; cat "$work/line"; exit 1; }
}
refused "there is no book" "$cotter" jobs --book "$work/nowhere"
refused "no job" "$cotter" pack --book "$work/a/book" ffff --out "$work/c"
head -c 300 "$work/unpacked/"*/data/job.json > "$work/cut.jsonl"
refused "line 1" "$cotter" replay --book "$work/new" "$work/cut.jsonl"
code=0; "$cotter" pack 2> /dev/null || code=$?
[[ $code -eq 2 ]]
echo "all as it should be"

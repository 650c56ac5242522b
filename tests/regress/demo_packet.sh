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
hash_of() { (cd "$1" && sha256sum -- *.zip); }

step "twice, in other time zones and locales: the same bytes of both revisions"
TZ=America/Chicago LC_ALL=C "$cotter" demo --out a > /dev/null
TZ=Asia/Kolkata LC_ALL=de_DE.UTF-8 "$cotter" demo --out b > /dev/null
[[ $(hash_of a) == "$(hash_of b)" ]]
TZ=Pacific/Apia "$cotter" demo --out a > /dev/null # again over the first
[[ $(hash_of a) == "$(hash_of b)" ]]
[[ $(ls a/*.zip | wc -l) -eq 2 ]]
first=$(echo a/*_r1.zip) packet=$(echo a/*_r2.zip)

step "cotter check of both"
"$cotter" check "$first"
"$cotter" check "$packet"

step "the second revision names the first by the SHA-256 of its tag manifest, and says why it was made"
fingerprint=$(unzip -p "$first" '*/tagmanifest-sha256.txt' | sha256sum | cut -d ' ' -f 1)
unzip -p "$packet" '*/bag-info.txt' | grep -qx "Previous-Revision-Tagmanifest-SHA256: $fingerprint"
unzip -p "$packet" '*/bag-info.txt' | grep -qx 'Revision: 2'
unzip -p "$first" '*/bag-info.txt' | grep -qx 'Revision: 1'
unzip -p "$packet" '*/data/job.json' > r2.json
unzip -p "$first" '*/data/job.json' > r1.json
/usr/bin/python3 - r1.json r2.json "$fingerprint" << 'PY'
import json, sys
first, second = (json.load(open(p)) for p in sys.argv[1:3])
assert second["previous_tagmanifest_sha256"] == sys.argv[3] and first["revision"] == 1 and second["revision"] == 2
assert first["records"]["sign_off"] == second["records"]["sign_off"]
assert not first["records"].get("amendments") and len(second["records"]["amendments"]) == 8
assert all("certificate of TW-3" in a["reason"] and "2026-01-09" in a["old"] for a in second["records"]["amendments"])
assert len([q for q in second["records"]["quote"]]) == 3
signed = [d for d in second["records"]["decision"] if d.get("signature")]
assert {d["said"] for d in signed} == {"accepted", "declined"}
PY

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
[[ $(stat -c %s data/report.pdf) -lt 12000000 ]]
for words in 'May it be towed' 'What was done' 'What was not done' 'The price' 'Next dates' 'Work log' 'Quotes' \
    'Limits and tools used' 'Wear since earlier visits' 'calibrated 2026-02-16' 'Amendments' 'Not measured, not accessible'; do
    grep -q "$words" "$work/report.txt" || { echo "not in the report: $words"; exit 1; }
done
pdftotext -layout -f 1 -l 1 data/report.pdf "$work/page1.txt"
grep -q 'declined by H. Grünholz' "$work/page1.txt"
grep -q 'May it be towed' "$work/page1.txt"

step "the code on page 1 is the manifest's line for job.json"
pdftoppm -r 150 -f 1 -l 1 -gray -png data/report.pdf "$work/page"
/usr/bin/python3 - "$work"/page*.png manifest-sha256.txt << 'PY'
import sys
from PIL import Image
from pyzbar.pyzbar import decode
codes = decode(Image.open(sys.argv[1]))
assert len(codes) == 1, codes
assert codes[0].data.decode() in open(sys.argv[2]).read().splitlines(), codes[0].data
PY

step "the tags of a photo are image regions that exiftool prints, and the picture is untouched"
exiftool -q -n -j -struct -ImageRegion data/photos > "$work/regions.json"
/usr/bin/python3 - "$work/regions.json" data/job.json << 'PY'
import json, os, sys
regions = {os.path.basename(p["SourceFile"]): p.get("ImageRegion", []) for p in json.load(open(sys.argv[1]))}
job = json.load(open(sys.argv[2]))
tags, findings = job["records"]["tag"], {f["id"]: f for f in job["records"]["finding"]}
shapes = set()
for photo in job["photos"]:
    mine = {"urn:uuid:" + t["id"]: t for t in tags if t["shot"] == photo["shot"]}
    there = regions[os.path.basename(photo["file"])]
    assert {r["RId"] for r in there} == set(mine), photo["file"]
    for region in there:
        tag, edge = mine[region["RId"]], region["RegionBoundary"]
        finding = findings[tag["finding"]]
        assert finding["defect"] in str(region["Name"]), region
        assert finding["grade"] in str(region["RRole"]), region
        assert edge["RbUnit"] == "relative"
        shapes.add(edge["RbShape"])
        xs = [p["x"] for p in tag["points"]]
        if edge["RbShape"] == "rectangle":
            assert abs(float(edge["RbX"]) - min(xs)) < 1e-4 and abs(float(edge["RbW"]) - (max(xs) - min(xs))) < 2e-4
        if edge["RbShape"] == "circle":
            assert abs(float(edge["RbX"]) - xs[-1]) < 1e-4 and float(edge["RbRx"]) > 0
        if edge["RbShape"] == "polygon":
            assert [round(float(v["RbX"]), 4) for v in edge["RbVertices"]] == xs
print(f"{sum(map(len, regions.values()))} regions: {', '.join(sorted(shapes))}")
assert shapes == {"rectangle", "circle", "polygon"} and sum(map(len, regions.values())) == len(tags)
PY

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

#!/bin/bash
# What people really hand in: each bad photo, file or place gets one clear line and exit 1, and the book stays as it was.
# usage: bad_input.sh COTTER PHOTO   (PHOTO: any JPEG of a few megapixels)
set -euo pipefail
cotter=$1
photo=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"

job=00000000-0000-4000-8000-00000000000a
at=2026-05-14T08:00:00-05:00
cat > start.jsonl << EOF
{"job":"$job","at":"$at","by":"T","do":[{"put":"visit","value":{"id":"$job","opened":"$at","technician":"T"}}]}
EOF
"$cotter" replay --book book start.jsonl > /dev/null

shot() { # picture, running number: one line that takes it in
    printf '{"job":"%s","at":"%s","by":"T","do":[{"put":"shot","photo_file":"%s","value":{"id":"00000000-0000-4000-8000-0000000001%02d","place":"trailer","slot":"other","stage":"before","added":"%s"}}]}\n' \
        "$job" "$at" "$1" "$2" "$at" > shot.jsonl
}
count=0
shots() { "$cotter" jobs --book book --json | /usr/bin/python3 -c 'import json,sys; print(json.load(sys.stdin)[0]["shots"])'; }
refused() { # expected words, command…
    local words=$1 code=0
    shift
    "$@" > /dev/null 2> line || code=$?
    if [[ $code -ne 1 || $(wc -l < line) -ne 1 ]] || ! grep -qi -- "$words" line; then
        echo "wanted exit 1 and one line with '$words', got $code and:"
        cat line
        exit 1
    fi
    count=$((count + 1))
}
refuse_photo() { # expected words, picture
    local before
    before=$(shots)
    shot "$2" 1
    refused "$1" "$cotter" replay --book book shot.jsonl
    [[ $(shots) -eq $before ]]
    [[ -z $(find book -name '*.part') ]]
}
take_photo() { # picture, running number
    shot "$1" "$2"
    "$cotter" replay --book book shot.jsonl > /dev/null
}

head -c 100000 "$photo" > cut.jpg;             refuse_photo "cut off\|damaged" cut.jpg
: > empty.jpg;                                 refuse_photo "empty" empty.jpg
head -c 5000 /dev/urandom > noise.jpg;         refuse_photo "not a photo" noise.jpg
printf '\0\0\0\030ftypheic\0\0\0\0mif1heic' > phone.heic; refuse_photo "HEIC" phone.heic
printf '%%PDF-1.7\n' > paper.jpg;              refuse_photo "PDF" paper.jpg
truncate -s 200M huge.jpg;                     refuse_photo "larger than" huge.jpg
refuse_photo "cannot open\|cannot look" absent.jpg
{ head -c 20000 "$photo"; head -c 30000 /dev/zero; tail -c +50001 "$photo"; } > holed.jpg
refuse_photo "damaged\|broken\|cut off" holed.jpg

vips copy "$photo" renamed.png;                mv renamed.png renamed.jpg; take_photo renamed.jpg 11
vips jpegsave "$photo" progressive.jpg --interlace;                        take_photo progressive.jpg 12
vips cast "$photo" deep.v ushort && vips linear deep.v deep16.v 257 0 && vips cast deep16.v deep16b.v ushort &&
    vips pngsave deep16b.v deep.png && take_photo deep.png 13
[[ $(shots) -eq 3 ]]

# Files of edits
head -c 150 start.jsonl > half.jsonl;          refused "half.jsonl, line 1" "$cotter" replay --book book half.jsonl
{ cat start.jsonl; echo '{"job":'; } > half2.jsonl; refused "line 2" "$cotter" replay --book other half2.jsonl
[[ ! -e other/book.sqlite ]] || [[ $("$cotter" jobs --book other --json) == "[]" ]]
printf '\xff\xfe\n' > binary.jsonl;            refused "UTF-8" "$cotter" replay --book book binary.jsonl
: > nothing.jsonl;                             refused "no edits" "$cotter" replay --book book nothing.jsonl

# Places
refused "in use by another process" flock book/in-use "$cotter" jobs --book book
refused "" "$cotter" pack --book book "$job" --out /proc/no/such/place
refused "" "$cotter" replay --book /proc/no/such/place start.jsonl
mkdir -p foreign && echo "not a database at all, just text that is long enough to be looked at" > foreign/book.sqlite
refused "not" "$cotter" jobs --book foreign
cp -r book newer && /usr/bin/python3 - newer/book.sqlite << 'PY'
import sqlite3, sys
sqlite3.connect(sys.argv[1]).execute("PRAGMA user_version = 999")
PY
before=$(sha256sum < newer/book.sqlite)
refused "newer" "$cotter" jobs --book newer
[[ $(sha256sum < newer/book.sqlite) == "$before" ]]

"$cotter" pack --book book "$job" --out out > /dev/null
"$cotter" check out/*.zip > /dev/null
echo "$count kinds of bad input, one clear line each; nothing lost"

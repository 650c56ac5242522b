#!/usr/bin/env bash
# The sample reports as qpdf and Poppler see them: sound, fonts embedded and cut down, every text there to be found.
# usage: report_pages.sh PROGRAM FOLDER_OF_FONTS INSPECTION_FORM; exit 77 when a tool is missing.
set -euo pipefail

program=$1 fonts=$2 form=$3
for tool in qpdf pdffonts pdftotext pdfinfo; do
    command -v $tool >/dev/null || { echo "report_pages: $tool is missing; see packaging/dependencies" >&2; exit 77; }
done
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$program" "$fonts" "$work" "$form"

failed=0
wrong() { echo "report_pages: $*" >&2; failed=1; }
squeezed() { tr -d ' \n\f'; }  # so that lines broken on the page still match

for pdf in "$work"/*.pdf; do
    name=$(basename "$pdf" .pdf)
    qpdf --check "$pdf" >"$work/check" 2>&1 || wrong "$name: $(cat "$work/check")"
    pdffonts "$pdf" 2>&1 | tail -n +3 >"$work/fonts"
    [ "$(wc -l <"$work/fonts")" = 2 ] || wrong "$name: not two fonts: $(cat "$work/fonts")"
    while read -r line; do
        [[ $line == *" yes yes yes "* ]] || wrong "$name: a font is not embedded, cut down and mapped: $line"
    done <"$work/fonts"
    pdftotext -raw "$pdf" "$work/raw" 2>"$work/warnings"
    [ ! -s "$work/warnings" ] || wrong "$name: pdftotext warns: $(head -3 "$work/warnings")"
    squeezed <"$work/raw" >"$work/text"
    pages=$(pdfinfo "$pdf" | sed -n 's/^Pages: *//p')
    for ((page = 1; page <= pages; ++page)); do
        grep -qF "page${page}of$pages" "$work/text" || wrong "$name: 'page $page of $pages' is not on its page"
    done
    [ -e "$work/$name.texts" ] || continue
    found=0
    while IFS= read -r wanted; do
        if grep -qF "$(squeezed <<<"$wanted")" "$work/text"; then
            found=$((found + 1))
        else
            wrong "$name: not found: ${wanted:0:80}"
        fi
    done <"$work/$name.texts"
    while IFS= read -r never; do
        ! grep -qF "$never" <(tr '\n' ' ' <"$work/raw") || wrong "$name: must not say: $never"
    done < <([ ! -e "$work/$name.absent" ] || cat "$work/$name.absent")
    [ "$found" -gt 0 ] || wrong "$name: no text was looked for"
    echo "$name: $pages pages, $found texts found"
done

grep -qF 'NOTSIGNEDOFF' <(pdftotext -raw "$work/empty.pdf" - | squeezed) || wrong "empty: does not say NOT SIGNED OFF"
grep -qF 'SignedoffbyA.Tester' <(pdftotext -raw "$work/full.pdf" - | squeezed) || wrong "full: does not say who signed"
grep -qF $'\xEF\xBF\xBD' <(pdftotext -raw "$work/hostile.pdf" -) || wrong "hostile: nothing shows U+FFFD"
grep -qF 'NOINSPECTIONREPORT' <(pdftotext -raw "$work/begun.pdf" - | squeezed) || wrong "begun: passes for a report"
! grep -qF 'NOINSPECTIONREPORT' <(pdftotext -raw "$work/inspected.pdf" - | squeezed) || wrong "inspected: is no report"
for pdf in "$work"/*.pdf; do
    [ "$(stat -c %s "$pdf")" -lt 12000000 ] || wrong "$(basename "$pdf"): over 12 MB"
done
# The long note stands there as complaint and as finding, over many pages: each of its words twice at least.
tr ' ' '\n' <"$work/hostile.words" | grep . | sort >"$work/wanted"
[ "$(wc -l <"$work/wanted")" -gt 1000 ] || wrong "hostile: the note is short"
pdftotext -raw "$work/hostile.pdf" - | grep -oE 'word[0-9]+' | sort | uniq -d >"$work/there"
lost=$(comm -23 "$work/wanted" "$work/there" | head -3)
[ -z "$lost" ] || wrong "hostile: lost from the long note: $lost"
exit $failed

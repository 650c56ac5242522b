#!/usr/bin/env bash
# The zip for Windows as its user unpacks and starts it, here under wine: command line, desk, window. What it writes must
# be the very bytes that the program of this machine writes.
# usage: smoke.sh COTTER FOLDER_OF_THE_ZIP FOLDER_FOR_PICTURES
set -euo pipefail
native=$(realpath "$1")
zip=$(realpath "$2"/cotter-*-windows-x86_64.zip)
looks=$(realpath -m "$3")
work=$(mktemp -d)
export WINEPREFIX=$work/wine WINEDEBUG=-all WINEDLLOVERRIDES="mscoree=;mshtml=;winemenubuilder.exe=" LC_ALL=C.UTF-8
unset DISPLAY WAYLAND_DISPLAY
screen=

leave() {
    wineserver -k 2>/dev/null || true  # of our own prefix
    wineserver -w 2>/dev/null || true
    [ -z "$screen" ] || kill "$screen" 2>/dev/null || true
    rm -rf "$work"
}
trap leave EXIT

step() { printf -- '--- %s\n' "$*"; }
broken() {
    echo "smoke: $*" >&2
    exit 1
}
cotter() { wine "$exe" "$@"; }
# refused TEXT ARGUMENTS…: it must end with 1 and say TEXT in one line.
refused() {
    local text=$1 code=0
    shift
    cotter "$@" >out.txt 2>err.txt || code=$?
    [ "$code" = 1 ] || broken "exit code $code of: $*"
    [ "$(wc -l <err.txt)" = 1 ] && grep -qF -- "$text" err.txt || broken "no single line with '$text' of: $* ($(<err.txt))"
}

step "unpacked, in a folder whose name is not plain ASCII"
mkdir -p "$looks" "$work/Grüße aus dem Hof"
cd "$work/Grüße aus dem Hof"
unzip -q "$zip"
exe=$(echo "$PWD"/cotter-*/cotter.exe)
for file in README.txt LICENSE.txt CHANGELOG.md licences/PARTS.md licences/sdl.txt licences/exif.txt; do
    [ -s "${exe%/*}/$file" ] || broken "$file is not in the zip"
done

step "version, help, wrong use"
wineboot -i >/dev/null 2>&1
[ "$(cotter --version)" = "$("$native" --version)" ]
cotter receive --help | grep -q -- --ledger
code=0 && cotter nonsense >/dev/null 2>&1 || code=$?
[ "$code" = 2 ]

step "the demo's packets: the same bytes as here"
cotter demo --out Höfe/demo >/dev/null
"$native" demo --out here >/dev/null
[ "$(ls here/*.zip | wc -l)" = 2 ]
for made in here/*.zip; do cmp "$made" "Höfe/demo/${made##*/}"; done

step "checks them, and says what is wrong with a damaged one"
packet=$(echo Höfe/demo/*_r2.zip)
cotter check "$packet" >check.txt
"$native" check "$packet" | cmp - check.txt || broken "another answer than here: $(<check.txt)"
cotter check "Höfe\\demo\\${packet##*/}" >/dev/null
head -c 300000 "$packet" >damaged.zip
code=0 && cotter check damaged.zip >out.txt 2>&1 || code=$?
[ "$code" = 1 ]
refused "there is no book here" jobs --book "not there"

step "packs a job out of a book: the same bytes again"
cotter pack --book Höfe/demo/book f179ec79 --out first >/dev/null  # makes the book's key
cp -r Höfe/demo/book twin
cotter pack --book Höfe/demo/book 3f9c1a2b --out packed >/dev/null
"$native" pack --book twin 3f9c1a2b --out packed-here >/dev/null
for made in packed-here/*.zip; do cmp "$made" "packed/${made##*/}"; done

step "the office: takes in, finds, exports the same as here"
cotter receive --ledger office.ledger Höfe/demo >taken.txt
tail -n 1 taken.txt | grep -q '^2 taken in, 0 there already, 0 refused, 0 failed$'
cotter receive --ledger office.ledger 'Höfe\demo\' | tail -n 1 | grep -q '^0 taken in, 2 there already'
"$native" receive --ledger here.ledger Höfe/demo >/dev/null
cotter find --ledger office.ledger nur rotor >found.txt
"$native" find --ledger here.ledger nur rotor | cmp - found.txt
grep -q NUR-07 found.txt
cotter export --ledger office.ledger --out export >/dev/null
"$native" export --ledger here.ledger --out export-here >/dev/null
diff -r export-here export
cotter backup --ledger office.ledger --to office.zip >/dev/null
"$native" backup --check office.zip >/dev/null

step "a folder deeper than 260 characters"
deep=$(printf 'a-folder-with-a-rather-long-name/%.0s' 1 2 3 4 5 6 7 8 9)
mkdir -p "$deep"
cp "$packet" "$deep"
cotter check "$deep${packet##*/}" >/dev/null
cotter receive --ledger deep.ledger "$deep" | tail -n 1 | grep -q '^1 taken in'

step "the desk without a display"
cat >desk.txt <<'SCRIPT'
tap "What is due"
tap "Register"
text "nur"
shot register
key enter
shot trailer
key escape
tap "What is due"
shot due
SCRIPT
desk=(desk --headless --script desk.txt --clock 2026-05-14T16:00:00-05:00 --audit)
cotter "${desk[@]}" --ledger office.ledger --shots shots >desk.log || broken "$(tail -n 5 desk.log)"
"$native" "${desk[@]}" --ledger here.ledger --shots shots-here >/dev/null
for shot in register trailer due; do
    cp "shots/$shot.png" "$looks/$shot.png"
    # One renderer is SDL 2.32, the other SDL 2.26: hardly a point may differ, and none by much.
    different=$(compare -metric AE -fuzz 5% "shots/$shot.png" "shots-here/$shot.png" null: 2>&1 || true)
    echo "$shot: $different points differ from this machine's picture"
    [ "${different%%.*}" -lt 2000 ] || broken "$shot.png looks different from this machine's"
done

step "the window"
wineserver -k || true  # what wine started without a display would go on without one; it may have ended by itself
wineserver -w
exec 3>screen.txt
Xvfb -displayfd 3 -screen 0 1400x900x24 -nolisten tcp >/dev/null 2>&1 &
screen=$!
for _ in $(seq 100); do [ -s screen.txt ] && break; sleep 0.1; done
export DISPLAY=:$(<screen.txt)
colours() {  # how many the screen shows; it is black without a window
    import -window root "$1"
    identify -format %k "$1"
}
# started NAME ARGUMENTS…: its window is drawn within a minute; its picture is kept.
started() {
    local picture=$looks/$1.png
    shift
    wine "$exe" "$@" >window.log 2>&1 &
    for _ in $(seq 60); do
        sleep 1
        [ "$(colours "$picture")" -lt 100 ] || break
    done
    sleep 2
    [ "$(colours "$picture")" -ge 100 ] || broken "no window of: $* ($(<window.log))"
}
killed() {
    wineserver -k || true
    wineserver -w
    for _ in $(seq 30); do
        [ "$(colours "$work/blank.png")" -ge 10 ] || return 0
        sleep 1
    done
    broken "the killed program's window stays"
}
started window-desk desk --ledger office.ledger
killed
started window-app app --book Höfe/demo/book

step "a second program on the same book is told"
refused "in use by another process" jobs --book Höfe/demo/book
killed
cotter jobs --book Höfe/demo/book | grep -q NUR-07
echo "smoke: all good; pictures in $looks"

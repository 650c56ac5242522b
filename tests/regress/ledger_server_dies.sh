#!/usr/bin/env bash
# A PostgreSQL server that goes away in the middle of a batch, and comes back: one clear line, nothing half taken, and
# the batch handed in again gives the ledger that an undisturbed one gives. Then the ledger moves to a file and back.
# Last, a watched folder outlives the server.
#
# usage: ledger_server_dies.sh COTTER OFFICE_MAKER
set -euo pipefail
. "$(dirname "$0")/postgres.bash"
cotter=$1 maker=$2

work=$(mktemp -d)
watching=
trap '[ -z "$watching" ] || kill "$watching" 2>/dev/null || true; stop_postgres; rm -rf "$work"' EXIT
start_postgres "$work"
"$maker" packets "$work/batch" 300 5 2 10

"$cotter" receive --ledger "$work/calm.ledger" "$work/batch" >/dev/null || true
"$cotter" export --ledger "$work/calm.ledger" --out "$work/calm"

"$cotter" receive --ledger "$postgres_address" --photos "$work/photos" "$work/batch" >"$work/said" 2>"$work/error" &
receiving=$!
for _ in $(seq 500); do
    [ "$(wc -l <"$work/said")" -lt 40 ] || break
    sleep 0.02
done
kill_postgres
if wait "$receiving"; then
    echo "the batch was through before the server was killed" >&2
    exit 1
fi
cat "$work/error"
grep -q "server is gone" "$work/error"
[ "$(wc -l <"$work/error")" = 1 ]

again_postgres
"$cotter" receive --ledger "$postgres_address" --photos "$work/photos" "$work/batch" >"$work/said" || true
tail -n 1 "$work/said"
"$cotter" export --ledger "$postgres_address" --out "$work/server"
diff -r "$work/calm" "$work/server"

# From the server to a file, back to another server's database, by one command each.
"$cotter" move --ledger "$postgres_address" --to "$work/moved.ledger" --to-photos "$work/photos" >"$work/there"
"$cotter" export --ledger "$work/moved.ledger" --out "$work/moved"
diff -r "$work/calm" "$work/moved"
as_postgres "$postgres_bin/createdb" -h "$postgres_folder" -U cotter second
second=${postgres_address/\/cotter\?//second?}
"$cotter" move --ledger "$work/moved.ledger" --to "$second" >"$work/back"
diff "$work/there" "$work/back"
"$cotter" find --ledger "$second" qry --limit 3
if "$cotter" move --ledger "$work/moved.ledger" --to "$second" 2>"$work/error"; then exit 1; fi
grep -q "is not empty" "$work/error"
if "$cotter" find --ledger "${postgres_address/\/cotter\?//nobody?}" x 2>"$work/error"; then exit 1; fi
grep -q "no such database" "$work/error"

# A packet comes while the server is away: it is waited for, said once, and taken in when it is back.
until_said() {
    for _ in $(seq 400); do
        ! grep -q "$2" "$1" || return 0
        sleep 0.2
    done
    echo "never said: $2" >&2
    cat "$work/said" "$work/error" >&2
    exit 1
}
mkdir "$work/inbox"
"$maker" packets "$work/late" 302 5 2 0
mapfile -t late < <(find "$work/late" -name '*.zip' | sort | tail -n 2)
"$cotter" receive --ledger "$second" --watch "$work/inbox" >"$work/said" 2>"$work/error" &
watching=$!
cp "${late[0]}" "$work/inbox/"
until_said "$work/said" "$(basename "${late[0]}")"
kill_postgres
cp "${late[1]}" "$work/inbox/"
until_said "$work/error" "waiting: the ledger's server is gone"
sleep 5
again_postgres
until_said "$work/error" "going on"
grep -q "$(basename "${late[1]}")" "$work/said"
[ "$(grep -c "server is gone" "$work/error")" = 1 ]
kill "$watching"
wait "$watching" || true
watching=

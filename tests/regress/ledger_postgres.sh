#!/usr/bin/env bash
# The ledger's whole suite on a PostgreSQL server of its own. Skipped (77) where PostgreSQL is not installed.
#
# usage: ledger_postgres.sh TESTS     the doctest program that holds the ledger's cases
set -euo pipefail
. "$(dirname "$0")/postgres.bash"

work=$(mktemp -d)
trap 'stop_postgres; rm -rf "$work"' EXIT
start_postgres "$work"
COTTER_TEST_POSTGRES=$postgres_address "$1" '--source-file=*/tests/core/ledger/*'

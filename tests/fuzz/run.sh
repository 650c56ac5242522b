#!/bin/sh
# Runs one fuzz target for FUZZ_SECONDS (20 when unset), as ctest does: run.sh PROGRAM WORK_FOLDER [SEED_FOLDER…].
# What it finds new stays in WORK_FOLDER/corpus for the next run; what breaks the program is left in WORK_FOLDER.
set -eu
program=$1
work=$2
shift 2
mkdir -p "$work/corpus"
for found in "$work"/crash-* "$work"/leak-* "$work"/timeout-* "$work"/oom-*; do
    [ ! -e "$found" ] || "$program" "$found"  # what broke it before must hold now
done
exec "$program" -max_total_time="${FUZZ_SECONDS:-20}" -timeout=20 -rss_limit_mb=2048 -print_final_stats=1 -verbosity=1 \
    -artifact_prefix="$work/" "$work/corpus" "$@"

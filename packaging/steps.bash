# What packaging/run, test and lint share: progress lines with elapsed time, and how a build folder is configured.
# Sourced, never run. Sets: root (the project), jobs (as many as CPU cores, or COTTER_JOBS).
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
jobs=${COTTER_JOBS:-$(nproc)}
export CCACHE_BASEDIR=${CCACHE_BASEDIR:-$root}  # what one checkout compiled serves the next one
[ ! -x /usr/bin/python3 ] || export EMSDK_PYTHON=${EMSDK_PYTHON:-/usr/bin/python3}  # no shims: it starts once a file

# say TEXT: a progress line with the time since the start.
say() {
    printf '[%02d:%02d] %s\n' $((SECONDS / 60)) $((SECONDS % 60)) "$*"
}

# step NAME: what follows is timed under this name, until the next one.
step_names=()
step_starts=()
step() {
    step_names+=("$1")
    step_starts+=("$SECONDS")
}

# say_times: how long each step took, in one line.
say_times() {
    local i took line="" ends=("${step_starts[@]:1}" "$SECONDS")
    for i in "${!step_names[@]}"; do
        took=$((ends[i] - step_starts[i]))
        line+="${line:+, }${step_names[i]} $((took / 60)):$(printf '%02d' $((took % 60)))"
    done
    say "times: $line"
}

# stop TEXT: ends with one line that says what is wrong and what to do.
stop() {
    printf '%s: %s\n' "$(basename "$0")" "$*" >&2
    exit 1
}

# quietly LOG COMMAND…: the command's output goes to LOG; the end of it is shown when the command fails.
quietly() {
    local log=$1
    shift
    mkdir -p "$(dirname "$log")"
    "$@" >"$log" 2>&1 </dev/null && return
    tail -n 40 "$log" >&2
    echo "(all of it: $log)" >&2
    return 1
}

# How the program is built for use and for its tests: optimised, without what only a debugger reads.
release_flags=(-DCMAKE_BUILD_TYPE=None "-DCMAKE_CXX_FLAGS=-O2 -DNDEBUG")

# configure FOLDER OPTIONS…: warnings are errors with the compiler that we test with; a newer one may know more of them.
configure() {
    local folder=$1 werror=OFF
    shift
    case "$(g++ -dumpversion):$*" in 12*) werror=ON ;; esac
    quietly "$folder/configure.log" cmake -S "$root" -B "$folder" -G Ninja -DCOTTER_WERROR=$werror "$@"
}

# configure_web FOLDER OPTIONS…: the same for WebAssembly; packaging/web/toolchain and parts/fetch must have run.
configure_web() {
    local folder=$1
    shift
    configure "$folder" -DCMAKE_TOOLCHAIN_FILE="$root/packaging/web/Emscripten.cmake" -DCMAKE_BUILD_TYPE=None "$@"
}

# configure_windows FOLDER OPTIONS…: the same for Windows; packaging/parts/fetch windows must have run.
configure_windows() {
    local folder=$1
    shift
    configure "$folder" -DCMAKE_TOOLCHAIN_FILE="$root/packaging/windows/Mingw.cmake" -DCMAKE_BUILD_TYPE=None "$@"
}

# web_tools: what the browser tests need from npm, in the versions that tests/web/package-lock.json names.
web_tools() {
    local tools=$root/build/web-tools
    cmp -s "$root/tests/web/package-lock.json" "$tools/package-lock.json" && [ -d "$tools/node_modules" ] && return
    command -v npm >/dev/null || "$root/packaging/install" npm || return 1
    rm -rf "$tools"
    mkdir -p "$tools"
    cp "$root"/tests/web/package*.json "$tools"
    (cd "$tools" && quietly "$tools/npm.log" npm ci --no-audit --no-fund) || { rm -rf "$tools/package-lock.json"; return 1; }
}

# build FOLDER TARGETS…: says now and then how far it is.
build() {
    local folder=$1 line said=$SECONDS
    shift
    { cmake --build "$folder" --parallel "$jobs" --target "$@" 2>&1 </dev/null || echo "BUILD FAILED"; } |
        tee "$folder/build.log" | while read -r line; do
        if [[ $line =~ ^\[[0-9]+/[0-9]+\] ]] && ((SECONDS - said >= 20)); then
            say "  ${BASH_REMATCH[0]}"
            said=$SECONDS
        fi
    done
    [ "$(tail -n 1 "$folder/build.log")" != "BUILD FAILED" ] && return
    grep -v '^\[[0-9]*/[0-9]*\]' "$folder/build.log" | tail -n 60 >&2
    echo "(all of it: $folder/build.log)" >&2
    return 1
}

# What packaging/parts/fetch and packaging/web/toolchain share: Debian's archive as a source of pinned files.
# Sourced, never run. The one who sources it sets `program` (its name, for messages) beforehand.
#
# Method: apt itself fetches and verifies, but by a private configuration in a folder of ours, so that the machine's
# own lists stay as they are. The mirror is the one that the machine already uses for its own release.
#
# COTTER_MIRROR  a Debian mirror to use instead of the machine's own
keyring=/usr/share/keyrings/debian-archive-keyring.gpg

fail() {
    echo "$program: $*" >&2
    exit 1
}

# Is every file named in this list there, with that SHA-256? (the list, the folder)
all_match() {
    (cd "$2" 2>/dev/null && sha256sum --check --strict --status "$1" 2>/dev/null)
}

# The Debian mirrors that this machine uses for its own release, one a line. Asks apt, so every way to write sources counts.
machine_mirrors() {
    local codename
    codename=$(. /etc/os-release && echo "${VERSION_CODENAME:-}")
    apt-get update --print-uris 2>/dev/null |
        sed -n "s|^'\(.*\)/dists/$codename/InRelease'.*|\1|p" | sort -u
}

# A private apt: ROOT, then the arguments of apt-get.
private_apt() {
    local root=$1
    shift
    apt-get -qq -o Dir::State="$root" -o Dir::State::Lists="$root/lists" -o Dir::State::Status="$root/status" \
        -o Dir::Cache="$root" -o Dir::Cache::Archives="$root/archives" \
        -o Dir::Etc::SourceList="$root/sources.list" -o Dir::Etc::SourceParts=/dev/null \
        -o Acquire::Languages=none -o Acquire::Retries=3 -o APT::Sandbox::User="$(id -un)" \
        -o APT::Update::Error-Mode=any "$@"
}

# prepare_apt ROOT MIRROR TYPE SUITES: a private apt that knows these suites (words) of deb or deb-src.
prepare_apt() {
    local root=$1 mirror=$2 type=$3 suite
    mkdir -p "$root/lists/partial" "$root/archives/partial"
    : >"$root/status"
    for suite in $4; do echo "$type [signed-by=$keyring] $mirror $suite main"; done >"$root/sources.list"
    private_apt "$root" update
}

# from_debian FOLDER TYPE SUITES WHAT ARGUMENTS…: apt-get ARGUMENTS in FOLDER, which must exist, with the suites' lists.
# WHAT is for the message when it fails; apt's words are then in FOLDER/apt.log.
from_debian() {
    local folder=$1 type=$2 suites=$3 what=$4 mirror said=$1/apt.log root=$1/apt
    local -a mirrors
    shift 4
    command -v apt-get >/dev/null || fail "apt-get is not here; put $what into $folder by hand"
    [ -r "$keyring" ] || fail "$keyring is missing; install debian-archive-keyring"
    if [ -n "${COTTER_MIRROR:-}" ]; then mirrors=("$COTTER_MIRROR"); else mapfile -t mirrors < <(machine_mirrors); fi
    [ ${#mirrors[@]} -gt 0 ] || fail "this machine's apt names no Debian mirror; name one in COTTER_MIRROR"
    : >"$said"
    for mirror in "${mirrors[@]}"; do
        if prepare_apt "$root" "$mirror" "$type" "$suites" >>"$said" 2>&1 &&
            (cd "$folder" && private_apt "$root" "$@" >>"$said" 2>&1); then
            rm -rf "$root" "$said"
            return
        fi
    done
    if grep -q 'NO_PUBKEY\|not signed' "$said"; then
        fail "this machine's Debian keys are too old for $suites; upgrade debian-archive-keyring (apt's words: $said)"
    fi
    fail "apt could not fetch $what from $suites; connect to the network and run this again (apt's words: $said)"
}

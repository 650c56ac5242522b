# What packaging/fresh-test and packaging/debian/try share: a bare Debian 12 in a folder, and commands inside of it.
# Sourced after steps.bash, never run. Needs root and debootstrap.
#
# COTTER_MIRROR  a Debian mirror to use instead of this machine's own

# bare_debian FOLDER [ARCHIVES]: makes one there, unless it is there already. ARCHIVES is a folder that keeps its packages.
bare_debian() {
    local folder=$1 mirror=${COTTER_MIRROR:-}
    [ ! -f "$folder.made" ] || return 0
    [ -n "$mirror" ] ||
        mirror=$(apt-get update --print-uris | sed -n "s|^'\(.*\)/dists/bookworm/InRelease'.*|\1|p" | head -n 1)
    [ -n "$mirror" ] || stop "this machine's apt names no mirror of Debian 12; name one in COTTER_MIRROR"
    say "making a bare Debian 12 in $folder"
    rm -rf --one-file-system "$folder"
    quietly "$folder.log" debootstrap --variant=minbase ${2:+--cache-dir="$2"} bookworm "$folder" "$mirror" ||
        stop "debootstrap failed"
    rm -f "$folder"/var/cache/apt/archives/*.deb
    touch "$folder.made"
}

# copy_root BARE FOLDER: a machine of its own.
copy_root() {
    cp -a --reflink=auto "$1" "$2"
    cp /etc/resolv.conf "$2/etc/"
}

# inside FOLDER [OPTION OF chroot…] NAME=VALUE… COMMAND…: runs it in that machine with this environment and no other, and
# without a terminal. What it leaves running is ended. Folders of the array `lent`, each as FROM:TO, are seen in there.
# Method: mounts and processes are those of a namespace that ends with the command, so nothing is left to be unmounted,
# and no removal of the folder can reach what was lent.
lent=()
inside() {
    local folder=$1
    shift
    local -a options=()
    while [[ "$1" = --* ]]; do options+=("$1"); shift; done
    unshare --mount --pid --fork --kill-child --propagation private bash -c '
        set -e
        folder=$1
        mount -t proc proc "$folder/proc"
        shift
        while [ "$1" != -- ]; do
            mkdir -p "$folder/${1##*:}"
            mount --bind "${1%:*}" "$folder/${1##*:}"
            shift
        done
        shift
        status=0
        chroot "$@" || status=$?  # not exec: the first process of a namespace has to live on and wait for orphans
        exit $status' - "$folder" "${lent[@]}" -- "${options[@]}" "$folder" /usr/bin/env -i \
        PATH=/usr/sbin:/usr/bin:/sbin:/bin LANG=C.UTF-8 ${http_proxy:+http_proxy="$http_proxy"} "${@}" </dev/null
}

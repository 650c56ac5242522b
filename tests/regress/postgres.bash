# A PostgreSQL server of its own in a temporary folder, reached by a socket there and by nothing else. For the scripts
# beside this file, which source it.
#
# start_postgres FOLDER: starts one; sets `postgres_address` ("postgresql:///cotter?host=…"). stop_postgres ends it;
# kill_postgres ends it as a power cut would; again_postgres starts it once more. A server refuses to run as root, so
# root hands it to the user that Debian's package has made for it.

postgres_bin=$(ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -V | tail -n 1)

as_postgres() {
    if [ "$(id -u)" = 0 ]; then
        runuser -u postgres -- "$@"
    else
        "$@"
    fi
}

again_postgres() {
    as_postgres "$postgres_bin/pg_ctl" -s -w -D "$postgres_folder/data" -l "$postgres_folder/log" \
        -o "-c listen_addresses='' -c unix_socket_directories='$postgres_folder'" start >/dev/null
}

start_postgres() {
    postgres_folder=$1/postgres
    if [ -z "$postgres_bin" ]; then
        echo "PostgreSQL is not installed: packaging/install test" >&2
        return 77
    fi
    mkdir -p "$postgres_folder"
    chmod 755 "$1"
    [ "$(id -u)" != 0 ] || chown postgres "$postgres_folder"
    as_postgres "$postgres_bin/initdb" -D "$postgres_folder/data" -U cotter -A trust -E UTF8 --locale=C >/dev/null
    again_postgres
    as_postgres "$postgres_bin/createdb" -h "$postgres_folder" -U cotter cotter
    postgres_address="postgresql://cotter@/cotter?host=$postgres_folder"
}

stop_postgres() {
    as_postgres "$postgres_bin/pg_ctl" -s -D "$postgres_folder/data" -m fast stop >/dev/null 2>&1 || true
}

kill_postgres() {
    as_postgres "$postgres_bin/pg_ctl" -s -D "$postgres_folder/data" -m immediate stop >/dev/null 2>&1 || true
}

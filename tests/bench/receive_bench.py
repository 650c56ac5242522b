#!/usr/bin/env python3
"""Taking in 1,000 packets, about 2 GB, against hashing the same bytes and raw inserts with the sqlite3 shell.

usage: receive_bench.py COTTER OFFICE_MAKER [ROUNDS] [PACKETS]
       receive_bench.py COTTER OFFICE_MAKER --full LEDGER JOBS TRAILERS

Ours: `cotter receive` into a new ledger: every check, photos in the vault, all rows, synced. Peer: `sha256sum` over the
packets, then the sqlite3 shell putting every packet's bytes into a new database by readfile(), one transaction, synced
as ours is. Both start with the packets in the page cache.

--full: does a packet cost the same in a full ledger? LEDGER is one that `office_maker ledger LEDGER JOBS TRAILERS` has
filled; the same trailers at the same number of visits get one visit more, there and in a ledger of 1,000 jobs.
"""
import json
import os
import pathlib
import shutil
import statistics
import subprocess
import sys
import tempfile


def timed(*command, **more):
    """Seconds, and seconds of CPU time."""
    before = os.times()
    subprocess.run(command, check=False, stdout=subprocess.DEVNULL, **more)
    after = os.times()
    return (after.elapsed - before.elapsed,
            after.children_user + after.children_system - before.children_user - before.children_system)


def peer(packets, work):
    database = work / "peer.db"
    database.unlink(missing_ok=True)
    lines = ["PRAGMA journal_mode=WAL;", "PRAGMA synchronous=FULL;",
             "CREATE TABLE packet(path TEXT PRIMARY KEY, bytes BLOB);", "BEGIN;"]
    lines += [f"INSERT INTO packet VALUES('{p}', readfile('{p}'));" for p in packets]
    lines += ["COMMIT;", "PRAGMA wal_checkpoint(TRUNCATE);"]
    hashing = timed("sha256sum", *map(str, packets))
    inserting = timed("sqlite3", str(database), input="\n".join(lines), text=True)
    assert database.stat().st_size > sum(p.stat().st_size for p in packets)
    return hashing, inserting


def ours(cotter, batch, work):
    ledger = work / "ours.ledger"
    for name in (ledger, pathlib.Path(f"{ledger}-wal"), pathlib.Path(f"{ledger}-shm")):
        name.unlink(missing_ok=True)
    shutil.rmtree(f"{ledger}.photos", ignore_errors=True)
    return timed(cotter, "receive", "--ledger", str(ledger), str(batch))


def cost(cotter, ledger, batch, count):
    """Seconds, and seconds of CPU time, of taking the batch in."""
    before = os.times()
    done = subprocess.run([cotter, "receive", "--json", "--ledger", str(ledger), str(batch)], capture_output=True, text=True)
    after = os.times()
    assert json.loads(done.stdout)["taken"] == count, done.stderr
    return (after.elapsed - before.elapsed,
            after.children_user + after.children_system - before.children_user - before.children_system)


def compare_with_full(cotter, maker, full, jobs, trailers):
    visits = int(jobs) // int(trailers)
    count = 1000 // visits
    with tempfile.TemporaryDirectory(dir=os.environ.get("TMPDIR")) as name:
        work = pathlib.Path(name)
        small = work / "small.ledger"
        subprocess.run([maker, "ledger", str(small), "1000", str(count)], check=True, stdout=subprocess.DEVNULL)
        for batch, first, all_trailers in (("few", "1000", str(count)), ("many", jobs, trailers)):
            subprocess.run([maker, "packets", str(work / batch), str(count), "0", "2", "10", first, all_trailers], check=True)
        taken = {"few": [], "many": []}
        for turn in range(5):
            for batch, ledger in (("few", small), ("many", full)):
                copy = work / f"{batch}{turn}.ledger"
                shutil.copyfile(ledger, copy)
                os.sync()
                taken[batch].append(cost(cotter, copy, work / batch, count))
                copy.unlink()
        few, many = ([statistics.median(t[i] for t in taken[b]) / count * 1e3 for i in (0, 1)] for b in ("few", "many"))
        print(f"a packet: {few[0]:.2f} ms into a ledger of 1000 jobs, {many[0]:.2f} ms into one of {jobs}; "
              f"CPU {few[1]:.2f} and {many[1]:.2f} ms: ratio {many[1] / few[1]:.2f}")


def main():
    cotter, maker = sys.argv[1:3]
    if sys.argv[3:4] == ["--full"]:
        return compare_with_full(cotter, maker, *sys.argv[4:7])
    rounds = int(sys.argv[3]) if len(sys.argv) > 3 else 3
    count = sys.argv[4] if len(sys.argv) > 4 else "1000"
    with tempfile.TemporaryDirectory(dir=os.environ.get("TMPDIR")) as name:
        work = pathlib.Path(name)
        batch = work / "batch"
        subprocess.run([maker, "packets", str(batch), count, "0", "5", "330"], check=True)
        packets = sorted(batch.glob("*.zip"))
        size = sum(p.stat().st_size for p in packets)
        timed("cat", *map(str, packets))
        taken, peers = [], []
        for _ in range(rounds):
            os.sync()
            taken.append(ours(cotter, batch, work))
            os.sync()
            peers.append(peer(packets, work))
        def middle(pairs, i):
            return statistics.median(p[i] for p in pairs)
        hashing, inserting = [a for a, _ in peers], [b for _, b in peers]
        mine, theirs = middle(taken, 0), statistics.median(a[0] + b[0] for a, b in peers)
        cpu = middle(taken, 1), statistics.median(a[1] + b[1] for a, b in peers)
        print(f"{len(packets)} packets, {size / 1e6:.0f} MB: taken in {mine:.2f} s ({mine / len(packets) * 1e3:.2f} ms "
              f"each); hashing {middle(hashing, 0):.2f} s and raw inserts {middle(inserting, 0):.2f} s: ratio "
              f"{mine / theirs:.2f} (aim 1.5); CPU {cpu[0]:.2f} s to {cpu[1]:.2f} s")


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""A batch of packets, one in twenty of them bad, taken in by `cotter receive`.

usage: receive_batch.py COTTER OFFICE_MAKER PACKETS KILLS

First: all good ones are taken, every bad one is refused with the reason of its kind, and the same batch again changes
nothing. Then the batch is killed again and again, at random moments (fixed seed), and handed in again until it is
through: the ledger must end as the one that nobody disturbed, with the same export to the byte. Last: what else may
befall a batch, from a full disk to a file that grows while it is read.
"""
import filecmp
import json
import os
import pathlib
import random
import resource
import shutil
import signal
import sqlite3
import struct
import subprocess
import sys
import tempfile
import time

SEED = 20260514


def receive(cotter, ledger, *paths, **more):
    done = subprocess.run([cotter, "receive", "--json", "--ledger", str(ledger), *map(str, paths)], text=True,
                          capture_output=True, **more)
    return done.returncode, (json.loads(done.stdout) if done.stdout else {}), done.stderr


def export(cotter, ledger, folder):
    subprocess.run([cotter, "export", "--ledger", str(ledger), "--out", str(folder)], check=True)
    return folder


def same_folder(a, b):
    names = sorted(os.listdir(a))
    assert names == sorted(os.listdir(b)), (a, b)
    _, different, errors = filecmp.cmpfiles(a, b, names, shallow=False)
    assert not different and not errors, (different, errors)


def check_whole(ledger):
    db = sqlite3.connect(ledger)
    assert db.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
    packets = db.execute("SELECT count(*) FROM packet").fetchone()[0]
    for table in ("document", "job"):
        assert db.execute(f"SELECT count(*) FROM {table}").fetchone()[0] == packets, table
    held = {row[0] for row in db.execute("SELECT sha256 FROM content")}
    db.close()
    there = {p.stem for p in pathlib.Path(f"{ledger}.photos/photos").glob("*/*.jpg")}
    assert held <= there, "a photo that the ledger names is not in the vault"
    return packets


def first_time(cotter, batch, expected, ledger, count):
    code, said, _ = receive(cotter, ledger, batch)
    bad = len(expected)
    assert code == 1 and said["taken"] == count - bad and said["refused"] == bad and said["failed"] == 0, said
    reasons = {}
    for row in said["packets"]:
        name = os.path.basename(row["path"])
        if row["outcome"] != "refused":
            assert name not in expected, row
            continue
        wanted = expected[name]
        assert wanted["says"] in row["why"], (wanted, row["why"])
        assert "\n" not in row["why"]
        reasons.setdefault(wanted["kind"], row["why"])
        assert (batch / name).exists(), "a refused packet stays where it was"
    kinds = {e["kind"] for e in expected.values()}
    assert set(reasons) == kinds
    assert len(set(reasons.values())) == len(kinds), "each kind has its own reason"
    print(f"{said['taken']} taken in, {said['refused']} refused for {len(kinds)} distinct right reasons")


def again(cotter, batch, ledger, exported, work, bad):
    code, said, _ = receive(cotter, ledger, batch)
    assert said["taken"] == 0 and said["refused"] == bad, said
    same_folder(exported, export(cotter, ledger, work / "again"))
    print(f"the same batch again: {said['there_already']} there already, nothing changed")


def kills(cotter, batch, exported, work, rounds, whole):
    """The time of one undisturbed run tells in which span to kill: ten times a ledger, a little later each time."""
    chance = random.Random(SEED)
    rounds_left, ledgers, moments = rounds, 0, []
    while rounds_left > 0:
        ledgers += 1
        ledger = work / f"killed{ledgers}.ledger"
        for turn in range(min(rounds_left, 10)):
            running = subprocess.Popen([cotter, "receive", "--ledger", str(ledger), str(batch)],
                                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            time.sleep(chance.uniform(0.0, whole * (turn + 1) / 10))
            running.send_signal(signal.SIGKILL)
            running.wait()
            rounds_left -= 1
            if ledger.exists() and ledger.stat().st_size > 0:
                try:
                    moments.append(check_whole(ledger))
                except sqlite3.OperationalError:  # killed before the tables were made
                    moments.append(0)
        code, said, error = receive(cotter, ledger, batch)
        assert code == 1 and said.get("failed") == 0, (said, error)
        check_whole(ledger)
        assert not os.listdir(f"{ledger}.photos/incoming"), "unfinished photos are left"
        same_folder(exported, export(cotter, ledger, work / "after_kills"))
        shutil.rmtree(f"{ledger}.photos")
    print(f"killed {rounds} times, with {min(moments)} to {max(moments)} packets on file: the same ledger {ledgers} times")


def full_disk(cotter, batch, exported, work):
    """A limit on the size of files stands in for a full disk: SQLite and the vault see their writes fail."""
    ledger = work / "full.ledger"
    limit = 300_000

    def small():
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
    code, _, error = receive(cotter, ledger, batch, preexec_fn=small)
    assert code == 1 and error.count("\n") == 1 and "Traceback" not in error, error
    if ledger.exists() and ledger.stat().st_size > 0:
        try:
            check_whole(ledger)
        except sqlite3.OperationalError:
            pass
    code, said, error = receive(cotter, ledger, batch)
    assert said.get("failed") == 0, error
    same_folder(exported, export(cotter, ledger, work / "after_full"))
    print("a disk that is full: one line, nothing half taken, and the rest the next time")


def locked(cotter, batch, work):
    ledger = work / "locked.ledger"
    good = next(p for p in sorted(batch.iterdir()) if p.name.endswith("_r1.zip"))
    receive(cotter, ledger, good)
    db = sqlite3.connect(ledger, isolation_level=None)
    db.execute("BEGIN IMMEDIATE")
    started = time.time()
    code, _, error = receive(cotter, ledger, batch)
    assert code == 1 and "in use by another process" in error and error.count("\n") == 1, error
    assert time.time() - started < 30
    db.execute("ROLLBACK")
    db.close()
    print("a ledger that is locked:", error.strip())


def ten_gigabytes(folder):
    """Three that are as large as that and take no room: nothing at all, an archive in good order, a bag."""
    size = 10 << 30
    with open(folder / "sparse.zip", "wb") as out:
        out.truncate(size)
    name = b"bag/data/photos/huge.jpg"
    sizes = struct.pack("<HHQQ", 1, 16, size, size)
    unknown = (0xFFFFFFFF, 0xFFFFFFFF, len(name), len(sizes))
    with open(folder / "large.zip", "wb") as out:
        out.write(struct.pack("<IHHHHHIIIHH", 0x04034B50, 45, 0x800, 0, 0, 0x5421, 0, *unknown) + name + sizes)
        out.seek(size, os.SEEK_CUR)
        at = out.tell()
        out.write(struct.pack("<IHHHHHHIIIHHHHHII", 0x02014B50, 45, 45, 0x800, 0, 0, 0x5421, 0, *unknown, 0, 0, 0, 0, 0))
        out.write(name + sizes)
        end = out.tell()
        out.write(struct.pack("<IQHHIIQQQQ", 0x06064B50, 44, 45, 45, 0, 0, 1, 1, end - at, at))
        out.write(struct.pack("<IIQI", 0x07064B50, 0, end, 1))
        out.write(struct.pack("<IHHHHIIH", 0x06054B50, 0, 0, 0xFFFF, 0xFFFF, 0xFFFFFFFF, 0xFFFFFFFF, 0))
    bag = folder / "bag"
    (bag / "data").mkdir(parents=True)
    (bag / "bagit.txt").write_text("BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n")
    (bag / "manifest-sha256.txt").write_text("0" * 64 + "  data/job.json\n")
    with open(bag / "data/job.json", "wb") as out:
        out.truncate(size)


def odd_files(cotter, batch, work):
    odd = work / "odd"
    odd.mkdir()
    ten_gigabytes(odd)
    os.symlink("/etc/passwd", odd / "link.zip")
    (odd / "folder.zip").mkdir()
    good = next(p for p in sorted(batch.iterdir()) if p.name.endswith("_r1.zip"))
    whole = good.read_bytes()
    growing = odd / "growing.zip"
    growing.write_bytes(whole[:len(whole) // 2])
    started = time.time()
    code, said, _ = receive(cotter, work / "odd.ledger", odd)
    assert time.time() - started < 20, "a sparse file must not be read through"
    outcomes = {os.path.basename(p["path"]): (p["outcome"], p["why"]) for p in said["packets"]}
    for name, says in (("sparse.zip", "not a zip"), ("large.zip", "huge.jpg: it is larger than allowed"),
                       ("bag", "job.json: it is larger than allowed"), ("growing.zip", "cut off")):
        assert outcomes[name][0] == "refused" and says in outcomes[name][1], outcomes
    assert "link.zip" not in outcomes, "links in a folder are not followed"
    growing.write_bytes(whole)
    code, said, _ = receive(cotter, work / "odd.ledger", growing)
    assert code == 0 and said["taken"] == 1
    for name in ("sparse.zip", "large.zip", "bag"):
        print(f"10 GB, {name}:", outcomes[name][1])
    print("half a file:", outcomes["growing.zip"][1])


def changing_folder(cotter, batch, work):
    """Files come, go and change while they are read: each is refused or taken whole, and none stops the rest."""
    folder = work / "changing"
    shutil.copytree(batch, folder)
    names = [p for p in sorted(folder.iterdir()) if p.name.endswith("_r1.zip")]
    with open(work / "changing.json", "w") as out:
        running = subprocess.Popen([cotter, "receive", "--json", "--ledger", str(work / "changing.ledger"), str(folder)],
                                   stdout=out)
    chance = random.Random(SEED)
    while running.poll() is None:
        victim = chance.choice(names)
        try:
            if chance.random() < 0.5:
                victim.unlink()
            else:
                with open(victim, "r+b") as out:
                    out.truncate(chance.randrange(1, 20_000))
        except FileNotFoundError:
            pass
        time.sleep(0.002)
    said = json.loads((work / "changing.json").read_text())
    assert said["failed"] == 0 and said["taken"] + said["refused"] == len(said["packets"]), said
    check_whole(work / "changing.ledger")
    print(f"a folder that changes while it is read: {said['taken']} taken whole, {said['refused']} refused")


def main():
    cotter, maker, count, rounds = sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
    with tempfile.TemporaryDirectory() as name:
        work = pathlib.Path(name)
        batch = work / "batch"
        subprocess.run([maker, "packets", str(batch), str(count), "5", "2", "10"], check=True)
        expected = json.loads((batch / "expected.json").read_text())
        ledger = work / "office.ledger"
        started = time.time()
        first_time(cotter, batch, expected, ledger, count)
        whole = time.time() - started
        exported = export(cotter, ledger, work / "first")
        assert check_whole(ledger) == count - len(expected)
        again(cotter, batch, ledger, exported, work, len(expected))
        kills(cotter, batch, exported, work, rounds, whole)
        small = work / "small"
        subprocess.run([maker, "packets", str(small), "120", "5", "2", "10"], check=True)
        calm = work / "calm.ledger"
        receive(cotter, calm, small)
        export(cotter, calm, work / "calm")
        full_disk(cotter, small, work / "calm", work)
        locked(cotter, small, work)
        odd_files(cotter, small, work)
        changing_folder(cotter, small, work)


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""Kills the app again and again in the middle of a scripted capture, and looks for what the screen had confirmed.

usage: app_kill.py COTTER ROUNDS

A script starts a job, names the trailer and tightens nuts, one pass after the other. After each tap it expects the
word 'saved' on the screen and then tells what it has done. Each round lets it run for another while, kills it with
SIGKILL, and reads the book with another program's SQLite: every nut that was told must be there, the database must be
whole, and the app must open again on the page where it was.
"""
import json
import os
import random
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time

NUTS = 8
JOB = "00000000-0000-4000-8000-00000000000a"
AT = "2026-05-14T08:00:00-05:00"


def edits():
    axle = {"wheels": "single", "brake": "hydraulic disc", "hub": "oil bath", "studs": NUTS}
    puts = [("visit", {"id": JOB, "opened": AT, "technician": "T"}),
            ("trailer", {"id": JOB[:-1] + "b", "unit": "NUR-07", "axles": [axle]})]
    setting = {"value": "90", "unit": "[lbf_av].[ft_i]"}
    puts.append(("torque", {"id": JOB[:-1] + "c", "place": "axle1-left", "joint": "wheel nuts", "fasteners": NUTS,
                            "target": setting, "target_source": "the maker's sheet", "wrench": "W-1", "passes": [{"setting": setting}],
                            "at": AT, "by": "T"}))
    for kind, value in puts:
        yield json.dumps({"job": JOB, "at": AT, "by": "T", "do": [{"put": kind, "value": value}]})


def torque(book):
    db = sqlite3.connect(f"{book}/book.sqlite")
    assert db.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
    (body,) = db.execute("SELECT body FROM torque").fetchone()
    db.close()
    return [len(p.get("tightened", [])) for p in json.loads(body)["passes"]]


def script(path):
    with open(path, "w") as out:
        out.write('expect "NUR-07"\ntap "NUR-07"\ntap "Axle 1, left"\nscroll-to "Wheel nuts"\ntap "Wheel nuts"\n')
        told = 0
        for nut in (1, 5, 3, 7, 2, 6, 4, 8):  # across the circle, as the app asks
            out.write(f'tap "Nut {nut}"\nexpect "saved"\n')
            told += 1
            out.write(f'note "told {told}"\n')
        out.write("wait 60000 frames\n")


def one_round(cotter, work, number, wait):
    book = f"{work}/book{number}"
    subprocess.run([cotter, "replay", "--book", book, f"{work}/edits.jsonl"], check=True, stdout=subprocess.DEVNULL)
    app = subprocess.Popen([cotter, "app", "--book", book, "--headless", "--scale", "0.5", "--script",
                            f"{work}/script"], stdout=subprocess.PIPE, text=True)
    time.sleep(wait)
    app.send_signal(signal.SIGKILL)
    lines = app.stdout.read().splitlines()
    app.wait()
    told = max([int(line.split()[-1]) for line in lines if line.startswith("told ")], default=0)
    there = sum(torque(book))
    assert there >= told, f"round {number}: {told} nuts were told, {there} are there"
    return told, app.returncode == -signal.SIGKILL


def whole_run(cotter, work):
    """Seconds from the launch to the last nut told: the kills fall into the second half of that."""
    book = f"{work}/whole"
    subprocess.run([cotter, "replay", "--book", book, f"{work}/edits.jsonl"], check=True, stdout=subprocess.DEVNULL)
    start = time.monotonic()
    app = subprocess.Popen([cotter, "app", "--book", book, "--headless", "--scale", "0.5", "--script",
                            f"{work}/script"], stdout=subprocess.PIPE, text=True)
    for line in app.stdout:
        if line.strip() == f"told {NUTS}":
            break
    took = time.monotonic() - start
    app.kill()
    app.wait()
    return took


def main():
    cotter, rounds = sys.argv[1], int(sys.argv[2])
    rng = random.Random(7)
    with tempfile.TemporaryDirectory() as work:
        with open(f"{work}/edits.jsonl", "w") as out:
            out.writelines(line + "\n" for line in edits())
        script(f"{work}/script")
        start = time.monotonic()
        told_in_all, killed, partly = 0, 0, 0
        longest = whole_run(cotter, work)
        for number in range(rounds):
            told, by_us = one_round(cotter, work, number, rng.uniform(0.4, 1.1) * longest)
            told_in_all += told
            killed += by_us
            partly += 0 < told < NUTS
        print(f"{rounds} rounds, {killed} killed, {partly} of them between two nuts, {told_in_all} confirmed nuts, "
              f"none missing, {time.monotonic() - start:.0f} s")
        assert killed == rounds, "a script ended by itself: see its lines"
        assert partly > 0, "no kill fell between two nuts: the waits do not fit this machine"


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""Plays whole days of work on the real app by touches, and counts the taps.

usage: app_scripts.py COTTER PHOTOS      (PHOTOS: the folder of the demo's pictures)

1. A corner: from the launch to the first tagged photo in at most 6 taps, the next finding in at most 3, eight nuts of
   a pass in at most 10.
2. A whole trailer: made known by pictures, photographed corner by corner, tagged, torqued, handed over; the packet is
   checked by `cotter check` and holds what was tapped.
Each script runs under the screens' audit.
"""
import json
import pathlib
import subprocess
import sys
import tempfile
import zipfile

CORNERS = {"Axle 1, left": "08_A1-L_*", "Axle 1, right": "05_A1-R_*", "Axle 2, left": "*A2-L*", "Axle 2, right": "*A2-R*"}


class Script:
    """Lines of a script, and how many taps they are."""

    def __init__(self):
        self.lines, self.taps = [], 0

    def tap(self, label, nth=1):
        self.lines.append(f'tap "{label}" {nth}' if nth > 1 else f'tap "{label}"')
        self.taps += 1

    def at(self, x, y):
        self.lines.append(f"tap {x},{y}")
        self.taps += 1

    def add(self, line):
        self.lines.append(line)


def play(cotter, book, script, work, *options):
    path = work / "script"
    path.write_text("\n".join(script.lines) + "\n")
    done = subprocess.run([cotter, "app", "--book", book, "--headless", "--scale", "1", "--script", path, "--audit",
                           "--clock", "2026-05-14T09:00:00-05:00", *options], capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit("\n".join(done.stdout.splitlines()[-25:]) + "\n" + done.stderr)
    return done.stdout


def settings(book, photos):
    book.mkdir(parents=True, exist_ok=True)
    (book / "settings.json").write_text(json.dumps(
        {"technician": "R. Alder", "photo_folder": str(photos), "wrenches": [{"id": "W-1", "calibrated": "2026-01-10"}]}))

#!/usr/bin/env python3
"""Times the check of a packet of 40 photos, 160 MB, and the sealing of it, against plain programs on the same files.

use: check_bench.py BOX_TOOL [ROUNDS]

check: box_tool check (structure, checksums, signature)  /  one Python process that hashes the same files with hashlib
seal:  box_tool seal, then box_tool check                /  cp + sha256sum + sync of the same files
Whole processes by the wall clock, in turns; medians. Aims: at most 0.5 and at most 1.3.
The photos are random bytes with photo names: nothing here looks into them (packet_bench.py times that too).
"""
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

PHOTOS, SIZE = 40, 4_000_000
HASHER = """
import hashlib, sys
for path in sys.argv[1:]:
    h = hashlib.sha256()
    with open(path, "rb") as f:
        while piece := f.read(1 << 20):
            h.update(piece)
    print(h.hexdigest(), path)
"""


def run(*command):
    start = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


def tell(name, ours, peer, aim):
    o, p = statistics.median(ours), statistics.median(peer)
    ratio = statistics.median(a / b for a, b in zip(ours, peer))
    print(f"{name}: {o * 1000:.0f} ms against {p * 1000:.0f} ms, ratio {ratio:.2f} (aim {aim})")


def main():
    if len(sys.argv) not in (2, 3):
        sys.exit(__doc__)
    tool, rounds = sys.argv[1], int(sys.argv[2]) if len(sys.argv) == 3 else 11
    with tempfile.TemporaryDirectory(prefix="check-bench-", dir=".") as folder:
        photos = [os.path.join(folder, f"{i:02}.jpg") for i in range(PHOTOS)]
        for photo in photos:
            with open(photo, "wb") as f:
                f.write(os.urandom(SIZE))
        packet, key, copies = (os.path.join(folder, n) for n in ("bench_r1.zip", "key", "copies"))
        run(tool, "seal", packet, key, *photos)
        check, hashlib, seal, copy = [], [], [], []
        for _ in range(rounds):
            check.append(run(tool, "check", packet))
            hashlib.append(run("/usr/bin/python3", "-c", HASHER, *photos))
            seal.append(run(tool, "seal", packet, key, *photos) + run(tool, "check", packet))
            os.mkdir(copies)
            copy.append(run("sh", "-c", f"cp {folder}/*.jpg {copies} && sha256sum {copies}/*.jpg && sync {copies}/*.jpg"))
            shutil.rmtree(copies)
        tell("check", check, hashlib, 0.5)
        tell("seal and check", seal, copy, 1.3)


main()

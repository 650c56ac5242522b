#!/usr/bin/env python3
"""Times a photo's intake against libvips' thumbnailer and sha256sum, and measures the memory of a 48 megapixel intake.

use: photo_bench.py BUILD_FOLDER PHOTO.jpg [ROUNDS]

Peer: vipsthumbnail 2048, vipsthumbnail 256 and sha256sum, one after the other. Ours: original stored and synced, preview,
thumbnail, SHA-256 and quality figures, in one process. Both are whole processes by the wall clock, in turns; medians.
Aims: at most 0.7 of the peer's time; at most 120 MB for 48 megapixels.
"""
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time


def run(command):
    """Wall seconds and peak resident megabytes of one command."""
    start = time.perf_counter()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL)
    _, status, usage = os.wait4(process.pid, 0)
    if status != 0:
        sys.exit("failed: " + " ".join(command))
    return time.perf_counter() - start, usage.ru_maxrss / 1024


def peer(photo, folder):
    return sum(run(command)[0] for command in (
        ["vipsthumbnail", photo, "-s", "2048", "-o", os.path.join(folder, "2048.jpg")],
        ["vipsthumbnail", photo, "-s", "256", "-o", os.path.join(folder, "256.jpg")],
        ["sha256sum", photo]))


def main():
    if len(sys.argv) not in (3, 4):
        sys.exit(__doc__)
    program = os.path.join(sys.argv[1], "tests", "bench", "photo_bench")
    photo = sys.argv[2]
    rounds = int(sys.argv[3]) if len(sys.argv) == 4 else 15
    with tempfile.TemporaryDirectory(dir=sys.argv[1]) as folder:
        vault = os.path.join(folder, "vault")
        theirs, ours, memory = [], [], []
        for _ in range(rounds):
            theirs.append(peer(photo, folder))
            shutil.rmtree(vault, ignore_errors=True)
            seconds, megabytes = run([program, vault, photo])
            ours.append(seconds)
            memory.append(megabytes)
        t, o = statistics.median(theirs), statistics.median(ours)
        print(f"peer {t * 1000:.0f} ms, ours {o * 1000:.0f} ms, ratio {o / t:.2f} (aim 0.70), "
              f"peak memory {max(memory):.0f} MB")

        large = os.path.join(folder, "48.jpg")
        subprocess.run(["vips", "thumbnail", photo, large + "[Q=90]", "8064", "--height", "6048", "--size", "up"],
                       check=True)
        seconds, megabytes = run([program, vault, large])
        print(f"48 megapixels ({os.path.getsize(large) / 1e6:.1f} MB file): {seconds * 1000:.0f} ms, "
              f"peak memory {megabytes:.0f} MB (aim 120)")


main()

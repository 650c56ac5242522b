#!/usr/bin/env python3
"""Packing and checking a job of 40 photos, 160 MB, against plain copying and hashing of the same bytes.

usage: packet_bench.py COTTER PHOTO [ROUNDS]
COTTER is the program, PHOTO a JPEG of 12 megapixels to make the 40 from (with vips). Prints medians and ratios:
  pack:  cotter pack, self-check included   /  cp + sha256sum + sync of the same photos
  check: cotter check of that packet        /  a Python process that hashes the same files with hashlib
"""
import json
import pathlib
import statistics
import subprocess
import sys
import tempfile
import time
import uuid

PHOTOS = 40
HASHER = """
import hashlib, pathlib, sys
top = pathlib.Path(sys.argv[1])
for line in (top / "manifest-sha256.txt").read_text().splitlines():
    digest, path = line.split("  ", 1)
    h = hashlib.sha256()
    with open(top / path, "rb") as f:
        while piece := f.read(1 << 20):
            h.update(piece)
    assert h.hexdigest() == digest, path
"""


def run(*command):
    start = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


def make_photos(source, folder):
    for i in range(PHOTOS):
        run("vips", "crop", source, f"{folder}/p{i:02}.jpg[Q=97]", str(i * 3), str(i), "3900", "2980")
    return sum(p.stat().st_size for p in folder.iterdir())


def make_edits(path):
    job, at = str(uuid.UUID(int=1 << 64)), "2026-05-14T08:00:00-05:00"
    axle = {"wheels": "single", "brake": "hydraulic disc", "hub": "oil bath"}
    first = [{"put": "visit", "value": {"id": job, "opened": at, "technician": "Bench"}},
             {"put": "trailer", "value": {"id": str(uuid.UUID(int=2)), "unit": "BENCH", "axles": [axle, axle]}}]
    lines = [{"job": job, "at": at, "by": "Bench", "do": first}]
    for i in range(PHOTOS):
        value = {"id": str(uuid.UUID(int=100 + i)), "place": "axle1-left", "slot": "other", "stage": "before", "added": at}
        lines.append({"job": job, "at": at, "by": "Bench",
                      "do": [{"put": "shot", "photo_file": f"photos/p{i:02}.jpg", "value": value}]})
    path.write_text("".join(json.dumps(line) + "\n" for line in lines))
    return job


def pack_rounds(cotter, work, job, rounds):
    ours, peer = [], []
    for i in range(rounds):
        ours.append(run(cotter, "pack", "--book", f"{work}/book", job, "--out", f"{work}/out{i}"))
        script = f"cp -r {work}/photos {work}/copy{i} && sha256sum {work}/copy{i}/* && sync -f {work}/copy{i}"
        peer.append(run("sh", "-c", script))
    return ours, peer


def check_rounds(cotter, work, rounds):
    packet = next(pathlib.Path(f"{work}/out0").glob("*.zip"))
    run("unzip", "-q", str(packet), "-d", f"{work}/unpacked")
    top = next(pathlib.Path(f"{work}/unpacked").iterdir())
    ours, peer = [], []
    for _ in range(rounds):
        ours.append(run(cotter, "check", str(packet)))
        peer.append(run("/usr/bin/python3", "-c", HASHER, str(top)))
    return ours, peer


def tell(name, ours, peer):
    a, b = statistics.median(ours), statistics.median(peer)
    ratio = statistics.median(x / y for x, y in zip(ours, peer))
    print(f"{name}: {a:.3f} s against {b:.3f} s, ratio {ratio:.2f} (median of {len(ours)} pairs)")


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    cotter, source, rounds = sys.argv[1], sys.argv[2], int(sys.argv[3]) if len(sys.argv) > 3 else 5
    with tempfile.TemporaryDirectory(prefix="packet-bench-", dir=".") as folder:
        work = pathlib.Path(folder).resolve()
        (work / "photos").mkdir()
        size = make_photos(source, work / "photos")
        job = make_edits(work / "edits.jsonl")
        run(cotter, "replay", "--book", f"{work}/book", f"{work}/edits.jsonl")
        print(f"{PHOTOS} photos, {size / 1e6:.0f} MB")
        tell("pack", *pack_rounds(cotter, work, job, rounds))
        tell("check", *check_rounds(cotter, work, rounds))


if __name__ == "__main__":
    main()

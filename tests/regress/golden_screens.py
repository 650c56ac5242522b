#!/usr/bin/python3
"""Draws every page of the app from the demo's book and compares the pictures with those in tests/golden.

usage: golden_screens.py COTTER DEMO_FOLDER GOLDEN_FOLDER [--update] [--only NAME]

Three sizes: a phone upright, a phone on its side, a desk. A picture differs when more than one pixel in 500 is off by
more than a shade; the new one is then left as NAME.new.png in the folder where this runs. --update takes the new ones as
they are: look at each of them before they are committed.
"""
import functools
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

from PIL import Image, ImageChops

SIZES = {"phone": "412x915", "side": "915x412", "desk": "1280x800"}
CLOCK = "2026-05-14T16:00:00-05:00"
CORNER, AXLE2 = "axle1-left", "axle2-right"
MOST_DIFFERENT = 0.2  # percent of the pixels
SHADE = 24  # of 255


def pages(job):
    """name -> the page's route and what is tapped on it. `job` are the records of the demo's last visit."""
    shot = next(s["id"] for s in job["shot"] if s["original_name"] == "05_axle2-left_brake-exposed.jpg")
    after = next(s["id"] for s in job["shot"] if s["original_name"] == "02_axle1-left_wheel-on-after.jpg")
    accepted = next(q for q in job["quote"] if any(d["quote"] == q["id"] for d in job["decision"]))["id"]
    return {
        "yard": ([], []),
        "settings": ([("settings", "", "")], []),
        "identify": ([("plan", "", ""), ("identify", "", "")], []),
        "plan": ([("plan", "", "")], []),
        "plan-help": ([("plan", "", "")], ['tap "Help"']),
        "corner": ([("corner", CORNER, "")], []),
        "corner-readings": ([("corner", CORNER, "")], ['scroll-to "Wheel nuts"']),
        "keypad": ([("corner", AXLE2, "")], ['tap "Tread depth"']),
        "intake": ([("intake", "", "")], []),
        "photo": ([("photo", "axle2-left", shot)], []),
        "photo-finding": ([("photo", "axle2-left", shot)], ['tap "Box"', 'drag "Photo" 0.2,0.3 0.4,0.6']),
        "photo-compared": ([("photo", CORNER, after)], ['tap "Before and after"']),
        "torque": ([("torque", CORNER, "")], []),
        "level": ([("level", CORNER, "")], []),
        "summary": ([("may it be towed", "", "")], []),
        "since": ([("since the last visit", "", "")], []),
        "judgement": ([("judgement", CORNER, "")], []),
        "figure": ([("makers figure", CORNER, "pad-imbalance")], []),
        "points": ([("what is looked at", "", "all")], []),
        "points-place": ([("what is looked at", AXLE2, "")], []),
        "point": ([("point", CORNER, "tire.face")], []),
        "point-wrong": ([("point", CORNER, "tire.face")], ['tap "Something is wrong"']),
        "point-readings": ([("point", AXLE2, "tire.tread")], []),
        "point-lamps": ([("point", "lights", "lamp.base")], []),
        "plate": ([("plate", "", "")], []),
        "plate-axle": ([("plate", "", "gawr 1")], []),
        "plate-choice": ([("plate", "", "coupler")], ['tap "Coupler"']),
        "sidewall": ([("sidewall", CORNER, "")], []),
        "chamber": ([("chamber", CORNER, "")], []),
        "breakaway": ([("breakaway test", "", "")], []),
        "events": ([("what happened", "", "")], []),
        "inspection": ([("inspection", "", "")], []),
        "work-list": ([("work", "trailer", "")], []),
        "work": ([("work", CORNER, "disc")], []),
        "owner": ([("work", "trailer", "owner")], []),
        "bearing": ([("bearing", CORNER, "")], []),
        "bleed": ([("bleed", "trailer", "")], []),
        "quotes": ([("quotes", "", "")], []),
        "quote": ([("quote", "", accepted)], []),
        "compare": ([("compare", "", "")], []),
        "customer": ([("customer", "", accepted)], []),
        "shelf": ([("shelf", "", "")], []),
        "offer": ([("offer", "", "")], []),
        "offers-file": ([("offers from a file", "", "")], []),
        "hand-over": ([("hand over", "", "")], []),
    }


def state(job_id, routes):
    """The file by which the app comes back to a page, as after a restart."""
    stack = [{"screen": "yard"}]
    for screen, place, record in routes:
        stack.append({"screen": screen} | ({"place": place} if place else {}) | ({"record": record} if record else {}))
    return {"job": job_id, "stack": stack, "drafts": {}} if routes else {"stack": stack, "drafts": {}}


class Painter:
    def __init__(self, cotter, demo, folder):
        self.cotter, self.folder = cotter, pathlib.Path(folder)
        subprocess.run([cotter, "demo", "--out", folder], check=True, stdout=subprocess.DEVNULL)
        self.book = self.folder / "book"
        photos = self.folder / "camera"
        shutil.copytree(pathlib.Path(demo) / "photos", photos)
        for photo in photos.iterdir():
            os.utime(photo, (1778770000, 1778770000))  # the page shows the day of each file
        (self.book / "settings.json").write_text(json.dumps({
            "technician": "R. Alder", "company": "Yard Call Trailer Care (invented)",
            "wrenches": [{"id": "TW-3", "calibrated": "2026-01-09"}], "photo_folder": str(photos)}))
        newest = sorted(self.folder.glob("*_r*.zip"))[-1]
        listed = subprocess.run(["unzip", "-Z1", str(newest)], check=True, capture_output=True, text=True).stdout.split("\n")
        name = next(n for n in listed if n.endswith("/job.json"))
        record = json.loads(subprocess.run(["unzip", "-p", str(newest), name], check=True, capture_output=True).stdout)
        self.job_id, self.job = record["job"], record["records"]

    def paint(self, name, routes, taps, size):
        (self.book / "app_state.json").write_text(json.dumps(state(self.job_id, routes)))
        script = self.folder / "script"
        script.write_text("\n".join([*taps, f"shot {name}"]) + "\n")
        done = subprocess.run([self.cotter, "app", "--book", str(self.book), "--headless", "--size", size, "--scale", "1",
                               "--clock", CLOCK, "--script", str(script), "--shots", str(self.folder)],
                              capture_output=True, text=True)
        if done.returncode != 0:
            sys.exit(f"{name} at {size}: {done.stderr.strip()}")
        return self.folder / f"{name}.png"


def differs(golden, new):
    """Percent of the pixels that are another; 100 for another size."""
    if pathlib.Path(golden).read_bytes() == pathlib.Path(new).read_bytes():
        return 0.0
    with Image.open(golden) as a, Image.open(new) as b:
        if a.size != b.size:
            return 100.0
        off = ImageChops.difference(a.convert("RGB"), b.convert("RGB"))
    worst = functools.reduce(ImageChops.lighter, off.split())  # of the three colours
    beyond = sum(worst.histogram()[SHADE + 1:])
    return 100 * beyond / (worst.width * worst.height)


def main():
    cotter, demo, golden = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
    update = "--update" in sys.argv
    only = sys.argv[sys.argv.index("--only") + 1] if "--only" in sys.argv else ""
    golden.mkdir(exist_ok=True)
    wrong, looked = [], 0
    with tempfile.TemporaryDirectory() as outer:
        folder = f"{outer}/yard"  # its name is on a page
        painter = Painter(cotter, demo, folder)
        for page, (routes, taps) in pages(painter.job).items():
            if only and page != only:
                continue
            for where, size in SIZES.items():
                name = f"{page}-{where}"
                picture = painter.paint(name, [("plan", "", "")] * bool(routes and routes[0][0] not in ("plan", "settings"))
                                        + routes, taps, size)
                looked += 1
                target = golden / f"{name}.png"
                if update:
                    target.write_bytes(picture.read_bytes())
                elif not target.exists() or (off := differs(target, picture)) > MOST_DIFFERENT:
                    wrong.append(f"{name}: " + ("no golden picture" if not target.exists() else f"{off:.2f} % differ"))
                    pathlib.Path(f"{name}.new.png").write_bytes(picture.read_bytes())
    extra = {p.stem for p in golden.glob("*.png") if not p.stem.startswith("desk-")} - {f"{p}-{w}" for p in pages(painter.job) for w in SIZES} if not only else set()
    wrong += [f"{name}: no page draws it any more" for name in sorted(extra)]
    print("\n".join(wrong))
    print(f"{looked} pictures, {len(wrong)} differ")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()

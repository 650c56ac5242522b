#!/usr/bin/env python3
"""Captures the demo's trailer by taps alone, as a mechanic would, and holds the app to its speed.

usage: app_capture.py COTTER DEMO_FOLDER

Three scripts for `cotter app --headless`. 'survey a corner' counts its taps: at most 6 from the launch to the first
tagged photo, at most 3 for each further finding, at most 10 for eight nuts in one pass. 'the whole trailer' takes in all
photos of the demo, sorts them to their corners, marks every finding where captions.json has it, keys in the readings,
tightens every wheel in four passes, records the levels, signs off and makes the packet; `cotter check` must find it
valid, and its record must hold all that was tapped.
"""
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import zipfile

PLACES = {"axle1-left": "Axle 1, left", "axle1-right": "Axle 1, right", "axle2-left": "Axle 2, left",
          "axle2-right": "Axle 2, right", "actuator": "Actuator", "trailer": "Whole trailer"}
CORNERS = list(PLACES)[:4]
SETTINGS = {"technician": "R. Alder", "company": "Yard Call Trailer Care (invented)",
            "wrenches": [{"id": "TW-3", "calibrated": "2026-01-09"}]}
IDENTIFY = ['tap "Begin the first job"', 'tap "Two"', 'tap "Hydraulic disc"', 'tap "Oil bath"', 'tap "8"', 'tap "Unit"',
            'text "NUR-07"', 'key enter', 'tap "VIN"', 'text "1X9DEM0F0MADM0014"', 'key enter', 'tap "To the plan"']
NUTS = (1, 5, 3, 7, 2, 6, 4, 8)
LEVELS = {"axle1-left": "160", "axle1-right": "90", "axle2-left": "430", "axle2-right": "450"}


class Demo:
    """What the demo's own edits hold of the visit that the pictures are from."""

    def __init__(self, folder):
        self.folder = pathlib.Path(folder)
        self.captions = json.loads((self.folder / "captions.json").read_text())
        edits = [json.loads(line) for line in (self.folder / "edits.jsonl").read_text().splitlines()]
        changes = [c for e in edits for c in e["do"] if "put" in c]
        self.shots = {c["value"]["original_name"]: c["value"] for c in changes if c["put"] == "shot"}
        self.findings = {c["value"]["id"]: c["value"] for c in changes if c["put"] == "finding"}
        ids = {shot["id"]: name for name, shot in self.shots.items()}
        self.tags = {}
        for c in changes:
            if c["put"] == "tag":
                self.tags.setdefault(ids[c["value"]["shot"]], []).append(c["value"])
        job = next(e["job"] for e in edits if any(c.get("put") == "shot" for c in e["do"]))
        self.readings = [c["value"] for e in edits if e["job"] == job for c in e["do"] if c.get("put") == "reading"]


class App:
    def __init__(self, cotter, folder, demo):
        self.cotter, self.book = cotter, pathlib.Path(folder) / "book"
        self.book.mkdir()
        photos = str(demo.folder / "photos")
        (self.book / "settings.json").write_text(json.dumps(SETTINGS | {"photo_folder": photos}))

    def play(self, lines):
        """Plays the lines, each of them one command; fails with what the app says."""
        script = self.book.parent / "script"
        script.write_text("\n".join(lines) + "\n")
        done = subprocess.run([self.cotter, "app", "--book", str(self.book), "--headless", "--scale", "0.5", "--script",
                               str(script), "--clock", "2026-05-14T08:00:00-05:00"], capture_output=True, text=True)
        if done.returncode != 0:
            number = re.search(r"line (\d+)", done.stderr)
            before = "\n".join(lines[max(0, int(number[1]) - 12):int(number[1])]) if number else ""
            sys.exit(f"{done.stderr.strip()}\n{before}")

    def relaunch(self):
        """The next launch begins in the yard book, not on the page that was left."""
        (self.book / "app_state.json").unlink()


def taps(lines):
    return sum(line.startswith(("tap", "drag", "press-hold")) for line in lines)


def usual(finding):
    return f'{finding["component"][:1].upper()}{finding["component"][1:]}: {finding["defect"]}'


def lists(table):
    """What the app offers for each slot."""
    words = {}
    for slot, text in re.findall(r"\{Slot::(\w+),([^}]*)\}", table):
        pairs = re.findall(r"([\w ]+):([\w ,:-]+)=[swrd]", text.replace('"', "").replace("\n", ""))
        words[slot.replace("hose_line", "hose and line").replace("_", " ")] = {
            usual({"component": c.strip(), "defect": d}) for c, d in pairs}
    return words


def own_words(finding):
    """A finding that is on no list is written."""
    return ['tap "Something else"', 'tap "Another part"', f'text "{finding["component"]}"', "key enter",
            'tap "Next: what is wrong with it"', 'tap "In other words"', f'text "{finding["defect"]}"', "key enter",
            'tap "Next: how bad is it"', f'tap "{finding["grade"]}"']


def survey_a_corner(app):
    first = ['tap "NUR-07"', 'tap "Axle 1, left"', 'tap "Wheel on"', 'tap "02_axle1-left_wheel-on.jpg"',
             'tap "Photo" 0.5,0.48', 'tap "Hub: oil thrown over the wheel"']
    then = ['tap "Done"', 'tap "Photo" 0.42,0.6', 'tap "Wheel nuts: rust trail: has been loose"']
    figure = ['tap "Done"', 'tap "To the place"', 'tap "Wheel nuts"', 'tap "Enter the maker\'s figure"', 'tap "1"', 'tap "2"',
              'tap "0"', 'tap "Done"', 'tap "Document and page"', 'text "service sheet, page 14"', "key enter", 'tap "Save"',
              "key back"]
    nuts = ['tap "Wheel nuts"'] + [f'tap "Nut {nut} clicked"' for nut in NUTS]
    app.play(IDENTIFY)
    app.relaunch()
    saved = ['expect "Saved as"']
    app.play(first + saved + then + saved + figure + nuts + ['expect "24 lb-ft, done"'])
    print(f"survey a corner: {taps(first)} taps to the first tagged photo, {taps(then)} to the next finding, "
          f"{taps(nuts)} for eight nuts")
    assert taps(first) <= 6 and taps(then) <= 3 and taps(nuts) <= 10


def take_in(demo):
    """All photos at once; the app asks for each where it belongs, in the order in which they were taken."""
    lines = ['tap "NUR-07"', 'tap "Photos"', f'tap "All new ({len(demo.shots)})"', f'tap "Take in {len(demo.shots)}"']
    stage = "before"
    for shot in sorted(demo.captions, key=lambda c: c["taken"]):
        shot = demo.shots[shot["file"]]
        lines.append(f'expect "{shot["original_name"]}"')
        if shot["stage"] != stage:
            stage = shot["stage"]
            lines.append(f'tap "{"After" if stage == "after" else "Before"} the work"')
        lines += [f'tap "{PLACES[shot["place"]]}"', f'tap "{shot["slot"][:1].upper()}{shot["slot"][1:]}"']
    return lines + ['key back']


def mark(demo, listed):
    """Every finding where the captions have it."""
    lines = ['tap "NUR-07"']
    numbers = {}  # of the findings, as the app counts them
    for name, tags in demo.tags.items():
        shot = demo.shots[name]
        tile = f'{shot["slot"][:1].upper()}{shot["slot"][1:]}'
        lines += [f'tap "{PLACES[shot["place"]]}"', f'tap "{"Before" if shot["stage"] == "before" else "After"}"',
                  f'tap "{tile}"']
        tool = "Point"  # every page begins with it
        for tag in tags:
            finding = demo.findings[tag["finding"]]
            title = usual(finding)
            if tag["shape"].capitalize() != tool:
                tool = tag["shape"].capitalize()
                lines.append(f'tap "{tool}"')
            a, b = tag["points"][0], tag["points"][-1]
            lines.append(f'tap "Photo" {a["x"]},{a["y"]}' if tool == "Point" else
                         f'drag "Photo" {a["x"]},{a["y"]} {b["x"]},{b["y"]}')
            if tag["finding"] in numbers:  # one that is noted already
                lines.append(f'tap "{numbers[tag["finding"]]}  {title}"')
            elif title in listed[shot["slot"]]:
                lines += [f'tap "{title}"', f'tap "{finding["grade"]}"']
            else:
                lines += own_words(finding)
            numbers.setdefault(tag["finding"], len(numbers) + 1)
        lines += ['key back', 'key back']
    return lines


def key_in(value):
    """The keys of a number: 2.6, or 5/32 as in '5', '/32'."""
    whole, slash, part = value.partition("/")
    return [f'tap "{c}"' for c in whole] + ([f'tap "/{part}"'] if slash else [])


def read(demo):
    lines = ['tap "NUR-07"']
    for reading in demo.readings:
        if reading["place"] not in CORNERS or not reading.get("points"):
            continue
        what = f'{reading["what"][:1].upper()}{reading["what"][1:]}'
        lines += [f'tap "{PLACES[reading["place"]]}"', f'tap "{reading["stage"].capitalize()}"', f'tap "{what}"']
        for number, point in enumerate(reading["points"]):
            lines += (['tap "Next point"'] if number else []) + key_in(point["value"])
        doubted = any(p["value"] == "1/32" for p in reading["points"])  # far from the other grooves: the app asks
        lines += ['tap "Done"'] + (['tap "Keep it"'] if doubted else []) + ['key back']
    return lines


def tighten():
    lines = ['tap "NUR-07"']
    for number, corner in enumerate(CORNERS):
        lines += [f'tap "{PLACES[corner]}"', 'tap "Wheel nuts"']
        if number == 0:  # the app remembers it for the other wheels
            lines += ['tap "Enter the maker\'s figure"', 'tap "1"', 'tap "2"', 'tap "0"', 'tap "Done"',
                      'tap "Document and page"', 'text "axle maker\'s service sheet (invented), page 14"', "key enter",
                      'tap "Save"']
        else:
            lines += ['expect "Taken from axle 1, left: right?"' if number == 1 else 'expect "right?"', 'tap "Right: 120 lb-ft"']
        for setting in ("24 lb-ft", "60 lb-ft", "120 lb-ft", "check 120 lb-ft"):
            lines += ([f'tap "Start {setting}"'] if setting != "24 lb-ft" else [])
            lines += [f'tap "Nut {nut} clicked"' for nut in NUTS]
        lines += ['expect "Proved"', 'key back', 'key back']
    return lines


def levels():
    lines = ['tap "NUR-07"']
    for corner, added in LEVELS.items():
        lines += [f'tap "{PLACES[corner]}"', 'tap "Hub oil"', 'tap "Before: below"', 'tap "Product"', 'tap "Product"',
                  'text "gear oil SAE 90 GL-5"', "key enter", 'tap "Done"', 'tap "Hub was spun: begin to wait"', "wait 60000 ms",
                  'tap "Amount"'] + key_in(added) + ['tap "Done"', 'tap "After: at the line"', "key back", "key back"]
    return lines


def hand_over():
    return ['tap "NUR-07"', 'tap "Hand over"', 'tap "Sign off"', 'tap "I read this and told the customer"', 'tap "Sign"',
            'tap "Make the packet"', "wait 200 frames", 'expect "found valid"']


def the_whole_trailer(app, demo, listed):
    parts = [take_in(demo), mark(demo, listed), read(demo), tighten(), levels(), hand_over()]
    app.play(IDENTIFY)
    for lines in parts:
        app.relaunch()
        app.play(lines)
    print(f"the whole trailer: {taps(IDENTIFY) + sum(map(taps, parts))} taps")
    (packet,) = app.book.glob("**/*_r1.zip")
    checked = subprocess.run([app.cotter, "check", str(packet)], capture_output=True, text=True)
    assert checked.returncode == 0, checked.stdout + checked.stderr
    print(checked.stdout.splitlines()[0])
    with zipfile.ZipFile(packet) as archive:
        (name,) = [n for n in archive.namelist() if n.endswith("/job.json")]
        return json.loads(archive.read(name))["records"]


def compare(job, demo):
    """What the packet says against the demo's own edits."""
    tagged = {(s["original_name"], round(t["points"][0]["x"], 1)) for t in job["tag"] for s in job["shot"] if t["shot"] == s["id"]}
    wanted = {(name, round(t["points"][0]["x"], 1)) for name, tags in demo.tags.items() for t in tags}
    assert len(tagged & wanted) >= 0.9 * len(wanted), sorted(wanted - tagged)  # a box may round to the next tenth
    shapes = lambda tags: sorted(t.get("shape", "point") for t in tags)
    assert shapes(job["tag"]) == shapes(t for tags in demo.tags.values() for t in tags)
    assert {s["original_name"]: (s["place"], s["slot"], s["stage"]) for s in job["shot"]} == {
        n: (s["place"], s["slot"], s["stage"]) for n, s in demo.shots.items()}
    assert sorted(f["grade"] for f in job["finding"]) == sorted(f["grade"] for f in demo.findings.values())
    at_corners = [r for r in demo.readings if r["place"] in CORNERS and r.get("points")]
    numbers = lambda readings: sorted((r["place"], r["what"], r["stage"], [p["value"] for p in r["points"]]) for r in readings)
    assert numbers(job["reading"]) == numbers(at_corners)
    assert all(len(p["tightened"]) == 8 for t in job["torque"] for p in t["passes"]) and len(job["torque"]) == 4
    assert {v["place"]: v["added"]["value"] for v in job["level"]} == LEVELS
    print(f'{len(job["shot"])} photos, {len(job["tag"])} tags, {len(job["finding"])} findings, {len(job["reading"])} readings, '
          f'{len(job["torque"])} wheels in {sum(len(t["passes"]) for t in job["torque"])} passes, {len(job["level"])} levels')


def main():
    cotter, demo = sys.argv[1], Demo(sys.argv[2])
    listed = lists((pathlib.Path(__file__).parents[2] / "app/views/finding_table.h").read_text())
    with tempfile.TemporaryDirectory() as folder:
        survey_a_corner(App(cotter, folder, demo))
    with tempfile.TemporaryDirectory() as folder:
        compare(the_whole_trailer(App(cotter, folder, demo), demo, listed), demo)


if __name__ == "__main__":
    main()

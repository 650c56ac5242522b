#!/usr/bin/python3
"""Plays the office's desk: takes packets in by the screen, draws each page, compares with tests/golden/desk-*.png.

usage: desk_pictures.py COTTER OFFICE_MAKER GOLDEN_FOLDER [--update]

Two ledgers, each at two sizes: the demo's packets, and those of the invented office, one in ten of them bad. The audit
holds every picture to the laws of the screens. Lists are written as PDF, CSV and calendar on the way, and looked into
with other programs. --update takes the pictures as they are: look at each of them before they are committed.
"""
import csv
import pathlib
import subprocess
import sys
import tempfile

from golden_screens import MOST_DIFFERENT, differs

SIZES = {"small": "1280x800", "large": "1600x1000"}
CLOCK = "2026-05-14T16:00:00-05:00"

TAKE_IN = """
tap "Take packets in"
{before}
tap "File or folder"
text "{folder}"
tap "Take in"
{after}
"""
DEMO = TAKE_IN.format(folder="demo", before="shot asking", after="shot taken-in") + """
tap "Trailers"
shot trailers
tap "Register"
text "nur"
shot register
key enter
shot visits
tap "Wear"
tap "Torques"
shot torques
tap "Findings"
shot findings
tap "Changes"
shot changes
tap "Costs"
shot costs
tap "Photos"
wait 500 ms
shot photos
tap "Packets"
shot packets
key escape
expect "Every job on file"
tap "What is due"
tap "12 months"
shot due
tap "Columns"
shot columns
tap "Done"
tap "Help"
shot help
tap "Understood"
tap "Print as PDF"
expect "Written: lists/2026-05-14_due.pdf"
tap "CSV"
tap "Calendar"
expect "Written: lists/2026-05-14_due.ics"
"""
OFFICE = TAKE_IN.format(folder="in", before="", after='shot office-taken-in') + """
tap "Trailers"
key down
key down
shot office-trailers
tap "Register"
key down
key down
shot office-register
tap "Repair or worse"
tap "Search"
text "quar"
shot office-searched
key enter
tap "Wear"
shot office-wear
tap "Findings"
shot office-findings
tap "Costs"
shot office-costs
tap "Visits"
key space
key down
key space
tap "Compare the two"
shot office-compared
tap "What is due"
tap "90 days"
shot office-due
tap "What to order"
shot office-orders
tap "What fails"
shot office-fails
tap "Receipts"
shot office-receipts
tap "CSV"
expect "Written: lists/2026-05-14_receipts.csv"
"""


def play(cotter, folder, name, script, size):
    """The pictures of one run, by name."""
    shots = folder / f"shots-{name}-{size}"
    (folder / "script").write_text(script)
    for old in folder.glob(f"{name}.ledger*"):
        subprocess.run(["rm", "-rf", str(old)], check=True)
    done = subprocess.run([cotter, "desk", "--ledger", f"{name}.ledger", "--lists", "lists", "--headless", "--size", size,
                           "--clock", CLOCK, "--audit", "--script", "script", "--shots", str(shots)],
                          cwd=folder, capture_output=True, text=True)
    if done.returncode != 0:
        offences = [line for line in done.stdout.splitlines() if line.startswith("OFFENCE")]
        sys.exit("\n".join([*offences[:10], f"{name} at {size}: {done.stderr.strip()}"]))
    return sorted(shots.glob("*.png"))


def look_into_lists(folder):
    """What the desk wrote, read by others."""
    wrong = []
    text = subprocess.run(["pdftotext", "-layout", "lists/2026-05-14_due.pdf", "-"], cwd=folder, capture_output=True,
                          text=True).stdout
    wrong += [f"the PDF does not say '{word}'" for word in ("Due by 2027-05-14", "NUR-07", "page 1 of") if word not in text]
    rows = list(csv.reader((folder / "lists/2026-05-14_due.csv").open(newline="")))
    if rows[0][:2] != ["Due", "When"] or len(rows) < 4 or any(len(r) != len(rows[0]) for r in rows):
        wrong.append("the CSV is not as it should be")
    if "BEGIN:VEVENT" not in (folder / "lists/2026-05-14_due.ics").read_text():
        wrong.append("the calendar has no entry")
    receipts = list(csv.DictReader((folder / "lists/2026-05-14_receipts.csv").open(newline="")))
    refused = [r for r in receipts if r["What became of it"] == "refused"]
    if not refused or not all(r["Why"] for r in refused):
        wrong.append("the receipts do not say what was refused and why")
    return wrong


def main():
    cotter, maker, golden = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
    update = "--update" in sys.argv
    wrong, seen = [], set()
    with tempfile.TemporaryDirectory() as outer:
        folder = pathlib.Path(outer)
        subprocess.run([cotter, "demo", "--out", str(folder / "demo")], check=True, stdout=subprocess.DEVNULL)
        subprocess.run(["rm", "-rf", str(folder / "demo/book")], check=True)
        subprocess.run([maker, "packets", str(folder / "in"), "40", "10", "2", "8"], check=True, stdout=subprocess.DEVNULL)
        for where, size in SIZES.items():
            subprocess.run(["rm", "-rf", str(folder / "lists")], check=True)  # each size writes the first list of the day
            for name, script in (("demo", DEMO), ("office", OFFICE)):
                for picture in play(cotter, folder, name, script, size):
                    target = golden / f"desk-{picture.stem}-{where}.png"
                    seen.add(target.name)
                    if update:
                        target.write_bytes(picture.read_bytes())
                    elif not target.exists() or (off := differs(target, picture)) > MOST_DIFFERENT:
                        wrong.append(f"{target.stem}: " + ("no golden picture" if not target.exists() else f"{off:.2f} % differ"))
                        pathlib.Path(f"{target.stem}.new.png").write_bytes(picture.read_bytes())
        wrong += look_into_lists(folder)
    wrong += [f"{p.stem}: no page draws it any more" for p in sorted(golden.glob("desk-*.png")) if p.name not in seen]
    print("\n".join(wrong))
    print(f"{len(seen)} pictures, {len(wrong)} faults")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()

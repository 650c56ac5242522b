"""The demo's work as it was led: the steps of both disc brakes of axle 1 with their bearings and wheels, two steps passed
without proof, the bearing settings, the brake pipes and the fluid drawn. make_edits.py calls work()."""
import json
import pathlib

PROCEDURES = pathlib.Path(__file__).parent.parent / "procedures"
CORNERS = ("axle1-left", "axle1-right")
NOTES = {
    "U3": "chocked both ways on the other side, uncoupled", "U5": "all snug but one missing, rust trails at two",
    "U6": "two 3 t stands under the frame, shaken", "D3": "piston went back slowly on the left", "D7": "nursery manager, by phone",
    "B5": "seated by sound, feeler tried", "B6": "gear oil SAE 90 GL-5", "F1": "label says DOT 4; sealed bottle of DOT 4",
    "W10": "slip for the cab handed to the driver"}
PASSED = {
    ("D11", "axle1-left"): "both pads looked at twice by two people; the photo was lost with a full memory card",
    ("B11", "axle1-left"): "new cotters seen by two people; no photo of the locks was kept",
    ("B11", "axle1-right"): "new cotters seen by two people; no photo of the locks was kept",
    ("D11", "axle1-right"): "both pads looked at twice by two people; the photo was lost with a full memory card",
    ("D12", "axle1-right"): "bleeder seen at the top by two people; no photo was kept"}
PIPES = (("actuator", "tee 1", "4.8"), ("tee 1", "axle1-left", "0.9"), ("tee 1", "axle1-right", "1.5"), ("tee 1", "tee 2", "1.1"),
         ("tee 2", "axle2-left", "0.9"), ("tee 2", "axle2-right", "1.5"))
DRAWN = (("axle2-right", "130"), ("axle2-left", "95"), ("axle1-right", "70"), ("axle1-left", "55"))
# time, place ("*": both corners, "": the trailer), steps closed then
TIMES = (
    ("08:41:10", "", "U1 U2 U3 U4"), ("08:49:00", "*", "U5 U6"), ("10:03:00", "*", "U7 U8"), ("10:14:00", "*", "D1 D2 D3 D4 D5 D6"),
    ("12:45:00", "*", "D7"), ("12:50:00", "*", "B1 B2 B3 B4 B5 B6 B7 B8 B9"), ("14:26:00", "*", "B10 B11"),
    ("14:29:00", "*", "D8 D9 D10 D11 D12"), ("14:31:00", "*", "D13"), ("14:33:00", "", "F1 F2 F3 F4 F5"),
    ("14:59:00", "", "F6 F7"), ("15:01:00", "*", "D14 D15"), ("15:03:00", "", "F8 F9"), ("15:04:00", "*", "D16"),
    ("15:05:00", "*", "B12"), ("15:06:00", "*", "W1 W2 W3 W4 W5"), ("15:40:00", "*", "W6 W7 W8 W9 W10"),
    ("15:42:00", "*", "B13 D17"))


def steps():
    out = {}
    for path in sorted(PROCEDURES.glob("*.procedure.json")):
        procedure = json.loads(path.read_text())
        for step in procedure["steps"]:
            out[step["id"]] = (procedure["id"], step)
    return out


# kind of proof: kind of record, the field that says what it is, and where a mark lists it
LISTS = {"shot": ("shot", "slot", "shots"), "reading": ("reading", "what", "readings"), "torque": ("torque", "joint", "torques"),
         "level": ("level", "fluid", "levels")}


def records_of(edits):
    """What the edits of the last job put: kind, value, when; oldest first."""
    mine = sorted((e for e in edits if e["job"] == edits[-1]["job"]), key=lambda e: e["at"])
    return [(change["put"], change["value"], e["at"]) for e in mine for change in e["do"] if "put" in change]


def evidence(records, step, place, at):
    """The records that a step rests on, as the program itself names them: all photos, the newest of the rest."""
    out = {}
    for proof in step.get("proofs", ()):
        if proof["kind"] not in LISTS:
            continue
        kind, field, field_of_mark = LISTS[proof["kind"]]
        found = [r["id"] for k, r, made in records
                 if k == kind and r[field] == proof["what"] and made <= at and r.get("taken", "measured") == "measured"
                 and (place == "trailer" or proof.get("anywhere") or r["place"] == place)
                 and proof.get("stage") in (None, r.get("stage", "before"))]
        if found:
            out[field_of_mark] = found if kind == "shot" else found[-1:]
    return out


def closing(rid, known, step, place, stamp, records):
    procedure, data = known[step]
    value = {"id": rid("mark", step, place), "procedure": procedure, "step": step, "place": place, "word": "done",
             "title": data["title"]}
    if (step, place) in PASSED:
        value |= {"word": "overridden", "reason": PASSED[step, place]}
        return value | stamp
    if step in NOTES:
        value |= {"note": NOTES[step]}
    return value | evidence(records, data, place, stamp["at"]) | stamp


def marks(rid, known, cautions, wanted, place, stamp, records):
    for step in wanted.split():
        procedure, data = known[step]
        for caution in data.get("cautions", ()):
            yield ("step_mark", {"id": rid("mark", step, place, caution), "procedure": procedure, "step": step, "place": place,
                                 "word": "caution read", "title": cautions[caution], "caution": caution} | stamp)
        yield "step_mark", closing(rid, known, step, place, stamp, records)


def bearing(rid, place, stamp):
    return "bearing_setting", {
        "id": rid("bearing", place), "place": place, "style": "castle nut", "source": "axle maker's service sheet (invented), page 14",
        "threads_per_inch": "14", "lock_positions": 12, "seated": {"value": "475", "unit": "[lbf_av].[in_i]"}, "back_off": "1/6",
        "play_min": {"value": "0.001", "unit": "[in_i]"}, "play_max": {"value": "0.010", "unit": "[in_i]"},
        "tries": [{"steps": 0, "dial": rid("reading", place, "end play", "after")}], "new_lock": True} | stamp


def fluid(rid, stamp):
    legs = [{"from": a, "to": b, "length": {"value": m, "unit": "m"}, "bore": {"value": "0.190", "unit": "[in_i]"}}
            for a, b, m in PIPES]
    yield "pipe_route", {"id": rid("pipes"), "legs": legs} | stamp("14:32:00")
    for minute, (place, drawn) in enumerate(DRAWN):
        yield "bleed_count", {"id": rid("bled", place), "place": place, "drawn": {"value": drawn, "unit": "mL"}, "clear": True,
                              "bubbles": False, "fluid": "DOT 4"} | stamp(f"14:{52 + minute}:00")


def work(rid, stamp, edit, put, made):
    """Edits of the led work; `stamp(clock)` gives at and by, `made` are the edits that its proofs come from."""
    records = records_of(made)
    known = steps()
    cautions = {c["id"]: c["title"] for c in json.loads((PROCEDURES / "common.json").read_text())["cautions"]}
    for place in CORNERS:
        yield edit("14:25:30", put(*bearing(rid, place, stamp("14:25:30"))))
    for kind, value in fluid(rid, stamp):
        yield edit(value["at"][11:19], put(kind, value))
    for clock, where, wanted in TIMES:
        for place in CORNERS if where == "*" else ("trailer",):
            made_now = marks(rid, known, cautions, wanted, place, stamp(clock), records)
            yield edit(clock, *(put(kind, value) for kind, value in made_now))

#!/usr/bin/env python3
"""Writes edits.jsonl and amendment.jsonl, the demo as a replayable list of edits: our invented trailer NUR-07 in a gravel yard, on two
earlier visits that only measured, and on the visit that the pictures are from.

The pictures and where their defects are come from captions.json; the readings below are plausible and invented.
Run it after changing either: python3 make_edits.py (prints nothing when all is well).
"""
import json
import pathlib
import uuid

import led_work
import quotes

HERE = pathlib.Path(__file__).parent
SPACE = uuid.UUID("6f0d2c1e-7b7e-4a51-9d53-2f6d0a7c3b10")
JOB = "3f9c1a2b-5d0e-4c7a-9b1f-0c7e5a2d4e61"
TECH = "R. Alder"
CORNERS = ("axle1-left", "axle1-right", "axle2-left", "axle2-right")
SLOTS = {"01": "whole", "02": "wheel on", "03": "cap", "04": "cap", "05": "brake", "06": "rotor edge", "07": "lining",
         "08": "guide pin", "09": "seal side", "10": "spindle", "11": "brake", "12": "nuts", "13": "hose and line",
         "14": "reservoir", "15": "tread", "16": "data plate"}

# caption text -> component, defect, grade, what to do, outcome, what was done
FINDINGS = {
    "tandem axle group, four single wheels to be serviced":
        ("axle group", "four single wheels to be serviced", "serviceable", "", "open", ""),
    "data plate with ratings and VIN 1X9DEM0F0MADM0014":
        ("data plate", "legible, VIN checks", "serviceable", "", "open", ""),
    "oil thrown from the hub cap over the wheel":
        ("hub", "oil thrown over the wheel", "repair", "open the hub, renew the seal", "repaired", "seal renewed, hub refilled"),
    "oil cap stained": ("hub cap", "stained by leaking oil", "watch", "clean, watch for new oil", "repaired", "cleaned"),
    "oil surface below the level line":
        ("hub oil", "below the line", "repair", "find the leak, then fill to the line", "repaired", "filled to the line"),
    "window cloudy": ("hub cap", "window cloudy", "watch", "replace the cap at the next hub service", "deferred",
                      "level can still be read; cap to be ordered"),
    "wheel on before service, no defect in view": ("wheel", "no defect in view", "serviceable", "", "open", ""),
    "lug nut missing, bare stud":
        ("wheel nuts", "one missing", "do not tow", "fit a new nut, torque all, re-check", "repaired", "new nut and stud fitted"),
    "rust trails from loose lug nuts":
        ("wheel nuts", "rust trails: have been loose", "repair", "clean seats, torque all, re-check", "repaired",
         "seats cleaned, all eight torqued"),
    "light oil mist around the hub cap":
        ("hub", "light oil mist at the cap", "watch", "check the cap gasket", "repaired", "gasket renewed"),
    "milky oil: water in the hub":
        ("hub oil", "milky: water in the hub", "repair", "drain, inspect bearings, refill", "repaired",
         "drained, bearings inspected, refilled"),
    "radial heat cracks on the rotor face":
        ("rotor", "heat checks", "repair", "replace the rotors of the axle", "repaired", "rotor replaced"),
    "rusted caliper": ("caliper", "rusted", "repair", "replace the calipers of the axle", "repaired", "caliper replaced"),
    "pad worn thin and tapered":
        ("pads", "thin and tapered", "repair", "replace the pad set of the axle, free the guide pins", "repaired",
         "pad set replaced"),
    "new pad for comparison": ("pads", "new pad beside it for comparison", "serviceable", "", "open", ""),
    "guide pin worn, scored and rusted":
        ("guide pin", "worn, scored and rusted", "repair", "new hardware kit", "repaired", "hardware kit fitted"),
    "inner seal torn, lip hanging out": ("seal", "lip torn", "repair", "new seal", "repaired", "seal renewed"),
    "oil streak below the seal": ("seal", "oil streak below it", "watch", "new seal", "repaired", "seal renewed, cleaned"),
    "spindle cleaned and inspected, journals smooth":
        ("spindle", "journals smooth after cleaning", "serviceable", "", "open", ""),
    "surface rust on the rotor face":
        ("rotor", "surface rust", "watch", "measure, clean by braking or replace with the axle", "repaired", "rotor replaced"),
    "rotor face scored in rings": ("rotor", "scored in rings", "repair", "replace the rotors of the axle", "repaired",
                                   "rotor replaced"),
    "worn lip at the rotor edge": ("rotor", "worn lip at the edge", "watch", "measure the thickness", "repaired",
                                   "rotor replaced"),
    "oil on the caliper": ("caliper", "oil on it", "repair", "find the source first, then clean or replace", "repaired",
                           "seal renewed, caliper replaced"),
    "outer shoulder worn smooth, uneven wear":
        ("tyre", "outer shoulder worn smooth", "repair", "check the alignment, replace the pair", "declined",
         "owner will have the tyres done elsewhere"),
    "wear bars flush with the tread":
        ("tyre", "wear bars flush", "repair", "replace the pair", "declined", "owner will have the tyres done elsewhere"),
    "steel brake line corroded at the fitting":
        ("steel line", "corroded at the fitting", "watch", "replace within the year", "deferred", "owner told, no leak under pressure"),
    "brake hose surface cracks":
        ("flex hose", "surface cracks", "watch", "replace the hoses of the axle", "deferred", "no swelling under pressure"),
    "fluid between MIN and MAX": ("brake fluid", "between its marks", "serviceable", "", "open", ""),
    "new rotor and caliper installed": ("rotor", "new, installed", "serviceable", "", "open", ""),
    "new caliper": ("caliper", "new, bleeder at the top", "serviceable", "", "open", ""),
    "clean oil exactly at the level line": ("hub oil", "clean, at the line", "serviceable", "", "open", ""),
    "paint witness mark across lug nut and wheel":
        ("wheel nuts", "paint mark across nut and wheel", "serviceable", "", "open", ""),
    "all eight lug nuts torqued and paint marked":
        ("wheel nuts", "all eight torqued and marked", "serviceable", "", "open", ""),
}


def rid(*key):
    return str(uuid.uuid5(SPACE, "/".join(map(str, key))))


def at(clock):
    return f"2026-05-14T{clock}-05:00"


def edit(clock, *changes):
    return {"job": JOB, "at": at(clock), "by": TECH, "do": list(changes)}


def put(kind, value, **more):
    return {"put": kind, **more, "value": value}


def trailer_record():
    axle = {"wheels": "single", "brake": "hydraulic disc", "hub": "oil bath", "studs": 8, "stud_thread": "9/16-18",
            "model": "DX-7000 (invented)", "gawr": {"value": "7000", "unit": "[lb_av]"}}
    return {"id": rid("trailer"), "unit": "NUR-07", "vin": "1X9DEM0F0MADM0014", "model_year": 2021,
               "kind": "tandem-axle deck trailer", "gvwr": {"value": "14000", "unit": "[lb_av]"},
               "tyre_size": "ST235/80R16 E", "tyre_pressure": {"value": "80", "unit": "[psi]"},
               "actuation": "electric-over-hydraulic", "axles": [axle, axle]}


def start():
    visit = {"id": JOB, "opened": at("08:00:00"), "technician": TECH, "company": "Yard Call Trailer Care (invented)",
             "customer": "Gärtnerei Grünholz, plant nursery (invented)", "place": "gravel yard behind the greenhouses",
             "complaint": "oil on one wheel, and it pulls to one side when braking", "load": "loaded"}
    return edit("08:00:00", put("visit", visit), put("trailer", trailer_record()))


def place_of(photo):
    if photo["corner"] in CORNERS:
        return photo["corner"]
    return "actuator" if photo["file"].startswith("14") else "trailer"


# What a person would rather point at, point an arrow at, or go round than put into a box.
SHAPES = {("wheel nuts", "one missing"): "point", ("seal", "lip torn"): "point", ("flex hose", "surface cracks"): "arrow",
          ("steel line", "corroded at the fitting"): "arrow", ("seal", "oil streak below it"): "stroke"}


def mark(component, defect, x, y, w, h):
    """The tag's shape and points from the box in which its defect lies."""
    def spot(across, down):
        return {"x": round(min(x + across * w, 1), 4), "y": round(min(y + down * h, 1), 4)}
    shape = SHAPES.get((component, defect), "box")
    return shape, {"box": [spot(0, 0), spot(1, 1)], "point": [spot(0.5, 0.5)], "arrow": [spot(0, 0), spot(0.5, 0.5)],
                   "stroke": [spot(0.1, 0.5), spot(0.3, 0.1), spot(0.8, 0.2), spot(0.9, 0.7), spot(0.5, 0.95),
                              spot(0.15, 0.7)]}[shape]


def shot_edits(photo):
    clock = photo["taken"][11:19]
    shot, place = rid("shot", photo["file"]), place_of(photo)
    yield edit(clock, put("shot", {"id": shot, "place": place, "slot": SLOTS[photo["file"][:2]], "stage": photo["stage"],
                                   "original_name": photo["file"], "note": photo["subject"], "added": photo["taken"]},
                          photo_file="photos/" + photo["file"]))
    made = {}
    for number, found in enumerate(photo["findings"]):
        component, defect, grade, todo, outcome, done = FINDINGS[found["finding"]]
        changes = []
        if found["finding"] not in made:  # one finding may be shown by several tags
            made[found["finding"]] = rid("finding", photo["file"], number)
            value = {"id": made[found["finding"]], "place": place, "component": component, "defect": defect,
                     "grade": grade, "todo": todo, "outcome": outcome, "outcome_note": done, "at": photo["taken"], "by": TECH}
            changes.append(put("finding", {k: v for k, v in value.items() if v != ""}))
        shape, points = mark(component, defect, *found["box"])
        changes.append(put("tag", {"id": rid("tag", photo["file"], number), "shot": shot,
                                   "finding": made[found["finding"]], "shape": shape, "points": points}))
        yield edit(clock, *changes)


def reading(clock, place, what, stage, unit, resolution, instrument, points, **more):
    value = {"id": rid("reading", place, what, stage), "place": place, "what": what, "stage": stage}
    if points:
        value |= {"points": [{"where": w, "value": v} if w else {"value": v} for w, v in points], "unit": unit,
                  "resolution": resolution, "instrument": instrument}
    return edit(clock, put("reading", value | more | {"at": at(clock), "by": TECH}))


def rotor(values):
    return [(f"{45 * i}°", v) for i, v in enumerate(values.split())]


def pads(inner_lead, inner_trail, outer_lead, outer_trail):
    return [("inner, leading end", inner_lead), ("inner, trailing end", inner_trail), ("outer, leading end", outer_lead),
            ("outer, trailing end", outer_trail)]


def survey_readings():
    caliper, mic, dial = "vernier caliper C-2", "micrometer M-1", "dial indicator D-1"
    yield reading("09:12:00", "axle1-left", "pad thickness", "before", "mm", "0.1", caliper, pads("2.6", "3.9", "6.1", "6.4"),
                  shot=rid("shot", "07_axle1-left_pads.jpg"))
    yield reading("09:04:00", "axle1-left", "rotor thickness", "before", "mm", "0.01", mic,
                  rotor("20.62 20.64 20.66 20.67 20.65 20.63 20.62 20.64"))
    yield reading("08:50:00", "axle1-left", "end play", "before", "[in_i]", "0.0005", dial,
                  [("first", "0.0125"), ("second", "0.0130"), ("third", "0.0125")])
    yield reading("10:12:00", "axle1-right", "pad thickness", "before", "mm", "0.1", caliper, pads("5.8", "6.0", "6.2", "6.1"))
    yield reading("10:10:00", "axle1-right", "rotor thickness", "before", "mm", "0.01", mic,
                  rotor("21.40 21.41 21.42 21.41 21.40 21.40 21.41 21.42"))
    yield reading("10:02:00", "axle1-right", "end play", "before", "[in_i]", "0.0005", dial,
                  [("first", "0.0040"), ("second", "0.0040"), ("third", "0.0045")])
    yield reading("10:59:00", "axle2-left", "pad thickness", "before", "mm", "0.1", caliper, pads("4.1", "4.0", "4.6", "4.4"))
    yield reading("10:58:00", "axle2-left", "rotor thickness", "before", "mm", "0.01", mic,
                  rotor("20.31 20.28 20.25 20.24 20.26 20.29 20.31 20.33"))
    yield reading("11:34:00", "axle2-right", "pad thickness", "before", "mm", "0.1", caliper, pads("4.4", "4.3", "4.9", "4.7"))
    yield reading("11:38:00", "axle2-right", "tread depth", "before", "[in_i]", "1/64", "depth gauge T-1",
                  [("inner groove", "5/32"), ("middle groove", "4/32"), ("outer groove", "1/32")],
                  shot=rid("shot", "15_axle2-right_tyre-tread.jpg"))
    for clock, place, values in (("09:20:00", "axle1-left", "7/32 7/32 6/32"), ("10:20:00", "axle1-right", "7/32 8/32 7/32"),
                                 ("11:05:00", "axle2-left", "6/32 7/32 6/32")):
        yield reading(clock, place, "tread depth", "before", "[in_i]", "1/64", "depth gauge T-1",
                      list(zip(("inner groove", "middle groove", "outer groove"), values.split())))
    yield reading("11:40:00", "axle2-right", "rotor runout", "before", "", "", "", [], taken="not measured",
                  reason="the rotor is cracked and will be replaced")
    yield reading("12:05:00", "frame", "spring centre bolt", "before", "", "", "", [], taken="not accessible",
                  reason="behind the water tank; needs the tank off")
    yield reading("08:35:00", "trailer", "distance run since the last visit", "before", "[mi_i]", "1", "hub counter",
                  [("", "11400")])
    yield reading("08:40:00", "trailer", "tyre pressure, cold", "before", "[psi]", "1", "gauge P-4",
                  [("axle 1 left", "78"), ("axle 1 right", "80"), ("axle 2 left", "71"), ("axle 2 right", "79")])


def proof_readings():
    dial = "dial indicator D-1"
    for clock, place, values in (("14:20:00", "axle1-left", "0.0030 0.0035 0.0030"), ("14:25:00", "axle1-right", "0.0035 0.0035 0.0040"),
                                 ("14:30:00", "axle2-left", "0.0025 0.0030 0.0030"), ("14:35:00", "axle2-right", "0.0030 0.0030 0.0030")):
        yield reading(clock, place, "end play", "after", "[in_i]", "0.0005", dial,
                      list(zip(("first", "second", "third"), values.split())))
    yield reading("14:12:00", "axle1-left", "pad thickness", "after", "mm", "0.1", "vernier caliper C-2",
                  pads("11.9", "11.9", "12.0", "12.0"))
    yield reading("14:10:00", "axle1-left", "rotor thickness", "after", "mm", "0.01", "micrometer M-1",
                  rotor("22.41 22.41 22.42 22.42 22.41 22.41 22.41 22.42"))
    yield reading("15:40:00", "actuator", "breakaway brakes held", "after", "min", "1", "watch", [("", "15")])
    yield reading("15:41:00", "actuator", "breakaway battery under load", "after", "V", "0.1", "multimeter V-1",
                  [("rest", "12.7"), ("after 1 min", "12.4"), ("after 5 min", "12.2"), ("after 15 min", "12.0")])
    yield reading("15:02:00", "actuator", "pressure hold", "after", "[psi]", "5", "gauge H-2",
                  [("start, after settling", "1000"), ("after 4 min", "985")])
    yield reading("16:05:00", "trailer", "hub temperature after road test", "after", "Cel", "1", "contact probe K-1",
                  [("axle 1 left", "54"), ("axle 1 right", "57"), ("axle 2 left", "55"), ("axle 2 right", "56"), ("ambient", "22")])


def torque(clock, place, joint, fasteners, target, settings, order):
    unit = "[lbf_av].[ft_i]"
    passes = [{"setting": {"value": s, "unit": unit}, "tightened": order} for s in settings]
    return edit(clock, put("torque", {
        "id": rid("torque", place, joint), "place": place, "joint": joint, "fasteners": fasteners,
        "target": {"value": target, "unit": unit}, "target_source": "axle maker's service sheet (invented), page 14",
        "passes": passes, "wrench": "TW-3", "wrench_calibrated": "2026-01-09", "at": at(clock), "by": TECH}))


def torques():
    eight = [1, 5, 3, 7, 2, 6, 4, 8]
    for minute, place in enumerate(CORNERS):
        yield torque(f"13:{40 + minute}:00", place, "caliper bracket bolts", 2, "65", ["65"], [1, 2])
        yield torque(f"15:{10 + minute * 5}:00", place, "wheel nuts", 8, "120", ["24", "60", "120", "120"], eight)


def levels():
    marks = (("14:38:00", "axle1-left", "below", "-9", "dark, no metal", "160"),
             ("14:42:00", "axle1-right", "below", "-5", "clean", "90"),
             ("14:46:00", "axle2-left", "below", "-7", "dark", "430"),
             ("14:50:00", "axle2-right", "below", "-8", "milky", "450"))
    for clock, place, mark, offset, note, added in marks:
        yield edit(clock, put("level", {
            "id": rid("level", place), "place": place, "fluid": "hub oil", "product": "gear oil SAE 90 GL-5",
            "before": {"mark": mark, "offset": {"value": offset, "unit": "mm"}, "note": note},
            "added": {"value": added, "unit": "mL"}, "after": {"mark": "at"}, "settled": {"value": "10", "unit": "min"},
            "at": at(clock), "by": TECH}))
    yield edit("15:00:00", put("level", {
        "id": rid("level", "actuator"), "place": "actuator", "fluid": "brake fluid", "product": "DOT 4, sealed bottle",
        "before": {"mark": "at", "note": "between its marks, amber"}, "added": {"value": "350", "unit": "mL"},
        "after": {"mark": "at", "note": "at the upper mark"}, "at": at("15:00:00"), "by": TECH}))


MAKERS = (("rotor thickness", "more than", "20.0", "9", "thinnest of eight points"),
          ("pad thickness", "at least", "2.4", "9", "friction material, thinnest point"),
          ("end play", "at most", "0.010", "14", "dial indicator at the hub's face"))


def maker_limits():
    for minute, (what, bound, value, page, where) in enumerate(MAKERS):
        yield edit(f"08:30:{minute:02}", put("maker_limit", {
            "id": rid("maker limit", what), "what": what, "bound": bound,
            "value": {"value": value, "unit": "[in_i]" if what == "end play" else "mm"}, "origin": "document",
            "document": "axle maker's service sheet (invented)", "page": page, "axle_model": "DX-7000 (invented)",
            "where": where, "at": at(f"08:30:{minute:02}"), "by": TECH}))


def earlier_visit(day, miles, pads_by_place, rotors_by_place, treads_by_place):
    """A visit that measured and changed nothing, for comparison and forecast."""
    job, moment = rid("visit", day), lambda clock: f"{day}T{clock}-05:00"
    made = lambda clock, *changes: {"job": job, "at": moment(clock), "by": TECH, "do": list(changes)}
    visit = {"id": job, "opened": moment("09:00:00"), "technician": TECH, "company": "Yard Call Trailer Care (invented)",
             "customer": "Gärtnerei Grünholz, plant nursery (invented)", "place": "gravel yard behind the greenhouses",
             "complaint": "yearly look", "load": "empty"}
    yield made("09:00:00", put("visit", visit), put("trailer", trailer_record()))

    def measured(clock, place, what, unit, resolution, instrument, points):
        value = {"id": rid(day, place, what), "place": place, "what": what, "stage": "before",
                 "points": [{"where": w, "value": v} if w else {"value": v} for w, v in points], "unit": unit,
                 "instrument": instrument, "at": moment(clock), "by": TECH}
        return made(clock, put("reading", value | ({"resolution": resolution} if resolution else {})))

    if miles:
        yield measured("09:05:00", "trailer", "distance run since the last visit", "[mi_i]", "1", "hub counter", [("", miles)])
    for minute, place in enumerate(pads_by_place):
        yield measured(f"09:{10 + minute}:00", place, "pad thickness", "mm", "0.1", "vernier caliper C-2",
                       pads(*pads_by_place[place].split()))
        yield measured(f"09:{20 + minute}:00", place, "rotor thickness", "mm", "0.01", "micrometer M-1",
                       rotor(rotors_by_place[place]))
        yield measured(f"09:{30 + minute}:00", place, "tread depth", "[in_i]", "1/64", "depth gauge T-1",
                       list(zip(("inner groove", "middle groove", "outer groove"), treads_by_place[place].split())))
        yield measured(f"09:{40 + minute}:00", place, "end play", "[in_i]", "0.0005", "dial indicator D-1", [("", "0.0040")])
    yield made("10:00:00", put("sign_off", {"id": rid(day, "sign-off"), "at": moment("10:00:00"), "by": TECH,
                                            "statement": "I took the readings listed. Nothing was repaired."}))


def earlier_visits():
    left1, right1, left2, right2 = CORNERS
    yield from earlier_visit(
        "2024-05-21", "",
        {left1: "9.0 9.1 9.3 9.3", right1: "9.2 9.2 9.3 9.3", left2: "8.8 8.8 9.0 8.9", right2: "9.0 8.9 9.1 9.0"},
        {left1: "21.50 21.51 21.52 21.51 21.50 21.50 21.51 21.52", right1: "21.62 21.62 21.63 21.63 21.62 21.62 21.62 21.63",
         left2: "21.40 21.40 21.39 21.38 21.38 21.39 21.40 21.41", right2: "21.44 21.44 21.45 21.45 21.44 21.43 21.44 21.44"},
        {left1: "9/32 9/32 9/32", right1: "9/32 9/32 9/32", left2: "9/32 9/32 8/32", right2: "9/32 9/32 8/32"})
    yield from earlier_visit(
        "2025-03-28", "9800",
        {left1: "6.1 6.8 7.8 7.9", right1: "7.6 7.7 7.8 7.8", left2: "6.5 6.5 6.9 6.7", right2: "6.8 6.7 7.1 6.9"},
        {left1: "21.08 21.09 21.10 21.11 21.09 21.08 21.08 21.09", right1: "21.52 21.52 21.53 21.52 21.52 21.51 21.52 21.53",
         left2: "20.86 20.85 20.83 20.82 20.83 20.85 20.87 20.88", right2: "20.95 20.95 20.96 20.96 20.95 20.94 20.95 20.95"},
        {left1: "8/32 8/32 7/32", right1: "8/32 8/32 8/32", left2: "7/32 7/32 5/32", right2: "7/32 7/32 4/32"})


def bad_findings(captions):
    """Component -> ids of findings graded 'repair' or 'do not tow', as shot_edits() numbers them."""
    out = {}
    for photo in captions:
        seen = set()
        for number, found in enumerate(photo["findings"]):
            component, _, grade, *_ = FINDINGS[found["finding"]]
            if found["finding"] not in seen and grade in ("repair", "do not tow"):
                out.setdefault(component, []).append(rid("finding", photo["file"], number))
            seen.add(found["finding"])
    return out


def prices(captions):
    def stamp(clock):
        return {"at": at(clock), "by": TECH}
    records = quotes.needs_and_offers(rid, bad_findings(captions), stamp("12:10:00"))
    yield edit("12:10:00", *(put(kind, value) for kind, value in records))
    offered = {name: quotes.quote(rid, name, at("12:20:00"), TECH, "offered") for name in quotes.QUOTES}
    yield edit("12:20:00", *(put("quote", value) for value in offered.values()))
    taken = offered["cheapest"]
    decisions = quotes.answers(rid, taken["fingerprint"], taken["lines"], stamp("12:40:00"))
    yield edit("12:40:00", *(put(kind, value) for kind, value in decisions))
    yield edit("16:10:00", put("quote", taken | {"state": "done"}))


def sign_off():
    return edit("16:20:00", put("sign_off", {
        "id": rid("sign-off"), "at": at("16:20:00"), "by": TECH,
        "statement": "I did the work listed. Readings were taken by me with the tools named. Items marked not measured "
                     "or not accessible were not checked, for the reason shown."}))


def amendment(edits):
    """The next morning: the calibration date of the wrench was that of another one."""
    last = {d["value"]["id"]: d["value"] for e in edits if e["job"] == JOB for d in e["do"] if d["put"] == "torque"}
    return {"job": JOB, "at": "2026-05-15T07:40:00-05:00", "by": TECH,
            "reason": "The date of the wrench's calibration was that of TW-2; the certificate of TW-3 says 2026-02-16.",
            "do": [put("torque", value | {"wrench_calibrated": "2026-02-16"}) for value in last.values()]}


def main():
    captions = json.loads((HERE / "captions.json").read_text())
    edits = [start()]
    for photo in captions:
        edits += shot_edits(photo)
    for part in (earlier_visits, maker_limits, survey_readings, proof_readings, torques, levels):
        edits += part()
    edits += prices(captions)
    edits += led_work.work(rid, lambda clock: {"at": at(clock), "by": TECH}, edit, put, edits)
    edits.append(sign_off())
    edits.sort(key=lambda e: e["at"])  # stable: what was made in the same second stays in order
    for name, content in (("edits.jsonl", edits), ("amendment.jsonl", [amendment(edits)])):
        lines = [json.dumps(e, ensure_ascii=False, separators=(",", ":")) for e in content]
        (HERE / name).write_text("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()

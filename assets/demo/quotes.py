"""The demo's needs, offers, three quotes and the owner's answers. Suppliers and prices are invented."""
import hashlib
import json
from decimal import ROUND_HALF_UP, Decimal

SIDES = ["axle1-left", "axle1-right", "axle2-left", "axle2-right"]
YARD, FIELD, DEPOT = "Yardside Supply (invented)", "Feldrain Parts (invented)", "Axle maker's depot (invented)"


def extent(basis, value, unit="1"):
    return {"basis": basis, "amount": {"value": value, "unit": unit}}


# item: wanted, places, matched, component and defects of the findings that call for it
NEEDS = {
    "brake pads": (extent("corners", "4"), SIDES, True, ["pads"]),
    "pad hardware kit": (extent("corners", "4"), SIDES, False, ["guide pin"]),
    "calipers": (extent("corners", "2"), SIDES[2:], False, ["caliper"]),
    "brake fluid": (extent("volume", "800", "mL"), ["actuator"], False, []),
    "tyres": (extent("pieces", "2"), SIDES[2:], True, ["tyre"]),
}
RULES = {"pad hardware kit": "wheel", "brake fluid": "volume"}
BOTTLE = extent("volume", "946", "mL")
# key: supplier, title, covers, cents, more fields in the record's order
OFFERS = {
    "yard pads": (YARD, "brake pads, one wheel", [("brake pads", extent("corners", "1"))], 3800, {}),
    "yard pins": (YARD, "pad hardware kit, one wheel", [("pad hardware kit", extent("corners", "1"))], 920, {}),
    "field pads": (FIELD, "brake pads, axle set", [("brake pads", extent("corners", "2"))], 6950, {"freight": 1800}),
    "field pins": (FIELD, "pad hardware kit, one wheel", [("pad hardware kit", extent("corners", "1"))], 920,
                   {"freight": 1800}),
    "depot kit": (DEPOT, "pad kit with hardware, two axles",
                  [("brake pads", extent("corners", "4")), ("pad hardware kit", extent("corners", "4"))], 14900,
                  {"lead_days": 5, "warranty_months": 24, "warranty_labour": True, "maker_supplied": True}),
    "calipers": (YARD, "caliper, one wheel", [("calipers", extent("corners", "1"))], 6400,
                 {"core": 2500, "warranty_months": 12}),
    "fluid": (YARD, "brake fluid, 946 mL", [("brake fluid", BOTTLE)], 2850, {}),
    "tyres": (YARD, "pair of tyres", [("tyres", extent("pieces", "2"))], 23800, {"warranty_months": 36}),
}
SAME = [("calipers", 2), ("fluid", 1), ("tyres", 1)]
QUOTES = {
    "cheapest": ("cheapest", [("yard pads", 4), ("yard pins", 4)] + SAME),
    "by the axle set": ("by hand", [("field pads", 2), ("field pins", 4)] + SAME),
    "maker-supplied": ("maker-supplied", [("depot kit", 1)] + SAME),
}
TAX = "8.25"


def money(minor):
    return f"{minor // 100}.{minor % 100:02}"


def taxed(minor):
    return int((Decimal(minor) * Decimal(TAX) / 100).quantize(Decimal(1), ROUND_HALF_UP))


def covers_text(covers):
    def words(e):
        value, unit = e["amount"]["value"], e["amount"]["unit"]
        counted = e["basis"][:-1] if value == "1" else e["basis"]
        return f"{value} {counted if unit == '1' else unit}"
    return ", ".join(f"{words(e)} of {item}" for item, e in covers)


def fixed_lines(waits):
    if waits:
        yield "call-out", "Second call-out", "parts have to be waited for, up to 5 days", 8500, 8500, False
    yield ("labour", "Brakes and wheel ends, two axles", "3.2–4.6 h × 110.00, book time (the shop's own list)", 35200, 50600,
           False)
    yield "supplies", "Shop supplies: cleaner, rags, grease", "6 % of labour, at most 35.00", 2112, 3036, True
    yield "disposal", "Old brake fluid", "the shop's own charge", 650, 650, False


def lines_of(rid, picks):
    out = []

    def add(kind, text, basis, low, high, tax, **more):
        line = {"number": len(out) + 1, "kind": kind, "text": text, "basis": basis} | more | {"low": low, "high": high}
        out.append(line | ({"tax_percent": TAX} if tax else {}))

    for key, packs in picks:
        supplier, title, covers, price, _ = OFFERS[key]
        add("parts", f"{title} ({supplier})", f"{packs} × {money(price)}; one covers {covers_text(covers)}", packs * price,
            packs * price, True, needs=[rid("need", item) for item, _ in covers], offer=rid("offer", key), packs=packs)
    freight = {OFFERS[key][0]: OFFERS[key][4].get("freight", 0) for key, _ in picks if "freight" in OFFERS[key][4]}
    for supplier, amount in freight.items():
        add("freight", f"Freight, {supplier}", "once for all from there", amount, amount, False)
    for line in fixed_lines(any("lead_days" in OFFERS[key][4] for key, _ in picks)):
        add(*line)
    for key, packs in picks:
        if core := OFFERS[key][4].get("core"):
            add("core", f"Core deposit, {OFFERS[key][1]} ({OFFERS[key][0]})",
                f"{packs} × {money(core)}, given back with the old part", packs * core, packs * core, False,
                offer=rid("offer", key), packs=packs)
    return out


def quote(rid, name, at, by, state):
    aim, picks = QUOTES[name]
    lines = lines_of(rid, picks)
    sums = {end: sum(x[end] for x in lines if x["kind"] != "core") for end in ("low", "high")}
    on = {end: sum(x[end] for x in lines if "tax_percent" in x) for end in ("low", "high")}
    value = {"id": rid("quote", name), "name": name, "aim": aim, "version": 1, "state": "drafted", "currency": "USD",
             "lines": lines,
             "taxes": [{"name": "sales tax", "percent": TAX, "on_low": on["low"], "on_high": on["high"],
                        "low": taxed(on["low"]), "high": taxed(on["high"])}],
             "total_low": sums["low"] + taxed(on["low"]), "total_high": sums["high"] + taxed(on["high"]),
             "cores": sum(x["low"] for x in lines if x["kind"] == "core"), "corners": 4}
    if any("lead_days" in OFFERS[key][4] for key, _ in picks):
        value["ready_days"] = 5
    value |= {"leftovers": [{"item": "brake fluid", "extent": extent("volume", "146", "mL"), "to": "waste"}],
              "high_because": "a guide pin or bleeder is seized", "expires": "2026-06-14", "offered_at": at}
    text = json.dumps(value | {"at": at, "by": by}, ensure_ascii=False, separators=(",", ":"))
    return value | {"state": state, "fingerprint": hashlib.sha256(text.encode()).hexdigest(), "at": at, "by": by}


def needs_and_offers(rid, findings, stamp):
    for item, (wanted, places, matched, components) in NEEDS.items():
        value = {"id": rid("need", item), "item": item, "findings": [f for c in components for f in findings.get(c, [])],
                 "places": places, "rule": RULES.get(item, "axle"), "wanted": wanted, "matched": matched}
        yield "need", {k: v for k, v in value.items() if v not in ([], False)} | {"by_hand": True} | stamp
    for key, (supplier, title, covers, price, more) in OFFERS.items():
        yield "offer", {"id": rid("offer", key), "supplier": supplier, "title": title,
                        "covers": [{"item": item, "extent": e} for item, e in covers], "price": price, "currency": "USD",
                        **more, "source": "price list (invented)", "seen": "2026-05-12", **stamp}


def answers(rid, fingerprint, lines, stamp):
    """The owner took the cheapest one, without the tyres."""
    tyres = [x["number"] for x in lines if "tyres" in x["text"]]
    pen = [{"x": round(0.1 + 0.1 * i, 2), "y": y} for i, y in enumerate((0.6, 0.3, 0.7, 0.4, 0.65, 0.5, 0.6, 0.55))]
    for said, numbers, note in (("accepted", [x["number"] for x in lines if x["number"] not in tyres], ""),
                                ("declined", tyres, "will have the tyres done elsewhere")):
        value = {"id": rid("decision", said), "quote": rid("quote", "cheapest"), "fingerprint": fingerprint, "lines": numbers,
                 "said": said, "name": "H. Grünholz (invented)", "channel": "in person", "signature": [{"points": pen}]}
        yield "decision", value | ({"note": note} if note else {}) | stamp

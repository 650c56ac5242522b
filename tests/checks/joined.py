#!/usr/bin/env python3
"""What is judged, what can be recorded and what can be entered are one: every point of the table has a screen for each
way to answer it, every field that a judge reads and every judged reading can be entered, every command is sent by a
screen, and no public function of core is called by tests alone.

The gaps that there still are stand in joined_gaps.py, each with its reason. A gap that is closed has to leave that list,
so the list only shrinks."""
import json
import re

from joined_gaps import COMMANDS, FIELDS, FUNCTIONS, READINGS, WAYS
from source_tree import bare_cpp, cpp_files, read_tree, run

# A way to answer a point -> the command with which a screen records it.
WAY = {
    "look": "PutLook",
    "reading": "PutReading",
    "level": "PutLevel",
    "torque": "PutTorque",
    "bearing": "PutBearing",
    "timed": "PutBreakawayTest",
    "plate": "PutTrailer",
}
RECORDS = {"Trailer": "core/trailer/trailer.h", "Axle": "core/trailer/trailer.h", "Visit": "core/survey/records.h",
           "TowVehicle": "core/survey/records.h", "Sidewall": "core/survey/look_records.h",
           "Chamber": "core/survey/look_records.h"}
# Every record has them; the app fills them in by itself.
OWN = {"id", "place", "at", "by", "axles", "opened", "note", "shot"}
SCREENS = ("app/screens/", "app/views/", "app/session/")
SENDERS = ("app/screens/", "app/views/", "app/desk/", "app/driver/", "app/ui/", "app/app.cpp")
JUDGES = ("core/judge/", "core/trade/", "core/work/", "core/ledger/")


def texts(files, *folders):
    return "\n".join(bare for path, bare in cpp_files(files, *folders) if path.endswith(".cpp"))


def points(files):
    """id -> the ways to answer it."""
    out = {}
    for path, text in files.items():
        if text is None or not re.match(r"core/trade/points_\w+\.cpp$", path):
            continue
        for row in re.split(r"\bTradePoint\{\s*\.id = ", text)[1:]:
            name = re.match(r"\w+", row).group(0)
            row = re.split(r"\bTradePoint\{|\n\};", row)[0]
            ways = {way for way in ("level", "torque", "bearing", "timed", "plate") if f".{way} = true" in row}
            ways |= {"look"} if ".list = " in row else set()
            ways |= {"reading"} if ".readings = " in row else set()
            out[name] = ways | ({"computed"} if ".computed = true" in row else set())
    return out


def sent(files, command):
    """Does a screen or a view make this command?"""
    return re.search(rf"\b{command}\b", texts(files, *SENDERS))


def fields(files, record):
    text = bare_cpp(files.get(RECORDS[record]) or "")
    match = re.search(rf"\bstruct {record} \{{(.*?)\n\}};", text, re.DOTALL)
    return re.findall(r"f\.(?:must|may)\(\"\", s\.(\w+)\)", match.group(1)) if match else []


def about(record):
    """What a file says that deals with such a record."""
    return r"\btow\b|TowVehicle" if record == "TowVehicle" else record


def judged_fields(files):
    judges = [bare for path, bare in cpp_files(files, *JUDGES) if path.endswith(".cpp")]
    for record in RECORDS:
        ours = "\n".join(bare for bare in judges if re.search(about(record), bare, re.IGNORECASE))
        for field in fields(files, record):
            if field not in OWN and re.search(rf"(\.|->|::){field}\b(?!\()", ours):
                yield record, field


def readings(files):
    """The C++ names of readings that screens offer, and of all."""
    offered, every = set(), set()
    for path, text in files.items():
        if text is not None and re.match(r"core/trade/readings_\w+\.cpp$", path):
            offered |= set(re.findall(r"\b(?:taken|extra)\(what::(\w+)", text))
            every |= set(re.findall(r"\b(?:taken|extra|computed|replaced)\(what::(\w+)", text))
    return offered, every


def named(files):
    """What a reading is called in C++ -> what records hold."""
    return dict(re.findall(r"string_view (\w+)\s*=\s*\"([^\"]+)\"", files.get("core/trade/reading_names.h") or ""))


def commands(files):
    text = bare_cpp(files.get("app/command.h") or "")
    match = re.search(r"using Command\s*=\s*std::variant<(.*?)>;", text, re.DOTALL)
    return re.findall(r"\w+", match.group(1)) if match else []


DECLARED = re.compile(r"^(?:\[\[nodiscard\]\] )?(?!using|return|struct|class|enum|template|friend|typedef|namespace|inline "
                      r"constexpr|constexpr|inline)[\w:<>,*&\s\[\]]*?\b(\w+)\([^;{]*\)\s*(?:const)?;", re.MULTILINE)


def functions(files):
    """(header, name) of each function that a header of core offers outside a class."""
    for path, text in files.items():
        if text is None or not re.match(r"core/.*\.h$", path):
            continue
        bare = bare_cpp(text)
        bare = re.sub(r"(?m)^(struct|class)\b[^;{]*\{.*?^\};", "", bare, flags=re.DOTALL)
        for match in DECLARED.finditer(bare):
            yield path, match.group(1)


def called(name, program):
    """In the program, outside its own definition. A definition begins a line; a call does not."""
    return any(re.search(rf"\b{name}\b", line) and not re.match(rf"^[\w\[][\w:<>,*&\s\[\]]*\b{name}\(", line)
               for line in program.get(name, ()))


def lines_with(files):
    """Word -> the lines of the program that hold it, headers' own declarations aside."""
    out = {}
    for path, bare in cpp_files(files, "core/", "app/", "platform/"):
        for line in bare.split("\n"):
            declares = path.startswith("core/") and path.endswith(".h") and re.match(r"^\S.*\w+\(.*", line)
            if not declares:
                for word in set(re.findall(r"\w+", line)):
                    out.setdefault(word, []).append(line)
    return out


def compare(kind, gaps, excused):
    """Findings for gaps that are not excused, and for excuses that are no gaps."""
    for name in sorted(set(gaps) - set(excused)):
        yield f"{kind}: {name}: {gaps[name]}"
    for name in sorted(set(excused) - set(gaps)):
        yield f"{kind}: {name}: no gap any more; take it out of joined_gaps.py"


def way_gaps(files):
    table = points(files)
    gaps = {way: f"{sum(way in ways for ways in table.values())} points are answered so, and no screen sends {command}"
            for way, command in WAY.items()
            if any(way in ways for ways in table.values()) and not sent(files, command)}
    shown = {"reading": r"\breadings_wanted\(", "look": r"\bentries_at\(", "slots": r"\bslots_wanted\("}
    screens = texts(files, *SCREENS)
    for way, pattern in shown.items():
        if table and not re.search(pattern, screens):
            gaps.setdefault(way, "no screen takes its list from the table")
    for name, ways in table.items():
        if not ways:
            gaps[name] = "there is no way to answer it"
    return gaps


def writers(bare):
    """Functions of this file that write through their first parameter, a reference to what is not const, and those that
    hand out a pointer through which another function of the file writes."""
    through = {match.group(1) for match in re.finditer(
        r"\bvoid (\w+)\(\w[\w:<>]*& (\w+)[^)]*\) \{(.*?)\n\}", bare, re.DOTALL)
        if re.search(rf"\b{match.group(2)}\s*=[^=]", match.group(3))}
    pointing = {name for name in re.findall(r"^[\w:<>]+\* (\w+)\(", bare, re.MULTILINE)
                if any(re.search(rf"\*{there}\s*=[^=]", bare)
                       for there in re.findall(rf"\* ?(\w+) = {name}\(", bare))}
    return through, pointing


def body_of(bare, function):
    match = re.search(rf"^[\w:<>]+\* {function}\(.*?\n\}}", bare, re.DOTALL | re.MULTILINE)
    return match.group(0) if match else ""


def sets(bare, record, field):
    """Does this file of the app write the field of such a record?"""
    if not re.search(about(record), bare, re.IGNORECASE):
        return False
    assigned = rf"(?:\.|->){field}\b\s*(?:=[^=]|\.(?:push_back|emplace|insert|clear|reset|assign)\b)|\b{record}::{field}\b"
    if re.search(assigned, bare):
        return True
    member = rf"[\w().]+(?:\.|->){field}\b"
    through, pointing = writers(bare)
    return any(re.search(rf"\b{name}\({member}[,)]", bare) for name in through) or \
        any(re.search(rf"return &{member};", body_of(bare, name)) for name in pointing)


def field_gaps(files):
    screens = [bare for path, bare in cpp_files(files, *SCREENS) if path.endswith(".cpp")]
    return {f"{record}.{field}": "is judged, and no screen sets it" for record, field in judged_fields(files)
            if not any(sets(bare, record, field) for bare in screens)}


def reading_gaps(files):
    offered, every = readings(files)
    judges = texts(files, "core/judge/")
    gaps = {f"what::{name}": "is judged, and stands in no table of readings"
            for name in sorted(set(re.findall(r"\bwhat::(\w+)", judges)) - every)}
    names, limits = named(files), json.loads(files.get("assets/limits/limits.json") or '{"limits": []}')["limits"]
    known = {names.get(name) for name in every}
    gaps |= {limit["what"]: f"has the limit {limit['id']}, and stands in no table of readings"
             for limit in limits if limit["what"] not in known}
    in_points = set()
    for path, text in files.items():
        if text is not None and re.match(r"core/trade/(points_\w+|asked)\.cpp$", path):
            in_points |= set(re.findall(r"\bwhat::(\w+)", text))
    return gaps | {f"what::{name}": "is offered nowhere: no point has it" for name in sorted(offered - in_points)}


def command_gaps(files):
    return {name: "no screen sends it" for name in commands(files) if not sent(files, name)}


def function_gaps(files):
    program = lines_with(files)
    return {f"{path}: {name}": "tests alone call it" for path, name in functions(files) if not called(name, program)}


PARTS = (("way", way_gaps, WAYS), ("field", field_gaps, FIELDS), ("reading", reading_gaps, READINGS),
         ("command", command_gaps, COMMANDS), ("function", function_gaps, FUNCTIONS))


def check(files):
    ours = "tests/checks/joined_gaps.py" in files  # a sample excuses nothing
    return [finding for kind, gaps, excused in PARTS for finding in compare(kind, gaps(files), excused if ours else {})]


def report(files):
    offered, every = readings(files)
    print(f"{len(points(files))} points, {len(offered)} readings offered of {len(every)}, "
          f"{len(list(judged_fields(files)))} fields judged, {len(commands(files))} commands, "
          f"{len(set(functions(files)))} functions of core")
    for kind, gaps, _ in PARTS:
        print(f"  gaps of kind {kind}: {len(gaps(files))}")

POINT = "constexpr std::array kRows{\n    TradePoint{.id = tire_face,\n          .list = ListKind::faults},\n};\n"
TRAILER = ('struct Trailer {\n    int gvwr;\n    static void each_field(Self& s, F&& f) {\n        f.may("gvwr", s.gvwr);\n'
           "    }\n};\n")
SAMPLES = [
    ({"core/trade/points_a.cpp": POINT}, "look: 1 points are answered so, and no screen sends PutLook"),
    ({"core/trade/points_a.cpp": POINT, "app/screens/a.cpp": "void f() { send(PutLook{}); }"},
     "look: no screen takes its list from the table"),
    ({"core/trade/points_a.cpp": POINT.replace("          .list = ListKind::faults", "")}, "there is no way to answer it"),
    ({"core/trailer/trailer.h": TRAILER, "core/judge/a.cpp": "x = trailer.gvwr;"}, "Trailer.gvwr: is judged"),
    # A pointer to it is handed out, and nobody writes through it; a reference is, and its function only reads.
    ({"core/trailer/trailer.h": TRAILER, "core/judge/a.cpp": "x = trailer.gvwr;",
      "app/views/a.cpp": "int* amount_of(Trailer& trailer) {\n    return &trailer.gvwr;\n}\n"
                         "void f() {\n    int* there = amount_of(t);\n    use(*there);\n}\n"}, "Trailer.gvwr: is judged"),
    ({"core/trailer/trailer.h": TRAILER, "core/judge/a.cpp": "x = trailer.gvwr;",
      "app/views/a.cpp": "void show(int& value, int n) {\n    print(value == n);\n}\n"
                         "void f(Trailer& trailer) {\n    show(trailer.gvwr, 1);\n}\n"}, "Trailer.gvwr: is judged"),
    ({"core/judge/a.cpp": "judge(what::tread);"}, "what::tread: is judged, and stands in no table"),
    ({"core/trade/readings_a.cpp": "    taken(what::tread, {}),\n"}, "what::tread: is offered nowhere"),
    ({"assets/limits/limits.json": '{"limits": [{"id": "a", "what": "width"}]}'}, "width: has the limit a"),
    ({"app/command.h": "using Command = std::variant<GoTo, PutLook>;", "app/screens/a.cpp": "out.push(GoTo{});"},
     "PutLook: no screen sends it"),
    ({"core/a.h": "[[nodiscard]] int twice(int n);\n", "core/a.cpp": "int twice(int n) {\n    return 2 * n;\n}\n",
      "tests/a.cpp": "CHECK(twice(1) == 2);"}, "core/a.h: twice: tests alone call it"),
]

if __name__ == "__main__":
    report(read_tree())
    run("joined", check, SAMPLES)

#!/usr/bin/env python3
"""Who may include whom: the arrows between the layers and between core's folders, and that there is no circle."""
import re

from source_tree import cpp_files, includes, read_tree, run

RECORDS = {"base", "trailer", "survey", "trade", "judge", "work", "quote", "photo"}
# The folders of core that a folder may include, besides itself.
ARROWS = {
    "base": set(),
    "store": {"base"},
    "trailer": {"base"},
    "photo": {"base"},
    "survey": {"base", "trailer"},
    "trade": {"base", "trailer", "survey"},
    "judge": {"base", "trailer", "survey", "trade"},
    "work": {"base", "trailer", "survey", "trade"},
    "quote": {"base", "trailer", "survey"},
    "book": RECORDS | {"store"},
    "report": RECORDS,
    "packet": RECORDS | {"report"},
    "ledger": RECORDS | {"store", "packet", "report"},
}
# Layers by the start of a path: what their files may include of the others.
LAYERS = {
    "core/": ("core/",),
    "app/cli/": ("core/", "app/", "platform/"),  # the composition root of the command line
    "app/": ("core/", "app/"),
    "platform/": ("core/", "app/", "platform/"),
}
# The rooms of app, a folder or a file without its ending, and the rooms that each may know. What stands here holds today;
# a new arrow is a decision, and none may lead back up.
WORDS = {"asked", "asked_impl", "command", "device", "draft", "long_work", "nav", "settings", "tasks"}  # plain values
ROOMS = {
    "ui": {"pacer"},
    "driver": {"ui"},
    "session": WORDS,
    "views": WORDS | {"session", "ui"},
    "screens": WORDS | {"session", "views", "ui"},
    "desk": WORDS | {"pictures", "views", "ui"},
    "app": {"pictures", "screens", "session", "ui"},
    "cli": {"app", "desk", "driver", "ui"},
    "asked": set(),
    "asked_impl": {"asked"},
    "command": {"asked", "asked_impl", "device", "draft", "nav", "settings"},
    "device": set(),
    "draft": {"nav"},
    "long_work": set(),
    "nav": set(),
    "pacer": set(),
    "pictures": {"tasks", "ui"},
    "settings": {"ui"},
    "tasks": set(),
}
# Session and views lean on each other. Towards the session this is all there is, and it may only become less.
BACK = {("app/session/changes_work.cpp", "app/views/place_text.h")}
# What app/ui may know of core: how amounts and places are written, never what is done with them.
UI_CORE = ("core/base/", "core/survey/")

WINDOW = re.compile(r"^(SDL|imgui)", re.IGNORECASE)
SDL = re.compile(r"^(SDL2?/|SDL)", re.IGNORECASE)
# Who may hold Dear ImGui in hand; all others draw by the widgets of app/ui.
IMGUI = re.compile(r"^app/(ui/|driver/runner\.cpp$|desk/frame\.cpp$)")
# What is tested without a screen, and must not reach one through any header.
SCREENLESS = (
    re.compile(r"^app/session/"),
    re.compile(r"^app/views/"),
    re.compile(r"^app/(asked|command|device|draft|long_work|nav|pacer|settings|tasks)[^/]*$"),
    re.compile(r"^app/desk/(desk_(command|load|session|work)|list|list_(file|rows)|record_rows|rows|take_in|trailer_view)\."),
)


def layer_of(path):
    return next((layer for layer in LAYERS if path.startswith(layer)), None)


def room_of(path):
    """app/ui/text.h -> ui, app/nav.h -> nav."""
    return path.split("/")[1].partition(".")[0]


def is_screenless(path):
    return any(pattern.match(path) for pattern in SCREENLESS)


def check_layers(path, number, name):
    layer = layer_of(path)
    if re.match(r"(core|app|platform|tests)/", name) and not name.startswith(LAYERS[layer]):
        yield f"{path}:{number}: {layer} must not know {name}"
    if layer == "core/" and WINDOW.match(name):
        yield f"{path}:{number}: core must not know the screen ({name})"
    if layer.startswith("app/") and SDL.match(name):
        yield f"{path}:{number}: app must not know SDL ({name}); the platform hands it what it needs"
    if is_screenless(path) and WINDOW.match(name):
        yield f"{path}:{number}: the session must not know the screen ({name})"
    elif layer.startswith("app/") and WINDOW.match(name) and not IMGUI.match(path):
        yield f"{path}:{number}: only app/ui draws by Dear ImGui ({name}); give it a widget"


def check_app(path, number, name):
    ours, theirs = room_of(path), room_of(name)
    if ours not in ROOMS:
        yield f"{path}: app/{ours} is not in the plan; add it to ROOMS in tests/checks/layering.py"
    elif theirs != ours and theirs not in ROOMS[ours] and (path, name) not in BACK:
        yield f"{path}:{number}: app/{ours} must not know app/{theirs} ({name})"


def check_core(path, number, name):
    ours, theirs = path.split("/")[1], name.split("/")[1]
    if ours not in ARROWS:
        yield f"{path}: core/{ours} is not in the plan; add it to ARROWS in tests/checks/layering.py"
    elif theirs != ours and theirs not in ARROWS[ours]:
        yield f"{path}:{number}: core/{ours} must not know core/{theirs} ({name})"


def circles(arrows):
    """Circles among files that include each other."""
    done, stack = set(), []

    def visit(path):
        if path in stack:
            yield " -> ".join(stack[stack.index(path):] + [path])
        elif path not in done:
            stack.append(path)
            for other in arrows.get(path, ()):
                yield from visit(other)
            stack.pop()
            done.add(path)

    for path in arrows:
        yield from visit(path)


def reaches_screen(path, reached, seen):
    """The includes that lead from a file to Dear ImGui, or nothing."""
    for name in reached.get(path, ()):
        if WINDOW.match(name):
            return [name]
        if name not in seen:
            seen.add(name)
            if way := reaches_screen(name, reached, seen):
                return [name] + way
    return []


def check(files):
    found, reached = [], {}
    for path, bare in cpp_files(files, *LAYERS):
        reached[path] = [name for _, name in includes(bare)]
        for number, name in includes(bare):
            found += check_layers(path, number, name)
            if path.startswith("core/") and name.startswith("core/"):
                found += check_core(path, number, name)
            if path.startswith("app/") and name.startswith("app/"):
                found += check_app(path, number, name)
            if path.startswith("app/ui/") and name.startswith("core/") and not name.startswith(UI_CORE):
                found.append(f"{path}:{number}: a widget must not know {name}")
    for path in reached:
        way = reaches_screen(path, reached, {path}) if is_screenless(path) else []
        if len(way) > 1:
            found.append(f"{path}: the session reaches the screen ({' -> '.join(way)})")
    arrows = {path: [name for name in names if name in files] for path, names in reached.items()}
    return found + [f"circle of includes: {circle}" for circle in circles(arrows)]


def dead_rules(files):
    """The rules that speak of no file that there is: such a rule holds nothing."""
    paths = [path for path, _ in cpp_files(files, *LAYERS)]
    starts = [*LAYERS, *UI_CORE, *(f"core/{folder}/" for folder in ARROWS)]
    yield from (start for start in starts if not any(path.startswith(start) for path in paths))
    yield from (room for room in ROOMS if not any(path.startswith("app/") and room_of(path) == room for path in paths))
    yield from (rule.pattern for rule in (IMGUI, *SCREENLESS) if not any(rule.match(path) for path in paths))
    for path, name in BACK:
        if name not in [include for _, include in includes(files.get(path, ""))]:
            yield f"{path} -> {name}"
    known = {path for sample, _ in SAMPLES for path in sample} - {UNPLANNED}
    yield from (path for path in sorted(known) if path not in files)


UNPLANNED = "core/weather/station.cpp"  # the only sample that is no file of ours
SAMPLES = [
    ({"core/base/text.h": '#include "core/survey/job.h"\n'}, "core/base must not know core/survey"),
    ({"core/photo/probe.cpp": '#include "app/session/session.h"\n'}, "core/ must not know app/session/session.h"),
    ({"core/report/report.cpp": "#include <imgui.h>\n"}, "core must not know the screen"),
    ({UNPLANNED: '#include "core/base/text.h"\n'}, "not in the plan"),
    ({"app/screens/plan_screen.cpp": "#include <SDL.h>\n"}, "app must not know SDL"),
    ({"app/screens/plan_screen.cpp": '#include "platform/desktop/ports.h"\n'}, "app/ must not know platform/"),
    ({"app/screens/plan_screen.cpp": "#include <imgui.h>\n"}, "only app/ui draws by Dear ImGui"),
    ({"app/session/session.cpp": "#include <imgui.h>\n"}, "the session must not know the screen"),
    ({"app/views/plan_view.cpp": "#include <imgui.h>\n"}, "the session must not know the screen"),
    ({"app/command.h": "#include <imgui_internal.h>\n"}, "the session must not know the screen"),
    ({"app/desk/rows.cpp": "#include <imgui.h>\n"}, "the session must not know the screen"),
    ({"app/views/plan_view.h": '#include "app/ui/draw.h"\n', "app/ui/draw.h": "#include <imgui.h>\n"},
     "the session reaches the screen (app/ui/draw.h -> imgui.h)"),
    ({"app/session/session.cpp": '#include "app/views/plan_view.h"\n'}, "app/session must not know app/views"),
    ({"app/views/plan_view.cpp": '#include "app/screens/common.h"\n'}, "app/views must not know app/screens"),
    ({"app/ui/text.cpp": '#include "app/nav.h"\n'}, "app/ui must not know app/nav"),
    ({"app/desk/rows.cpp": '#include "app/screens/common.h"\n'}, "app/desk must not know app/screens"),
    ({"app/ui/text.cpp": '#include "core/book/book.h"\n'}, "a widget must not know core/book/book.h"),
    ({"core/base/text.h": '#include "core/base/id.h"\n', "core/base/id.h": '#include "core/base/text.h"\n'}, "circle"),
]

if __name__ == "__main__":
    tree = read_tree()
    dead = list(dead_rules(tree))
    assert not dead, f"layering: no file is meant by: {', '.join(dead)}"
    everything = list(dead_rules({}))  # and they would be missed
    assert len(everything) > len(ROOMS) + len(ARROWS) and "^app/session/" in everything, everything
    run("layering", check, SAMPLES)

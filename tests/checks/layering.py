#!/usr/bin/env python3
"""Who may include whom: the arrows between the layers and between core's folders, and that there is no circle."""
import re

from source_tree import cpp_files, includes, run

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
WINDOW = re.compile(r"^(SDL|imgui)", re.IGNORECASE)
SDL = re.compile(r"^(SDL2?/|SDL)", re.IGNORECASE)
# The session and what it needs are tested without a screen.
SCREENLESS = re.compile(r"^app/(session|command|nav|pacer|ports)[^/]*$")


def layer_of(path):
    return next((layer for layer in LAYERS if path.startswith(layer)), None)


def check_layers(path, number, name):
    layer = layer_of(path)
    if re.match(r"(core|app|platform|tests)/", name) and not name.startswith(LAYERS[layer]):
        yield f"{path}:{number}: {layer} must not know {name}"
    if layer == "core/" and WINDOW.match(name):
        yield f"{path}:{number}: core must not know the screen ({name})"
    if layer.startswith("app/") and SDL.match(name):
        yield f"{path}:{number}: app must not know SDL ({name}); the platform hands it what it needs"
    if SCREENLESS.match(path) and WINDOW.match(name):
        yield f"{path}:{number}: the session must not know the screen ({name})"


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


def check(files):
    found, arrows = [], {}
    for path, bare in cpp_files(files, *LAYERS):
        arrows[path] = []
        for number, name in includes(bare):
            found += check_layers(path, number, name)
            if path.startswith("core/") and name.startswith("core/"):
                found += check_core(path, number, name)
            if name in files:
                arrows[path].append(name)
    return found + [f"circle of includes: {circle}" for circle in circles(arrows)]


SAMPLES = [
    ({"core/base/a.h": '#include "core/survey/job.h"\n'}, "core/base must not know core/survey"),
    ({"core/photo/a.cpp": '#include "app/session.h"\n'}, "core/ must not know app/session.h"),
    ({"core/report/a.cpp": "#include <imgui.h>\n"}, "core must not know the screen"),
    ({"core/weather/a.cpp": '#include "core/base/text.h"\n'}, "not in the plan"),
    ({"app/screens/a.cpp": "#include <SDL.h>\n"}, "app must not know SDL"),
    ({"app/screens/a.cpp": '#include "platform/desktop/ports.h"\n'}, "app/ must not know platform/"),
    ({"app/session.cpp": "#include <imgui.h>\n"}, "the session must not know the screen"),
    ({"core/base/a.h": '#include "core/base/b.h"\n', "core/base/b.h": '#include "core/base/a.h"\n'}, "circle"),
]

if __name__ == "__main__":
    run("layering", check, SAMPLES)

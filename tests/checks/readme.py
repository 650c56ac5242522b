#!/usr/bin/env python3
"""What the README tells people to type: the scripts are there and given first on a bare machine, and cotter knows the commands."""
import re

from source_tree import run

FRESH = "packaging/fresh-test"
SCRIPT = re.compile(r"^(?:sudo )?(packaging/[\w./-]+)")
COTTER = re.compile(r"^cotter ([a-z]+)")
KNOWN = re.compile(r"\badd_(?:sub)?command\(\s*\"([a-z]+)\"")


def typed(text):
    """(line number, command) of each line of a fenced block and of each piece of inline code."""
    fenced = False
    for number, line in enumerate(text.split("\n"), 1):
        if line.startswith("```"):
            fenced = not fenced
        elif fenced:
            yield number, line
        else:
            yield from ((number, piece) for piece in re.findall(r"`([^`]+)`", line))


def check(files):
    found = []
    readme, fresh = files.get("README.md") or "", files.get(FRESH) or ""
    known = {name for path, text in files.items() if text and path.startswith("app/cli/") for name in KNOWN.findall(text)}
    for number, command in typed(readme):
        if match := SCRIPT.match(command):
            script = match.group(1)
            if script not in files:
                found.append(f"README.md:{number}: there is no {script}")
            elif not re.search(rf"^ +\w+\).*\b{re.escape(script)}\b", fresh, re.MULTILINE):
                found.append(f"README.md:{number}: {script} is not given on a bare machine; add it to prove() in {FRESH}")
        if (match := COTTER.match(command)) and match.group(1) not in known:
            found.append(f"README.md:{number}: cotter knows no command '{match.group(1)}'")
    return found


SAMPLES = [
    ({"README.md": "```\npackaging/web/build\n```\n"}, "README.md:2: there is no packaging/web/build"),
    ({"README.md": "Run `packaging/run`.\n", "packaging/run": "#!/bin/sh\n", FRESH: "# packaging/run\n"},
     "packaging/run is not given on a bare machine"),
    ({"README.md": "```\ncotter recieve x\n```\n", "app/cli/a.cpp": 'all.add_command("receive", "");\n'},
     "cotter knows no command 'recieve'"),
]

if __name__ == "__main__":
    run("readme", check, SAMPLES)

#!/usr/bin/env python3
"""What every file owes its reader: an opening comment, no leftovers, no place of one machine; and a root without strays."""
import os
import re

from source_tree import is_code, run

ROOT_FILES = {"CMakeLists.txt", "README.md", "DEVELOPERS.md"}
ROOT_FOLDERS = {"core", "app", "platform", "assets", "tests", "packaging"}
OPENING = re.compile(r'^(#![^\n]*\n)?\s*(//|/\*|#(?!!)|"""|<!--|<!DOCTYPE html>\s*<!--)')
SHORT = 12  # a CMakeLists.txt up to this many lines explains itself

WORDS = {
    "a place of one machine": r"(?<![\w.])/(work|home|root|Users)/\w",
    "something left to do": r"\b(TODO|FIXME|XXX|HACK)\b",
    "a download host; the machine's own settings name it":
        r"\b(deb|ftp|security|snapshot)\.debian\.org|registry\.npmjs|pypi\.org|proxy\.golang",
    "a mark of an unfinished merge": r"(?m)^(<{7}|>{7}) ",
}
SELF = "tests/checks/tidiness.py"  # it has to name them


def check_text(path, text):
    if "\r" in text:
        yield f"{path}: has carriage returns"
    if text and not text.endswith("\n"):
        yield f"{path}: does not end with a line break"
    if path.endswith((".cpp", ".h", ".py", ".md", ".cmake")) and re.search(r"(?m)[ \t]+$", text):
        yield f"{path}: has spaces at the end of a line"
    if path.endswith((".cpp", ".h", ".py")) and "\t" in text:
        yield f"{path}: has tabs"
    for what, pattern in WORDS.items():
        for match in re.finditer(pattern, text):
            yield f"{path}:{text.count(chr(10), 0, match.start()) + 1}: holds {what} ({match.group(0)})"


def needs_opening(path, text):
    if os.path.basename(path) == "CMakeLists.txt":
        return len(text.splitlines()) > SHORT
    return is_code(path, text)


def check(files):
    found = []
    for path, text in files.items():
        top, _, rest = path.partition("/")
        if not top.startswith(".") and top not in (ROOT_FOLDERS if rest else ROOT_FILES):
            found.append(f"{path}: does not belong in the root")
        if text is None or path == SELF or path.startswith("tests/fixtures/"):
            continue
        found += check_text(path, text)
        if needs_opening(path, text) and not OPENING.match(text):
            found.append(f"{path}: does not open with a comment that says what it is")
    return found


SAMPLES = [
    ({"notes.txt": "x\n"}, "does not belong in the root"),
    ({"scripts/x.py": '"""X."""\n'}, "does not belong in the root"),
    ({"core/a.cpp": "int x;\n"}, "does not open with a comment"),
    ({"packaging/go": "#!/bin/sh\nexit 0\n"}, "does not open with a comment"),
    ({"core/a.cpp": "// A.\nint x;  \n"}, "spaces at the end"),
    ({"core/a.cpp": "// A.\r\n"}, "carriage returns"),
    ({"core/a.cpp": "// A."}, "does not end with a line break"),
    ({"core/a.cpp": "// A.\n\tint x;\n"}, "has tabs"),
    ({"README.md": "See /home/someone/x\n"}, "a place of one machine"),
    ({"core/a.cpp": "// A.\n// TODO: more\n"}, "something left to do"),
    ({"packaging/x": "# x\nhttp://deb.debian.org/debian\n"}, "a download host"),
]

if __name__ == "__main__":
    assert not check({"core/a.cpp": '// A.\n#include "core/work/a.h"\n'})  # a folder of ours is no place of a machine
    run("tidiness", check, SAMPLES)

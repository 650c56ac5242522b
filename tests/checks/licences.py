#!/usr/bin/env python3
"""Whatever CMake knows as a part has its licence handed on: packaging/licences has a row for it, in each kind of build."""
import re

from source_tree import run

TABLE = "packaging/licences"
NATIVE = ("packaging/cmake/Parts.cmake", "packaging/cmake/Imgui.cmake")
FROM_SOURCE = ("packaging/cmake/PartsFromSource.cmake", "packaging/cmake/SdlFromSource.cmake")
NO_PART = {"doctest"}  # of the tests alone


def rows(text, column):
    """The parts of the table that have something in that column."""
    table = text.partition("<<'PARTS'\n")[2].partition("\nPARTS\n")[0]
    return {cells[0] for line in table.splitlines() if len(cells := line.split()) == 3 and cells[column] != "-"}


def parts(files, names):
    text = "".join(files.get(name) or "" for name in names)
    return set(re.findall(r"\b(?:add_library|part_from_source)\(part_(\w+)", text)) - NO_PART


def check(files):
    found = []
    for names, column in ((NATIVE, 1), (FROM_SOURCE, 2)):
        for part in sorted(parts(files, names) - rows(files.get(TABLE) or "", column)):
            found.append(f"{TABLE}: no licence of part_{part}, which {names[0]} knows")
    return found


EMPTY = {TABLE: "cat <<'PARTS'\nsqlite  libsqlite3-0  -\nPARTS\n"}
SAMPLES = [
    ({**EMPTY, NATIVE[0]: "add_library(part_new ALIAS x)\n"}, "no licence of part_new"),
    ({**EMPTY, FROM_SOURCE[0]: "part_from_source(part_sqlite sqlite-3 a.c)\n"}, "no licence of part_sqlite"),
]
assert not check({**EMPTY, NATIVE[0]: "add_library(part_sqlite ALIAS x)\n"})

if __name__ == "__main__":
    run("licences", check, SAMPLES)

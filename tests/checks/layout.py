#!/usr/bin/env python3
"""The layout of C++ is what clang-format 14 makes of it (packaging/format does it). Skipped where that version is not."""
import shutil
import subprocess
import sys
import tempfile

from source_tree import ROOT, cpp_files, read_tree

TOOL = shutil.which("clang-format-14") or shutil.which("clang-format")


def strays(folder, paths):
    """Lines of clang-format about those files that it would lay out otherwise."""
    done = subprocess.run([TOOL, "--dry-run", "--ferror-limit=1", *paths], cwd=folder, capture_output=True, text=True)
    return [line for line in done.stderr.splitlines() if "-Wclang-format-violations" in line]


def main():
    if not TOOL or "version 14." not in subprocess.run([TOOL, "--version"], capture_output=True, text=True).stdout:
        print("layout: skipped, clang-format 14 is not here (packaging/install test brings it)")
        sys.exit(77)
    with tempfile.TemporaryDirectory() as folder:
        with open(f"{folder}/bad.cpp", "w") as bad:
            bad.write("int  f( ){return 1 ;}\n")
        if not strays(folder, ["bad.cpp"]):
            sys.exit("layout: the check is broken: a badly laid out file was not caught")
    found = strays(ROOT, [path for path, _ in cpp_files(read_tree())])
    print("\n".join(found))
    if found:
        sys.exit(f"layout: {len(found)} places; run packaging/format")
    print("layout: nothing found")


main()

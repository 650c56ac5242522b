#!/usr/bin/env python3
"""Counts what ctest ran, from its JUnit files: prints 'N passed, N failed'. For packaging/test.

A doctest program counts once for each of its test cases, a script that ends in 'N passed, N failed' by that line,
anything else as one. A program that dies counts as one failure more than it told of."""
import re
import sys
import xml.etree.ElementTree as xml

DOCTEST = re.compile(r"\[doctest\] test cases: +\d+ \| +(\d+) passed \| +(\d+) failed")
SCRIPT = re.compile(r"^(\d+) passed, (\d+) failed$", re.MULTILINE)


def count_case(case):
    """(passed, failed, skipped) of one ctest test."""
    status = case.get("status")
    if status in ("notrun", "disabled"):
        return 0, 0, 1
    text = "".join(case.itertext())
    told = DOCTEST.findall(text) or SCRIPT.findall(text)
    passed, failed = (sum(int(pair[i]) for pair in told) for i in (0, 1))
    if status == "fail":
        return passed, max(failed, 1), 0
    return (passed, failed, 0) if told else (1, 0, 0)


def main():
    total = [0, 0, 0]
    for path in sys.argv[1:]:
        for case in xml.parse(path).getroot().iter("testcase"):
            total = [a + b for a, b in zip(total, count_case(case))]
    skipped = f", {total[2]} skipped" if total[2] else ""
    print(f"{total[0]} passed, {total[1]} failed{skipped}")


main()

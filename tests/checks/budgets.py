#!/usr/bin/env python3
"""Prints how long files and functions are, against the budgets. Fails only for a file of ours over 400 lines."""
import re
import statistics
import sys

from source_tree import CPP, bare_cpp, is_code, read_tree, run

FILE_MOST = 400
FUNCTION_AIM = 40
MAIN_MOST = 150
ROOT_CMAKE_MOST = 120

NOT_FUNCTION = re.compile(r"^\s*(namespace\b|extern\s+\"\"|(template\s*<.*>\s*)?(class|struct|union|enum)\b)", re.DOTALL)

# "…) : member" before a brace: that brace begins a member's value, not a body.
MEMBER_VALUE = re.compile(r"\)\s*(noexcept\s*)?:(?!:).*[\w>]\s*$", re.DOTALL)


def functions(text):
    """(line, length in lines, name) of each function body in C++ text; what is inside a function counts with it."""
    bare = re.sub(r"(?m)^[ \t]*#.*(\\\n.*)*$", "", bare_cpp(text))
    kinds, start, line = [], 0, 1
    begun = None
    for at, character in enumerate(bare):
        if character == "\n":
            line += 1
        elif character == "{":
            head = bare[start:at]
            if "function" not in kinds and MEMBER_VALUE.search(head) and not head.rstrip().endswith(("const", "noexcept")):
                kinds.append("value")
                continue
            is_function = "function" not in kinds and is_function_head(head)
            kinds.append("function" if is_function else "scope")
            if is_function:
                begun = (line - head.strip().count("\n"), name_in(head))
            start = at + 1
        elif character == "}" and kinds:
            kind = kinds.pop()
            if kind == "function":
                yield begun[0], line - begun[0] + 1, begun[1]
            if kind != "value":
                start = at + 1
        elif character == ";" and "function" not in kinds:
            start = at + 1


def is_function_head(head):
    return "(" in head and not NOT_FUNCTION.match(head) and "=" not in head.split("(")[0]


def name_in(head):
    match = re.search(r"([\w:~]+|operator\s*\S+)\s*\(", head)
    return match.group(1) if match else "?"


def sources(files):
    return {path: text for path, text in files.items() if text is not None and is_code(path, text)}


def lines(text):
    return len(text.splitlines())


def check(files):
    """The hard bounds."""
    return [f"{path}: {lines(text)} lines, over {FILE_MOST}; split it by what its parts know"
            for path, text in sources(files).items() if lines(text) > FILE_MOST]


def report(files):
    """The soft ones, printed."""
    cpp = {path: text for path, text in files.items() if path.endswith(CPP)}
    sizes = sorted(lines(text) for text in cpp.values()) or [0]
    print(f"C++ files: {len(sizes)}, median {statistics.median(sizes):.0f} lines (aim about 100), longest {sizes[-1]}")
    every = [(length, path, line, name) for path, text in cpp.items() for line, length, name in functions(text)]
    over = sorted((f for f in every if f[0] > FUNCTION_AIM), reverse=True)
    if every:
        share = 100 * (1 - len(over) / len(every))
        median = statistics.median(f[0] for f in every)
        print(f"functions: {len(every)}, median {median:.0f} lines, {share:.1f} % within {FUNCTION_AIM} lines (aim 95 %)")
    for length, path, line, name in over:
        print(f"  over {FUNCTION_AIM}: {path}:{line}: {name}, {length} lines")
    for path, text in files.items():
        most = ROOT_CMAKE_MOST if path == "CMakeLists.txt" else MAIN_MOST if re.search(r"(^|/)main\.cpp$", path) else None
        if most and lines(text) >= most:
            print(f"  over {most}: {path}, {lines(text)} lines")


SAMPLES = [({"core/a.cpp": "int x;\n" * 401}, "401 lines, over 400")]

EXAMPLE = """namespace a {
struct B {
    int one() const { return 1; }
    B() : x{1} {
        f([] { return 2; });
    }
    std::array<int, 2> table{1, 2};
};
static const auto kF = [](int a) { return a; };
Result<int> C::two(int a,
                   int b) {
    if (a) { b = 3; }
    return b;
}
}  // namespace a
"""

if __name__ == "__main__":
    counted = [(line, length, name) for line, length, name in functions(EXAMPLE)]
    if counted != [(3, 1, "one"), (4, 3, "B"), (10, 5, "C::two")]:
        sys.exit(f"budgets: the counting is broken: {counted}")
    report(sources(read_tree()))
    run("budgets", check, SAMPLES)

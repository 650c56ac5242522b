"""The files of the project as the checks read them, C++ without comments and strings, and the way a check is run.

A check is a module with `check(files) -> list of findings` and `SAMPLES`: for each sample tree, the words that one of its
findings must contain. Before the real tree is read every sample is tried, so a check that catches nothing fails."""
import os
import re
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
SKIPPED = re.compile(r"^(\.git|build[^/]*|out|__pycache__)$")
CODE = (".cpp", ".h", ".py", ".sh", ".bash", ".cmake", ".js", ".html", ".css")
CPP = (".cpp", ".h")


def is_code(path, text):
    return path.endswith(CODE) or os.path.basename(path) == "CMakeLists.txt" or text.startswith("#!")


def read_tree(root=ROOT):
    """Path -> text, for every text file that belongs to the project; a binary file's text is None."""
    files = {}
    for folder, subfolders, names in os.walk(root):
        subfolders[:] = sorted(s for s in subfolders if not SKIPPED.match(s))
        for name in sorted(names):
            path = os.path.join(folder, name)
            if name == ".git" or os.path.islink(path) or name.endswith((".pyc", ".part")):  # .git is a file in a worktree
                continue
            with open(path, "rb") as file:
                data = file.read()
            text = None if b"\0" in data[:8000] or len(data) > 4_000_000 else data.decode("utf-8", "replace")
            files[os.path.relpath(path, root)] = text
    return files


_TOKEN = re.compile(
    r'//[^\n]*|/\*.*?\*/|R"(?P<mark>[^()\\ ]*)\(.*?\)(?P=mark)"|"(?:\\.|[^"\\\n])*"|(?<![0-9A-Za-z_])\'(?:\\.|[^\'\\\n])*\'',
    re.DOTALL)


def bare_cpp(text):
    """C++ with comments, strings and characters blanked, line numbers kept. #include lines keep their names."""
    def blank(match):
        piece = match.group(0)
        line_start = text.rfind("\n", 0, match.start()) + 1
        if piece.startswith('"') and re.match(r"\s*#\s*include\s*$", text[line_start:match.start()]):
            return piece
        return "\n" * piece.count("\n") if piece.startswith("/") else '""' + "\n" * piece.count("\n")
    return _TOKEN.sub(blank, text)


def cpp_files(files, *folders):
    """(path, bare text) of the C++ files below the folders (all when none is named)."""
    for path, text in files.items():
        if text is not None and path.endswith(CPP) and (not folders or path.startswith(folders)):
            yield path, bare_cpp(text)


def includes(bare):
    """(line number, name) of each #include."""
    for number, line in enumerate(bare.split("\n"), 1):
        if match := re.match(r'\s*#\s*include\s*[<"]([^>"]+)[>"]', line):
            yield number, match.group(1)


def matches(bare, pattern):
    """(line number, matched text) of each match in a bare text."""
    for match in re.finditer(pattern, bare):
        yield bare.count("\n", 0, match.start()) + 1, match.group(0)


def run(name, check, samples):
    """Tries the samples, then the tree. The last line counts; exit code 1 when anything was found."""
    for number, (files, wanted) in enumerate(samples, 1):
        found = check(files)
        if not any(wanted in finding for finding in found):
            sys.exit(f"{name}: the check is broken: sample {number} should give '{wanted}', it gave {found}")
    findings = check(read_tree())
    for finding in findings:
        print(finding)
    if findings:
        sys.exit(f"{name}: {len(findings)} to mend (see above)")
    print(f"{name}: nothing found, after {len(samples)} samples were caught")

#!/usr/bin/env python3
"""Core reads no clock, locale, environment or randomness, and neither core nor app asks which system or compiler it is."""
import re

from source_tree import cpp_files, matches, run

WORLD = {
    "the clock": r"\b(system_clock|steady_clock|high_resolution_clock|gettimeofday|clock_gettime|localtime(_r)?|mktime)\b"
                 r"|(?<![\w.>])(std::)?(time|clock)\s*\(\s*(NULL|nullptr|0|&|\))",
    "the locale": r"\b(setlocale|localeconv|std::locale|imbue|std::(isalpha|isdigit|isalnum|isspace|isupper|islower|tolower"
                  r"|toupper|isprint|ispunct|isxdigit))\b|\b(strtod|strtof|atof|std::stod|std::stof)\s*\(",
    "the environment": r"\b(getenv|setenv|environ|getcwd|current_path|temp_directory_path|gethostname|getpwuid|getuid)\b",
    "randomness": r"\b(random_device|mt19937(_64)?|minstd_rand0?|default_random_engine|getrandom|srand|arc4random\w*"
                  r"|randombytes\w*)\b|(?<![\w.>:])(std::)?rand\s*\(",
    "threads": r"\bstd::(jthread|thread|async|this_thread)\b",
    "the disk by itself": r"\bstd::(filesystem|ifstream|ofstream|fstream)\b|\bf(re)?open\s*\(",
}
SYSTEM_IF = r"(?m)^[ \t]*#[ \t]*(if|ifdef|ifndef|elif)\b.*\b(_[A-Z_]\w*|__\w+|WIN32|unix|linux|ANDROID)\b.*$"


def check(files):
    found = []
    for path, bare in cpp_files(files, "core/"):
        for what, pattern in WORLD.items():
            for number, text in matches(bare, pattern):
                found.append(f"{path}:{number}: core reaches for {what} ({text.strip()}); it comes in through a port")
    for path, bare in cpp_files(files, "core/", "app/"):
        for number, text in matches(bare, SYSTEM_IF):
            found.append(f"{path}:{number}: asks for the system or compiler ({text.strip()}); choose a file in CMake instead")
    return found


SAMPLES = [
    ({"core/a.cpp": "auto t = std::chrono::system_clock::now();\n"}, "the clock"),
    ({"core/a.cpp": "auto t = std::time(nullptr);\n"}, "the clock"),
    ({"core/a.cpp": "auto t = time(0);\n"}, "the clock"),
    ({"core/a.cpp": "stream.imbue(std::locale());\n"}, "the locale"),
    ({"core/a.cpp": "if (std::isdigit(c)) return;\n"}, "the locale"),
    ({"core/a.cpp": "auto h = std::getenv(name);\n"}, "the environment"),
    ({"core/a.cpp": "int r = rand();\n"}, "randomness"),
    ({"core/a.cpp": "std::random_device d;\n"}, "randomness"),
    ({"core/a.cpp": "randombytes_buf(p, 32);\n"}, "randomness"),
    ({"core/a.cpp": "std::thread t;\n"}, "threads"),
    ({"core/a.cpp": "std::ifstream in(path);\n"}, "the disk"),
    ({"app/a.cpp": "#ifdef _WIN32\n#endif\n"}, "asks for the system"),
    ({"core/a.cpp": "#if defined(__GNUC__)\n#endif\n"}, "asks for the system"),
]
# Words alone are no reach: comments, strings and members of the same name.
assert not check({"core/a.cpp": '// rand() and time(0)\nauto s = "getenv"; clock.now(); x.time(); instant.time(&y);\n'})

if __name__ == "__main__":
    run("purity", check, SAMPLES)

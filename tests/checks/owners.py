#!/usr/bin/env python3
"""Each C library has one owner: at most one .cpp of the program includes its header, and no header of ours does."""
import re

from source_tree import cpp_files, includes, run

LIBRARIES = {
    "SQLite": r"sqlite3\.h$",
    "libzip": r"zip\.h$",
    "libsodium": r"sodium(\.h$|/)",
    "libharu": r"hpdf",
    "libjpeg": r"(jpeglib|turbojpeg)\.h$",
    "libexif": r"libexif/",
    "stb": r"(stb/)?stb_(?!image_write)",
    "stb_image_write": r"(stb/)?stb_image_write",
    "OpenSSL": r"openssl/",
    "mbedtls": r"mbedtls/",
    "libdeflate": r"libdeflate\.h$",
    "utf8proc": r"utf8proc\.h$",
    "fast_float": r"fast_float/",
    "libqrencode": r"qrencode\.h$",
    "libpq": r"(libpq-fe|libpq/|postgresql/)",
    "CLI11": r"CLI/",
}


def check(files):
    found = []
    users = {library: set() for library in LIBRARIES}
    for path, bare in cpp_files(files, "core/", "app/", "platform/"):
        for number, name in includes(bare):
            for library, pattern in LIBRARIES.items():
                if not re.match(pattern, name):
                    continue
                users[library].add(path)
                if path.endswith(".h"):
                    found.append(f"{path}:{number}: a header of ours must not show {library} ({name})")
    for library, paths in users.items():
        if len(paths) > 1:
            found.append(f"{library} has more than one owner: {', '.join(sorted(paths))}")
    return found


SAMPLES = [
    ({"core/a.cpp": "#include <sqlite3.h>\n", "core/b.cpp": "#include <sqlite3.h>\n"}, "SQLite has more than one owner"),
    ({"core/a.cpp": "#include <stb_image.h>\n", "core/b.cpp": "#include <stb/stb_truetype.h>\n"}, "stb has more than one"),
    ({"core/photo/a.h": "#include <openssl/evp.h>\n"}, "must not show OpenSSL"),
    ({"app/cli/a.h": "#include <CLI/CLI.hpp>\n"}, "must not show CLI11"),
]

if __name__ == "__main__":
    run("owners", check, SAMPLES)

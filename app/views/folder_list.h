// A folder as the file picker shows it: folders first, then photos (or another kind of file), with size and date, by
// name. Names come from outside and are made safe to show. Works on the disk: once for a folder, not in each frame. Any
// thread.
#pragma once

#include <string>
#include <vector>

#include "core/base/files.h"

namespace cotter {

struct FolderEntry {
    std::string path;   // as the disk has it
    std::string key;    // for the row: unique, with nothing that means something to the widgets
    std::string shown;  // safe to show
    std::string under;  // "3.2 MB, 2026-05-14 08:12"
    bool folder = false;
    std::uint64_t size = 0;
};

struct FolderList {
    std::string folder;
    std::string parent;  // empty at the top
    std::string shown;   // the folder's name, safe to show
    std::vector<FolderEntry> entries;
    std::size_t others = 0;  // files that are not wanted by their names
    std::string error;       // why it cannot be read; empty: it was
};

// True for the endings that photos have, also of kinds that will be refused with a reason.
[[nodiscard]] bool photo_name(std::string_view name);

// `offset_min`: minutes east of UTC in which dates are shown. `wanted`: the files that are listed, by their names.
[[nodiscard]] FolderList list_folder(Files& files, const std::string& folder, int offset_min,
                                     bool (*wanted)(std::string_view name) = photo_name);

// A name from outside for the eye: control and direction-changing characters and broken UTF-8 become '?', and a long
// one loses its middle, keeping its ending.
[[nodiscard]] std::string safe_name(std::string_view name);

}  // namespace cotter

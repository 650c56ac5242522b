// Which paths may stand in a packet: safe ones that every system can hold and that do not collide. Any thread.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"

namespace cotter {

// Why nobody should create a file at this path below a folder of theirs; empty when it is safe: relative, UTF-8, parts
// divided by '/', none of them empty, "." or "..", no backslash, colon (drives and hidden streams), control character,
// nor a name that Windows keeps for devices.
[[nodiscard]] std::string unsafe_path(std::string_view path);

// Why not every system can hold this path as it stands; empty when it can. Safe, but worth a warning.
[[nodiscard]] std::string unportable_path(std::string_view path);

// Fails `refused` when two of the paths would become one file, or one of them the folder of another, on a system that
// regards neither case nor Unicode's ways to write the same character, or when a folder is spelled in two ways.
// A path that ends in '/' is a folder.
[[nodiscard]] Result<> check_collisions(const std::vector<std::string_view>& paths);

}  // namespace cotter

// In which order photos are taken in: as they were taken, by the camera's clock, then by name. Pure but for the
// reading of a file; any thread.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/files.h"

namespace cotter {

struct PhotoWhen {
    std::string path;
    std::optional<std::int64_t> wall_s;  // what the camera's clock showed, in seconds; none when it does not say
};

// When the photo was taken, by its own data. One that cannot be read has no time; taking it in will say why.
[[nodiscard]] PhotoWhen photo_when(Files& files, const std::string& path);

// Those without a time come last, by name.
[[nodiscard]] std::vector<std::string> in_order(std::vector<PhotoWhen> photos);

}  // namespace cotter

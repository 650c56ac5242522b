// See photo_order.h.
#include "app/session/photo_order.h"

#include <algorithm>

#include "core/photo/probe.h"

namespace cotter {

PhotoWhen photo_when(Files& files, const std::string& path) {
    PhotoWhen out{path, {}};
    const auto bytes = read_file(files, path, kMostPhotoBytes);
    if (!bytes) return out;
    const auto info = probe(*bytes);
    if (!info) return out;
    if (info->taken) out.wall_s = info->taken->unix_s + std::int64_t{60} * info->taken->offset_min;
    if (!info->taken && info->taken_wall) out.wall_s = Instant::from_wall(*info->taken_wall, 0).unix_s;
    return out;
}

std::vector<std::string> in_order(std::vector<PhotoWhen> photos) {
    std::stable_sort(photos.begin(), photos.end(), [](const PhotoWhen& a, const PhotoWhen& b) {
        if (a.wall_s != b.wall_s) return a.wall_s.value_or(INT64_MAX) < b.wall_s.value_or(INT64_MAX);
        return base_name(a.path) < base_name(b.path);
    });
    std::vector<std::string> out;
    for (PhotoWhen& photo : photos) out.push_back(std::move(photo.path));
    return out;
}

}  // namespace cotter

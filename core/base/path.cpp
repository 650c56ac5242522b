// See path.h.
#include "core/base/path.h"

#include <string_view>

namespace cotter {

namespace {

std::string_view dividers(PathStyle style) {
    return style == PathStyle::windows ? "/\\" : "/";
}

bool divides(char c, PathStyle style) {
    return dividers(style).find(c) != std::string_view::npos;
}

// How much of the path is its root, which is never cut: "/", "C:", "C:\".
std::size_t root_size(std::string_view path, PathStyle style) {
    const std::size_t drive = style == PathStyle::windows && path.size() >= 2 && path[1] == ':' ? 2 : 0;
    return path.size() > drive && divides(path[drive], style) ? drive + 1 : drive;
}

}  // namespace

std::string parent_folder(const std::string& path, PathStyle style) {
    const std::size_t root = root_size(path, style);
    const auto slash = path.find_last_of(dividers(style));
    if (slash == std::string::npos || slash < root) return root == 0 ? "." : path.substr(0, root);
    return path.substr(0, slash);
}

std::string base_name(const std::string& path, PathStyle style) {
    const auto slash = path.find_last_of(dividers(style));
    return path.substr(slash == std::string::npos ? root_size(path, style) : slash + 1);
}

std::string join_path(const std::string& folder, const std::string& name, PathStyle style) {
    const bool joined = root_size(folder, style) == folder.size() || divides(folder.back(), style);
    return joined ? folder + name : folder + "/" + name;
}

std::string without_end_slash(const std::string& path, PathStyle style) {
    std::string out = path;
    while (out.size() > root_size(path, style) && divides(out.back(), style)) out.pop_back();
    return out;
}

std::string example_on_drive(const std::string& folder, PathStyle style) {
    return (style == PathStyle::windows ? "E:\\" : "/media/usb/") + folder;
}

}  // namespace cotter

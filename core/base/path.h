// Paths as text: the folder, the name, the two put together. For whoever speaks with Files. Any thread.
#pragma once

#include <string>

namespace cotter {

// slash: '/' alone divides, as on POSIX. windows: '/' and '\' divide, and a path may begin with a drive ("C:").
enum class PathStyle { slash, windows };
[[nodiscard]] PathStyle path_style();  // of the system that we are built for

[[nodiscard]] std::string parent_folder(const std::string& path,
                                        PathStyle style = path_style());  // "." for a bare name
[[nodiscard]] std::string base_name(const std::string& path, PathStyle style = path_style());
[[nodiscard]] std::string join_path(const std::string& folder, const std::string& name, PathStyle style = path_style());
// A folder on a drive that is plugged in, as an example in a hint: "/media/usb/packets", "E:\packets".
[[nodiscard]] std::string example_on_drive(const std::string& folder, PathStyle style = path_style());
// "inbox/" as "inbox"; the root stays what it is.
[[nodiscard]] std::string without_end_slash(const std::string& path, PathStyle style = path_style());

}  // namespace cotter

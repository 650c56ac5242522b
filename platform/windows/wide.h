// Between our UTF-8 and the UTF-16 of Windows' calls. For the files beside it. Any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace cotter {

// Nothing when it is no UTF-8.
[[nodiscard]] std::optional<std::wstring> to_wide(std::string_view utf8);
// Half characters, which names on Windows may hold, become U+FFFD.
[[nodiscard]] std::string to_utf8(std::wstring_view wide);

// The same path told from the root of its drive, without "." and "..".
[[nodiscard]] std::wstring from_root(const std::wstring& path);

// A path as system calls want it. One too long for the old calls (260 characters) is made absolute and gets the prefix
// that lifts the limit. Nothing when it is no UTF-8 or holds a NUL.
[[nodiscard]] std::optional<std::wstring> wide_path(const std::string& path);

}  // namespace cotter

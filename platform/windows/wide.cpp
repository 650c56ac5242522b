// See wide.h.
#include "platform/windows/wide.h"

#include <windows.h>

#include <algorithm>

namespace cotter {

namespace {

constexpr std::size_t kLongestPlain = 240;  // a folder's path must leave room for a short name in it

}  // namespace

std::wstring from_root(const std::wstring& path) {
    std::wstring out(::GetFullPathNameW(path.c_str(), 0, nullptr, nullptr), L'\0');
    out.resize(::GetFullPathNameW(path.c_str(), static_cast<DWORD>(out.size()), out.data(), nullptr));
    return out;
}

std::optional<std::wstring> to_wide(std::string_view utf8) {
    if (utf8.empty()) return std::wstring();
    const int bytes = static_cast<int>(utf8.size());
    const int size = ::MultiByteToWideChar(CP_UTF8, MB_ERR_INVALID_CHARS, utf8.data(), bytes, nullptr, 0);
    if (size <= 0) return std::nullopt;
    std::wstring out(static_cast<std::size_t>(size), L'\0');
    ::MultiByteToWideChar(CP_UTF8, MB_ERR_INVALID_CHARS, utf8.data(), bytes, out.data(), size);
    return out;
}

std::string to_utf8(std::wstring_view wide) {
    if (wide.empty()) return {};
    const int units = static_cast<int>(wide.size());
    const int size = ::WideCharToMultiByte(CP_UTF8, 0, wide.data(), units, nullptr, 0, nullptr, nullptr);
    std::string out(static_cast<std::size_t>(size), '\0');
    ::WideCharToMultiByte(CP_UTF8, 0, wide.data(), units, out.data(), size, nullptr, nullptr);
    return out;
}

std::optional<std::wstring> wide_path(const std::string& path) {
    if (path.find('\0') != std::string::npos) return std::nullopt;
    auto wide = to_wide(path);
    if (!wide) return std::nullopt;
    std::replace(wide->begin(), wide->end(), L'/', L'\\');
    if (wide->size() < kLongestPlain || wide->starts_with(L"\\\\?\\")) return wide;
    const std::wstring whole = from_root(*wide);
    if (whole.starts_with(L"\\\\")) return L"\\\\?\\UNC" + whole.substr(1);
    return L"\\\\?\\" + whole;
}

}  // namespace cotter

// Tag files as text.
#include "core/packet/bag.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/zip_reader.h"

namespace cotter {

namespace {

// The lines of a tag file, whatever ends them (LF, CR LF or CR).
std::vector<std::string_view> lines_of(std::string_view text) {
    std::vector<std::string_view> out;
    while (!text.empty()) {
        const auto end = text.find_first_of("\r\n");
        out.push_back(text.substr(0, end));
        if (end == std::string_view::npos) break;
        const bool pair = text[end] == '\r' && end + 1 < text.size() && text[end + 1] == '\n';
        text.remove_prefix(end + (pair ? 2 : 1));
    }
    return out;
}

bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

std::string_view trim(std::string_view text) {
    while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
    return text;
}

void replace_all(std::string& text, std::string_view from, std::string_view to) {
    for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
        text.replace(at, from.size(), to);
}

// RFC 8493 2.1.3: CR, LF and, since 1.0, '%' itself are percent-encoded in manifests, nothing else.
std::string decode_path(std::string_view path, BagVersion version) {
    std::string out(path);
    for (const char* low : {"%0a", "%0A"}) replace_all(out, low, "\n");
    for (const char* low : {"%0d", "%0D"}) replace_all(out, low, "\r");
    if (version == BagVersion::v1_0) replace_all(out, "%25", "%");
    return out;
}

std::string encode_path(std::string path) {
    replace_all(path, "%", "%25");
    replace_all(path, "\n", "%0A");
    replace_all(path, "\r", "%0D");
    return path;
}

std::size_t digest_length(HashKind kind) {
    switch (kind) {
        case HashKind::md5: return 32;
        case HashKind::sha1: return 40;
        case HashKind::sha512: return 128;
        case HashKind::sha256: break;
    }
    return 64;
}

// Quirks of old checksum tools: a '*' before the path, a './' in front of it.
std::string_view strip_quirks(std::string_view path, Manifest& manifest) {
    const auto remark = [&](const char* what) {
        if (manifest.remarks.empty()) manifest.remarks.emplace_back(what);
    };
    if (path.starts_with('*')) {
        remark("a path begins with '*', as old checksum tools write it");
        path.remove_prefix(1);
    }
    if (path.starts_with("./")) {
        remark("a path begins with './', which the standard advises against");
        path.remove_prefix(2);
    }
    return path;
}

// A path in a manifest may hold line ends (encoded), which are unsafe in file names, so they are looked at apart.
std::string why_unsafe(const std::string& path) {
    std::string flat = path;
    std::replace_if(flat.begin(), flat.end(), [](char c) { return c == '\r' || c == '\n'; }, '_');
    std::string why = unsafe_path(flat);
    return why.find("not every system") != std::string::npos ? std::string() : why;  // its own system kept it
}

}  // namespace

std::string bagit_txt() {
    return "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";
}

std::string bag_info_txt(const BagInfo& info) {
    std::string out;
    for (const auto& [label, value] : info) {
        std::string flat = value;  // a value is one line here; the records hold it as it was entered
        std::replace_if(flat.begin(), flat.end(), [](char c) { return c == '\r' || c == '\n'; }, ' ');
        out += fmt::format("{}: {}\n", label, flat);
    }
    return out;
}

std::string manifest_txt(const std::vector<ManifestLine>& lines) {
    std::string out;
    for (const ManifestLine& line : lines) out += fmt::format("{}  {}\n", line.digest, encode_path(line.path));
    return out;
}

std::optional<ManifestName> manifest_name(std::string_view file) {
    ManifestName name;
    name.tags = file.starts_with("tagmanifest-");
    if (!name.tags && !file.starts_with("manifest-")) return std::nullopt;
    if (!file.ends_with(".txt")) return std::nullopt;
    file.remove_prefix(name.tags ? 12 : 9);
    file.remove_suffix(4);
    name.algorithm = ascii_lower(file);
    std::erase(name.algorithm, '-');  // "sha-256" is seen too
    name.kind = hash_from_name(name.algorithm);
    return name;
}

Result<BagVersion> parse_bagit_txt(std::string_view text) {
    const std::string where = "bagit.txt";
    if (text.starts_with("\xEF\xBB\xBF")) return fail(Errc::refused, "it begins with a byte order mark", where);
    COTTER_ASSIGN(const BagInfo info, parse_bag_info(text));
    const std::string* version = value_of(info, "BagIt-Version");
    const std::string* encoding = value_of(info, "Tag-File-Character-Encoding");
    if (info.size() != 2 || version == nullptr || encoding == nullptr)
        return fail(Errc::damaged, "it does not have its two lines, version and encoding", where);
    if (ascii_lower(*encoding) != "utf-8")
        return fail(Errc::refused, fmt::format("its encoding is {}, only UTF-8 is read", one_line(*encoding, 40)), where);
    if (*version == "1.0") return BagVersion::v1_0;
    if (*version == "0.97") return BagVersion::v0_97;
    return fail(Errc::refused, fmt::format("its version is {}, only 0.97 and 1.0 are read", one_line(*version, 40)), where);
}

Result<BagInfo> parse_bag_info(std::string_view text) {
    if (!is_utf8(text)) return fail(Errc::damaged, "it is not UTF-8");
    BagInfo info;
    for (const std::string_view line : lines_of(text)) {
        if (trim(line).empty()) continue;
        if (is_blank(line.front())) {  // goes on from the line before
            if (info.empty()) return fail(Errc::damaged, "its first line is a continuation");
            info.back().second += " " + std::string(trim(line));
            continue;
        }
        const auto colon = line.find(':');
        if (colon == std::string_view::npos || colon == 0)
            return fail(Errc::damaged, fmt::format("'{}' is not a label with a value", one_line(line, 40)));
        info.emplace_back(trim(line.substr(0, colon)), trim(line.substr(colon + 1)));
    }
    return info;
}

Result<Manifest> parse_manifest(std::string_view text, const std::string& file, const ManifestName& name,
                                BagVersion version) {
    Manifest manifest{*name.kind, name.tags, file, {}, {}};
    if (!is_utf8(text)) return fail(Errc::damaged, "it is not UTF-8", file);
    for (const std::string_view line : lines_of(text)) {
        if (line.empty()) continue;
        const auto gap = line.find_first_of(" \t");
        std::string_view path = gap == std::string_view::npos ? std::string_view() : line.substr(gap);
        while (!path.empty() && is_blank(path.front())) path.remove_prefix(1);
        const std::string digest = ascii_lower(line.substr(0, gap));
        if (digest.size() != digest_length(manifest.kind) || from_hex(digest).empty() || path.empty())
            return fail(Errc::damaged, fmt::format("'{}' is not a checksum and a path", one_line(line, 60)), file);
        ManifestLine entry{decode_path(strip_quirks(path, manifest), version), digest};
        if (const std::string why = why_unsafe(entry.path); !why.empty())
            return fail(Errc::refused, fmt::format("{} ({})", why, one_line(entry.path)), file);
        manifest.lines.push_back(std::move(entry));
    }
    return manifest;
}

const std::string* value_of(const BagInfo& info, std::string_view label) {
    for (const auto& [name, value] : info)
        if (ascii_lower(name) == ascii_lower(label)) return &value;
    return nullptr;
}

}  // namespace cotter

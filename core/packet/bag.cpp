// Tag files as text.
#include "core/packet/bag.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/path_rules.h"

namespace cotter {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

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

std::string_view trim_front(std::string_view text) {
    while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
    return text;
}

std::string_view trim(std::string_view text) {
    text = trim_front(text);
    while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
    return text;
}

// RFC 8493 2.1.3: CR, LF and, since 1.0, '%' itself are percent-encoded in manifests, nothing else.
std::string decode_path(std::string_view path, BagVersion version) {
    std::string out;
    for (std::size_t i = 0; i < path.size(); ++i) {
        const std::string code = path[i] == '%' ? ascii_lower(path.substr(i, 3)) : "";
        const char c = code == "%0a" ? '\n' : code == "%0d" ? '\r' : path[i];
        out += c;
        if (c != path[i] || (code == "%25" && version == BagVersion::v1_0)) i += 2;
    }
    return out;
}

std::string encode_path(std::string_view path) {
    std::string out;
    for (const char c : path) {
        if (c == '%')
            out += "%25";
        else if (c == '\n')
            out += "%0A";
        else if (c == '\r')
            out += "%0D";
        else
            out += c;
    }
    return out;
}

std::size_t digest_length(HashKind kind) {
    switch (kind) {
        case HashKind::md5:
            return 32;
        case HashKind::sha1:
            return 40;
        case HashKind::sha512:
            return 128;
        case HashKind::sha256:
            break;
    }
    return 64;
}

void remark_once(Manifest& manifest, const char* what) {
    auto& remarks = manifest.remarks;
    if (std::find(remarks.begin(), remarks.end(), what) == remarks.end()) remarks.emplace_back(what);
}

// Quirks of old checksum tools: a '*' before the path, a './' in front of it.
std::string_view strip_quirks(std::string_view path, Manifest& manifest) {
    if (path.starts_with('*')) {
        remark_once(manifest, "a path begins with '*', as old checksum tools write it");
        path.remove_prefix(1);
    }
    if (path.starts_with("./")) {
        remark_once(manifest, "a path begins with './', which the standard advises against");
        path.remove_prefix(2);
    }
    return path;
}

// A path in a manifest may hold line ends (encoded), which are unsafe in archives, so they are looked at apart.
std::string why_unsafe(std::string path) {
    std::replace_if(
        path.begin(), path.end(), [](char c) { return c == '\r' || c == '\n'; }, '_');
    return unsafe_path(path);
}

Result<ManifestLine> parse_line(std::string_view line, Manifest& manifest, BagVersion version) {
    const auto gap = line.find_first_of(" \t");
    const std::string digest = ascii_lower(line.substr(0, gap));
    std::string_view path = gap == std::string_view::npos ? std::string_view() : trim_front(line.substr(gap));
    if (digest.size() != digest_length(manifest.kind) || from_hex(digest).empty() || path.empty())
        return fail(Errc::damaged, fmt::format("'{}' is not a checksum and a path", one_line(line, 60)), manifest.file);
    path = strip_quirks(path, manifest);
    ManifestLine out{decode_path(path, version), digest, std::string(path)};
    if (const std::string why = why_unsafe(out.path); !why.empty())
        return fail(Errc::refused, fmt::format("{} ({})", why, one_line(out.path)), manifest.file);
    return out;
}

}  // namespace

std::string bagit_txt() {
    return "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";
}

std::string bag_info_txt(const BagInfo& info) {
    std::string out;
    for (const auto& [label, value] : info) {
        std::string flat = value;  // a value is one line here; the records hold it as it was entered
        std::replace_if(
            flat.begin(), flat.end(), [](char c) { return c == '\r' || c == '\n'; }, ' ');
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
    if (name.algorithm.starts_with("sha-")) name.algorithm.erase(3, 1);  // "sha-256" is seen too
    name.kind = hash_from_name(name.algorithm);
    return name;
}

Result<BagDeclaration> parse_bagit_txt(std::string_view text) {
    const std::string where = "bagit.txt";
    if (text.starts_with(kByteOrderMark)) return fail(Errc::refused, "it begins with a byte order mark", where);
    const auto info = parse_bag_info(text);
    if (!info) return unexpected(context(info.error(), where));
    const std::string* version = value_of(*info, "BagIt-Version");
    const std::string* encoding = value_of(*info, "Tag-File-Character-Encoding");
    if (info->size() != 2 || version == nullptr || encoding == nullptr)
        return fail(Errc::damaged, "it does not have its two lines, version and encoding", where);
    BagDeclaration out;
    const std::string lower = ascii_lower(*encoding);
    out.encoding = lower == "iso-8859-1" ? TagEncoding::latin1 : TagEncoding::utf8;
    if (lower != "utf-8" && lower != "us-ascii" && lower != "iso-8859-1")
        return fail(Errc::refused,
                    fmt::format("its encoding is {}; read are UTF-8, US-ASCII and ISO-8859-1", one_line(*encoding, 40)),
                    where);
    out.version = *version == "0.97" ? BagVersion::v0_97 : BagVersion::v1_0;
    if (*version != "1.0" && *version != "0.97")
        return fail(Errc::refused, fmt::format("its version is {}, only 0.97 and 1.0 are read", one_line(*version, 40)),
                    where);
    return out;
}

Result<std::string> tag_text(ByteView bytes, TagEncoding encoding, bool& marked) {
    std::string_view text = as_text(bytes);
    marked = text.starts_with(kByteOrderMark);
    if (marked) text.remove_prefix(kByteOrderMark.size());
    if (encoding == TagEncoding::utf8) {
        if (!is_utf8(text)) return fail(Errc::damaged, "it is not UTF-8");
        return std::string(text);
    }
    std::string out;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x80)
            out += c;
        else
            out += {static_cast<char>(0xC0 | byte >> 6), static_cast<char>(0x80 | (byte & 0x3F))};
    }
    return out;
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
    for (const std::string_view line : lines_of(text)) {
        if (line.empty()) continue;
        COTTER_ASSIGN(ManifestLine entry, parse_line(line, manifest, version));
        manifest.lines.push_back(std::move(entry));
    }
    return manifest;
}

Result<std::vector<std::string>> parse_fetch(std::string_view text, BagVersion version) {
    std::vector<std::string> paths;
    for (const std::string_view line : lines_of(text)) {
        if (trim(line).empty()) continue;
        const auto address = line.find_first_of(" \t");
        const std::string_view rest = address == std::string_view::npos ? "" : trim_front(line.substr(address));
        const auto length = rest.find_first_of(" \t");
        if (length == std::string_view::npos)
            return fail(Errc::damaged, fmt::format("'{}' is not an address, a length and a path", one_line(line, 60)));
        paths.push_back(decode_path(trim_front(rest.substr(length)), version));
    }
    return paths;
}

const std::string* value_of(const BagInfo& info, std::string_view label) {
    for (const auto& [name, value] : info)
        if (ascii_lower(name) == ascii_lower(label)) return &value;
    return nullptr;
}

}  // namespace cotter

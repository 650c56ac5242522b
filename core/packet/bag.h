// The tag files of a BagIt bag (RFC 8493, and the older 0.97): written for our packets, read for anybody's. Any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/error.h"
#include "core/base/hash.h"

namespace cotter {

// ---- writing

struct ManifestLine {
    std::string path;    // below the bag's top folder
    std::string digest;  // lower-case hex
    std::string raw{};   // the path as it stood in a manifest that was read, before decoding
};

using BagInfo = std::vector<std::pair<std::string, std::string>>;  // label, value

[[nodiscard]] std::string bagit_txt();                                           // version 1.0, UTF-8
[[nodiscard]] std::string bag_info_txt(const BagInfo& info);                     // in the given order
[[nodiscard]] std::string manifest_txt(const std::vector<ManifestLine>& lines);  // "digest  path", in the given order

// ---- reading

enum class BagVersion { v0_97, v1_0 };
enum class TagEncoding { utf8, latin1 };

// What bagit.txt declares.
struct BagDeclaration {
    BagVersion version = BagVersion::v1_0;
    TagEncoding encoding = TagEncoding::utf8;
};

struct Manifest {
    HashKind kind = HashKind::sha256;
    bool tags = false;  // a tag manifest
    std::string file;   // "manifest-sha256.txt"
    std::vector<ManifestLine> lines;
    std::vector<std::string> remarks;  // quirks that were read past, each once
};

// "manifest-md5.txt" or "tagmanifest-sha512.txt" → which; nothing for other names. Unknown algorithms give no kind.
struct ManifestName {
    bool tags = false;
    std::optional<HashKind> kind;
    std::string algorithm;
};
[[nodiscard]] std::optional<ManifestName> manifest_name(std::string_view file);

// Version and encoding. Fails for any version but 0.97 and 1.0 and any encoding but UTF-8, US-ASCII and ISO-8859-1.
[[nodiscard]] Result<BagDeclaration> parse_bagit_txt(std::string_view text);

// A tag file's bytes as UTF-8, without byte order mark; `marked` says whether there was one.
[[nodiscard]] Result<std::string> tag_text(ByteView bytes, TagEncoding encoding, bool& marked);

[[nodiscard]] Result<BagInfo> parse_bag_info(std::string_view text);

// `name` says kind and use; paths are decoded and must be safe (path_rules.h), but may hold line ends.
[[nodiscard]] Result<Manifest> parse_manifest(std::string_view text, const std::string& file, const ManifestName& name,
                                              BagVersion version);

// The paths that fetch.txt says are to be fetched.
[[nodiscard]] Result<std::vector<std::string>> parse_fetch(std::string_view text, BagVersion version);

// The value of a label (case does not count), or nullptr.
[[nodiscard]] const std::string* value_of(const BagInfo& info, std::string_view label);

}  // namespace cotter

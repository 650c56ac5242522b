// Reading zips that nobody vouches for: everything is checked before anything is unpacked. Any thread.
#pragma once

#include <functional>
#include <vector>

#include "core/base/files.h"
#include "core/packet/zip_format.h"

namespace cotter {

// Bounds on what an archive may ask for. The defaults hold a job of 200 large photos many times over.
struct ZipLimits {
    std::size_t entries = 10'000;
    std::uint64_t file_size = std::uint64_t{4} << 30;    // unpacked bytes of one file
    std::uint64_t total_size = std::uint64_t{16} << 30;  // unpacked bytes of all
    std::uint64_t ratio = 200;                           // unpacked : packed, for files over 1 MiB
    std::uint64_t directory_size = 64u << 20;
};

struct ZipIndex {
    std::vector<ZipEntry> entries;  // in the order of the central directory
    bool comment = false;           // the archive has one
    bool plain64 = true;            // it has no zip64 end record, or one as our writer makes it
};

// Structure, names and sizes. After success: every byte of the file belongs to exactly one known part (no gaps,
// overlaps, bytes before or behind), local and central headers agree, methods are stored or deflated, nothing is
// encrypted, names are safe relative UTF-8 paths that do not collide even where case does not count, entries are
// plain files or folders, and sizes keep to the limits. Fails `damaged`, `refused` or `not_ours` with the entry's name.
[[nodiscard]] Result<ZipIndex> read_zip_index(const FileReader& file, const ZipLimits& limits);

// Is a path one that every system can hold and none can misuse? The empty text when it is, else why not.
[[nodiscard]] std::string unsafe_path(std::string_view path);

// Unpacks one entry piece by piece into `sink`; its declared size and CRC are enforced.
[[nodiscard]] Result<> read_entry(const FileReader& file, const ZipEntry& entry,
                                  const std::function<void(ByteView)>& sink);

// Why the archive is not byte for byte what our own writer makes of the same entries; empty when it is.
// (Compressed bytes apart, see compressed_as_ours.)
[[nodiscard]] std::string not_canonical(const ZipIndex& index);

// True when the packed bytes of a deflated entry are what this program would write for `unpacked`.
[[nodiscard]] Result<bool> compressed_as_ours(const FileReader& file, const ZipEntry& entry, ByteView unpacked);

}  // namespace cotter

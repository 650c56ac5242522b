// Reading zips that nobody vouches for: everything is checked before anything is unpacked. Any thread.
#pragma once

#include <functional>
#include <optional>

#include "core/packet/zip_directory.h"

namespace cotter {

// Bounds on what an archive may ask for. The defaults hold a job of 200 large photos many times over.
struct ZipLimits {
    std::size_t entries = 10'000;
    std::uint64_t file_size = std::uint64_t{4} << 30;    // unpacked bytes of one file
    std::uint64_t total_size = std::uint64_t{16} << 30;  // unpacked bytes of all
    std::uint64_t ratio = 200;                           // unpacked : packed, for files over 1 MiB
    std::uint64_t directory_size = 64u << 20;            // bytes of the central directory
};

// Structure, names and sizes. After success, beside what read_zip_directory promises: methods are stored or deflated,
// nothing is encrypted, names are safe relative paths that do not collide (path_rules.h), entries are plain files or
// folders, sizes keep to the limits. Fails `damaged`, `refused` or `not_ours` with the entry's name.
[[nodiscard]] Result<ZipIndex> read_zip_index(const FileReader& file, const ZipLimits& limits);

// Unpacks one entry piece by piece into `sink`; its declared size and CRC are enforced. On failure some pieces may
// have been given already. `into`: empty, or as long as the entry; then the pieces lie there, and stay.
[[nodiscard]] Result<> read_entry(const FileReader& file, const ZipEntry& entry,
                                  const std::function<void(ByteView)>& sink, std::span<std::uint8_t> into = {});

// ---- is it as our own writer would have made it?

// What differs in the headers and in which entry; nothing when they are as ours. Packed bytes apart, see
// packed_as_ours.
struct FormFault {
    std::string entry;  // empty: the archive as a whole
    std::string what;
};
[[nodiscard]] std::optional<FormFault> not_as_ours(const ZipIndex& index);

// True when the packed bytes of an entry are what this program would write for `unpacked`.
[[nodiscard]] Result<bool> packed_as_ours(const FileReader& file, const ZipEntry& entry, ByteView unpacked);

}  // namespace cotter

// The directory of a zip, read within bounds and held against the local headers. What it means is judged by zip_reader.
#pragma once

#include <vector>

#include "core/base/files.h"
#include "core/packet/zip_format.h"

namespace cotter {

struct ZipLimits;

struct ZipIndex {
    std::vector<ZipEntry> entries;  // in the order of the central directory
    bool comment = false;           // the archive has one
    bool plain64 = true;            // it has no zip64 end record, or one as our writer makes it
};

// Success means: the end record stands at the very end, every central header is whole, every local header is where it
// should be and agrees, and all of them together tile the file from its first byte to its last without gap or overlap.
// Fails `not_ours` when it is no zip, `damaged` or `refused` with the entry's name otherwise.
[[nodiscard]] Result<ZipIndex> read_zip_directory(const FileReader& file, const ZipLimits& limits);

}  // namespace cotter

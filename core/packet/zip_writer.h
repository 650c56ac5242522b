// Writes a zip front to back, the same bytes for the same entries. One thread.
#pragma once

#include <vector>

#include "core/base/files.h"
#include "core/packet/zip_format.h"

namespace cotter {

enum class Packing { store, deflate };

// A file's bytes made ready for the archive; this part of the work may be done on several threads at once.
struct ZipFile {
    std::string name;
    Bytes packed;  // as they go into the archive
    std::uint64_t size = 0;
    std::uint32_t crc = 0;
    Packing packing = Packing::store;
    [[nodiscard]] static ZipFile make(std::string name, Bytes bytes, Packing packing);
};

class ZipWriter {
public:
    // Entries carry `at` as their time. `out` must outlive the writer.
    ZipWriter(FileWriter& out, const Instant& at) : out_(out), at_(DosTime::of(at)) {}

    // Names are checked by the reader, not here. Archives over 4 GiB get zip64 fields;
    // a single file of 4 GiB is refused.
    Result<> add(const ZipFile& file);
    // Writes the directory; nothing may be added after.
    Result<> finish();

private:
    Result<> put(ByteView bytes);

    FileWriter& out_;
    DosTime at_;
    std::uint64_t written_ = 0;
    std::vector<ZipEntry> entries_;
};

}  // namespace cotter

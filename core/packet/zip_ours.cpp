// The one form that our writer gives an archive, so that a change anywhere outside the signed bytes shows.
#include "core/packet/deflate.h"
#include "core/packet/zip_reader.h"

namespace cotter {

namespace {

using namespace zip;

bool header_as_ours(const ZipEntry& entry, const DosTime& at) {
    const std::uint16_t needed = entry.header_at >= kIn64 ? kOurNeeded64 : kOurNeeded;
    return entry.made_by == kOurMadeBy && entry.needed == needed && entry.flags == kFlagUtf8 && entry.internal == 0 &&
           entry.attributes == kOurAttributes && entry.at == at && entry.plain;
}

}  // namespace

std::optional<FormFault> not_as_ours(const ZipIndex& index) {
    if (index.comment) return FormFault{"", "the archive carries a comment, which Cotter never writes"};
    if (!index.plain64) return FormFault{"", "the archive's zip64 end record is not as Cotter writes it"};
    std::uint64_t at = 0;
    for (const ZipEntry& entry : index.entries) {
        if (entry.header_at != at) return FormFault{entry.name, "it is not at its place in the archive"};
        if (!header_as_ours(entry, index.entries.front().at))
            return FormFault{entry.name, "its headers in the archive are not as Cotter writes them"};
        at = entry.end_at;
    }
    return std::nullopt;
}

Result<bool> packed_as_ours(const FileReader& file, const ZipEntry& entry, ByteView unpacked) {
    if (entry.method != kDeflated) return true;
    Bytes packed(static_cast<std::size_t>(entry.packed));
    COTTER_TRY(file.read_at(entry.data_at, packed));
    return packed == deflate_bytes(unpacked);
}

}  // namespace cotter

// The parts of the zip format (PKWARE APPNOTE 6.3) that packets use, as numbers: shared by reader and writer.
#pragma once

#include <cstdint>
#include <string>

#include "core/base/bytes.h"
#include "core/base/time.h"

namespace cotter {

namespace zip {

inline constexpr std::uint32_t kLocalSignature = 0x04034b50;
inline constexpr std::uint32_t kCentralSignature = 0x02014b50;
inline constexpr std::uint32_t kEndSignature = 0x06054b50;
inline constexpr std::uint32_t kEnd64Signature = 0x06064b50;
inline constexpr std::uint32_t kLocator64Signature = 0x07064b50;
inline constexpr std::uint32_t kDescriptorSignature = 0x08074b50;
inline constexpr std::size_t kLocalSize = 30;
inline constexpr std::size_t kCentralSize = 46;
inline constexpr std::size_t kEndSize = 22;
inline constexpr std::size_t kEnd64Size = 56;
inline constexpr std::size_t kLocator64Size = 20;
inline constexpr std::uint16_t kStored = 0;
inline constexpr std::uint16_t kDeflated = 8;
inline constexpr std::uint16_t kFlagEncrypted = 1;
inline constexpr std::uint16_t kFlagsLevel = 6;  // how hard deflate tried; says nothing to a reader
inline constexpr std::uint16_t kFlagDescriptor = 8;
inline constexpr std::uint16_t kFlagStrongEncryption = 0x40;
inline constexpr std::uint16_t kFlagUtf8 = 0x0800;
inline constexpr std::uint16_t kFlagMasked = 0x2000;  // the directory is encrypted
inline constexpr std::uint16_t kExtra64 = 1;
inline constexpr std::uint16_t kExtraName = 0x7075;  // another spelling of the name, in UTF-8
inline constexpr std::uint32_t kIn64 = 0xffffffff;   // a 32-bit field whose value stands in the zip64 extra field
inline constexpr std::uint16_t kIn64Short = 0xffff;

// What every entry of a packet of ours says beside its name, sizes, method and CRC.
inline constexpr std::uint16_t kOurMadeBy = 0x0314;  // Unix, 2.0
inline constexpr std::uint16_t kOurNeeded = 20;
inline constexpr std::uint16_t kOurNeeded64 = 45;
inline constexpr std::uint32_t kOurAttributes = 0100644u << 16;  // a plain file, rw-r--r--
inline constexpr int kOurLevel = 9;                              // of deflate

}  // namespace zip

// A moment as the zip format writes it: the wall time at the place, in steps of two seconds, years 1980…2107.
struct DosTime {
    std::uint16_t time = 0;
    std::uint16_t date = 0;
    bool operator==(const DosTime&) const = default;
    [[nodiscard]] static DosTime of(const Instant& at);  // 1980-01-01T00:00:00 for moments outside those years
};

// One entry as its central header describes it.
struct ZipEntry {
    std::string name;
    std::uint16_t made_by = zip::kOurMadeBy;
    std::uint16_t needed = zip::kOurNeeded;
    std::uint16_t flags = zip::kFlagUtf8;
    std::uint16_t method = zip::kStored;
    DosTime at;
    std::uint32_t crc = 0;
    std::uint64_t packed = 0;  // bytes in the archive
    std::uint64_t size = 0;    // bytes unpacked
    std::uint16_t internal = 0;
    std::uint32_t attributes = zip::kOurAttributes;
    std::uint64_t header_at = 0;  // offset of the local header
    std::uint64_t data_at = 0;    // offset of the data
    std::uint64_t end_at = 0;     // first byte behind the data and its descriptor
    bool plain = true;  // no comment, no extra fields but zip64 ones that are needed, local header the same throughout

    [[nodiscard]] bool folder() const { return name.ends_with('/'); }
};

}  // namespace cotter

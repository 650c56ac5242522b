// Zips written field by field, honest or lying. Built without the code under test.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/bytes.h"

namespace cotter::test {

// What a local or a central header says. RawZip fills in the truth; tests then change what they like.
struct RawHeader {
    std::uint16_t made_by = 0x0314;  // central only
    std::uint16_t needed = 20;
    std::uint16_t flags = 0x0800;
    std::uint16_t method = 0;
    std::uint16_t time = 0x6000, date = 0x5cae;
    std::uint32_t crc = 0;
    std::uint32_t packed = 0, size = 0;
    std::string name;
    std::string extra;
    std::string comment;                     // central only
    std::uint16_t disk = 0;                  // central only
    std::uint32_t attributes = 0x81a40000u;  // central only: a plain file
    std::optional<std::uint32_t> offset;     // central only: another than the true one
};

struct RawEntry {
    RawHeader local, central;
    std::string packed;      // the data as it lies in the archive
    std::string descriptor;  // bytes behind the data
    std::string gap;         // bytes before the local header
    bool hidden = false;     // no local part: only the directory names it
    bool unlisted = false;   // no central part
};

class RawZip {
public:
    // An honest entry; the reference is good until the next call.
    RawEntry& add(const std::string& name, const std::string& text);
    RawEntry& add_deflated(const std::string& name, const std::string& text);

    std::string before, before_directory, before_end, comment, behind;
    std::optional<std::uint16_t> entries;       // another number than the true one
    std::optional<std::uint32_t> directory_at;  // another place than the true one
    std::optional<std::uint32_t> directory_size;
    bool zip64 = false;  // with a zip64 end record; the old one says "see there"
    std::optional<std::uint64_t> entries64, directory_at64, record_at64;

    [[nodiscard]] Bytes bytes() const;

private:
    RawEntry& add_packed(const std::string& name, const std::string& text, std::string packed, std::uint16_t method);
    std::vector<RawEntry> all_;
};

// A number as the zip format writes it.
[[nodiscard]] std::string le(std::uint64_t value, int bytes);

}  // namespace cotter::test

// A PNG file cut into its chunks, each checked against its checksum. For probe and clean. Any thread.
#pragma once

#include <string_view>
#include <vector>

#include "core/base/bytes.h"
#include "core/base/error.h"

namespace cotter {

struct PngChunk {
    std::string_view type;  // "IHDR"
    ByteView data;
    ByteView whole;  // length, type, data and checksum
};

struct PngParts {
    std::vector<PngChunk> chunks;  // IHDR … IEND; views into the bytes given
    ByteView trailing;             // what follows IEND
};

// Fails `damaged` with the byte where it breaks, and `refused` for critical chunks that the standard does not know.
[[nodiscard]] Result<PngParts> png_parts(ByteView bytes);

[[nodiscard]] const PngChunk* find_chunk(const PngParts& parts, std::string_view type);  // the first, or nullptr

// True for the picture itself and what its colours and proportions need.
[[nodiscard]] bool is_harmless(const PngChunk& chunk);

// Adds a chunk with its length and checksum to `out`.
void add_chunk(Bytes& out, std::string_view type, ByteView data);

inline constexpr std::string_view kPngSignature{"\x89PNG\r\n\x1A\n", 8};

}  // namespace cotter

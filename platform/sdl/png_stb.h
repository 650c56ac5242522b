// Screenshots as PNG. Any thread.
#pragma once

#include "core/base/bytes.h"

namespace cotter {

// 8-bit RGB, rows from the top; the same bytes for the same pixels.
[[nodiscard]] Bytes encode_png(int width, int height, ByteView rgb);

}  // namespace cotter

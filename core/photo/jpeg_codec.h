// JPEG decoding as stored (not turned), for image.cpp. Any thread.
#pragma once

#include "core/photo/image.h"

namespace cotter {

// At the smallest of 1/8, 1/4, 1/2, 1/1 whose longest side is at least 15/16 of `max_side`. Fails `damaged` at the
// first place where the decoder would have to guess.
[[nodiscard]] Result<Image> decode_jpeg(ByteView bytes, const PhotoInfo& info, int max_side);

}  // namespace cotter

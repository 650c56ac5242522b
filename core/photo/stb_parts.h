// What this library uses stb for: PNG pixels, resizing, letters. For image.cpp and marks.cpp. Any thread.
#pragma once

#include <string_view>

#include "core/photo/image.h"

namespace cotter {

// Fails `damaged` when the pixels do not decode, `refused` when there is not enough memory.
[[nodiscard]] Result<Image> decode_png(ByteView bytes, const PhotoInfo& info);

// Fills `out` (its size is set) with `in` resampled by a filter that neither blurs nor rings much.
void resize_pixels(const Image& in, Image& out);

// One line of text as coverage 0…255, cut tight at left and right; as high as the font's line.
struct TextMask {
    int width = 0, height = 0;
    Bytes coverage;  // width × height
};

// `font`: a trusted TrueType or OpenType file. `height`: of the line in pixels, 1…2,000. Characters that the font lacks
// show as its box. Fails `refused` for text that is not UTF-8 or longer than 200 bytes, and for what is no font.
[[nodiscard]] Result<TextMask> draw_text(ByteView font, std::string_view text, int height);

}  // namespace cotter

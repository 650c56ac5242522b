// stb's image reader, resizer and font rasteriser. The only file that includes them.
#include <cstddef>
#include <cstdlib>

namespace {
// A PNG may claim to unpack to anything: no single block may be larger than the largest picture taken in needs
// (50 megapixels of 16-bit RGBA, one filter byte a row).
constexpr std::size_t kMostBlock = std::size_t{50'000'000} * 8 + 65'536;
inline void* capped_malloc(std::size_t size) {
    return size > kMostBlock ? nullptr : std::malloc(size);
}
inline void* capped_realloc(void* block, std::size_t size) {
    return size > kMostBlock ? nullptr : std::realloc(block, size);
}
}  // namespace

#define STBI_MALLOC(size) capped_malloc(size)
#define STBI_REALLOC(block, size) capped_realloc(block, size)
#define STBI_FREE(block) std::free(block)
#define STBI_ONLY_PNG
#define STBI_NO_STDIO
#define STB_IMAGE_STATIC
#define STB_IMAGE_IMPLEMENTATION
#include <stb_image.h>
#define STB_IMAGE_RESIZE_STATIC
#define STB_IMAGE_RESIZE_IMPLEMENTATION
#include <stb_image_resize.h>
#define STBTT_STATIC
#define STB_TRUETYPE_IMPLEMENTATION
#include <stb_truetype.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <vector>

#include "core/base/text.h"
#include "core/photo/stb_parts.h"

namespace cotter {

namespace {

std::size_t font_number(ByteView bytes, std::size_t at, int count) {
    std::size_t value = 0;
    for (int i = 0; i < count; ++i) value = value << 8 | bytes[at + std::size_t(i)];
    return value;
}

// stb trusts a font's directory: it must at least be one, with every table inside the file.
bool is_font(ByteView bytes) {
    if (bytes.size() < 12) return false;
    const std::string_view kind = as_text(bytes.first(4));
    if (kind != std::string_view("\0\1\0\0", 4) && kind != "true" && kind != "OTTO") return false;
    const std::size_t tables = font_number(bytes, 4, 2);
    if (12 + tables * 16 > bytes.size()) return false;
    for (std::size_t i = 0; i < tables; ++i) {
        const std::size_t at = font_number(bytes, 12 + i * 16 + 8, 4), size = font_number(bytes, 12 + i * 16 + 12, 4);
        if (at > bytes.size() || size > bytes.size() - at) return false;
    }
    return true;
}

struct FreePixels {
    void operator()(stbi_uc* pixels) const { stbi_image_free(pixels); }
};

std::uint8_t over_white(unsigned value, unsigned alpha) {
    return static_cast<std::uint8_t>((value * alpha + 255 * (255 - alpha) + 127) / 255);
}

void to_rgb(const stbi_uc* in, Image& out, int components) {
    const bool grey = components <= 2, alpha = components % 2 == 0;
    std::uint8_t* to = out.pixels.data();
    for (const std::uint8_t* end = to + out.pixels.size(); to != end; to += 3, in += components)
        for (int c = 0; c < 3; ++c) {
            const std::uint8_t value = in[grey ? 0 : c];
            to[c] = alpha ? over_white(value, in[components - 1]) : value;
        }
}

std::vector<int> code_points(std::string_view utf8) {
    std::vector<int> out;
    for (const char c : utf8) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x80)
            out.push_back(byte);
        else if (byte >= 0xC0)
            out.push_back(byte & (byte >= 0xF0 ? 0x07 : byte >= 0xE0 ? 0x0F : 0x1F));
        else
            out.back() = out.back() << 6 | (byte & 0x3F);
    }
    return out;
}

// Where each letter's origin stands, in pixels; one more at the end: the whole width.
std::vector<float> letter_positions(const stbtt_fontinfo& font, const std::vector<int>& letters, float scale) {
    std::vector<float> at{0};
    for (std::size_t i = 0; i < letters.size(); ++i) {
        int advance = 0, bearing = 0;
        stbtt_GetCodepointHMetrics(&font, letters[i], &advance, &bearing);
        if (i + 1 < letters.size()) advance += stbtt_GetCodepointKernAdvance(&font, letters[i], letters[i + 1]);
        at.push_back(at.back() + scale * static_cast<float>(advance));
    }
    return at;
}

void draw_letter(const stbtt_fontinfo& font, int letter, float scale, float x, int baseline, TextMask& mask) {
    int w = 0, h = 0, dx = 0, dy = 0;
    const float whole = std::floor(x);
    stbtt_uint8* glyph = stbtt_GetCodepointBitmapSubpixel(&font, scale, scale, x - whole, 0, letter, &w, &h, &dx, &dy);
    for (int y = 0; y < h; ++y)
        for (int i = 0; i < w; ++i) {
            const int to_x = static_cast<int>(whole) + dx + i, to_y = baseline + dy + y;
            if (to_x < 0 || to_y < 0 || to_x >= mask.width || to_y >= mask.height) continue;
            std::uint8_t& to = mask.coverage[std::size_t(to_y) * mask.width + to_x];
            to = std::max(to, glyph[y * w + i]);
        }
    stbtt_FreeBitmap(glyph, nullptr);
}

}  // namespace

Result<Image> decode_png(ByteView bytes, const PhotoInfo& info) {
    int width = 0, height = 0, components = 0;
    const std::unique_ptr<stbi_uc, FreePixels> pixels(
        stbi_load_from_memory(bytes.data(), static_cast<int>(bytes.size()), &width, &height, &components, 0));
    if (!pixels || width != info.stored_width || height != info.stored_height)
        return fail(Errc::damaged, "the picture's pixels are damaged", {}, "copy it again from where it came");
    Image image = make_image(width, height);
    to_rgb(pixels.get(), image, components);
    return image;
}

void resize_pixels(const Image& in, Image& out) {
    stbir_resize_uint8(in.pixels.data(), in.width, in.height, 0, out.pixels.data(), out.width, out.height, 0, 3);
}

Result<TextMask> draw_text(ByteView font_bytes, std::string_view text, int height) {
    if (!is_utf8(text) || text.size() > 200)
        return fail(Errc::refused, "a label is not readable text or too long", one_line(text, 40), "shorten it");
    stbtt_fontinfo font{};
    if (!is_font(font_bytes) || stbtt_InitFont(&font, font_bytes.data(), 0) == 0)
        return fail(Errc::refused, "the font for labels cannot be read", {}, "install Cotter again");
    const float scale = stbtt_ScaleForPixelHeight(&font, static_cast<float>(std::clamp(height, 1, 2'000)));
    int ascent = 0, descent = 0, gap = 0;
    stbtt_GetFontVMetrics(&font, &ascent, &descent, &gap);

    const auto letters = code_points(text);
    const auto at = letter_positions(font, letters, scale);
    TextMask mask{static_cast<int>(std::ceil(at.back())) + 1, height, {}};
    mask.coverage.resize(std::size_t(mask.width) * mask.height);
    const int baseline = static_cast<int>(std::lround(scale * static_cast<float>(ascent)));
    for (std::size_t i = 0; i < letters.size(); ++i) draw_letter(font, letters[i], scale, at[i], baseline, mask);
    return mask;
}

}  // namespace cotter

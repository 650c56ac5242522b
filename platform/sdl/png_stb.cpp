// See png_stb.h. The one owner of stb_image_write.
#include "platform/sdl/png_stb.h"

#define STB_IMAGE_WRITE_IMPLEMENTATION
#define STBI_WRITE_NO_STDIO
#define STB_IMAGE_WRITE_STATIC
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wunused-function"
#include <stb_image_write.h>
#pragma GCC diagnostic pop

namespace cotter {

Bytes encode_png(int width, int height, ByteView rgb) {
    Bytes out;
    const auto append = [](void* to, void* data, int size) {
        const auto* bytes = static_cast<const std::uint8_t*>(data);
        static_cast<Bytes*>(to)->insert(static_cast<Bytes*>(to)->end(), bytes, bytes + size);
    };
    stbi_write_png_to_func(append, &out, width, height, 3, rgb.data(), 3 * width);
    return out;
}

}  // namespace cotter

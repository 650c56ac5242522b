// JPEGs of every kind, by the library's own encoder with its own (ending the program) error handler.
#include <cstdio>
#include <jpeglib.h>

#include <cstdlib>

#include "tests/core/photo/photo_maker.h"

namespace cotter::made {

Bytes jpeg(int width, int height, const Paint& paint, const JpegKind& kind) {
    jpeg_compress_struct info{};
    jpeg_error_mgr errors{};
    info.err = jpeg_std_error(&errors);
    jpeg_create_compress(&info);
    unsigned char* bytes = nullptr;
    unsigned long size = 0;
    jpeg_mem_dest(&info, &bytes, &size);
    info.image_width = JDIMENSION(width);
    info.image_height = JDIMENSION(height);
    info.input_components = kind.components;
    info.in_color_space = kind.components == 1 ? JCS_GRAYSCALE : kind.components == 4 ? JCS_CMYK : JCS_RGB;
    jpeg_set_defaults(&info);
    jpeg_set_quality(&info, kind.quality, TRUE);
    info.restart_in_rows = kind.restart_rows;
    if (kind.components == 4) info.write_Adobe_marker = kind.adobe ? TRUE : FALSE;
    if (kind.progressive) jpeg_simple_progression(&info);
    jpeg_start_compress(&info, TRUE);
    for (int y = 0; y < height; ++y) {
        Bytes row;
        for (int x = 0; x < width; ++x)
            for (const std::uint8_t c : paint(x, y)) row.push_back(c);
        JSAMPROW rows[1] = {row.data()};
        jpeg_write_scanlines(&info, rows, 1);
    }
    jpeg_finish_compress(&info);
    jpeg_destroy_compress(&info);
    Bytes out(bytes, bytes + size);
    std::free(bytes);
    return out;
}

}  // namespace cotter::made

// JPEG by libjpeg-turbo. The only file that includes its headers.
//
// Method: the library leaves by longjmp when something is wrong, which must never cross a C++ destructor. So each
// setjmp lives in a small function (named guarded_…) that holds plain values only; all owners of memory stay outside.
#include <cstdio>  // jpeglib.h needs it before itself
#include <jpeglib.h>
#include <jerror.h>

#include <algorithm>
#include <csetjmp>
#include <cstdlib>
#include <fmt/format.h>

#include "core/photo/jpeg_codec.h"

namespace cotter {

namespace {

// The library's error manager with our way out behind it.
struct Escape {
    jpeg_error_mgr manager;  // first: the library hands back a pointer to it
    std::jmp_buf way_out;
    bool bad_data = false;  // left because of a warning that means damage
};

[[noreturn]] void leave(j_common_ptr info) {
    auto* escape = reinterpret_cast<Escape*>(info->err);
    std::longjmp(escape->way_out, 1);
}

// Some cameras pad the end of the picture with a few bytes; more than that is a hole in the data.
constexpr int kMostPadding = 64;

bool means_damage(const jpeg_error_mgr& manager) {
    switch (manager.msg_code) {
        case JWRN_EXTRANEOUS_DATA:
            return manager.msg_parm.i[0] > kMostPadding;
        case JWRN_JFIF_MAJOR:
        case JWRN_ADOBE_XFORM:
        case JWRN_BOGUS_ICC:
            return false;
        default:
            return true;
    }
}

void on_message(j_common_ptr info, int level) {
    auto* escape = reinterpret_cast<Escape*>(info->err);
    if (level >= 0 || !means_damage(escape->manager)) return;
    escape->bad_data = true;
    leave(info);
}

void set_up(Escape& escape, jpeg_error_mgr*& slot) {
    slot = jpeg_std_error(&escape.manager);
    escape.manager.error_exit = leave;
    escape.manager.emit_message = on_message;
}

// --- Decoding

struct Decoder {
    jpeg_decompress_struct info{};
    Escape escape;
    Decoder() { set_up(escape, info.err); }
    Decoder(const Decoder&) = delete;
    Decoder& operator=(const Decoder&) = delete;
    ~Decoder() { jpeg_destroy_decompress(&info); }
};

bool guarded_start(Decoder& d, ByteView bytes, unsigned scale, bool cmyk) {
    if (setjmp(d.escape.way_out) != 0) return false;
    jpeg_create_decompress(&d.info);
    jpeg_save_markers(&d.info, JPEG_APP0 + 2, 0xFFFF);
    jpeg_mem_src(&d.info, bytes.data(), static_cast<unsigned long>(bytes.size()));  // 32 bits on some systems
    jpeg_read_header(&d.info, TRUE);
    d.info.scale_num = scale;
    d.info.scale_denom = 8;
    d.info.dct_method = JDCT_ISLOW;
    d.info.out_color_space = cmyk ? JCS_CMYK : JCS_RGB;
    jpeg_start_decompress(&d.info);
    return true;
}

// Reads rows from output_scanline on, at most up to `until`. `out` is where row 0 goes; with a
// stride of 0 each row overwrites the one before.
bool guarded_rows(Decoder& d, std::uint8_t* out, std::size_t stride, unsigned until) {
    if (setjmp(d.escape.way_out) != 0) return false;
    while (d.info.output_scanline < until) {
        JSAMPROW rows[1] = {out + d.info.output_scanline * stride};
        jpeg_read_scanlines(&d.info, rows, 1);
    }
    return true;
}

bool guarded_finish(Decoder& d) {
    if (setjmp(d.escape.way_out) != 0) return false;
    jpeg_finish_decompress(&d.info);
    return true;
}

bool guarded_profile(Decoder& d, JOCTET** bytes, unsigned* size) {
    if (setjmp(d.escape.way_out) != 0) return false;
    return jpeg_read_icc_profile(&d.info, bytes, size) != FALSE;
}

Bytes profile_of(Decoder& d) {
    constexpr unsigned kMostProfile = 1 << 20;
    JOCTET* bytes = nullptr;
    unsigned size = 0;
    if (!guarded_profile(d, &bytes, &size)) return {};
    const Bytes out(bytes, bytes + (size <= kMostProfile ? size : 0));
    std::free(bytes);
    return out;
}

unexpected<Error> decode_failure(Decoder& d, const PhotoInfo& info, std::size_t size) {
    constexpr const char* kTodo = "copy it again from the camera or take it anew";
    if (!d.escape.bad_data && d.escape.manager.msg_code == JERR_OUT_OF_MEMORY)
        return fail(Errc::refused, "there is not enough memory for this photo", {}, "save a smaller copy and add that");
    const unsigned scale = std::max(1u, d.info.scale_num);
    const unsigned row = std::min(d.info.output_scanline * 8 / scale, static_cast<unsigned>(info.stored_height));
    const std::size_t left = d.info.src != nullptr ? std::min(d.info.src->bytes_in_buffer, size) : size;
    return fail(Errc::damaged, "the photo is damaged",
                fmt::format("row {} of {}, byte {} of {}", row, info.stored_height, size - left, size), kTodo);
}

// Adobe's programs store CMYK inverted (255 = no ink) and say so by their marker; others store 255 = full ink.
void cmyk_to_rgb(const std::uint8_t* in, std::uint8_t* out, int count, bool inverted) {
    const unsigned flip = inverted ? 0 : 255;
    for (int i = 0; i < count; ++i, in += 4, out += 3) {
        const unsigned k = in[3] ^ flip;
        for (int c = 0; c < 3; ++c) out[c] = static_cast<std::uint8_t>(((in[c] ^ flip) * k + 127) / 255);
    }
}

bool read_cmyk(Decoder& d, Image& out) {
    Bytes row(std::size_t{4} * out.width);
    for (int y = 0; y < out.height; ++y) {
        if (!guarded_rows(d, row.data(), 0, static_cast<unsigned>(y) + 1)) return false;
        cmyk_to_rgb(row.data(), out.row(y), out.width, d.info.saw_Adobe_marker != FALSE);
    }
    return true;
}

unsigned scale_for(const PhotoInfo& info, int max_side) {
    const std::int64_t longest = std::max(info.stored_width, info.stored_height);
    for (const unsigned eighths : {1u, 2u, 4u})
        if (longest * eighths / 8 >= std::int64_t{max_side} * 15 / 16) return eighths;
    return 8;
}

// --- Encoding

struct Encoder {
    jpeg_compress_struct info{};
    Escape escape;
    unsigned char* bytes = nullptr;
    unsigned long size = 0;
    Encoder() { set_up(escape, info.err); }
    Encoder(const Encoder&) = delete;
    Encoder& operator=(const Encoder&) = delete;
    ~Encoder() {
        jpeg_destroy_compress(&info);
        std::free(bytes);
    }
};

bool guarded_encode(Encoder& e, const Image& image, int quality) {
    if (setjmp(e.escape.way_out) != 0) return false;
    jpeg_create_compress(&e.info);
    jpeg_mem_dest(&e.info, &e.bytes, &e.size);
    e.info.image_width = static_cast<JDIMENSION>(image.width);
    e.info.image_height = static_cast<JDIMENSION>(image.height);
    e.info.input_components = 3;
    e.info.in_color_space = JCS_RGB;
    jpeg_set_defaults(&e.info);
    jpeg_set_quality(&e.info, quality, TRUE);
    e.info.dct_method = JDCT_ISLOW;
    if (quality >= 90) e.info.comp_info[0].h_samp_factor = e.info.comp_info[0].v_samp_factor = 1;
    jpeg_start_compress(&e.info, TRUE);
    if (!image.icc.empty()) jpeg_write_icc_profile(&e.info, image.icc.data(), static_cast<unsigned>(image.icc.size()));
    while (e.info.next_scanline < e.info.image_height) {
        JSAMPROW rows[1] = {const_cast<JSAMPROW>(image.row(static_cast<int>(e.info.next_scanline)))};
        jpeg_write_scanlines(&e.info, rows, 1);
    }
    jpeg_finish_compress(&e.info);
    return true;
}

}  // namespace

Result<Image> decode_jpeg(ByteView bytes, const PhotoInfo& info, int max_side) {
    Decoder d;
    const bool cmyk = info.components == 4;
    if (!guarded_start(d, bytes, scale_for(info, max_side), cmyk)) return decode_failure(d, info, bytes.size());
    Image image = make_image(static_cast<int>(d.info.output_width), static_cast<int>(d.info.output_height));
    const std::size_t stride = std::size_t{3} * image.width;
    const bool read = cmyk ? read_cmyk(d, image) : guarded_rows(d, image.pixels.data(), stride, d.info.output_height);
    if (!read) return decode_failure(d, info, bytes.size());
    if (info.components == 3) image.icc = profile_of(d);
    if (!guarded_finish(d)) return decode_failure(d, info, bytes.size());
    return image;
}

Result<Bytes> encode_jpeg(const Image& image, int quality) {
    if (image.width < 1 || image.height < 1 || image.width > 65'500 || image.height > 65'500)
        return fail(Errc::refused,
                    fmt::format("a picture of {} × {} pixels cannot be written as JPEG", image.width, image.height));
    Encoder e;
    if (!guarded_encode(e, image, std::clamp(quality, 1, 100)))
        return fail(Errc::io, "the picture could not be written as JPEG", {}, "close other programs and try again");
    return Bytes(e.bytes, e.bytes + e.size);
}

}  // namespace cotter

// The signatures of the picture formats that people send, and the advice for those that cannot be taken in.
#include "core/photo/media.h"

#include <algorithm>
#include <array>
#include <string>

namespace cotter {

namespace {

using namespace std::string_view_literals;

struct Signature {
    std::size_t at;
    std::string_view bytes;
    Media media;
};

constexpr std::array kSignatures{
    Signature{0, "\xFF\xD8\xFF"sv, Media::jpeg},
    Signature{0, "\x89PNG\r\n\x1A\n"sv, Media::png},
    Signature{0, "GIF87a"sv, Media::gif},
    Signature{0, "GIF89a"sv, Media::gif},
    Signature{8, "WEBP"sv, Media::webp},
    Signature{0, "II*\0"sv, Media::tiff},
    Signature{0, "MM\0*"sv, Media::tiff},
    Signature{0, "%PDF-"sv, Media::pdf},
    Signature{4, "ftypheic"sv, Media::heic},
    Signature{4, "ftypheix"sv, Media::heic},
    Signature{4, "ftyphevc"sv, Media::heic},
    Signature{4, "ftyphevx"sv, Media::heic},
    Signature{4, "ftypheim"sv, Media::heic},
    Signature{4, "ftypheis"sv, Media::heic},
    Signature{4, "ftypmif1"sv, Media::heic},
    Signature{4, "ftypmsf1"sv, Media::heic},
    Signature{4, "ftypavif"sv, Media::avif},
    Signature{4, "ftypavis"sv, Media::avif},
    Signature{4, "ftyp"sv, Media::video},
    Signature{0, "\x1A\x45\xDF\xA3"sv, Media::video},
    Signature{0, "BM"sv, Media::bmp},
};

std::string refusal(Media media) {
    switch (media) {
        case Media::heic:
            return "this is a HEIC photo, which cannot be shown everywhere";
        case Media::avif:
            return "this is an AVIF picture, which cannot be shown everywhere";
        case Media::video:
            return "this is a video, not a photo";
        case Media::gif:
            return "this is a GIF picture";
        case Media::bmp:
            return "this is a BMP picture";
        case Media::webp:
            return "this is a WebP picture";
        case Media::tiff:
            return "this is a TIFF or raw camera picture";
        case Media::pdf:
            return "this is a PDF document, not a photo";
        default:
            return "this is not a photo";
    }
}

std::string advice(Media media) {
    switch (media) {
        case Media::heic:
        case Media::avif:
            return "set the phone's camera to JPEG ('most compatible'), or share the photo as JPEG";
        case Media::video:
            return "take a photo instead";
        case Media::pdf:
            return "take a photo of the page instead";
        case Media::unknown:
            return "choose a JPEG or PNG file";
        default:
            return "save it as JPEG and add that";
    }
}

}  // namespace

Media recognise(ByteView bytes) {
    const std::string_view text = as_text(bytes);
    const auto fits = [&](const Signature& s) { return text.size() > s.at && text.substr(s.at).starts_with(s.bytes); };
    const auto it = std::find_if(kSignatures.begin(), kSignatures.end(), fits);
    return it == kSignatures.end() ? Media::unknown : it->media;
}

std::string_view media_type(Media media) {
    switch (media) {
        case Media::jpeg:
            return "image/jpeg";
        case Media::png:
            return "image/png";
        case Media::heic:
            return "image/heic";
        case Media::avif:
            return "image/avif";
        case Media::gif:
            return "image/gif";
        case Media::bmp:
            return "image/bmp";
        case Media::webp:
            return "image/webp";
        case Media::tiff:
            return "image/tiff";
        case Media::pdf:
            return "application/pdf";
        case Media::video:
            return "video/mp4";
        case Media::unknown:
            break;
    }
    return "application/octet-stream";
}

std::string_view media_extension(Media media) {
    if (media == Media::jpeg) return "jpg";
    return media == Media::png ? "png" : "";
}

Result<> accept_media(Media media) {
    if (media == Media::jpeg || media == Media::png) return {};
    return fail(Errc::refused, refusal(media), {}, advice(media));
}

}  // namespace cotter

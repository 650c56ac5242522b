// What kind of file some bytes are, by their content alone; the name a file came under says nothing.
#pragma once

#include <string_view>

#include "core/base/error.h"
#include "core/base/bytes.h"

namespace cotter {

enum class Media { jpeg, png, heic, avif, video, gif, bmp, webp, tiff, pdf, unknown };

// Looks at the first 16 bytes only.
[[nodiscard]] Media recognise(ByteView bytes);

[[nodiscard]] std::string_view media_type(Media media);       // "image/jpeg"; "application/octet-stream" if unknown
[[nodiscard]] std::string_view media_extension(Media media);  // "jpg", "png"; empty for kinds that are not taken in

// Passes jpeg and png; for everything else one clear line that says what to do.
[[nodiscard]] Result<> accept_media(Media media);

}  // namespace cotter

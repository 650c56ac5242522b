// Private data out of a photo, with its picture untouched to the bit. For every photo that leaves. Any thread.
#pragma once

#include "core/base/bytes.h"
#include "core/base/error.h"

namespace cotter {

// The same photo without position, serial numbers, names, maker notes, embedded thumbnails, XMP, IPTC, comments, texts,
// further pictures and whatever follows its end. What stays: the compressed picture byte for byte, colour profile and
// colour transform, and a new Exif block with orientation and time taken (with its offset) only.
// A JPEG is not encoded again; a PNG keeps its pixel and colour chunks. Clean photos come out the same bytes again.
// Fails as probe() does.
[[nodiscard]] Result<Bytes> without_private_data(ByteView bytes);

}  // namespace cotter

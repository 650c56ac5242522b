// Fuzzes everything that reads the bytes of a photo from outside: probe, decoding, taking private data out.
// What is promised of photos that pass is checked: clean photos are clean, stay clean, and look the same.
#include <cstdlib>

#include "core/photo/clean.h"
#include "core/photo/image.h"

namespace {

void require(bool promise) {
    if (!promise) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace cotter;
    const ByteView bytes(data, size);
    const auto info = probe(bytes);
    const auto cleaned = without_private_data(bytes);
    require(info.has_value() == cleaned.has_value());
    if (!info || std::int64_t{info->width} * info->height > 4'000'000) return 0;  // larger ones only take longer

    const auto cleaned_info = probe(*cleaned);
    require(cleaned_info && !cleaned_info->private_data.any());
    require(cleaned_info->orientation == info->orientation && cleaned_info->taken == info->taken);
    require(*without_private_data(*cleaned) == *cleaned);

    const auto image = decode_upright(bytes, 64);
    const auto same = decode_upright(*cleaned, 64);
    // The other way round need not hold: stray bytes between segments, which the decoder minds, are cleaned away.
    if (image) require(same && image->width <= 64 && image->height <= 64 && image->pixels == same->pixels);
    return 0;
}

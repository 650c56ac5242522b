// UUID text and making.
#include "core/base/id.h"

#include <fmt/format.h>

#include "core/base/bytes.h"

namespace cotter {

std::string Uuid::text() const {
    std::string hex = to_hex(bytes);
    for (const std::size_t at : {20, 16, 12, 8}) hex.insert(at, 1, '-');
    return hex;
}

Result<Uuid> Uuid::parse(std::string_view text) {
    std::string hex;
    bool shaped = text.size() == 36;
    for (std::size_t i = 0; shaped && i < text.size(); ++i) {
        const bool dash_here = i == 8 || i == 13 || i == 18 || i == 23;
        if (dash_here != (text[i] == '-'))
            shaped = false;
        else if (!dash_here)
            hex += text[i];
    }
    const Bytes raw = from_hex(hex);
    if (!shaped || raw.size() != 16) return fail(Errc::refused, "not an id (UUID)", fmt::format("'{}'", text));
    Uuid id;
    std::copy(raw.begin(), raw.end(), id.bytes.begin());
    return id;
}

Uuid Uuid::random(Random& random) {
    Uuid id;
    random.fill(id.bytes);
    id.bytes[6] = static_cast<std::uint8_t>((id.bytes[6] & 0x0f) | 0x40);
    id.bytes[8] = static_cast<std::uint8_t>((id.bytes[8] & 0x3f) | 0x80);
    return id;
}

}  // namespace cotter

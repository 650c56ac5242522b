// Letters that an earlier start has baked: where a program starts slowly and may keep something, the next start takes
// them instead, which saves a third of the first frame. Kept bytes are only for the very program that made them.
#pragma once

#include <optional>

#include "app/ui/fonts.h"

namespace cotter {

// What letters were baked for: other ones do not fit.
struct BakedFor {
    float type = 0;       // Sizes::type
    float px_per_dp = 0;  // pixels
    Letters letters = Letters::plain;
    bool operator==(const BakedFor&) const = default;
};

// The atlas as bake_fonts() left it.
[[nodiscard]] Bytes keep_letters(const ImFontAtlas& atlas, const BakedFor& what);

// What the bytes say that they are for; nullopt: they are no kept letters.
[[nodiscard]] std::optional<BakedFor> kept_for(ByteView kept);

// Into an atlas whose fonts were added and not built. False: damaged, or of other fonts; then the atlas has to be
// built.
[[nodiscard]] bool put_back_letters(ImFontAtlas& atlas, ByteView kept);

}  // namespace cotter

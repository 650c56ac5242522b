// The fonts: read from the bundle, baked for a type size and a pixel density. For the UiStage.
#pragma once

#include "app/ui/ui.h"
#include "core/base/bytes.h"
#include "core/base/files.h"

struct ImFontAtlas;

namespace cotter {

// TrueType or OpenType files; the fallback has the characters that the first choice lacks.
struct FontFiles {
    Bytes regular, bold;
    Bytes fallback_regular, fallback_bold;
};

// From <share>/fonts. Fails as read_file does.
[[nodiscard]] Result<FontFiles> load_font_files(Files& files, const std::string& share);

// Each has those before it. Most screens do with the plain ones, an eighth of all: the first frame is there the sooner.
enum class Letters { plain, western, all };

// The least that has all of `utf8` that any has. Malformed bytes count as U+FFFD, which is plain.
[[nodiscard]] Letters letters_for(std::string_view utf8);

// Bakes all faces anew into `atlas`, which keeps pointing into `files`. Sizes are those of `sizes` × px_per_dp, but
// never more than 64 px to the em, to keep the texture below 2,048 × 4,096. `kept`: see kept_letters.h; taken when they
// were baked for the same.
[[nodiscard]] Faces bake_fonts(ImFontAtlas& atlas, const FontFiles& files, const Sizes& sizes, float px_per_dp,
                               Letters letters, ByteView kept = {});

// Line height by em of a font file, from its own tables: (ascent − descent) / units per em; 1.2 when it is damaged.
[[nodiscard]] float line_ratio(ByteView font);

}  // namespace cotter

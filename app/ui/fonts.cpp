// See fonts.h.
#include "app/ui/fonts.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "app/ui/kept_letters.h"

namespace cotter {

namespace {

constexpr float kMostPx = 64;
constexpr std::uint64_t kMostBytes = 8 << 20;

// Pairs, closed by 0. ASCII, the signs that our own texts use.
constexpr ImWchar kPlain[] = {0x0020, 0x007E, 0x00B0, 0x00B1, 0x00B7, 0x00B7, 0x00BD, 0x00BD, 0x00D7, 0x00D7,
                              0x2013, 0x2014, 0x2018, 0x2019, 0x201C, 0x201D, 0x2026, 0x2026, 0x2190, 0x2193,
                              0x2212, 0x2212, 0x2248, 0x2248, 0x2264, 0x2265, 0xFFFD, 0xFFFD, 0};
// The same, West European Latin, punctuation, fractions, some mathematics.
constexpr ImWchar kWestern[] = {0x0020, 0x00FF, 0x2010, 0x2027, 0x2030, 0x203A, 0x20AC, 0x20AC, 0x2116,
                                0x2116, 0x2122, 0x2126, 0x2150, 0x215E, 0x2190, 0x2193, 0x2212, 0x2212,
                                0x2248, 0x2248, 0x2260, 0x2265, 0xFFFD, 0xFFFD, 0};
// The same, all Latin, Greek and Cyrillic.
constexpr ImWchar kAll[] = {0x0020, 0x017F, 0x0192, 0x0192, 0x0218, 0x021B, 0x0386, 0x03CE, 0x0401,
                            0x0451, 0x1E80, 0x1E85, 0x2010, 0x2027, 0x2030, 0x203A, 0x20AC, 0x20AC,
                            0x2116, 0x2116, 0x2122, 0x2126, 0x2150, 0x215E, 0x2190, 0x2193, 0x2212,
                            0x2212, 0x2248, 0x2248, 0x2260, 0x2265, 0xFFFD, 0xFFFD, 0};
constexpr ImWchar kFigures[] = {0x0020, 0x007E, 0x00B0, 0x00B1, 0x00B7, 0x00B7, 0x03A9,
                                0x03A9, 0x2126, 0x2126, 0x2212, 0x2212, 0};

std::uint32_t number(ByteView bytes, std::size_t at, std::size_t count) {
    std::uint32_t value = 0;
    for (std::size_t i = at; i < at + count; ++i) value = value << 8 | bytes[i];
    return value;
}

// Where a table of a TrueType or OpenType file starts, when all of `need` bytes are there.
std::optional<std::size_t> table(ByteView font, std::string_view tag, std::size_t need) {
    if (font.size() < 12) return std::nullopt;
    const std::size_t count = number(font, 4, 2);
    for (std::size_t i = 0; i < count && 12 + 16 * (i + 1) <= font.size(); ++i) {
        const std::size_t entry = 12 + 16 * i;
        if (as_text(font.subspan(entry, 4)) != tag) continue;
        const std::size_t start = number(font, entry + 8, 4);
        return start + need <= font.size() ? std::optional(start) : std::nullopt;
    }
    return std::nullopt;
}

class Baker {
public:
    Baker(ImFontAtlas& atlas, float px_per_dp) : atlas_(atlas), px_per_dp_(px_per_dp) {}

    Face face(const Bytes& first, const Bytes& fallback, float em_dp, const ImWchar* letters) {
        const float em_px = std::min(kMostPx, std::round(em_dp * px_per_dp_));
        Face face;
        face.ratio = line_ratio(first);
        face.font = add(first, em_px * face.ratio, letters, false);
        add(fallback, em_px * line_ratio(fallback), letters, true);
        return face;
    }

private:
    ImFont* add(const Bytes& bytes, float line_px, const ImWchar* letters, bool merge) {
        ImFontConfig config;
        config.OversampleH = line_px < 30 ? 2 : 1;
        config.PixelSnapH = true;
        config.MergeMode = merge;
        // ImGui takes a non-const pointer but only reads. It copies what it is told that it does not own: it is told so
        // after it has taken the bytes.
        ImFont* font = atlas_.AddFontFromMemoryTTF(const_cast<std::uint8_t*>(bytes.data()),
                                                   static_cast<int>(bytes.size()), line_px, &config, letters);
        atlas_.ConfigData.back().FontDataOwnedByAtlas = false;
        return font;
    }

    ImFontAtlas& atlas_;
    float px_per_dp_;
};

const ImWchar* pairs_of(Letters letters) {
    if (letters == Letters::all) return kAll;
    return letters == Letters::western ? kWestern : kPlain;
}

bool among(const ImWchar* pairs, unsigned int letter) {
    for (; *pairs != 0; pairs += 2)
        if (letter >= pairs[0] && letter <= pairs[1]) return true;
    return false;
}

}  // namespace

Result<FontFiles> load_font_files(Files& files, const std::string& share) {
    const std::string folder = join_path(share, "fonts");
    FontFiles out;
    COTTER_ASSIGN(out.regular, read_file(files, join_path(folder, "B612-Regular.otf"), kMostBytes));
    COTTER_ASSIGN(out.bold, read_file(files, join_path(folder, "B612-Bold.otf"), kMostBytes));
    COTTER_ASSIGN(out.fallback_regular, read_file(files, join_path(folder, "DejaVuSans.ttf"), kMostBytes));
    COTTER_ASSIGN(out.fallback_bold, read_file(files, join_path(folder, "DejaVuSans-Bold.ttf"), kMostBytes));
    return out;
}

float line_ratio(ByteView font) {
    const auto head = table(font, "head", 20);
    const auto hhea = table(font, "hhea", 8);
    if (!head || !hhea) return 1.2F;
    const auto em = static_cast<float>(number(font, *head + 18, 2));
    const auto ascent = static_cast<std::int16_t>(number(font, *hhea + 4, 2));
    const auto descent = static_cast<std::int16_t>(number(font, *hhea + 6, 2));
    return em > 0 && ascent > descent ? static_cast<float>(ascent - descent) / em : 1.2F;
}

Letters letters_for(std::string_view utf8) {
    Letters least = Letters::plain;
    const char* end = utf8.data() + utf8.size();
    for (const char* at = utf8.data(); at < end;) {
        unsigned int letter = static_cast<unsigned char>(*at);
        at += letter < 0x80 ? 1 : ImTextCharFromUtf8(&letter, at, end);
        if (letter < 0x7F || among(kPlain, letter)) continue;
        if (!among(kWestern, letter)) return Letters::all;
        least = Letters::western;
    }
    return least;
}

Faces bake_fonts(ImFontAtlas& atlas, const FontFiles& files, const Sizes& sizes, float px_per_dp, Letters letters,
                 ByteView kept) {
    const ImWchar* const text = pairs_of(letters);
    atlas.Clear();
    atlas.Flags |= ImFontAtlasFlags_NoMouseCursors;
    atlas.TexDesiredWidth = 2048;
    Baker baker(atlas, px_per_dp);
    Faces faces;
    faces.body = baker.face(files.regular, files.fallback_regular, sizes.body(), text);
    faces.bold = baker.face(files.bold, files.fallback_bold, sizes.body(), text);
    faces.small = baker.face(files.regular, files.fallback_regular, sizes.small(), text);
    faces.title = baker.face(files.bold, files.fallback_bold, sizes.title(), text);
    faces.figures = baker.face(files.bold, files.fallback_bold, sizes.figures(), kFigures);
    faces.put_back = kept_for(kept) == BakedFor{sizes.type, px_per_dp, letters} && put_back_letters(atlas, kept);
    if (!faces.put_back) atlas.Build();
    for (ImFont* font : atlas.Fonts) font->Scale = 1 / px_per_dp;
    return faces;
}

}  // namespace cotter

// See kept_letters.h.
#include "app/ui/kept_letters.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <cstring>
#include <span>
#include <type_traits>

namespace cotter {

namespace {

constexpr std::uint32_t kMark = 0x434C5432;  // of this layout
constexpr int kMostSide = 4096;              // px, of the texture
constexpr unsigned kMostLetter = 0xFFFF;     // the largest code point that is ever baked

struct Head {
    std::uint32_t mark = kMark;
    BakedFor what;
    int width = 0, height = 0;     // px, of the texture
    int white_x = 0, white_y = 0;  // where the white pixels lie in it
    int lines_x = 0, lines_y = 0;  // and the baked lines
    int fonts = 0;
};

struct FontHead {
    float size = 0, ascent = 0, descent = 0;
    int glyphs = 0;
};

class Writer {
public:
    template <class T>
    void put(const T& value) {
        static_assert(std::is_trivially_copyable_v<T>);
        put(&value, sizeof value);
    }
    void put(const void* from, std::size_t count) {
        const auto* const bytes = static_cast<const std::uint8_t*>(from);
        out.insert(out.end(), bytes, bytes + count);
    }
    Bytes out;
};

// Gives nothing once it was asked for more than there is.
class Reader {
public:
    explicit Reader(ByteView bytes) : rest_(bytes) {}
    template <class T>
    bool take(T& value) {
        static_assert(std::is_trivially_copyable_v<T>);
        return take(&value, sizeof value);
    }
    bool take(void* to, std::size_t count) {
        if (count > rest_.size()) return false;
        std::memcpy(to, rest_.data(), count);
        rest_ = rest_.subspan(count);
        return true;
    }
    [[nodiscard]] std::size_t left() const { return rest_.size(); }

private:
    ByteView rest_;
};

bool inside(const ImFontAtlasCustomRect& rect, const Head& head) {
    return rect.X + rect.Width <= head.width && rect.Y + rect.Height <= head.height;
}

bool place(ImFontAtlas& atlas, const Head& head) {
    if (head.width <= 0 || head.height <= 0 || head.width > kMostSide || head.height > kMostSide) return false;
    ImFontAtlasCustomRect& white = *atlas.GetCustomRectByIndex(atlas.PackIdMouseCursors);
    ImFontAtlasCustomRect& lines = *atlas.GetCustomRectByIndex(atlas.PackIdLines);
    white.X = static_cast<unsigned short>(head.white_x);
    white.Y = static_cast<unsigned short>(head.white_y);
    lines.X = static_cast<unsigned short>(head.lines_x);
    lines.Y = static_cast<unsigned short>(head.lines_y);
    return inside(white, head) && inside(lines, head);
}

// A font has one source, and those merged into it follow.
bool take_font(ImFontAtlas& atlas, ImFont& font, Reader& kept) {
    FontHead head;
    if (!kept.take(head) || head.glyphs <= 0 || head.glyphs > static_cast<int>(kMostLetter)) return false;
    auto* const source = const_cast<ImFontConfig*>(font.ConfigData);  // of the atlas, which is ours to change
    if (source == nullptr || source->SizePixels != head.size) return false;
    ImFontAtlasBuildSetupFont(&atlas, &font, source, head.ascent, head.descent);
    font.Glyphs.resize(head.glyphs);
    if (!kept.take(font.Glyphs.Data, sizeof(ImFontGlyph) * static_cast<std::size_t>(head.glyphs))) return false;
    for (const ImFontGlyph& glyph : font.Glyphs)
        if (glyph.Codepoint > kMostLetter) return false;
    return true;
}

bool take_all(ImFontAtlas& atlas, Reader& kept) {
    Head head;
    if (!kept.take(head) || head.mark != kMark || head.fonts != atlas.Fonts.Size) return false;
    ImFontAtlasBuildInit(&atlas);
    if (!place(atlas, head)) return false;
    for (ImFont* font : atlas.Fonts)
        if (!take_font(atlas, *font, kept)) return false;
    const auto pixels = static_cast<std::size_t>(head.width) * static_cast<std::size_t>(head.height);
    if (kept.left() != pixels) return false;
    atlas.TexWidth = head.width;
    atlas.TexHeight = head.height;
    atlas.TexUvScale = {1 / static_cast<float>(head.width), 1 / static_cast<float>(head.height)};
    atlas.TexPixelsAlpha8 = static_cast<unsigned char*>(ImGui::MemAlloc(pixels));
    return kept.take(atlas.TexPixelsAlpha8, pixels);
}

}  // namespace

Bytes keep_letters(const ImFontAtlas& atlas, const BakedFor& what) {
    const ImFontAtlasCustomRect& white = atlas.CustomRects[atlas.PackIdMouseCursors];
    const ImFontAtlasCustomRect& lines = atlas.CustomRects[atlas.PackIdLines];
    Writer kept;
    kept.put(Head{kMark, what, atlas.TexWidth, atlas.TexHeight, white.X, white.Y, lines.X, lines.Y, atlas.Fonts.Size});
    for (const ImFont* font : atlas.Fonts) {
        kept.put(FontHead{font->FontSize, font->Ascent, font->Descent, font->Glyphs.Size});
        kept.put(font->Glyphs.Data, static_cast<std::size_t>(font->Glyphs.size_in_bytes()));
    }
    kept.put(atlas.TexPixelsAlpha8,
             static_cast<std::size_t>(atlas.TexWidth) * static_cast<std::size_t>(atlas.TexHeight));
    return std::move(kept.out);
}

std::optional<BakedFor> kept_for(ByteView kept) {
    Head head;
    if (!Reader(kept).take(head) || head.mark != kMark) return std::nullopt;
    const Letters letters = head.what.letters;
    if (letters < Letters::plain || letters > Letters::all) return std::nullopt;
    return head.what;
}

bool put_back_letters(ImFontAtlas& atlas, ByteView kept) {
    Reader reader(kept);
    if (!take_all(atlas, reader)) {
        atlas.ClearTexData();
        return false;
    }
    ImFontAtlasBuildFinish(&atlas);
    return true;
}

}  // namespace cotter

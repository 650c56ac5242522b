// Tiles in a grid; see row.h.
#include <algorithm>

#include "app/ui/grade_mark.h"
#include "app/ui/photo.h"
#include "app/ui/press.h"
#include "app/ui/row.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kTilePad = 14;
constexpr Cuts kTileCuts{false, false, true, false};  // a picture keeps its corners

struct Grid {
    std::size_t columns = 1;
    float cell = 0;     // width
    float picture = 0;  // height; 0 when no tile has one
};

Grid plan_grid(const UiContext& ui, std::span<const TileSpec> specs, float least, float width) {
    Grid grid;
    const float wanted = least * (1 + (ui.sizes.type - 1) * 0.6F);
    const auto fits = static_cast<std::size_t>(std::max(1.0F, (width + Sizes::gap) / (wanted + Sizes::gap)));
    grid.columns = std::min(fits, std::max<std::size_t>(specs.size(), 2));
    grid.cell = (width - Sizes::gap * static_cast<float>(grid.columns - 1)) / static_cast<float>(grid.columns);
    const bool pictures = std::any_of(specs.begin(), specs.end(), [](const TileSpec& t) { return !t.picture.empty(); });
    if (pictures) grid.picture = grid.cell * 0.66F;
    return grid;
}

float mark_room(const UiContext& ui, const TileSpec& spec) {
    return spec.grade ? 26 * std::min(ui.sizes.type, 1.5F) + Sizes::gap : 0;
}

struct TileLines {
    Laid label, under;
    float height;
};

TileLines lay_words(const UiContext& ui, const TileSpec& spec, float width) {
    TileLines words{lay_text(ui, spec.name.label, Type::bold, width - mark_room(ui, spec)),
                    lay_text(ui, spec.under, Type::small, width), 0};
    words.height = words.label.height + (spec.under.empty() ? 0 : words.under.height + 2);
    return words;
}

float tile_height(const UiContext& ui, const TileSpec& spec, const Grid& grid) {
    const float words = lay_words(ui, spec, grid.cell - 2 * kTilePad).height;
    const float icon = grid.picture == 0 && spec.icon != Icon::none ? 36 * ui.sizes.type : 0;
    return std::max(Sizes::main + Sizes::gap, grid.picture + icon + words + 2 * kTilePad);
}

void draw_face(UiContext& ui, const TileSpec& spec, const Rect& rect, float picture, const Paint& paint) {
    const float side = 32 * std::min(ui.sizes.type, 1.5F);
    const Rect box{rect.x + 2, rect.y + 2, rect.w - 4, picture};
    if (picture > 0 && !spec.picture.empty()) return draw_picture(ui, spec.picture, box);
    if (spec.icon == Icon::none) return;
    if (picture > 0)
        draw_icon(spec.icon, {box.middle().x - side / 2, box.middle().y - side / 2, side, side}, ui.theme.second);
    else
        draw_icon(spec.icon, {rect.x + kTilePad, rect.y + kTilePad, side, side}, paint.text);
}

bool tile(UiContext& ui, const TileSpec& spec, const Rect& rect, const Grid& grid) {
    const Press press = press_area(ui, spec.name, rect, {Role::tile, spec.enabled, spec.chosen, false, spec.under});
    const Paint& paint = ui.paint(!spec.enabled ? Tone::off : spec.chosen ? Tone::chosen : Tone::plate);
    draw_press_plate(ui, rect, press, paint, kTileCuts);
    draw_face(ui, spec, rect, grid.picture, paint);
    if (spec.chosen) draw_witness({rect.x + 3, rect.y + 4, Sizes::stripe, rect.h - 8}, ui.theme.witness);
    const TileLines words = lay_words(ui, spec, rect.w - 2 * kTilePad);
    float y = rect.bottom() - kTilePad - words.height;
    const float mark = mark_room(ui, spec);
    if (spec.grade)
        draw_sign(sign_of(*spec.grade), {rect.x + kTilePad, y, mark - Sizes::gap, words.label.height}, paint.text);
    const float width = rect.w - 2 * kTilePad;
    draw_text(ui, words.label, {rect.x + kTilePad + mark, y, width - mark, words.label.height},
              {paint.text, paint.ground, Align::left, true, press.id});
    y += words.label.height + 2;
    if (!spec.under.empty())
        draw_text(ui, words.under, {rect.x + kTilePad, y, width, words.under.height},
                  {spec.enabled ? ui.theme.second : paint.text, paint.ground, Align::left, true, press.id});
    return press.tapped;
}

}  // namespace

std::optional<std::size_t> tiles(UiContext& ui, std::string_view key, std::span<const TileSpec> specs,
                                 float least_width) {
    std::optional<std::size_t> tapped;
    const float width = room();
    const Grid grid = plan_grid(ui, specs, least_width, width);
    const IdScope scope(key);
    for (std::size_t first = 0; first < specs.size(); first += grid.columns) {
        const std::size_t end = std::min(specs.size(), first + grid.columns);
        float height = 0;
        for (std::size_t i = first; i < end; ++i) height = std::max(height, tile_height(ui, specs[i], grid));
        const Rect line = take_space(width, height);
        for (std::size_t i = first; i < end; ++i) {
            const float x = line.x + static_cast<float>(i - first) * (grid.cell + Sizes::gap);
            if (tile(ui, specs[i], {x, line.y, grid.cell, line.h}, grid)) tapped = i;
        }
    }
    return tapped;
}

}  // namespace cotter

// See screens.h: wear over the visits, and photos before and after.
#include <algorithm>

#include "app/desk/screens.h"
#include "app/ui/photo.h"
#include "app/ui/press.h"
#include "app/ui/text.h"
#include "app/ui/wear_plot.h"
#include "app/ui/widgets.h"

namespace cotter::desk {

namespace {

constexpr float kPicture = 300;  // dp high
constexpr float kBeside = 14;    // dp left and right of what scrolls, for the bar

// The content stays in line with what is above it.
Rect beside(const Rect& area) {
    return {area.x - kBeside, area.y, area.w + kBeside, area.h};
}

void draw_one_wear(UiContext& ui, const Wear& wear) {
    paragraph(ui, wear.title);
    if (wear.told) {
        std::vector<WearPoint> points;
        for (const Wear::Point& p : wear.points) points.push_back({p.way, p.thickness});
        wear_plot(ui, {points, wear.limit, wear.end, wear.end_early, wear.end_late, wear.top, wear.bottom, wear.first,
                       wear.last, wear.ends});
    }
    paragraph(ui, wear.says, true);
    paragraph(ui, "Limit: " + wear.source, true);
    space(Sizes::pad);
}

// A picture with its word below it.
void draw_side(UiContext& ui, const char* word, const std::string& photo) {
    const Rect box = take_space(room(), kPicture);
    const Paint& plate = ui.paint(Tone::plate);
    draw_plate(box, {plate.ground, plate.edge, Sizes::edge, 0, kNoCuts});
    draw_picture(ui, photo, grown(box, -Sizes::edge));
    paragraph(ui, word, true);
}

}  // namespace

void draw_wear(UiContext& ui, const Trailer& trailer, const Rect& area) {
    scroll_area(ui, {"wear", kBeside, Sizes::gap}, beside(area), [&] {
        if (trailer.wear.empty()) paragraph(ui, "No lining, rotor or tread was measured yet at any visit.");
        const std::size_t half = (trailer.wear.size() + 1) / 2;
        const auto column = [&](std::size_t from, std::size_t to) {
            return [&ui, &trailer, from, to] {
                for (std::size_t i = from; i < to; ++i) {
                    const IdScope scope(trailer.wear[i].title);
                    draw_one_wear(ui, trailer.wear[i]);
                }
            };
        };
        side_by_side(ui, 0.5F, 380, column(0, half), column(half, trailer.wear.size()));
    });
}

void draw_pairs(UiContext& ui, const Trailer& trailer, const Rect& area) {
    scroll_area(ui, {"pairs", kBeside, Sizes::gap}, beside(area), [&] {
        if (trailer.pairs.empty()) paragraph(ui, "No visit has the same shot both before and after the work.");
        for (const PhotoPair& pair : trailer.pairs) {
            const IdScope scope(pair.key);
            paragraph(ui, pair.title);
            side_by_side(
                ui, 0.5F, 300, [&] { draw_side(ui, "Before", pair.before); },
                [&] { draw_side(ui, "After", pair.after); });
            space(Sizes::pad);
        }
    });
}

}  // namespace cotter::desk

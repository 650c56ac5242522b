// See photo.h.
#include "app/ui/photo.h"

#include <imgui.h>

#include <algorithm>

#include "app/ui/draw.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

int wanted_px(const UiContext& ui, const Rect& box) {
    return static_cast<int>(std::max(box.w, box.h) * ui.px_per_dp);
}

}  // namespace

Rect fitted(float width, float height, const Rect& box) {
    const float scale = std::min(box.w / width, box.h / height);
    const float w = width * scale;
    const float h = height * scale;
    return {box.x + (box.w - w) / 2, box.y + (box.h - h) / 2, w, h};
}

void draw_picture(UiContext& ui, std::string_view id, const Rect& box) {
    if (seen_part(box).empty()) return;  // nobody asks for what is scrolled away
    draw_fill(box, ui.paint(Tone::off).ground);
    const Picture picture = ui.pictures.picture(id, wanted_px(ui, box));
    const float side = std::min({48.0F, box.w / 2, box.h / 2});
    if (picture.texture == nullptr)
        return draw_icon(Icon::camera, {box.middle().x - side / 2, box.middle().y - side / 2, side, side},
                         ui.theme.second);
    const Rect at = fitted(static_cast<float>(picture.width), static_cast<float>(picture.height), box);
    ImGui::GetWindowDrawList()->AddImage(picture.texture, {at.x, at.y}, {at.right(), at.bottom()});
}

void draw_picture_part(UiContext& ui, std::string_view id, const Rect& box, const Rect& part) {
    draw_fill(box, ui.paint(Tone::off).ground);
    const int px = static_cast<int>(static_cast<float>(wanted_px(ui, box)) / std::max(0.05F, std::max(part.w, part.h)));
    const Picture picture = ui.pictures.picture(id, px);
    if (picture.texture == nullptr) return;
    // SDL refuses all that is drawn with a corner that rounding put a hair outside of the texture.
    const auto within = [](float u) { return std::clamp(u, 0.0F, 1.0F); };
    ImGui::GetWindowDrawList()->AddImage(picture.texture, {box.x, box.y}, {box.right(), box.bottom()},
                                         {within(part.x), within(part.y)},
                                         {within(part.right()), within(part.bottom())});
}

bool photo(UiContext& ui, const Name& name, std::string_view id, float height) {
    const Rect rect = take_space(room(), height);
    const Press press = press_area(ui, name, rect, {Role::picture, true, false, false, {}});
    draw_press_plate(ui, rect, press, ui.paint(Tone::plate), kNoCuts);
    draw_picture(ui, id, grown(rect, -Sizes::edge));
    return press.tapped;
}

}  // namespace cotter

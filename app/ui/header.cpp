// The header of a screen; see screen.h. Back on the left, redo, undo and help on the right, the title between them, or
// below them in the whole width when it would not fit.
#include <algorithm>
#include <cmath>

#include "app/ui/button.h"
#include "app/ui/press.h"
#include "app/ui/screen.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kKeySide = Sizes::target;

// The words of the header, laid for a width.
struct Words {
    Laid title, under, saved;
    float height = 0;
};

Words lay_words(const UiContext& ui, const HeaderSpec& spec, float width) {
    const float icon = spec.saved.empty() ? 0 : 24 * ui.sizes.type;
    Words words{lay_text(ui, spec.title, ui.low() ? Type::bold : Type::title, width),
                lay_text(ui, spec.under, Type::small, width), lay_text(ui, spec.saved, Type::small, width - icon), 0};
    words.height = words.title.height + (spec.under.empty() ? 0 : words.under.height) +
                   (spec.saved.empty() ? 0 : words.saved.height);
    return words;
}

// Quiet while all is well; on the ground of a caution when something is not on disk.
void draw_saved(UiContext& ui, const HeaderSpec& spec, const Laid& saved, Rect box) {
    const Paint& paint = ui.paint(spec.saved_ok ? Tone::bar : Tone::caution);
    const float icon = 20 * ui.sizes.type;
    if (!spec.saved_ok) draw_fill({box.x - 4, box.y, icon + saved.width + 16, box.h}, paint.ground);
    const Rgb colour = spec.saved_ok ? ui.theme.second : paint.text;
    draw_icon(spec.saved_ok ? Icon::pin : Icon::open_pin, {box.x, box.y, icon, box.h}, colour);
    box.x += 24 * ui.sizes.type;
    box.w -= 24 * ui.sizes.type;
    draw_text(ui, saved, box, {colour, paint.ground});
}

void draw_words(UiContext& ui, const HeaderSpec& spec, const Words& words, Rect box) {
    const Paint& bar = ui.paint(Tone::bar);
    draw_text(ui, words.title, {box.x, box.y, box.w, words.title.height}, {bar.text, bar.ground});
    box.y += words.title.height;
    if (!spec.under.empty()) {
        draw_text(ui, words.under, {box.x, box.y, box.w, words.under.height}, {ui.theme.second, bar.ground});
        box.y += words.under.height;
    }
    if (!spec.saved.empty()) draw_saved(ui, spec, words.saved, {box.x, box.y, box.w, words.saved.height});
}

ScreenTap draw_keys(UiContext& ui, const HeaderSpec& spec, const Rect& area) {
    ScreenTap tap = ScreenTap::none;
    const IdScope scope("header");
    if (spec.back && icon_button_at(ui, {ui.words.back, "back"}, Icon::back, {area.x, area.y, kKeySide, kKeySide}))
        tap = ScreenTap::back;
    float right = area.right();
    if (spec.help) {
        if (icon_button_at(ui, {ui.words.help, "help"}, Icon::help, {right - kKeySide, area.y, kKeySide, kKeySide}))
            tap = ScreenTap::help;
        right -= kKeySide + Sizes::gap;
    }
    if (spec.undo && icon_button_at(ui, {ui.words.undo, "undo"}, Icon::undo,
                                    {right - kKeySide, area.y, kKeySide, kKeySide}, spec.undo_enabled))
        tap = ScreenTap::undo;
    if (spec.undo) right -= kKeySide + Sizes::gap;
    if (spec.redo &&
        icon_button_at(ui, {ui.words.redo, "redo"}, Icon::redo, {right - kKeySide, area.y, kKeySide, kKeySide}))
        tap = ScreenTap::redo;
    if (tap == ScreenTap::none && spec.back && ui.take_back()) tap = ScreenTap::back;
    return tap;
}

}  // namespace

HeaderAnswer header_bar(UiContext& ui, const HeaderSpec& spec, const Rect& area) {
    const float pad = Sizes::gap;
    const float left = spec.back ? kKeySide + Sizes::pad : Sizes::gap;
    const float keys = static_cast<float>(spec.redo + spec.undo + spec.help) * (kKeySide + Sizes::gap);
    const Rect inner{area.x + pad, area.y + pad, area.w - 2 * pad, 0};
    const Words beside = lay_words(ui, spec, inner.w - left - keys);
    const Words under = lay_words(ui, spec, inner.w - 2 * Sizes::gap);
    const bool any_key = spec.back || spec.redo || spec.undo || spec.help;
    const bool below = any_key && (beside.title.lines.size() > 1 || kKeySide + 4 + under.height < beside.height);
    const Words& words = below ? under : beside;
    const float top = below ? kKeySide + 4 : 0;
    const float height = std::ceil(std::max(any_key ? kKeySide : 0, top + words.height) + 2 * pad);
    draw_fill({area.x, area.y - ui.insets.top, area.w, height + ui.insets.top}, ui.paint(Tone::bar).ground);
    draw_line({area.x, area.y + height}, {area.right(), area.y + height}, ui.paint(Tone::bar).edge);
    HeaderAnswer answer;
    answer.tap = draw_keys(ui, spec, inner);
    const float free = below ? 0 : std::max(0.0F, (height - 2 * pad - words.height) / 2);
    draw_words(ui, spec, words,
               {inner.x + (below ? Sizes::gap : left), inner.y + top + free,
                below ? inner.w - 2 * Sizes::gap : inner.w - left - keys, words.height});
    answer.rest = {area.x, area.y + height + 1, area.w, area.h - height - 1};
    return answer;
}

}  // namespace cotter

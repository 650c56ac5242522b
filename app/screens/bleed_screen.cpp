// See bleed_screen.h.
#include "app/screens/bleed_screen.h"

#include "app/screens/common.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_order(UiContext& ui, const BleedView& view, BleedState& state) {
    heading(ui, "Order and count");
    if (!view.no_order.empty()) return paragraph(ui, view.no_order);
    for (const BleedRow& r : view.order) {
        RowSpec spec;
        spec.value = r.value;
        spec.under = r.under;
        spec.icon = r.clean ? Icon::pin : Icon::open_pin;
        if (!row(ui, {r.label, "count " + r.place.text()}, spec)) continue;
        state.ask = BleedAsk::drawn;
        state.place = r.place;
    }
    paragraph(ui, "Longest line first is common practice. The manufacturer's order overrides it.", true);
}

// Each can be looked at again, and removed when it was keyed in by mistake.
void draw_rounds(UiContext& ui, const BleedView& view, BleedState& state) {
    if (view.rounds.empty()) return;
    heading(ui, "Counted so far");
    for (const RoundRow& r : view.rounds) {
        RowSpec spec;
        spec.value = r.value;
        spec.under = r.under;
        if (!row(ui, {r.label, "round " + r.id.text()}, spec)) continue;
        state.ask = BleedAsk::round;
        state.round = r.id;
    }
}

void draw_pipes(UiContext& ui, const BleedView& view, BleedState& state) {
    heading(ui, "Pipes");
    for (std::size_t i = 0; i < view.legs.size(); ++i) {
        RowSpec spec;
        const LegRow& leg = view.legs[i];
        const std::string under = leg.bore.empty() ? "inside diameter not entered" : leg.bore;
        spec.value = leg.value;
        spec.under = under;
        if (!row(ui, {view.legs[i].label, "leg " + std::to_string(i)}, spec)) continue;
        state.ask = BleedAsk::leg;
        state.leg = i;
    }
    if (!view.holds.empty()) paragraph(ui, view.holds, true);
}

void draw_remarks(UiContext& ui, const BleedView& view) {
    if (view.order.empty()) return;
    heading(ui, view.done ? "Every corner ran clear" : "Not done yet");
    for (const BleedRemark& r : view.remarks) paragraph(ui, upper_first(r.words) + ".", !r.blocks);
}

}  // namespace

void draw_bleed(UiContext& ui, const BleedView& view, BleedState& state, Commands& out) {
    const bool count = view.next.has_value();
    const std::string next = count ? "Count: " + view.order[*view.next].label : std::string();
    std::vector<ActionSpec> actions;
    if (count)
        actions.push_back({{next, "count next"}, Tone::strong, Icon::plus, true, true});
    else if (view.order.empty() && !view.to.empty())
        actions.push_back({{"Add a pipe", "add first"}, Tone::strong, Icon::plus, true, true});
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "bleed", actions), [&] {
        draw_order(ui, view, state);
        draw_rounds(ui, view, state);
        draw_pipes(ui, view, state);
        draw_remarks(ui, view);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0) && count) {
        state.ask = BleedAsk::drawn;
        state.place = view.order[*view.next].place;
    } else if (answer.tapped(0)) {
        state.ask = BleedAsk::pipe;
        state.from = view.from.back().code;
        state.to.clear();
    }
    if (state.ask != BleedAsk::none) draw_bleed_sheet(ui, view, state, out);
}

}  // namespace cotter

// See torque_screen.h.
#include "app/screens/torque_screen.h"

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/screens/wide.h"
#include "app/ui/nut_ring.h"
#include "app/ui/widgets.h"
#include "core/work/wrench.h"

namespace cotter {

namespace {

void click(const TorqueView& view, int nut, Commands& out) {
    if (view.running)
        out.push_back(TightenNut{view.torque.id, nut});
    else if (view.next_stage)
        out.push_back(StartPass{view.torque, view.stages[*view.next_stage].at_nut, nut});
}

void start(const TorqueView& view, std::size_t stage, Commands& out) {
    out.push_back(StartPass{view.torque, view.stages[stage].at_nut, 0});
}

// What the hand needs to know first: larger than any other number on the page.
void draw_setting(UiContext& ui, const TorqueView& view) {
    if (!view.set_to) return;
    const Unit* unit = find_unit(view.set_to->unit);
    big_figure(ui, {view.pass + ": set the wrench to", view.set_to->number.text(),
                    std::string(unit == nullptr ? std::string_view(view.set_to->unit) : unit->label), view.corrected});
}

void draw_ring(UiContext& ui, const TorqueView& view, TorqueState& state, Commands& out) {
    if (view.torque.fasteners == 0) return paragraph(ui, "Count the studs first.");
    NutRingSpec ring;
    ring.nuts = view.torque.fasteners;
    const bool between = !view.running && !view.torque.passes.empty();
    ring.clicked = view.clicked;
    ring.finished = view.done;
    ring.next = view.ready && !between ? view.next : 0;
    ring.most = ui.low() ? 300 : 400;
    if (view.ready) {
        ring.middle = ring.next > 0 ? fmt::format("{}", ring.next) : view.done ? "Done" : between ? "Full" : "";
        const char* which = ring.next > 0 ? "is next\n" : "";
        if (!between) ring.under = fmt::format("{}{} of {} clicked", which, view.clicked.size(), ring.nuts);
    }
    const auto tapped = nut_ring(ui, "ring", ring);
    if (!tapped || !view.ready) return;
    if (*tapped == view.next || view.next == 0)
        click(view, *tapped, out);
    else
        state.asked_nut = *tapped;
}

void draw_stages(UiContext& ui, const TorqueView& view, TorqueState& state, Commands& out) {
    if (view.stages.empty()) return;
    heading(ui, view.torque.adapter ? "Passes, at the nut" : "Passes");
    std::vector<std::string> keys;
    std::vector<std::string> labels;
    std::vector<ChipSpec> specs;
    for (std::size_t i = 0; i < view.stages.size(); ++i) {
        keys.push_back(fmt::format("stage {}", i));
        labels.push_back(fmt::format("{}{}", view.stages[i].label, view.stages[i].done ? ", done" : ""));
    }
    for (std::size_t i = 0; i < view.stages.size(); ++i)
        specs.push_back({{labels[i], keys[i]}, view.stages[i].now, view.ready && !view.stages[i].now, {}});
    const auto tapped = chips(ui, "stages", specs);
    if (!tapped) return;
    if (view.running && !view.clicked.empty())
        state.asked_stage = *tapped;
    else
        start(view, *tapped, out);
}

void draw_known(UiContext& ui, const TorqueView& view, TorqueState& state) {
    const Torque& t = view.torque;
    const auto ask = [&](std::string_view label, const std::string& value, const std::string& under, TorqueAsk what) {
        RowSpec spec;
        spec.value = value;
        spec.under = under;
        if (row(ui, {label}, spec)) open_torque_sheet(state.sheet, what);
    };
    heading(ui, "Known");
    ask("Nuts", t.fasteners > 0 ? fmt::format("{}", t.fasteners) : "not counted", "", TorqueAsk::count);
    ask("Maker's figure", t.target ? t.target->text() : "not known", view.source, TorqueAsk::figure);
    ask("Wrench", t.wrench.empty() ? "not chosen" : t.wrench,
        t.wrench_calibrated ? "calibrated " + t.wrench_calibrated->text() : "", TorqueAsk::wrench);
    if (!t.wrench.empty())
        ask("Adapter", t.adapter ? t.adapter->length.text() : "none", t.adapter ? adapter_words(*t.adapter) : "",
            t.adapter ? TorqueAsk::adapter : TorqueAsk::wrench_length);
    if (t.passes.empty()) ask("Not torqued", t.taken == Taken::measured ? "" : t.reason, "", TorqueAsk::not_done);
}

void draw_findings(UiContext& ui, const TorqueView& view) {
    if (view.done) remark(ui, "Proved", "All at the maker's figure, and clicked again in the check pass.");
    for (const std::string& words : view.against) remark(ui, "Not proved", words);
    for (const std::string& words : view.remarks) paragraph(ui, words, true);
}

void draw_body(UiContext& ui, const TorqueView& view, TorqueState& state, Commands& out) {
    if (view.no_order) remark(ui, "The maker's chart leads", "There is no order across the circle for so many nuts.");
    if (!view.wrench_warning.empty()) remark(ui, "Look at the wrench", upper_first(view.wrench_warning));
    if (view.offer) remark(ui, view.offer->title, view.offer->words);
    const auto ring = [&] { draw_ring(ui, view, state, out); };
    const auto rest = [&] {
        draw_findings(ui, view);
        draw_stages(ui, view, state, out);
        draw_known(ui, view, state);
    };
    if (ui.low() || ui.width >= kWide) {
        const auto left = [&] {
            draw_setting(ui, view);
            rest();
        };
        return side_by_side(ui, 0.5F, 260, left, ring);
    }
    draw_setting(ui, view);
    ring();
    rest();
}

bool led_by_chart(const TorqueView& view) {
    return view.no_order && (view.running || view.torque.passes.empty());
}

// The one thing to do now, under the thumb.
ActionSpec main_action(const TorqueView& view, std::string& words) {
    if (!view.ready)
        words = view.to_do;
    else if (led_by_chart(view))
        words = "Tap each nut that clicks";
    else if (view.running || view.torque.passes.empty())
        words = fmt::format("Nut {} clicked", view.next);
    else if (view.done || !view.next_stage)
        words = view.next_place ? "Next: " + view.next_label : "Back";
    else
        words = "Start " + view.stages[*view.next_stage].label;
    return {{words, "main"}, Tone::strong, Icon::none, true, true};
}

TorqueAsk missing(const TorqueView& view) {
    if (view.torque.fasteners == 0) return TorqueAsk::count;
    return view.torque.target ? TorqueAsk::wrench : TorqueAsk::figure;
}

void act(const TorqueView& view, TorqueState& state, Commands& out) {
    if (view.offer) return out.push_back(PutTorque{view.offer->torque});
    if (!view.ready) return open_torque_sheet(state.sheet, missing(view));
    if (led_by_chart(view)) return;
    if (view.running || view.torque.passes.empty()) return click(view, view.next, out);
    if (!view.done && view.next_stage) return start(view, *view.next_stage, out);
    if (view.next_place)
        out.push_back(GoInstead{{Screen::torque, *view.next_place, {}}});
    else
        out.push_back(GoBack{});
}

void draw_asks(UiContext& ui, const TorqueView& view, TorqueState& state, Commands& out) {
    if (state.asked_nut > 0) {
        const std::string title = fmt::format("Nut {} is next, not {}", view.next, state.asked_nut);
        const std::string yes = fmt::format("{} has clicked", state.asked_nut);
        const SheetAnswer answer =
            sheet(ui,
                  {"order",
                   title,
                   {{{yes, "clicked"}, Tone::quiet}, {{"Not yet", "not yet"}, Tone::strong, Icon::none, true, true}}},
                  [&] {
                      paragraph(ui,
                                "Crossing the circle seats the wheel evenly. A pass along it is recorded as such "
                                "and proves nothing.");
                  });
        if (answer.action == 0u) click(view, state.asked_nut, out);
        if (answer.closed || answer.action) state.asked_nut = 0;
    }
    if (!state.asked_stage) return;
    const std::string text =
        fmt::format("{} of {} have clicked in this pass.", view.clicked.size(), view.torque.fasteners);
    const SheetAnswer answer = sheet(ui,
                                     {"early",
                                      "Begin another pass?",
                                      {{{"Begin it", "begin"}, Tone::quiet},
                                       {{"Go on with this one", "go on"}, Tone::strong, Icon::none, true, true}}},
                                     [&] { paragraph(ui, text); });
    if (answer.action == 0u) start(view, *state.asked_stage, out);
    if (answer.closed || answer.action) state.asked_stage.reset();
}

}  // namespace

void draw_torque(UiContext& ui, const TorqueView& view, TorqueState& state, Commands& out) {
    std::string words;
    const std::string key = "torque " + view.place.text();
    std::vector<ActionSpec> actions;
    if (view.offer) actions.push_back({{"Another figure", "another figure"}, Tone::quiet, Icon::none, true, false});
    actions.push_back(main_action(view, words));
    const std::size_t main = actions.size() - 1;
    ScreenSpec spec = screen_of(view.chrome, key, std::move(actions));
    spec.wide = ui.width >= kWide;
    const ScreenAnswer answer = screen(ui, spec, [&] { draw_body(ui, view, state, out); });
    answer_chrome(answer, out);
    if (answer.tapped(main)) act(view, state, out);
    if (main == 1 && answer.tapped(0)) open_torque_sheet(state.sheet, TorqueAsk::figure);
    draw_torque_sheet(ui, view, state.sheet, out);
    draw_asks(ui, view, state, out);
}

}  // namespace cotter

// See inspection_screen.h. The items of one group.
#include <array>

#include "app/screens/common.h"
#include "app/screens/inspection_screen.h"
#include "app/screens/words_field.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

constexpr std::array kAnswers{Answer::ok, Answer::not_ok, Answer::repaired, Answer::not_fitted};
constexpr std::array<std::string_view, 4> kWords{"OK", "Not OK", "Repaired", "Not fitted"};

void draw_item(UiContext& ui, const InspectionItemView& item, InspectionPageState& state, Commands& out) {
    heading(ui, item.id);
    paragraph(ui, "Fails when " + item.fails + ".");
    if (item.where_fitted) paragraph(ui, "Only where fitted.", true);
    std::array<std::string, 4> labels, keys;
    std::vector<ChipSpec> specs;
    for (std::size_t i = 0; i < kAnswers.size(); ++i) {
        labels[i] = kWords[i];
        keys[i] = item.id + " " + std::string(kWords[i]);
        const bool chosen = item.answer && item.answer->answer == kAnswers[i];
        specs.push_back({{labels[i], keys[i]}, chosen, true, {}});
    }
    if (const auto tapped = chips(ui, "answer " + item.id, specs))
        out.push_back(AnswerItem{answer_of(item, kAnswers[*tapped])});
    if (!item.answer || item.answer->answer == Answer::ok) return;
    RowSpec spec;
    spec.under = item.answer->remark;
    if (row(ui, {"Remark to " + item.id, "remark " + item.id}, spec)) state.remark = item.id;
}

void draw_remark(UiContext& ui, const InspectionGroupView& view, InspectionPageState& state, Commands& out) {
    for (const InspectionItemView& item : view.items) {
        if (item.id != state.remark || !item.answer) continue;
        const SheetSpec spec{"remark", "Remark to " + item.id, {{"Done", Tone::strong, Icon::check, true, true}}};
        const SheetAnswer answer = sheet(ui, spec, [&] {
            paragraph(ui, "What is not OK, what was repaired, why it is not fitted.", true);
            words_field(
                ui, {"Remark", "remark of " + item.id}, {item.answer->remark, "what and where", ""}, view.drafts,
                [&](const std::string& text) {
                    InspectionAnswer changed = *item.answer;
                    changed.remark = text;
                    out.push_back(AnswerItem{std::move(changed)});
                },
                out);
        });
        if (answer.closed || answer.action) state.remark.clear();
        return;
    }
    state.remark.clear();
}

}  // namespace

void draw_inspection_group(UiContext& ui, const InspectionGroupView& view, InspectionPageState& state, Commands& out) {
    std::vector<ActionSpec> actions;
    const std::string next = view.next.empty() ? std::string("All groups") : "Next: " + view.next;
    actions.push_back({{next, "next"}, Tone::strong, Icon::none, true, true});
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "inspection " + view.group, actions), [&] {
        if (!view.begun) return paragraph(ui, "The inspection was not begun.");
        for (const InspectionItemView& item : view.items) draw_item(ui, item, state, out);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0) && view.next.empty()) out.push_back(GoBack{});
    if (answer.tapped(0) && !view.next.empty()) out.push_back(GoInstead{{Screen::inspection, {}, view.next}});
    if (!state.remark.empty()) draw_remark(ui, view, state, out);
}

}  // namespace cotter

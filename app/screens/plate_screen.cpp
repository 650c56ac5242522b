// See plate_screen.h. One group is open at a time, so that a thumb reaches all of it; the others are a line each.
#include "app/screens/plate_screen.h"

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void put(const PlateView& view, PlateData data, Commands& out) {
    if (!(data.trailer == view.data.trailer)) out.push_back(PutTrailer{std::move(data.trailer)});
    if (!(data.visit == view.data.visit)) out.push_back(PutVisit{std::move(data.visit)});
}

std::string tally_of(const PlateGroup& group) {
    std::size_t entered = 0, all = 0;
    for (const FormRow& r : group.rows) {
        if (r.field.form == FormKind::yes) continue;
        ++all;
        entered += !r.value.empty() || r.not_known ? 1 : 0;
    }
    return fmt::format("{} of {}", entered, all);
}

void draw_group(UiContext& ui, const PlateView& view, std::size_t i, PlateState& state, const FormSink& sink,
                Commands& out) {
    const PlateGroup& group = view.groups[i];
    if (state.group.value_or(view.first) == i) {
        heading(ui, group.title);
        if (group.axle > 1 &&
            wide_button(ui, {"Same as axle 1", "like axle 1"}, {Tone::quiet, Icon::check, true, false, 0}))
            put(view, with_axle_like_first(view.data, group.axle), out);
        return draw_form(ui, group.rows, view.drafts, state.form, sink, out);
    }
    const std::string key = fmt::format("group {}", group.title);
    RowSpec spec;
    spec.value = tally_of(group);
    if (row(ui, {group.title, key}, spec)) state.group = i;
}

PlateData entered(const PlateView& view, const FormEntry& entry) {
    const FormField& field = entry.row->field;
    if (entry.not_known) return with_not_known(view.data, field);
    if (entry.amount) return with_amount(view.data, field, entry.amount);
    if (entry.choice) return with_choice(view.data, field, *entry.choice);
    return with_words(view.data, field, entry.words.value_or(""));
}

}  // namespace

void draw_plate(UiContext& ui, const PlateView& view, PlateState& state, Commands& out) {
    const FormSink sink = [&](const FormEntry& entry) { put(view, entered(view, entry), out); };
    const ScreenSpec spec = screen_of(
        view.chrome, "plate", {{{"Photograph the plate", "plate shot"}, Tone::strong, Icon::camera, true, true}});
    RowSpec happened;
    happened.value = view.events == 0 ? "nothing entered" : fmt::format("{} entered", view.events);
    const ScreenAnswer answer = screen(ui, spec, [&] {
        paragraph(ui, view.tally, true);
        if (!view.plate_shot.empty() && photo(ui, {"Data plate", "data plate"}, view.plate_shot, 180))
            out.push_back(GoTo{{Screen::photo, {}, view.plate_shot_id}});
        for (std::size_t i = 0; i < view.groups.size(); ++i) draw_group(ui, view, i, state, sink, out);
        if (row(ui, {"What happened to it", "events"}, happened)) out.push_back(GoTo{{Screen::events, {}, {}}});
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoTo{{Screen::intake, {}, std::string(name_of(Slot::data_plate))}});
    draw_form_sheet(ui, view.groups[std::min(state.group.value_or(view.first), view.groups.size() - 1)].rows,
                    state.form, sink);
}

}  // namespace cotter

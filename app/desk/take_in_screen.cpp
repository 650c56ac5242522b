// See screens.h: packets being taken in, and what became of each.
#include <fmt/format.h>

#include "app/desk/screens.h"
#include "app/ui/widgets.h"
#include "core/base/path.h"

namespace cotter::desk {

namespace {

void draw_progress(UiContext& ui, const TakeInState& batch, Commands& out) {
    ProgressSpec spec;
    spec.doing = batch.total == 0 ? "Looking for packets" : fmt::format("Packet {} of {}", batch.done, batch.total);
    if (batch.cancelled) spec.doing = "Stopping after the packets at hand";
    spec.detail = batch.outcome_words();
    if (const std::string rate = batch.rate_words(); !rate.empty()) spec.detail += ". " + rate;
    if (batch.total > 0) spec.fraction = static_cast<float>(batch.done) / static_cast<float>(batch.total);
    spec.may_cancel = !batch.cancelled;
    if (progress(ui, "batch", spec)) out.push_back(CancelTakeIn{});
}

void draw_asking(UiContext& ui, DeskState& state, Commands& out) {
    paragraph(ui, "Drop packets or folders of packets onto this window, or write where they are.");
    FieldSpec spec;
    spec.value = state.path;
    spec.hint = example_on_drive("packets");
    spec.focus = state.frames < 2;
    const FieldAnswer answer = text_field(ui, {"File or folder", "path"}, spec);
    if (answer.text) state.path = *answer.text;
    ButtonSpec key;
    key.tone = Tone::strong;
    key.enabled = !state.path.empty();
    if (button(ui, {"Take in", "take"}, key)) out.push_back(TakeIn{{state.path}});
}

}  // namespace

void draw_take_in(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out) {
    const List& list = *session.list();
    ListState& shown = state.lists[list.name];
    desk_frame(ui, session, {"Take packets in", "Each is checked whole first; it comes in completely or not at all"},
               state, out, [&](const Rect& area) {
                   const float y = flow({area.x, area.y, std::min(area.w, 760.0F), 0}, [&] {
                       if (session.take_in().running)
                           draw_progress(ui, session.take_in(), out);
                       else
                           draw_asking(ui, state, out);
                   });
                   ListTools tools;
                   tools.search = false;
                   list_panel(ui, list, shown, below(area, y + Sizes::gap), tools, nullptr, false, out);
               });
    columns_sheet(ui, list, shown, out);
}

}  // namespace cotter::desk

// See screens.h: two visits beside each other.
#include "app/desk/screens.h"
#include "app/ui/widgets.h"

namespace cotter::desk {

void draw_compare(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out) {
    const Compared* compared = session.compared();
    if (compared == nullptr) return desk_frame(ui, session, {"Two visits", ""}, state, out, [](const Rect&) {});
    ListState& readings = state.lists["compared readings"];
    ListState& findings = state.lists["compared findings"];
    desk_frame(ui, session, {compared->title, compared->under}, state, out, [&](const Rect& area) {
        const float least = table_height(compared->findings.table().size(), 5) + 44;
        Rect upper = area;
        upper.h -= least;
        ListTools tools;
        tools.search = false;
        list_panel(ui, compared->readings, readings, upper, tools, nullptr, false, out);
        Rect lower = below(area, upper.bottom() + Sizes::gap);
        lower.y = flow(lower, [&] { paragraph(ui, "Findings that appeared, stayed or were settled"); });
        lower.h = area.bottom() - lower.y;
        if (findings.made != compared->findings.made) {
            findings.model.start(compared->findings.table().size());
            findings.made = compared->findings.made;
        }
        table(ui,
              {"compared findings", compared->findings.columns, compared->findings.table(), std::nullopt,
               compared->findings.empty, false, false},
              findings.model, lower);
    });
    columns_sheet(ui, compared->readings, readings, out);
}

}  // namespace cotter::desk

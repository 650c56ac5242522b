// See plan_screen.h.
#include "app/screens/plan_screen.h"

#include "app/screens/common.h"
#include "app/ui/trailer_plan.h"
#include "app/ui/widgets.h"
#include "core/judge/towing_sign.h"

namespace cotter {

namespace {

std::vector<PlanTile> tiles_of(std::span<const PlanSpot> spots) {
    std::vector<PlanTile> out;
    for (const PlanSpot& spot : spots) {
        const Icon icon = spot.progress == PlanState::complete ? Icon::pin
                          : spot.progress == PlanState::begun  ? Icon::open_pin
                                                               : Icon::none;
        const bool untouched = spot.progress == PlanState::untouched;
        out.push_back({spot.label, spot.state, untouched ? std::string{} : spot.missing, spot.worst, icon});
    }
    return out;
}

}  // namespace

void draw_plan(UiContext& ui, const PlanView& view, Commands& out) {
    const ScreenSpec spec = screen_of(view.chrome, "plan",
                                      {{{"Trailer", "trailer"}, Tone::quiet, Icon::none, true, false},
                                       {{"Photos", "photos"}, Tone::quiet, Icon::none, true, false},
                                       {{"Hand over", "hand over"}, Tone::strong, Icon::sheet, true, true}});
    const ScreenAnswer answer = screen(ui, spec, [&] {
        RowSpec towing;
        towing.under = view.summary;
        towing.answer = sign_of(view.answer);
        if (row(ui, {view.towing, "may it be towed"}, towing)) out.push_back(GoTo{{Screen::summary, {}, {}}});
        const auto front = tiles_of(std::span(view.stations).first(2));
        const auto corners = tiles_of(view.corners);
        const auto rear = tiles_of(std::span(view.stations).subspan(2));
        const auto tapped = trailer_plan(ui, "trailer", {front, corners, rear, view.duals});
        RowSpec points;
        points.value = view.points;
        if (row(ui, {"What is looked at", "points"}, points)) out.push_back(GoTo{{Screen::points, {}, "all"}});
        if (row(ui, {"Plate and use", "plate"})) out.push_back(GoTo{{Screen::plate, {}, {}}});
        if (row(ui, {"Work, step by step", "work"})) out.push_back(GoTo{{Screen::work, {}, {}}});
        if (row(ui, {"Quotes and prices", "quotes"})) out.push_back(GoTo{{Screen::quotes, {}, {}}});
        if (!tapped) return;
        const std::size_t n = *tapped;
        const std::size_t after = front.size() + corners.size();
        const PlanSpot& spot = n < front.size() ? view.stations[n]
                               : n < after      ? view.corners[n - front.size()]
                                                : view.stations[front.size() + n - after];
        out.push_back(GoTo{{Screen::corner, spot.place, {}}});
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoTo{{Screen::identify, {}, {}}});
    if (answer.tapped(1)) out.push_back(GoTo{{Screen::intake, {}, {}}});
    if (answer.tapped(2)) out.push_back(GoTo{{Screen::hand_over, {}, {}}});
}

}  // namespace cotter

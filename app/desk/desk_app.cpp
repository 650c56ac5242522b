// See desk_app.h.
#include "app/desk/desk_app.h"

#include "app/desk/screens.h"

namespace cotter::desk {

namespace {

constexpr double kTick = 0.5;  // s, between looks at a batch's clock

void draw_page(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out) {
    if (!session.unread().empty()) return draw_unread(ui, session, state, out);
    switch (session.route().page) {
        case Page::trailers:
            return draw_fleet(ui, session, state, out);
        case Page::jobs:
            return draw_register(ui, session, state, out);
        case Page::trailer:
            return draw_trailer(ui, session, state, out);
        case Page::compare:
            return draw_compare(ui, session, state, out);
        case Page::due:
            return draw_due(ui, session, state, out);
        case Page::take_in:
            return draw_take_in(ui, session, state, out);
        default:
            return draw_list(ui, session, state, out);
    }
}

}  // namespace

DeskApp::DeskApp(DeskSession& session, TaskRunner& tasks, const HostParts& host, ThemeKind theme)
    : session_(session), tasks_(tasks), pictures_(host.pictures, session.photos(), tasks) {
    look_.theme = theme;
}

void DeskApp::frame(UiContext& ui) {
    session_.collect();
    if (!(state_.shown == session_.route())) {
        state_.shown = session_.route();
        state_.frames = 0;
        state_.help = false;
    }
    Commands out;
    draw_page(ui, session_, state_, out);
    if (++state_.frames <= 2) ui.wake_at(ui.now_s);
    for (const Command& command : out) session_.apply(command);
    pictures_.serve();
    if (!out.empty() || tasks_.wants_frames()) ui.wake_at(ui.now_s);
    if (session_.take_in().running) ui.wake_at(ui.now_s + kTick);
    if (const auto end = session_.seconds_to_end()) ui.wake_at(ui.now_s + *end);
}

void DeskApp::dropped(const std::vector<std::string>& paths) {
    session_.apply(TakeIn{paths});
}

}  // namespace cotter::desk

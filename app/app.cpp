// See app.h.
#include "app/app.h"

namespace cotter {

App::App(Session& session, TaskRunner& tasks, const HostParts& host)
    : session_(session), tasks_(tasks), pictures_(host.pictures, session.vault(), tasks) {}

void App::frame(UiContext& ui) {
    session_.collect();
    Commands out;
    draw_screens(ui, session_, states_, out);
    for (const Command& command : out) session_.apply(command);
    pictures_.serve();
    if (!out.empty() || tasks_.wants_frames()) ui.wake_at(ui.now_s);
}

}  // namespace cotter

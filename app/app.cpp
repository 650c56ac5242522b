// See app.h.
#include "app/app.h"

#include <algorithm>

namespace cotter {

namespace {

// Is there a wait that somebody still looks for? One that was begun and forgotten does not keep the screen on for ever.
bool waits(const Drafts& drafts, const Instant& now) {
    constexpr std::int64_t kForgotten = 30 * 60;  // seconds after its end
    return std::any_of(drafts.timers.begin(), drafts.timers.end(),
                       [&](const TimerDraft& t) { return now.unix_s < t.started.unix_s + t.seconds + kForgotten; });
}

}  // namespace

App::App(Session& session, TaskRunner& tasks, const HostParts& host)
    : session_(session), tasks_(tasks), pictures_(host.pictures, session.vault(), tasks) {}

void App::frame(UiContext& ui) {
    session_.collect();
    Commands out;
    draw_screens(ui, session_, states_, out);
    const std::uint64_t steps = session_.steps();
    for (const Command& command : out) session_.apply(command);
    if (session_.steps() != steps) session_.device().confirm();
    session_.device().keep_awake(waits(session_.drafts(), session_.now()));
    pictures_.serve();
    if (!out.empty() || tasks_.wants_frames() || session_.answers_to_come()) ui.wake_at(ui.now_s);
}

// They go where the photos of the shown page go; elsewhere than on the intake page they are sorted in afterwards.
void App::dropped(const std::vector<std::string>& paths) {
    if (paths.empty()) return;
    if (session_.route().screen == Screen::offers_file) return session_.apply(TakeOffers{paths.front()});
    if (session_.has_job() && session_.route().screen != Screen::intake) session_.apply(GoTo{{Screen::intake, {}, {}}});
    const IntakeTarget target = intake_view(session_).target;
    const Stage stage = target.preset ? states_.intake.stage.value_or(target.stage) : target.stage;
    session_.apply(TakePhotos{paths, target.place, target.slot, stage, target.preset && paths.size() == 1});
    if (!target.preset) states_.intake.placing = true;
}

}  // namespace cotter

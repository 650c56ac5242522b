// `cotter app`: the screens, in a window or driven by a script without one.
#include <fmt/format.h>

#include "app/app.h"
#include "app/cli/screen_parts.h"
#include "app/driver/drive.h"
#include "platform/desktop/thread_tasks.h"
#include "platform/sdl/headless.h"
#include "platform/sdl/window.h"

namespace cotter::cli {

namespace {

struct AppOptions : HeadlessOptions {
    std::string book;
};

// The app with whatever it stands on, in the order in which they must go again.
class WholeApp final : public AppUi {
public:
    using Tick = std::function<void(double)>;
    WholeApp(std::unique_ptr<TaskRunner> tasks, std::unique_ptr<Session> session, const HostParts& host, Tick tick)
        : session_(std::move(session)),
          tasks_(std::move(tasks)),
          app_(*session_, *tasks_, host),
          tick_(std::move(tick)) {}

    [[nodiscard]] Appearance look() const override { return app_.look(); }
    [[nodiscard]] const UiWords& words() const override { return app_.words(); }
    void frame(UiContext& ui) override {
        if (tick_) tick_(ui.now_s);
        app_.frame(ui);
    }
    void dropped(const std::vector<std::string>& paths) override { app_.dropped(paths); }

private:
    std::unique_ptr<Session> session_;
    std::unique_ptr<TaskRunner> tasks_;  // gone before the session that its tasks report to
    App app_;
    Tick tick_;
};

std::string book_folder(const Ports& ports, const AppOptions& options) {
    return options.book.empty() ? join_path(ports.home, "Cotter") : options.book;
}

SessionParts parts_of(Ports& ports, Clock& clock, TaskRunner& tasks) {
    return {ports.files, clock, ports.random, ports.workers, tasks, ports.share, "Cotter " COTTER_VERSION};
}

// The session comes before the window, so that a book that does not open is one line and no window.
Result<> show(Ports& ports, const AppOptions& options, FontFiles fonts) {
    LateWaker waker;
    auto tasks = make_thread_tasks(waker);
    COTTER_ASSIGN(auto session, Session::open(parts_of(ports, ports.clock, *tasks), book_folder(ports, options)));
    const MakeApp make = [&](const HostParts& host) {
        waker.point_at(host.waker);
        return std::make_unique<WholeApp>(std::move(tasks), std::move(session), host, nullptr);
    };
    return run_window({}, std::move(fonts), make);
}

Result<> play(Ports& ports, const AppOptions& options, FontFiles fonts) {
    COTTER_ASSIGN(const Point size, size_of(options.size));
    COTTER_ASSIGN(const Instant start, start_of(options, ports.clock));
    ScriptClock clock(start);
    auto tasks = std::make_unique<FrameTaskRunner>();
    COTTER_ASSIGN(auto session, Session::open(parts_of(ports, clock, *tasks), book_folder(ports, options)));
    const MakeApp make = [&](const HostParts& host) {
        return std::make_unique<WholeApp>(std::move(tasks), std::move(session), host,
                                          [&clock](double now_s) { clock.pass_to(now_s); });
    };
    COTTER_ASSIGN(const auto host, make_headless({size.x, size.y, options.scale}, std::move(fonts), make));
    return play_script(*host, ports.files, options.drive);
}

int run_app(Ports& ports, const AppOptions& options) {
    auto fonts = load_font_files(ports.files, ports.share);
    if (!fonts) return report(fonts.error(), false);
    const auto done =
        options.headless ? play(ports, options, std::move(*fonts)) : show(ports, options, std::move(*fonts));
    return done ? kDone : report(done.error(), false);
}

}  // namespace

Command app_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<AppOptions>();
    Parser parser = all.add_command("app", "Open the app: capture, tag, measure, torque, hand over");
    parser.add_option("--book", options->book, "The book's folder (default: Cotter in the home folder)");
    add_headless_options(parser, *options);
    return {parser, [&ports, options] { return run_app(ports, *options); }};
}

}  // namespace cotter::cli

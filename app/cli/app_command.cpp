// `cotter app`: the screens, in a window or driven by a script without one.
#include <atomic>
#include <charconv>

#include <fmt/format.h>

#include "app/app.h"
#include "app/cli/cli.h"
#include "app/driver/drive.h"
#include "platform/desktop/thread_tasks.h"
#include "platform/sdl/headless.h"
#include "platform/sdl/window.h"

namespace cotter::cli {

namespace {

struct Options {
    std::string book;
    bool headless = false;
    std::string size = "412x915";
    float scale = 2;
    std::string clock;
    DriveSpec drive;
};

// Stands still at a given moment but for the driver's made-up time, so that a script gives the same pictures each run.
class ScriptClock final : public Clock {
public:
    explicit ScriptClock(Instant start) : start_(start) {}
    Instant now() override { return {start_.unix_s + static_cast<std::int64_t>(passed_s_), start_.offset_min}; }
    void pass_to(double now_s) { passed_s_ = now_s; }

private:
    Instant start_;
    double passed_s_ = 0;
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

    [[nodiscard]] Look look() const override { return app_.look(); }
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

std::string book_folder(const Options& options) {
    if (!options.book.empty()) return options.book;
    const char* home = std::getenv("HOME");
    return join_path(home == nullptr ? "." : home, "Cotter");
}

SessionParts parts_of(Ports& ports, Clock& clock, TaskRunner& tasks) {
    return {ports.files, clock, ports.random, ports.workers, tasks, ports.share, "Cotter " COTTER_VERSION};
}

Result<Point> size_of(const std::string& text) {
    int width = 0;
    int height = 0;
    const char* end = text.data() + text.size();
    const auto first = std::from_chars(text.data(), end, width);
    if (first.ec == std::errc{} && first.ptr != end && *first.ptr == 'x') {
        const auto second = std::from_chars(first.ptr + 1, end, height);
        if (second.ec == std::errc{} && second.ptr == end)
            return Point{static_cast<float>(width), static_cast<float>(height)};
    }
    return fail(Errc::refused, "no such size", text, "write it as 412x915");
}

// The runner is there before the window that it wakes.
class LateWaker final : public Waker {
public:
    void wake() override {
        if (Waker* to = to_.load()) to->wake();
    }
    void point_at(Waker& to) { to_ = &to; }

private:
    std::atomic<Waker*> to_ = nullptr;
};

// The session comes before the window, so that a book that does not open is one line and no window.
Result<> show(Ports& ports, const Options& options, FontFiles fonts) {
    LateWaker waker;
    auto tasks = make_thread_tasks(waker);
    COTTER_ASSIGN(auto session, Session::open(parts_of(ports, ports.clock, *tasks), book_folder(options)));
    const MakeApp make = [&](const HostParts& host) {
        waker.point_at(host.waker);
        return std::make_unique<WholeApp>(std::move(tasks), std::move(session), host, nullptr);
    };
    return run_window({}, std::move(fonts), make);
}

Result<> play(Ports& ports, const Options& options, FontFiles fonts) {
    COTTER_ASSIGN(const Point size, size_of(options.size));
    Instant start = ports.clock.now();
    if (!options.clock.empty()) {
        COTTER_ASSIGN(start, Instant::parse(options.clock));
    }
    ScriptClock clock(start);
    auto tasks = std::make_unique<FrameTaskRunner>();
    COTTER_ASSIGN(auto session, Session::open(parts_of(ports, clock, *tasks), book_folder(options)));
    const MakeApp make = [&](const HostParts& host) {
        return std::make_unique<WholeApp>(std::move(tasks), std::move(session), host,
                                          [&clock](double now_s) { clock.pass_to(now_s); });
    };
    COTTER_ASSIGN(const auto host, make_headless({size.x, size.y, options.scale}, std::move(fonts), make));
    COTTER_ASSIGN(const RunOutcome done, drive(*host, ports.files, options.drive, [](std::string_view line) {
                      fmt::print("{}\n", line);
                      std::fflush(stdout);  // whoever watches the script reads along
                  }));
    fmt::print("{} commands, {} frames, {} shots{}\n", done.commands, done.frames, done.shots,
               options.drive.audit ? fmt::format(", {} offences", done.offences) : "");
    if (done.offences > 0)
        return fail(Errc::refused, "the audit found offences", std::to_string(done.offences), "see the lines above");
    return {};
}

int run(Ports& ports, const Options& options) {
    auto fonts = load_font_files(ports.files, ports.share);
    if (!fonts) return report(fonts.error(), false);
    const auto done =
        options.headless ? play(ports, options, std::move(*fonts)) : show(ports, options, std::move(*fonts));
    return done ? kDone : report(done.error(), false);
}

}  // namespace

Command app_command(CLI::App& app, Ports& ports) {
    auto options = std::make_shared<Options>();
    CLI::App* parser = app.add_subcommand("app", "Open the app: capture, tag, measure, torque, hand over");
    parser->add_option("--book", options->book, "The book's folder (default: Cotter in the home folder)");
    CLI::Option* headless = parser->add_flag("--headless", options->headless, "Without a display, driven by --script");
    parser->add_option("--size", options->size, "Width and height in dp, as 412x915")->needs(headless);
    parser->add_option("--scale", options->scale, "Pixels to a dp")->needs(headless);
    parser->add_option("--script", options->drive.script, "What to tap, type and look for; see DEVELOPERS.md")
        ->needs(headless);
    parser->add_option("--shots", options->drive.shots, "The folder for the script's screenshots")->needs(headless);
    parser->add_option("--clock", options->clock, "The moment at which the script begins (RFC 3339)")->needs(headless);
    parser->add_flag("--audit", options->drive.audit, "List every target, and what breaks the rules of the screens")
        ->needs(headless);
    return {parser, [&ports, options] { return run(ports, *options); }};
}

}  // namespace cotter::cli

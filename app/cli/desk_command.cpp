// `cotter desk`: the office's wide screens over a ledger, in a window or driven by a script without one.
#include <fmt/format.h>

#include "app/cli/office.h"
#include "app/cli/screen_parts.h"
#include "app/desk/desk_app.h"
#include "platform/desktop/thread_tasks.h"
#include "platform/sdl/headless.h"
#include "platform/sdl/window.h"

namespace cotter::cli {

namespace {

constexpr float kLeastWidth = 1024, kLeastHeight = 700;  // dp

struct DeskOptions : HeadlessOptions {
    LedgerPlace place;
    std::string trust, lists;
    bool dark = false;
    DeskOptions() {
        size = "1280x800";
        scale = 1;
        drive.limits = desk_limits();
    }
};

// The desk with whatever it stands on, in the order in which they must go again.
class WholeDesk final : public AppUi {
public:
    using Tick = std::function<void(double)>;
    WholeDesk(std::unique_ptr<TaskRunner> tasks, std::unique_ptr<desk::DeskSession> session, const HostParts& host,
              bool dark, Tick tick)
        : session_(std::move(session)),
          tasks_(std::move(tasks)),
          app_(*session_, *tasks_, host, dark ? ThemeKind::lantern : ThemeKind::sun),
          tick_(std::move(tick)) {}

    [[nodiscard]] Appearance look() const override { return app_.look(); }
    [[nodiscard]] const UiWords& words() const override { return app_.words(); }
    void frame(UiContext& ui) override {
        if (tick_) tick_(ui.now_s);
        app_.frame(ui);
    }
    void dropped(const std::vector<std::string>& paths) override { app_.dropped(paths); }

private:
    std::unique_ptr<desk::DeskSession> session_;
    std::unique_ptr<TaskRunner> tasks_;  // gone before the session that its tasks report to
    desk::DeskApp app_;
    Tick tick_;
};

std::string lists_folder(const Ports& ports, const DeskOptions& options) {
    return options.lists.empty() ? join_path(ports.home, "Cotter/lists") : options.lists;
}

Result<ledger::TrustList> trust_of(Ports& ports, const std::string& path) {
    if (path.empty()) return ledger::TrustList{};
    COTTER_ASSIGN(const Bytes text, read_file(ports.files, path, 16u << 20));
    auto list = ledger::parse_allowed_signers(as_text(text));
    if (!list) return unexpected(context(list.error(), path));
    return list;
}

// The ledger's rules belong to `office`, which outlives the session.
Result<std::unique_ptr<desk::DeskSession>> open_desk(Ports& ports, Clock& clock, TaskRunner& tasks, Office& office,
                                                     const DeskOptions& options) {
    COTTER_ASSIGN(auto trust, trust_of(ports, options.trust));
    auto another = [&ports, &office, place = options.place] { return open_another(ports, office, place); };
    return desk::DeskSession::open({ports.files, clock, tasks, std::move(office.ledger), another, std::move(trust),
                                    ports.share, lists_folder(ports, options), "Cotter " COTTER_VERSION});
}

Result<> show(Ports& ports, const DeskOptions& options, Office& office, FontFiles fonts) {
    LateWaker waker;
    auto tasks = make_thread_tasks(waker);
    COTTER_ASSIGN(auto session, open_desk(ports, ports.clock, *tasks, office, options));
    const MakeApp make = [&](const HostParts& host) {
        waker.point_at(host.waker);
        return std::make_unique<WholeDesk>(std::move(tasks), std::move(session), host, options.dark, nullptr);
    };
    return run_window({"Cotter desk", 1280, 800, 0}, std::move(fonts), make);
}

Result<> play(Ports& ports, const DeskOptions& options, Office& office, ScriptClock& clock, FontFiles fonts) {
    COTTER_ASSIGN(const Point size, size_of(options.size));
    if (size.x < kLeastWidth || size.y < kLeastHeight)
        return fail(Errc::refused, "too small for the desk", options.size, "give at least 1024x700");
    auto tasks = std::make_unique<FrameTaskRunner>();
    COTTER_ASSIGN(auto session, open_desk(ports, clock, *tasks, office, options));
    const MakeApp make = [&](const HostParts& host) {
        return std::make_unique<WholeDesk>(std::move(tasks), std::move(session), host, options.dark,
                                           [&clock](double now_s) { clock.pass_to(now_s); });
    };
    COTTER_ASSIGN(const auto host, make_headless({size.x, size.y, options.scale}, std::move(fonts), make));
    return play_script(*host, ports.files, options.drive);
}

Result<> open_and_run(Ports& ports, const DeskOptions& options) {
    COTTER_ASSIGN(auto fonts, load_font_files(ports.files, ports.share));
    COTTER_ASSIGN(const Instant start, start_of(options, ports.clock));
    ScriptClock script_clock(start);
    Ports with{ports.files,   options.headless ? static_cast<Clock&>(script_clock) : ports.clock,
               ports.random,  ports.workers,
               ports.share,   ports.home,
               ports.terminal};
    COTTER_ASSIGN(const auto office, open_office(with, options.place, ledger::Open::create));
    if (options.headless) return play(with, options, *office, script_clock, std::move(fonts));
    return show(with, options, *office, std::move(fonts));
}

}  // namespace

Command desk_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<DeskOptions>();
    Parser parser = all.add_command("desk", "Open the office's desk: register, due list, orders, taking packets in");
    add_ledger_options(parser, options->place);
    parser.add_option("--trust", options->trust, "An allowed_signers file (ssh-keygen(1)) with the technicians' keys");
    parser.add_option("--lists", options->lists,
                      "Where lists are written to (default: Cotter/lists in the home folder)");
    parser.add_flag("--dark", options->dark, "The look for dark rooms");
    add_headless_options(parser, *options);
    return {parser, [&ports, options] {
                const auto done = open_and_run(ports, *options);
                return done ? kDone : report(done.error(), options->place.json);
            }};
}

}  // namespace cotter::cli

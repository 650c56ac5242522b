// What the commands that show screens share: the options of a run without a display, its clock, its script. One thread.
#pragma once

#include <atomic>
#include <string>

#include "app/cli/cli.h"
#include "app/driver/drive.h"
#include "app/ui/ui_ports.h"

namespace cotter::cli {

struct HeadlessOptions {
    bool headless = false;
    std::string size = "412x915";
    float scale = 2;
    std::string clock;
    DriveSpec drive;
};
// `options` outlives the parser.
void add_headless_options(Parser& parser, HeadlessOptions& options);

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

// "412x915" in dp; refused otherwise.
[[nodiscard]] Result<Point> size_of(const std::string& text);
// When the script begins: as given, else now.
[[nodiscard]] Result<Instant> start_of(const HeadlessOptions& options, Clock& clock);
// Plays the script and says each line; offences of the audit fail it.
[[nodiscard]] Result<> play_script(DriverHost& host, Files& files, const DriveSpec& spec);

}  // namespace cotter::cli

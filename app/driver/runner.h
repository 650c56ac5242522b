// Plays a script on a screen in made-up time, so that every run is the same. One thread.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>

#include "app/driver/audit.h"
#include "app/driver/host.h"
#include "app/driver/script.h"

namespace cotter {

struct RunnerPorts {
    std::function<void(std::string_view)> say;                            // one line for the reader
    std::function<Result<>(const std::string& name, ByteView png)> keep;  // a screenshot
    bool audit = false;                                                   // at each shot, and at the end
    AuditLimits limits = {};
};

struct RunOutcome {
    int commands = 0, shots = 0, frames = 0;
    int offences = 0;  // that the audit found
};

class ScriptRunner {
public:
    ScriptRunner(DriverHost& host, RunnerPorts ports);

    // Stops at the first command that fails, with its line: a label that is not there (with those like it), something
    // expected that is not seen, a target that is off.
    Result<RunOutcome> run(std::span<const ScriptCommand> commands);

    // For tests: one action each, then frames until the screen rests.
    Result<> tap(std::string_view label, int nth = 1);
    void tap(Point at);
    void drag(Point from, Point to, double seconds);
    void type(std::string_view text);
    void settle();              // frames until nothing is to be drawn any more
    void pass(double seconds);  // time goes by, with the frames that the pacer asks for
    [[nodiscard]] double now() const { return now_; }
    [[nodiscard]] int frames() const { return outcome_.frames; }

private:
    Result<> perform(const ScriptCommand& command);
    Result<> expect(const ScriptCommand& command);
    Result<> shoot(const std::string& name);
    Result<> rotate(Point size);
    Result<Point> place_of(const ScriptCommand& command);
    Result<Rect> reach(std::string_view label, int nth);  // what is seen of it; scrolls to it when it must
    Result<> drag(const ScriptCommand& command);
    bool scroll_towards(const Rect& wanted);
    void frame();
    void finger(std::int64_t id, Point at, FingerPhase phase);
    void pinch(Point middle, float from, float to);
    void key(std::string_view name);
    void report_audit();

    DriverHost& host_;
    RunnerPorts ports_;
    RunOutcome outcome_;
    double now_ = 1;
};

}  // namespace cotter

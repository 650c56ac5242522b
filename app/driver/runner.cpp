// See runner.h.
#include "app/driver/runner.h"

#include <imgui.h>

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "app/driver/audit.h"
#include "app/driver/labels.h"

namespace cotter {

namespace {

constexpr double kFrame = 1.0 / 60;
constexpr int kMostFrames = 1200;  // 20 s of moving: something does not come to rest
constexpr int kMostScrolls = 80;

Result<> fails(const ScriptCommand& command, std::string what, std::string todo = {}) {
    return fail(Errc::refused, std::move(what), fmt::format("line {}", command.line), std::move(todo));
}

std::string quoted_list(const std::vector<std::string>& labels) {
    std::string out;
    for (const std::string& label : labels) out += fmt::format("{}'{}'", out.empty() ? "" : ", ", label);
    return out.empty() ? "nothing" : out;
}

Point part_of(const Rect& rect, Point part) {
    return {rect.x + rect.w * part.x, rect.y + rect.h * part.y};
}

// The strip that `wanted` lies in, or nullptr.
const ScrollArea* strip_for(const TargetLog& log, const Rect& wanted) {
    const ScrollArea* found = nullptr;
    for (const ScrollArea& area : log.scrolls)
        if (area.layer == log.layer && area.sideways && area.whole.y <= wanted.y &&
            area.whole.bottom() >= wanted.bottom())
            found = &area;
    return found;
}

// The area that could bring `wanted` to sight, or nullptr. A strip comes second: it must be seen itself before.
const ScrollArea* area_for(const TargetLog& log, const Rect& wanted) {
    const ScrollArea* strip = strip_for(log, wanted);
    if (strip != nullptr && inside(strip->whole, strip->rect, 1)) return strip;
    const float x = strip != nullptr ? strip->whole.middle().x : wanted.middle().x;
    const ScrollArea* found = nullptr;
    for (const ScrollArea& area : log.scrolls)
        if (area.layer == log.layer && !area.free && !area.sideways && area.end >= 1 && x >= area.rect.x &&
            x < area.rect.right())
            found = &area;
    return found;
}

}  // namespace

ScriptRunner::ScriptRunner(DriverHost& host, RunnerPorts ports) : host_(host), ports_(std::move(ports)) {
    settle();
}

Result<RunOutcome> ScriptRunner::run(std::span<const ScriptCommand> commands) {
    for (const ScriptCommand& command : commands) {
        COTTER_TRY(perform(command));
        ++outcome_.commands;
    }
    if (ports_.audit) report_audit();
    return outcome_;
}

Result<> ScriptRunner::perform(const ScriptCommand& command) {
    switch (command.verb) {
        case ScriptVerb::tap: {
            COTTER_ASSIGN(const Point at, place_of(command));
            tap(at);
            return {};
        }
        case ScriptVerb::press_hold: {
            COTTER_ASSIGN(const Point at, place_of(command));
            drag(at, at, command.count > 0 ? command.count / 1000.0 : 0.7);
            return {};
        }
        case ScriptVerb::drag:
            return drag(command);
        case ScriptVerb::pinch:
            pinch(command.from, command.to.x, command.to.y);
            return {};
        case ScriptVerb::text:
            if (!host_.stage().editing()) return fails(command, "no field takes words", "tap one first");
            type(command.text);
            return {};
        case ScriptVerb::key:
            key(command.text);
            return {};
        case ScriptVerb::wait_ms:
            pass(command.count / 1000.0);
            return {};
        case ScriptVerb::wait_frames:
            for (int i = 0; i < command.count; ++i) frame();
            return {};
        case ScriptVerb::shot:
            return shoot(command.text);
        case ScriptVerb::rotate:
            return rotate(command.to);
        case ScriptVerb::expect:
        case ScriptVerb::expect_not:
            return expect(command);
        case ScriptVerb::scroll_to: {
            COTTER_ASSIGN([[maybe_unused]] const Point at, place_of(command));
            return {};
        }
        case ScriptVerb::note:
            ports_.say(command.text);
            return {};
    }
    return {};
}

Result<> ScriptRunner::expect(const ScriptCommand& command) {
    const TargetLog& log = host_.stage().log();
    const bool wanted = command.verb == ScriptVerb::expect;
    if (log.shows(command.text) == wanted) return {};
    if (!wanted) return fails(command, fmt::format("'{}' is on the screen", command.text));
    std::vector<std::string> seen;
    for (const TextInk& text : log.texts)
        if (text.layer == log.layer && !text.seen.empty()) seen.push_back(text.text);
    return fails(command, fmt::format("'{}' is not on the screen", command.text),
                 "there is " + quoted_list(likest(command.text, std::move(seen), 4)));
}

Result<Point> ScriptRunner::place_of(const ScriptCommand& command) {
    if (command.text.empty()) return command.from;
    const int nth = command.verb == ScriptVerb::tap && command.count > 0 ? command.count : 1;
    const auto seen = reach(command.text, nth);
    if (!seen) return unexpected(context(seen.error(), fmt::format("line {}", command.line)));
    return command.parts ? part_of(*seen, command.from) : seen->middle();
}

Result<> ScriptRunner::drag(const ScriptCommand& command) {
    const double seconds = command.count > 0 ? command.count / 1000.0 : 0.4;
    if (!command.parts) return drag(command.from, command.to, seconds), Result<>{};
    const auto seen = reach(command.text, 1);
    if (!seen) return unexpected(context(seen.error(), fmt::format("line {}", command.line)));
    drag(part_of(*seen, command.from), part_of(*seen, command.to), seconds);
    return {};
}

Result<Rect> ScriptRunner::reach(std::string_view label, int nth) {
    for (int tries = 0;; ++tries) {
        const TargetLog& log = host_.stage().log();
        const auto found = log.find(label);
        if (found.size() < static_cast<std::size_t>(nth)) {
            std::vector<std::string> labels;
            for (const Target& t : log.targets)
                if (t.layer == log.layer) labels.push_back(t.label);
            return fail(Errc::not_found,
                        found.empty() ? fmt::format("no target '{}' on the screen", label)
                                      : fmt::format("only {} of '{}' on the screen", found.size(), label),
                        {}, "there is " + quoted_list(likest(label, std::move(labels), 4)));
        }
        const Target& target = *found[static_cast<std::size_t>(nth - 1)];
        const bool whole = inside(target.rect, target.seen);
        if (!target.enabled && whole)
            return fail(Errc::refused, fmt::format("'{}' cannot be tapped: it is off", label));
        if (whole) return target.seen;
        if (tries < kMostScrolls && scroll_towards(target.rect)) continue;
        if (!target.seen.empty()) return target.seen;
        return fail(Errc::refused, fmt::format("'{}' cannot be scrolled to", label));
    }
}

// One slow drag that brings `wanted` nearer; false when nothing moves.
bool ScriptRunner::scroll_towards(const Rect& wanted) {
    const ScrollArea* area = area_for(host_.stage().log(), wanted);
    if (area == nullptr) return false;
    const Rect r = area->rect;
    const float before = area->at;
    const std::uint32_t id = area->id;
    const bool sideways = area->sideways;
    const float miss = sideways ? wanted.middle().x - r.middle().x : wanted.middle().y - r.middle().y;
    const float most = (sideways ? r.w : r.h) * 0.4F;
    const float way = std::clamp(miss, -most, most);
    // Beside the content, so that no picture takes the drag.
    const Point m{sideways ? r.middle().x : r.x + 4, r.middle().y};
    drag({m.x + (sideways ? way / 2 : 0), m.y + (sideways ? 0 : way / 2)},
         {m.x - (sideways ? way / 2 : 0), m.y - (sideways ? 0 : way / 2)}, 0.6);
    for (const ScrollArea& now : host_.stage().log().scrolls)
        if (now.id == id) return std::abs(now.at - before) > 0.5F;
    return true;
}

Result<> ScriptRunner::tap(std::string_view label, int nth) {
    COTTER_ASSIGN(const Rect seen, reach(label, nth));
    tap(seen.middle());
    return {};
}

void ScriptRunner::tap(Point at) {
    finger(1, at, FingerPhase::down);
    frame();
    finger(1, at, FingerPhase::up);
    settle();
}

void ScriptRunner::drag(Point from, Point to, double seconds) {
    finger(1, from, FingerPhase::down);
    const int steps = std::max(1, static_cast<int>(std::lround(seconds / kFrame)));
    for (int i = 1; i <= steps; ++i) {
        frame();
        const float part =
            std::min(1.0F, static_cast<float>(i) / (static_cast<float>(steps) * 0.7F));  // rests at the end
        const Point at{from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part};
        finger(1, at, FingerPhase::move);
    }
    finger(1, to, FingerPhase::up);
    settle();
}

void ScriptRunner::pinch(Point middle, float from, float to) {
    finger(1, {middle.x - from / 2, middle.y}, FingerPhase::down);
    finger(2, {middle.x + from / 2, middle.y}, FingerPhase::down);
    for (int i = 1; i <= 20; ++i) {
        const float wide = from + (to - from) * static_cast<float>(i) / 20;
        finger(1, {middle.x - wide / 2, middle.y}, FingerPhase::move);
        finger(2, {middle.x + wide / 2, middle.y}, FingerPhase::move);
        frame();
    }
    finger(1, {middle.x - to / 2, middle.y}, FingerPhase::up);
    finger(2, {middle.x + to / 2, middle.y}, FingerPhase::up);
    settle();
}

void ScriptRunner::type(std::string_view text) {
    host_.stage().text(text);
    settle();
}

void ScriptRunner::key(std::string_view name) {
    struct Known {
        std::string_view name;
        ImGuiKey key;
        ImGuiKey with = ImGuiKey_None;
    };
    constexpr std::array kKnown{Known{"back", ImGuiKey_AppBack},
                                Known{"enter", ImGuiKey_Enter},
                                Known{"tab", ImGuiKey_Tab},
                                Known{"escape", ImGuiKey_Escape},
                                Known{"up", ImGuiKey_UpArrow},
                                Known{"down", ImGuiKey_DownArrow},
                                Known{"page-up", ImGuiKey_PageUp},
                                Known{"page-down", ImGuiKey_PageDown},
                                Known{"home", ImGuiKey_Home},
                                Known{"end", ImGuiKey_End},
                                Known{"space", ImGuiKey_Space},
                                Known{"ctrl-a", ImGuiKey_A, ImGuiMod_Ctrl},
                                Known{"shift-down", ImGuiKey_DownArrow, ImGuiMod_Shift}};
    const auto* known = std::find_if(kKnown.begin(), kKnown.end(), [&](const Known& k) { return k.name == name; });
    const Known key = known == kKnown.end() ? Known{"backspace", ImGuiKey_Backspace} : *known;
    if (key.with != ImGuiKey_None) host_.stage().key(key.with, true);
    host_.stage().key(key.key, true);
    frame();
    host_.stage().key(key.key, false);
    if (key.with != ImGuiKey_None) host_.stage().key(key.with, false);
    settle();
}

void ScriptRunner::finger(std::int64_t id, Point at, FingerPhase phase) {
    host_.stage().finger({now_, id, at, phase});
}

void ScriptRunner::frame() {
    host_.frame(now_);
    now_ += kFrame;
    ++outcome_.frames;
}

void ScriptRunner::settle() {
    for (int i = 0; i < kMostFrames; ++i) {
        const auto sleep = host_.stage().pacer().may_sleep(now_);
        if (!sleep || *sleep > kFrame) return;
        now_ += *sleep;
        frame();
    }
}

void ScriptRunner::pass(double seconds) {
    const double end = now_ + seconds;
    while (true) {
        const auto sleep = host_.stage().pacer().may_sleep(now_);
        if (!sleep || now_ + *sleep >= end) break;
        now_ += *sleep;
        frame();
    }
    now_ = std::max(now_, end);
}

Result<> ScriptRunner::rotate(Point size) {
    COTTER_TRY(host_.resize(size.x, size.y, now_));
    settle();
    return {};
}

Result<> ScriptRunner::shoot(const std::string& name) {
    COTTER_ASSIGN(const Bytes png, host_.picture());
    COTTER_TRY(ports_.keep(name, png));
    ++outcome_.shots;
    ports_.say(fmt::format("shot {}", name));
    if (ports_.audit) report_audit();
    return {};
}

void ScriptRunner::report_audit() {
    const UiStage& stage = host_.stage();
    for (const std::string& line : list_targets(stage.log())) ports_.say("  " + line);
    const auto offences = audit(stage.log(), stage.width(), stage.height(), ports_.limits);
    for (const std::string& line : offences) ports_.say("OFFENCE " + line);
    outcome_.offences += static_cast<int>(offences.size());
}

}  // namespace cotter

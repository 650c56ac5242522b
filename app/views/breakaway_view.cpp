// See breakaway_view.h.
#include "app/views/judged_reading.h"
#include "app/views/breakaway_view.h"

#include <algorithm>

#include <fmt/format.h>

namespace cotter {

namespace {

const BreakawayTest* newest(const Job& job) {
    const BreakawayTest* found = nullptr;
    for (const BreakawayTest& test : job.all<BreakawayTest>())
        if (found == nullptr || found->started <= test.started) found = &test;
    return found;
}

bool all_tried(const BreakawayTest& test, Held WheelHeld::*round) {
    return std::all_of(test.wheels.begin(), test.wheels.end(),
                       [&](const WheelHeld& w) { return w.*round != Held::not_tried; });
}

BreakawayStep step_of(const BreakawayTest& test, bool time_up) {
    if (!test.ended) {
        if (!all_tried(test, &WheelHeld::at_start)) return BreakawayStep::first_round;
        return time_up ? BreakawayStep::last_round : BreakawayStep::waiting;
    }
    return test.pin_in_again ? BreakawayStep::done : BreakawayStep::pin_in;
}

Held WheelHeld::*round_of(BreakawayStep step) {
    switch (step) {
        case BreakawayStep::not_begun:
        case BreakawayStep::first_round:
            return &WheelHeld::at_start;
        case BreakawayStep::waiting:  // a wheel that lets go before the time is up
        case BreakawayStep::last_round:
            return &WheelHeld::at_end;
        case BreakawayStep::pin_in:
        case BreakawayStep::done:
            break;
    }
    return &WheelHeld::pin_back;
}

std::string minutes_left(std::int64_t seconds) {
    return fmt::format("{}:{:02}", seconds / 60, seconds % 60);
}

std::string wheels_with(const BreakawayView& view, Held WheelHeld::*round, Held held) {
    std::string out;
    for (std::size_t i = 0; i < view.test.wheels.size(); ++i)
        if (view.test.wheels[i].*round == held) out += (out.empty() ? "" : ", ") + view.wheels[i].label;
    return out;
}

std::string result_of(const BreakawayView& view, std::int64_t seconds) {
    if (const std::string free = wheels_with(view, &WheelHeld::at_start, Held::turns); !free.empty())
        return fmt::format("Did not hold with the pin out: {}.", free);
    if (const std::string free = wheels_with(view, &WheelHeld::at_end, Held::turns); !free.empty())
        return fmt::format("Let go before {} were over: {}.", minutes_left(kBreakawaySeconds), free);
    if (const std::string stuck = wheels_with(view, &WheelHeld::pin_back, Held::holds); !stuck.empty())
        return fmt::format("Does not turn free with the pin in: {}.", stuck);
    if (seconds < kBreakawaySeconds)
        return fmt::format("Stopped after {}: 15 minutes are not proved.", minutes_left(seconds));
    if (!all_tried(view.test, &WheelHeld::at_end)) return "Not every wheel was tried at the end.";
    if (!view.test.pin_in_again) return "The pin is not said to be back in.";
    return fmt::format("Every wheel tried held for {}.", minutes_left(seconds));
}

}  // namespace

BreakawayTest begin_test(const Trailer& trailer, const Instant& now) {
    BreakawayTest test;
    test.started = now;
    for (const Place& corner : trailer.corners())
        if (is_braked(trailer.axles[static_cast<std::size_t>(corner.axle) - 1].brake))
            test.wheels.push_back({corner, {}, {}, {}});
    return test;
}

BreakawayView breakaway_view(const Session& session) {
    const Job& job = session.job();
    BreakawayView view;
    view.chrome = chrome_of(session, "Breakaway test", trailer_words(job));
    const Trailer* trailer = job.only<Trailer>();
    if (const BreakawayTest* test = newest(job)) view.test = *test;
    const bool there = !view.test.id.nil();
    if (!there && trailer != nullptr) view.test = begin_test(*trailer, session.now());
    const Instant end = view.test.ended.value_or(session.now());
    const std::int64_t seconds = std::max<std::int64_t>(0, end.unix_s - view.test.started.unix_s);
    view.time_up = seconds >= kBreakawaySeconds;
    view.step = there ? step_of(view.test, view.time_up) : BreakawayStep::not_begun;
    view.stopped = there && view.test.ended.has_value();
    view.early = view.stopped && !view.time_up;
    Held WheelHeld::*round = round_of(view.step);
    for (const WheelHeld& w : view.test.wheels)
        view.wheels.push_back({w.place, place_words(w.place, session.settings().sides), w.*round});
    if (there) view.clock = fmt::format("{} of {}", minutes_left(seconds), minutes_left(kBreakawaySeconds));
    if (view.stopped) view.result = result_of(view, seconds);
    const TradePoint& timed = point(PointId::away_15);
    const Place actuator = Place::at(Station::actuator);  // where the battery is
    view.readings = point_readings(session, timed, actuator, Stage::before);
    view.drafts = session.drafts();
    if (const auto& draft = view.drafts.reading; draft && draft->place == actuator)
        view.entry = judged_entry(session, *draft);
    return view;
}

BreakawayTest with_wheel(const BreakawayView& view, const Place& wheel, Held held) {
    BreakawayTest test = view.test;
    Held WheelHeld::*round = round_of(view.step);
    for (WheelHeld& w : test.wheels)
        if (w.place == wheel) w.*round = held;
    return test;
}

}  // namespace cotter

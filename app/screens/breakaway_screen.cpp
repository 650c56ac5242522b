// See breakaway_screen.h.
#include "app/screens/breakaway_screen.h"

#include <array>
#include <cmath>

#include "app/screens/common.h"
#include "app/screens/point_screen.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_wheels(UiContext& ui, const BreakawayView& view, Commands& out) {
    for (const BreakawayWheel& w : view.wheels) {
        paragraph(ui, w.label);
        const std::string key = "held " + w.place.text();
        const std::string holds = key + " holds", turns = key + " turns";
        const std::array specs{ChipSpec{{"It holds", holds}, w.held == Held::holds, true, {}},
                               ChipSpec{{"It turns", turns}, w.held == Held::turns, true, {}}};
        if (const auto tapped = one_of(ui, key, specs))
            out.push_back(PutBreakawayTest{with_wheel(view, w.place, *tapped == 0 ? Held::holds : Held::turns)});
    }
}

// While the time runs: only what goes wrong can be said of a wheel.
void draw_letting_go(UiContext& ui, const BreakawayView& view, Commands& out) {
    std::vector<std::string> keys;
    std::vector<ChipSpec> specs;
    for (const BreakawayWheel& w : view.wheels) keys.push_back("let go " + w.place.text());
    for (std::size_t i = 0; i < view.wheels.size(); ++i)
        specs.push_back({{view.wheels[i].label, keys[i]}, view.wheels[i].held == Held::turns, true, {}});
    if (specs.empty()) return;
    paragraph(ui, "Does one turn before the time is up? Tap it.");
    if (const auto tapped = chips(ui, "let go", specs)) {
        const BreakawayWheel& w = view.wheels[*tapped];
        out.push_back(
            PutBreakawayTest{with_wheel(view, w.place, w.held == Held::turns ? Held::not_tried : Held::turns)});
    }
}

void draw_step(UiContext& ui, const BreakawayView& view, Commands& out) {
    switch (view.step) {
        case BreakawayStep::not_begun:
            caution(ui, "It must not roll",
                    "Chock wheels that stay on the ground, both ways. Only then lift what must be lifted to turn a "
                    "wheel, onto rated stands.");
            paragraph(ui,
                      "Pull the pin, or the cable, and start the timer. Unplug the trailer first: the tow "
                      "vehicle must not feed the brakes.");
            return;
        case BreakawayStep::first_round:
            heading(ui, "Pin out: does each wheel hold?");
            return draw_wheels(ui, view, out);
        case BreakawayStep::waiting:
            heading(ui, "Leave the pin out");
            paragraph(ui, "At 15:00 each wheel is tried again. Note the battery's volts after 1, 5 and 15 minutes.");
            return draw_letting_go(ui, view, out);
        case BreakawayStep::last_round:
            heading(ui, "15:00: does each wheel still hold?");
            return draw_wheels(ui, view, out);
        case BreakawayStep::pin_in:
            heading(ui, "Put the pin back in: does each wheel turn free?");
            draw_wheels(ui, view, out);
            return paragraph(ui, "Electric brakes: let drums and magnets cool, and recharge the battery.", true);
        case BreakawayStep::done:
            heading(ui, "Done");
            return draw_wheels(ui, view, out);
    }
}

std::vector<ActionSpec> actions_of(const BreakawayView& view) {
    const bool ready = !view.wheels.empty();
    switch (view.step) {
        case BreakawayStep::not_begun:
            return {{{"Pin is out: start", "start"}, Tone::strong, Icon::none, ready, true}};
        case BreakawayStep::first_round:
        case BreakawayStep::waiting:
            return {{{"Stop early", "stop"}, Tone::quiet, Icon::none, true, false}};
        case BreakawayStep::last_round:
            return {{{"Stop the timer", "stop"}, Tone::strong, Icon::check, true, true}};
        case BreakawayStep::pin_in:
            return {{{"The pin is back in", "pin in"}, Tone::strong, Icon::check, true, true}};
        case BreakawayStep::done:
            break;
    }
    return {{{"Remove this test", "remove"}, Tone::danger, Icon::erase, true, false},
            {{"Test again", "again"}, Tone::quiet, Icon::none, true, false}};
}

void answer_action(const BreakawayView& view, const Instant& now, Commands& out) {
    BreakawayTest test = view.test;
    switch (view.step) {
        case BreakawayStep::not_begun:
            test.started = now;
            break;
        case BreakawayStep::first_round:
        case BreakawayStep::waiting:
        case BreakawayStep::last_round:
            test.ended = now;
            break;
        case BreakawayStep::pin_in:
            test.pin_in_again = true;
            break;
        case BreakawayStep::done:
            test.id = {};
            test.started = now;
            test.ended.reset();
            test.pin_in_again = false;
            for (WheelHeld& w : test.wheels) w = {w.place, {}, {}, {}};
            break;
    }
    out.push_back(PutBreakawayTest{std::move(test)});
}

}  // namespace

void draw_breakaway(UiContext& ui, const BreakawayView& view, const Instant& now, ReadingState& state, Commands& out) {
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "breakaway", actions_of(view)), [&] {
        if (!view.clock.empty()) remark(ui, view.clock, view.time_up ? "The time is up." : "The timer runs.");
        if (!view.result.empty()) paragraph(ui, view.result);
        if (view.wheels.empty()) paragraph(ui, "No axle of this trailer is known to have brakes.");
        draw_step(ui, view, out);
        draw_point_readings(ui, view.readings, view.drafts, out);
    });
    const bool runs = view.step != BreakawayStep::not_begun && !view.stopped;
    if (runs) ui.wake_at(std::floor(ui.now_s) + 1);
    answer_chrome(answer, out);
    const bool done = view.step == BreakawayStep::done;
    if (answer.tapped(0) && done) out.push_back(RemoveBreakawayTest{view.test.id});
    if (answer.tapped(done ? 1 : 0)) answer_action(view, now, out);
    if (view.entry) draw_reading(ui, *view.entry, view.drafts, state, out);
}

}  // namespace cotter

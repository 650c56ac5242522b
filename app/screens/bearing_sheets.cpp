// The bearing page's keypads and choices. See bearing_screen.h.
#include <array>
#include <cmath>

#include "app/screens/bearing_screen.h"
#include "app/ui/keypad.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

KeypadSpec pad_spec(BearingAsk ask) {
    KeypadSpec spec;
    spec.units = {"[in_i]", "mm"};
    switch (ask) {
        case BearingAsk::least:
            spec.title = "Minimum end play";
            break;
        case BearingAsk::most:
            spec.title = "Maximum end play";
            break;
        case BearingAsk::seated:
            spec.title = "Seating torque, while turning";
            spec.units = {"[lbf_av].[ft_i]", "[lbf_av].[in_i]", "N.m"};
            break;
        case BearingAsk::locked:
            spec.title = "Torque of the lock";
            spec.units = {"[lbf_av].[ft_i]", "N.m"};
            break;
        default:
            break;
    }
    return spec;
}

void put_keyed(BearingSetting& setting, BearingAsk ask, const Amount& amount) {
    if (ask == BearingAsk::least) setting.play_min = amount;
    if (ask == BearingAsk::most) setting.play_max = amount;
    if (ask == BearingAsk::seated) setting.seated = amount;
    if (ask == BearingAsk::locked) setting.locked = amount;
}

void ask_keyed(UiContext& ui, const BearingView& view, BearingState& state, Commands& out) {
    if (!state.pad) state.pad.emplace(pad_spec(state.ask));
    const KeypadAnswer answer = keypad_sheet(ui, "bearing pad", *state.pad);
    if (answer == KeypadAnswer::none) return;
    if (answer == KeypadAnswer::done) {
        BearingSetting setting = view.setting;
        put_keyed(setting, state.ask, Amount{*state.pad->number(), state.pad->unit()});
        out.push_back(PutBearing{std::move(setting), std::nullopt});
    }
    state.pad.reset();
    state.ask = BearingAsk::none;
}

// One of a few numbers that occur; nothing else occurs often enough to be typed.
void ask_count(UiContext& ui, const BearingView& view, BearingState& state, Commands& out) {
    constexpr std::array<std::string_view, 8> kThreads{"10", "11", "12", "14", "16", "18", "20", "24"};
    constexpr std::array<std::string_view, 8> kPositions{"4", "6", "8", "12", "16", "18", "24", "36"};
    const bool threads = state.ask == BearingAsk::threads;
    const auto& choices = threads ? kThreads : kPositions;
    const BearingSetting& s = view.setting;
    const std::string now =
        threads ? (s.threads_per_inch ? s.threads_per_inch->text() : "") : std::to_string(s.lock_positions);
    const SheetAnswer answer =
        sheet(ui, {"count", threads ? "Threads per inch" : "Lock positions in one turn", {}}, [&] {
            paragraph(ui, threads ? "Count them along one inch of the spindle."
                                  : "6 for a castle nut on one cross hole, 12 on two; count the holes of a washer.");
            std::vector<ChipSpec> specs;
            for (const std::string_view c : choices) specs.push_back({c, c == now, true, {}});
            const auto tapped = chips(ui, "counts", specs);
            if (!tapped) return;
            const auto number = Number::parse(choices[*tapped]);
            BearingSetting setting = s;
            if (threads)
                setting.threads_per_inch = *number;
            else
                setting.lock_positions = static_cast<int>(std::lround(number->value()));
            out.push_back(PutBearing{std::move(setting), std::nullopt});
            state.ask = BearingAsk::none;
        });
    if (answer.closed) state.ask = BearingAsk::none;
}

void show_methods(UiContext& ui, const BearingView& view, BearingState& state) {
    const SheetSpec spec{"methods",
                         "Typical procedures for this nut",
                         {{{"Understood", "understood"}, Tone::strong, Icon::check, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        for (const MethodView& m : view.methods) {
            heading(ui, m.title);
            paragraph(ui, m.text);
        }
        remark(ui, "The manufacturer's sheet overrides them",
               "They show what is usual; none of their figures is taken over.");
    });
    if (answer.closed || answer.action) state.ask = BearingAsk::none;
}

}  // namespace

void draw_bearing_sheet(UiContext& ui, const BearingView& view, BearingState& state, Commands& out) {
    switch (state.ask) {
        case BearingAsk::none:
            return;
        case BearingAsk::threads:
        case BearingAsk::positions:
            return ask_count(ui, view, state, out);
        case BearingAsk::methods:
            return show_methods(ui, view, state);
        default:
            return ask_keyed(ui, view, state, out);
    }
}

}  // namespace cotter

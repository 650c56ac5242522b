// See torque_sheets.h.
#include "app/screens/torque_sheets.h"

#include <array>

#include "app/ui/keypad.h"
#include "app/ui/widgets.h"
#include "core/work/torque_check.h"

namespace cotter {

namespace {

struct Asking {
    const TorqueView& view;
    TorqueSheet& state;
    Commands& out;

    void put(Torque torque) const {
        out.push_back(PutTorque{std::move(torque)});
        state = {};
    }
};

KeypadSpec pad_spec(TorqueAsk ask) {
    KeypadSpec spec;
    spec.units = {"[in_i]", "mm"};
    spec.fractions = true;
    if (ask == TorqueAsk::figure)
        spec = {"Maker's figure", {"[lbf_av].[ft_i]", "N.m", "[lbf_av].[in_i]"}, {}, false, false, false, false, false};
    if (ask == TorqueAsk::handle) spec.title = "Grip to drive";
    if (ask == TorqueAsk::extension) spec.title = "Drive to nut, along the adapter";
    return spec;
}

// The keypad until a value is there.
std::optional<Amount> keyed(UiContext& ui, const Asking& a) {
    if (!a.state.pad) a.state.pad.emplace(pad_spec(a.state.ask));
    const KeypadAnswer answer = keypad_sheet(ui, "torque pad", *a.state.pad);
    if (answer == KeypadAnswer::closed) a.state = {};
    if (answer != KeypadAnswer::done) return std::nullopt;
    const Amount amount{*a.state.pad->number(), a.state.pad->unit()};
    a.state.pad.reset();
    return amount;
}

void ask_count(UiContext& ui, const Asking& a) {
    constexpr std::array kCounts{4, 5, 6, 8, 10};
    constexpr std::array<std::string_view, 5> kWords{"4", "5", "6", "8", "10"};
    const SheetAnswer answer = sheet(ui, {"count", "How many nuts?", {}}, [&] {
        std::vector<ChipSpec> specs;
        for (std::size_t i = 0; i < kCounts.size(); ++i)
            specs.push_back({kWords[i], a.view.torque.fasteners == kCounts[i], a.view.torque.passes.empty(), {}});
        if (const auto tapped = one_of(ui, "counts", specs)) {
            Torque torque = a.view.torque;
            torque.fasteners = kCounts[*tapped];
            a.put(std::move(torque));
        }
    });
    if (answer.closed) a.state = {};
}

// Plausible for a nut of a wheel; a figure in the wrong unit is twelve times off.
constexpr double kLeast = 40, kMost = 900;  // N·m

void ask_source(UiContext& ui, const Asking& a) {
    const bool good = a.state.figure && !a.state.words.empty();
    const std::vector<ActionSpec> actions{{{"Save", "save"}, Tone::strong, Icon::check, good, true}};
    const std::string title = "Where does it say " + (a.state.figure ? a.state.figure->text() : std::string()) + "?";
    const SheetAnswer answer = sheet(ui, {"source", title, actions}, [&] {
        if (a.state.figure && (a.state.figure->si() < kLeast || a.state.figure->si() > kMost))
            remark(ui, "Look at the unit", "That is unusual for a wheel nut. lb-in for lb-ft is twelve times off.");
        std::vector<ChipSpec> specs;
        for (const std::string& s : a.view.sources) specs.push_back({s, s == a.state.words, true, {}});
        if (const auto tapped = chips(ui, "sources", specs)) a.state.words = a.view.sources[*tapped];
        const FieldAnswer field =
            text_field(ui, {"Document and page", "source"}, {a.state.words, "axle maker's manual, page 41", ""});
        if (field.text) a.state.words = *field.text;
        paragraph(ui, "A stud's size does not tell the torque: only the maker does.", true);
    });
    if (answer.action && good) {
        Torque torque = a.view.torque;
        torque.target = a.state.figure;
        torque.target_source = a.state.words;
        return a.put(std::move(torque));
    }
    if (answer.closed) a.state = {};
}

void choose_wrench(const Asking& a, const std::string& id, const std::optional<Date>& calibrated) {
    Torque torque = a.view.torque;
    torque.wrench = id;
    torque.wrench_calibrated = calibrated;
    a.put(std::move(torque));
}

void add_wrench(const Asking& a) {
    Settings settings = a.view.settings;
    settings.wrenches.push_back({a.state.words, std::nullopt});
    a.out.push_back(PutSettings{std::move(settings)});
    choose_wrench(a, std::string(a.state.words), std::nullopt);
}

void ask_wrench(UiContext& ui, const Asking& a) {
    std::vector<ActionSpec> actions;
    if (!a.state.words.empty()) actions.push_back({{"Use it", "use"}, Tone::strong, Icon::check, true, true});
    std::optional<WrenchChoice> chosen;
    const SheetAnswer answer = sheet(ui, {"wrench", "Which wrench?", actions}, [&] {
        for (const WrenchChoice& w : a.view.wrenches)
            if (row(ui, {w.label, "wrench " + w.id}, {{}, {}, {}, Icon::none, false, w.chosen, true})) chosen = w;
        const FieldAnswer field =
            text_field(ui, {"Another one: what is engraved on it", "another"}, {a.state.words, "T-3", ""});
        if (field.text) a.state.words = *field.text;
    });
    if (chosen) return choose_wrench(a, chosen->id, chosen->calibrated);
    if (answer.action) return add_wrench(a);
    if (answer.closed) a.state = {};
}

void ask_angle(UiContext& ui, const Asking& a) {
    constexpr std::array<std::string_view, 5> kAngles{"0", "30", "45", "60", "90"};
    const SheetAnswer answer = sheet(ui, {"angle", "At what angle does it stand?", {}}, [&] {
        std::vector<ChipSpec> specs;
        for (const std::string_view angle : kAngles) specs.push_back({angle, false, true, {}});
        const auto tapped = one_of(ui, "angles", specs);
        paragraph(ui, "Degrees: 0 straight ahead of the wrench, 90 square to it, where nothing is to be corrected.",
                  true);
        if (!tapped) return;
        const auto number = Number::parse(kAngles[*tapped]);
        Torque torque = a.view.torque;
        torque.wrench = wrench_text(wrench_id(torque.wrench), Adapter{*a.state.handle, *a.state.extension, *number});
        a.put(std::move(torque));
    });
    if (answer.closed) a.state = {};
}

void ask_not_done(UiContext& ui, const Asking& a) {
    constexpr std::array<std::string_view, 5> kReasons{"no maker's figure", "no torque wrench here",
                                                       "wheel not taken off", "stud or nut to be renewed first",
                                                       "customer declined"};
    const SheetAnswer answer = sheet(ui, {"not torqued", "Why is it not torqued?", {}}, [&] {
        std::vector<ChipSpec> specs;
        for (const std::string_view r : kReasons) specs.push_back({r, r == a.view.torque.reason, true, {}});
        const auto tapped = chips(ui, "reasons", specs);
        if (!tapped) return;
        Torque torque = a.view.torque;
        torque.fasteners = std::max(1, torque.fasteners);
        torque.taken = Taken::not_measured;
        torque.reason = kReasons[*tapped];
        a.put(std::move(torque));
    });
    if (answer.closed) a.state = {};
}

}  // namespace

void open_torque_sheet(TorqueSheet& state, TorqueAsk ask) {
    state = {};
    state.ask = ask;
}

void draw_torque_sheet(UiContext& ui, const TorqueView& view, TorqueSheet& state, Commands& out) {
    const Asking a{view, state, out};
    switch (state.ask) {
        case TorqueAsk::none:
            return;
        case TorqueAsk::count:
            return ask_count(ui, a);
        case TorqueAsk::figure:
            if (auto amount = keyed(ui, a)) {
                state.figure = *amount;
                state.words = view.torque.target_source;
                state.ask = TorqueAsk::source;
            }
            return;
        case TorqueAsk::source:
            return ask_source(ui, a);
        case TorqueAsk::wrench:
            return ask_wrench(ui, a);
        case TorqueAsk::handle:
            if ((state.handle = keyed(ui, a))) state.ask = TorqueAsk::extension;
            return;
        case TorqueAsk::extension:
            if ((state.extension = keyed(ui, a))) state.ask = TorqueAsk::angle;
            return;
        case TorqueAsk::angle:
            return ask_angle(ui, a);
        case TorqueAsk::not_done:
            return ask_not_done(ui, a);
    }
}

}  // namespace cotter

// See torque_sheets.h.
#include "app/screens/torque_sheets.h"

#include <array>

#include "app/ui/keypad.h"
#include "app/ui/widgets.h"
#include "core/work/torque_check.h"
#include "core/work/torque_like.h"
#include "core/work/wrench.h"

namespace cotter {

namespace {

struct AskingTorque {
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
    if (ask == TorqueAsk::wrench_length) spec.title = "Grip to drive";
    if (ask == TorqueAsk::adapter_length) spec.title = "Drive to nut, along the adapter";
    return spec;
}

// The keypad until a value is there.
std::optional<Amount> keyed(UiContext& ui, const AskingTorque& a) {
    if (!a.state.pad) a.state.pad.emplace(pad_spec(a.state.ask));
    const KeypadAnswer answer = keypad_sheet(ui, "torque pad", *a.state.pad);
    if (answer == KeypadAnswer::closed) a.state = {};
    if (answer != KeypadAnswer::done) return std::nullopt;
    const Amount amount{*a.state.pad->number(), a.state.pad->unit()};
    a.state.pad.reset();
    return amount;
}

void ask_count(UiContext& ui, const AskingTorque& a) {
    constexpr std::array kCounts{4, 5, 6, 8, 10};
    constexpr std::array<std::string_view, 5> kWords{"4", "5", "6", "8", "10"};
    const SheetAnswer answer = sheet(ui, {"count", "How many nuts?", {}}, [&] {
        std::vector<ChipSpec> specs;
        for (std::size_t i = 0; i < kCounts.size(); ++i)
            specs.push_back({kWords[i], a.view.torque.fasteners == kCounts[i], a.view.torque.passes.empty(), {}});
        if (const auto tapped = one_of(ui, "counts", specs)) {
            a.put(with_count(a.view.torque, kCounts[*tapped]));
        }
    });
    if (answer.closed) a.state = {};
}

void take_figure(const AskingTorque& a, const Amount& figure) {
    a.state.figure = figure;
    a.state.words = a.view.torque.target_source;
    const bool doubt = doubt_target(a.view.torque.joint, figure, a.view.like).has_value();
    a.state.ask = doubt ? TorqueAsk::doubt : TorqueAsk::source;
}

// Before anything is kept: pounds times inches for pounds times feet is twelve times off.
void ask_doubt(UiContext& ui, const AskingTorque& a) {
    const auto doubt = doubt_target(a.view.torque.joint, *a.state.figure, a.view.like);
    if (!doubt) return open_torque_sheet(a.state, TorqueAsk::figure);
    const std::string keep = "Keep " + a.state.figure->text();
    const std::string other = doubt->suggestion ? "It is " + doubt->suggestion->text() : std::string();
    const SheetAnswer answer = sheet(ui,
                                     {"unit",
                                      "Look at the unit",
                                      {{{keep, "keep"}, Tone::quiet, Icon::none, true, false},
                                       {{"Key it again", "again"}, Tone::strong, Icon::erase, true, true}}},
                                     [&] {
                                         paragraph(ui, upper_first(doubt->words));
                                         if (other.empty() || !wide_button(ui, {other, "other unit"})) return;
                                         a.state.figure = doubt->suggestion;
                                         a.state.ask = TorqueAsk::source;
                                     });
    if (answer.action == 0u) {
        a.state.unit_meant = true;
        a.state.ask = TorqueAsk::source;
    }
    if (answer.action == 1u) open_torque_sheet(a.state, TorqueAsk::figure);
    if (answer.closed) a.state = {};
}

void ask_source(UiContext& ui, const AskingTorque& a) {
    const bool good = a.state.figure && !a.state.words.empty();
    const std::vector<ActionSpec> actions{{{"Save", "save"}, Tone::strong, Icon::check, good, true}};
    const std::string title = "Where does it say " + (a.state.figure ? a.state.figure->text() : std::string()) + "?";
    const SheetAnswer answer = sheet(ui, {"source", title, actions}, [&] {
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
        torque.target_from.reset();
        torque.unit_confirmed = a.state.unit_meant;
        return a.put(std::move(torque));
    }
    if (answer.closed) a.state = {};
}

void choose_wrench(const AskingTorque& a, const std::string& id, const std::optional<Date>& calibrated) {
    Torque torque = a.view.torque;
    torque.wrench = id;
    torque.wrench_calibrated = calibrated;
    a.put(std::move(torque));
}

void add_wrench(const AskingTorque& a) {
    Settings settings = a.view.settings;
    settings.wrenches.push_back({a.state.words, std::nullopt});
    a.out.push_back(PutSettings{std::move(settings)});
    choose_wrench(a, std::string(a.state.words), std::nullopt);
}

void ask_wrench(UiContext& ui, const AskingTorque& a) {
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

// Passes made already stay as the wrench was set; what that was at the nut is another with another adapter.
void put_adapter(const AskingTorque& a, const std::optional<Adapter>& adapter) {
    auto torque = with_adapter(a.view.torque, adapter);
    if (!torque)
        a.state.refused = torque.error().line();
    else
        a.put(std::move(*torque));
}

void say_what_of_passes(UiContext& ui, const AskingTorque& a) {
    if (!a.view.torque.passes.empty())
        remark(ui, "Passes are there already",
               "They count as made with it: the wrench's setting stays, the torque at the nut is another.");
}

void ask_adapter(UiContext& ui, const AskingTorque& a) {
    if (!a.view.torque.adapter) return open_torque_sheet(a.state, TorqueAsk::wrench_length);
    const Adapter& adapter = *a.view.torque.adapter;
    const SheetAnswer answer = sheet(ui,
                                     {"adapter",
                                      "Adapter",
                                      {{{"There is none", "none"}, Tone::quiet, Icon::erase, true, false},
                                       {{"Another one", "another"}, Tone::strong, Icon::none, true, true}}},
                                     [&] {
                                         fact(ui, "Drive to nut, along the adapter", adapter.length.text());
                                         fact(ui, "Grip to drive", adapter.wrench_length.text());
                                         fact(ui, "Angle", adapter.angle.text());
                                         say_what_of_passes(ui, a);
                                         if (!a.state.refused.empty()) remark(ui, "Not taken", a.state.refused);
                                     });
    if (answer.action == 0u) return put_adapter(a, std::nullopt);
    if (answer.action == 1u) return open_torque_sheet(a.state, TorqueAsk::wrench_length);
    if (answer.closed) a.state = {};
}

void ask_angle(UiContext& ui, const AskingTorque& a) {
    constexpr std::array<std::string_view, 5> kAngles{"0", "30", "45", "60", "90"};
    std::optional<Amount> angle;
    const SheetAnswer answer = sheet(ui, {"angle", "At what angle does it stand?", {}}, [&] {
        std::vector<ChipSpec> specs;
        for (const std::string_view one : kAngles) specs.push_back({one, false, true, {}});
        if (const auto tapped = one_of(ui, "angles", specs))
            if (const auto made = make_amount(kAngles[*tapped], "deg")) angle = *made;
        paragraph(ui, "Degrees: 0 straight ahead of the wrench, 90 square to it, where nothing is to be corrected.",
                  true);
        say_what_of_passes(ui, a);
        if (!a.state.refused.empty()) remark(ui, "Not taken", a.state.refused);
    });
    if (angle) return put_adapter(a, Adapter{*a.state.adapter_length, *a.state.wrench_length, *angle});
    if (answer.closed) a.state = {};
}

void ask_not_done(UiContext& ui, const AskingTorque& a) {
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
    const AskingTorque a{view, state, out};
    switch (state.ask) {
        case TorqueAsk::none:
            return;
        case TorqueAsk::count:
            return ask_count(ui, a);
        case TorqueAsk::figure:
            if (const auto amount = keyed(ui, a)) take_figure(a, *amount);
            return;
        case TorqueAsk::doubt:
            return ask_doubt(ui, a);
        case TorqueAsk::source:
            return ask_source(ui, a);
        case TorqueAsk::wrench:
            return ask_wrench(ui, a);
        case TorqueAsk::adapter:
            return ask_adapter(ui, a);
        case TorqueAsk::wrench_length:
            if ((state.wrench_length = keyed(ui, a))) state.ask = TorqueAsk::adapter_length;
            return;
        case TorqueAsk::adapter_length:
            if ((state.adapter_length = keyed(ui, a))) state.ask = TorqueAsk::angle;
            return;
        case TorqueAsk::angle:
            return ask_angle(ui, a);
        case TorqueAsk::not_done:
            return ask_not_done(ui, a);
    }
}

}  // namespace cotter

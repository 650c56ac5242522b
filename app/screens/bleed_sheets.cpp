// The bleed page's keypads and choices. See bleed_screen.h.
#include "app/screens/bleed_screen.h"

#include <algorithm>
#include <array>

#include "app/ui/keypad.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void close(BleedState& state) {
    state = {};
}

void choose_end(UiContext& ui, std::string_view key, const std::vector<PipeEnd>& ends, std::string& chosen) {
    std::vector<std::string> keys;
    std::vector<ChipSpec> specs;
    for (const PipeEnd& e : ends) keys.push_back(std::string(key) + " " + e.code);
    for (std::size_t i = 0; i < ends.size(); ++i)
        specs.push_back({{ends[i].label, keys[i]}, ends[i].code == chosen, true, {}});
    if (const auto tapped = chips(ui, key, specs)) chosen = ends[*tapped].code;
}

void ask_pipe(UiContext& ui, const BleedView& view, BleedState& state) {
    const bool ready = !state.to.empty();
    const SheetSpec spec{"pipe", "A pipe", {{{"Its length", "length"}, Tone::strong, Icon::none, ready, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        heading(ui, "From");
        choose_end(ui, "from", view.from, state.from);
        heading(ui, "To");
        choose_end(ui, "to", view.to, state.to);
        paragraph(ui, "Follow it from the actuator on. Where it splits there is a tee.", true);
    });
    if (answer.closed) close(state);
    if (answer.action && ready) {
        state.ask = BleedAsk::length;
        state.pad.reset();
    }
}

std::optional<Amount> keyed(UiContext& ui, BleedState& state, const KeypadSpec& spec) {
    if (!state.pad) state.pad.emplace(spec);
    const KeypadAnswer answer = keypad_sheet(ui, "bleed pad", *state.pad);
    if (answer == KeypadAnswer::closed) close(state);
    if (answer != KeypadAnswer::done) return std::nullopt;
    const Amount amount{*state.pad->number(), state.pad->unit()};
    state.pad.reset();
    return amount;
}

void ask_length(UiContext& ui, const BleedView& view, BleedState& state, Commands& out) {
    KeypadSpec spec;
    spec.title = "Length along its way";
    spec.units = {"[ft_i]", "m", "[in_i]", "cm"};
    std::erase_if(spec.units, [](const std::string& u) { return find_unit(u) == nullptr; });
    const auto length = keyed(ui, state, spec);
    if (!length) return;
    PipeRoute route = view.route;
    route.legs.push_back({state.from, state.to, *length, std::nullopt});
    const std::size_t added = route.legs.size() - 1;
    out.push_back(PutPipeRoute{std::move(route)});
    close(state);
    state.ask = BleedAsk::bore;
    state.leg = added;
}

void put_bore(const BleedView& view, BleedState& state, const Amount& bore, Commands& out) {
    PipeRoute route = view.route;
    route.legs[state.leg].bore = bore;
    out.push_back(PutPipeRoute{std::move(route)});
    close(state);
}

// The two tubes that trailers mostly have; walls differ, so another one can be keyed in, and none need be known.
void ask_bore(UiContext& ui, const BleedView& view, BleedState& state, Commands& out) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 2> kTubes{
        std::pair{"3/16 in tube, 0.128 in inside", "0.128"}, std::pair{"1/4 in tube, 0.190 in inside", "0.190"}};
    if (state.leg >= view.legs.size()) return close(state);
    const SheetSpec spec{
        "bore", "How wide is it inside?", {{{"Not known", "bore not known"}, Tone::quiet, Icon::none, true, false}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        paragraph(ui, view.legs[state.leg].label);
        for (const auto& [words, inches] : kTubes)
            if (wide_button(ui, words))
                if (const auto bore = make_amount(inches, "[in_i]")) put_bore(view, state, *bore, out);
        if (wide_button(ui, "Key in another")) state.ask = BleedAsk::bore_keyed;
        paragraph(ui, "With it the fluid for a flush can be told. The order needs only the lengths.", true);
    });
    if (answer.closed || answer.action) close(state);
}

void ask_bore_keyed(UiContext& ui, const BleedView& view, BleedState& state, Commands& out) {
    if (state.leg >= view.legs.size()) return close(state);
    KeypadSpec spec;
    spec.title = "Inside diameter";
    spec.units = {"[in_i]", "mm"};
    spec.fractions = true;
    if (const auto bore = keyed(ui, state, spec)) put_bore(view, state, *bore, out);
}

// Pipes that begin where the removed one ended are kept: the order says what is missing.
void ask_leg(UiContext& ui, const BleedView& view, BleedState& state, Commands& out) {
    if (state.leg >= view.legs.size()) return close(state);
    const LegRow& leg = view.legs[state.leg];
    const SheetSpec spec{"leg",
                         leg.label,
                         {{{"Take it out", "take out"}, Tone::quiet, Icon::erase, true, false},
                          {{"Inside diameter", "bore"}, Tone::strong, Icon::none, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        fact(ui, "Length", leg.value);
        fact(ui, "Inside diameter", leg.bore.empty() ? "not entered" : std::string_view(leg.bore));
    });
    if (answer.action == 0u) {
        PipeRoute route = view.route;
        route.legs.erase(route.legs.begin() + static_cast<std::ptrdiff_t>(state.leg));
        out.push_back(PutPipeRoute{std::move(route)});
    }
    if (answer.action == 1u) {
        state.ask = BleedAsk::bore;
        return;
    }
    if (answer.closed || answer.action) close(state);
}

void ask_drawn(UiContext& ui, BleedState& state) {
    KeypadSpec spec;
    spec.title = "Drawn in this round";
    spec.units = {"mL", "[foz_us]"};
    if (auto drawn = keyed(ui, state, spec)) {
        state.drawn = *drawn;
        state.ask = BleedAsk::ran;
    }
}

void draw_fluid_doubts(UiContext& ui, const BleedView& view, const std::string& fluid) {
    for (std::size_t i = 0; i < view.fluids.size() && i < view.doubts.size(); ++i) {
        if (view.fluids[i] != fluid) continue;
        for (const FluidDoubtLine& d : view.doubts[i]) {
            const std::string text = d.words + " " + d.source;
            if (d.must_not)
                caution(ui, "Wrong fluid for this brake system", text);
            else
                remark(ui, "Ask before it goes in", text);
        }
    }
}

void ask_ran(UiContext& ui, const BleedView& view, BleedState& state, Commands& out) {
    if (state.fluid.empty()) state.fluid = view.fluid;
    std::optional<BleedCount> count;
    const auto answer_with = [&](bool clear, bool bubbles) {
        count.emplace();
        count->place = state.place;
        count->drawn = *state.drawn;
        count->clear = clear;
        count->bubbles = bubbles;
        count->fluid = state.fluid;
    };
    const SheetAnswer answer = sheet(ui, {"ran", "How did it run in the end?", {}}, [&] {
        heading(ui, "Put in, as on the bottle");
        std::vector<ChipSpec> specs;
        for (const std::string& f : view.fluids) specs.push_back({f, f == state.fluid, true, {}});
        if (const auto tapped = chips(ui, "fluids", specs)) state.fluid = view.fluids[*tapped];
        draw_fluid_doubts(ui, view, state.fluid);
        heading(ui, state.drawn->text() + " ran");
        if (wide_button(ui, "Clear, no bubbles")) answer_with(true, false);
        if (wide_button(ui, "Clear, still bubbles")) answer_with(true, true);
        if (wide_button(ui, "Dark or dirty")) answer_with(false, false);
        if (wide_button(ui, "Dark, with bubbles")) answer_with(false, true);
    });
    if (count) out.push_back(PutBleedCount{std::move(*count)});
    if (count || answer.closed) close(state);
}

void ask_round(UiContext& ui, const BleedView& view, BleedState& state, Commands& out) {
    const auto is = [&](const RoundRow& r) { return r.id == state.round; };
    const auto round = std::find_if(view.rounds.begin(), view.rounds.end(), is);
    if (round == view.rounds.end()) return close(state);
    const SheetSpec spec{"round",
                         round->label,
                         {{{"Remove this count", "remove"}, Tone::danger, Icon::erase, true, false},
                          {{"Done", "done"}, Tone::strong, Icon::check, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        fact(ui, "Drawn in this round", round->value);
        paragraph(ui, round->under);
    });
    if (answer.action == 0u) out.push_back(RemoveBleedCount{round->id});
    if (answer.closed || answer.action) close(state);
}

}  // namespace

void draw_bleed_sheet(UiContext& ui, const BleedView& view, BleedState& state, Commands& out) {
    switch (state.ask) {
        case BleedAsk::none:
            return;
        case BleedAsk::pipe:
            return ask_pipe(ui, view, state);
        case BleedAsk::length:
            return ask_length(ui, view, state, out);
        case BleedAsk::leg:
            return ask_leg(ui, view, state, out);
        case BleedAsk::bore:
            return ask_bore(ui, view, state, out);
        case BleedAsk::bore_keyed:
            return ask_bore_keyed(ui, view, state, out);
        case BleedAsk::drawn:
            return ask_drawn(ui, state);
        case BleedAsk::ran:
            return ask_ran(ui, view, state, out);
        case BleedAsk::round:
            return ask_round(ui, view, state, out);
    }
}

}  // namespace cotter

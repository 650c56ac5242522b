// See identify_screen.h.
#include "app/screens/identify_screen.h"

#include <array>

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/screens/words_field.h"
#include "app/ui/keypad.h"
#include "app/ui/sketch.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

std::string upper(std::string text) {
    for (char& c : text)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return text;
}

using Change = std::function<void(Axle&)>;

// One choice into all axles, or into the one that is being looked at.
void change_axles(const IdentifyView& view, const IdentifyState& state, Commands& out, const Change& change) {
    Trailer trailer = view.trailer;
    const bool one = state.each_axle || !view.same_axles;
    for (std::size_t i = 0; i < trailer.axles.size(); ++i)
        if (!one || i == state.axle) change(trailer.axles[i]);
    out.push_back(PutTrailer{std::move(trailer)});
}

void draw_count(UiContext& ui, const IdentifyView& view, Commands& out) {
    heading(ui, "Axles");
    const std::size_t there = view.trailer.axles.size();
    if (view.axles_fixed) return fact(ui, "Number of axles", std::to_string(there));
    const std::array specs{
        SketchSpec{"One", Sketch::one_axle, there == 1}, SketchSpec{"Two", Sketch::two_axles, there == 2},
        SketchSpec{"Three", Sketch::three_axles, there == 3}, SketchSpec{"Four", Sketch::four_axles, there == 4}};
    if (const auto i = sketches(ui, "axles", specs)) out.push_back(PutTrailer{with_axles(view.trailer, *i + 1)});
}

void draw_studs(UiContext& ui, const IdentifyView& view, const Axle& axle, const IdentifyState& state, Commands& out) {
    constexpr std::array kStuds{4, 5, 6, 8, 10};
    heading(ui, "Studs of a wheel");
    std::vector<std::string> labels;
    for (const int n : kStuds) labels.push_back(std::to_string(n));
    std::vector<ChipSpec> chips;
    for (std::size_t i = 0; i < kStuds.size(); ++i) chips.push_back({labels[i], axle.studs == kStuds[i], true, {}});
    if (const auto i = one_of(ui, "studs", chips))
        change_axles(view, state, out, [n = kStuds[*i]](Axle& a) { a.studs = n; });
}

void draw_axle(UiContext& ui, const IdentifyView& view, const IdentifyState& state, Commands& out) {
    const Axle& axle = view.trailer.axles[std::min(state.axle, view.trailer.axles.size() - 1)];
    heading(ui, "Wheels");
    const std::array wheels{SketchSpec{"Single", Sketch::single_wheels, axle.wheels == Wheels::single},
                            SketchSpec{"Dual", Sketch::dual_wheels, axle.wheels == Wheels::dual}};
    if (const auto i = sketches(ui, "wheels", wheels))
        change_axles(view, state, out, [i](Axle& a) { a.wheels = static_cast<Wheels>(*i); });
    heading(ui, "Brake");
    const std::array brakes{SketchSpec{"None", Sketch::no_brake, axle.brake == BrakeKind::none},
                            SketchSpec{"Hydraulic disc", Sketch::disc, axle.brake == BrakeKind::hydraulic_disc},
                            SketchSpec{"Hydraulic drum", Sketch::drum, axle.brake == BrakeKind::hydraulic_drum},
                            SketchSpec{"Electric drum", Sketch::electric_drum, axle.brake == BrakeKind::electric_drum},
                            SketchSpec{"Air", Sketch::air, is_air(axle.brake)}};
    if (const auto i = sketches(ui, "brake", brakes))
        change_axles(view, state, out, [i](Axle& a) { a.brake = static_cast<BrakeKind>(*i); });
    if (is_air(axle.brake))
        remark(ui, "Air brakes are for people trained for them",
               "Which kind they are is asked for under 'Ratings, tires, use'.");
    heading(ui, "Hub");
    const std::array hubs{SketchSpec{"Oil bath", Sketch::oil_bath, axle.hub == HubKind::oil_bath},
                          SketchSpec{"Grease", Sketch::grease, axle.hub == HubKind::grease},
                          SketchSpec{"Semi-fluid grease", Sketch::semi_fluid, axle.hub == HubKind::semi_fluid_grease}};
    if (const auto i = sketches(ui, "hub", hubs))
        change_axles(view, state, out, [i](Axle& a) { a.hub = static_cast<HubKind>(*i); });
    draw_studs(ui, view, axle, state, out);
}

// With several axles: all alike, or one after the other.
void draw_which(UiContext& ui, const IdentifyView& view, IdentifyState& state) {
    const std::size_t count = view.trailer.axles.size();
    if (count < 2) return;
    if (view.same_axles && toggle(ui, {"The axles differ", "differ"}, state.each_axle))
        state.each_axle = !state.each_axle;
    if (view.same_axles && !state.each_axle) return;
    std::vector<std::string> labels;
    for (std::size_t i = 0; i < count; ++i) labels.push_back(fmt::format("Axle {}", i + 1));
    std::vector<ChipSpec> chips;
    for (std::size_t i = 0; i < count; ++i) chips.push_back({labels[i], state.axle == i, true, {}});
    if (const auto i = one_of(ui, "which axle", chips)) state.axle = *i;
}

void put_vin(const IdentifyView& view, const Drafts& drafts, bool nonstandard, Commands& out) {
    Trailer trailer = view.trailer;
    trailer.vin = upper(view.vin);
    trailer.vin_nonstandard = nonstandard;
    out.push_back(PutTrailer{std::move(trailer)});
    Drafts cleared = drafts;
    cleared.vin.clear();
    out.push_back(KeepDrafts{std::move(cleared)});
}

// A number that does not check stays a draft: it is shown with what is wrong, and lost to no one.
void draw_vin(UiContext& ui, const IdentifyView& view, const Drafts& drafts, Commands& out) {
    const FieldAnswer answer =
        text_field(ui, {"VIN", "vin"}, {view.vin, "17 characters, from the data plate", view.vin_note});
    if (answer.text) {
        Drafts typed = drafts;
        typed.vin = *answer.text;
        out.push_back(KeepDrafts{std::move(typed)});
    }
    const bool resting = ui.state.edited == 0 && ui.state.edited_before == 0;
    if (resting && !answer.text && !drafts.vin.empty() && view.vin_note.empty()) put_vin(view, drafts, false, out);
    if (view.vin.empty() || (view.vin_note.empty() && !view.trailer.vin_nonstandard)) return;
    const bool shot = !view.plate_shot.empty();
    if (toggle(ui, {"It has no standard number", "non-standard"}, view.trailer.vin_nonstandard,
               shot ? "Home-built, state-assigned or before 1981."
                    : "Home-built, state-assigned or before 1981: "
                      "photograph the data plate first.",
               shot))
        put_vin(view, drafts, !view.trailer.vin_nonstandard, out);
}

void draw_names(UiContext& ui, const IdentifyView& view, const Drafts& drafts, Commands& out) {
    heading(ui, "What it is called");
    const auto put = [&](std::string Trailer::*field) {
        return [&out, &view, field](const std::string& text) {
            Trailer trailer = view.trailer;
            trailer.*field = text;
            out.push_back(PutTrailer{std::move(trailer)});
        };
    };
    const Trailer& t = view.trailer;
    words_field(ui, {"Unit", "unit"}, {t.unit, "the fleet's own number", ""}, drafts, put(&Trailer::unit), out);
    words_field(ui, {"Plate", "plate"}, {t.plate, "", ""}, drafts, put(&Trailer::plate), out);
    draw_vin(ui, view, drafts, out);
    const auto visit = [&](std::string Visit::*field) {
        return [&out, &view, field](const std::string& text) {
            Visit changed = view.visit;
            changed.*field = text;
            out.push_back(PutVisit{std::move(changed)});
        };
    };
    words_field(ui, {"Customer", "customer"}, {view.visit.customer, "", ""}, drafts, visit(&Visit::customer), out);
    words_field(ui, {"Place", "place"}, {view.visit.place, "where the trailer stands", ""}, drafts,
                visit(&Visit::place), out);
    words_field(ui, {"Complaint", "complaint"}, {view.visit.complaint, "in the customer's words", "", TextKind::note},
                drafts, visit(&Visit::complaint), out);
}

void draw_label(UiContext& ui, const IdentifyView& view, const Drafts& drafts, IdentifyState& state, Commands& out) {
    const auto figure = [&](const char* title, const std::optional<Amount>& there, LabelFigure which,
                            std::vector<std::string> units) {
        RowSpec spec;
        spec.value = there ? there->text() : "not entered";
        if (!row(ui, {title, title}, spec)) return;
        state.figure = which;
        state.pad.emplace(KeypadSpec{title, std::move(units), {}, false, false, false, false, false});
    };
    heading(ui, "What the label says");
    const auto size = [&](const std::string& text) {
        Trailer trailer = view.trailer;
        trailer.tyre_size = text;
        out.push_back(PutTrailer{std::move(trailer)});
    };
    words_field(ui, {"Tire size", "tire size"}, {view.trailer.tyre_size, "ST235/80R16", ""}, drafts, size, out);
    figure("Tire pressure, cold", view.trailer.tyre_pressure, LabelFigure::pressure, {"[psi]", "kPa", "bar"});
    figure("Weight rating (GVWR)", view.trailer.gvwr, LabelFigure::gvwr, {"[lb_av]", "kg"});
}

void ask_label(UiContext& ui, const IdentifyView& view, IdentifyState& state, Commands& out) {
    const KeypadAnswer answer = keypad_sheet(ui, "label pad", *state.pad);
    if (answer == KeypadAnswer::done) {
        Trailer trailer = view.trailer;
        const Amount amount{*state.pad->number(), state.pad->unit()};
        if (state.figure == LabelFigure::gvwr)
            trailer.gvwr = amount;
        else
            trailer.tyre_pressure = amount;
        out.push_back(PutTrailer{std::move(trailer)});
    }
    if (answer != KeypadAnswer::none) state.pad.reset();
}

}  // namespace

void draw_identify(UiContext& ui, const IdentifyView& view, const Drafts& drafts, IdentifyState& state, Commands& out) {
    const bool known = !view.trailer.axles.empty();
    const ScreenSpec spec = screen_of(view.chrome, "identify",
                                      {{{"Data plate", "plate shot"}, Tone::quiet, Icon::camera, true, false},
                                       {{"To the plan", "plan"}, Tone::strong, Icon::check, known, true}});
    const ScreenAnswer answer = screen(ui, spec, [&] {
        draw_count(ui, view, out);
        if (known) {
            draw_which(ui, view, state);
            draw_axle(ui, view, state, out);
        }
        draw_names(ui, view, drafts, out);
        if (known && row(ui, {"Ratings, tires, use", "ratings"})) out.push_back(GoTo{{Screen::plate, {}, {}}});
        draw_label(ui, view, drafts, state, out);
        if (!view.plate_shot.empty() && photo(ui, {"Data plate", "data plate"}, view.plate_shot, 180))
            out.push_back(GoTo{{Screen::photo, {}, view.plate_shot_id}});
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoTo{{Screen::intake, {}, std::string(name_of(Slot::data_plate))}});
    if (answer.tapped(1)) out.push_back(GoInstead{{Screen::plan, {}, {}}});
    if (state.pad) ask_label(ui, view, state, out);
}

}  // namespace cotter

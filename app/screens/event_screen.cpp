// See event_screen.h.
#include "app/screens/event_screen.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_kinds(UiContext& ui, EventState& state) {
    heading(ui, "Add what happened");
    for (std::size_t i = 0; i < names(EventKind{}).size(); ++i) {
        const auto kind = static_cast<EventKind>(i);
        RowSpec spec;
        spec.under = event_means(kind);
        if (row(ui, {event_title(kind), name_of(kind)}, spec)) state = {kind, 0, {}, {}};
    }
}

void draw_there(UiContext& ui, const EventsView& view, EventState& state) {
    if (view.rows.empty()) return paragraph(ui, "Nothing is entered.");
    heading(ui, "Entered");
    for (const EventRow& r : view.rows) {
        RowSpec spec;
        spec.under = r.under;
        if (row(ui, {r.title, r.id.text()}, spec)) state.open = r.id;
    }
}

void draw_places(UiContext& ui, const EventsView& view, EventState& state) {
    std::vector<std::string> keys;
    for (const EventPlace& p : view.places) keys.push_back("at " + p.place.text());
    std::vector<ChipSpec> specs;
    for (std::size_t i = 0; i < view.places.size(); ++i)
        specs.push_back({{view.places[i].label, keys[i]}, i == state.place, true, {}});
    paragraph(ui, "Where?");
    if (const auto tapped = chips(ui, "event places", specs)) state.place = *tapped;
}

void draw_adding(UiContext& ui, const EventsView& view, EventState& state, Commands& out) {
    const EventKind kind = *state.kind;
    const SheetSpec spec{
        "event", std::string(event_title(kind)), {{{"Save", "save event"}, Tone::strong, Icon::check, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        if (has_place(kind)) draw_places(ui, view, state);
        const FieldAnswer note =
            text_field(ui, {"In a few words", "event note"}, {state.note, "stood in water to the axles", ""});
        if (note.text) state.note = *note.text;
        paragraph(ui, event_means(kind), true);
    });
    if (answer.action) {
        Event event;
        event.kind = kind;
        event.place = has_place(kind) ? view.places[state.place].place : Place::at(Station::trailer);
        event.note = state.note;
        out.push_back(PutEvent{std::move(event)});
    }
    if (answer.closed || answer.action) state = {};
}

void draw_open(UiContext& ui, const EventsView& view, EventState& state, Commands& out) {
    const auto open =
        std::find_if(view.rows.begin(), view.rows.end(), [&](const EventRow& r) { return r.id == *state.open; });
    if (open == view.rows.end()) return state.open.reset();
    const SheetSpec spec{
        "event open", open->title, {{{"Remove", "remove event"}, Tone::danger, Icon::erase, true, false}}};
    const SheetAnswer answer = sheet(ui, spec, [&] { paragraph(ui, open->under); });
    if (answer.action) out.push_back(RemoveEvent{*state.open});
    if (answer.closed || answer.action) state.open.reset();
}

}  // namespace

void draw_events(UiContext& ui, const EventsView& view, EventState& state, Commands& out) {
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "events"), [&] {
        draw_there(ui, view, state);
        draw_kinds(ui, state);
    });
    answer_chrome(answer, out);
    if (state.kind) return draw_adding(ui, view, state, out);
    if (state.open) draw_open(ui, view, state, out);
}

}  // namespace cotter

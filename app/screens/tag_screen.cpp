// See tag_screen.h.
#include "app/screens/tag_screen.h"

#include "app/screens/common.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

template <class R>
R entered(const R& record, const FormEntry& entry) {
    const std::string& id = entry.row->field.id;
    if (entry.amount) return with_amount(record, id, *entry.amount);
    if (entry.choice) return with_choice(record, id, *entry.choice);
    return with_words(record, id, entry.words.value_or(""));
}

// `put` records the whole of it: each field is saved as it is entered.
template <class R, class PutRecord, class RemoveRecord>
void draw_tag(UiContext& ui, const TagView<R>& view, std::string_view key, Slot slot, FormState& state, PutRecord put,
              RemoveRecord remove, Commands& out) {
    const FormSink sink = [&](const FormEntry& entry) { put(entered(view.record, entry)); };
    const ScreenSpec spec =
        screen_of(view.chrome, key, {{{"Photograph it", "tag shot"}, Tone::strong, Icon::camera, true, true}});
    const ScreenAnswer answer = screen(ui, spec, [&] {
        if (!view.shot.empty() && photo(ui, {"The photo", "tag photo"}, view.shot, 180))
            out.push_back(GoTo{{Screen::photo, view.record.place, view.shot_id}});
        if (view.like && wide_button(ui, {view.like_words, "like"}, {Tone::quiet, Icon::check, true, false, 0}))
            put(*view.like);
        draw_form(ui, view.rows, view.drafts, state, sink, out);
        if (!view.record.id.nil() &&
            wide_button(ui, {"Remove this entry", "remove entry"}, {Tone::danger, Icon::erase, true, false, 0}))
            remove(view.record.id);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoTo{{Screen::intake, view.record.place, std::string(name_of(slot))}});
    draw_form_sheet(ui, view.rows, state, sink);
}

}  // namespace

void draw_sidewall(UiContext& ui, const TagView<Sidewall>& view, FormState& state, Commands& out) {
    draw_tag(
        ui, view, "sidewall", Slot::sidewall, state, [&](Sidewall r) { out.push_back(PutSidewall{std::move(r)}); },
        [&](const Id<Sidewall>& id) { out.push_back(RemoveSidewall{id}); }, out);
}

void draw_chamber(UiContext& ui, const TagView<Chamber>& view, FormState& state, Commands& out) {
    draw_tag(
        ui, view, "chamber", Slot::brake, state, [&](Chamber r) { out.push_back(PutChamber{std::move(r)}); },
        [&](const Id<Chamber>& id) { out.push_back(RemoveChamber{id}); }, out);
}

}  // namespace cotter

// See photo_screen.h.
#include "app/screens/photo_screen.h"

#include <algorithm>

#include "app/screens/common.h"
#include "app/screens/shot_place.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

// The tools below stay in sight.
float most_height(const UiContext& ui) {
    if (ui.low()) return ui.height - 160;
    return ui.width >= 800 ? ui.height - 290 : ui.height * 0.52F;
}

std::optional<std::size_t> chosen_mark(const PhotoView& view, const PhotoState& state) {
    if (!state.chosen) return std::nullopt;
    const auto tag =
        std::find_if(view.tags.begin(), view.tags.end(), [&](const Tag& t) { return t.id == *state.chosen; });
    return tag == view.tags.end() ? std::nullopt : std::optional(static_cast<std::size_t>(tag - view.tags.begin()));
}

FindingDraft draft_of(const Shot& shot, const PhotoMark& mark) {
    FindingDraft draft;
    draft.shot = shot.id.text();
    draft.place = shot.place;
    draft.shape = mark.shape;
    draft.points = mark.points;
    return draft;
}

void draw_marked(UiContext& ui, const PhotoView& view, PhotoState& state, Commands& out) {
    const auto chosen = chosen_mark(view, state);
    std::optional<PhotoMark> begun;
    if (view.entry && view.entry->is_new) begun = PhotoMark{view.entry->draft.shape, view.entry->draft.points, {}, 0};
    const MarkedPhotoSpec spec{view.shot.photo.sha256,
                               static_cast<float>(view.shot.photo.width),
                               static_cast<float>(view.shot.photo.height),
                               view.marks,
                               chosen,
                               begun ? &*begun : nullptr,
                               state.tool};
    const auto answer = marked_photo(ui, {"Photo", "photo"}, spec, state.photo, most_height(ui));
    if (answer.drawn) out.push_back(keep_finding(view.drafts, draft_of(view.shot, *answer.drawn)));
    if (answer.moved && chosen) {
        Tag tag = view.tags[*chosen];
        tag.points = *answer.moved;
        out.push_back(PutTag{std::move(tag)});
    }
    if (answer.tapped) state.chosen = view.tags[*answer.tapped].id;
    if (answer.tapped_beside) state.chosen.reset();
    if (answer.held) state.photo.zoom = {};
}

void draw_compared(UiContext& ui, const PhotoView& view, PhotoState& state) {
    const PhotoRef& mine = view.shot.photo;
    const float w = static_cast<float>(mine.width);
    const float h = static_cast<float>(mine.height);
    const PhotoOther& other = *view.other;
    const TwoPhotosSpec spec = view.shot.stage == Stage::before
                                   ? TwoPhotosSpec{mine.sha256, other.sha256, w, h, other.width, other.height}
                                   : TwoPhotosSpec{other.sha256, mine.sha256, other.width, other.height, w, h};
    two_photos(ui, {"Before and after", "two photos"}, spec, state.photo, most_height(ui));
}

void draw_tools(UiContext& ui, PhotoState& state) {
    const auto is = [&](MarkTool tool) { return state.tool == tool; };
    const std::array tools{
        ChipSpec{"Point", is(MarkTool::point), true, {}}, ChipSpec{"Box", is(MarkTool::box), true, {}},
        ChipSpec{"Arrow", is(MarkTool::arrow), true, {}}, ChipSpec{"Stroke", is(MarkTool::stroke), true, {}}};
    if (const auto tapped = one_of(ui, "tools", tools)) {
        const auto tool = static_cast<MarkTool>(*tapped + 1);
        state.tool = is(tool) ? MarkTool::look : tool;
    }
    constexpr std::array kHints{
        "Only looking: drag and pinch. Tap a tool to mark.", "Tap what is wrong. Drag and pinch to look closer.",
        "Drag a box round it. Two fingers zoom.", "Drag from beside it to the spot.", "Draw along it with a finger."};
    paragraph(ui, kHints[static_cast<std::size_t>(state.tool)], true);
}

// One finding of the photo; a tap opens it.
void draw_finding(UiContext& ui, const PhotoView& view, const PhotoFinding& finding, bool chosen, Commands& out) {
    RowSpec spec;
    spec.under = finding.under;
    spec.grade = finding.grade;
    spec.chosen = chosen;
    if (row(ui, {finding.title, finding.finding.text()}, spec)) out.push_back(keep_finding(view.drafts, finding.draft));
}

void draw_chosen(UiContext& ui, const Tag& tag, PhotoState& state, Commands& out) {
    paragraph(ui, "Drag the mark, or its handles.", true);
    if (button(ui, {"Remove mark", "remove mark"}, {Tone::danger, Icon::erase, true, false, 0}))
        out.push_back(RemoveTag{tag.id});
    same_line();
    if (button(ui, {"Ready", "ready"}, {Tone::quiet, Icon::check, true, false, 0})) state.chosen.reset();
}

void draw_below(UiContext& ui, const PhotoView& view, PhotoState& state, Commands& out) {
    const auto chosen = chosen_mark(view, state);
    for (const PhotoWarning& w : view.warnings) remark(ui, w.title, w.text);
    if (view.findings.empty())
        paragraph(ui, "Nothing is marked on this photo yet.", true);
    else
        heading(ui, "Findings on it");
    for (const PhotoFinding& f : view.findings)
        draw_finding(ui, view, f, chosen && view.tags[*chosen].finding == f.finding, out);
    paragraph(ui, view.facts, true);
    if (row(ui, {"Move or remove this photo", "move"})) state.moving = true;
}

void draw_page(UiContext& ui, const PhotoView& view, PhotoState& state, Commands& out) {
    const bool compare = state.compare && view.other;
    if (compare)
        draw_compared(ui, view, state);
    else
        draw_marked(ui, view, state, out);
    if (view.other && wide_button(ui, {compare ? "This photo alone" : "Before and after", "compare"}))
        state = {}, state.compare = !compare;
    if (compare) return;
    if (const auto chosen = chosen_mark(view, state))
        draw_chosen(ui, view.tags[*chosen], state, out);
    else
        draw_tools(ui, state);
}

void draw_moving(UiContext& ui, const PhotoView& view, const ShotPlaceView& place, PhotoState& state, Commands& out) {
    const SheetSpec spec{"move photo",
                         "Where does it belong?",
                         {{{"Remove photo", "remove"}, Tone::danger, Icon::erase, true, false},
                          {{"Done", "done"}, Tone::strong, Icon::check, true, true}}};
    ShotPlaceAnswer chosen;
    const SheetAnswer answer = sheet(ui, spec, [&] { chosen = draw_shot_place(ui, place); });
    Shot shot = view.shot;
    if (chosen.place) shot.place = *chosen.place;
    if (chosen.slot) shot.slot = *chosen.slot;
    if (chosen.stage) shot.stage = *chosen.stage;
    if (!(shot == view.shot)) out.push_back(PutShot{std::move(shot)});
    if (answer.closed || answer.action) state.moving = false;
    if (answer.action != 0u) return;
    out.push_back(RemoveShot{view.shot.id});
    out.push_back(GoBack{});
}

void draw_gone(UiContext& ui, const PhotoView& view, Commands& out) {
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "photo-gone"), [&] {
        if (empty_state(ui, "This photo is not there any more", "It was removed, or its step was taken back.",
                        {"Back to where it was", "leave"}))
            out.push_back(GoBack{});
    });
    answer_chrome(answer, out);
}

}  // namespace

void draw_photo(UiContext& ui, const PhotoView& view, const ShotPlaceView& place, PhotoState& state, Commands& out) {
    if (!view.there) return draw_gone(ui, view, out);
    const std::string key = "photo-" + view.shot.id.text();
    const bool after = view.shot.stage == Stage::before && !view.other;
    ScreenSpec spec =
        screen_of(view.chrome, key,
                  {{{after ? "'After' photo" : "Add photo", "add"}, Tone::quiet, Icon::camera, true, false},
                   {{view.next ? "Next photo" : "To the place", "next"}, Tone::strong, Icon::next, true, true}});
    spec.wide = ui.width >= 800;
    const ScreenAnswer answer = screen(ui, spec, [&] {
        side_by_side(
            ui, 0.6F, 235, [&] { draw_page(ui, view, state, out); }, [&] { draw_below(ui, view, state, out); });
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoTo{{Screen::intake, view.shot.place, std::string(name_of(view.shot.slot))}});
    if (answer.tapped(1) && view.next) out.push_back(GoInstead{{Screen::photo, view.shot.place, view.next->text()}});
    if (answer.tapped(1) && !view.next) out.push_back(GoTo{{Screen::corner, view.shot.place, {}}});
    if (view.entry) draw_finding_sheet(ui, *view.entry, view.drafts, state.finding, out);
    if (state.moving) draw_moving(ui, view, place, state, out);
}

}  // namespace cotter

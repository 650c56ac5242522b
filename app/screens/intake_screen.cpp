// See intake_screen.h.
#include "app/screens/intake_screen.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/screens/shot_place.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

constexpr double kWatchEvery = 3;  // s

void open_folder(IntakeState& state, const std::string& folder) {
    state.list = {};
    state.list.folder = folder;
    state.listed_s = -1;
    state.chosen.clear();
}

std::vector<const FolderEntry*> new_photos(const IntakeView& view, const IntakeState& state) {
    std::vector<const FolderEntry*> out;
    for (const FolderEntry& e : state.list.entries)
        if (!e.folder && !view.has(base_name(e.path), e.size)) out.push_back(&e);
    return out;
}

void draw_under_way(UiContext& ui, const IntakeView& view, const IntakeState& state, Commands& out) {
    if (view.work) {
        const float part =
            view.work->total == 0 ? -1 : static_cast<float>(view.work->done) / static_cast<float>(view.work->total);
        if (progress(ui, "work", {view.work->doing, view.work->detail, part, true})) out.push_back(CancelWork{});
    }
    if (view.refused.empty()) return;
    if (state.placing) {
        const std::string refused = count_words(view.refused.size(), "photo was", "photos were");
        return paragraph(ui, refused + " not taken in: 'Files' says why.", true);
    }
    heading(ui, "Not taken in");
    for (const std::string& line : view.refused) paragraph(ui, line);
}

void draw_target(UiContext& ui, const IntakeView& view, IntakeState& state) {
    const IntakeTarget& target = view.target;
    if (!target.preset) return;
    paragraph(ui, "For " + target.label);
    const Stage stage = state.stage.value_or(target.stage);
    const std::array stages{ChipSpec{{"Before the work", "before"}, stage == Stage::before, true, {}},
                            ChipSpec{{"After the work", "after"}, stage == Stage::after, true, {}}};
    if (const auto tapped = one_of(ui, "stage", stages)) state.stage = *tapped == 0 ? Stage::before : Stage::after;
    if (stage != Stage::after || target.before.empty()) return;
    paragraph(ui, "As it was before. Take the new one from the same side.", true);
    photo(ui, {"The photo before", "before photo"}, target.before, std::min(240.0F, ui.height * 0.35F));
}

void draw_entry(UiContext& ui, const IntakeView& view, const FolderEntry& entry, IntakeState& state,
                std::optional<std::string>& open) {
    RowSpec spec;
    const bool there = !entry.folder && view.has(base_name(entry.path), entry.size);
    const std::string under = there ? "In this job already. " + entry.under : entry.under;
    spec.under = under;
    spec.leads_on = entry.folder;
    spec.chosen = state.chosen.contains(entry.path);
    spec.icon = entry.folder ? Icon::menu : spec.chosen || there ? Icon::check : Icon::camera;
    if (!row(ui, {entry.shown, entry.key}, spec)) return;
    if (entry.folder)
        open = entry.path;
    else if (view.target.preset && view.target.slot != Slot::other && state.chosen.empty() && !there)
        state.one = entry.path;  // one slot, one photo: taken in at once
    else if (state.chosen.erase(entry.path) == 0)
        state.chosen.insert(entry.path);
}

void draw_folder(UiContext& ui, const IntakeView& view, IntakeState& state) {
    std::optional<std::string> open;
    heading(ui, state.list.shown);
    if (!state.list.parent.empty() && row(ui, {"Up, to the folder above", "up"}, {"", "", {}, Icon::back, false}))
        open = state.list.parent;
    if (!state.list.error.empty()) remark(ui, "This folder cannot be read", state.list.error);
    for (const FolderEntry& entry : state.list.entries) draw_entry(ui, view, entry, state, open);
    if (state.list.entries.empty() && state.list.error.empty() && state.listed_s >= 0)
        paragraph(ui, "There are no photos in this folder.", true);
    if (state.list.others > 0)
        paragraph(
            ui, fmt::format("{} hidden: not photo files.", count_words(state.list.others, "other file", "other files")),
            true);
    if (open) open_folder(state, *open);
}

void draw_picker(UiContext& ui, const IntakeView& view, IntakeState& state, Commands& out) {
    draw_under_way(ui, view, state, out);
    if (!view.unplaced.empty() && !view.work &&
        wide_button(ui, {fmt::format("{} without a place: sort them in", view.unplaced.size()), "place them"},
                    {Tone::strong, Icon::next, true, false, 0}))
        state.placing = true;
    draw_target(ui, view, state);
    draw_folder(ui, view, state);
}

// Where the device brings the photos: its camera and its chooser instead of folders.
void draw_device(UiContext& ui, const IntakeView& view, IntakeState& state, Commands& out) {
    const ScreenSpec spec = screen_of(view.chrome, "intake device",
                                      {{{"Choose photos", "choose photos"}, Tone::quiet, Icon::plus, true, false},
                                       {{"Take a photo", "take photo"}, Tone::strong, Icon::camera, true, true}});
    const ScreenAnswer answer = screen(ui, spec, [&] {
        draw_under_way(ui, view, state, out);
        if (!view.unplaced.empty() && !view.work &&
            wide_button(ui, {fmt::format("{} without a place: sort them in", view.unplaced.size()), "place them"},
                        {Tone::strong, Icon::next, true, false, 0}))
            state.placing = true;
        draw_target(ui, view, state);
        paragraph(ui,
                  view.target.preset
                      ? "The camera takes one photo for this place. 'Choose photos' takes those that are "
                        "on this device already."
                      : "Photos without a place are sorted in afterwards, one after the other.",
                  true);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(PickFiles{Pick::photos});
    if (answer.tapped(1)) out.push_back(PickFiles{Pick::camera});
}

void take_chosen(const IntakeView& view, IntakeState& state, Commands& out) {
    TakePhotos take;
    take.paths.assign(state.chosen.begin(), state.chosen.end());
    take.place = view.target.place;
    take.slot = view.target.slot;
    take.stage = view.target.preset ? state.stage.value_or(view.target.stage) : Stage::before;
    take.show = view.target.preset && take.paths.size() == 1;
    state.chosen.clear();
    state.placing = !view.target.preset;
    state.at = 0;
    out.push_back(std::move(take));
}

void draw_files(UiContext& ui, const IntakeView& view, IntakeState& state, Commands& out) {
    const auto fresh = new_photos(view, state);
    const std::string take = state.chosen.empty() ? "Take in" : fmt::format("Take in {}", state.chosen.size());
    const std::string all = fmt::format("All new ({})", fresh.size());
    const std::string key = "intake " + state.list.folder;
    const ScreenSpec spec = screen_of(view.chrome, key,
                                      {{{all, "all new"}, Tone::quiet, Icon::plus, !fresh.empty(), false},
                                       {{take, "take in"}, Tone::strong, Icon::check, !state.chosen.empty(), true}});
    const ScreenAnswer answer = screen(ui, spec, [&] { draw_picker(ui, view, state, out); });
    answer_chrome(answer, out);
    if (answer.tapped(0))
        for (const FolderEntry* e : fresh) state.chosen.insert(e->path);
    if (!state.one.empty())
        state.chosen = {std::exchange(state.one, {})};
    else if (!answer.tapped(1))
        return;
    take_chosen(view, state, out);
}

// Puts the photo where it belongs; the next one moves up by itself.
void place_photo(const Shot& shot, const ShotPlaceAnswer& chosen, IntakeState& state, Commands& out) {
    if (chosen.stage) state.placed_stage = *chosen.stage;
    if (chosen.place) state.place = chosen.place;
    if (!chosen.slot || !state.place) return;
    Shot placed = shot;
    placed.place = *state.place;
    placed.slot = *chosen.slot;
    placed.stage = state.placed_stage;
    out.push_back(PutShot{std::move(placed)});
}

void draw_pass(UiContext& ui, const IntakeView& view, const ShotPlaceView& place, IntakeState& state, Commands& out) {
    const std::size_t count = view.unplaced.size();
    const Shot& shot = view.unplaced[std::min(state.at, count - 1)];
    Chrome chrome = view.chrome;
    chrome.title = "Which corner?";
    chrome.under = fmt::format("{} without a place", count_words(count, "photo", "photos"));
    const std::string key = "placing " + shot.id.text();
    ScreenSpec spec = screen_of(chrome, key,
                                {{{"Files", "files"}, Tone::quiet, Icon::back, true, false},
                                 {{"Later", "later"}, Tone::quiet, Icon::next, count > 1, false}});
    spec.wide = ui.width >= 800;
    ShotPlaceAnswer chosen;
    const ScreenAnswer answer = screen(ui, spec, [&] {
        draw_under_way(ui, view, state, out);
        side_by_side(
            ui, 0.5F, 270,
            [&] {
                photo(ui, {"The photo", "photo"}, shot.photo.sha256, std::min(ui.height * 0.32F, 420.0F));
                paragraph(ui, safe_name(shot.original_name), true);
            },
            [&] { chosen = draw_shot_place(ui, place); });
    });
    answer_chrome(answer, out);
    place_photo(shot, chosen, state, out);
    if (answer.tapped(0)) state.placing = false;
    if (answer.tapped(1)) state.at = (std::min(state.at, count - 1) + 1) % count;
}

}  // namespace

void look_at_folder(UiContext& ui, const IntakeView& view, IntakeState& state, Files& files) {
    if (view.picks) return;
    if (state.list.folder.empty()) state.list.folder = view.folder;
    const bool due = view.watch && ui.now_s >= state.listed_s + kWatchEvery;
    if (state.listed_s < 0 || due) {
        state.list = list_folder(files, state.list.folder, view.offset_min);
        state.listed_s = ui.now_s;
        std::erase_if(state.chosen, [&](const std::string& path) {
            return std::none_of(state.list.entries.begin(), state.list.entries.end(),
                                [&](const FolderEntry& e) { return e.path == path; });
        });
    }
    if (view.watch) ui.wake_at(state.listed_s + kWatchEvery);
}

void draw_intake(UiContext& ui, const IntakeView& view, const ShotPlaceView& place, IntakeState& state, Commands& out) {
    if (view.unplaced.empty() && !view.work) state.placing = false;
    if (state.placing && !view.unplaced.empty())
        draw_pass(ui, view, place, state, out);
    else if (view.picks)
        draw_device(ui, view, state, out);
    else
        draw_files(ui, view, state, out);
}

}  // namespace cotter

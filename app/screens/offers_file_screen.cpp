// The page to choose a CSV file with offers. See shelf_screen.h.
#include "app/screens/common.h"
#include "app/screens/shelf_screen.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void open_folder(OffersFileState& state, const std::string& folder) {
    state.list = {};
    state.list.folder = folder;
    state.listed = false;
}

void draw_folder(UiContext& ui, OffersFileState& state, Commands& out) {
    std::optional<std::string> open;
    heading(ui, state.list.shown);
    if (!state.list.parent.empty() && row(ui, {"Up, to the folder above", "up"}, {"", "", {}, Icon::back, false}))
        open = state.list.parent;
    if (!state.list.error.empty()) remark(ui, "This folder cannot be read", state.list.error);
    for (const FolderEntry& entry : state.list.entries) {
        RowSpec spec;
        spec.under = entry.under;
        spec.leads_on = entry.folder;
        spec.icon = entry.folder ? Icon::menu : Icon::sheet;
        if (!row(ui, {entry.shown, entry.key}, spec)) continue;
        if (entry.folder)
            open = entry.path;
        else
            out.push_back(TakeOffers{entry.path});
    }
    if (state.list.entries.empty() && state.list.error.empty())
        paragraph(ui, "There are no CSV files in this folder.", true);
    if (open) open_folder(state, *open);
}

}  // namespace

void look_at_offers_folder(const OffersFileView& view, OffersFileState& state, Files& files) {
    if (view.picks) return;
    if (state.list.folder.empty()) state.list.folder = view.folder;
    if (state.listed) return;
    state.list = list_folder(files, state.list.folder, view.offset_min, csv_name);
    state.listed = true;
}

void draw_offers_file(UiContext& ui, const OffersFileView& view, OffersFileState& state, Commands& out) {
    const std::string key = "offers file " + state.list.folder;
    std::vector<ActionSpec> actions;
    if (view.picks) actions.push_back({{"Choose the file", "choose"}, Tone::strong, Icon::sheet, true, true});
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, key, std::move(actions)), [&] {
        if (!view.refused.empty()) heading(ui, "Lines not taken");
        for (const std::string& line : view.refused) paragraph(ui, line);
        if (!view.picks) draw_folder(ui, state, out);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(PickFiles{Pick::table});
}

}  // namespace cotter

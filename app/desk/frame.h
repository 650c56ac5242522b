// What all of the desk's pages share: the rail with the pages, the header, the notice; a list with its tools. For the
// desk's screens.
#pragma once

#include <functional>

#include "app/desk/desk_command.h"
#include "app/desk/desk_session.h"
#include "app/ui/button.h"
#include "app/ui/screen.h"
#include "app/ui/scroll.h"
#include "app/ui/table.h"
#include "app/ui/ui.h"

namespace cotter::desk {

// What a list's drawing remembers; may vanish without loss.
struct ListState {
    TableModel model;
    std::uint64_t made = 0;
    bool columns_open = false;
    int focus = 0;  // frames for which the search field still takes the keyboard
};

struct DeskState {
    std::map<std::string, ListState> lists;  // by the list's name
    Route shown;
    int frames = 0;  // since the page was opened
    bool help = false;
    std::string path;  // being written, to take in
};

struct FrameSpec {
    std::string title, under;
};
// `body` gets what is left of the screen beside rail and header.
void desk_frame(UiContext& ui, const DeskSession& session, const FrameSpec& spec, DeskState& state, Commands& out,
                const std::function<void(const Rect&)>& body);

// Widgets one below the other in `area`; gives where they end.
float flow(const Rect& area, const Body& body);
// The rest of `area` below `y`.
[[nodiscard]] Rect below(const Rect& area, float y);

struct ListTools {
    bool search = true;  // a field that narrows a kept list; the register has its own
    bool pdf = true, csv = true, ics = false;
    std::vector<ActionSpec> actions = {};  // beside the row's details
    std::function<void()> filters = {};    // between tools and table
    bool keys = true;
};
struct ListAnswer {
    std::optional<std::size_t> opened;  // a row
    std::optional<std::size_t> action;  // one of ListTools::actions
};
// Tools, table, and the words of the row under the cursor. Commands about the list itself go out by themselves.
ListAnswer list_panel(UiContext& ui, const List& list, ListState& state, const Rect& area, const ListTools& tools,
                      const AskRegister* asked, bool focus, Commands& out);

// The sheet with a list's columns, where it is open. After the frame.
void columns_sheet(UiContext& ui, const List& list, ListState& state, Commands& out);

}  // namespace cotter::desk

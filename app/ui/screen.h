// The frame of every screen: header, scrolling content, bottom actions within reach of the thumb. For screens.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "app/ui/draw.h"
#include "app/ui/scroll.h"
#include "app/ui/ui.h"

namespace cotter {

struct HeaderSpec {
    std::string title;
    std::string under;  // a line below the title: where we are
    std::string saved;  // "saved 08:14", or why not; empty: not shown
    bool saved_ok = true;
    bool back = true;
    bool undo = false;  // the button is there
    bool undo_enabled = false;
    bool redo = false;  // the button is there: only while something can be done again
    bool help = false;
};

struct ActionSpec {
    Name name;
    Tone tone = Tone::quiet;
    Icon icon = Icon::none;
    bool enabled = true;
    bool main = false;  // at most one; it lies on the thumb's side, 64 dp high
};

struct ToastSpec {
    std::string text;    // empty: none
    std::string action;  // "Undo"; empty: none
};

struct ScreenSpec {
    std::string key;  // one per kind of screen and record: each keeps its own scroll position
    HeaderSpec header;
    std::vector<ActionSpec> actions;  // the main one last
    ToastSpec toast;
    bool wide = false;  // a desk: content takes the whole width instead of one column
};

enum class ScreenTap { none, back, undo, redo, help, toast, action };

struct ScreenAnswer {
    ScreenTap tap = ScreenTap::none;  // the system's back key counts as back
    std::size_t action = 0;           // which one, when tap == action
    [[nodiscard]] bool tapped(std::size_t index) const { return tap == ScreenTap::action && action == index; }
};

ScreenAnswer screen(UiContext& ui, const ScreenSpec& spec, const Body& body);

// Draws the actions into a strip (on a low screen a rail) of `area` and gives what is left of it. For widgets.
struct ActionsAnswer {
    Rect rest;
    std::optional<std::size_t> tapped;
};
[[nodiscard]] float actions_height(const UiContext& ui, std::span<const ActionSpec> actions,
                                   float width);  // 0 for a rail
[[nodiscard]] float rail_height(const UiContext& ui, std::span<const ActionSpec> actions,
                                float width);  // 0 for a strip
ActionsAnswer action_bar(UiContext& ui, std::span<const ActionSpec> actions, const Rect& area);

// The header into the top of `area`; gives what is left of it. For widgets.
struct HeaderAnswer {
    Rect rest;
    ScreenTap tap = ScreenTap::none;
};
HeaderAnswer header_bar(UiContext& ui, const HeaderSpec& spec, const Rect& area);

}  // namespace cotter

// The desk's pages, one function each: drawn from the session, answered by commands. For the desk's app.
#pragma once

#include "app/desk/frame.h"

namespace cotter::desk {

void draw_fleet(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out);
void draw_register(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out);
void draw_trailer(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out);
void draw_compare(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out);
void draw_due(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out);
void draw_list(UiContext& ui, const DeskSession& session, DeskState& state,
               Commands& out);  // orders, failures, receipts
void draw_take_in(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out);
// Instead of any page that could not be read.
void draw_unread(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out);

// Parts of the trailer's page that are no tables.
void draw_wear(UiContext& ui, const Trailer& trailer, const Rect& area);
void draw_pairs(UiContext& ui, const Trailer& trailer, const Rect& area);

}  // namespace cotter::desk

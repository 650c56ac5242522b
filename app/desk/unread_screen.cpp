// See screens.h: a page that could not be read says why, and shows no list: an empty or an old one would be an answer.
#include "app/desk/screens.h"
#include "app/ui/widgets.h"
#include "app/views/chrome.h"

namespace cotter::desk {

namespace {

std::string title_of(Page page) {
    switch (page) {
        case Page::trailers:
            return "Trailers";
        case Page::jobs:
            return "Register";
        case Page::trailer:
            return "Trailer";
        case Page::compare:
            return "Two visits";
        case Page::due:
            return "What is due";
        case Page::orders:
            return "What to order";
        case Page::failures:
            return "What fails";
        case Page::take_in:
            return "Take packets in";
        case Page::receipts:
            break;
    }
    return "Receipts";
}

}  // namespace

void draw_unread(UiContext& ui, const DeskSession& session, DeskState& state, Commands& out) {
    desk_frame(ui, session, {title_of(session.route().page), "Not read"}, state, out, [&](const Rect& area) {
        (void)flow({area.x, area.y, std::min(area.w, 760.0F), 0}, [&] {
            caution(ui, "This page could not be read", upper_first(session.unread()));
            paragraph(ui, "Nothing is shown here, because an old list or an empty one would be wrong.");
            if (button(ui, {"Try again", "read again"}, {Tone::strong, Icon::none, true, false, 0}))
                out.push_back(ReadAgain{});
        });
    });
}

}  // namespace cotter::desk

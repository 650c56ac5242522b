// See settings_view.h.
#include "app/views/settings_view.h"

#include <fmt/format.h>

namespace cotter {

namespace {

WrenchRow row_of(const Wrench& wrench, const Date& today) {
    WrenchRow row;
    if (!wrench.calibrated) {
        row.due = "No date: the packet will say that none is known.";
        return row;
    }
    row.calibrated = wrench.calibrated->text();
    const std::int64_t days = today.days() - wrench.calibrated->days();
    row.wrong = days < 0;
    row.due = days < 0 ? "This day has not come yet."
                       : fmt::format("Calibrated {} ago.", count_words(static_cast<std::size_t>(days), "day", "days"));
    return row;
}

}  // namespace

SettingsView settings_view(const Session& session) {
    SettingsView view;
    view.chrome = chrome_of(session, "Settings");
    view.chrome.has_job = false;  // undo is of the job
    view.settings = session.settings();
    view.drafts = session.drafts();
    const Date today = session.now().local_date();
    for (const Wrench& wrench : view.settings.wrenches) view.wrenches.push_back(row_of(wrench, today));
    view.packet_folder = session.packet_folder();
    view.sides_example = place_words(Place::corner(1, Side::right), view.settings.sides);
    return view;
}

}  // namespace cotter

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
    row.due = days < 0 ? "This date is in the future."
                       : fmt::format("Calibrated {} ago.", count_words(static_cast<std::size_t>(days), "day", "days"));
    return row;
}

std::string megabytes(std::uint64_t bytes) {
    return fmt::format("{:.0f} MB", static_cast<double>(bytes) / 1e6);
}

std::vector<std::string> storage_lines(const StorageFacts& facts) {
    std::vector<std::string> out;
    out.push_back(facts.may_be_cleared
                      ? "The system may clear it when room is short, or when the app was not opened for long. Put the "
                        "app onto the home screen, and send packets soon."
                      : "The system has agreed to keep it.");
    if (facts.used > 0 && facts.room > 0)
        out.push_back(fmt::format("{} of {} used.", megabytes(facts.used), megabytes(facts.room)));
    return out;
}

}  // namespace

SettingsView settings_view(const Session& session) {
    SettingsView view;
    view.chrome = chrome_of(session, "Settings");
    view.chrome.has_job = false;  // undo is of the job
    view.settings = session.settings();
    view.drafts = session.app_drafts();
    const Date today = session.now().local_date();
    for (const Wrench& wrench : view.settings.wrenches) view.wrenches.push_back(row_of(wrench, today));
    view.packet_folder = session.packet_folder();
    view.folders = !session.device().picks();
    if (const auto facts = session.device().storage()) view.storage = storage_lines(*facts);
    view.sides_example = place_words(Place::corner(1, Side::right), view.settings.sides);
    return view;
}

}  // namespace cotter

// See intake_view.h.
#include "app/views/intake_view.h"

#include <algorithm>

#include "app/views/photo_view.h"

namespace cotter {

namespace {

std::optional<Slot> slot_named(const std::string& name) {
    for (std::size_t i = 0; i < names(Slot{}).size(); ++i)
        if (name_of(static_cast<Slot>(i)) == name) return static_cast<Slot>(i);
    return std::nullopt;
}

IntakeTarget target_of(const Session& session) {
    const Route& route = session.route();
    IntakeTarget target;
    const auto slot = slot_named(route.record);
    target.preset = slot.has_value() || !(route.place == Place{});
    if (!target.preset) return target;
    target.place = route.place;
    target.slot = slot.value_or(Slot::other);
    target.label = place_words(target.place, session.settings().sides);
    if (!slot) return target;
    target.label += ": " + std::string(name_of(*slot));
    const Shot* before = other_stage(session.job(), target.place, target.slot, Stage::after);
    if (before == nullptr) return target;
    target.stage = Stage::after;
    target.before = before->photo.sha256;
    target.before_width = static_cast<float>(before->photo.width);
    target.before_height = static_cast<float>(before->photo.height);
    return target;
}

bool taken_earlier(const Shot& a, const Shot& b) {
    const auto when = [](const Shot& s) { return s.photo.taken ? s.photo.taken->unix_s : INT64_MAX; };
    return when(a) != when(b) ? when(a) < when(b) : a.original_name < b.original_name;
}

// The session's own place for books is where people also keep their pictures, until they say another.
std::string first_folder(const Session& session) {
    const std::string& chosen = session.settings().photo_folder;
    return chosen.empty() ? parent_folder(parent_folder(session.packet_folder())) : chosen;
}

}  // namespace

bool unplaced(const Shot& shot) {
    return shot.slot == Slot::other && shot.place == Place{};
}

bool IntakeView::has(const std::string& name, std::uint64_t bytes) const {
    return std::binary_search(taken.begin(), taken.end(), std::pair{name, static_cast<std::int64_t>(bytes)});
}

IntakeView intake_view(const Session& session) {
    IntakeView view;
    view.chrome = chrome_of(session, "Add photos", trailer_words(session.job()));
    view.work = session.work();
    view.refused = session.not_taken();
    view.target = target_of(session);
    for (const Shot& shot : session.job().all<Shot>()) {
        if (unplaced(shot)) view.unplaced.push_back(shot);
        view.taken.emplace_back(shot.original_name, shot.photo.bytes);
    }
    std::stable_sort(view.unplaced.begin(), view.unplaced.end(), taken_earlier);
    std::sort(view.taken.begin(), view.taken.end());
    view.folder = first_folder(session);
    view.watch = session.settings().watch_photos;
    view.picks = session.device().picks();
    view.offset_min = session.now().offset_min;
    return view;
}

}  // namespace cotter

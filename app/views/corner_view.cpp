// See corner_view.h.
#include "app/views/corner_view.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "app/views/judged_reading.h"
#include "app/views/plan_view.h"
#include "app/views/work_view.h"
#include "core/trade/asked.h"
#include "core/work/torque_check.h"
#include "core/work/wrench.h"

namespace cotter {

namespace {

std::optional<Grade> worst_on(const Job& job, const Id<Shot>& shot) {
    std::optional<Grade> worst;
    for (const Tag& tag : job.all<Tag>()) {
        const Finding* f = tag.shot == shot ? job.find(tag.finding) : nullptr;
        if (f != nullptr && f->outcome != Outcome::repaired) worst = std::max(worst.value_or(f->grade), f->grade);
    }
    return worst;
}

ShotTile tile_of(const Job& job, const Shot& shot) {
    const Instant at = shot.photo.taken.value_or(shot.added);
    return {shot.slot,         upper_first(name_of(shot.slot)), clock_words(at), shot.id.text(),
            shot.photo.sha256, worst_on(job, shot.id)};
}

// An owner is asked for nothing but what shows from outside.
template <class Wanted>
void leave_to_mechanic(std::vector<Wanted>& wanted, bool owner) {
    if (owner) std::erase_if(wanted, [](const Wanted& w) { return w.reach != Reach::outside; });
}

std::vector<ShotTile> tiles_at(const Job& job, const Place& place, Stage stage, bool owner) {
    std::vector<WantedSlot> slots = slots_wanted(layout_of(job), place, stage);
    leave_to_mechanic(slots, owner);
    std::vector<ShotTile> out;
    const auto add_taken = [&](Slot slot) {
        const std::size_t before = out.size();
        for (const Shot& shot : job.all<Shot>())
            if (at_place(shot.place, place) && shot.stage == stage && shot.slot == slot)
                out.push_back(tile_of(job, shot));
        return out.size() > before;
    };
    for (const WantedSlot& w : slots)
        if (!add_taken(w.slot))
            out.push_back({w.slot, upper_first(name_of(w.slot)), w.missing ? "missing" : "if opened", {}, {}, {}});
    for (std::size_t s = 0; s < names(Slot{}).size(); ++s) {
        const auto slot = static_cast<Slot>(s);
        if (std::none_of(slots.begin(), slots.end(), [&](const WantedSlot& w) { return w.slot == slot; }))
            add_taken(slot);
    }
    return out;
}

std::string joined(const std::string& a, const std::string& b) {
    return a.empty() || b.empty() ? a + b : a + ". " + b;
}

FindingRow row_of(const Job& job, const Finding& f) {
    FindingRow row;
    row.id = f.id.text();
    row.title = fmt::format("{} {}: {}", finding_number(job, f.id), upper_first(f.component), f.defect);
    row.grade = f.grade;
    row.outcome = f.outcome;
    row.outcome_note = f.outcome_note;
    row.draft = draft_of_finding(f, {});
    row.under =
        f.outcome == Outcome::open ? joined(f.todo, f.note) : joined(std::string(name_of(f.outcome)), f.outcome_note);
    for (const Tag& tag : job.all<Tag>())
        if (row.shot.empty() && tag.finding == f.id) row.shot = tag.shot.text();
    return row;
}

std::string wheel_words(const Place& place) {
    return place.wheel == Wheel::only ? "" : fmt::format(", {} wheel", name_of(place.wheel));
}

ReadingRow row_of(const Session& session, std::string_view what, const Place& place, Stage stage, bool missing) {
    const Job& job = session.job();
    ReadingRow row;
    row.what = what;
    row.place = place;
    row.draft = begin_reading(job, what, place, stage);
    row.label = reading_title(what, place) + wheel_words(place);
    const Reading* there = find_reading(job, what, place, stage);
    const Reading* before = stage == Stage::after ? find_reading(job, what, place, Stage::before) : nullptr;
    row.there = there != nullptr;
    if (there != nullptr) row.judged = judged_reading(session, *there);
    row.extra = there == nullptr && before == nullptr && !missing;
    row.value = there != nullptr ? reading_words(*there) : missing ? "not yet" : "if needed";
    if (before != nullptr)
        row.under = "before the work: " + reading_words(*before);
    else if (there != nullptr)
        row.under = there->instrument;
    return row;
}

std::vector<ReadingRow> readings_at(const Session& session, const Place& place, Stage stage, bool owner) {
    const Job& job = session.job();
    std::vector<ReadingRow> out;
    const auto listed = [&](const Reading& r) {
        return std::any_of(out.begin(), out.end(),
                           [&](const ReadingRow& row) { return row.what == r.what && row.place == r.place; });
    };
    std::vector<WantedReading> wanted = readings_wanted(layout_of(job), place);
    leave_to_mechanic(wanted, owner);
    for (const WantedReading& w : wanted) out.push_back(row_of(session, w.spec->name, w.place, stage, w.missing));
    for (const Reading& r : job.all<Reading>())
        if (at_place(r.place, place) && !listed(r)) out.push_back(row_of(session, r.what, r.place, stage, false));
    return out;
}

WorkRow row_of(const Torque& recorded) {
    const Torque t = in_present_form(recorded);
    WorkRow row{t.id.text(), upper_first(t.joint), {}, t.wrench, false};
    const int clicked = t.passes.empty() ? 0 : static_cast<int>(t.passes.back().tightened.size());
    row.done = proves_torque(check_torque(t));
    if (t.taken != Taken::measured)
        row.value = fmt::format("{}: {}", name_of(t.taken), t.reason);
    else if (t.passes.empty())
        row.value = "not yet";
    else
        row.value = fmt::format("{} of {} at {}", clicked, t.fasteners, at_nut(t.passes.back()).text());
    return row;
}

std::string seen_words(const LevelSeen& seen) {
    return seen.mark == LevelMark::at ? "at the line" : std::string(name_of(seen.mark));
}

WorkRow row_of(const Level& l) {
    WorkRow row{l.id.text(), upper_first(l.fluid), {}, l.product, l.after.has_value()};
    if (l.taken != Taken::measured)
        row.value = fmt::format("{}: {}", name_of(l.taken), l.reason);
    else
        row.value = seen_words(l.before) + (l.after ? ", then " + seen_words(*l.after) : "");
    return row;
}

template <class R>
std::vector<WorkRow> work_at(const Job& job, const Place& place, std::string_view wanted) {
    std::vector<WorkRow> out;
    bool there = wanted.empty();
    for (const R& r : job.all<R>()) {
        if (!at_place(r.place, place)) continue;
        out.push_back(row_of(r));
        there = there || out.back().label == wanted;
    }
    if (!there) out.insert(out.begin(), WorkRow{{}, std::string(wanted), "not yet", {}, false});
    return out;
}

std::string_view fluid_at(const Job& job, const Place& place) {
    const auto may_be = [&](PointId id) { return could_apply(point(id), layout_of(job), place) != Applies::no; };
    if (may_be(PointId::hub_oil)) return "Hub oil";
    return may_be(PointId::act_level) ? "Brake fluid" : "";
}

}  // namespace

std::optional<Place> neighbour(const Job& job, const Place& place, int step) {
    std::vector<Place> round;
    if (!place.is_corner()) {
        for (const Station s : {Station::drawbar, Station::actuator, Station::frame, Station::lights, Station::trailer})
            round.push_back(Place::at(s));
    } else if (const Trailer* trailer = job.only<Trailer>()) {
        round = trailer->corners();
    }
    const Place whole = place.is_corner() ? Place::corner(place.axle, place.side) : place;
    const auto here = std::find(round.begin(), round.end(), whole);
    if (here == round.end() || round.size() < 2) return std::nullopt;
    const auto n = static_cast<int>(round.size());
    return round[static_cast<std::size_t>((static_cast<int>(here - round.begin()) + step + n) % n)];
}

CornerView corner_view(const Session& session) {
    const Job& job = session.job();
    const Place place = session.route().place;
    const SideWords words = session.settings().sides;
    CornerView view;
    view.chrome = chrome_of(session, place_words(place, words), trailer_words(job));
    view.place = place;
    view.corner = place.is_corner();
    const bool owner = session.settings().owner;
    view.before = tiles_at(job, place, Stage::before, owner);
    view.after = tiles_at(job, place, Stage::after, owner);
    for (const Finding& f : job.all<Finding>())
        if (at_place(f.place, place)) view.findings.push_back(row_of(job, f));
    view.readings_before = readings_at(session, place, Stage::before, owner);
    view.readings_after = readings_at(session, place, Stage::after, owner);
    view.torques = work_at<Torque>(job, place, view.corner ? "Wheel nuts" : "");
    view.levels = work_at<Level>(job, place, fluid_at(job, place));
    if (view.corner) view.procedures = work_rows(session, place);
    view.previous = neighbour(job, place, -1);
    view.next = neighbour(job, place, 1);
    if (view.next) view.next_label = place_words(*view.next, words);
    view.drafts = session.drafts();
    if (view.drafts.reading && at_place(view.drafts.reading->place, place))
        view.entry = judged_entry(session, *view.drafts.reading);
    if (const auto& draft = view.drafts.finding; draft && draft->shot.empty())
        for (const FindingRow& row : view.findings)
            if (row.id == draft->id) view.finding = finding_entry(session, *draft, Slot::other);
    return view;
}

}  // namespace cotter

// Which procedures there are, and the owner's answer. See work_view.h.
#include <algorithm>

#include <fmt/format.h>

#include "app/views/work_view.h"

namespace cotter {

namespace {

WorkRow row_of(const Session& session, const Procedure& procedure, const Place& place) {
    const Job& job = session.job();
    const Mode mode = session.settings().owner ? Mode::owner : Mode::mechanic;
    const auto steps = procedure_state(session.work_book(), procedure, job, place, mode);
    const auto closed = std::count_if(steps.begin(), steps.end(), [](const StepView& s) { return s.closed(); });
    WorkRow row{procedure.id, procedure.title, {}, {}, false};
    row.done = closed == static_cast<std::ptrdiff_t>(steps.size());
    for (const StepView& s : steps)
        if (s.finding != nullptr && s.finding->outcome != Outcome::repaired)
            row.worst = std::max(row.worst.value_or(s.finding->grade), s.finding->grade);
    if (!begun(procedure, job, place)) return row;
    row.value = fmt::format("{} of {}", closed, steps.size());
    if (const StepView* next = next_step(steps); next != nullptr && !row.done) row.under = "next: " + next->step->title;
    return row;
}

bool offered(const Session& session, const Procedure& procedure, const Place& place) {
    if (session.settings().owner && (!procedure.owner || procedure.opens_hub)) return false;
    return (procedure.scope == Scope::corner) == place.is_corner() && applies(procedure, session.job(), place);
}

}  // namespace

std::vector<WorkRow> work_rows(const Session& session, const Place& place) {
    std::vector<WorkRow> out;
    for (const Procedure& procedure : session.work_book().procedures)
        if (offered(session, procedure, place)) out.push_back(row_of(session, procedure, place));
    return out;
}

WorkListView work_list_view(const Session& session) {
    const Job& job = session.job();
    const Place only = session.route().place;
    WorkListView view;
    view.chrome = chrome_of(session, "Work, step by step", trailer_words(job));
    view.owner = session.settings().owner;
    view.settings = session.settings();
    if (const Visit* visit = job.only<Visit>(); visit != nullptr && !job.signed_off()) view.visit = *visit;
    view.standing = session.work_book().standing;
    const auto add = [&](const Place& place) {
        WorkGroup group{place_words(place, session.settings().sides), place, work_rows(session, place)};
        if (!group.rows.empty()) view.groups.push_back(std::move(group));
    };
    if (!only.is_corner()) add(Place::at(Station::trailer));
    if (const Trailer* trailer = job.only<Trailer>())
        for (const Place& corner : trailer->corners())
            if (corner.wheel != Wheel::inner && (!only.is_corner() || corner == only))
                add(Place::corner(corner.axle, corner.side));
    if (view.owner) view.advice = advice_view(session);
    return view;
}

}  // namespace cotter

// See since_view.h.
#include "app/views/since_view.h"

#include <fmt/format.h>

#include "app/views/reason_item.h"
#include "core/judge/since.h"

namespace cotter {

namespace {

SinceRow row_of(const ReadingChange& change) {
    SinceRow row;
    row.label = upper_first(change.what) + (change.where.empty() ? "" : ", " + change.where);
    if (change.told) row.change = change.change;
    const std::string before = change.before ? change.before->text() : "", now = change.now ? change.now->text() : "";
    row.under = change.before && change.now ? fmt::format("{} → {}", before, now)
                : change.now                ? fmt::format("now {}; {}", now, change.change)
                                            : fmt::format("was {}; {}", before, change.change);
    row.record = {Screen::corner, change.place, {}};
    return row;
}

}  // namespace

SinceView since_view(const Session& session) {
    const Job& job = session.job();
    SinceView view;
    view.chrome = chrome_of(session, "Since the last visit", trailer_words(job));
    const Job* last = session.last_visit();
    if (last == nullptr) return view;
    const Date then = last->only<Visit>()->opened.local_date(), now = job.only<Visit>()->opened.local_date();
    view.last = then.text();
    view.now = now.text();
    view.apart = count_words(static_cast<std::size_t>(now.days() - then.days()), "day apart", "days apart");
    for (const ReadingChange& change : changes_since(*last, job, session.now())) {
        const std::string title = judged_words(change.place, change.axle, session.settings().sides);
        if (view.groups.empty() || view.groups.back().title != title) view.groups.push_back({title, {}});
        view.groups.back().rows.push_back(row_of(change));
    }
    return view;
}

}  // namespace cotter

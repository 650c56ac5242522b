// See yard_view.h.
#include "app/views/yard_view.h"

#include <fmt/format.h>

#include "app/views/only_here.h"
#include "app/views/summary_view.h"

namespace cotter {

namespace {

YardRow row_of(const Session& session, const JobSummary& job) {
    YardRow row;
    row.id = job.id.text();
    row.title = job.unit.empty() ? "New trailer" : job.unit;
    row.under = day_words(job.opened);
    for (const std::string* part : {&job.customer, &job.place})
        if (!part->empty()) row.under += ", " + *part;
    row.under += fmt::format(": {}, {}", count_words(job.shots, "photo", "photos"),
                             count_words(job.findings, "finding", "findings"));
    row.answer = session.answer_of(job.id);
    if (row.answer) row.under += fmt::format(". {}", towing_word(*row.answer));
    row.open = job.id == session.job().id();
    return row;
}

}  // namespace

YardView yard_view(const Session& session) {
    YardView view;
    view.chrome = chrome_of(session, "Yard book");
    view.chrome.saved.clear();
    view.only_here = only_here_words(session);
    for (const JobSummary& job : session.jobs())
        (job.signed_off ? view.handed_over : view.under_way).push_back(row_of(session, job));
    return view;
}

}  // namespace cotter

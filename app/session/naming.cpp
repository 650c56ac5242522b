// The technician's name in jobs that were begun before it was entered. See changes.h and session.h.
#include <fmt/format.h>

#include "app/session/session.h"
#include "core/base/text.h"

namespace cotter {

namespace {

template <class R>
bool frozen(const R&) {
    return false;
}
bool frozen(const Quote& quote) {
    return quote.state != QuoteState::drafted;
}

template <class R>
void name_records(const std::vector<R>& records, const std::string& name, Changes& out) {
    if constexpr (requires(R r) { r.by; })
        for (R record : records) {
            if (record.by != kUnnamed || frozen(record)) continue;
            record.by = name;
            out.emplace_back(Put{std::move(record), {}});
        }
}

}  // namespace

Changes naming_changes(const Job& job, const std::string& name) {
    Changes out;
    if (const Visit* visit = job.only<Visit>(); visit != nullptr && visit->technician == kUnnamed) {
        Visit named = *visit;
        named.technician = name;
        out.emplace_back(Put{std::move(named), {}});
    }
    for (std::size_t kind = 0; kind < names(RecordKind{}).size(); ++kind)
        with_records(job, static_cast<RecordKind>(kind),
                     [&](const auto& records) { name_records(records, name, out); });
    return out;
}

void Session::act(const NameTechnician& c) {
    if (c.name.empty()) return tell("no name is entered", true);
    settings_.technician = c.name;
    if (const auto saved = save_settings(parts_.files, folder_, settings_); !saved) return tell(saved.error());
    name_jobs();
    if (!has_job() || !job_.signed_off()) return;
    const Changes changes = naming_changes(job_, c.name);
    if (!changes.empty()) commit(changes);
}

// An edit of its own in each job that is not signed off: to be undone there.
void Session::name_jobs() {
    list_jobs();
    std::size_t named = 0;
    for (const JobSummary& summary : jobs_)
        if (summary.technician == kUnnamed && !summary.signed_off) named += name_job(summary.id) ? 1 : 0;
    if (named == 0) return;
    list_jobs();
    tell(fmt::format("{} begun without a name now {} {}", named == 1 ? "1 job" : fmt::format("{} jobs", named),
                     named == 1 ? "says" : "say", settings_.technician));
}

bool Session::name_job(const JobId& id) {
    if (id == job_.id()) {
        const Changes changes = naming_changes(job_, settings_.technician);
        if (!changes.empty()) commit(changes);
        return !changes.empty() && !failed_;
    }
    const auto job = book_->load(id);
    if (!job) {
        tell(job.error());
        return false;
    }
    const Changes changes = naming_changes(*job, settings_.technician);
    if (changes.empty()) return false;
    const Stamp s = stamp();
    const auto done = book_->commit({id, s.at, s.by, {}, changes});
    if (!done) tell(done.error());
    return done.has_value();
}

}  // namespace cotter

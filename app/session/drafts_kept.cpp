// See drafts_kept.h.
#include "app/session/drafts_kept.h"

namespace cotter {

namespace {

bool begun(const Drafts& drafts) {
    Drafts none;
    none.job = drafts.job;
    none.page = drafts.page;
    return !(drafts == none);
}

template <class R>
bool has(const Job& job, const std::string& id) {
    const auto uuid = Uuid::parse(id);
    return uuid && job.find(Id<R>{*uuid}) != nullptr;
}

void add(std::string& list, const std::string& text) {
    if (!text.empty()) list += (list.empty() ? "'" : ", '") + text + "'";
}

}  // namespace

void DraftsKept::switch_to(const std::string& job, const Route& page) {
    open_ = job;
    by_job_[job].job = job;
    by_job_[job].page = by_job_[{}].page = page;
}

void DraftsKept::keep(Drafts drafts) {
    Drafts& there = by_job_[drafts.job];
    drafts.page = there.page;
    there = std::move(drafts);
}

std::vector<Drafts> DraftsKept::all() const {
    std::vector<Drafts> out;
    for (const auto& [job, drafts] : by_job_)
        if (begun(drafts)) {
            out.push_back(drafts);
            out.back().page = {};
        }
    return out;
}

// A price begun for the shelf is saved by a tap only, and shown before; it may come along to any job.
OldDrafts sort_old_drafts(const Drafts& old, const Job& job) {
    OldDrafts out;
    out.fitting.offer = old.offer;
    if (old.reading && has<Reading>(job, old.reading->id)) out.fitting.reading = old.reading;
    if (old.finding && (has<Finding>(job, old.finding->id) || has<Shot>(job, old.finding->shot)))
        out.fitting.finding = old.finding;
    if (old.answer && has<Quote>(job, old.answer->quote)) out.fitting.answer = old.answer;
    add(out.left, old.vin);
    if (old.words_before) add(out.left, old.words_before->text);
    if (old.reading && !out.fitting.reading)
        for (const std::string& text : old.reading->texts) add(out.left, text);
    if (old.finding && !out.fitting.finding) add(out.left, old.finding->component + " " + old.finding->defect);
    if (old.answer && !out.fitting.answer) add(out.left, old.answer->name);
    if (old.figure) add(out.left, old.figure->what + " " + old.figure->value.text());
    return out;
}

}  // namespace cotter

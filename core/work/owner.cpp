// The owner's answer.
#include "core/work/owner.h"

#include <algorithm>
#include <fmt/format.h>

namespace cotter {

namespace {

std::string finding_words(const Finding& f) {
    return fmt::format("{}: {}, {} ({})", f.place.text(), f.component, f.defect, name_of(f.grade));
}

void add_findings(const Job& job, Grade grade, std::vector<std::string>& out) {
    for (const Finding& f : job.all<Finding>())
        if (f.grade == grade && f.outcome != Outcome::repaired) out.push_back(finding_words(f));
}

void add_not_taken(const Job& job, std::vector<std::string>& out) {
    for (const Reading& r : job.all<Reading>())
        if (r.taken != Taken::measured)
            out.push_back(fmt::format("{}: {} {}, {}", r.place.text(), r.what, name_of(r.taken), r.reason));
}

// The steps that owners see, those that end in this answer apart.
void add_open_steps(const WorkBook& book, const Job& job, std::vector<std::string>& open, int& done) {
    for (const Procedure& procedure : book.procedures) {
        if (!procedure.owner || procedure.id.rfind("owner", 0) != 0) continue;
        for (const Place& place : places_of(procedure, job)) {
            std::string titles;
            for (const StepView& view : procedure_state(book, procedure, job, place, Mode::owner)) {
                if (view.step->id == "P8") continue;
                const bool told = view.answer != StepAnswer::cannot_tell;
                const bool looked = view.closed() && view.state != StepState::overridden && told;
                done += looked ? 1 : 0;
                if (!looked)
                    titles += fmt::format("{}{}{}", titles.empty() ? "" : "; ", view.step->title,
                                          told ? "" : " (could not tell)");
            }
            if (!titles.empty()) open.push_back(fmt::format("{}: not looked at: {}", place.text(), titles));
        }
    }
}

}  // namespace

TowAdvice tow_advice(const WorkBook& book, const Job& job) {
    std::vector<std::string> stop, shop;
    add_findings(job, Grade::do_not_tow, stop);
    add_findings(job, Grade::repair, shop);
    add_findings(job, Grade::watch, shop);
    add_not_taken(job, shop);
    int done = 0;
    add_open_steps(book, job, shop, done);
    if (job.only<Trailer>() == nullptr) shop.insert(shop.begin(), "the trailer is not known yet");
    TowAdvice out;
    out.word = !stop.empty() ? TowWord::do_not_tow : !shop.empty() ? TowWord::show_to_shop : TowWord::tow;
    out.reasons = std::move(stop);
    out.reasons.insert(out.reasons.end(), shop.begin(), shop.end());
    if (out.reasons.empty())
        out.reasons.push_back(fmt::format(
            "all {} points were looked at and nothing was found; what nobody can see from outside was not looked at",
            done));
    return out;
}

Result<Finding> finding_of(const Step& step, const Place& place, const Id<Finding>& id, Instant at,
                           const std::string& by) {
    if (!step.ask) return fail(Errc::refused, "the step asks nothing", step.title);
    Finding f;
    f.id = id;
    f.place = place;
    f.component = step.ask->component;
    f.defect = step.ask->defect;
    f.grade = step.ask->grade;
    f.todo = step.ask->now;
    f.at = at;
    f.by = by;
    return f;
}

}  // namespace cotter

// Changes by led work: marks of steps, bearing settings, brake pipes, fluid drawn. See changes.h.
#include <algorithm>

#include "app/session/changes.h"
#include "app/session/session.h"
#include "app/views/place_text.h"
#include "core/work/progress.h"

namespace cotter {

namespace {

template <class R>
R stamped(R record, const Stamp& stamp) {
    if (record.id.nil()) record.id = stamp.new_id<R>();
    record.at = stamp.at;
    if (record.by.empty()) record.by = stamp.by;
    return record;
}

// A record that is put again bears the name of who changed it last.
template <class R>
R taken_over(R record, const Stamp& stamp) {
    record.by.clear();
    return stamped(std::move(record), stamp);
}

// The finding of an answer that nobody has worked on since: it goes when the question is asked again.
bool only_answered(const Job& job, const StepMark& mark) {
    const Finding* finding = job.find(*mark.finding);
    const auto on_it = [&](const Tag& tag) { return tag.finding == *mark.finding; };
    return finding != nullptr && finding->outcome == Outcome::open && finding->at == mark.at &&
           std::none_of(job.all<Tag>().begin(), job.all<Tag>().end(), on_it);
}

}  // namespace

Result<Changes> changes_of(const Job& job, const PutStepMark& c, const Stamp& stamp) {
    Changes out;
    StepMark mark = stamped(c.mark, stamp);
    if (c.finding) {
        COTTER_ASSIGN(out, changes_of(job, PutFinding{*c.finding}, stamp));
        mark.answer = StepAnswer::something_wrong;
        mark.finding = std::get<Finding>(std::get<Put>(out.front()).record).id;
    }
    out.emplace_back(Put{std::move(mark), {}});
    return out;
}

Result<Changes> changes_of(const Job& job, const RemoveStepMark& c, const Stamp&) {
    const StepMark* mark = job.find(c.mark);
    if (mark == nullptr) return fail(Errc::refused, "the step is open already");
    Changes out{Remove{RecordKind::step_mark, c.mark.uuid}};
    if (mark->finding && only_answered(job, *mark)) out.emplace_back(Remove{RecordKind::finding, mark->finding->uuid});
    return out;
}

Result<Changes> changes_of(const Job&, const PutBearing& c, const Stamp& stamp) {
    Changes out;
    BearingSetting setting = c.setting;
    if (c.dial) {
        const Reading dial = taken_over(*c.dial, stamp);
        out.emplace_back(Put{dial, {}});
        if (setting.tries.empty() || setting.tries.back().dial)
            setting.tries.push_back({setting.tries.empty() ? 0 : setting.tries.back().steps, std::nullopt});
        setting.tries.back().dial = dial.id;
    }
    out.emplace_back(Put{taken_over(std::move(setting), stamp), {}});
    return out;
}

Result<Changes> changes_of(const Job&, const PutPipeRoute& c, const Stamp& stamp) {
    return Changes{Put{taken_over(c.route, stamp), {}}};
}

Result<Changes> changes_of(const Job&, const PutBleedCount& c, const Stamp& stamp) {
    return Changes{Put{taken_over(c.count, stamp), {}}};
}

Result<Changes> changes_of(const Job& job, const RemoveBleedCount& c, const Stamp&) {
    if (job.find(c.count) == nullptr) return fail(Errc::refused, "the count is not there any more");
    return Changes{Remove{RecordKind::bleed_count, c.count.uuid}};
}

// The screen offers only what may be marked; between its frame and this one the job may have moved on.
void Session::act(const PutStepMark& c) {
    const Stamp s = stamp();
    PutStepMark put = c;
    put.mark = stamped(c.mark, s);
    if (const auto against = objections(work_book(), job_, put.mark); !against.empty())
        return tell(in_words(against.front(), settings_.sides), true);
    attach_evidence(work_book(), job_, put.mark);
    commit(changes_of(job_, put, s));
}

}  // namespace cotter

// Changes by led work: marks of steps, bearing settings, brake pipes, fluid drawn. See changes.h.
#include <algorithm>
#include <array>

#include "app/session/changes.h"
#include "app/session/session.h"
#include "core/trade/point.h"
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

// The point that a question of the owner's walk asks about, where it asks about one alone.
struct WalkPoint {
    std::string_view step;
    PointId point;
};
constexpr std::array kWalkPoints{
    WalkPoint{"O1", PointId::tire_face}, WalkPoint{"O3", PointId::wheel_nuts}, WalkPoint{"O4", PointId::hub_leak},
    WalkPoint{"O5", PointId::hub_oil},   WalkPoint{"P4", PointId::act_level},  WalkPoint{"P6", PointId::load_safe},
    WalkPoint{"P7", PointId::brk_drive},
};

std::optional<Look> look_of_walk(const Job& job, const StepMark& mark) {
    const auto asked =
        std::find_if(kWalkPoints.begin(), kWalkPoints.end(), [&](const WalkPoint& w) { return w.step == mark.step; });
    if (asked == kWalkPoints.end() || !mark.answer || mark.word != StepWord::done) return std::nullopt;
    const TradePoint& p = point(asked->point);
    for (const Place& place : places_of(p, layout_of(job))) {
        if (place.is_corner() != mark.place.is_corner() || (place.is_corner() && !(place == mark.place))) continue;
        Look look;
        look.point = name_of(p.id);
        look.place = place;
        look.result = *mark.answer == StepAnswer::looks_good        ? LookResult::good
                      : *mark.answer == StepAnswer::something_wrong ? LookResult::bad
                                                                    : LookResult::cannot_tell;
        return look;
    }
    return std::nullopt;
}

// The same as an answer to its point, so that the walk and the pages of points say one thing.
void answer_point(const Job& job, const StepMark& mark, const Stamp& stamp, Changes& out) {
    const auto look = look_of_walk(job, mark);
    if (!look) return;
    Look put = *look;
    for (const Look& there : job.all<Look>())
        if (there.point == put.point && there.place == put.place && there.stage == put.stage) put.id = there.id;
    put.finding = mark.finding;
    out.emplace_back(Put{taken_over(std::move(put), stamp), {}});
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
    answer_point(job, mark, stamp, out);
    out.emplace_back(Put{std::move(mark), {}});
    return out;
}

Result<Changes> changes_of(const Job& job, const RemoveStepMark& c, const Stamp&) {
    const StepMark* mark = job.find(c.mark);
    if (mark == nullptr) return fail(Errc::refused, "the step is open already");
    Changes out{Remove{RecordKind::step_mark, c.mark.uuid}};
    if (const auto look = look_of_walk(job, *mark))
        for (const Look& there : job.all<Look>())
            if (there.point == look->point && there.place == look->place && there.at == mark->at)
                out.emplace_back(Remove{RecordKind::look, there.id.uuid});
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
        return tell(against.front(), true);
    attach_evidence(work_book(), job_, put.mark);
    commit(changes_of(job_, put, s));
}

}  // namespace cotter

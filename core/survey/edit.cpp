// Applying and inverting edits.
#include "core/survey/edit.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/survey/json.h"
#include "core/survey/validate.h"

namespace cotter {

namespace {

template <class R>
auto find_by(std::vector<R>& list, const Uuid& id) {
    return std::find_if(list.begin(), list.end(), [&](const R& r) { return r.id.uuid == id; });
}

std::optional<Record> record_with(const Job& job, RecordKind kind, const Uuid& id) {
    return with_records(job, kind, [&](const auto& list) -> std::optional<Record> {
        for (const auto& record : list)
            if (record.id.uuid == id) return Record{record};
        return std::nullopt;
    });
}

std::size_t position_of(const Job& job, RecordKind kind, const Uuid& id) {
    return with_records(job, kind, [&](const auto& list) {
        std::size_t at = 0;
        while (at < list.size() && list[at].id.uuid != id) ++at;
        return at;
    });
}

bool one_only(RecordKind kind) {
    return kind == RecordKind::visit || kind == RecordKind::trailer || kind == RecordKind::inspection ||
           kind == RecordKind::pipe_route || kind == RecordKind::sign_off;
}

std::string name_in_job(RecordKind kind, const Uuid& id) {
    return fmt::format("{} {}", name_of(kind), id.text());
}

Result<> put(Job& job, const Put& change) {
    const RecordKind kind = kind_of(change.record);
    return std::visit(
        [&]<class R>(const R& record) -> Result<> {
            auto& list = job.all<R>();
            if (const auto old = find_by(list, record.id.uuid); old != list.end()) {
                *old = record;
                return {};
            }
            if (one_only(kind) && !list.empty())
                return fail(Errc::refused, fmt::format("the job has a {} already", name_of(kind)),
                            list.front().id.text(), "change that one instead");
            const std::size_t at = std::min(change.at.value_or(list.size()), list.size());
            list.insert(list.begin() + static_cast<std::ptrdiff_t>(at), record);
            return {};
        },
        change.record);
}

Result<> remove(Job& job, const Remove& change) {
    if (change.kind == RecordKind::visit)
        return fail(Errc::refused, "a job cannot lose its visit", name_in_job(change.kind, change.id));
    return with_records(job, change.kind, [&](auto& list) -> Result<> {
        const auto old = find_by(list, change.id);
        if (old == list.end())
            return fail(Errc::not_found, "there is no such record in the job", name_in_job(change.kind, change.id));
        list.erase(old);
        return {};
    });
}

std::pair<RecordKind, Uuid> target_of(const Change& change) {
    if (const Put* p = std::get_if<Put>(&change)) return {kind_of(p->record), uuid_of(p->record)};
    const Remove& r = std::get<Remove>(change);
    return {r.kind, r.id};
}

Amendment amendment_of(const Job& before, const Edit& edit, const Change& change) {
    const auto [kind, id] = target_of(change);
    const auto old = record_with(before, kind, id);
    const Put* p = std::get_if<Put>(&change);
    return {edit.at,
            edit.by,
            edit.reason,
            kind,
            id.text(),
            old ? record_json(*old) : std::string(),
            p ? record_json(p->record) : std::string()};
}

Result<> check_may_amend(const Job& job, const Edit& edit) {
    if (!job.signed_off()) return {};
    if (edit.reason.empty())
        return fail(Errc::refused, "the job is signed off, so a correction needs a reason", job.id().text(),
                    "say why it is corrected");
    for (const Change& change : edit.changes)
        if (target_of(change).first == RecordKind::sign_off)
            return fail(Errc::refused, "a sign-off cannot be changed or taken back", job.id().text(),
                        "correct the records instead; the old values stay beside the new ones");
    return {};
}

// Records may refer to each other in either order within one edit, so they are checked when all are in.
Result<> check_result(const Job& job, const Edit& edit) {
    for (const Change& change : edit.changes) {
        const Put* p = std::get_if<Put>(&change);
        const auto problems = p ? problems_of(job, p->record) : problems_of(job);
        if (!problems.empty())
            return fail(Errc::refused, problems[0].what,
                        fmt::format("{} {}", name_of(problems[0].kind), problems[0].id), problems[0].todo);
    }
    return {};
}

}  // namespace

Uuid uuid_of(const Record& record) {
    return std::visit([](const auto& r) { return r.id.uuid; }, record);
}

int finding_number(const Job& job, const Id<Finding>& finding) {
    const auto& all = job.all<Finding>();
    const auto it = std::find_if(all.begin(), all.end(), [&](const Finding& f) { return f.id == finding; });
    return it == all.end() ? 0 : static_cast<int>(it - all.begin()) + 1;
}

Result<Job> apply(Job job, const Edit& edit) {
    if (edit.changes.empty()) return fail(Errc::refused, "the edit changes nothing", edit.job.text());
    if (edit.by.empty()) return fail(Errc::refused, "the edit does not say who made it", edit.job.text());
    COTTER_TRY(check_may_amend(job, edit));
    std::vector<Amendment> amended;
    const bool amends = job.signed_off();
    for (const Change& change : edit.changes) {
        if (amends) amended.push_back(amendment_of(job, edit, change));
        COTTER_TRY(std::holds_alternative<Put>(change) ? put(job, std::get<Put>(change))
                                                       : remove(job, std::get<Remove>(change)));
    }
    if (job.id() != edit.job)
        return fail(Errc::refused, "the edit is for another job", edit.job.text(), "a job begins by putting its visit");
    COTTER_TRY(check_result(job, edit));
    std::move(amended.begin(), amended.end(), std::back_inserter(job.amendments));
    return job;
}

Edit inverse(const Job& job, const Edit& edit) {
    Edit back{edit.job, edit.at, edit.by, edit.reason, {}};
    Job now = job;
    for (const Change& change : edit.changes) {
        const auto [kind, id] = target_of(change);
        if (const auto old = record_with(now, kind, id)) {
            const bool gone = std::holds_alternative<Remove>(change);
            back.changes.push_back(Put{*old, gone ? std::optional(position_of(now, kind, id)) : std::nullopt});
        } else {
            back.changes.push_back(Remove{kind, id});
        }
        (void)(std::holds_alternative<Put>(change) ? put(now, std::get<Put>(change))
                                                   : remove(now, std::get<Remove>(change)));
    }
    std::reverse(back.changes.begin(), back.changes.end());
    return back;
}

}  // namespace cotter

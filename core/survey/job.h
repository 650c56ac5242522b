// A whole job in memory: its records in the order they were made, and what was amended after sign-off.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "core/survey/judge_records.h"
#include "core/survey/look_records.h"
#include "core/survey/quote_records.h"
#include "core/survey/records.h"
#include "core/survey/work_records.h"

namespace cotter {

using JobId = Id<Visit>;

// Any one record. The order of the alternatives is the order of `RecordKind`.
using Record = std::variant<Visit, Trailer, Shot, Finding, Tag, Reading, Torque, Level, MakerLimit, Inspection,
                            InspectionAnswer, Need, Offer, Quote, Decision, StepMark, BearingSetting, PipeRoute,
                            BleedCount, SignOff, Look, Sidewall, Chamber, BreakawayTest, Event>;

enum class RecordKind {
    visit,
    trailer,
    shot,
    finding,
    tag,
    reading,
    torque,
    level,
    maker_limit,
    inspection,
    inspection_answer,
    need,
    offer,
    quote,
    decision,
    step_mark,
    bearing_setting,
    pipe_route,
    bleed_count,
    sign_off,
    look,
    sidewall,
    chamber,
    breakaway_test,
    event
};
constexpr auto names(RecordKind) {
    return name_list("visit", "trailer", "shot", "finding", "tag", "reading", "torque", "level", "maker_limit",
                     "inspection", "inspection_answer", "need", "offer", "quote", "decision", "step_mark",
                     "bearing_setting", "pipe_route", "bleed_count", "sign_off", "look", "sidewall", "chamber",
                     "breakaway_test", "event");
}

// A change made after sign-off: the record before and after as JSON texts, and why.
struct Amendment {
    Instant at;
    std::string by;
    std::string reason;
    RecordKind kind = RecordKind::visit;
    std::string id;         // of the record
    std::string old_value;  // JSON; empty when the record is new
    std::string new_value;  // JSON; empty when it was removed

    bool operator==(const Amendment&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("at", s.at);
        f.must("by", s.by);
        f.must("reason", s.reason);
        f.must("record", s.kind);
        f.must("id", s.id);
        f.may("old", s.old_value);
        f.may("new", s.new_value);
    }
};

template <class R>
struct ListOf {
    std::vector<R> list;
};
// A list of each kind. Not a tuple: that costs the compiler a quarter of a second in each file that sees a job.
template <class... R>
struct ListsOf : ListOf<R>... {
    bool operator==(const ListsOf& other) const {
        return ((static_cast<const ListOf<R>&>(*this).list == static_cast<const ListOf<R>&>(other).list) && ...);
    }
};

// Visit, trailer, inspection, pipe route and sign-off exist at most once in a job.
struct Job {
    ListsOf<Visit, Trailer, Shot, Finding, Tag, Reading, Torque, Level, MakerLimit, Inspection, InspectionAnswer, Need,
            Offer, Quote, Decision, StepMark, BearingSetting, PipeRoute, BleedCount, SignOff, Look, Sidewall, Chamber,
            BreakawayTest, Event>
        records;
    std::vector<Amendment> amendments;

    Job();
    Job(const Job&);
    Job(Job&&) noexcept;
    Job& operator=(const Job&);
    Job& operator=(Job&&) noexcept;
    ~Job();
    bool operator==(const Job&) const;

    template <class R>
    [[nodiscard]] std::vector<R>& all() {
        return static_cast<ListOf<R>&>(records).list;
    }
    template <class R>
    [[nodiscard]] const std::vector<R>& all() const {
        return static_cast<const ListOf<R>&>(records).list;
    }

    // Calls `f(const std::vector<R>&)` for the list of each kind there is.
    template <class F>
    void each_list(F&& f) const {
        each_list_of(records, f);
    }

    template <class R>
    [[nodiscard]] const R* find(const Id<R>& id) const {
        for (const R& record : all<R>())
            if (record.id == id) return &record;
        return nullptr;
    }
    // The one record of a kind that exists at most once, or nullptr.
    template <class R>
    [[nodiscard]] const R* only() const {
        return all<R>().empty() ? nullptr : &all<R>().front();
    }

    [[nodiscard]] JobId id() const { return only<Visit>() == nullptr ? JobId{} : only<Visit>()->id; }
    [[nodiscard]] bool signed_off() const { return only<SignOff>() != nullptr; }

private:
    template <class F, class... R>
    static void each_list_of(const ListsOf<R...>& lists, F&& f) {
        (f(static_cast<const ListOf<R>&>(lists).list), ...);
    }
};

[[nodiscard]] inline RecordKind kind_of(const Record& record) {
    return static_cast<RecordKind>(record.index());
}
[[nodiscard]] Uuid uuid_of(const Record& record);

// The number that a finding goes by on tagged photos and in the report: its place among the job's findings, from 1;
// 0 when it is not in the job.
[[nodiscard]] int finding_number(const Job& job, const Id<Finding>& finding);

// Calls `f(std::vector<R>&)` for the list of `kind` in `job` and returns its result.
template <class J, class F>
decltype(auto) with_records(J& job, RecordKind kind, F&& f) {
    switch (kind) {
        case RecordKind::visit:
            return f(job.template all<Visit>());
        case RecordKind::trailer:
            return f(job.template all<Trailer>());
        case RecordKind::shot:
            return f(job.template all<Shot>());
        case RecordKind::finding:
            return f(job.template all<Finding>());
        case RecordKind::tag:
            return f(job.template all<Tag>());
        case RecordKind::reading:
            return f(job.template all<Reading>());
        case RecordKind::torque:
            return f(job.template all<Torque>());
        case RecordKind::level:
            return f(job.template all<Level>());
        case RecordKind::maker_limit:
            return f(job.template all<MakerLimit>());
        case RecordKind::inspection:
            return f(job.template all<Inspection>());
        case RecordKind::inspection_answer:
            return f(job.template all<InspectionAnswer>());
        case RecordKind::need:
            return f(job.template all<Need>());
        case RecordKind::offer:
            return f(job.template all<Offer>());
        case RecordKind::quote:
            return f(job.template all<Quote>());
        case RecordKind::decision:
            return f(job.template all<Decision>());
        case RecordKind::step_mark:
            return f(job.template all<StepMark>());
        case RecordKind::bearing_setting:
            return f(job.template all<BearingSetting>());
        case RecordKind::pipe_route:
            return f(job.template all<PipeRoute>());
        case RecordKind::bleed_count:
            return f(job.template all<BleedCount>());
        case RecordKind::sign_off:
            return f(job.template all<SignOff>());
        case RecordKind::look:
            return f(job.template all<Look>());
        case RecordKind::sidewall:
            return f(job.template all<Sidewall>());
        case RecordKind::chamber:
            return f(job.template all<Chamber>());
        case RecordKind::breakaway_test:
            return f(job.template all<BreakawayTest>());
        case RecordKind::event:
            break;
    }
    return f(job.template all<Event>());
}

}  // namespace cotter

// Two documents of one job, record by record.
#include "core/ledger/revisions.h"

#include <algorithm>
#include <fmt/format.h>
#include <tuple>

#include "core/base/text.h"
#include "core/ledger/filing.h"
#include "core/ledger/visits.h"
#include "core/survey/json.h"

namespace cotter::ledger {

namespace {

constexpr std::size_t kMostText = 200;  // bytes of one value or reason in a line
constexpr std::size_t kMostNamed = 3;   // changes on a receipt

// ---- what is compared of a record, and how it is said

std::string subject(const Finding& f) {
    return fmt::format("{}, {}", f.component, f.defect);
}
std::string subject(const Reading& r) {
    return fmt::format("{}, {}", r.what, name_of(r.stage));
}
std::string subject(const InspectionAnswer& a) {
    return "inspection item " + a.item;
}

std::string value(const Finding& f) {
    std::string out(name_of(f.grade));
    if (f.outcome != cotter::Outcome::open) out += fmt::format(", {}", name_of(f.outcome));
    return out;
}
std::string value(const Reading& r) {
    if (r.taken != Taken::measured) return fmt::format("{}: {}", name_of(r.taken), r.reason);
    std::string out;
    for (const ReadingPoint& point : r.points)
        out += fmt::format("{}{}{}{}", out.empty() ? "" : "; ", Amount{point.value, r.unit}.text(),
                           point.where.empty() ? "" : " ", point.where);
    return out;
}
std::string value(const InspectionAnswer& a) {
    return std::string(name_of(a.answer));
}

Place place_of(const InspectionAnswer&) {
    return {};
}
template <class R>
Place place_of(const R& record) {
    return record.place;
}

std::optional<Grade> grade_in(const Finding* f) {
    return f == nullptr ? std::nullopt : std::optional(f->grade);
}
template <class R>
std::optional<Grade> grade_in(const R*) {
    return std::nullopt;
}

template <class R>
constexpr RecordKind kKindOf = RecordKind::finding;
template <>
constexpr RecordKind kKindOf<Reading> = RecordKind::reading;
template <>
constexpr RecordKind kKindOf<InspectionAnswer> = RecordKind::inspection_answer;

// ---- holding two against each other

// The last of the amendments that `before` does not have yet.
const Amendment* amendment_of(const Job& before, const Job& now, RecordKind kind, const std::string& id) {
    const auto& old = before.amendments;
    const auto& all = now.amendments;
    const bool longer = old.size() <= all.size() && std::equal(old.begin(), old.end(), all.begin());
    for (std::size_t i = all.size(); i > (longer ? old.size() : 0); --i)
        if (all[i - 1].kind == kind && all[i - 1].id == id) return &all[i - 1];
    return nullptr;
}

class Comparing {
public:
    Comparing(const Job& before, const Job& now, int revision) : before_(before), now_(now), revision_(revision) {}

    template <class R>
    void compare() {
        for (const R& old : before_.all<R>()) {
            const R* fresh = now_.find(old.id);
            if (fresh == nullptr || subject(*fresh) != subject(old) || place_of(*fresh) != place_of(old) ||
                value(*fresh) != value(old))
                add(&old, fresh);
        }
        if (!before_.signed_off()) return;
        for (const R& fresh : now_.all<R>())
            if (before_.find(fresh.id) == nullptr) add<R>(nullptr, &fresh);
    }

    std::vector<RevisionChange> changes;

private:
    template <class R>
    void add(const R* old, const R* fresh) {
        RevisionChange c;
        const R& one = fresh == nullptr ? *old : *fresh;
        c.job = now_.id().text();
        c.revision = revision_;
        c.kind = kKindOf<R>;
        c.place = place_of(one);
        c.what = subject(one);
        if (old != nullptr) c.before = value(*old);
        if (fresh != nullptr) c.now = value(*fresh);
        // The same record about something else: the old value says about what.
        if (old != nullptr && fresh != nullptr &&
            (subject(*old) != subject(*fresh) || place_of(*old) != place_of(*fresh)))
            c.before += fmt::format(" ({}, {})", subject(*old), place_of(*old).text());
        c.grade_before = grade_in(old);
        c.grade_now = grade_in(fresh);
        if (const Amendment* a = amendment_of(before_, now_, c.kind, one.id.uuid.text())) {
            c.at = a->at;
            c.by = a->by;
            c.reason = a->reason;
        }
        changes.push_back(std::move(c));
    }

    const Job& before_;
    const Job& now_;
    int revision_;
};

bool graver_first(const RevisionChange& a, const RevisionChange& b) {
    const auto rank = [](const RevisionChange& c) {
        return std::tuple(c.eased(), c.grade_before != c.grade_now, std::max(c.grade_before, c.grade_now));
    };
    return rank(a) > rank(b);
}

template <class R>
void undo_one(std::vector<R>& list, const Amendment& a) {
    const auto at = std::find_if(list.begin(), list.end(), [&](const R& r) { return r.id.uuid.text() == a.id; });
    if (a.old_value.empty()) {
        if (at != list.end()) list.erase(at);
        return;
    }
    const auto old = record_from_json(a.kind, a.old_value);
    if (!old || !std::holds_alternative<R>(*old)) return;  // by a newer program: it stays as it is now
    if (at != list.end())
        *at = std::get<R>(*old);
    else
        list.push_back(std::get<R>(*old));
}

// The job as it was signed.
Job without_amendments(const Job& job) {
    Job out = job;
    out.amendments.clear();
    for (auto a = job.amendments.rbegin(); a != job.amendments.rend(); ++a)
        with_records(out, a->kind, [&](auto& list) { undo_one(list, *a); });
    return out;
}

std::string said_of(const RevisionChange& c) {
    const auto quoted = [](const std::string& text, const char* none) {
        return text.empty() ? std::string(none) : fmt::format("'{}'", one_line(text, kMostText));
    };
    std::string out = one_line(c.what, kMostText);
    if (c.kind != RecordKind::inspection_answer) out += fmt::format(" at {}", c.place.text());
    out += fmt::format(": {} before, {} now", quoted(c.before, "not recorded"), quoted(c.now, "taken out"));
    if (!c.at) return out + " (no reason is recorded)";
    return out + fmt::format(" ({}: {})", one_line(c.by, 80), one_line(c.reason, kMostText));
}

// The packets of a job that count, a row a revision.
constexpr std::string_view kCounted =
    "SELECT p.fingerprint, p.revision, p.job FROM packet p JOIN job ON job.id=p.job WHERE p.role<>$1 AND ";
constexpr std::string_view kInOrder = " ORDER BY job.n DESC, p.revision, p.chosen DESC, p.seq";
const std::int64_t kHeld = static_cast<int>(Role::held);

struct OfRevision {
    std::string fingerprint, job;
    int revision = 1;
};
Result<std::vector<OfRevision>> counted(SqlDb& db, const char* which, const std::string& what) {
    std::vector<OfRevision> out;
    COTTER_TRY(
        db.each(fmt::format("{}{}{}", kCounted, which, kInOrder), {kHeld, what}, [&](const SqlRows& r) -> Result<> {
            OfRevision one{r.text(0), r.text(2), static_cast<int>(r.integer(1))};
            const bool again = !out.empty() && out.back().job == one.job && out.back().revision == one.revision;
            if (!again) out.push_back(std::move(one));
            return {};
        }));
    return out;
}

// What each revision of one job changes of the one before it, the last one's first.
Result<> add_steps(SqlDb& db, std::span<const OfRevision> revisions, std::vector<RevisionChange>& out) {
    std::vector<std::vector<RevisionChange>> steps;
    Job before;
    for (const OfRevision& one : revisions) {
        COTTER_ASSIGN(Job now, load_job(db, one.fingerprint));
        steps.push_back(steps.empty() ? changes_amended(now, one.revision)
                                      : changes_between(before, now, one.revision));
        before = std::move(now);
    }
    for (auto step = steps.rbegin(); step != steps.rend(); ++step)
        std::move(step->begin(), step->end(), std::back_inserter(out));
    return {};
}

}  // namespace

std::vector<RevisionChange> changes_between(const Job& before, const Job& now, int revision) {
    Comparing comparing(before, now, revision);
    comparing.compare<Finding>();
    comparing.compare<Reading>();
    comparing.compare<InspectionAnswer>();
    std::stable_sort(comparing.changes.begin(), comparing.changes.end(), graver_first);
    return std::move(comparing.changes);
}

std::vector<RevisionChange> changes_amended(const Job& job, int revision) {
    if (job.amendments.empty()) return {};
    return changes_between(without_amendments(job), job, revision);
}

std::string changes_line(std::span<const RevisionChange> changes) {
    std::string out;
    for (std::size_t i = 0; i < std::min(changes.size(), kMostNamed); ++i)
        out +=
            fmt::format("{}{}", i == 0 ? (changes[0].eased() ? kEasedWords : "changed: ") : "; ", said_of(changes[i]));
    if (changes.size() > kMostNamed) out += fmt::format("; and {} more", changes.size() - kMostNamed);
    return out;
}

Result<std::vector<RevisionChange>> changes_around(SqlDb& db, const std::string& fingerprint, const Job& job) {
    COTTER_ASSIGN(const auto all, counted(db, "p.job=$2", job.id().text()));
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.fingerprint == fingerprint; });
    if (at == all.end()) return std::vector<RevisionChange>();
    if (std::next(at) != all.end()) {
        COTTER_ASSIGN(const Job later, load_job(db, std::next(at)->fingerprint));
        return changes_between(job, later, std::next(at)->revision);
    }
    if (at == all.begin()) return changes_amended(job, at->revision);
    COTTER_ASSIGN(const Job before, load_job(db, std::prev(at)->fingerprint));
    return changes_between(before, job, at->revision);
}

Result<std::vector<RevisionChange>> changes_of(SqlDb& db, const std::string& trailer,
                                               const std::vector<VisitOnFile>& visits) {
    std::vector<RevisionChange> out;
    COTTER_ASSIGN(const auto all, counted(db, "job.trailer=$2", trailer));
    for (auto from = all.begin(); from != all.end();) {
        const auto to = std::find_if(from, all.end(), [&](const auto& one) { return one.job != from->job; });
        const auto visit =
            std::find_if(visits.begin(), visits.end(), [&](const VisitOnFile& v) { return v.line.job == from->job; });
        if (to - from > 1) {
            COTTER_TRY(add_steps(db, {from, to}, out));
        } else if (visit != visits.end()) {
            auto own = changes_amended(visit->job(), from->revision);
            std::move(own.begin(), own.end(), std::back_inserter(out));
        }
        from = to;
    }
    return out;
}

}  // namespace cotter::ledger

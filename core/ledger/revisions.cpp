// Two documents of one job, record by record.
#include "core/ledger/revisions.h"

#include <algorithm>
#include <fmt/format.h>
#include <tuple>
#include <type_traits>

#include "core/base/text.h"
#include "core/ledger/filing.h"
#include "core/ledger/visits.h"
#include "core/survey/field_texts.h"
#include "core/survey/json.h"

namespace cotter::ledger {

namespace {

constexpr std::size_t kMostText = 200;  // bytes of one value or reason in a line
constexpr std::size_t kMostNamed = 3;   // changes on a receipt

// ---- what is compared of a record, and how it is said

struct Words {
    std::string what, value;
    std::optional<Place> place;
};

std::string list_of(const Reading& r) {
    std::string out;
    for (const ReadingPoint& point : r.points)
        out += fmt::format("{}{}{}{}", out.empty() ? "" : "; ", Amount{point.value, r.unit}.text(),
                           point.where.empty() ? "" : " ", point.where);
    return out;
}

Words words_of(const Finding& f) {
    std::string value(name_of(f.grade));
    if (f.outcome != cotter::Outcome::open) value += fmt::format(", {}", name_of(f.outcome));
    return {fmt::format("{}, {}", f.component, f.defect), value, f.place};
}
Words words_of(const Reading& r) {
    const bool measured = r.taken == Taken::measured;
    return {fmt::format("{}, {}", r.what, name_of(r.stage)),
            measured ? list_of(r) : fmt::format("{}: {}", name_of(r.taken), r.reason), r.place};
}
Words words_of(const InspectionAnswer& a) {
    return {"inspection item " + a.item, std::string(name_of(a.answer)), std::nullopt};
}

// What has words of its own above; for everything else the fields speak.
template <class R>
constexpr bool kSpoken =
    std::is_same_v<R, Finding> || std::is_same_v<R, Reading> || std::is_same_v<R, InspectionAnswer>;
// What is told of an unsigned job too, where its other records are work going on.
template <class R>
constexpr bool kAnswers = kSpoken<R> || std::is_same_v<R, Look> || std::is_same_v<R, Sidewall> ||
                          std::is_same_v<R, Chamber> || std::is_same_v<R, BreakawayTest>;

std::optional<Grade> grade_in(const Finding* f) {
    return f == nullptr ? std::nullopt : std::optional(f->grade);
}
template <class R>
std::optional<Grade> grade_in(const R*) {
    return std::nullopt;
}

// "wrench calibrated: 2025-02-16; note: new", of one side of the fields that differ.
std::string fields_said(const std::vector<FieldChange>& changes, std::string FieldChange::*side) {
    std::string out;
    for (const FieldChange& change : changes) {
        if ((change.*side).empty() || change.field == "at" || change.field == "id") continue;
        std::string field = change.field;
        std::replace(field.begin(), field.end(), '_', ' ');
        out += fmt::format("{}{}: {}", out.empty() ? "" : "; ", field, change.*side);
    }
    return out;
}

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
    void compare(const std::vector<R>& now) {
        const bool is_signed = before_.signed_off();
        if (!is_signed && !kAnswers<R>) return;
        for (const R& old : before_.all<R>()) {
            const R* fresh = now_.find(old.id);
            if (fresh == nullptr || !(*fresh == old)) add(&old, fresh);
        }
        for (const R& fresh : now)
            if (is_signed && before_.find(fresh.id) == nullptr) add<R>(nullptr, &fresh);
    }

    std::vector<RevisionChange> changes;

private:
    template <class R>
    void add(const R* old, const R* fresh) {
        RevisionChange c;
        c.job = now_.id().text();
        c.revision = revision_;
        c.kind = kind_of(Record(fresh == nullptr ? *old : *fresh));
        bool told = false;
        if constexpr (kSpoken<R>) told = speak(old, fresh, c);
        if (!told && (before_.signed_off() || !kSpoken<R>))
            told = spell(old == nullptr ? "" : record_json(*old), fresh == nullptr ? "" : record_json(*fresh), c);
        if (!told) return;
        c.grade_before = grade_in(old);
        c.grade_now = grade_in(fresh);
        if (const Amendment* a = amendment_of(before_, now_, c.kind, (fresh == nullptr ? old : fresh)->id.text())) {
            c.at = a->at;
            c.by = a->by;
            c.reason = a->reason;
        }
        changes.push_back(std::move(c));
    }

    // False where only what nobody asks for differs, such as a note.
    template <class R>
    static bool speak(const R* old, const R* fresh, RevisionChange& c) {
        const Words before = old == nullptr ? Words() : words_of(*old),
                    now = fresh == nullptr ? Words() : words_of(*fresh);
        const bool same_subject = before.what == now.what && before.place == now.place;
        if (same_subject && before.value == now.value) return false;
        c.what = fresh == nullptr ? before.what : now.what;
        c.place = fresh == nullptr ? before.place : now.place;
        c.before = before.value;
        c.now = now.value;
        // The same record about something else: the old value says about what.
        if (old != nullptr && fresh != nullptr && !same_subject)
            c.before += fmt::format(" ({}{}{})", before.what, before.place ? ", " : "",
                                    before.place ? before.place->text() : "");
        return true;
    }

    // False where nothing but the time of the record differs.
    static bool spell(const std::string& old, const std::string& fresh, RevisionChange& c) {
        const FieldTexts before = field_texts(old), now = field_texts(fresh);
        const FieldTexts& one = fresh.empty() ? before : now;
        const auto changed = changed_fields(before, now);
        std::string kind(name_of(c.kind));
        std::replace(kind.begin(), kind.end(), '_', ' ');
        c.what = kind + (called_by(one).empty() ? "" : ", ") + called_by(one);
        const std::string* place = text_at(one, "place");
        if (auto at = place == nullptr ? Result<Place>(fail(Errc::refused, "none")) : Place::parse(*place))
            c.place = *at;
        if (!old.empty()) c.before = fresh.empty() ? "recorded" : fields_said(changed, &FieldChange::before);
        if (!fresh.empty()) c.now = old.empty() ? "recorded" : fields_said(changed, &FieldChange::now);
        if (c.before.empty() && c.now.empty()) return false;
        if (c.before.empty() && !old.empty()) c.before = "without that";
        if (c.now.empty() && !fresh.empty()) c.now = "without that";
        return true;
    }

    const Job& before_;
    const Job& now_;
    int revision_;
};

bool graver_first(const RevisionChange& a, const RevisionChange& b) {
    const auto rank = [](const RevisionChange& c) {
        return std::tuple(c.eased(), c.grade_before != c.grade_now, std::max(c.grade_before, c.grade_now),
                          c.kind == RecordKind::finding);
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
    if (c.place) out += fmt::format(" at {}", c.place->text());
    return out + fmt::format(": {} before, {} now", quoted(c.before, "not recorded"), quoted(c.now, "taken out"));
}

std::string reason_of(const RevisionChange& c) {
    if (!c.at) return " (no reason is recorded)";
    return fmt::format(" ({}: {})", one_line(c.by, 80), one_line(c.reason, kMostText));
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
    for (std::size_t kind = 0; kind < std::variant_size_v<Record>; ++kind)
        with_records(now, static_cast<RecordKind>(kind), [&](const auto& list) { comparing.compare(list); });
    std::stable_sort(comparing.changes.begin(), comparing.changes.end(), graver_first);
    return std::move(comparing.changes);
}

std::vector<RevisionChange> changes_amended(const Job& job, int revision) {
    if (job.amendments.empty()) return {};
    return changes_between(without_amendments(job), job, revision);
}

std::string changes_line(std::span<const RevisionChange> changes) {
    std::string out;
    const std::size_t named = std::min(changes.size(), kMostNamed);
    for (std::size_t i = 0; i < named; ++i) {
        out += i > 0 ? "; " : changes[0].eased() ? std::string(kEasedWords) : "changed: ";
        out += said_of(changes[i]);
        const std::string reason = reason_of(changes[i]);  // once for all that it is given for
        if (i + 1 == named || reason_of(changes[i + 1]) != reason) out += reason;
    }
    if (changes.size() > named) out += fmt::format("; and {} more", changes.size() - named);
    return out;
}

Result<std::vector<RevisionChange>> changes_around(SqlDb& db, const std::string& fingerprint, const Job& job,
                                                   int revision) {
    COTTER_ASSIGN(const auto all, counted(db, "p.job=$2", job.id().text()));
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.fingerprint == fingerprint; });
    if (all.empty()) return std::vector<RevisionChange>();
    if (at == all.end()) {  // held, or beside another of its revision
        COTTER_ASSIGN(const Job shown, load_job(db, all.back().fingerprint));
        return changes_between(shown, job, revision);
    }
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

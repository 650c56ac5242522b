// See judged_reading.h.
#include "app/views/judged_reading.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "app/views/chrome.h"
#include "core/trade/reading_spec.h"

namespace cotter {

namespace {

std::optional<Limit> limit_with_id(const Session& session, const std::string& id) {
    for (const Limit& l : session.judge().reg().limits)
        if (l.id == id) return l;
    if (const auto uuid = Uuid::parse(id))
        if (const MakerLimit* figure = session.job().find(Id<MakerLimit>{*uuid})) return limit_of(*figure);
    return std::nullopt;
}

// Four figures, rounded so that what is printed is never easier to meet than the bound itself.
std::string figure_in(const Limit& limit, const Unit& unit) {
    const double value = from_si(limit.value.si(), unit);
    if (value == 0) return "0";
    const double scale = std::pow(10.0, 3 - std::floor(std::log10(std::abs(value))));
    const bool lower = limit.bound == Bound::at_least || limit.bound == Bound::more_than;
    const double grain = 1e-9 * std::abs(value) * scale;
    const double whole = lower ? std::ceil(value * scale - grain) : std::floor(value * scale + grain);
    return fmt::format("{:.6g}", whole / scale);
}

std::string limit_words(const Session& session, const Ground& g, const std::string& ucum) {
    const auto limit = limit_with_id(session, g.limit_id);
    const Unit* unit = find_unit(ucum);
    const Unit* own = limit ? find_unit(limit->value.unit) : nullptr;
    if (!limit || unit == nullptr || own == nullptr || own == unit || own->quantity != unit->quantity) return g.limit;
    return fmt::format("{} {} {}", name_of(limit->bound), figure_in(*limit, *unit), unit->label);
}

// The words that a finding on such a reading has for the part.
std::string part_of(std::string_view what) {
    const ReadingSpec* spec = reading_spec(what);
    if (spec == nullptr) return std::string(what);
    const std::string_view first = spec->renewed_by.substr(0, spec->renewed_by.find(' '));
    return std::string(first.empty() ? spec->component : first);
}

bool has_finding(const Job& job, const Place& place, const std::string& part) {
    const auto& all = job.all<Finding>();
    return std::any_of(all.begin(), all.end(), [&](const Finding& f) {
        return f.place == place && f.component == part && f.outcome != Outcome::repaired;
    });
}

void offer_finding(const Job& job, const Reading& reading, const Ground& worst, JudgedReading& out) {
    const std::string part = part_of(reading.what);
    if (worst.grade < Grade::repair || has_finding(job, reading.place, part)) return;
    FindingDraft draft;
    draft.place = reading.place;
    draft.component = part;
    draft.defect = fmt::format("{} {}", reading.what,
                               out.limit.empty() ? reading_words(reading) : reading_words(reading) + ", " + out.limit);
    draft.grade = worst.grade;
    draft.todo = worst.todo;
    out.finding = std::move(draft);
}

JudgedReading judged(const Session& session, const Job& job, const Summary& summary, const Reading& reading) {
    JudgedReading out;
    if (reading.taken != Taken::measured || reading.points.empty()) return out;
    const Ground* worst = nullptr;
    const auto look = [&](const Judgement& node) {
        for (const Ground& g : node.reasons) {
            if (!(g.record == reading.id.uuid)) continue;
            const bool firmer = worst != nullptr && g.grade == worst->grade && worst->limit.empty() && !g.limit.empty();
            if (worst == nullptr || g.grade > worst->grade || firmer) worst = &g;
        }
    };
    walk(summary.now, look);
    if (worst == nullptr) walk(summary.found, look);
    if (worst == nullptr) {
        out.limit = "no limit entered";
        return out;
    }
    out.grade = worst->grade;
    out.limit = worst->limit.empty() ? worst->says : limit_words(session, *worst, reading.unit);
    out.source = worst->source;
    offer_finding(job, reading, *worst, out);
    return out;
}

// What the judges would say if this were recorded.
JudgedReading judged_draft(const Session& session, const ReadingEntry& entry) {
    Reading reading = reading_of(entry, entry.draft);
    if (reading.taken != Taken::measured || reading.points.empty()) return {};
    if (reading.id.nil()) reading.id.uuid = Uuid::parse("00000000-0000-4000-8000-000000000001").value();
    reading.at = session.now();
    reading.by = kUnnamed;
    const Edit edit{session.job().id(), session.now(), reading.by, "tried", Changes{Put{reading, {}}}};
    const auto tried = apply(session.job(), edit);
    if (!tried) return {};
    const auto& earlier = session.judge().earlier(session.job());
    const Summary summary = judge_job(*tried, session.judge().reg().limits, {earlier, session.now()});
    return judged(session, *tried, summary, reading);
}

}  // namespace

JudgedReading judged_reading(const Session& session, const Reading& reading) {
    return judged(session, session.job(), session.summary(), reading);
}

ReadingEntry judged_entry(const Session& session, const ReadingDraft& draft) {
    ReadingEntry entry = reading_entry(session.job(), draft);
    entry.judged = judged_draft(session, entry);
    return entry;
}

}  // namespace cotter

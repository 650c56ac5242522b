// See reading_view.h.
#include "app/views/reading_view.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/ui/exact.h"
#include "app/views/chrome.h"

namespace cotter {

namespace {

std::string_view label_of(std::string_view ucum) {
    const Unit* unit = find_unit(ucum);
    return unit == nullptr ? ucum : unit->label;
}

// Of the same kind, anywhere in the job: unit and tool are taken over from it.
const Reading* last_like(const Job& job, std::string_view what) {
    const Reading* last = nullptr;
    for (const Reading& r : job.all<Reading>())
        if (r.what == what && r.taken == Taken::measured) last = &r;
    return last;
}

const Reading* by_id(const Job& job, const std::string& id) {
    const auto uuid = Uuid::parse(id);
    return uuid ? job.find(Id<Reading>{*uuid}) : nullptr;
}

KeypadSpec spec_of(const ReadingDraft& draft, const Reading& record) {
    const ReadingKind* kind = reading_kind(draft.what);
    KeypadSpec spec;
    spec.title = upper_first(draft.what) + (draft.stage == Stage::after ? ", after the work" : "");
    spec.may_skip = true;
    spec.some_points = true;
    spec.sign = kind == nullptr || kind->sign;
    spec.fractions = kind != nullptr && kind->fractions;
    if (kind != nullptr) {
        for (const UnitStep& u : kind->units) spec.units.emplace_back(u.ucum);
        spec.points.assign(kind->points.begin(), kind->points.end());
    }
    if (std::find(spec.units.begin(), spec.units.end(), draft.unit) == spec.units.end())
        spec.units.insert(spec.units.begin(), draft.unit);
    spec.may_remove = !record.id.nil();
    if (record.id.nil() || record.points.empty()) return spec;
    spec.points.clear();
    for (const ReadingPoint& p : record.points) spec.points.push_back(p.where);
    if (spec.points.size() == 1 && spec.points.front().empty()) spec.points.clear();
    return spec;
}

// What the instrument shows in that unit.
std::optional<Number> step_of(const ReadingKind* kind, std::string_view unit, const Reading& record) {
    if (record.resolution && record.unit == unit) return record.resolution;
    if (kind == nullptr) return std::nullopt;
    for (const UnitStep& u : kind->units) {
        if (u.ucum != unit) continue;
        if (const auto step = Number::parse(u.step)) return *step;
    }
    return std::nullopt;
}

std::string many_words(const Reading& reading) {
    std::vector<Exact> values;
    for (const ReadingPoint& p : reading.points)
        if (const auto value = to_exact(p.value.text())) values.push_back(*value);
    if (values.empty()) return {};
    const auto [low, high] = std::minmax_element(values.begin(), values.end(), less);
    const auto spread = difference(*high, *low);
    const std::string_view unit = label_of(reading.unit);
    const ReadingKind* kind = reading_kind(reading.what);
    const bool high_counts = kind != nullptr && kind->high;
    std::string out =
        fmt::format("{} {} {}", high_counts ? "most" : "least", written(high_counts ? *high : *low), unit);
    if (spread) out += fmt::format(", spread {} {}", written(*spread), unit);
    if (kind != nullptr && reading.points.size() < kind->points.size())
        out += fmt::format(" ({} of {} points)", reading.points.size(), kind->points.size());
    return out;
}

}  // namespace

const Reading* find_reading(const Job& job, std::string_view what, const Place& place, Stage stage) {
    const Reading* found = nullptr;
    for (const Reading& r : job.all<Reading>())
        if (r.what == what && r.place == place && r.stage == stage) found = &r;
    return found;
}

ReadingDraft begin_reading(const Job& job, std::string_view what, const Place& place, Stage stage) {
    ReadingDraft draft;
    draft.place = place;
    draft.what = what;
    draft.stage = stage;
    const ReadingKind* kind = reading_kind(what);
    const Reading* like = last_like(job, what);
    draft.unit = like != nullptr ? like->unit : kind != nullptr ? std::string(kind->units.front().ucum) : "1";
    if (const Reading* there = find_reading(job, what, place, stage)) {
        draft.id = there->id.text();
        draft.taken = there->taken;
        draft.reason = there->reason;
        if (there->taken == Taken::measured) draft.unit = there->unit;
        for (const ReadingPoint& p : there->points) draft.texts.push_back(p.value.text());
    }
    return draft;
}

ReadingEntry reading_entry(const Job& job, const ReadingDraft& draft) {
    ReadingEntry entry;
    entry.draft = draft;
    entry.key = fmt::format("{} {} {} {}", draft.place.text(), draft.what, name_of(draft.stage), draft.id);
    if (const Reading* there = by_id(job, draft.id)) {
        entry.record = *there;
    } else if (const Reading* like = last_like(job, draft.what)) {
        entry.record.instrument = like->instrument;
        entry.record.resolution = like->resolution;
        entry.record.unit = like->unit;
    }
    entry.spec = spec_of(draft, entry.record);
    return entry;
}

ReadingDraft draft_of(const ReadingEntry& entry, const KeypadModel& keyed) {
    ReadingDraft draft = entry.draft;
    draft.texts = keyed.points();
    draft.unit = keyed.unit();
    draft.taken = keyed.taken();
    return draft;
}

Reading reading_of(const ReadingEntry& entry, const ReadingDraft& draft) {
    const ReadingKind* kind = reading_kind(draft.what);
    Reading reading = entry.record;
    reading.place = draft.place;
    reading.what = draft.what;
    reading.stage = draft.stage;
    reading.taken = draft.taken;
    reading.points.clear();
    if (draft.taken != Taken::measured) {
        reading.reason = draft.reason;
        reading.resolution.reset();
        return reading;
    }
    reading.reason.clear();
    reading.resolution = step_of(kind, draft.unit, entry.record);
    reading.unit = draft.unit;
    if (reading.instrument.empty() && kind != nullptr) reading.instrument = kind->tool;
    for (std::size_t i = 0; i < draft.texts.size(); ++i) {
        const auto value = Number::parse(draft.texts[i]);
        if (!value) continue;
        const bool named = i < entry.spec.points.size();
        reading.points.push_back({named ? entry.spec.points[i] : std::string{}, *value});
    }
    return reading;
}

std::string reading_words(const Reading& reading) {
    if (reading.taken != Taken::measured)
        return fmt::format("{}{}{}", name_of(reading.taken), reading.reason.empty() ? "" : ": ", reading.reason);
    if (reading.points.size() == 1)
        return fmt::format("{} {}", reading.points.front().value.text(), label_of(reading.unit));
    return many_words(reading);
}

}  // namespace cotter

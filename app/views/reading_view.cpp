// See reading_view.h.
#include "app/views/reading_view.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "app/ui/exact.h"
#include "app/views/chrome.h"
#include "core/trade/asked.h"

namespace cotter {

namespace {

constexpr std::array<std::string_view, 7> kNotMeasured{"not part of this visit",
                                                       "no tool here",
                                                       "no time left",
                                                       "customer declined",
                                                       "bad weather",
                                                       "tool failed",
                                                       "new part"};
constexpr std::array<std::string_view, 6> kNotAccessible{"wheel not taken off",     "seized",
                                                         "covered by dirt or rust", "part missing",
                                                         "no room for the tool",    "load in the way"};

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

KeypadSpec spec_of(const Job& job, const ReadingDraft& draft, const Reading& record) {
    const ReadingSpec* known = reading_spec(draft.what);
    KeypadSpec spec;
    spec.title = reading_title(draft.what, draft.place) + (draft.stage == Stage::after ? ", after the work" : "");
    spec.may_skip = true;
    spec.some_points = true;
    spec.sign = known == nullptr || known->sign;
    spec.fractions = known != nullptr && known->fractions;
    if (known != nullptr) {
        for (const UnitStep& u : known->units) spec.units.emplace_back(u.ucum);
        spec.points = spots_of(*known, layout_of(job), draft.place);
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
std::optional<Number> step_of(const ReadingSpec* known, std::string_view unit, const Reading& record) {
    if (record.resolution && record.unit == unit) return record.resolution;
    if (known == nullptr) return std::nullopt;
    for (const UnitStep& u : known->units) {
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
    const std::string_view unit = unit_words(reading.unit);
    const ReadingSpec* known = reading_spec(reading.what);
    const bool high_counts = known != nullptr && known->high;
    std::string out =
        fmt::format("{} {} {}", high_counts ? "most" : "least", written(high_counts ? *high : *low), unit);
    if (spread) out += fmt::format(", spread {} {}", written(*spread), unit);
    if (known != nullptr && reading.points.size() < known->points.size())
        out += fmt::format(" ({} of {} points)", reading.points.size(), known->points.size());
    return out;
}

}  // namespace

std::string_view unit_words(std::string_view ucum) {
    const Unit* unit = find_unit(ucum);
    return unit == nullptr ? ucum : unit->label;
}

std::string reading_title(std::string_view what, const Place& place) {
    const ReadingSpec* known = reading_spec(what);
    const bool round = known != nullptr && known->name == what::hub_temperature && !place.is_corner();
    std::string title = upper_first(what);  // older packets spell some names the British way
    for (const std::string_view tyre : {"Tyre", "tyre"})
        if (const auto at = title.find(tyre); at != std::string::npos) title[at + 1] = 'i';
    return title + (round ? ", all hubs and the air" : "");
}

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
    const ReadingSpec* known = reading_spec(what);
    const Reading* like = last_like(job, what);
    draft.unit = like != nullptr                             ? like->unit
                 : known != nullptr && !known->units.empty() ? std::string(known->units.front().ucum)
                                                             : "1";
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
    entry.spec = spec_of(job, draft, entry.record);
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
    const ReadingSpec* known = reading_spec(draft.what);
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
    reading.resolution = step_of(known, draft.unit, entry.record);
    reading.unit = draft.unit;
    if (reading.instrument.empty() && known != nullptr) reading.instrument = known->tool;
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
        return fmt::format("{} {}", reading.points.front().value.text(), unit_words(reading.unit));
    return many_words(reading);
}

std::span<const std::string_view> reasons_not_measured() {
    return kNotMeasured;
}
std::span<const std::string_view> reasons_not_accessible() {
    return kNotAccessible;
}

}  // namespace cotter

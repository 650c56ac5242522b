// What looks odd about a value just keyed in: asked about, never refused. See reading_view.h.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "app/views/chrome.h"
#include "app/views/reading_view.h"
#include "core/trade/reading_spec.h"

namespace cotter {

namespace {

// A point so many times the middle one is a slip of a digit or of the decimal point.
double far_ratio(std::string_view what) {
    const bool one_part = what == "rotor thickness" || what == "drum diameter";  // the same part all round
    return one_part ? 1.25 : 4;
}

struct Keyed {
    std::string text;
    double value = 0;
    std::size_t point = 0;
};

std::vector<Keyed> values_of(const ReadingDraft& draft) {
    std::vector<Keyed> out;
    for (std::size_t i = 0; i < draft.texts.size(); ++i)
        if (const auto n = Number::parse(draft.texts[i])) out.push_back({draft.texts[i], n->value(), i});
    return out;
}

double si_of(double value, std::string_view ucum) {
    const Unit* unit = find_unit(ucum);
    return unit == nullptr ? value : (value + unit->shift) * unit->factor;
}

bool usual(const ReadingSpec& spec, double value, std::string_view ucum) {
    const double si = si_of(value, ucum);
    const bool nothing = value == 0 && !spec.sign;
    return nothing || (si >= spec.least && si <= spec.most);
}

std::string usual_words(const ReadingSpec& spec, std::string_view ucum) {
    const Unit* unit = find_unit(ucum);
    if (unit == nullptr) return {};
    return fmt::format("{:.3g} to {:.3g} {}", from_si(spec.least, *unit), from_si(spec.most, *unit), unit->label);
}

// A unit on offer in which all of them would be usual.
std::string likelier_unit(const ReadingSpec& spec, const std::vector<Keyed>& values, std::string_view now) {
    for (const UnitStep& other : spec.units) {
        const bool fits =
            std::all_of(values.begin(), values.end(), [&](const Keyed& k) { return usual(spec, k.value, other.ucum); });
        if (other.ucum != now && fits) return std::string(other.ucum);
    }
    return {};
}

std::optional<ReadingDoubt> out_of_range(const ReadingSpec& spec, const std::vector<Keyed>& values,
                                         const ReadingDraft& draft) {
    const auto odd =
        std::find_if(values.begin(), values.end(), [&](const Keyed& k) { return !usual(spec, k.value, draft.unit); });
    if (odd == values.end()) return std::nullopt;
    ReadingDoubt doubt;
    doubt.point = odd->point;
    const std::string_view unit = unit_words(draft.unit);
    if (odd->value < 0 && !spec.sign) {
        doubt.words = fmt::format("{} {} is below zero. {} cannot be.", odd->text, unit, upper_first(spec.name));
        return doubt;
    }
    const bool much = si_of(odd->value, draft.unit) > spec.most;
    doubt.words = fmt::format("{} {} is {} than usual for {}: {}.", odd->text, unit, much ? "more" : "less", spec.name,
                              usual_words(spec, draft.unit));
    doubt.unit = likelier_unit(spec, values, draft.unit);
    if (doubt.unit.empty()) return doubt;
    doubt.words += fmt::format(" In {} it would be usual.", unit_words(doubt.unit));
    doubt.unit_yes = fmt::format("It was {}", unit_words(doubt.unit));
    return doubt;
}

// "70.5 among 7.05": over three points or more the middle one is right.
std::optional<ReadingDoubt> far_point(const std::vector<Keyed>& values, const ReadingDraft& draft) {
    if (values.size() < 3 || draft.what == "end play") return std::nullopt;
    std::vector<double> sorted;
    for (const Keyed& k : values) sorted.push_back(std::abs(k.value));
    std::sort(sorted.begin(), sorted.end());
    const double far = far_ratio(draft.what);
    const double middle = sorted[sorted.size() / 2];
    for (const Keyed& k : values) {
        const double size = std::abs(k.value);
        if (middle == 0 || size == 0 || (size < middle * far && size > middle / far)) continue;
        return ReadingDoubt{
            fmt::format("{} {} is far from the other points.", k.text, unit_words(draft.unit)), {}, {}, k.point};
    }
    return std::nullopt;
}

}  // namespace

std::optional<ReadingDoubt> doubt_reading(const ReadingDraft& draft) {
    if (draft.taken != Taken::measured) return std::nullopt;
    const std::vector<Keyed> values = values_of(draft);
    if (const ReadingSpec* spec = reading_spec(draft.what); spec != nullptr && is_offered(*spec))
        if (auto doubt = out_of_range(*spec, values, draft)) return doubt;
    return far_point(values, draft);
}

}  // namespace cotter

// See keypad_model.h.
#include "app/ui/keypad_model.h"

#include <algorithm>

#include <fmt/format.h>

#include "app/ui/exact.h"

namespace cotter {

namespace {

constexpr std::size_t kMostCharacters = 12;  // more would be a slip, not a measurement
constexpr std::size_t kMostPointsKeyed = 24;

bool is_digit_key(KeypadKey key) {
    return key <= KeypadKey::d9;
}

int bottom_of(KeypadKey key) {
    switch (key) {
        case KeypadKey::eighths:
            return 8;
        case KeypadKey::sixteenths:
            return 16;
        case KeypadKey::thirty_seconds:
            return 32;
        default:
            return 0;
    }
}

std::vector<Exact> finished(const std::vector<std::string>& texts) {
    std::vector<Exact> out;
    for (const std::string& text : texts)
        if (const auto value = to_exact(text)) out.push_back(*value);
    return out;
}

}  // namespace

KeypadModel::KeypadModel(KeypadSpec spec)
    : spec_(std::move(spec)), texts_(std::max<std::size_t>(1, spec_.points.size())) {
    if (spec_.units.empty()) spec_.units.emplace_back("1");
    unit_ = spec_.units.front();
}

std::string_view KeypadModel::part() const {
    std::string_view part = text();
    if (part.starts_with('-')) part.remove_prefix(1);
    const auto space = part.find(' ');
    return space == std::string_view::npos ? part : part.substr(space + 1);
}

bool KeypadModel::can(KeypadKey key) const {
    const std::string_view digits = part();
    const bool in_fraction = digits.find('/') != std::string_view::npos;
    const bool has_point = digits.find('.') != std::string_view::npos;
    const bool has_whole = text().find(' ') != std::string::npos;
    const bool room = text().size() < kMostCharacters;
    if (is_digit_key(key)) return room && !in_fraction && (digits != "0" || key != KeypadKey::d0);
    switch (key) {
        case KeypadKey::point:
            return room && !in_fraction && !has_point && !has_whole;
        case KeypadKey::sign:
            return spec_.sign;
        case KeypadKey::erase:
        case KeypadKey::clear:
            return !text().empty();
        case KeypadKey::and_part:
            return spec_.fractions && room && !digits.empty() && !in_fraction && !has_point && !has_whole;
        case KeypadKey::eighths:
        case KeypadKey::sixteenths:
        case KeypadKey::thirty_seconds:
            return spec_.fractions && !has_point && !digits.empty() && digits != "0";
        case KeypadKey::next_unit:
            return spec_.units.size() > 1 && !unit_fixed();
        case KeypadKey::next_point:
            return number() && (at_ + 1 < texts_.size() || (spec_.more_points && texts_.size() < kMostPointsKeyed));
        default:
            return false;
    }
}

void KeypadModel::press(KeypadKey key) {
    if (!can(key)) return;
    if (key != KeypadKey::next_unit && key != KeypadKey::next_point) taken_ = Taken::measured;
    if (is_digit_key(key)) {
        if (part() == "0") texts_[at_].pop_back();  // 07 is 7
        type(static_cast<char>('0' + static_cast<int>(key)));
    } else if (const int bottom = bottom_of(key)) {
        put_fraction(bottom);
    } else if (key == KeypadKey::point) {
        texts_[at_] += part().empty() ? "0." : ".";
    } else if (key == KeypadKey::sign) {
        if (text().starts_with('-'))
            texts_[at_].erase(0, 1);
        else
            texts_[at_].insert(texts_[at_].begin(), '-');
    } else if (key == KeypadKey::erase) {
        erase();
    } else if (key == KeypadKey::clear) {
        texts_[at_].clear();
    } else if (key == KeypadKey::and_part) {
        type(' ');
    } else if (key == KeypadKey::next_unit) {
        const auto now = std::find(spec_.units.begin(), spec_.units.end(), unit_);
        unit_ = now + 1 >= spec_.units.end() ? spec_.units.front() : *(now + 1);
    } else if (key == KeypadKey::next_point) {
        if (++at_ == texts_.size()) texts_.emplace_back();
    }
}

// One press takes back what one press put in: a digit, or "/32" as a whole.
void KeypadModel::erase() {
    std::string& text = texts_[at_];
    const auto slash = text.find('/');
    if (slash != std::string::npos)
        text.erase(slash);
    else
        text.pop_back();
}

// Pressing another bottom than before exchanges it.
void KeypadModel::put_fraction(int bottom) {
    std::string& text = texts_[at_];
    const auto slash = text.find('/');
    if (slash != std::string::npos) text.erase(slash);
    text += fmt::format("/{}", bottom);
}

void KeypadModel::choose_unit(const std::string& ucum) {
    if (!unit_fixed() && std::find(spec_.units.begin(), spec_.units.end(), ucum) != spec_.units.end()) unit_ = ucum;
}

void KeypadModel::choose_point(std::size_t index) {
    if (index < texts_.size()) at_ = index;
}

void KeypadModel::restore(std::vector<std::string> texts, const std::string& ucum, Taken taken) {
    if (texts.size() > kMostPointsKeyed) texts.resize(kMostPointsKeyed);
    if (texts.size() < texts_.size()) texts.resize(texts_.size());
    texts_ = std::move(texts);
    if (std::find(spec_.units.begin(), spec_.units.end(), ucum) != spec_.units.end()) unit_ = ucum;
    if (spec_.may_skip || spec_.may_not_know) taken_ = taken;
    const auto empty = std::find(texts_.begin(), texts_.end(), std::string{});
    at_ = empty == texts_.end() ? 0 : static_cast<std::size_t>(empty - texts_.begin());
}

void KeypadModel::answer(Taken taken) {
    if (spec_.may_skip || spec_.may_not_know) taken_ = taken == taken_ ? Taken::measured : taken;
}

std::optional<Number> KeypadModel::number() const {
    auto parsed = Number::parse(text());
    return parsed ? std::optional(*parsed) : std::nullopt;
}

bool KeypadModel::unit_fixed() const {
    for (std::size_t i = 0; i < texts_.size(); ++i)
        if (i != at_ && !texts_[i].empty()) return true;
    return false;
}

std::string KeypadModel::point_name(std::size_t index) const {
    return index < spec_.points.size() ? spec_.points[index] : fmt::format("{}", index + 1);
}

std::optional<std::string> KeypadModel::least() const {
    const std::vector<Exact> values = finished(texts_);
    if (values.empty()) return std::nullopt;
    return written(*std::min_element(values.begin(), values.end(), less));
}

std::optional<std::string> KeypadModel::spread() const {
    const std::vector<Exact> values = finished(texts_);
    if (values.size() < 2) return std::nullopt;
    const auto [low, high] = std::minmax_element(values.begin(), values.end(), less);
    const auto way = difference(*high, *low);
    return way ? std::optional(written(*way)) : std::nullopt;
}

bool KeypadModel::complete() const {
    return missing().empty();
}

std::string KeypadModel::missing() const {
    if (taken_ != Taken::measured) return {};
    const std::size_t wanted = std::max<std::size_t>(1, spec_.points.size());
    const bool some = spec_.some_points && !finished(texts_).empty();
    for (std::size_t i = 0; i < texts_.size(); ++i) {
        if (texts_[i].empty() && !some && (i < wanted || texts_.size() == 1))
            return wanted == 1 ? "no value yet" : fmt::format("{} is still open", point_name(i));
        if (!texts_[i].empty() && !Number::parse(texts_[i])) return fmt::format("'{}' is not finished", texts_[i]);
    }
    return {};
}

}  // namespace cotter

// See exact.h.
#include "app/ui/exact.h"

#include <charconv>
#include <numeric>

#include <fmt/format.h>

#include "core/base/amount.h"

namespace cotter {

namespace {

constexpr std::int64_t kMost = 1'000'000'000;  // of tops and bottoms: every product of two then fits

std::optional<std::int64_t> whole(std::string_view digits) {
    std::int64_t value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (error != std::errc{} || end != digits.data() + digits.size() || value > kMost) return std::nullopt;
    return value;
}

std::optional<Exact> decimal(std::string_view text) {
    const auto point = text.find('.');
    if (point == std::string_view::npos) {
        const auto top = whole(text);
        return top ? std::optional(Exact{*top, 1, false}) : std::nullopt;
    }
    std::string digits(text.substr(0, point));
    digits += text.substr(point + 1);
    Exact out;
    const auto top = whole(digits);
    if (!top) return std::nullopt;
    out.top = *top;
    for (std::size_t i = point + 1; i < text.size(); ++i) out.bottom *= 10;
    return out.bottom > kMost ? std::nullopt : std::optional(out);
}

bool power_of_ten(std::int64_t n) {
    while (n % 10 == 0) n /= 10;
    return n == 1;
}

std::string written_decimal(std::int64_t top, std::int64_t bottom) {
    int places = 0;
    for (std::int64_t n = bottom; n > 1; n /= 10) ++places;
    if (places == 0) return fmt::format("{}", top);
    return fmt::format("{}.{:0{}}", top / bottom, top % bottom, places);
}

}  // namespace

std::optional<Exact> to_exact(std::string_view text) {
    if (!Number::parse(text)) return std::nullopt;
    const bool negative = text.starts_with('-');
    if (negative) text.remove_prefix(1);
    const auto slash = text.find('/');
    std::optional<Exact> out;
    if (slash == std::string_view::npos) {
        out = decimal(text);
    } else {
        const auto space = text.find(' ');
        const auto before =
            space == std::string_view::npos ? std::optional<std::int64_t>(0) : whole(text.substr(0, space));
        const auto from = space == std::string_view::npos ? 0 : space + 1;
        const auto top = whole(text.substr(from, slash - from));
        const auto bottom = whole(text.substr(slash + 1));
        if (before && top && bottom && *before * *bottom + *top <= kMost)
            out = Exact{*before * *bottom + *top, *bottom, true};
    }
    if (out && negative) out->top = -out->top;
    return out;
}

bool less(const Exact& a, const Exact& b) {
    return a.top * b.bottom < b.top * a.bottom;
}

std::optional<Exact> difference(const Exact& a, const Exact& b) {
    const std::int64_t bottom = std::lcm(a.bottom, b.bottom);
    if (bottom > kMost) return std::nullopt;
    return Exact{a.top * (bottom / a.bottom) - b.top * (bottom / b.bottom), bottom, a.fraction || b.fraction};
}

std::string written(const Exact& value) {
    const std::string sign = value.top < 0 ? "-" : "";
    const std::int64_t top = value.top < 0 ? -value.top : value.top;
    if (!value.fraction && power_of_ten(value.bottom)) return sign + written_decimal(top, value.bottom);
    const std::int64_t rest = top % value.bottom;
    if (rest == 0) return fmt::format("{}{}", sign, top / value.bottom);
    if (top < value.bottom) return fmt::format("{}{}/{}", sign, top, value.bottom);
    return fmt::format("{}{} {}/{}", sign, top / value.bottom, rest, value.bottom);
}

}  // namespace cotter

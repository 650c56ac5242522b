// Factors as numerator and denominator.
#include "core/quote/exact.h"

#include <charconv>
#include <fmt/format.h>

#include "core/base/money.h"

namespace cotter {

namespace {

struct Fraction {
    std::int64_t top = 0;
    std::int64_t bottom = 1;
};

Result<std::int64_t> whole(std::string_view digits, const Number& number) {
    std::int64_t value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (error != std::errc{} || end != digits.data() + digits.size() || digits.size() > 9)
        return fail(Errc::refused, "the number is too long to count with", number.text(), "write it shorter");
    return value;
}

// "-1 3/32", "8.25", "7"
Result<Fraction> fraction_of(const Number& number) {
    std::string_view text = number.text();
    const bool negative = text.starts_with('-');
    if (negative) text.remove_prefix(1);
    Fraction out;
    if (const auto slash = text.find('/'); slash != std::string_view::npos) {
        const auto space = text.find(' ');
        const std::size_t top_at = space == std::string_view::npos ? 0 : space + 1;
        COTTER_ASSIGN(out.top, whole(text.substr(top_at, slash - top_at), number));
        COTTER_ASSIGN(out.bottom, whole(text.substr(slash + 1), number));
        if (out.bottom == 0) return fail(Errc::refused, "a fraction cannot be over zero", number.text());
        if (space != std::string_view::npos) {
            COTTER_ASSIGN(const auto ones, whole(text.substr(0, space), number));
            out.top += ones * out.bottom;
        }
    } else {
        const auto dot = text.find('.');
        COTTER_ASSIGN(out.top, whole(text.substr(0, dot), number));
        const std::string_view decimals = dot == std::string_view::npos ? "" : text.substr(dot + 1);
        if (!decimals.empty()) {
            COTTER_ASSIGN(const auto tail, whole(decimals, number));
            for (std::size_t i = 0; i < decimals.size(); ++i) out.bottom *= 10;
            out.top = out.top * out.bottom + tail;
        }
    }
    if (negative) out.top = -out.top;
    return out;
}

unexpected<Error> too_large(std::int64_t minor, const Number& factor) {
    return fail(Errc::refused, "the amount is too large", fmt::format("{} times {}", money_text(minor), factor.text()),
                "look for a digit too many");
}

Result<std::int64_t> scaled(std::int64_t minor, const Number& factor, std::int64_t divisor) {
    COTTER_ASSIGN(const Fraction by, fraction_of(factor));
    std::int64_t bottom = 0;
    std::int64_t top = 0;
    if (__builtin_mul_overflow(by.bottom, divisor, &bottom) || __builtin_mul_overflow(minor, by.top, &top))
        return too_large(minor, factor);
    const std::int64_t quotient = top / bottom;
    const std::int64_t rest = top % bottom < 0 ? -(top % bottom) : top % bottom;
    const std::int64_t rounded = quotient + (rest >= bottom - rest ? (top < 0 ? -1 : 1) : 0);
    if (rounded > kLargestAmount || rounded < -kLargestAmount) return too_large(minor, factor);
    return rounded;
}

}  // namespace

Result<std::int64_t> times(std::int64_t minor, const Number& factor) {
    return scaled(minor, factor, 1);
}

Result<std::int64_t> percent_of(std::int64_t minor, const Number& percent) {
    return scaled(minor, percent, 100);
}

Result<std::int64_t> plus(std::int64_t a, std::int64_t b) {
    std::int64_t sum = 0;
    if (__builtin_add_overflow(a, b, &sum) || sum > kLargestAmount || sum < -kLargestAmount)
        return fail(Errc::refused, "the sum is too large", money_text(a) + " + " + money_text(b),
                    "look for a digit too many");
    return sum;
}

std::string money_text(std::int64_t minor) {
    const std::string text = Money{minor, ""}.text();
    return text.substr(0, text.size() - 1);
}

}  // namespace cotter

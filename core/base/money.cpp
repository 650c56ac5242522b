// Money arithmetic.
#include "core/base/money.h"

#include <charconv>
#include <cstdlib>
#include <fmt/format.h>
#include <limits>

namespace cotter {

std::string Money::text() const {
    const bool negative = minor < 0;
    const std::uint64_t size = negative ? 0 - static_cast<std::uint64_t>(minor) : static_cast<std::uint64_t>(minor);
    return fmt::format("{}{}.{:02} {}", negative ? "-" : "", size / 100, size % 100, currency);
}

Result<Money> Money::parse(std::string_view amount, std::string_view currency) {
    const auto refuse = [&](const char* why) { return fail(Errc::refused, why, fmt::format("'{}'", amount)); };
    const auto dot = amount.find('.');
    std::string digits(amount.substr(0, dot));
    const std::string_view cents = dot == std::string_view::npos ? "00" : amount.substr(dot + 1);
    if (cents.empty() || cents.size() > 2) return refuse("an amount of money has at most two decimals");
    digits += cents;
    if (cents.size() == 1) digits += '0';
    Money money{0, std::string(currency)};
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), money.minor);
    if (error != std::errc{} || end != digits.data() + digits.size()) return refuse("not an amount of money");
    return money;
}

Result<Money> add(const Money& a, const Money& b) {
    if (a.currency != b.currency)
        return fail(Errc::refused, "amounts in different currencies cannot be added",
                    a.currency + " and " + b.currency);
    Money sum{0, a.currency};
    if (__builtin_add_overflow(a.minor, b.minor, &sum.minor))
        return fail(Errc::refused, "the sum is too large", a.text() + " + " + b.text());
    return sum;
}

}  // namespace cotter

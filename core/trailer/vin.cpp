// Check digit of 49 CFR 565.15(c): transliterate, weigh, sum, modulo 11.
#include "core/trailer/vin.h"

#include <array>
#include <fmt/format.h>

namespace cotter {

namespace {

constexpr std::array<int, 17> kWeights{8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};

// The number a character stands for, −1 for one that is not allowed (I, O, Q and anything else).
constexpr int value_of(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    constexpr std::string_view letters = "ABCDEFGHJKLMNPRSTUVWXYZ";
    constexpr std::string_view values = "12345678123457923456789";
    const auto at = letters.find(c);
    return at == std::string_view::npos ? -1 : values[at] - '0';
}

char upper(char c) {
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

}  // namespace

VinCheck check_vin(std::string_view vin) {
    if (vin.size() != kWeights.size())
        return {VinVerdict::wrong_length, '?', fmt::format("a VIN has 17 characters, this has {}", vin.size())};
    int sum = 0;
    for (std::size_t i = 0; i < vin.size(); ++i) {
        const int value = value_of(upper(vin[i]));
        if (value < 0)
            return {VinVerdict::wrong_character, '?',
                    fmt::format("position {} holds a character that no VIN has", i + 1)};
        sum += value * kWeights[i];
    }
    const int remainder = sum % 11;
    const char expected = remainder == 10 ? 'X' : static_cast<char>('0' + remainder);
    if (upper(vin[8]) == expected) return {VinVerdict::ok, expected, {}};
    return {VinVerdict::wrong_check_digit, expected,
            fmt::format("position 9 is {} but the other characters call for {} (sum {}, remainder {})", upper(vin[8]),
                        expected, sum, remainder)};
}

}  // namespace cotter

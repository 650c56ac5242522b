// Vehicle identification numbers after 49 CFR 565.15: characters and the check digit in position 9.
#pragma once

#include <string>
#include <string_view>

namespace cotter {

enum class VinVerdict { ok, wrong_length, wrong_character, wrong_check_digit };

struct VinCheck {
    VinVerdict verdict = VinVerdict::wrong_length;
    char expected_check = '?';  // what position 9 should be; '?' unless 17 allowed characters were given
    std::string reason;         // one line for a person; empty when ok
};

// Checks a VIN as typed; lower case counts as upper case. Numbers without a check digit (home-built,
// state-assigned, before 1981) fail here and are recorded as non-standard with a photo instead.
[[nodiscard]] VinCheck check_vin(std::string_view vin);

}  // namespace cotter

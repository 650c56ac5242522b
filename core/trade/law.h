// Sources of rules, and how far their text was seen. Values; any thread.
#pragma once

#include <string_view>

#include "core/base/fields.h"

namespace cotter {

// V: its text was read; P: in part or second-hand; M: from memory, which may forbid and never permit.
enum class Evidence { read, partly, memory };
constexpr auto names(Evidence) {
    return name_list("V", "P", "M");
}

struct Law {
    std::string_view text;  // "49 CFR 393.75(a)"; empty: none
    Evidence evidence = Evidence::memory;
};

}  // namespace cotter

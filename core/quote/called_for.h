// What one finding calls for: its component and its defect together say which parts, how many, and what always goes
// with them. Common practice, so every need made from it can be changed by hand. Pure; any thread.
#pragma once

#include <string_view>
#include <vector>

#include "core/quote/needs.h"

namespace cotter {

// One part, at the places where it goes.
struct CalledPart {
    const ReplaceRule* item = nullptr;
    std::vector<Place> places;
    int each = 1;           // so many at each place; 0: nobody knows yet, so a person is asked
    bool by_studs = false;  // counted over all findings of the hub: see studs_called()
    std::string_view note;  // what goes with this defect, said to the user
};

// Nothing when the defect wants its cause looked for, a clean or a torque, but no part. A component that no row names
// goes by its words (rule_for); one without a rule by its own name, and its number is asked.
[[nodiscard]] std::vector<CalledPart> called_for(const Job& job, const Finding& finding);

// Why a finding may call for no part: "find the cause first". Empty when it calls for one.
[[nodiscard]] std::string_view why_no_part(const Job& job, const Finding& finding);

// Studs to renew at one hub with so many bad ones: one and both its neighbors; of two it is not known whether they
// stand side by side, so 0 (ask) unless that is all of the hub anyway; more than two: all. 0 when not known.
[[nodiscard]] int studs_called(int bad, int of_hub);

}  // namespace cotter

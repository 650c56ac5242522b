// The owner's mode: the answer to 'may I tow this?' from what was found, and what an owner should not do alone.
// For the owner's screens and the report. Pure; any thread. It is advice from what was looked at, never a certificate.
#pragma once

#include <string>
#include <vector>

#include "core/work/progress.h"

namespace cotter {

enum class TowWord { tow, show_to_shop, do_not_tow };  // in rising gravity
constexpr auto names(TowWord) {
    return name_list("tow", "show it to a shop", "do not tow");
}

struct TowAdvice {
    TowWord word = TowWord::show_to_shop;
    std::vector<std::string> reasons;  // the gravest first; for 'tow' what was looked at
};

// Do not tow: an unrepaired finding graded so. Show it to a shop: an unrepaired finding graded 'repair' or 'watch', a
// reading that was not taken, or an owner's step that is not done: those of one place are one reason. Tow: everything
// was looked at, nothing was found.
[[nodiscard]] TowAdvice tow_advice(const WorkBook& book, const Job& job);

// The finding that the bad answer to an owner's question makes. Refused: a step without a question.
[[nodiscard]] Result<Finding> finding_of(const Step& step, const Place& place, const Id<Finding>& id, Instant at,
                                         const std::string& by);

}  // namespace cotter

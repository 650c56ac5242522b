// What is usually found wrong, by what a photo shows: slot -> components -> defects, so that nobody types on the
// common path. Short trade words; a finding may also have words of the user's own. Pure; any thread.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/trade/point.h"

namespace cotter {

struct FindingWords {
    std::string_view component;
    std::string_view defect;
    Grade grade = Grade::watch;  // that it usually deserves: shown before it is chosen, changed by whoever looks
    bool operator==(const FindingWords&) const = default;
};

// The most usual findings of a slot, at most 10, the most frequent first, of what this trailer has there. Of
// Slot::other: those of the place.
[[nodiscard]] std::vector<FindingWords> usual_findings(Slot slot, const Layout& layout, const Place& place);

// All components that the trailer may have there: first those that the slot shows, then the others by the way through
// the trailer.
[[nodiscard]] std::vector<std::string_view> components_for(Slot slot, const Layout& layout, const Place& place);

// The defects that a component can have, as in "rotor" -> "heat checks"; a few for all when it is not known.
[[nodiscard]] std::vector<std::string_view> defects_of(std::string_view component, const Layout& layout,
                                                       const Place& place);

// What is usually done about a component, the fullest first; empty when it is not known.
[[nodiscard]] std::vector<std::string_view> remedies_for(std::string_view component);

// The slots that a place can have photos for, in the order of the work.
[[nodiscard]] std::vector<Slot> slots_of(const Layout& layout, const Place& place);

}  // namespace cotter

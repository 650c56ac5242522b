// Holds a drawn frame to the laws of the screens: sizes, gaps, text in its box, contrast, reach. For the driver, for
// tests of screens, for reviewers. Pure; any thread.
#pragma once

#include <string>
#include <vector>

#include "app/ui/target_log.h"

namespace cotter {

struct AuditLimits {
    float target = 48;  // least side, dp
    float gap = 8;      // between neighbours, dp
    float text = 16;    // least em, dp
    double contrast = 7;
};

// Where a mouse points: rows of a table lie close to each other.
[[nodiscard]] constexpr AuditLimits desk_limits() {
    return {32, 2, 16, 7};
}

// One line for each offence: what, which, by how much, where. Only the layer that takes input is looked at.
[[nodiscard]] std::vector<std::string> audit(const TargetLog& log, float width, float height,
                                             const AuditLimits& limits = {});

// One line for each target of that layer: role, label, value, rectangle, state.
[[nodiscard]] std::vector<std::string> list_targets(const TargetLog& log);

}  // namespace cotter

// A circle of fasteners to tap one after the other: what has clicked, and which comes next. For the torque page.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "app/ui/ui.h"

namespace cotter {

struct NutRingSpec {
    int nuts = 0;              // 1…24; 1 is the top one, clockwise
    std::vector<int> clicked;  // in this pass
    int next = 0;              // 0: none
    std::string middle;        // in the middle: the next one's number, a check
    std::string under;         // below it
    bool finished = false;  // the joint is: nuts get the stripe of paint, which says that none is to be touched again
    float most = 380;       // dp, the ring's diameter at most
};

// Round targets, labelled "Nut 3". Gives the tapped one.
std::optional<int> nut_ring(UiContext& ui, std::string_view key, const NutRingSpec& spec);

}  // namespace cotter

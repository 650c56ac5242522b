// What a screen reader is told of a frame: its targets and texts in reading order. Pure; any thread.
#pragma once

#include "app/ui/target_log.h"

namespace cotter {

struct MirrorItem {
    enum class Kind { text, heading, target };
    Kind kind = Kind::text;
    std::uint32_t id = 0;  // of a target; 0 for texts
    Role role = Role::button;
    std::string label;
    std::string value;  // a field's text, or what belongs to the target besides its label
    Rect rect;          // what can be seen of it; all of it when it is scrolled away
    bool enabled = true;
    bool chosen = false;
    bool away = false;  // scrolled away: a press at its place would meet something else

    bool operator==(const MirrorItem&) const = default;
};

// Of the layer that takes input: what lies under a sheet is not read. From the top down, and on a line from the left.
// Texts that belong to a target are part of it; the largest text is the heading.
[[nodiscard]] std::vector<MirrorItem> mirror_of(const TargetLog& log);

}  // namespace cotter

// See target_log.h.
#include "app/ui/target_log.h"

#include <algorithm>
#include <array>

namespace cotter {

Rect intersection(const Rect& a, const Rect& b) {
    const float x = std::max(a.x, b.x);
    const float y = std::max(a.y, b.y);
    const Rect both{x, y, std::min(a.right(), b.right()) - x, std::min(a.bottom(), b.bottom()) - y};
    return both.empty() ? Rect{x, y, 0, 0} : both;
}

Rect grown(const Rect& r, float by) {
    return {r.x - by, r.y - by, r.w + 2 * by, r.h + 2 * by};
}

bool inside(const Rect& inner, const Rect& outer, float slack) {
    return inner.x >= outer.x - slack && inner.y >= outer.y - slack && inner.right() <= outer.right() + slack &&
           inner.bottom() <= outer.bottom() + slack;
}

std::string_view role_name(Role role) {
    static constexpr std::array<std::string_view, 9> kNames{"button", "row",   "tile", "chip",   "choice",
                                                            "toggle", "field", "key",  "picture"};
    return kNames[static_cast<std::size_t>(role)];
}

void TargetLog::clear() {
    targets.clear();
    texts.clear();
    scrolls.clear();
    drawing = layer = 0;
}

std::vector<const Target*> TargetLog::find(std::string_view label) const {
    std::vector<const Target*> found;
    for (const Target& target : targets)
        if (target.layer == layer && target.label == label) found.push_back(&target);
    return found;
}

bool TargetLog::shows(std::string_view text) const {
    if (std::any_of(texts.begin(), texts.end(), [&](const TextInk& t) {
            return t.layer == layer && !t.seen.empty() && t.text.find(text) != std::string::npos;
        }))
        return true;
    return std::any_of(targets.begin(), targets.end(), [&](const Target& t) {
        return t.layer == layer && !t.seen.empty() && t.label.find(text) != std::string::npos;
    });
}

}  // namespace cotter

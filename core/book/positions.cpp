// Positions with room between them.
#include "core/book/positions.h"

namespace cotter {

namespace {

std::vector<std::int64_t> numbered_anew(std::size_t count) {
    std::vector<std::int64_t> out(count);
    for (std::size_t i = 0; i < count; ++i) out[i] = static_cast<std::int64_t>(i) * kPositionStep;
    return out;
}

// Appends `count` positions between the last of `out` and `next`; false when there is no room.
bool fill_gap(std::vector<std::int64_t>& out, std::int64_t count, std::optional<std::int64_t> next) {
    const bool first = out.empty();
    const std::int64_t before = first ? 0 : out.back();
    if (!first && next && *next - before <= count) return false;
    for (std::int64_t i = 0; i < count; ++i) {
        if (!next)
            out.push_back(before + kPositionStep * (first ? i : i + 1));
        else if (first)
            out.push_back(*next - kPositionStep * (count - i));
        else
            out.push_back(before + (*next - before) / (count + 1) * (i + 1) +
                          (*next - before) % (count + 1) * (i + 1) / (count + 1));
    }
    return true;
}

}  // namespace

std::vector<std::int64_t> assign_positions(const std::vector<std::optional<std::int64_t>>& old) {
    std::vector<std::int64_t> out;
    std::int64_t waiting = 0;  // new records since the last one with a position
    for (const auto& position : old) {
        if (!position) {
            ++waiting;
            continue;
        }
        const bool in_order = out.empty() || *position > out.back();
        if (!in_order || !fill_gap(out, waiting, position)) return numbered_anew(old.size());
        waiting = 0;
        out.push_back(*position);
    }
    return fill_gap(out, waiting, std::nullopt) ? out : numbered_anew(old.size());
}

}  // namespace cotter

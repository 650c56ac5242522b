// See mirror.h.
#include "app/ui/mirror.h"

#include <algorithm>
#include <cmath>

namespace cotter {

namespace {

constexpr float kLine = 12;  // dp: tops that differ by less stand on one line

bool reads_before(const MirrorItem& a, const MirrorItem& b) {
    const auto line = [](const MirrorItem& item) { return std::floor(item.rect.y / kLine); };
    return line(a) != line(b) ? line(a) < line(b) : a.rect.x < b.rect.x;
}

MirrorItem item_of(const Target& target, const TargetLog& log) {
    MirrorItem item{MirrorItem::Kind::target, target.id,    target.role, target.label, target.value, target.seen,
                    target.enabled,           target.chosen};
    item.away = target.seen.empty();
    if (item.away) item.rect = target.rect;
    if (target.role == Role::field || !target.value.empty()) return item;
    for (const TextInk& text : log.texts)
        if (text.target == target.id && text.layer == target.layer && text.text != target.label)
            item.value += (item.value.empty() ? "" : ", ") + text.text;
    return item;
}

}  // namespace

std::vector<MirrorItem> mirror_of(const TargetLog& log) {
    std::vector<MirrorItem> out;
    for (const Target& target : log.targets)
        if (target.layer == log.layer) out.push_back(item_of(target, log));
    float largest = 0;
    for (const TextInk& text : log.texts)
        if (text.layer == log.layer && text.target == 0) largest = std::max(largest, text.size);
    bool headed = false;
    for (const TextInk& text : log.texts) {
        if (text.layer != log.layer || text.target != 0) continue;
        const bool heading = !headed && text.size == largest;
        headed = headed || heading;
        out.push_back({heading ? MirrorItem::Kind::heading : MirrorItem::Kind::text, 0, Role::button, text.text, "",
                       text.seen.empty() ? text.ink : text.seen, true, false});
    }
    std::stable_sort(out.begin(), out.end(), reads_before);
    return out;
}

}  // namespace cotter

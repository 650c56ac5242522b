// See audit.h.
#include "app/driver/audit.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace cotter {

namespace {

constexpr float kSlack = 0.6F;  // dp of rounding

std::string at(const Rect& r) {
    return fmt::format("{:.0f},{:.0f} {:.0f}×{:.0f}", r.x, r.y, r.w, r.h);
}

std::string brief(const std::string& text) {
    return text.size() <= 40 ? text : text.substr(0, 37) + "…";
}

// The way from one rectangle to another; 0 when they touch or overlap.
float way(const Rect& a, const Rect& b) {
    const float dx = std::max({0.0F, b.x - a.right(), a.x - b.right()});
    const float dy = std::max({0.0F, b.y - a.bottom(), a.y - b.bottom()});
    return std::hypot(dx, dy);
}

class Auditor {
public:
    Auditor(const TargetLog& log, Rect screen, const AuditLimits& limits)
        : log_(log), screen_(screen), limits_(limits) {}

    void targets() {
        for (std::size_t i = 0; i < log_.targets.size(); ++i) {
            const Target& t = log_.targets[i];
            if (t.layer != log_.layer) continue;
            if (std::min(t.rect.w, t.rect.h) < limits_.target - kSlack)
                report("target smaller than {:.0f} dp: '{}' at {}", limits_.target, brief(t.label), at(t.rect));
            if (t.label.empty()) report("target without a label: {} at {}", role_name(t.role), at(t.rect));
            if (!scrolls(t.rect) && !inside(t.rect, screen_, kSlack))
                report("target off the screen: '{}' at {}", brief(t.label), at(t.rect));
            if (t.main && screen_.h > screen_.w && t.rect.middle().y < screen_.h * 0.55F)
                report("main action out of the thumb's reach: '{}' at {}", brief(t.label), at(t.rect));
            for (std::size_t j = i + 1; j < log_.targets.size(); ++j) pair(t, log_.targets[j]);
        }
    }

    void texts() {
        for (std::size_t i = 0; i < log_.texts.size(); ++i) {
            const TextInk& t = log_.texts[i];
            if (t.layer != log_.layer) continue;
            if (!inside(t.ink, t.box, 1))
                report("text leaves its box: '{}' {} in {}", brief(t.text), at(t.ink), at(t.box));
            if (t.size < limits_.text - 0.01F)
                report("text smaller than {:.0f} dp: '{}' {:.1f}", limits_.text, brief(t.text), t.size);
            if (const double ratio = contrast_ratio(t.colour, t.ground); ratio < limits_.contrast)
                report("contrast below {:.0f}:1: '{}' {:.1f}:1", limits_.contrast, brief(t.text), ratio);
            if (!scrolls(t.ink) && !inside(t.ink, screen_, 1))
                report("text off the screen: '{}' at {}", brief(t.text), at(t.ink));
            for (std::size_t j = i + 1; j < log_.texts.size(); ++j) overlap(t, log_.texts[j]);
        }
    }

    std::vector<std::string> found;

private:
    template <class... T>
    void report(fmt::format_string<T...> form, T&&... values) {
        found.push_back(fmt::format(form, std::forward<T>(values)...));
    }

    void pair(const Target& a, const Target& b) {
        if (b.layer != log_.layer || a.seen.empty() || b.seen.empty()) return;
        const float gap = way(a.seen, b.seen);
        if (gap < limits_.gap - kSlack)
            report("{:.1f} dp between '{}' at {} and '{}' at {}", gap, brief(a.label), at(a.seen), brief(b.label),
                   at(b.seen));
        if (a.id == b.id) report("two targets with one id: '{}' and '{}'", brief(a.label), brief(b.label));
    }

    void overlap(const TextInk& a, const TextInk& b) {
        if (b.layer != log_.layer) return;
        const Rect both = intersection(a.seen, b.seen);
        if (both.w > 1 && both.h > 2)
            report("texts overlap: '{}' and '{}' at {}", brief(a.text), brief(b.text), at(both));
    }

    // It lies in something that can bring it to sight.
    [[nodiscard]] bool scrolls(const Rect& r) const {
        return std::any_of(log_.scrolls.begin(), log_.scrolls.end(), [&](const ScrollArea& s) {
            if (s.layer != log_.layer || s.free) return false;
            return s.sideways ? r.bottom() > s.rect.y && r.y < s.rect.bottom()
                              : r.x >= s.rect.x - kSlack && r.right() <= s.rect.right() + kSlack;
        });
    }

    const TargetLog& log_;
    Rect screen_;
    const AuditLimits& limits_;
};

}  // namespace

std::vector<std::string> audit(const TargetLog& log, float width, float height, const AuditLimits& limits) {
    Auditor auditor(log, {0, 0, width, height}, limits);
    auditor.targets();
    auditor.texts();
    return auditor.found;
}

std::vector<std::string> list_targets(const TargetLog& log) {
    std::vector<std::string> lines;
    for (const Target& t : log.targets) {
        if (t.layer != log.layer) continue;
        std::string state;
        if (!t.enabled) state += " off";
        if (t.chosen) state += " chosen";
        if (t.main) state += " main";
        if (t.seen.empty()) state += " scrolled away";
        const std::string value = t.value.empty() ? "" : fmt::format(" = '{}'", brief(t.value));
        lines.push_back(fmt::format("{} '{}'{} at {}{}", role_name(t.role), t.label, value, at(t.rect), state));
    }
    return lines;
}

}  // namespace cotter

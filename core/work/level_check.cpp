// Whether a level is proved, and whether a hub took what its mate took.
#include <algorithm>
#include <fmt/format.h>

#include "core/work/amounts.h"
#include "core/work/fluid.h"

namespace cotter {

namespace {

class LevelReview {
public:
    explicit LevelReview(const Level& level) : level_(level) {}

    std::vector<LevelRemark> run() {
        if (level_.taken != Taken::measured) {
            block(fmt::format("'{}' is no level: it stays open", name_of(level_.taken)));
            return std::move(out_);
        }
        const LevelSeen& last = level_.after ? *level_.after : level_.before;
        about_mark(last.mark);
        about_offset(last);
        if (level_.added && !level_.after) block("something was added, but the level after it is not recorded");
        if (level_.added && level_.fluid == "hub oil") about_settling();
        return std::move(out_);
    }

private:
    void block(std::string words) { out_.push_back({true, std::move(words)}); }

    void about_mark(LevelMark mark) {
        const bool brake = level_.fluid == "brake fluid";
        if (mark == LevelMark::above)
            block(brake
                      ? "it is above the mark: fluid needs room when it warms up or pads are pushed back; take some out"
                      : "it is above the line: warm oil grows and leaves past the seal or vent; take some out");
        if (mark == LevelMark::below || mark == LevelMark::empty)
            block(fmt::format("it is below the {}: find out why before it is only topped up", brake ? "mark" : "line"));
        if (mark == LevelMark::not_seen) block("the level was not seen");
    }

    void about_offset(const LevelSeen& seen) {
        if (!seen.offset) return;
        const double off = seen.offset->number.value();
        const bool against = (seen.mark == LevelMark::below && off > 0) || (seen.mark == LevelMark::above && off < 0) ||
                             (seen.mark == LevelMark::at && off != 0);
        if (against)
            block(fmt::format("'{}' and {} contradict each other: enter one of them anew", name_of(seen.mark),
                              seen.offset->text()));
    }

    void about_settling() {
        if (!level_.settled)
            block("spin the hub, let it settle and look again: air pockets hide low oil");
        else if (auto kind = need_quantity(*level_.settled, Quantity::time, "the settling time"); !kind)
            block(kind.error().line());
        else if (level_.settled->si() < kSettleMinutes * 60)
            block(fmt::format("it settled for {} only; give it {} to 10 minutes after the last spin",
                              level_.settled->text(), kSettleMinutes));
    }

    const Level& level_;
    std::vector<LevelRemark> out_;
};

bool is_mate(const Level& a, const Level& b) {
    return a.fluid == b.fluid && a.place.is_corner() && b.place.axle == a.place.axle && b.place.side != a.place.side &&
           b.added.has_value();
}

}  // namespace

std::vector<LevelRemark> check_level(const Level& level) {
    return LevelReview(level).run();
}

bool proves_level(const std::vector<LevelRemark>& remarks) {
    return std::none_of(remarks.begin(), remarks.end(), [](const LevelRemark& r) { return r.blocks; });
}

std::optional<std::string> differs_from_mate(const Job& job, const Level& level) {
    if (!level.added) return std::nullopt;
    for (const Level& mate : job.all<Level>()) {
        if (!is_mate(level, mate)) continue;
        const double own = level.added->si(), other = mate.added->si();
        if (own * 2 < other || other * 2 < own)
            return fmt::format("this hub took {}, its mate {}: so far apart, one of them is wrong", level.added->text(),
                               mate.added->text());
    }
    return std::nullopt;
}

}  // namespace cotter

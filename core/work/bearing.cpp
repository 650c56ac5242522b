// Lock positions and the proof of a bearing's setting.
#include "core/work/bearing.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "core/work/amounts.h"

namespace cotter {

namespace {

constexpr double kInch = 0.0254;
constexpr double kSameAngle = 0.01;  // degrees

Result<> need_thread(double threads_per_inch) {
    if (threads_per_inch >= 4 && threads_per_inch <= 40) return {};
    return fail(Errc::refused, "the spindle's thread is not between 4 and 40 per inch",
                rounded_text(threads_per_inch, 2), "count the threads along one inch; 12 to 20 are usual");
}

std::string inches(double metres) {
    return rounded_text(metres / kInch, 4) + " in";
}

// Loosening only: a tab or a worn slot must never be met by tightening past the setting.
bool only_looser(NutStyle style) {
    return style == NutStyle::castle || style == NutStyle::tab_washer;
}

bool within(double play, const BearingSetting& s) {
    constexpr double kHair = 1e-9;  // m
    return (!s.play_min || play >= s.play_min->si() - kHair) && (!s.play_max || play <= s.play_max->si() + kHair);
}

Result<> need_range(const BearingSetting& s) {
    if (s.play_min) COTTER_TRY(need_quantity(*s.play_min, Quantity::length, "the least end play"));
    if (s.play_max) COTTER_TRY(need_quantity(*s.play_max, Quantity::length, "the most end play"));
    if (s.play_min && s.play_max && s.play_min->si() > s.play_max->si())
        return fail(Errc::refused, "the least end play is above the most",
                    s.play_min->text() + " and " + s.play_max->text(), "read the maker's range again");
    return {};
}

std::string option_words(const LockOption& option) {
    if (option.steps == 0) return "here";
    const int count = std::abs(option.steps);
    const bool looser = option.steps > 0;
    std::string out =
        fmt::format("{} position{} {}: play {} by about {}", count, count == 1 ? "" : "s",
                    looser ? "looser" : "tighter", looser ? "grows" : "falls", inches(std::abs(option.change)));
    if (option.predicted)
        out += *option.predicted > 0 ? ", to about " + inches(*option.predicted) : ", to none: preload";
    if (!option.allowed) out += "; this nut is aligned by loosening only, so seat it anew instead";
    return out;
}

const Reading* last_dial(const Job& job, const BearingSetting& setting) {
    return setting.tries.empty() || !setting.tries.back().dial ? nullptr : job.find(*setting.tries.back().dial);
}

class BearingReview {
public:
    BearingReview(const Job& job, const BearingSetting& setting) : job_(job), s_(setting) {}

    std::vector<BearingRemark> run() {
        if (s_.source.empty()) block("the method has no source; enter the maker's document and page");
        if (s_.style == NutStyle::preset)
            about_preset();
        else
            about_dial();
        about_lock();
        return std::move(out_);
    }

private:
    void block(std::string words) { out_.push_back({true, std::move(words)}); }
    void look(std::string words) { out_.push_back({false, std::move(words)}); }

    void about_preset() {
        if (!s_.locked)
            block("a preset bearing is proved by its one torque; enter the maker's figure and tighten to it");
        if (s_.back_off) block("a preset bearing is never backed off; read the maker's sheet again");
    }

    void about_dial() {
        const Reading* dial = last_dial(job_, s_);
        if (dial == nullptr || dial->taken != Taken::measured || dial->points.empty()) {
            block("the end play is not measured by dial at the last position; by feel it is not proved");
            return;
        }
        if (auto range = need_range(s_); !range) block(range.error().line());
        if (!s_.play_min && !s_.play_max) block("the maker's range of end play is not entered");
        const Amount play = *proved_play(job_, s_);
        if (dial->points.size() < 3) look("three dial readings are usual: the largest and the spread count");
        if (!within(play.si(), s_))
            block(fmt::format("the dial shows {}, the maker's range is {} to {}: move a position and measure again",
                              play.text(), s_.play_min ? s_.play_min->text() : "nothing",
                              s_.play_max ? s_.play_max->text() : "any"));
        if (!(play.si() > 0)) look("no play at all: it may be preloaded, which is worse than a little play");
        if (s_.play_max) about_spread(*dial);
    }

    void about_spread(const Reading& dial) {
        const auto [low, high] = std::minmax_element(
            dial.points.begin(), dial.points.end(), [](auto& a, auto& b) { return a.value.value() < b.value.value(); });
        const Amount spread = amount_of(high->value.value() - low->value.value(), dial.unit, 4);
        if (spread.si() > s_.play_max->si() / 2)
            look(fmt::format("the dial readings differ by {}: clean the tip's seat and measure again", spread.text()));
    }

    void about_lock() {
        if (!s_.lock_shot) block("the lock has no photo; a missing lock loses the wheel");
        if (s_.new_lock) return;
        if (s_.style == NutStyle::castle || s_.style == NutStyle::tab_washer)
            block("no new cotter or washer is recorded; the old one is not used again");
        else
            look("was a new lock or nut fitted? many may be used once only; the maker says");
    }

    const Job& job_;
    const BearingSetting& s_;
    std::vector<BearingRemark> out_;
};

}  // namespace

Result<double> nut_travel(double threads_per_inch, double turns) {
    COTTER_TRY(need_thread(threads_per_inch));
    return turns * kInch / threads_per_inch;
}

Result<double> nut_angle(double threads_per_inch, const Amount& travel) {
    COTTER_TRY(need_thread(threads_per_inch));
    COTTER_TRY(need_quantity(travel, Quantity::length, "the change of end play"));
    return travel.si() * threads_per_inch / kInch * 360;
}

Result<std::vector<double>> lock_angles(int slots, const std::vector<double>& holes) {
    if (slots < 3 || slots > 24)
        return fail(Errc::refused, fmt::format("a castle nut does not have {} slots", slots), {},
                    "count them: 6 is usual");
    if (holes.empty()) return fail(Errc::refused, "there is no cotter hole", {}, "enter the angle of each cross hole");
    std::vector<double> out;
    for (const double hole : holes)
        for (int end = 0; end < 2; ++end)
            for (int slot = 0; slot < slots; ++slot) {
                const double angle = std::fmod(hole + 180.0 * end + 360.0 * slot / slots + 720, 360);
                const auto same = [&](double other) {
                    const double apart = std::abs(other - angle);
                    return std::min(apart, 360 - apart) < kSameAngle;
                };
                if (std::none_of(out.begin(), out.end(), same)) out.push_back(angle);
            }
    std::sort(out.begin(), out.end());
    return out;
}

Result<std::vector<LockOption>> lock_options(const BearingSetting& s, const std::optional<Amount>& measured,
                                             int tighter, int looser) {
    if (s.style == NutStyle::preset)
        return fail(Errc::refused, "a preset bearing has one torque and no positions", {}, "follow the maker's figure");
    if (!s.threads_per_inch)
        return fail(Errc::refused, "the spindle's threads per inch are not entered", {}, "count them along one inch");
    if (s.lock_positions < 1 || s.lock_positions > 72)
        return fail(Errc::refused, "the lock's positions in one turn are not entered", {},
                    "6 for a castle nut on one cross hole, 12 on two");
    COTTER_TRY(need_range(s));
    if (measured) COTTER_TRY(need_quantity(*measured, Quantity::length, "the dial reading"));
    COTTER_ASSIGN(const double per_step, nut_travel(s.threads_per_inch->value(), 1.0 / s.lock_positions));
    std::vector<LockOption> out;
    for (int steps = -tighter; steps <= looser; ++steps) {
        LockOption option{steps, 360.0 * steps / s.lock_positions, per_step * steps, std::nullopt, false, true, {}};
        option.allowed = steps >= 0 || !only_looser(s.style);
        if (measured) option.predicted = measured->si() + option.change;
        option.in_range =
            option.predicted && *option.predicted > 0 && (s.play_min || s.play_max) && within(*option.predicted, s);
        option.words = option_words(option);
        out.push_back(std::move(option));
    }
    return out;
}

std::vector<BearingRemark> check_bearing(const Job& job, const BearingSetting& setting) {
    return BearingReview(job, setting).run();
}

bool proves_bearing(const std::vector<BearingRemark>& remarks) {
    return std::none_of(remarks.begin(), remarks.end(), [](const BearingRemark& r) { return r.blocks; });
}

std::optional<Amount> proved_play(const Job& job, const BearingSetting& setting) {
    const Reading* dial = last_dial(job, setting);
    if (dial == nullptr || dial->taken != Taken::measured || dial->points.empty()) return std::nullopt;
    const auto largest = std::max_element(dial->points.begin(), dial->points.end(),
                                          [](auto& a, auto& b) { return a.value.value() < b.value.value(); });
    return Amount{largest->value, dial->unit};
}

}  // namespace cotter

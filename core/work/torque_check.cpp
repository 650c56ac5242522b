// Looking twice at torques.
#include "core/work/torque_check.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/work/amounts.h"
#include "core/work/torque.h"
#include "core/work/wrench.h"

namespace cotter {

namespace {

constexpr const char* kPoundFoot = "[lbf_av].[ft_i]";
constexpr const char* kPoundInch = "[lbf_av].[in_i]";
constexpr double kSingleNutMost = 60, kDoubleNutMost = 400;  // lb-ft
constexpr double kWheelNutLeast = 45, kWheelNutMost = 550;   // lb-ft
constexpr double kNear = 0.1, kSame = 0.005;                 // shares of the target
constexpr double kRounded = 0.02;                            // of a setting: it is rounded to one decimal

double pound_feet(const Amount& torque) {
    return from_si(torque.si(), *find_unit(kPoundFoot));
}

bool is_torque(const Amount& amount) {
    const Unit* unit = find_unit(amount.unit);
    return unit != nullptr && unit->quantity == Quantity::torque;
}

// The same number in the other of pound-feet and pound-inches, when it was entered in the one that is too large or too
// small.
std::optional<Amount> swapped(const Amount& entered, bool too_much) {
    if (entered.unit != (too_much ? kPoundFoot : kPoundInch)) return std::nullopt;
    return Amount{entered.number, too_much ? kPoundInch : kPoundFoot};
}

// "2, 5 and 8"
std::string listed(const std::vector<int>& numbers) {
    std::string out;
    for (std::size_t i = 0; i < numbers.size(); ++i)
        out += fmt::format("{}{}", i == 0 ? "" : i + 1 == numbers.size() ? " and " : ", ", numbers[i]);
    return out;
}

class TorqueReview {
public:
    explicit TorqueReview(const Torque& torque) : torque_(in_present_form(torque)) {}

    std::vector<TorqueRemark> run(int interval_days) {
        if (torque_.taken != Taken::measured || torque_.passes.empty()) {
            say(TorqueDifference::not_tightened, 0, "no pass is recorded");
            return std::move(out_);
        }
        about_the_whole(interval_days);
        for (std::size_t i = 0; i < torque_.passes.size(); ++i) about_pass(i);
        return std::move(out_);
    }

private:
    void say(TorqueDifference difference, int pass, std::string words) {
        out_.push_back({difference, pass, std::move(words)});
    }

    void about_the_whole(int interval_days) {
        if (!torque_.target)
            say(TorqueDifference::no_target, 0, "there is no target; enter the maker's figure");
        else if (torque_.target_source.empty())
            say(TorqueDifference::no_source, 0, "the target has no source; enter the maker's document and page");
        if (auto order = cross_order(torque_.fasteners))
            order_ = std::move(*order);
        else
            say(TorqueDifference::unknown_circle, 0, order.error().line());
        if (torque_.target && is_torque(*torque_.target)) about_target();
        const WrenchCheck wrench = check_wrench(torque_.wrench_calibrated, torque_.at.local_date(), interval_days);
        if (wrench.state != WrenchState::in_date) say(TorqueDifference::wrench_not_in_date, 0, wrench.words);
    }

    void about_target() {
        if (const auto doubt = doubt_target(torque_.joint, *torque_.target); doubt && !torque_.unit_confirmed)
            say(TorqueDifference::unit_doubt, 0, "the target's unit is not confirmed: " + doubt->words);
        const Amount& last = at_nut(torque_.passes.back());
        const double target = torque_.target->si();
        if (std::abs(last.si() - target) > kSame * target)
            say(TorqueDifference::off_target, 0,
                fmt::format("the last pass was at {}, the target is {}", last.text(), torque_.target->text()));
        if (const auto plan = plan_torque(torque_.fasteners, *torque_.target, "given")) stages_ = plan->stages;
        const std::size_t wanted = torque_.fasteners < 3 ? 1 : stages_.size();  // a pair of bolts needs no stages
        if (torque_.passes.size() < wanted)
            say(TorqueDifference::fewer_passes, 0,
                fmt::format("{} of {} passes: the plan is about a fifth, about a half, the full value, and once more",
                            torque_.passes.size(), wanted));
    }

    void about_pass(std::size_t i) {
        const Pass& pass = torque_.passes[i];
        const int number = static_cast<int>(i) + 1;
        about_nuts(i);
        about_wrench(pass, number);
        if (i > 0 && at_nut(pass).si() < at_nut(torque_.passes[i - 1]).si() * (1 - kSame))
            say(TorqueDifference::falling, number,
                fmt::format("pass {} ({}) is below the one before", number, at_nut(pass).text()));
        if (i >= stages_.size() || torque_.fasteners < 3) return;
        const double off = std::abs(at_nut(pass).si() - stages_[i].at_nut.si());
        if (off > kNear * torque_.target->si())
            say(TorqueDifference::other_setting, number,
                fmt::format("pass {} was at {} instead of about {}", number, at_nut(pass).text(),
                            stages_[i].at_nut.text()));
    }

    // What is recorded as torque at the nut against what setting and adapter give.
    void about_wrench(const Pass& pass, int number) {
        Result<Amount> given = pass.setting;
        if (torque_.adapter) given = cotter::torque_at_nut(pass.setting, *torque_.adapter);
        const bool same = given && std::abs(given->si() - at_nut(pass).si()) <= kRounded * at_nut(pass).si();
        if (!same)
            say(TorqueDifference::other_at_nut, number,
                fmt::format("pass {}: {} on the wrench {}, {} is recorded", number, pass.setting.text(),
                            given ? fmt::format("is {} at the nut", given->text()) : given.error().what,
                            at_nut(pass).text()));
    }

    void about_nuts(std::size_t index) {
        const Pass& pass = torque_.passes[index];
        const int number = static_cast<int>(index) + 1;
        std::vector<int> missing, twice, unknown;
        for (int nut = 1; nut <= torque_.fasteners; ++nut) {
            const auto times = std::count(pass.tightened.begin(), pass.tightened.end(), nut);
            if (times == 0) missing.push_back(nut);
            if (times > 1) twice.push_back(nut);
        }
        for (const int nut : pass.tightened)
            if (nut < 1 || nut > torque_.fasteners) unknown.push_back(nut);
        if (!missing.empty())
            say(TorqueDifference::missing_nut, number,
                fmt::format("pass {}: no click recorded for {}", number, listed(missing)));
        if (!twice.empty())
            say(TorqueDifference::twice, number, fmt::format("pass {}: {} clicked twice", number, listed(twice)));
        if (!unknown.empty())
            say(TorqueDifference::unknown_nut, number,
                fmt::format("pass {}: there is no {} among {}", number, listed(unknown), torque_.fasteners));
        if (missing.empty() && twice.empty() && unknown.empty()) about_order(index);
    }

    void about_order(std::size_t index) {
        const std::vector<int>& went = torque_.passes[index].tightened;
        if (order_.empty() || went == order_) return;
        const bool across = crosses_circle(went, torque_.fasteners) || only_checks(index);
        const int number = static_cast<int>(index) + 1;
        if (across)
            say(TorqueDifference::other_order, number,
                fmt::format("pass {} went {}, the order across the circle is {}", number, listed(went),
                            listed(order_)));
        else
            say(TorqueDifference::not_across, number,
                fmt::format("pass {} went along the circle ({}); the order across it is {}", number, listed(went),
                            listed(order_)));
    }

    // A last pass at the torque of the one before moves nothing, so its order does not matter.
    [[nodiscard]] bool only_checks(std::size_t index) const {
        if (index == 0 || index + 1 != torque_.passes.size()) return false;
        const double before = at_nut(torque_.passes[index - 1]).si();
        return std::abs(at_nut(torque_.passes[index]).si() - before) <= kSame * before;
    }

    const Torque torque_;
    std::vector<int> order_;
    std::vector<TorqueStage> stages_;
    std::vector<TorqueRemark> out_;
};

}  // namespace

std::optional<UnitDoubt> doubt_seating(NutStyle style, const Amount& entered) {
    if (!is_torque(entered)) return std::nullopt;
    const double most = style == NutStyle::double_nut ? kDoubleNutMost : kSingleNutMost;
    if (pound_feet(entered) <= most) return std::nullopt;
    return UnitDoubt{
        fmt::format("{} is very high for seating a bearing with this nut (over {} lb-ft). Twelve times too "
                    "much ruins the bearing: were pound-inches meant?",
                    entered.text(), most),
        swapped(entered, true)};
}

std::optional<UnitDoubt> doubt_unit(const Amount& entered, const Amount& figure) {
    if (!is_torque(entered) || !is_torque(figure) || !(figure.si() > 0) || !(entered.si() > 0)) return std::nullopt;
    const double ratio = entered.si() / figure.si();
    const auto near = [&](double wanted) { return std::abs(ratio / wanted - 1) <= kNear; };
    if (!near(12) && !near(1.0 / 12)) return std::nullopt;
    return UnitDoubt{fmt::format("{} is {} the maker's {}: pound-feet and pound-inches look swapped", entered.text(),
                                 ratio > 1 ? "twelve times" : "a twelfth of", figure.text()),
                     swapped(entered, ratio > 1)};
}

std::optional<UnitDoubt> doubt_target(std::string_view joint, const Amount& target, const std::optional<Amount>& like) {
    if (like)
        if (auto doubt = doubt_unit(target, *like)) return doubt;
    if (joint != kWheelNuts || !is_torque(target) || !(target.si() > 0)) return std::nullopt;
    const double value = pound_feet(target);
    if (value >= kWheelNutLeast && value <= kWheelNutMost) return std::nullopt;
    const std::string in_feet = target.unit == kPoundFoot ? "" : fmt::format(", {} lb-ft,", rounded_text(value, 1));
    UnitDoubt out{fmt::format("{}{} is very {} for wheel nuts: {} to {} lb-ft is usual", target.text(), in_feet,
                              value < kWheelNutLeast ? "little" : "much", kWheelNutLeast, kWheelNutMost),
                  swapped(target, value > kWheelNutMost)};
    if (out.suggestion) out.words += fmt::format(". Was {} meant?", out.suggestion->text());
    return out;
}

WrenchCheck check_wrench(const std::optional<Date>& calibrated, const Date& day, int interval_days) {
    if (!calibrated) return {WrenchState::unknown, std::nullopt, "the wrench's calibration date is not recorded"};
    if (*calibrated > day)
        return {WrenchState::in_future, std::nullopt,
                fmt::format("the wrench's calibration date {} lies after the work", calibrated->text())};
    const Date due = Date::from_days(calibrated->days() + interval_days);
    if (due < day)
        return {WrenchState::overdue, due,
                fmt::format("the wrench's calibration of {} ran out on {}", calibrated->text(), due.text())};
    return {WrenchState::in_date, due, fmt::format("calibrated {}, good until {}", calibrated->text(), due.text())};
}

std::vector<TorqueRemark> check_torque(const Torque& torque, int interval_days) {
    return TorqueReview(torque).run(interval_days);
}

bool proves_torque(const std::vector<TorqueRemark>& remarks) {
    return std::none_of(remarks.begin(), remarks.end(), [](const TorqueRemark& r) {
        switch (r.difference) {
            case TorqueDifference::other_order:
            case TorqueDifference::other_setting:
            case TorqueDifference::twice:
            case TorqueDifference::falling:
            case TorqueDifference::wrench_not_in_date:
                return false;
            default:
                return true;
        }
    });
}

}  // namespace cotter

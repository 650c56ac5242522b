// Orders, stages and units.
#include "core/work/torque.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "core/work/amounts.h"

namespace cotter {

namespace {

// "about a fifth" and so on, in the order they are gone through.
constexpr double kFirst = 0.2, kSecond = 0.5;

TorqueStage stage(const Amount& target, double share, bool check, std::string words) {
    const double value = target.number.value() * share;
    const int decimals = target.number.value() < 20 ? 1 : 0;
    return {share == 1 ? target : amount_of(value, target.unit, decimals), share, check, std::move(words)};
}

}  // namespace

Result<std::vector<int>> cross_order(int fasteners) {
    switch (fasteners) {
        case 1:
            return std::vector{1};
        case 2:
            return std::vector{1, 2};
        case 3:
            return std::vector{1, 2, 3};
        case 4:
            return std::vector{1, 3, 2, 4};
        case 5:
            return std::vector{1, 3, 5, 2, 4};
        case 6:
            return std::vector{1, 4, 3, 6, 5, 2};
        case 8:
            return std::vector{1, 5, 3, 7, 2, 6, 4, 8};
        case 10:
            return std::vector{1, 6, 3, 8, 5, 10, 2, 7, 4, 9};
        default:
            return fail(Errc::refused, fmt::format("there is no order across the circle for {} fasteners", fasteners),
                        {}, fasteners < 1 ? "count the studs" : "count them again, or follow the maker's own chart");
    }
}

std::vector<int> angles_between(const std::vector<int>& order) {
    std::vector<int> out;
    const int n = static_cast<int>(order.size());
    for (int i = 1; i < n; ++i) {
        const int apart = std::abs(order[static_cast<std::size_t>(i)] - order[static_cast<std::size_t>(i) - 1]);
        out.push_back(std::min(apart, n - apart) * 360 / n);
    }
    return out;
}

Result<TorquePlan> plan_torque(int fasteners, const Amount& target, const std::string& source) {
    TorquePlan plan;
    COTTER_ASSIGN(plan.order, cross_order(fasteners));
    COTTER_TRY(need_quantity(target, Quantity::torque, "the target"));
    if (!(target.number.value() > 0))
        return fail(Errc::refused, "the target torque is not above zero", target.text(), "enter the maker's figure");
    if (source.empty())
        return fail(Errc::refused, "the target torque has no source", target.text(),
                    "enter the maker's document and page; a stud's size does not tell the torque");
    plan.stages = {stage(target, kFirst, false, "pass 1 of 4: about a fifth, so that all seat evenly"),
                   stage(target, kSecond, false, "pass 2 of 4: about half"),
                   stage(target, 1, false, "pass 3 of 4: the full value"),
                   stage(target, 1, true, "pass 4 of 4: the full value again; go round until no nut moves")};
    return plan;
}

bool crosses_circle(const std::vector<int>& order, int fasteners) {
    constexpr int kAcross = 100;  // degrees: the star of ten nuts steps by 108, the quarters of eight by 90
    if (fasteners <= 3) return true;
    const std::vector<int> angles = angles_between(order);
    for (std::size_t i = 1; i < angles.size(); ++i)
        if (angles[i - 1] < kAcross && angles[i] < kAcross) return false;
    return true;
}

Result<Amount> torque_in(const Amount& torque, std::string_view ucum, int decimals) {
    COTTER_TRY(need_quantity(torque, Quantity::torque, "the torque"));
    const Unit* unit = find_unit(ucum);
    if (unit == nullptr || unit->quantity != Quantity::torque)
        return fail(Errc::refused, fmt::format("'{}' is no unit of torque", ucum), torque.text());
    return amount_of(from_si(torque.si(), *unit), unit->ucum, decimals);
}

Result<double> clamp_force(const Amount& torque, double friction, const Amount& diameter) {
    COTTER_TRY(need_quantity(torque, Quantity::torque, "the torque"));
    COTTER_TRY(need_quantity(diameter, Quantity::length, "the stud's diameter"));
    if (!(friction > 0) || !(diameter.si() > 0))
        return fail(Errc::refused, "the friction factor and the stud's diameter must be above zero", diameter.text());
    return torque.si() / (friction * diameter.si());
}

}  // namespace cotter

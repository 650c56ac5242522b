// Orders, stages and wrench arithmetic.
#include "core/work/torque.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

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

// L / (L + E·cos angle); everything that makes it meaningless is refused.
Result<double> lever_share(const Adapter& a) {
    COTTER_TRY(need_quantity(a.handle, Quantity::length, "the wrench's length"));
    COTTER_TRY(need_quantity(a.extension, Quantity::length, "the adapter's length"));
    const double handle = a.handle.si(), extension = a.extension.si(), angle = a.angle.value();
    if (!(handle > 0))
        return fail(Errc::refused, "the wrench's length is not above zero", a.handle.text(),
                    "measure from the middle of the grip to the middle of the drive");
    if (extension < 0) return fail(Errc::refused, "the adapter's length is below zero", a.extension.text());
    if (!(angle >= 0 && angle <= 180))
        return fail(Errc::refused, "the adapter's angle is not between 0 and 180 degrees", a.angle.text(),
                    "0 is straight ahead, 90 square to the wrench, 180 folded back");
    const double lever = handle + extension * std::cos(angle * std::numbers::pi / 180);
    if (!(lever > 0.05 * handle))
        return fail(Errc::refused, "the adapter is folded back as far as the grip, so the wrench turns nothing",
                    a.extension.text(), "use a shorter adapter or set it at 90 degrees");
    return handle / lever;
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

std::optional<NextNut> next_nut(const TorquePlan& plan, const std::vector<Pass>& passes) {
    const int of = static_cast<int>(plan.order.size());
    for (std::size_t i = 0; i < plan.stages.size(); ++i) {
        const std::vector<int> none;
        const std::vector<int>& clicked = i < passes.size() ? passes[i].tightened : none;
        int done = 0, next = 0;
        for (const int nut : plan.order) {
            const bool has = std::find(clicked.begin(), clicked.end(), nut) != clicked.end();
            done += has ? 1 : 0;
            if (!has && next == 0) next = nut;
        }
        if (next != 0) return NextNut{i, plan.stages[i].setting, next, done, of};
    }
    return std::nullopt;
}

Result<Amount> wrench_setting(const Amount& wanted, const Adapter& adapter) {
    COTTER_TRY(need_quantity(wanted, Quantity::torque, "the wanted torque"));
    COTTER_ASSIGN(const double share, lever_share(adapter));
    return amount_of(wanted.number.value() * share, wanted.unit, 1);
}

Result<Amount> torque_at_nut(const Amount& setting, const Adapter& adapter) {
    COTTER_TRY(need_quantity(setting, Quantity::torque, "the wrench setting"));
    COTTER_ASSIGN(const double share, lever_share(adapter));
    return amount_of(setting.number.value() / share, setting.unit, 1);
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

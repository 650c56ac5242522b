// Does a tightening prove the torque of its joint? In stages, at a sourced target, every fastener, across the circle.
#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "core/judge/answer_rules.h"

namespace cotter::answering {

namespace {

constexpr double kSame = 0.005;
constexpr double kWheelLeast = 40, kWheelMost = 1000;  // N·m: outside, feet and inches look swapped

bool has_torque(const Amount& amount) {
    const Unit* unit = find_unit(amount.unit);
    return unit != nullptr && unit->quantity == Quantity::torque && amount.si() > 0;
}

std::string listed(const std::vector<int>& nuts) {
    std::string out;
    for (const int nut : nuts) out += (out.empty() ? "" : "-") + std::to_string(nut);
    return out;
}

// Across the circle: never twice in a row to a neighbor, where there are four or more.
bool crosses(const std::vector<int>& order, int n) {
    if (n < 4) return true;
    int beside = 0;
    for (std::size_t i = 1; i < order.size(); ++i) {
        const int apart = std::abs(order[i] - order[i - 1]);
        beside = std::min(apart, n - apart) <= 1 ? beside + 1 : 0;
        if (beside >= 2) return false;
    }
    return true;
}

std::optional<Fact> objection_to_pass(const Torque& torque, const Pass& pass) {
    for (int nut = 1; nut <= torque.fasteners; ++nut)
        if (std::find(pass.tightened.begin(), pass.tightened.end(), nut) == pass.tightened.end())
            return fact(FactId::torque_nut_missing, static_cast<std::int64_t>(nut));
    if (!crosses(pass.tightened, torque.fasteners)) return fact(FactId::torque_order, Entered(listed(pass.tightened)));
    return std::nullopt;
}

}  // namespace

std::optional<Fact> torque_objection(const Torque& torque, const Axle* axle) {
    const bool wheel = torque.joint == "wheel nuts";
    if (torque.taken != Taken::measured) return fact(FactId::not_taken, torque.taken, torque.reason);
    if (torque.passes.empty()) return fact(FactId::torque_none);
    if (!torque.target || !has_torque(*torque.target)) return fact(FactId::torque_no_target);
    if (torque.target_source.empty()) return fact(FactId::torque_no_source, *torque.target);
    const double target = torque.target->si();
    if (wheel && (target < kWheelLeast || target > kWheelMost)) return fact(FactId::torque_unit, *torque.target);
    if (wheel && axle != nullptr && axle->studs > 0 && axle->studs != torque.fasteners)
        return fact(FactId::torque_studs, static_cast<std::int64_t>(torque.fasteners),
                    static_cast<std::int64_t>(axle->studs));
    for (const Pass& pass : torque.passes)
        if (const auto objection = objection_to_pass(torque, pass)) return objection;
    if (std::abs(torque.passes.back().setting.si() - target) > kSame * target)
        return fact(FactId::torque_off_target, torque.passes.back().setting, *torque.target);
    if (torque.fasteners >= 3 && torque.passes.size() < 2) return fact(FactId::torque_one_pass);
    return std::nullopt;
}

void torque_rule(const Scene& scene, const Ask& ask, Replies& out) {
    const bool wheel = ask.point->id == PointId::wheel_torque;
    for (const Sitting& s : scene.sittings) {
        if (s.current && scene.question->state == State::found) continue;
        for (const Torque& t : s.job->all<Torque>()) {
            const bool here =
                wheel ? corner_only(t.place) == ask.place : t.place.axle == ask.place.axle && t.place.is_corner();
            if (t.joint != (wheel ? "wheel nuts" : "U-bolts") || !here) continue;
            Reply r = reply_at(s, t.at, t.by, t.id.uuid);
            if (const auto objection = torque_objection(t, scene.axle(ask.place)))
                r.verdicts.push_back(open(*objection));
            else
                r.verdicts.push_back(told(Grade::serviceable, fact(FactId::torque_proved, *t.target),
                                          {RestsOn::maker, t.target_source, Evidence::read}));
            if (!t.wrench_calibrated || t.at.local_date().days() - t.wrench_calibrated->days() > 365)
                r.notes.push_back(fact(FactId::wrench_not_in_date));
            r.absent = t.taken != Taken::measured;
            out.push_back(std::move(r));
        }
    }
}

}  // namespace cotter::answering

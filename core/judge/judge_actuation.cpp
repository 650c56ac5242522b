// Hydraulics: holding pressure, fluid, pressure against the brake's kind. The breakaway battery.
#include <algorithm>
#include <fmt/format.h>

#include "core/base/decimal.h"
#include "core/judge/braking.h"
#include "core/judge/judge_words.h"
#include "core/judge/judging.h"
#include "core/trade/reading_names.h"

namespace cotter {

namespace {

using words::kPsi;
using words::number;
const Place kActuator = Place::at(Station::actuator);

// The minutes in "after 4 min"; nothing when there are none.
std::optional<double> minutes_in(std::string_view where) {
    const auto digit = where.find_first_of("0123456789");
    if (digit == std::string_view::npos || where.find("min") == std::string_view::npos) return std::nullopt;
    const std::string_view from = where.substr(digit);
    const std::optional<double> minutes = read_double(from.substr(0, from.find_first_not_of("0123456789.")));
    return minutes && *minutes > 0 ? minutes : std::nullopt;
}

void judge_hold(Bench& bench) {
    const Value *start = nullptr, *end = nullptr;
    for (const Value* v : bench.values.of(what::pressure_hold)) {
        if (v->where.starts_with("start")) start = v;
        if (minutes_in(v->where) && (end == nullptr || *minutes_in(v->where) > *minutes_in(end->where))) end = v;
    }
    if (start == nullptr && end == nullptr) return;
    if (start == nullptr || end == nullptr || start->si <= 0) {
        bench.cannot_tell({kActuator, 0, "hydraulics", std::string(what::hold_drop),
                           start == nullptr ? "the pressure at the start is missing"
                                            : "there is no pressure after some minutes, or none at the start",
                           "let it settle, note the start, hold five minutes", false});
        return;
    }
    const double minutes = *minutes_in(end->where);
    const Hold hold = hold_of(start->si / kPsi, end->si / kPsi, minutes);
    const std::string share = number(hold.drop_share * 100, 1) + " %";
    hold_against_limits(bench,
                        {start->place,
                         0,
                         "hydraulics",
                         std::string(what::hold_drop),
                         hold.drop_share,
                         0,
                         share,
                         {fmt::format("({} − {}) ÷ {} = {} in {} min, {} psi a minute", number(start->si / kPsi, 0),
                                      number(end->si / kPsi, 0), number(start->si / kPsi, 0), share, number(minutes, 0),
                                      number(hold.rate_per_min, 2)),
                          "temperature moves pressure too; a steady fall is a leak even if nothing drips"},
                         "wipe every joint dry and look again",
                         start->reading->id.uuid});
}

// The wet figure of the class on the bottle: the fluid in use should not boil lower.
void judge_fluid(Bench& bench) {
    const auto boiling = bench.values.of(what::fluid_boiling);
    if (boiling.empty()) return;
    std::optional<FluidClass> fluid;
    std::string product;
    for (const Level& level : bench.job.all<Level>())
        if (auto known = fluid_class(level.product)) fluid = known, product = level.product;
    if (!fluid) {
        bench.cannot_tell({kActuator, 0, "hydraulics", std::string(what::fluid_boiling),
                           "the class of the fluid (DOT 3, 4, 5, 5.1) is not recorded", "read the actuator's label",
                           false});
        return;
    }
    for (const Value* v : boiling) {
        const double celsius = v->si - 273.15;
        const bool low = celsius < fluid->wet_c;
        Ground r = plain_reason(v->place, "hydraulics", std::string(what::fluid_boiling),
                                low ? Grade::watch : Grade::serviceable,
                                fmt::format("boils at {} °C; the wet figure of {} is {} °C", number(celsius, 0),
                                            product, number(fluid->wet_c, 0)),
                                words::source(SourceKind::law, "49 CFR 571.116, a figure for new fluid"), LimitMark::a);
        r.reading = v->text();
        r.limit = fmt::format("at least {} °C", number(fluid->wet_c, 0));
        r.steps = {fmt::format("{} − {} = {} K of margin", number(celsius, 0), number(fluid->wet_c, 0),
                               number(celsius - fluid->wet_c, 0))};
        if (low) r.todo = "flush the whole system from a sealed bottle of the same class";
        r.record = v->reading->id.uuid;
        bench.tell(std::move(r));
    }
}

// Actuators for drums make about 1,000 psi, those for discs about 1,600.
void judge_line_pressure(Bench& bench) {
    const Trailer* t = bench.trailer;
    const auto values = bench.values.of(what::line_pressure);
    if (t == nullptr || values.empty()) return;
    const bool discs = std::any_of(t->axles.begin(), t->axles.end(),
                                   [](const Axle& a) { return a.brake == BrakeKind::hydraulic_disc; });
    const bool drums = std::any_of(t->axles.begin(), t->axles.end(),
                                   [](const Axle& a) { return a.brake == BrakeKind::hydraulic_drum; });
    const double most =
        (*std::max_element(values.begin(), values.end(), [](auto* a, auto* b) { return a->si < b->si; }))->si / kPsi;
    if (!discs && !drums) return;
    const bool weak = discs && most < 1300, strong = drums && !discs && most > 1300;
    Ground r = plain_reason(
        values.front()->place, "hydraulics", std::string(what::line_pressure),
        weak || strong ? Grade::watch : Grade::serviceable,
        fmt::format("{} psi at full demand for {} brakes", number(most, 0), discs ? "disc" : "drum"),
        words::source(SourceKind::practice, "actuators make about 1,000 psi for drums, 1,600 for discs"), LimitMark::c);
    r.reading = values.front()->text();
    if (weak)
        r.steps = {
            fmt::format("1 − {} ÷ 1600 = {} % of the clamp lost", number(most, 0), number((1 - most / 1600) * 100, 1))};
    if (weak || strong) r.todo = "read the actuator's label: its class must be that of the brakes";
    r.record = values.front()->reading->id.uuid;
    bench.tell(std::move(r));
}

int electric_magnets(const Trailer* t) {
    int magnets = 0;
    if (t != nullptr)
        for (const Axle& axle : t->axles) magnets += axle.brake == BrakeKind::electric_drum ? 2 : 0;
    return magnets;
}

// Under load for 15 minutes: the volts at the end tell whether six cells are empty.
void judge_battery_test(Bench& bench) {
    const Value* last = nullptr;
    for (const Value* v : bench.values.of(what::battery_volts))
        if (minutes_in(v->where) && (last == nullptr || *minutes_in(v->where) > *minutes_in(last->where))) last = v;
    if (last == nullptr) return;
    const double minutes = *minutes_in(last->where);
    const bool dead = last->si < 10.5;
    if (!dead && minutes < 15) {
        bench.cannot_tell({last->place, 0, "breakaway", std::string(what::battery_volts),
                           fmt::format("the load was taken off after {} of 15 minutes", number(minutes, 0)),
                           "hold the brakes on for 15 minutes", false});
        return;
    }
    Ground r = plain_reason(
        last->place, "breakaway", std::string(what::battery_volts), dead ? Grade::do_not_tow : Grade::serviceable,
        fmt::format("{} V after {} min with all brakes on", number(last->si, 1), number(minutes, 0)),
        words::source(SourceKind::law, "49 CFR 393.43(d), 15 minutes; 10.5 V is empty for six cells"), LimitMark::a);
    r.reading = last->text();
    r.limit = "at least 10.5 V after 15 min";
    r.steps = {"6 cells × 1.75 V = 10.5 V, the end of discharge"};
    if (dead) r.todo = "charge and test again, else replace the battery; look at the charge line";
    r.record = last->reading->id.uuid;
    bench.tell(std::move(r));
}

void judge_battery_size(Bench& bench) {
    const int magnets = electric_magnets(bench.trailer);
    const auto rated = bench.values.of(what::battery_capacity);
    if (rated.empty() || magnets == 0) return;
    const auto each = bench.values.of(what::magnet_current);
    double amps = 3.0 * magnets;
    if (!each.empty()) {
        amps = 0;
        for (const Value* v : each) amps += v->si;
        amps *= static_cast<double>(magnets) / static_cast<double>(each.size());
    }
    const double ah = rated.front()->si / 3600;
    const double good = battery_minutes(ah, amps, 1.15), poor = battery_minutes(ah, amps, 1.25);
    Ground r =
        plain_reason(rated.front()->place, "breakaway", std::string(what::battery_capacity),
                     poor < 15 ? Grade::watch : Grade::serviceable,
                     fmt::format("{} Ah gives {} A for {} to {} min; 15 are needed", number(ah, 0), number(amps, 0),
                                 number(poor, 1), number(good, 1)),
                     words::source(SourceKind::practice, "discharge by Peukert's law, new and warm"), LimitMark::c);
    r.steps = {fmt::format("{} magnets, {} A; 15 min take {} Ah, so {} to {} Ah must be printed on it", magnets,
                           number(amps, 1), number(delivered_ah(amps, 15), 1), number(rated_ah_for(15, amps, 1.15), 1),
                           number(rated_ah_for(15, amps, 1.25), 1))};
    r.reading = rated.front()->text();
    if (poor < 15) r.todo = "test it under load for 15 minutes, or fit a larger one";
    r.record = rated.front()->reading->id.uuid;
    bench.tell(std::move(r));
}

}  // namespace

void judge_hydraulics(Bench& bench) {
    judge_hold(bench);
    judge_fluid(bench);
    judge_line_pressure(bench);
}

void judge_breakaway(Bench& bench) {
    judge_battery_test(bench);
    judge_battery_size(bench);
    const bool brakes =
        bench.trailer != nullptr && std::any_of(bench.trailer->axles.begin(), bench.trailer->axles.end(),
                                                [](const Axle& a) { return a.brake != BrakeKind::none; });
    if (brakes && bench.values.of(what::battery_volts).empty() && bench.values.of(what::battery_held).empty())
        bench.cannot_tell({kActuator, 0, "breakaway", "breakaway", words::not_measured(),
                           "pull the pin: every required wheel must hold, and keep holding for 15 minutes", true});
}

}  // namespace cotter

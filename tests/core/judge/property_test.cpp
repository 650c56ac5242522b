// Over random limits and readings: practice never fails anything, every reason has a source, nothing ends in a fault.
#include <array>
#include <fmt/format.h>
#include <random>

#include "core/trade/reading_spec.h"
#include "tests/core/judge/judge_bench.h"

using namespace cotter;
using namespace cotter::test;

namespace {

constexpr std::array kNames{
    what::pad_thickness, what::lining_thickness, what::rotor_thickness, what::rotor_runout,  what::rotor_cut,
    what::drum_diameter, what::end_play,         what::tread_depth,     what::tyre_date,     what::load_index,
    what::pressure_hot,  what::pressure_cold,    what::hub_temperature, what::pressure_hold, what::line_pressure,
    what::battery_volts, what::axle_weight,      what::tongue_weight,   what::pad_when_new,  what::battery_capacity};
constexpr std::array kUnits{"mm", "[in_i]", "[psi]", "Cel", "V", "A.h", "[lb_av]", "1", "", "%", "min"};
constexpr std::array kPlaces{"axle1-left", "axle1-right", "axle2-left", "trailer", "actuator"};
constexpr std::array kWheres{"",       "inner",      "outer",  "start", "after 4 min", "after 15 min", "axle 1 left",
                             "axle 2", "axle 9 top", "ambient"};

class Chance {
public:
    explicit Chance(unsigned seed) : engine_(seed) {}
    template <class List>
    auto pick(const List& list) {
        return list[engine_() % list.size()];
    }
    unsigned below(unsigned n) { return static_cast<unsigned>(engine_() % n); }
    std::string number() {
        return fmt::format("{}.{:02}", pick(std::array{0, 1, 2, 3, 10, 20, 100, 3000}), below(100));
    }

private:
    std::mt19937 engine_;
};

// A unit that suits the reading, most of the time.
std::string unit_for(Chance& chance, std::string_view name) {
    const ReadingSpec* known = reading_spec(name);
    if (known == nullptr || chance.below(6) == 0) return chance.pick(kUnits);
    std::vector<std::string> fitting;
    for (const Unit& unit : all_units())
        if (unit.quantity == known->quantity) fitting.emplace_back(unit.ucum);
    return chance.pick(fitting);
}

// A value within what is plausible, most of the time; near its lower end, where limits are.
std::string value_for(Chance& chance, std::string_view name, const std::string& ucum) {
    const ReadingSpec* known = reading_spec(name);
    const Unit* unit = find_unit(ucum);
    if (known == nullptr || unit == nullptr || chance.below(6) == 0) return chance.number();
    const double part = chance.below(1000) / 1000.0;
    const double si = known->lowest + (known->highest - known->lowest) * part * part * part;
    const std::string text = fmt::format("{:.5f}", from_si(si, *unit));
    return Number::parse(text) ? text : chance.number();
}

// A limit of practice on anything, with a random unit, side and bound.
Limit practice(Chance& chance, int n) {
    Limit l;
    l.id = fmt::format("practice-{}", n);
    l.what = chance.below(3) == 0 ? std::string(what::pad_imbalance) : std::string(chance.pick(kNames));
    l.bound = static_cast<Bound>(chance.below(4));
    l.value.unit = unit_for(chance, l.what);
    l.value.number = *Number::parse(value_for(chance, l.what, l.value.unit));
    l.source = {SourceKind::practice, "somebody said so", "", {}};
    l.mark = LimitMark::c;
    l.beyond = Grade::watch;
    l.checked = {2026, 1, 1};
    l.entered_by = "chance";
    return l;
}

JudgeBench random_bench(Chance& chance) {
    JudgeBench bench(static_cast<BrakeKind>(chance.below(5)));
    for (unsigned i = chance.below(30); i > 0; --i) {
        const std::string_view name = chance.pick(kNames);
        const std::string unit = unit_for(chance, name);
        const std::string a = value_for(chance, name, unit), b = value_for(chance, name, unit);
        Reading& r = bench.read(chance.pick(kPlaces), name, unit.c_str(),
                                {{chance.pick(kWheres), a.c_str()}, {chance.pick(kWheres), b.c_str()}});
        r.stage = static_cast<Stage>(chance.below(2));
        if (chance.below(3) == 0) r.resolution = *Number::parse("0.1");
        if (chance.below(8) == 0) r.points.clear(), r.taken = Taken::not_measured, r.reason = "rain";
    }
    return bench;
}

}  // namespace

TEST_CASE("property: practice alone never grades 'repair' or 'do not tow', and no reason lacks its source") {
    std::size_t reasons = 0, beyond = 0;
    for (unsigned seed = 1; seed <= 400; ++seed) {
        Chance chance(seed);
        JudgeBench bench = random_bench(chance);
        std::vector<Limit> limits = shipped_limits();
        for (int i = 0; i < 20; ++i) limits.push_back(practice(chance, i));
        const Summary s = bench.judge(limits);
        for (const Judgement* tree : {&s.found, &s.now})
            walk(*tree, [&](const Judgement& node) {
                for (const Ground& r : node.reasons) {
                    ++reasons;
                    if (r.mark == LimitMark::c && r.grade == Grade::watch) ++beyond;
                    const bool fails = r.grade > Grade::watch, practice_only = r.mark == LimitMark::c;
                    if (fails && practice_only) FAIL_CHECK("seed " << seed << ": " << r.subject << ": " << r.says);
                    if (r.source.empty() || r.says.empty()) FAIL_CHECK("seed " << seed << ": no source: " << r.subject);
                    if (practice_only && r.source.find("confirm with the maker") == std::string::npos)
                        FAIL_CHECK("seed " << seed << ": not marked: " << r.source);
                }
                for (const Unknown& u : node.unknowns)
                    if (u.because.empty()) FAIL_CHECK("seed " << seed << ": unknown without reason: " << u.subject);
            });
        CHECK_FALSE(s.answer.empty());
    }
    CHECK(reasons > 5000);  // the draw reaches what it is meant to reach
    CHECK(beyond > 500);
}

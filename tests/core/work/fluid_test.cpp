// Fluid volumes and wheel-end oil against worked examples on paper; mixing; levels; the order of bleeding.
#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

#include "core/work/amounts.h"
#include "core/work/bleed.h"
#include "core/work/fluid.h"
#include "core/work/fluid_doubt.h"
#include "tests/core/survey/sample_job.h"
#include "tests/support/project_files.h"

using namespace cotter;
using namespace cotter::test;

namespace {

std::string ml(double cubic_metres, int decimals) {
    return rounded_text(cubic_metres * 1e6, decimals);
}

FluidTable table() {
    std::stringstream text;
    text << std::ifstream(project_file("assets/procedures/fluids.json")).rdbuf();
    auto read = fluids_from_json(text.str());
    REQUIRE_MESSAGE(read, (read ? "" : read.error().line()));
    return *read;
}

PipeLeg leg(const char* from, const char* to, const char* metres) {
    return {from, to, make_amount(metres, "m").value(), make_amount("0.190", "[in_i]").value()};
}

PipeRoute route() {
    PipeRoute r;
    r.id = {numbered(50)};
    r.legs = {leg("actuator", "tee 1", "5.0"), leg("tee 1", "axle1-left", "0.9"), leg("tee 1", "axle1-right", "1.4"),
              leg("tee 1", "tee 2", "1.1"),    leg("tee 2", "axle2-left", "0.9"), leg("tee 2", "axle2-right", "1.4")};
    r.at = moment(30);
    r.by = "A. Tester";
    return r;
}

std::string order_text(const PipeRoute& r) {
    const auto order = bleed_order(r, sample_trailer());
    if (!order) return order.error().line();
    std::string out;
    for (const BleedStop& stop : *order) out += (out.empty() ? "" : " ") + stop.place.text();
    return out;
}

BleedCount count(int id, Place place, const char* drawn, bool clean) {
    return {{numbered(id)}, place,      make_amount(drawn, "mL").value(), clean, !clean, "DOT 4", "",
            moment(id),     "A. Tester"};
}

Job bled(std::vector<BleedCount> counts) {
    std::vector<Change> changes{Put{route(), {}}};
    for (const BleedCount& c : counts) changes.push_back(Put{c, {}});
    return apply(sample_job(), edit_of(changes, 31)).value();
}

std::string level_words(const Level& level) {
    const auto remarks = check_level(level);
    return remarks.empty() ? "" : remarks.front().words;
}

}  // namespace

TEST_CASE("worked example, fluid volume: strokes, air, wear and pipes") {
    const double area = 25.65e-4, stroke = stroke_volume(area, 0.5e-3), inch = 0.0254;
    CHECK(ml(stroke, 2) == "1.28");
    CHECK(ml(4 * stroke, 2) == "5.13");
    const double master = bore_volume(1.0 * inch, 1.5 * inch);
    CHECK(ml(master, 1) == "19.3");
    CHECK(rounded_text(4 * stroke / master * 100, 0) == "27");
    const AirCost air = air_cost(1e-6, make_amount("1600", "[psi]").value().si());
    CHECK(ml(air.left, 3) == "0.009");
    CHECK(ml(air.lost, 2) == "0.99");
    CHECK(rounded_text(air.lost / (4 * stroke) * 100, 0) == "19");
    CHECK(ml(stroke_volume(area, 16e-3), 0) == "41");
    CHECK(ml(4 * stroke_volume(area, 16e-3), 0) == "164");
    CHECK(ml(bore_volume(0.190 * inch, 1), 1) == "18.3");
    CHECK(ml(bore_volume(0.128 * inch, 1), 1) == "8.3");
    CHECK(rounded_text(bore_volume(0.190 * inch, 12) * 1e5, 0) == "22");  // 220 mL in tens
    const FlushPlan plan = flush_plan(220e-6, 100e-6, 480e-6);
    CHECK(ml(plan.least, 0) == "1600");
    CHECK(ml(plan.most, 0) == "2400");
}

TEST_CASE("worked example, wheel-end oil: pints, growth with heat, a side slope") {
    CHECK(ml(make_amount("1", "[pt_us]").value().si(), 0) == "473");
    CHECK(ml(make_amount("1.5", "[pt_us]").value().si(), 0) == "710");
    CHECK(ml(oil_growth(500e-6, 60), 0) == "21");
    CHECK(rounded_text(level_shift(100, 2), 1) == "3.5");
}

TEST_CASE("fluids: which may meet, which must not, and that unknown is no yes") {
    const FluidTable t = table();
    CHECK(may_mix(t, "DOT 4, sealed bottle", "dot 3").mixing == Mixing::may);
    CHECK(may_mix(t, "DOT 5.1", "DOT 4").mixing == Mixing::may);
    CHECK(may_mix(t, "DOT 5", "DOT 4").mixing == Mixing::must_not);
    CHECK(may_mix(t, "DOT 5", "DOT 5.1").mixing == Mixing::must_not);
    CHECK(may_mix(t, "DOT 4", "mineral oil").mixing == Mixing::must_not);
    CHECK(may_mix(t, "gear oil SAE 90 GL-5", "NLGI 2 grease").mixing == Mixing::must_not);
    CHECK(may_mix(t, "semi-fluid grease", "gear oil").mixing == Mixing::must_not);
    CHECK(may_mix(t, "semi-fluid grease", "grease").mixing == Mixing::must_not);
    CHECK(may_mix(t, "gear oil", "DOT 4").mixing == Mixing::must_not);
    CHECK(may_mix(t, "something blue", "DOT 4").mixing == Mixing::unknown);
    for (const FluidClash& clash : t.clashes) CHECK_FALSE(clash.source.empty());
    CHECK(fits_hub(t, "gear oil SAE 90", HubKind::oil_bath).mixing == Mixing::may);
    CHECK(fits_hub(t, "grease NLGI 2", HubKind::oil_bath).mixing == Mixing::must_not);
    CHECK(fits_hub(t, "gear oil", HubKind::grease).mixing == Mixing::must_not);
    CHECK(fits_hub(t, "semi-fluid grease", HubKind::semi_fluid_grease).mixing == Mixing::may);
}

TEST_CASE("fluids: what speaks against a product in a hub or reservoir, each doubt with reason and source") {
    const FluidTable t = table();
    const std::vector<FluidMet> dot4{{"DOT 4", "recorded at the last visit"}};
    CHECK(doubts_about(t, "DOT 3, sealed bottle", {}, dot4).empty());
    CHECK(doubts_about(t, "", {}, dot4).empty());
    const auto silicone = doubts_about(t, "DOT 5", {}, dot4);
    REQUIRE(silicone.size() == 1);
    CHECK(silicone[0].mixing == Mixing::must_not);
    CHECK(silicone[0].words.find("DOT 5 and DOT 4 must not mix: they separate") == 0);
    CHECK(silicone[0].words.ends_with("(recorded at the last visit)"));
    CHECK(silicone[0].source.find("571.116") != std::string::npos);
    const auto oil = doubts_about(t, "gear oil SAE 90", {}, dot4);
    REQUIRE(oil.size() == 2);  // it is for hubs, and it would meet DOT 4
    CHECK(oil[0].mixing == Mixing::must_not);
    const auto hub = doubts_about(t, "gear oil SAE 90", HubKind::grease, {});
    REQUIRE(hub.size() == 1);
    CHECK(hub[0].words.find("does not go into this hub (grease)") != std::string::npos);
    CHECK_FALSE(hub[0].source.empty());
    CHECK(doubts_about(t, "gear oil SAE 90", HubKind::oil_bath, {}).empty());
    const auto blue = doubts_about(t, "something blue", {}, dot4);
    REQUIRE(blue.size() == 1);
    CHECK(blue[0].mixing == Mixing::unknown);
}

TEST_CASE("fluids: what is in there is told by this job's counts and levels, then by the last visit's") {
    Job job = bled({count(60, Place::corner(1, Side::left), "120", true)});
    Level own = sample_level();
    own.id = {numbered(70)};
    own.place = Place::at(Station::actuator);
    own.fluid = "brake fluid";
    own.product = "DOT 5.1";
    job = apply(job, edit_of({Put{own, {}}}, 40)).value();
    Job last = sample_job();
    Level then = own;
    then.product = "DOT 3";
    last = apply(last, edit_of({Put{then, {}}}, 40)).value();
    const auto met = fluids_met(job, &last, own.place, "brake fluid", own.id);
    REQUIRE(met.size() == 2);
    CHECK(met[0].product == "DOT 4");
    CHECK(met[0].how == "put in while bleeding");
    CHECK(met[1].product == "DOT 3");
    CHECK(met[1].how == "recorded at the last visit");
    CHECK(fluids_met(job, nullptr, own.place, "brake fluid", {}).size() == 2);
    const Level& hub = sample_level();
    CHECK(fluids_met(job, nullptr, hub.place, hub.fluid, hub.id).empty());
    CHECK(fluids_met(job, &last, hub.place, hub.fluid, hub.id).empty() == hub.product.empty());
}

TEST_CASE("pipes: what they hold together is told only when every bore is known") {
    PipeRoute r = route();
    REQUIRE(pipe_volume(r).has_value());
    CHECK(ml(*pipe_volume(r), 0) == "196");  // 10.7 m of 0.190 in
    r.legs[2].bore.reset();
    CHECK_FALSE(pipe_volume(r).has_value());
    r.legs.clear();
    CHECK_FALSE(pipe_volume(r).has_value());
}

TEST_CASE("levels: over the line, not settled, contradicting and unseen ones stay open") {
    Level level = sample_level();
    CHECK(level_words(level) == "");
    level.after->mark = LevelMark::above;
    CHECK(level_words(level).find("above the line") != std::string::npos);
    level = sample_level();
    level.settled = make_amount("2", "min").value();
    CHECK(level_words(level).find("2 min only") != std::string::npos);
    level.settled.reset();
    CHECK(level_words(level).find("spin the hub") != std::string::npos);
    level = sample_level();
    level.after->offset = make_amount("-3", "mm").value();
    CHECK(level_words(level).find("contradict") != std::string::npos);
    level.after.reset();
    CHECK_FALSE(proves_level(check_level(level)));
    level.taken = Taken::not_accessible;
    CHECK(level_words(level).find("not accessible") != std::string::npos);
}

TEST_CASE("levels: a hub that took far less than its mate is said") {
    Level mate = sample_level();
    mate.id = {numbered(60)};
    mate.place = Place::corner(1, Side::right);
    mate.added = make_amount("450", "mL").value();
    const Job job = apply(sample_job(), edit_of({Put{mate, {}}}, 9)).value();
    CHECK(differs_from_mate(job, sample_level()));
    mate.added = make_amount("200", "mL").value();
    CHECK_FALSE(differs_from_mate(apply(job, edit_of({Put{mate, {}}}, 10)).value(), sample_level()));
}

TEST_CASE("bleeding: the longest pipe first, by the real pipes") {
    CHECK(order_text(route()) == "axle2-right axle2-left axle1-right axle1-left");
    PipeRoute crossed = route();
    crossed.legs[1].length = make_amount("4.0", "m").value();  // a detour round the spare wheel
    CHECK(order_text(crossed) == "axle1-left axle2-right axle2-left axle1-right");
    const auto order = bleed_order(route(), sample_trailer()).value();
    CHECK(order.front().words == "axle2-right: 7.5 m of pipe from the actuator, the farthest, so first");
    CHECK(ml(order.front().volume, 0) == "137");
}

TEST_CASE("bleeding: routes that cannot be are refused with the pipe named") {
    PipeRoute r = route();
    r.legs.pop_back();
    CHECK(order_text(r).find("no pipe leads") != std::string::npos);
    r = route();
    r.legs[3].from = "tee 2";
    CHECK(order_text(r).find("leads from the actuator's side") != std::string::npos);
    r = route();
    r.legs[0].from = "tee 2";
    CHECK(order_text(r).find("circle") != std::string::npos);
    r = route();
    r.legs.push_back(leg("tee 1", "tee 2", "3"));
    CHECK(order_text(r).find("two pipes lead to tee 2") != std::string::npos);
    r = route();
    r.legs.push_back(leg("tee 2", "axle3-left", "3"));
    CHECK(order_text(r).find("no such corner") != std::string::npos);
    r = route();
    r.legs[0].length = make_amount("5", "V").value();
    CHECK(order_text(r).find("not a length") != std::string::npos);
    r.legs.clear();
    CHECK(order_text(r).find("empty") != std::string::npos);
}

TEST_CASE("bleeding: millilitres are summed by corner, and what is open is said") {
    const Place far = Place::corner(2, Side::right), next = Place::corner(2, Side::left);
    const Place third = Place::corner(1, Side::right), near = Place::corner(1, Side::left);
    const auto order = bleed_order(route(), sample_trailer()).value();
    Job job = bled({count(31, far, "120", false), count(32, far, "60", true), count(33, next, "150", true)});
    const auto tallies = bleed_tallies(job);
    REQUIRE(tallies.size() == 2);
    CHECK(ml(tallies[0].drawn, 0) == "180");
    CHECK(tallies[0].rounds == 2);
    CHECK(check_bleeding(job, order).size() == 2);
    job = bled({count(31, near, "90", true), count(32, third, "90", true), count(33, next, "150", true),
                count(34, far, "9", true)});
    const auto remarks = check_bleeding(job, order);
    REQUIRE(remarks.size() == 1);
    CHECK_FALSE(remarks[0].blocks);
}

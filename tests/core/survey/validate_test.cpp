// The rules of records: each broken once.
#include <doctest/doctest.h>

#include <limits>

#include "core/survey/validate.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {
template <class R, class F>
std::string first_problem(R record, F&& spoil) {
    spoil(record);
    const auto problems = problems_of(sample_job(), Record{record});
    return problems.empty() ? "" : problems[0].what;
}
}  // namespace

TEST_CASE("validate: the sample job is in order") {
    CHECK(problems_of(sample_job()).empty());
}

TEST_CASE("validate: readings") {
    const auto p = [](auto spoil) { return first_problem(sample_reading(), spoil); };
    CHECK(p([](Reading& r) { r.points.clear(); }) == "the reading has no value");
    CHECK(p([](Reading& r) {
              r.points.clear();
              r.taken = Taken::not_accessible;
          }) == "'not accessible' needs a reason");
    CHECK(p([](Reading& r) {
              r.points.clear();
              r.taken = Taken::not_measured;
              r.reason = "rain";
          }) == "");
    CHECK(p([](Reading& r) { r.unit = "furlong"; }) == "'furlong' is not a known unit");
    CHECK(p([](Reading& r) { r.place = Place::corner(3, Side::left); }) == "the trailer has no place axle3-left");
    CHECK(p([](Reading& r) { r.shot = Id<Shot>{numbered(77)}; }) == "the reading's shot is not in the job");
    CHECK(p([](Reading& r) { r.note.assign(10'001, 'x'); }) == "the note is longer than 10000 characters");
    CHECK(p([](Reading& r) { r.note = "\xff"; }) == "the note is not UTF-8 text");
}

TEST_CASE("validate: tags") {
    const auto p = [](auto spoil) { return first_problem(sample_tag(), spoil); };
    CHECK(p([](Tag& r) { r.points.pop_back(); }) == "a box cannot have 1 points");
    CHECK(p([](Tag& r) { r.points[0].x = -0.01; }) == "the tag lies outside the picture");
    CHECK(p([](Tag& r) { r.points[0].x = std::numeric_limits<double>::quiet_NaN(); }) ==
          "the tag lies outside the picture");
    CHECK(p([](Tag& r) { r.shot = {numbered(77)}; }) == "the tag's shot is not in the job");
}

TEST_CASE("validate: torques and levels") {
    const auto t = [](auto spoil) { return first_problem(sample_torque(), spoil); };
    CHECK(t([](Torque& r) { r.passes[0].tightened.push_back(9); }) == "there is no fastener 9 among 8");
    CHECK(t([](Torque& r) { r.wrench.clear(); }) == "the wrench is not named");
    CHECK(t([](Torque& r) { r.target_source.clear(); }) == "a target torque needs its source");
    CHECK(t([](Torque& r) { r.target = *make_amount("120", "mm"); }) == "the target is in a unit of something else");
    const Adapter crowfoot{*make_amount("2", "[in_i]"), *make_amount("16", "[in_i]"), *make_amount("0", "deg")};
    CHECK(t([&](Torque& r) {
              r.adapter = crowfoot;
              r.passes[0].at_nut = *make_amount("27", "[lbf_av].[ft_i]");
          }) == "");
    CHECK(t([&](Torque& r) { r.adapter = crowfoot; }) ==
          "with an adapter a pass needs its torque at the nut beside the wrench's setting");
    CHECK(t([](Torque& r) { r.passes[0].at_nut = *make_amount("27", "mm"); }) ==
          "the torque at the nut is in a unit of something else");
    CHECK(t([&](Torque& r) {
              r.passes.clear();
              r.adapter = crowfoot;
              r.adapter->angle = *make_amount("0", "mm");
          }) == "the adapter's angle is in a unit of something else");
    CHECK(t([](Torque& r) { r.target_from = Place::corner(3, Side::left); }) == "the trailer has no place axle3-left");
    const auto l = [](auto spoil) { return first_problem(sample_level(), spoil); };
    CHECK(l([](Level& r) { r.product.clear(); }) == "what was added is not named");
    CHECK(l([](Level& r) { r.added = *make_amount("-1", "mL"); }) == "what was added cannot be less than nothing");
}

TEST_CASE("validate: trailers") {
    const auto p = [](auto spoil) { return first_problem(sample_trailer(), spoil); };
    CHECK(p([](Trailer& r) { r.vin[12] = '7'; }).starts_with("the VIN does not check"));
    CHECK(p([](Trailer& r) {
              r.vin = "HOME BUILT 3";
              r.vin_nonstandard = true;
          }) == "a non-standard number needs a photo");
    CHECK(p([](Trailer& r) { r.axles.resize(5); }) == "a trailer has one to four axles");
    CHECK(p([](Trailer& r) { r.axles[0].studs = 3; }) == "a wheel has 4 to 10 studs");
}

// Looks, sidewalls, chambers, breakaway tests, events and the plate: nothing lost either way, and what cannot be so
// is refused.
#include <doctest/doctest.h>

#include "core/survey/json.h"
#include "core/survey/validate.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

const Place kLeft = Place::corner(1, Side::left);

Look sample_look() {
    Look r;
    r.id = {numbered(40)};
    r.point = "tire.face";
    r.place = kLeft;
    r.result = LookResult::bad;
    r.items = {{"cord", LookResult::bad}};
    r.reach = Reach::wheel_on;
    r.at = moment(20);
    r.by = "A. Tester";
    return r;
}

Sidewall sample_sidewall() {
    Sidewall r;
    r.id = {numbered(41)};
    r.place = kLeft;
    r.size = "ST235/80R16";
    r.type = TireType::trailer_service;
    r.load_range = "E";
    r.index_single = 123;
    r.index_dual = 119;
    r.max_pressure = *make_amount("80", "[psi]");
    r.date_code = "0523";
    r.at = moment(21);
    r.by = "A. Tester";
    return r;
}

Chamber sample_chamber() {
    Chamber r;
    r.id = {numbered(42)};
    r.place = kLeft;
    r.family = ChamberFamily::clamp;
    r.size = "30";
    r.stroke = StrokeClass::long_stroke;
    r.spring_brake = Fitted::yes;
    r.slack = SlackAdjuster::automatic;
    r.at = moment(22);
    r.by = "A. Tester";
    return r;
}

BreakawayTest sample_test() {
    BreakawayTest r;
    r.id = {numbered(43)};
    r.started = moment(23);
    r.ended = moment(38);
    r.wheels = {{kLeft, Held::holds, Held::turns, Held::not_tried}};
    r.at = moment(38);
    r.by = "A. Tester";
    return r;
}

Event sample_event() {
    Event r;
    r.id = {numbered(44)};
    r.kind = EventKind::coupled;
    r.at = moment(39);
    r.by = "A. Tester";
    return r;
}

Job with(Record record) {
    return apply(sample_job(), edit_of({Put{std::move(record), {}}}, 50)).value();
}

std::string refusal(Record record) {
    const auto problems = problems_of(sample_job(), record);
    return problems.empty() ? std::string() : problems.front().what;
}

}  // namespace

TEST_CASE("look records: a job that holds one of each survives a round trip") {
    for (const Record& record : {Record{sample_look()}, Record{sample_sidewall()}, Record{sample_chamber()},
                                 Record{sample_test()}, Record{sample_event()}}) {
        const Job job = with(record);
        const auto back = job_from_json(job_json(job));
        REQUIRE_MESSAGE(back, (back ? "" : back.error().line()));
        CHECK(*back == job);
        CHECK_FALSE(job == sample_job());
    }
}

TEST_CASE("look records: the plate and the use survive a round trip") {
    Trailer trailer = sample_trailer();
    trailer.actuation = Actuation::none;  // an answer, and not the same as nothing entered
    trailer.built = "2019-04";
    trailer.coupler = CouplerKind::gooseneck_ball;
    trailer.not_known = {"plate.gawr"};
    trailer.axles[0].brake = BrakeKind::overrun;
    trailer.axles[0].fastening = Fastening::wheel_bolts;
    Visit visit = sample_visit();
    visit.role = VisitRole::owner;
    visit.duty = Duty::private_use;
    visit.region = "US-TX";
    visit.tow = TowVehicle{};
    visit.tow->gvwr = *make_amount("7000", "[lb_av]");
    const Job job = apply(sample_job(), edit_of({Put{trailer, {}}, Put{visit, {}}}, 50)).value();
    const Job back = job_from_json(job_json(job)).value();
    CHECK(back == job);
    CHECK(back.only<Trailer>()->actuation == Actuation::none);
    CHECK_FALSE(sample_job().only<Trailer>()->actuation.has_value());
}

TEST_CASE("look records: a trailer of an earlier packet has no actuation that nobody entered") {
    const auto record = record_from_json(RecordKind::trailer, record_json(sample_trailer()));
    REQUIRE(record);
    CHECK_FALSE(std::get<Trailer>(*record).actuation.has_value());
}

TEST_CASE("look records: what cannot be so is refused") {
    CHECK(refusal(sample_look()).empty());
    Look look = sample_look();
    look.result = LookResult::good;
    CHECK(refusal(look) == "an item is wrong and the whole is said to be good");
    look = sample_look();
    look.point.clear();
    CHECK(refusal(look) == "the answer does not say to what");
    look = sample_look();
    look.place = Place::corner(4, Side::left);
    CHECK(refusal(look).starts_with("the trailer has no place"));
    Sidewall wall = sample_sidewall();
    CHECK(refusal(wall).empty());
    wall.date_code = "05a3";
    CHECK(refusal(wall).starts_with("a tire's date code has four digits"));
    wall = sample_sidewall();
    wall.index_single = 2'000'000'000;
    CHECK(refusal(wall) == "a load index is 0 to 279");
    Chamber chamber = sample_chamber();
    chamber.marked_limit = *make_amount("2", "kg");
    CHECK(refusal(chamber) == "the marked stroke limit is in a unit of something else");
    BreakawayTest test = sample_test();
    test.ended = moment(22);
    CHECK(refusal(test) == "the test ended before it began");
    Trailer trailer = sample_trailer();
    for (const char* bad : {"2019-13", "19-04", "2019-4", "April"}) {
        trailer.built = bad;
        CHECK_MESSAGE(refusal(trailer).starts_with("the build date"), bad);
    }
    trailer.built = "2019";
    CHECK(refusal(trailer).empty());
    Visit visit = sample_visit();
    for (const char* bad : {"Texas", "tx", "US-", "U"}) {
        visit.region = bad;
        CHECK_MESSAGE(refusal(visit).starts_with("the state or country"), bad);
    }
}

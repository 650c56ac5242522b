// Readings: what is wanted where, what looks odd, and a reading keyed in on the corner's page.
#include <algorithm>
#include <array>

#include <doctest/doctest.h>

#include "core/trade/asked.h"
#include "tests/app/app_bench.h"
#include "tests/app/places.h"

using namespace cotter;

namespace {

ReadingDraft keyed(std::string_view what, const char* unit, std::vector<std::string> texts) {
    ReadingDraft draft;
    draft.place = kLeft;
    draft.what = what;
    draft.unit = unit;
    draft.texts = std::move(texts);
    return draft;
}

std::vector<std::string> wanted_names(BrakeKind brake, Wheels wheels = Wheels::single) {
    Trailer trailer;
    Axle axle;
    axle.brake = brake;
    axle.wheels = wheels;
    trailer.axles = {axle};
    std::vector<std::string> out;
    for (const WantedReading& w : readings_wanted({&trailer, nullptr, nullptr}, kLeft))
        out.push_back(std::string(w.spec->name) + (w.place.wheel == Wheel::inner ? " inner" : ""));
    return out;
}

bool has(const std::vector<std::string>& list, const char* name) {
    return std::find(list.begin(), list.end(), name) != list.end();
}

void open_corner(SessionBench& bench) {
    bench.start_tandem();
    bench.apply(GoInstead{{Screen::plan, {}, {}}});
    bench.apply(GoTo{{Screen::corner, kLeft, {}}});
}

}  // namespace

TEST_CASE("the brake and the wheels decide what is wanted at a corner") {
    const auto disc = wanted_names(BrakeKind::hydraulic_disc);
    CHECK(has(disc, "pad thickness"));
    CHECK(has(disc, "rotor runout"));
    CHECK_FALSE(has(disc, "lining thickness"));
    const auto drum = wanted_names(BrakeKind::electric_drum);
    CHECK(has(drum, "drum diameter"));
    CHECK(has(drum, "magnet current"));
    CHECK_FALSE(has(drum, "rotor thickness"));
    CHECK_FALSE(has(wanted_names(BrakeKind::hydraulic_drum), "magnet current"));
    CHECK(has(wanted_names(BrakeKind::none, Wheels::dual), "tread depth inner"));
    CHECK(has(wanted_names(BrakeKind::none, Wheels::dual), "tread depth"));
    CHECK_FALSE(has(wanted_names(BrakeKind::none), "tread depth inner"));
}

TEST_CASE("a unit mistaken is asked about, and the likelier one named") {
    const auto inches = doubt_reading(keyed("pad thickness", "[in_i]", {"7.1", "6.8"}));
    REQUIRE(inches.has_value());
    CHECK(inches->unit == "mm");
    CHECK(inches->words.find("more than usual") != std::string::npos);
    const auto play = doubt_reading(keyed("end play", "mm", {"0.003"}));
    REQUIRE(play.has_value());
    CHECK(play->unit == "[in_i]");
    const auto psi = doubt_reading(keyed("tyre pressure, cold", "kPa", {"80"}));
    REQUIRE(psi.has_value());
    CHECK(psi->unit == "[psi]");
}

TEST_CASE("what cannot be below zero, and a point far from the others, are asked about; usual values are not") {
    CHECK(doubt_reading(keyed("pad thickness", "mm", {"-3.2"})).has_value());
    CHECK(doubt_reading(keyed("brake fluid moisture", "%", {"30"})).has_value());
    const auto slip = doubt_reading(keyed("rotor thickness", "mm", {"20.6", "20.5", "5.06", "20.6"}));
    REQUIRE(slip.has_value());
    CHECK(slip->words == "5.06 mm is far from the other points.");
    CHECK_FALSE(doubt_reading(keyed("pad thickness", "mm", {"7.1", "6.8", "3.2", "3.4"})));
    CHECK_FALSE(doubt_reading(keyed("end play", "[in_i]", {"0", "0.001", "0.004"})));
    CHECK_FALSE(doubt_reading(keyed("hub temperature", "Cel", {"-4"})));
    CHECK_FALSE(doubt_reading(keyed("tread depth", "[in_i]", {"3/32", "4/32", "2/32"})));
    CHECK_FALSE(doubt_reading(keyed("something of its own", "mm", {"4000"})));
}

TEST_CASE("a reading half keyed in comes back after the program was killed") {
    AppBench bench;
    open_corner(bench);
    bench.host->stage().happened();
    bench.hands->settle();
    REQUIRE(bench.tap("Rotor runout"));
    REQUIRE(bench.tap("0"));
    REQUIRE(bench.tap("."));
    REQUIRE(bench.tap("0"));
    bench.reopen();
    bench.show();
    CHECK(bench.log().shows("0.0"));
    REQUIRE(bench.tap("0"));
    REQUIRE(bench.tap("2"));
    REQUIRE(bench.tap("Done"));
    REQUIRE(bench.job().all<Reading>().size() == 1);
    const Reading& reading = bench.job().all<Reading>().front();
    CHECK(reading.points.front().value.text() == "0.002");
    CHECK(reading.unit == "[in_i]");
    CHECK(reading.instrument == "dial indicator");
    REQUIRE(reading.resolution.has_value());
    CHECK(reading.resolution->text() == "0.001");
    CHECK_FALSE(bench.session().drafts().reading.has_value());
}

TEST_CASE("an odd value is saved only after a second look, in the unit that was meant") {
    AppBench bench;
    open_corner(bench);
    bench.host->stage().happened();
    bench.hands->settle();
    REQUIRE(bench.tap("Tire pressure, cold"));
    REQUIRE(bench.tap("kPa"));
    REQUIRE(bench.tap("8"));
    REQUIRE(bench.tap("0"));
    REQUIRE(bench.tap("Done"));
    CHECK(bench.job().all<Reading>().empty());
    CHECK(bench.log().shows("Really?"));
    REQUIRE(bench.tap("It was psi"));
    REQUIRE(bench.job().all<Reading>().size() == 1);
    CHECK(bench.job().all<Reading>().front().unit == "[psi]");
}

TEST_CASE("'Key it again' clears the odd value, and only that") {
    AppBench bench;
    open_corner(bench);
    bench.look();
    SUBCASE("a single value") {
        bench.touch("Tire pressure, cold");
        bench.touch("kPa");
        bench.key("80");
        bench.touch("Key it again");
        bench.key("550");  // not 80550
        REQUIRE(bench.job().all<Reading>().size() == 1);
        CHECK(bench.job().all<Reading>()[0].points.at(0).value.text() == "550");
    }
    SUBCASE("one of several points: the others stay, and it is the one that is keyed next") {
        ReadingDraft draft = begin_reading(bench.job(), "rotor thickness", kLeft, Stage::before);
        draft.unit = "mm";
        draft.texts = {"20.6", "20.5", "5.06", "20.6"};
        Drafts drafts = bench.session().drafts();
        drafts.reading = draft;
        bench.apply(KeepDrafts{drafts});
        bench.look();
        bench.touch("Done");
        bench.touch("Key it again");
        bench.key("20.6");
        REQUIRE(bench.job().all<Reading>().size() == 1);
        const auto& points = bench.job().all<Reading>()[0].points;
        REQUIRE(points.size() >= 4);
        CHECK(points[0].value.text() == "20.6");
        CHECK(points[1].value.text() == "20.5");
        CHECK(points[2].value.text() == "20.6");
    }
}

TEST_CASE("'not measured' needs a reason, chosen and not typed") {
    AppBench bench;
    open_corner(bench);
    bench.host->stage().happened();
    bench.hands->settle();
    REQUIRE(bench.tap("Pad thickness"));
    REQUIRE(bench.tap("Not accessible"));
    REQUIRE(bench.tap("Done"));
    CHECK(bench.job().all<Reading>().empty());
    REQUIRE(bench.tap("wheel not taken off"));
    REQUIRE(bench.job().all<Reading>().size() == 1);
    const Reading& reading = bench.job().all<Reading>().front();
    CHECK(reading.taken == Taken::not_accessible);
    CHECK(reading.points.empty());
    CHECK(reading_words(reading) == "not accessible: wheel not taken off");
}

TEST_CASE("the unit of the last like reading is offered first, and an old one is opened to be corrected") {
    SessionBench bench;
    open_corner(bench);
    Reading old;
    old.place = kLeft;
    old.what = "rotor thickness";
    old.unit = "[in_i]";
    old.instrument = "bow micrometer";
    old.points = {{"0°", Number::parse("0.81").value()}, {"45°", Number::parse("0.8095").value()}};
    bench.apply(PutReading{old});
    const ReadingDraft next =
        begin_reading(bench.job(), "rotor thickness", Place::corner(1, Side::right), Stage::before);
    CHECK(next.unit == "[in_i]");
    CHECK(next.texts.empty());
    CHECK(reading_of(reading_entry(bench.job(), next), next).instrument == "bow micrometer");
    const ReadingDraft again = begin_reading(bench.job(), "rotor thickness", kLeft, Stage::before);
    CHECK(again.texts == std::vector<std::string>{"0.81", "0.8095"});
    const ReadingEntry entry = reading_entry(bench.job(), again);
    CHECK(entry.spec.points == std::vector<std::string>{"0°", "45°"});
    CHECK(reading_of(entry, again).id == bench.job().all<Reading>().front().id);
}

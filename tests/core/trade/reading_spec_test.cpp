// The table of readings: every name once, every point's reading in it, and ranges that fit each other.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "core/trade/point.h"
#include "core/trade/reading_spec.h"

using namespace cotter;

TEST_CASE("every reading of a point is in the table of readings") {
    std::size_t readings = 0;
    for (const TradePoint& p : all_points())
        for (const std::string_view name : p.readings) {
            CAPTURE(name);
            const ReadingSpec* spec = reading_spec(name);
            REQUIRE(spec != nullptr);
            CHECK(spec->name == name);
            CHECK(point_of_reading(name) != nullptr);
            ++readings;
        }
    CHECK(readings > 50);
}

TEST_CASE("a reading stands once in its table, with units of what it measures") {
    std::set<std::string_view> seen;
    for (const ReadingSpec& spec : all_readings()) {
        CAPTURE(spec.name);
        CHECK(seen.insert(spec.name).second);
        CHECK(reading_spec(spec.name) == &spec);
        CHECK(spec.lowest < spec.highest);
        CHECK_FALSE(spec.component.empty());
        // Offered exactly when somebody takes it.
        CHECK(spec.units.empty() == !is_offered(spec));
        CHECK(spec.tool.empty() == !is_offered(spec));
        if (!is_offered(spec)) continue;
        CHECK(spec.least < spec.most);
        CHECK(spec.least >= spec.lowest);
        CHECK(spec.most <= spec.highest);
        CHECK((spec.sign || spec.least >= 0));
        for (const UnitStep& step : spec.units) {
            CAPTURE(step.ucum);
            const Unit* unit = find_unit(step.ucum);
            REQUIRE(unit != nullptr);
            CHECK(unit->quantity == spec.quantity);
            REQUIRE(Number::parse(step.step).has_value());
            CHECK(Number::parse(step.step)->value() > 0);
        }
    }
}

TEST_CASE("names that older packets hold are still known") {
    for (const std::string_view name : {"tread depth",
                                        "tyre pressure, cold",
                                        "tyre pressure, hot",
                                        "tyre date code",
                                        "tyre load index",
                                        "tyre load rating",
                                        "end play",
                                        "pad thickness",
                                        "rotor thickness",
                                        "rotor runout",
                                        "lining thickness",
                                        "drum diameter",
                                        "magnet resistance",
                                        "magnet current",
                                        "volts at the magnet",
                                        "line pressure at full demand",
                                        "pressure hold",
                                        "brake fluid moisture",
                                        "brake fluid boiling point",
                                        "master cylinder fill",
                                        "breakaway battery under load",
                                        "breakaway brakes held",
                                        "breakaway battery capacity",
                                        "slide travel",
                                        "tongue weight",
                                        "axle weight",
                                        "wheel weight",
                                        "tow vehicle GVWR",
                                        "chain link wear",
                                        "coupler ball size",
                                        "ride height",
                                        "axle spacing",
                                        "shackle hole wear",
                                        "volts at the lamp",
                                        "hub counter",
                                        "distance run since the last visit",
                                        "pad thickness when new",
                                        "rotor cut per side"}) {
        CAPTURE(name);
        CHECK(reading_spec(name) != nullptr);
    }
    // What has a record of its own now is read and not offered.
    CHECK(reading_spec("tyre date code")->use == ReadingUse::replaced);
    CHECK(reading_spec("tow vehicle GVWR")->use == ReadingUse::replaced);
    CHECK(reading_spec("tyre pressure, hot")->use == ReadingUse::extra);
}

TEST_CASE("a hub temperature may say after what") {
    REQUIRE(reading_spec("hub temperature after road test") != nullptr);
    CHECK(reading_spec("hub temperature after road test")->name == "hub temperature");
    CHECK(reading_spec("hub temperatures") == nullptr);
    CHECK(reading_spec("hub temperature over its mates")->use == ReadingUse::computed);
    REQUIRE(point_of_reading("hub temperature after road test") != nullptr);
    CHECK(point_of_reading("hub temperature after road test")->id == PointId::hub_heat);
    CHECK(point_of_reading("hub counter") == nullptr);
    CHECK(point_of_reading("no such reading") == nullptr);
}

// What is looked at, by taps: the list, and each point's answers with what they say of towing.
#include <set>

#include <doctest/doctest.h>

#include "app/views/point_view.h"
#include "app/views/tag_view.h"
#include "core/trade/reading_spec.h"
#include "tests/app/taps.h"

using namespace cotter;

namespace {

struct PointBench : Taps {
    explicit PointBench(const char* brake = "Hydraulic drum", const char* wheels = "Single") {
        begin();
        axles("One", wheels, brake, "Oil bath");
        to_plan();
    }
    [[nodiscard]] PointView view() { return point_view(session(), Stage::before); }
    [[nodiscard]] const Look* look_of(const PointView& shown) {
        for (const Look& l : job().all<Look>())
            if (l.point == name_of(shown.point->id) && l.place == shown.place) return &l;
        return nullptr;
    }
    // Through the list, as a hand goes.
    void open(std::string_view title) {
        while (route().screen != Screen::plan) back();
        touch("What is looked at");
        REQUIRE(tap("Each of them"));
        touch(std::string(title));
        REQUIRE(route().screen == Screen::point);
    }
    void go(const Route& to) {
        apply(GoTo{to});
        look();
    }
};

// One place of each point that this trailer has.
std::vector<Route> points_of(PointBench& bench) {
    std::vector<Route> out;
    std::set<PointId> seen;
    for (const PointAnswer& a : bench.session().towing().points)
        if (a.point && seen.insert(*a.point).second)
            out.push_back({Screen::point, a.place, std::string(name_of(*a.point))});
    return out;
}

void answer_good_and_unknown(PointBench& bench) {
    bench.touch("Looks good");
    const Look* good = bench.look_of(bench.view());
    REQUIRE(good != nullptr);
    CHECK(good->result == LookResult::good);
    CHECK_FALSE(good->finding.has_value());
    bench.touch("I can't tell");
    REQUIRE(bench.look_of(bench.view()) != nullptr);
    CHECK(bench.look_of(bench.view())->result == LookResult::cannot_tell);
    CHECK_FALSE(bench.view().grade.has_value());
}

// Each entry alone: it is recorded, a finding of its grade is made, and the page says so.
void answer_each_fault(PointBench& bench) {
    for (const EntryChoice& entry : bench.view().entries) {
        CAPTURE(entry.id);
        bench.touch("Something is wrong");
        bench.touch(entry.text);
        bench.touch("Record what is wrong");
        const Look* bad = bench.look_of(bench.view());
        REQUIRE(bad != nullptr);
        CHECK(bad->result == LookResult::bad);
        REQUIRE(bad->finding.has_value());
        const Finding* finding = bench.job().find(*bad->finding);
        REQUIRE(finding != nullptr);
        CHECK(finding->grade == entry.grade);
        CHECK(finding->defect == entry.text);
        // What is only to be watched does not answer what was not measured.
        if (bench.view().grade || entry.grade >= Grade::repair) CHECK(bench.view().grade >= entry.grade);
    }
}

void answer_each_choice(PointBench& bench) {
    for (const EntryChoice& entry : bench.view().entries) {
        CAPTURE(entry.id);
        bench.touch(entry.text);
        const Look* chosen = bench.look_of(bench.view());
        REQUIRE(chosen != nullptr);
        REQUIRE(chosen->items.size() == 1);
        CHECK(chosen->items[0].item == entry.id);
        CHECK((chosen->result == LookResult::good) == (entry.grade == Grade::serviceable));
    }
    bench.touch("I can't tell");
    CHECK(bench.look_of(bench.view())->result == LookResult::cannot_tell);
}

void take_back(PointBench& bench) {
    bench.touch("Take this answer back");
    CHECK(bench.look_of(bench.view()) == nullptr);
}

std::size_t answer_all(PointBench& bench) {
    std::size_t asked = 0;
    for (const Route& route : points_of(bench)) {
        bench.go(route);
        CAPTURE(route.record);
        const PointView view = bench.view();
        if (view.point->list == ListKind::none) continue;
        ++asked;
        if (view.point->list == ListKind::choice) {
            answer_each_choice(bench);
        } else {
            answer_good_and_unknown(bench);
            answer_each_fault(bench);
        }
        take_back(bench);
    }
    return asked;
}

// What is keyed: in the middle of what is usual, in the usual unit.
std::string usual(const ReadingSpec& spec) {
    REQUIRE_FALSE(spec.units.empty());
    const Unit* unit = find_unit(spec.units.front().ucum);
    REQUIRE(unit != nullptr);
    const double value = from_si((spec.least + spec.most) / 2, *unit);
    return fmt::format("{:.{}f}", value, value < 1 ? 3 : value < 20 ? 1 : 0);
}

}  // namespace

TEST_CASE("every look of every point is answered by taps, with each fault and its grade, and taken back") {
    for (const char* brake : {"Hydraulic drum", "Electric drum", "Hydraulic disc", "Air"}) {
        CAPTURE(brake);
        PointBench bench(brake);
        CHECK(answer_all(bench) > 15);
    }
}

TEST_CASE("the list leads from the plan to what is open, worst first, and from point to point") {
    PointBench bench;
    bench.touch("What is looked at");
    CHECK(bench.route().screen == Screen::points);
    CHECK(bench.log().shows("points looked at"));
    bench.touch("Axle 1, left");  // where it is open
    CHECK(bench.route().screen == Screen::points);
    CHECK(bench.log().shows("Still to look at"));
    bench.back();
    bench.touch("Next to look at");
    REQUIRE(bench.route().screen == Screen::point);
    bench.open("Both faces of the tire");
    CHECK(bench.log().shows("Not known"));
    bench.touch("Something is wrong");
    CHECK_FALSE(bench.tap("Record what is wrong"));  // not before something is chosen
    bench.touch(bench.view().entries.front().text);
    bench.touch("Record what is wrong");
    CHECK(bench.log().shows("Do not tow"));
    bench.back();
    bench.apply(GoTo{{Screen::points, {}, "all"}});
    REQUIRE_FALSE(points_view(bench.session()).against.empty());
    CHECK(points_view(bench.session()).against[0].title == "Both faces of the tire");
    CHECK(bench.session().summary().towing == Towing::no);
}

TEST_CASE("every reading of every point is keyed by taps on its point's page") {
    PointBench bench("Hydraulic drum", "Dual");
    std::size_t keyed = 0;
    for (const Route& route : points_of(bench)) {
        bench.go(route);
        for (const PointReading& reading : bench.view().readings) {
            CAPTURE(reading.label);
            const ReadingSpec* spec = reading_spec(reading.draft.what);
            REQUIRE(spec != nullptr);
            const std::size_t before = bench.job().all<Reading>().size();
            if (reading.there) continue;
            bench.touch(reading.label);
            bench.key_points({usual(*spec)});
            REQUIRE(bench.job().all<Reading>().size() == before + 1);
            CHECK(bench.job().all<Reading>().back().what == spec->name);
            ++keyed;
        }
    }
    CHECK(keyed > 12);
}

TEST_CASE("'not accessible' with its reason answers a reading and is never good") {
    PointBench bench;
    bench.open("Tread depth");
    bench.touch("Tread depth");
    bench.touch("Not accessible");
    bench.touch("Done");
    bench.touch("load in the way");
    REQUIRE(bench.job().all<Reading>().size() == 1);
    CHECK(bench.job().all<Reading>()[0].taken == Taken::not_accessible);
    CHECK_FALSE(bench.view().grade.has_value());
}

TEST_CASE("a tire's sidewall is entered by taps, taken over by the next wheel, and removed") {
    PointBench bench("Hydraulic drum", "Dual");
    bench.open("What the tire's sidewall says");
    bench.touch("The tire's sidewall");
    CHECK(bench.route().screen == Screen::sidewall);
    bench.words("Size", "ST235/80R16");
    bench.choose("Type", "ST");
    bench.words("Load range", "E");
    bench.amount("Load index, single", "123");
    bench.amount("Load index, dual", "119");
    bench.amount("Maximum load, single", "3420", "lb");
    bench.amount("Maximum load, dual", "1360", "kg");
    bench.amount("Maximum cold pressure", "80", "psi");
    bench.words("Date code", "2222");
    bench.amount("Marked for a limited speed", "65", "mph");
    bench.touch("Marked 'not for highway use'");
    REQUIRE(bench.job().all<Sidewall>().size() == 1);
    const Sidewall first = bench.job().all<Sidewall>()[0];
    CHECK(first.size == "ST235/80R16");
    CHECK(first.type == TireType::trailer_service);
    CHECK(first.load_range == "E");
    CHECK(first.index_single == 123);
    CHECK(first.index_dual == 119);
    CHECK(first.max_single->text() == "3420 lb");
    CHECK(first.max_dual->text() == "1360 kg");
    CHECK(first.max_pressure->text() == "80 psi");
    CHECK(first.date_code == "2222");
    CHECK(first.speed_limit->text() == "65 mph");
    CHECK(first.not_for_highway);
    bench.touch("Marked 'not for highway use'");
    CHECK_FALSE(bench.job().all<Sidewall>()[0].not_for_highway);

    const Place other = Place::corner(1, Side::right, Wheel::outer);
    bench.go({Screen::point, other, "tire.id"});
    bench.touch("The tire's sidewall");
    bench.touch(sidewall_view(bench.session()).like_words);
    REQUIRE(bench.job().all<Sidewall>().size() == 2);
    const Sidewall second = bench.job().all<Sidewall>()[1];
    CHECK(second.place == other);
    CHECK(second.index_dual == 119);
    CHECK(second.date_code.empty());  // each tire has its own
    bench.touch("Remove this entry");
    CHECK(bench.job().all<Sidewall>().size() == 1);
}

TEST_CASE("a date code that cannot be one stays a draft, and says why") {
    PointBench bench;
    bench.open("What the tire's sidewall says");
    bench.touch("The tire's sidewall");
    bench.touch("Date code");
    bench.hands->type("23");
    CHECK(bench.log().shows("The last four digits: week and year, 0523"));
    bench.touch("Type");
    CHECK(bench.job().all<Sidewall>().empty());
}

TEST_CASE("an air chamber's tag is entered by taps, and removed") {
    PointBench bench("Air");
    bench.touch("Plate and use");
    bench.touch("Axle");
    bench.choose("Brake", "Air S-cam");
    bench.open(point(PointId::air_kind).title);
    bench.touch("The chamber's tag");
    CHECK(bench.route().screen == Screen::chamber);
    bench.choose("Held together by", "Clamp band");
    bench.words("Type", "30");
    bench.choose("Stroke, from tag or port", "Long");
    bench.choose("Spring brake", "Yes");
    bench.choose("Slack adjuster", "Automatic");
    bench.amount("Slack adjuster, center to center", "5.5", "in");
    bench.amount("Rated stroke, if marked", "3", "in");
    bench.amount("Stroke limit, if marked", "2.5", "in");
    bench.amount("Limit as you read it in 49 CFR 393.47(e)", "51", "mm");
    REQUIRE(bench.job().all<Chamber>().size() == 1);
    const Chamber chamber = bench.job().all<Chamber>()[0];
    CHECK(chamber.family == ChamberFamily::clamp);
    CHECK(chamber.size == "30");
    CHECK(chamber.stroke == StrokeClass::long_stroke);
    CHECK(chamber.spring_brake == Fitted::yes);
    CHECK(chamber.slack == SlackAdjuster::automatic);
    CHECK(chamber.slack_length->text() == "5.5 in");
    CHECK(chamber.rated_stroke->text() == "3 in");
    CHECK(chamber.marked_limit->text() == "2.5 in");
    CHECK(chamber.table_limit->text() == "51 mm");
    bench.touch("Remove this entry");
    CHECK(bench.job().all<Chamber>().empty());
}

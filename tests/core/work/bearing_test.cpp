// End play from the nut's turn against worked examples on paper; lock positions; what proves a bearing.
#include <doctest/doctest.h>

#include "core/work/amounts.h"
#include "core/work/bearing.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

std::string inches(double threads, double turns) {
    return rounded_text(nut_travel(threads, turns).value() / 0.0254, 4);
}

std::string degrees_for(const char* inches_of_play) {
    return rounded_text(nut_angle(14, make_amount(inches_of_play, "[in_i]").value()).value(), 1);
}

Reading dial(int id, std::vector<const char*> values) {
    Reading r = sample_reading();
    r.id = {numbered(id)};
    r.what = "end play";
    r.unit = "[in_i]";
    r.points.clear();
    for (const char* value : values) r.points.push_back({"", Number::parse(value).value()});
    return r;
}

BearingSetting setting() {
    BearingSetting s;
    s.id = {numbered(40)};
    s.place = Place::corner(1, Side::left);
    s.source = "axle maker's sheet, page 9";
    s.threads_per_inch = Number::parse("14").value();
    s.lock_positions = 6;
    s.play_min = make_amount("0.001", "[in_i]").value();
    s.play_max = make_amount("0.005", "[in_i]").value();
    s.new_lock = true;
    s.lock_shot = Id<Shot>{numbered(3)};
    s.tries = {{0, Id<Reading>{numbered(41)}}};
    s.at = moment(20);
    s.by = "A. Tester";
    return s;
}

Job job_with(const Reading& reading, const BearingSetting& s) {
    return apply(sample_job(), edit_of({Put{reading, {}}, Put{s, {}}}, 21)).value();
}

std::string first_words(const Job& job, const BearingSetting& s) {
    const auto remarks = check_bearing(job, s);
    return remarks.empty() ? "" : remarks.front().words;
}

}  // namespace

TEST_CASE("worked example, end play from nut back-off: pitch and travel for 12 to 20 threads") {
    struct Row {
        double threads;
        const char* pitch;
        const char* mm;
        const char* travel[6];
    };
    const Row rows[] = {{12, "0.0833", "2.117", {"0.0069", "0.0104", "0.0139", "0.0208", "0.0278", "0.0417"}},
                        {14, "0.0714", "1.814", {"0.0060", "0.0089", "0.0119", "0.0179", "0.0238", "0.0357"}},
                        {16, "0.0625", "1.588", {"0.0052", "0.0078", "0.0104", "0.0156", "0.0208", "0.0313"}},
                        {18, "0.0556", "1.411", {"0.0046", "0.0069", "0.0093", "0.0139", "0.0185", "0.0278"}},
                        {20, "0.0500", "1.270", {"0.0042", "0.0063", "0.0083", "0.0125", "0.0167", "0.0250"}}};
    const double turns[] = {1.0 / 12, 1.0 / 8, 1.0 / 6, 1.0 / 4, 1.0 / 3, 1.0 / 2};
    for (const Row& row : rows) {
        CHECK(inches(row.threads, 1) == row.pitch);
        CHECK(rounded_text(nut_travel(row.threads, 1).value() * 1000, 3) == row.mm);
        for (int i = 0; i < 6; ++i) CHECK(inches(row.threads, turns[i]) == row.travel[i]);
    }
    CHECK(degrees_for("0.001") == "5.0");
    CHECK(degrees_for("0.005") == "25.2");
    CHECK(degrees_for("0.010") == "50.4");
    for (const auto& [in, mm] : {std::pair("0.001", "0.025"), {"0.005", "0.127"}, {"0.010", "0.254"}})
        CHECK(rounded_text(make_amount(in, "[in_i]").value().si() * 1000, 3) == mm);
}

TEST_CASE("worked example, end play from nut back-off: a six-slot nut locks each 60 or 30 degrees") {
    CHECK(lock_angles(6, {0}).value() == std::vector<double>{0, 60, 120, 180, 240, 300});
    CHECK(lock_angles(6, {0, 90}).value().size() == 12);
    CHECK(lock_angles(6, {0, 90}).value()[1] == doctest::Approx(30));
    CHECK(inches(14, 1.0 / 12) == "0.0060");
    CHECK_FALSE(lock_angles(2, {0}));
    CHECK_FALSE(lock_angles(6, {}));
}

TEST_CASE("bearing: positions predict from the dial, and say when they may not be used") {
    const BearingSetting s = setting();
    const auto options = lock_options(s, make_amount("0.0130", "[in_i]").value(), 1, 1).value();
    REQUIRE(options.size() == 3);
    CHECK(options[0].words ==
          "1 position tighter: play falls by about 0.0119 in, to about 0.0011 in; this nut is aligned by loosening "
          "only, so seat it anew instead");
    CHECK_FALSE(options[0].allowed);
    CHECK(options[0].in_range);
    CHECK(options[1].words == "here");
    CHECK_FALSE(options[1].in_range);
    CHECK(options[2].words == "1 position looser: play grows by about 0.0119 in, to about 0.0249 in");
    BearingSetting ring = s;
    ring.style = NutStyle::double_nut;
    CHECK(lock_options(ring, std::nullopt).value().front().allowed);
    CHECK(lock_options(ring, make_amount("0.0010", "[in_i]").value(), 1, 0).value()[0].words.find("preload") !=
          std::string::npos);
}

TEST_CASE("bearing: missing and contradicting numbers are refused in words") {
    BearingSetting s = setting();
    s.style = NutStyle::preset;
    CHECK(lock_options(s, std::nullopt).error().line().find("no positions") != std::string::npos);
    s = setting();
    s.threads_per_inch.reset();
    CHECK(lock_options(s, std::nullopt).error().line().find("threads per inch") != std::string::npos);
    s = setting();
    s.play_min = make_amount("0.01", "[in_i]").value();
    CHECK(lock_options(s, std::nullopt).error().line().find("above the most") != std::string::npos);
    CHECK_FALSE(lock_options(setting(), make_amount("3", "N.m").value()));
    CHECK_FALSE(nut_travel(0, 1));
    CHECK_FALSE(nut_angle(14, make_amount("1", "V").value()));
    CHECK_FALSE(apply(sample_job(), edit_of({Put{s, {}}}, 22)));
}

TEST_CASE("bearing: only a dial reading in the maker's range with the lock's photo proves it") {
    const BearingSetting s = setting();
    const Job good = job_with(dial(41, {"0.0030", "0.0035", "0.0030"}), s);
    CHECK(first_words(good, s) == "");
    CHECK(proved_play(good, s)->text() == "0.0035 in");
    BearingSetting feel = s;
    feel.tries = {{0, std::nullopt}};
    CHECK(first_words(good, feel).find("by feel") != std::string::npos);
    Reading none = dial(41, {});
    none.taken = Taken::not_measured;
    none.reason = "no dial here";
    CHECK_FALSE(proves_bearing(check_bearing(job_with(none, s), s)));
    CHECK(first_words(job_with(dial(41, {"0.0085", "0.0090", "0.0085"}), s), s).find("0.0090 in") != std::string::npos);
    BearingSetting old = s;
    old.new_lock = false;
    CHECK(first_words(good, old).find("not used again") != std::string::npos);
    BearingSetting bare = s;
    bare.lock_shot.reset();
    CHECK(first_words(good, bare).find("no photo") != std::string::npos);
    BearingSetting preset = s;
    preset.style = NutStyle::preset;
    CHECK_FALSE(proves_bearing(check_bearing(good, preset)));
    preset.locked = make_amount("145", "[lbf_av].[ft_i]").value();
    CHECK(proves_bearing(check_bearing(good, preset)));
}

// The register that ships, the exact side of each limit, makers' figures, and contradictions.
#include "core/judge/limit.h"

#include <cmath>

#include "core/trade/reading_spec.h"
#include "core/judge/register.h"
#include "core/survey/validate.h"
#include "tests/core/judge/judge_bench.h"
#include "tests/core/survey/sample_job.h"
#include "tests/support/memory_files.h"

using namespace cotter;
using namespace cotter::test;

namespace {

const Limit& limit(const std::string& id) {
    for (const Limit& l : shipped_limits())
        if (l.id == id) return l;
    FAIL("no limit " << id);
    throw 0;
}

double inches(const char* text) {
    return make_amount(text, "[in_i]")->si();
}

}  // namespace

TEST_CASE("limits: the shipped register is in order, and what would not be is refused") {
    CHECK(shipped_limits().size() >= 30);
    CHECK(limit_problems(shipped_limits()).empty());
    const auto refused = [](auto change) {
        std::vector<Limit> one{limit("tread")};
        change(one[0]);
        return !limit_problems(one).empty();
    };
    CHECK_FALSE(refused([](Limit&) {}));
    CHECK(refused([](Limit& l) { l.source.text.clear(); }));
    CHECK(refused([](Limit& l) { l.value.unit = "furlong"; }));
    CHECK(refused([](Limit& l) { l.mark = LimitMark::c; }));
    CHECK(
        refused([](Limit& l) { l.source.kind = SourceKind::practice, l.mark = LimitMark::c; }));  // it would still fail
    CHECK(refused([](Limit& l) { l.source.kind = SourceKind::state_law; }));
    CHECK(refused([](Limit& l) { l.source.kind = SourceKind::maker; }));  // no page
    CHECK(refused([](Limit& l) { l.value.unit = "N.m"; }));               // a torque that no maker gave
    const std::vector<Limit> twice{limit("tread"), limit("tread")};
    CHECK(limit_problems(twice).size() == 1);
}

TEST_CASE("limits: no shipped figure of practice fails anything, none lacks source, evidence or date") {
    for (const Limit& l : shipped_limits()) {
        CAPTURE(l.id);
        if (l.mark == LimitMark::c) CHECK(l.beyond <= Grade::watch);
        CHECK_FALSE(l.source.text.empty());
        CHECK(l.checked.has_value() == (l.evidence != Evidence::memory));
        CHECK(find_unit(l.value.unit)->quantity != Quantity::torque);
    }
}

TEST_CASE("limits: the register loads from the share folder, and says what is wrong with it") {
    MemoryFiles files;
    CHECK(load_register(files, "share").error().code == Errc::not_found);
    (void)files.make_folders("share/limits");
    const std::string limits = asset("limits.json"), form = asset("inspection.json");
    REQUIRE(replace_file(files, "share/limits/limits.json", as_bytes(limits)));
    REQUIRE(replace_file(files, "share/limits/inspection.json", as_bytes(form)));
    const auto loaded = load_register(files, "share");
    REQUIRE(loaded);
    CHECK(loaded->limits == shipped_limits());
    REQUIRE(replace_file(files, "share/limits/limits.json", as_bytes(std::string_view(limits).substr(0, 300))));
    CHECK(load_register(files, "share").error().line().find("share/limits/limits.json") != std::string::npos);
}

TEST_CASE("limits: exactly 1/16 in may run and does not pass a periodic inspection") {
    const Limit &run = limit("lining-operate"), &inspection = limit("lining-inspection");
    CHECK(stand_of(run, inches("1/16"), 0) == Stand::good);
    CHECK(stand_of(inspection, inches("1/16"), 0) == Stand::beyond);
    CHECK(stand_of(run, inches("0.0624"), 0) == Stand::beyond);
    CHECK(stand_of(inspection, inches("0.0626"), 0) == Stand::good);
    CHECK(stand_of(run, make_amount("1.5875", "mm")->si(), 0) == Stand::good);
    CHECK(stand_of(inspection, make_amount("1.5875", "mm")->si(), 0) == Stand::beyond);
    CHECK(stand_of(limit("tread"), inches("2/32"), 0) == Stand::good);
    CHECK(stand_of(limit("tread"), inches("1/32"), 0) == Stand::beyond);
    CHECK(stand_of(limit("reservoir"), 0.25, 0) == Stand::good);
    CHECK(stand_of(limit("reservoir"), 0.249, 0) == Stand::beyond);
    CHECK(stand_of(run, std::nan(""), 0) == Stand::beyond);
}

TEST_CASE("limits: within one step of the instrument is not a pass") {
    CHECK(stand_of(limit("pad-shop"), 0.0030, 0.0001) == Stand::close);
    CHECK(stand_of(limit("pad-shop"), 0.0031, 0.0001) == Stand::good);
    CHECK(stand_of(limit("pad-shop"), 0.0029, 0.0001) == Stand::beyond);
}

TEST_CASE("limits: drums at 1/16 in fail the inspection, disc pads are not caught by that line") {
    for (const bool inspecting : {false, true}) {
        JudgeBench drum(BrakeKind::electric_drum), disc(BrakeKind::hydraulic_disc);
        if (inspecting) drum.job.all<Inspection>().push_back({});
        drum.read("axle1-left", what::lining_thickness, "[in_i]", {{"primary", "1/16"}});
        disc.read("axle1-left", what::pad_thickness, "[in_i]", {{"inner", "1/16"}});
        CHECK(worst_on(drum.judge().now, what::lining_thickness) == Grade::watch);
        const std::vector<Ground> on_pads = reasons_on(disc.judge().now, what::pad_thickness);
        const auto by = [&](std::string_view limit) {
            return std::find_if(on_pads.begin(), on_pads.end(), [&](const Ground& r) { return r.limit_id == limit; });
        };
        CHECK(by("lining-inspection") == on_pads.end());
        REQUIRE(by("pad-operate") != on_pads.end());
        CHECK(by("pad-operate")->grade == Grade::serviceable);
        drum.read("axle1-right", what::lining_thickness, "[in_i]", {{"primary", "0.0624"}});
        CHECK(worst_on(drum.judge().now, what::lining_thickness) == Grade::do_not_tow);
    }
}

TEST_CASE("limits: a maker's figure is a record: it needs its source, and puts practice aside") {
    JudgeBench bench;
    bench.read("axle1-left", what::pad_thickness, "mm", {{"inner", "2.6"}, {"outer", "2.8"}});
    CHECK(worst_on(bench.judge().now, what::pad_thickness) == Grade::watch);  // only practice says 3 mm
    MakerLimit& m = bench.maker(what::pad_thickness, Bound::at_least, "2.8", "mm");
    CHECK(problems_of(bench.job, Record{m}).empty());
    CHECK(worst_on(bench.judge().now, what::pad_thickness) == Grade::repair);
    for (const Ground& r : reasons_on(bench.judge().now, what::pad_thickness)) CHECK(r.limit_id != "pad-shop");
    CHECK(reasons_on(bench.judge().now, what::pad_thickness)[0].source ==
          "maker: axle service sheet, 3rd edition (invented), page 14");
    m.axle_model = "another axle";
    CHECK(worst_on(bench.judge().now, what::pad_thickness) == Grade::watch);
    MakerLimit bare = m;
    bare.page.clear();
    CHECK(problems_of(bench.job, Record{bare}).size() == 1);
    bare.origin = FigureOrigin::stamped;  // needs its photo instead
    CHECK(problems_of(bench.job, Record{bare}).at(0).what == "a stamped figure needs a photo of the stamping");
}

TEST_CASE("limits: makers' figures that contradict each other are not used, and that is said") {
    JudgeBench bench;
    bench.read("axle1-left", what::rotor_thickness, "mm", {{"0", "20.2"}});
    bench.maker(what::rotor_thickness, Bound::at_least, "20.0", "mm");
    bench.maker(what::rotor_thickness, Bound::at_least, "20.5", "mm");
    CHECK(reasons_on(bench.judge().now, what::rotor_thickness).empty());
    const auto unknowns = unknowns_on(bench.judge().now, what::rotor_thickness);
    REQUIRE(!unknowns.empty());
    CHECK(unknowns[0].because.starts_with("two makers' figures contradict each other: at least 20.0 mm"));
}

TEST_CASE("limits: makers' figures are remembered by axle model, the newest first") {
    JudgeBench first(BrakeKind::hydraulic_disc, "2024-05-01", 2), second(BrakeKind::hydraulic_disc, "2025-05-01", 3);
    first.maker(what::rotor_thickness, Bound::at_least, "20.0", "mm");
    first.maker(what::end_play, Bound::at_most, "0.008", "[in_i]");
    second.maker(what::rotor_thickness, Bound::at_least, "20.1", "mm");
    const std::vector<Job> jobs{second.job, first.job};
    const auto known = remembered_limits("DX-7000", jobs);
    REQUIRE(known.size() == 2);
    CHECK(known[0].value.text() == "20.1 mm");
    CHECK(remembered_limits("DX-9000", jobs).empty());
    CHECK(remembered_limits("", jobs).empty());
}

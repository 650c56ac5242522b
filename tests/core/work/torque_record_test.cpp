// What a torque's record says and proves: adapter and torque at the nut in fields of their own and in the older form,
// figures lent to like wheels only, the order across the circle, a unit that nobody confirmed.
#include <doctest/doctest.h>

#include "core/work/torque_check.h"
#include "core/work/torque_like.h"
#include "core/work/wrench.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

constexpr const char* kFoot = "[lbf_av].[ft_i]";
constexpr const char* kInchPound = "[lbf_av].[in_i]";

Amount amount(const char* number, const char* unit) {
    return make_amount(number, unit).value();
}

Adapter crowfoot() {
    return {amount("2", "[in_i]"), amount("16", "[in_i]"), amount("0", "deg")};
}

Torque tightened(const std::vector<int>& order = {1, 5, 3, 7, 2, 6, 4, 8}) {
    Torque t = sample_torque();
    t.passes.clear();
    for (const char* value : {"24", "60", "120", "120"}) t.passes.push_back({amount(value, kFoot), order});
    return t;
}

// As version 1.0 wrote it.
Torque in_older_form() {
    Torque t = tightened();
    t.wrench = "TW-3, adapter 2 in beyond 16 in at 0°";
    return t;
}

bool has(const Torque& t, TorqueDifference difference) {
    for (const TorqueRemark& r : check_torque(t))
        if (r.difference == difference) return true;
    return false;
}

std::string words_of(const Torque& t, TorqueDifference difference) {
    for (const TorqueRemark& r : check_torque(t))
        if (r.difference == difference) return r.words;
    return {};
}

bool proved(const Torque& t) {
    return proves_torque(check_torque(t));
}

// A tandem: single wheels of six studs in front, as the job's torque at axle 1 left has it.
Job job_of(Axle rear) {
    Trailer trailer = sample_trailer();
    trailer.axles[0].studs = 6;
    trailer.axles[1] = rear;
    Torque front = tightened({1, 4, 3, 6, 5, 2});
    front.fasteners = 6;
    front.target = amount("90", kFoot);
    Job job;
    job.all<Visit>() = {sample_visit()};
    job.all<Trailer>() = {trailer};
    job.all<Torque>() = {front};
    return job;
}

Axle front_axle() {
    Axle axle = sample_trailer().axles[0];
    axle.studs = 6;
    return axle;
}

Torque wanted_at_rear(int fasteners) {
    Torque t;
    t.place = Place::corner(2, Side::left);
    t.joint = "wheel nuts";
    t.fasteners = fasteners;
    return t;
}

}  // namespace

TEST_CASE("torque record: the proof compares the torque at the nut with the target, not the wrench's setting") {
    Torque t = tightened();
    t.adapter = crowfoot();
    for (Pass& pass : t.passes) {
        pass.at_nut = pass.setting;
        pass.setting = wrench_setting(*pass.at_nut, *t.adapter).value();
    }
    CHECK(t.passes[3].setting.text() == "106.7 lb-ft");
    CHECK(proved(t));
    // The wrench set to 120 with the adapter on it: 135 at the nut.
    for (Pass& pass : t.passes) {
        pass.setting = *pass.at_nut;
        pass.at_nut = torque_at_nut(pass.setting, *t.adapter).value();
    }
    CHECK(words_of(t, TorqueDifference::off_target) == "the last pass was at 135.0 lb-ft, the target is 120 lb-ft");
    CHECK_FALSE(proved(t));
}

TEST_CASE("torque record: a torque at the nut that the setting does not give proves nothing") {
    Torque t = tightened();
    t.adapter = crowfoot();
    for (Pass& pass : t.passes) pass.at_nut = pass.setting;
    CHECK(words_of(t, TorqueDifference::other_at_nut) ==
          "pass 1: 24 lb-ft on the wrench is 27.0 lb-ft at the nut, 24 lb-ft is recorded");
    CHECK_FALSE(proved(t));
    t.adapter.reset();
    CHECK(proved(t));
}

TEST_CASE("torque record: the older form with the adapter behind the wrench's id means what it meant") {
    const Torque old = in_older_form();
    CHECK(proved(old));
    const Torque t = in_present_form(old);
    CHECK(t.wrench == "TW-3");
    REQUIRE(t.adapter.has_value());
    CHECK(*t.adapter == crowfoot());
    CHECK(at_nut(t.passes[3]).text() == "120 lb-ft");
    CHECK(t.passes[3].setting.text() == "106.7 lb-ft");
    CHECK(in_present_form(t) == t);
    CHECK(proved(t));
    Torque of_his_own = tightened();
    of_his_own.wrench = "TW-3, adapter of his own";
    CHECK(in_present_form(of_his_own) == of_his_own);
    of_his_own.wrench = "TW-3, adapter 2 in beyond 16 in at 0° or so";
    CHECK(in_present_form(of_his_own) == of_his_own);
}

TEST_CASE("torque record: an adapter that is noted later changes what the passes were at the nut, not the settings") {
    const Torque t = with_adapter(tightened(), crowfoot()).value();
    CHECK(t.passes[3].setting.text() == "120 lb-ft");
    CHECK(at_nut(t.passes[3]).text() == "135.0 lb-ft");
    CHECK_FALSE(proved(t));
    const Torque without = with_adapter(t, std::nullopt).value();
    CHECK(at_nut(without.passes[3]).text() == "120 lb-ft");
    CHECK(proved(without));
    Adapter none = crowfoot();
    none.wrench_length = amount("0", "[in_i]");
    CHECK(with_adapter(tightened(), none).error().line().find("not above zero") != std::string::npos);
}

TEST_CASE("torque check: eight nuts clicked 1 to 8 are not proved, and the order is named") {
    const Torque t = tightened({1, 2, 3, 4, 5, 6, 7, 8});
    CHECK(words_of(t, TorqueDifference::not_across) ==
          "pass 1 went along the circle (1, 2, 3, 4, 5, 6, 7 and 8); the order across it is 1, 5, 3, 7, 2, 6, 4 and 8");
    CHECK_FALSE(proved(t));
    Torque checked = tightened();
    checked.passes[3].tightened = {1, 2, 3, 4, 5, 6, 7, 8};  // only looks whether one moves
    CHECK_FALSE(has(checked, TorqueDifference::not_across));
    CHECK(proved(checked));
}

TEST_CASE("torque check: every order of ours crosses the circle, and so do stars; along it does not") {
    for (const int n : {1, 2, 3, 4, 5, 6, 8, 10}) CHECK_MESSAGE(crosses_circle(cross_order(n).value(), n), n);
    CHECK(crosses_circle({1, 4, 7, 10, 3, 6, 9, 2, 5, 8}, 10));
    CHECK(crosses_circle({1, 5, 2, 6, 3, 7, 4, 8}, 8));
    for (const int n : {4, 5, 6, 8, 10}) {
        std::vector<int> along;
        for (int nut = 1; nut <= n; ++nut) along.push_back(nut);
        CHECK_FALSE_MESSAGE(crosses_circle(along, n), n);
        CHECK_FALSE_MESSAGE(crosses_circle({along.rbegin(), along.rend()}, n), n);
    }
    CHECK_FALSE(crosses_circle({1, 3, 5, 7, 2, 4, 6, 8}, 8));  // quarters of the circle
}

TEST_CASE("torque check: 120 lb-in for wheel nuts is doubted, and proves nothing until somebody has confirmed it") {
    const auto doubt = doubt_target("wheel nuts", amount("120", kInchPound));
    REQUIRE(doubt);
    CHECK(doubt->words ==
          "120 lb-in, 10.0 lb-ft, is very little for wheel nuts: 45 to 550 lb-ft is usual. Was 120 lb-ft meant?");
    CHECK(doubt->suggestion->text() == "120 lb-ft");
    CHECK(doubt_target("wheel nuts", amount("1440", kFoot))->suggestion->text() == "1440 lb-in");
    CHECK_FALSE(doubt_target("wheel nuts", amount("10", "N.m"))->suggestion.has_value());
    CHECK_FALSE(doubt_target("wheel nuts", amount("1080", kInchPound)));
    CHECK_FALSE(doubt_target("caliper bracket bolts", amount("30", kFoot)));
    for (const char* usual : {"50", "120", "500"}) {
        CHECK_FALSE(doubt_target("wheel nuts", amount(usual, kFoot)));
        CHECK(doubt_target("wheel nuts", amount(usual, kInchPound)));
    }
    CHECK(doubt_target("caliper bracket bolts", amount("30", kInchPound), amount("30", kFoot)));
    Torque t = tightened();
    t.target = amount("120", kInchPound);
    t.passes.clear();
    for (const char* value : {"24", "60", "120", "120"})
        t.passes.push_back({amount(value, kInchPound), {1, 5, 3, 7, 2, 6, 4, 8}});
    CHECK(has(t, TorqueDifference::unit_doubt));
    CHECK_FALSE(proved(t));
    t.unit_confirmed = true;
    CHECK(proved(t));
}

TEST_CASE("torque: a figure of 6 studs and single wheels is not lent to 10 studs and dual wheels") {
    Axle dual = front_axle();
    dual.wheels = Wheels::dual;
    dual.studs = 10;
    CHECK(torque_to_lend(job_of(dual), wanted_at_rear(10)) == nullptr);
}

TEST_CASE("torque: a figure is lent only where count, wheel, hub, thread and model are the same") {
    const Job job = job_of(front_axle());
    const Torque wanted = wanted_at_rear(6);
    const Torque* lender = torque_to_lend(job, wanted);
    REQUIRE(lender != nullptr);
    const Torque lent = with_lent(wanted, *lender);
    CHECK(lent.target->text() == "90 lb-ft");
    CHECK(lent.target_source == "axle maker's manual, page 12");
    CHECK(lent.target_from == Place::corner(1, Side::left));
    CHECK(lent.wrench == "TW-3");
    CHECK(torque_to_lend(job, wanted_at_rear(8)) == nullptr);
    CHECK(torque_to_lend(job, wanted_at_rear(0)) == nullptr);  // not counted: not known to be equal
    const auto not_with = [&](auto change) {
        Axle other = front_axle();
        change(other);
        return torque_to_lend(job_of(other), wanted) == nullptr;
    };
    CHECK(not_with([](Axle& a) { a.wheels = Wheels::dual; }));
    CHECK(not_with([](Axle& a) { a.hub = HubKind::grease; }));
    CHECK(not_with([](Axle& a) { a.brake = BrakeKind::electric_drum; }));
    CHECK(not_with([](Axle& a) { a.stud_thread = "5/8-18"; }));
    CHECK(not_with([](Axle& a) { a.model = "another"; }));
    CHECK(not_with([](Axle& a) { a.gawr = make_amount("7000", "[lb_av]").value(); }));
    Torque known = wanted;
    known.target = make_amount("100", kFoot).value();
    CHECK(torque_to_lend(job, known) == nullptr);
}

TEST_CASE("torque: a figure whose unit is in doubt is not lent") {
    Job job = job_of(front_axle());
    job.all<Torque>()[0].target = amount("90", kInchPound);
    CHECK(torque_to_lend(job, wanted_at_rear(6)) == nullptr);
    job.all<Torque>()[0].unit_confirmed = true;
    CHECK(torque_to_lend(job, wanted_at_rear(6)) != nullptr);
}

TEST_CASE("torque: the adapter goes with the wrench of the figure, from a record in the older form too") {
    Job job = job_of(front_axle());
    job.all<Torque>()[0].wrench = "TW-3, adapter 2 in beyond 16 in at 0°";
    const Torque wanted = wanted_at_rear(6);
    const Torque lent = with_lent(wanted, *torque_to_lend(job, wanted));
    CHECK(lent.wrench == "TW-3");
    CHECK(*lent.adapter == crowfoot());
    Torque by_another = wanted;
    by_another.wrench = "TW-1";
    CHECK_FALSE(with_lent(by_another, *torque_to_lend(job, by_another)).adapter.has_value());
}

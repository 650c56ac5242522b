// Torque arithmetic against worked examples on paper, orders across the circle, the next nut, second looks.
#include <doctest/doctest.h>

#include <fmt/format.h>

#include "core/work/amounts.h"
#include "core/work/torque.h"
#include "core/work/torque_check.h"
#include "core/work/torque_progress.h"
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

std::string newton_metres(const char* pound_feet) {
    return torque_in(amount(pound_feet, kFoot), "N.m", 1).value().number.text();
}

Adapter crowfoot(const char* angle) {
    return {amount("2", "[in_i]"), amount("18", "[in_i]"), amount(angle, "deg")};
}

std::string setting(const char* angle) {
    return wrench_setting(amount("120", kFoot), crowfoot(angle)).value().text();
}

std::string joined_order(int studs) {
    std::string out;
    const std::vector<int> order = cross_order(studs).value();
    for (const int nut : order) out += fmt::format("{}{}", out.empty() ? "" : "-", nut);
    return out;
}

std::string settings_of(const char* target) {
    std::string out;
    const TorquePlan plan = plan_torque(8, amount(target, kFoot), "maker's sheet, page 3").value();
    for (const TorqueStage& s : plan.stages)
        out += fmt::format("{}{}", out.empty() ? "" : " / ", s.at_nut.number.text());
    return out;
}

Torque planned_torque() {
    Torque t = sample_torque();
    t.passes.clear();
    for (const char* value : {"24", "60", "120", "120"})
        t.passes.push_back({amount(value, kFoot), {1, 5, 3, 7, 2, 6, 4, 8}});
    return t;
}

std::string words_of(const std::vector<TorqueRemark>& remarks) {
    std::string out;
    for (const TorqueRemark& r : remarks) out += r.words + "\n";
    return out;
}

bool has(const std::vector<TorqueRemark>& remarks, TorqueDifference difference) {
    for (const TorqueRemark& r : remarks)
        if (r.difference == difference) return true;
    return false;
}

}  // namespace

TEST_CASE("worked example, torque units: pound-feet in newton-metres") {
    const std::pair<const char*, const char*> table[] = {
        {"12", "16.3"},   {"40", "54.2"},   {"50", "67.8"},   {"65", "88.1"},   {"90", "122.0"},
        {"120", "162.7"}, {"140", "189.8"}, {"200", "271.2"}, {"275", "372.8"}, {"325", "440.6"},
        {"450", "610.1"}, {"475", "644.0"}, {"500", "677.9"}};
    for (const auto& row : table) CHECK_MESSAGE(newton_metres(row.first) == row.second, row.first);
    CHECK(rounded_text(find_unit(kFoot)->factor, 6) == "1.355818");
    CHECK(rounded_text(find_unit(kInchPound)->factor, 6) == "0.112985");
    CHECK(torque_in(amount("1", kFoot), kInchPound, 0).value().text() == "12 lb-in");
    CHECK(torque_in(amount("450", kInchPound), kFoot, 1).value().text() == "37.5 lb-ft");
    CHECK(torque_in(amount("500", kInchPound), kFoot, 1).value().text() == "41.7 lb-ft");
}

TEST_CASE("worked example, wrench with an adapter: setting for 120 lb-ft, 18 in wrench, 2 in adapter") {
    CHECK(setting("0") == "108.0 lb-ft");
    CHECK(setting("45") == "111.3 lb-ft");
    CHECK(setting("90") == "120.0 lb-ft");
    CHECK(setting("180") == "135.0 lb-ft");
    CHECK(torque_at_nut(amount("120", kFoot), crowfoot("0")).value().text() == "133.3 lb-ft");
    Adapter socket = crowfoot("0");
    socket.length = amount("0", "mm");
    CHECK(wrench_setting(amount("120", kFoot), socket).value().text() == "120.0 lb-ft");
}

TEST_CASE("worked example, torque to clamp: oiled threads stretch the stud a third more") {
    const Amount torque = amount("100", kFoot), stud = amount("1/2", "[in_i]");
    const Unit& pound_force = *find_unit("[lbf_av]");
    const double dry = from_si(clamp_force(torque, 0.20, stud).value(), pound_force);
    const double oiled = from_si(clamp_force(torque, 0.15, stud).value(), pound_force);
    CHECK(rounded_text(dry, 0) == "12000");
    CHECK(rounded_text(oiled, 0) == "16000");
    CHECK(rounded_text(dry / 0.1599 / 1000, 1) == "75.0");
    CHECK(rounded_text(oiled / 0.1599 / 1000, 1) == "100.1");
    CHECK(rounded_text((oiled / dry - 1) * 100, 0) == "33");
}

TEST_CASE("worked example, staged cross sequences for 4, 5, 6, 8 and 10 studs") {
    CHECK(joined_order(4) == "1-3-2-4");
    CHECK(joined_order(5) == "1-3-5-2-4");
    CHECK(joined_order(6) == "1-4-3-6-5-2");
    CHECK(joined_order(8) == "1-5-3-7-2-6-4-8");
    CHECK(joined_order(10) == "1-6-3-8-5-10-2-7-4-9");
    CHECK(angles_between(cross_order(4).value()) == std::vector{180, 90, 180});
    CHECK(angles_between(cross_order(5).value()) == std::vector{144, 144, 144, 144});
    CHECK(angles_between(cross_order(6).value()) == std::vector{180, 60, 180, 60, 180});
    CHECK(angles_between(cross_order(8).value()) == std::vector{180, 90, 180, 135, 180, 90, 180});
    CHECK(angles_between(cross_order(10).value()) == std::vector{180, 108, 180, 108, 180, 72, 180, 108, 180});
    CHECK(settings_of("120") == "24 / 60 / 120 / 120");
    CHECK(settings_of("475") == "95 / 238 / 475 / 475");
}

TEST_CASE("torque: every order names every fastener once") {
    for (const int n : {1, 2, 3, 4, 5, 6, 8, 10}) {
        std::vector<int> order = cross_order(n).value();
        std::sort(order.begin(), order.end());
        for (int i = 0; i < n; ++i) CHECK(order[static_cast<std::size_t>(i)] == i + 1);
    }
}

TEST_CASE("torque: impossible counts, missing sources and wrong units are refused in words") {
    for (const int n : {-1, 0, 7, 9, 11, 24}) CHECK_FALSE(cross_order(n));
    CHECK(cross_order(7).error().line().find("maker's own chart") != std::string::npos);
    CHECK(plan_torque(8, amount("120", kFoot), "").error().line().find("no source") != std::string::npos);
    CHECK(plan_torque(8, amount("120", "mm"), "p. 3").error().line().find("not a torque") != std::string::npos);
    CHECK_FALSE(plan_torque(8, amount("0", kFoot), "p. 3"));
    Adapter bad = crowfoot("200");
    CHECK(wrench_setting(amount("120", kFoot), bad).error().line().find("180") != std::string::npos);
    bad = crowfoot("180");
    bad.length = amount("18", "[in_i]");
    CHECK_FALSE(wrench_setting(amount("120", kFoot), bad));
    bad.wrench_length = amount("0", "[in_i]");
    CHECK_FALSE(wrench_setting(amount("120", kFoot), bad));
    bad.wrench_length = amount("18", "N.m");
    CHECK_FALSE(wrench_setting(amount("120", kFoot), bad));
}

TEST_CASE("torque: the next nut follows the order, through the passes, around what was done out of turn") {
    Torque t = planned_torque();
    const std::vector<Pass> all = t.passes;
    const std::vector<int> order = all[0].tightened;
    t.passes.clear();
    TorqueProgress progress = torque_progress(t);
    CHECK(progress.next == 1);
    CHECK_FALSE(progress.running);
    CHECK(progress.stage_now() == 0U);
    CHECK(progress.stages[0].stage.at_nut.text() == "24 lb-ft");
    t.passes = {{all[0].setting, {1, 3}}};
    progress = torque_progress(t);
    CHECK(progress.next == 5);
    CHECK(progress.running);
    CHECK(progress.stage_now() == 0U);
    CHECK(progress.clicked == std::vector{1, 3});
    t.passes = {all[0]};
    progress = torque_progress(t);
    CHECK(progress.next == 0);
    CHECK(progress.stages[0].done);
    CHECK(progress.stage_now() == 1U);
    t.passes = {all[2]};  // the full value at once: the check pass is next
    CHECK(torque_progress(t).next_stage == 3U);
    t.passes = all;
    progress = torque_progress(t);
    CHECK_FALSE(progress.stage_now().has_value());
    CHECK(progress.stages[3].done);
}

TEST_CASE("torque: a pass is begun with the torque at the nut and what the wrench is set to for it") {
    Torque t = planned_torque();
    t.passes.clear();
    t.adapter = crowfoot("0");
    t = begin_pass(t, amount("120", kFoot)).value();
    CHECK(t.passes[0].setting.text() == "108.0 lb-ft");
    CHECK(at_nut(t.passes[0]).text() == "120 lb-ft");
    t.adapter->wrench_length = amount("0", "mm");
    CHECK_FALSE(begin_pass(t, amount("120", kFoot)));
}

TEST_CASE("torque: pound-feet typed for pound-inches is asked about again") {
    const auto doubt = doubt_seating(NutStyle::castle, amount("450", kFoot));
    REQUIRE(doubt);
    CHECK(doubt->suggestion->text() == "450 lb-in");
    CHECK_FALSE(doubt_seating(NutStyle::castle, amount("450", kInchPound)));
    CHECK_FALSE(doubt_seating(NutStyle::castle, amount("60", kFoot)));
    CHECK(doubt_seating(NutStyle::tab_washer, amount("61", kFoot)));
    CHECK_FALSE(doubt_seating(NutStyle::double_nut, amount("200", kFoot)));
    CHECK(doubt_seating(NutStyle::double_nut, amount("2400", kFoot)));
    const auto swapped = doubt_unit(amount("130", kFoot), amount("130", kInchPound));
    REQUIRE(swapped);
    CHECK(swapped->suggestion->text() == "130 lb-in");
    CHECK(doubt_unit(amount("120", kInchPound), amount("120", kFoot))->suggestion->text() == "120 lb-ft");
    CHECK_FALSE(doubt_unit(amount("60", kFoot), amount("120", kFoot)));
}

TEST_CASE("torque: a wrench's calibration runs out after its interval") {
    const Date day{2026, 5, 14};
    CHECK(check_wrench(Date{2025, 5, 14}, day).state == WrenchState::in_date);
    CHECK(check_wrench(Date{2025, 5, 13}, day).state == WrenchState::overdue);
    CHECK(check_wrench(Date{2025, 5, 13}, day).due == Date{2026, 5, 13});
    CHECK(check_wrench(Date{2026, 1, 9}, day, 90).state == WrenchState::overdue);
    CHECK(check_wrench(Date{2026, 5, 15}, day).state == WrenchState::in_future);
    CHECK(check_wrench(std::nullopt, day).state == WrenchState::unknown);
}

TEST_CASE("torque check: as planned gives no remark") {
    const auto remarks = check_torque(planned_torque());
    CHECK_MESSAGE(remarks.empty(), words_of(remarks));
    CHECK(proves_torque(remarks));
}

TEST_CASE("torque check: each difference is listed and none refused") {
    Torque t = planned_torque();
    t.passes[1].tightened = {1, 2, 3, 4, 5, 6, 7, 8};
    t.passes[2].tightened = {1, 5, 3, 7, 2, 6, 4, 4};
    auto remarks = check_torque(t);
    CHECK(has(remarks, TorqueDifference::not_across));
    CHECK(has(remarks, TorqueDifference::missing_nut));
    CHECK(has(remarks, TorqueDifference::twice));
    CHECK_FALSE(proves_torque(remarks));
    t = planned_torque();
    t.passes = {{amount("120", kFoot), {1, 5, 3, 7, 2, 6, 4, 8}}, {amount("100", kFoot), {1, 5, 3, 7, 2, 6, 4, 8}}};
    remarks = check_torque(t);
    CHECK(has(remarks, TorqueDifference::fewer_passes));
    CHECK(has(remarks, TorqueDifference::other_setting));
    CHECK(has(remarks, TorqueDifference::falling));
    CHECK(has(remarks, TorqueDifference::off_target));
    t = planned_torque();
    t.wrench_calibrated = Date{2020, 1, 1};
    CHECK(has(check_torque(t), TorqueDifference::wrench_not_in_date));
    CHECK(proves_torque(check_torque(t)));
    t.target.reset();
    CHECK(has(check_torque(t), TorqueDifference::no_target));
    t.passes.clear();
    CHECK(has(check_torque(t), TorqueDifference::not_tightened));
}

TEST_CASE("torque check: other orders across are differences but still prove, a skipped check pass does not") {
    Torque t = planned_torque();
    for (Pass& pass : t.passes) pass.tightened = {8, 4, 6, 2, 7, 3, 5, 1};
    CHECK(check_torque(t).size() == 4);
    CHECK(proves_torque(check_torque(t)));
    t.passes.pop_back();
    CHECK_FALSE(proves_torque(check_torque(t)));
}

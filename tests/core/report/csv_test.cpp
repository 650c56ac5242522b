// The tables to the byte.
#include "core/report/csv.h"

#include <doctest/doctest.h>

#include "tests/core/report/samples.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {
constexpr const char* kReadingHead =
    "place,stage,what,taken,reason,point,value,unit,resolution,instrument,note,at,by,reading_id\r\n";
constexpr const char* kTorqueHead =
    "place,joint,fasteners,taken,reason,pass,order,fastener,setting,unit,target,target_unit,target_source,found_note,"
    "wrench,wrench_calibrated,at,by,torque_id,at_nut,at_nut_unit,adapter_length,adapter_length_unit,wrench_length,"
    "wrench_length_unit,adapter_angle,adapter_angle_unit,target_from,unit_confirmed\r\n";
constexpr const char* kLevelHead =
    "place,fluid,product,taken,reason,before_mark,before_offset,before_offset_unit,before_note,added,added_unit,"
    "after_mark,after_offset,after_offset_unit,after_note,settled,settled_unit,at,by,level_id\r\n";

std::string reading_with_note(std::string note) {
    Job job;
    Reading reading = sample_reading();
    reading.points.resize(1);
    reading.note = std::move(note);
    job.all<Reading>() = {reading};
    const std::string csv = readings_csv(job);
    const std::string before =
        std::string(kReadingHead) + "axle1-left,before,pad thickness,measured,,inner,3.20,mm,0.05,caliper C1,";
    const std::string after = ",2026-05-14T08:04:00-05:00,A. Tester,00000000-0000-4000-8000-000000000006\r\n";
    REQUIRE(csv.starts_with(before));
    REQUIRE(csv.ends_with(after));
    return csv.substr(before.size(), csv.size() - before.size() - after.size());
}
}  // namespace

TEST_CASE("readings.csv has one row a point, numbers as entered") {
    CHECK(readings_csv(sample_job()) ==
          std::string(kReadingHead) +
              "axle1-left,before,pad thickness,measured,,inner,3.20,mm,0.05,caliper C1,,2026-05-14T08:04:00-05:00,"
              "A. Tester,00000000-0000-4000-8000-000000000006\r\n"
              "axle1-left,before,pad thickness,measured,,outer,6.9,mm,0.05,caliper C1,,2026-05-14T08:04:00-05:00,"
              "A. Tester,00000000-0000-4000-8000-000000000006\r\n");
}

TEST_CASE("a reading that could not be taken has a row with its reason and no value") {
    Job job;
    Reading reading = sample_reading();
    reading.points.clear();
    reading.taken = Taken::not_accessible;
    reading.reason = "seized, \"no\" way";
    reading.resolution.reset();
    job.all<Reading>() = {reading};
    CHECK(readings_csv(job) ==
          std::string(kReadingHead) +
              "axle1-left,before,pad thickness,not accessible,\"seized, \"\"no\"\" way\",,,,,caliper C1,,"
              "2026-05-14T08:04:00-05:00,A. Tester,00000000-0000-4000-8000-000000000006\r\n");
}

TEST_CASE("texts are quoted only where RFC 4180 asks for it, and never changed") {
    CHECK(reading_with_note("plain é ≤ Ω ü 😀") == "plain é ≤ Ω ü 😀");
    CHECK(reading_with_note("a,b") == "\"a,b\"");
    CHECK(reading_with_note("say \"hot\"") == "\"say \"\"hot\"\"\"");
    CHECK(reading_with_note("two\nlines\r\nthree") == "\"two\nlines\r\nthree\"");
    CHECK(reading_with_note("semi;colon\ttab") == "semi;colon\ttab");
}

TEST_CASE("texts that spreadsheets would run get one apostrophe, and numbers never do") {
    CHECK(reading_with_note("=1+1") == "'=1+1");
    CHECK(reading_with_note("+1") == "'+1");
    CHECK(reading_with_note("-1") == "'-1");
    CHECK(reading_with_note("@SUM(A1)") == "'@SUM(A1)");
    CHECK(reading_with_note("＝1") == "'＝1");
    CHECK(reading_with_note("\t=1") == "'\t=1");
    CHECK(reading_with_note("\r=1") == "\"'\r=1\"");
    CHECK(reading_with_note("'quoted'") == "''quoted'");
    CHECK(reading_with_note("a=1") == "a=1");
    Job job = sample_job();
    CHECK(levels_csv(job).find(",below,-6,mm,") != std::string::npos);
}

TEST_CASE("torques.csv has one row a nut and pass, in the order of the clicks") {
    Job job;
    Torque torque = sample_torque();
    torque.passes[0].tightened = {1, 5};
    torque.passes.push_back({*make_amount("120", "[lbf_av].[ft_i]"), {}});
    job.all<Torque>() = {torque};
    const std::string rest =
        ",120,[lbf_av].[ft_i],\"axle maker's manual, page 12\",,TW-3,2026-01-09,2026-05-14T08:05:00-05:00,A. Tester,"
        "00000000-0000-4000-8000-000000000007,";
    const std::string end = ",[lbf_av].[ft_i],,,,,,,,\r\n";
    CHECK(torques_csv(job) == std::string(kTorqueHead) + "axle1-left,wheel nuts,8,measured,,1,1,1,24,[lbf_av].[ft_i]" +
                                  rest + "24" + end + "axle1-left,wheel nuts,8,measured,,1,2,5,24,[lbf_av].[ft_i]" +
                                  rest + "24" + end + "axle1-left,wheel nuts,8,measured,,2,,,120,[lbf_av].[ft_i]" +
                                  rest + "120" + end);
}

TEST_CASE("torques.csv has the wrench's setting, the torque at the nut and the adapter, each in its own column") {
    Job job;
    Torque torque = sample_torque();
    torque.passes = {{*make_amount("106.7", "[lbf_av].[ft_i]"), {1}, *make_amount("120", "[lbf_av].[ft_i]")}};
    torque.adapter = {*make_amount("2", "[in_i]"), *make_amount("16", "[in_i]"), *make_amount("0", "deg")};
    torque.target_from = Place::corner(1, Side::right);
    torque.unit_confirmed = true;
    job.all<Torque>() = {torque};
    const std::string csv = torques_csv(job);
    CHECK(csv.find(",1,1,1,106.7,[lbf_av].[ft_i],120,") != std::string::npos);
    CHECK(csv.ends_with(",120,[lbf_av].[ft_i],2,[in_i],16,[in_i],0,deg,axle1-right,yes\r\n"));
    // An older record says the same by the words behind the wrench's id.
    torque.adapter.reset();
    torque.wrench = "TW-3, adapter 2 in beyond 16 in at 0°";
    torque.passes = {{*make_amount("120", "[lbf_av].[ft_i]"), {1}}};
    job.all<Torque>() = {torque};
    CHECK(torques_csv(job) == csv);
}

TEST_CASE("levels.csv has one row a level") {
    CHECK(levels_csv(sample_job()) ==
          std::string(kLevelHead) +
              "axle1-left,hub oil,gear oil SAE 90,measured,,below,-6,mm,dark,120,mL,at,,,,10,min,"
              "2026-05-14T08:06:00-05:00,A. Tester,00000000-0000-4000-8000-000000000008\r\n");
}

TEST_CASE("tables of an empty job are their header lines") {
    CHECK(readings_csv(Job{}) == kReadingHead);
    CHECK(torques_csv(Job{}) == kTorqueHead);
    CHECK(levels_csv(Job{}) == kLevelHead);
}

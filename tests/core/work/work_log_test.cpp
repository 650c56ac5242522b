// The work log, and the demo's led work against the procedures it was led by.
#include <doctest/doctest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "core/survey/json.h"
#include "core/work/work_log.h"
#include "tests/core/work/work_yard.h"
#include "tests/support/project_files.h"

using namespace cotter;
using namespace cotter::test;

namespace {

const Place kTrailer = Place::at(Station::trailer);
constexpr const char* kDemoJob = "3f9c1a2b-5d0e-4c7a-9b1f-0c7e5a2d4e61";

// An edit of the demo as the book would hold it: its photos are named by file until they are taken in.
Edit demo_edit(const std::string& line) {
    nlohmann::ordered_json json = nlohmann::ordered_json::parse(line);
    for (auto& change : json["do"]) {
        if (!change.contains("photo_file")) continue;
        change.erase("photo_file");
        change["value"]["photo"] = {
            {"sha256", std::string(64, 'a')}, {"media_type", "image/jpeg"}, {"bytes", 9}, {"width", 4}, {"height", 3}};
    }
    auto edit = edit_from_json(json.dump());
    REQUIRE_MESSAGE(edit, (edit ? "" : edit.error().line()));
    return std::move(*edit);
}

// Puts the edit's records one by one; before each mark, what speaks against it must be nothing.
void follow(const WorkBook& book, Job& job, const Edit& edit) {
    for (const Change& change : edit.changes) {
        Edit one = edit;
        one.changes = {change};
        const Put* put = std::get_if<Put>(&change);
        if (put != nullptr && std::holds_alternative<StepMark>(put->record)) {
            const StepMark& mark = std::get<StepMark>(put->record);
            const auto against = objections(book, job, mark);
            CHECK_MESSAGE(against.empty(),
                          mark.step << " at " << mark.place.text() << ": " << (against.empty() ? "" : against.front()));
        }
        auto after = apply(job, put == nullptr || !std::holds_alternative<StepMark>(put->record) ? edit : one);
        REQUIRE_MESSAGE(after, (after ? "" : after.error().line()));
        job = std::move(*after);
        if (put == nullptr || !std::holds_alternative<StepMark>(put->record)) return;  // went in whole
    }
}

}  // namespace

TEST_CASE("work log: steps, overrides with their reasons, cautions and second looks") {
    const WorkBook book = shipped_work();
    Yard yard({BrakeKind::hydraulic_disc});
    CHECK(work_log(yard.job).empty());
    for (const char* step : {"U1", "U2"}) yard.do_step(book, step, kTrailer);
    StepMark skip = yard.mark(book, "U3", kTrailer, StepWord::overridden);
    skip.reason = "stands on blocks already";
    yard.put(skip);
    StepMark none = yard.mark(book, "U7a", kTrailer, StepWord::not_needed);
    none.reason = "no tow vehicle";
    yard.put(none);
    yard.put(sample_torque());
    const WorkLog log = work_log(yard.job);
    REQUIRE(log.runs.size() == 1);
    CHECK(log.runs[0].done == 2);
    CHECK(log.runs[0].steps == "Know the trailer (as the step asks) · Keep it as found (as the step asks)");
    CHECK(log.runs[0].skipped == "Try the brakes as found (no tow vehicle)");
    CHECK(log.runs[0].by == "A. Tester");
    REQUIRE(log.overrides.size() == 1);
    CHECK(log.overrides[0].step == "Make sure it cannot roll");
    CHECK(log.overrides[0].reason == "stands on blocks already");
    REQUIRE(log.cautions.size() == 2);
    CHECK(log.cautions[0].title == "Traffic, slope, weather, working alone");
    CHECK(log.cautions[0].where == "Know the trailer, trailer");
    REQUIRE(log.checks.size() == 1);
    CHECK(log.checks[0].what == "wheel nuts, 120 lb-ft");
    CHECK_FALSE(log.checks[0].proved);
    CHECK(log.checks[0].remarks.find("the last pass was at 24 lb-ft, the target is 120 lb-ft") != std::string::npos);
}

TEST_CASE("the demo's work keeps to the procedures that led it") {
    const WorkBook book = shipped_work();
    std::ifstream lines(project_file("assets/demo/edits.jsonl"));
    Job job;
    for (std::string line; std::getline(lines, line);)
        if (line.find(std::string("{\"job\":\"") + kDemoJob) == 0) follow(book, job, demo_edit(line));
    const WorkLog log = work_log(job);
    CHECK(log.runs.size() >= 8);
    CHECK(log.overrides.size() == 5);
    CHECK(log.cautions.size() >= 10);
    for (const char* id : {"disc", "bearing", "wheels"})
        for (const StepView& view : procedure_state(book, *book.procedure(id), job, Place::corner(1, Side::left)))
            CHECK_MESSAGE(view.closed(), view.step->id);
    for (const LoggedCheck& check : log.checks)
        if (check.what.find("bleeding") == 0) CHECK_MESSAGE(check.proved, check.remarks);
}

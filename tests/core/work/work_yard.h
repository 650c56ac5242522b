// For the tests of led work: the shipped procedures, and jobs on which steps are marked and proved by hand or by
// machine.
#pragma once

#include <set>
#include <string>
#include <utility>
#include <vector>

#include "core/work/progress.h"
#include "tests/core/survey/sample_job.h"

namespace cotter::test {

// The procedures as shipped; the test stops when they cannot be read.
WorkBook shipped_work();

// A hold of five minutes from one pressure, psi, to another.
Reading hold_of(Reading r, const char* start, const char* end);
// Fifteen minutes, every corner held and turned again, the pin back in.
BreakawayTest breakaway_of(const Trailer& trailer, Id<BreakawayTest> id, Instant at);

// A job of one trailer with one axle for each brake given (grease hubs from the second axle on), and helpers that apply
// edits to it and stop the test when one is refused.
class Yard {
public:
    explicit Yard(const std::vector<BrakeKind>& brakes);

    Job job;
    void put(Record record);
    Instant now();
    Uuid new_id();

    StepMark mark(const WorkBook& book, const std::string& step, const Place& place, StepWord word,
                  const std::string& caution = {});
    void read_cautions(const WorkBook& book, const std::string& step, const Place& place);
    void prove(const Proof& proof, const Place& place);
    // Reads the cautions, proves what is asked and marks the step done; stops the test when there are objections.
    void do_step(const WorkBook& book, const std::string& step, const Place& place);

private:
    void prove_bearing(const Place& place);
    void prove_bleeding();
    void prove_reading(const Proof& proof, const Place& place);
    void prove_looks(const Proof& proof);
    void prove_breakaway();
    Id<Shot> shot(const Place& place, Slot slot, Stage stage);
    int minute_ = 100;
    int id_ = 1000;
};

}  // namespace cotter::test

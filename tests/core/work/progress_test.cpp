// How a job is led: blocks in words, hold points, overrides with a name and a reason, cautions, the owner's answer.
#include <doctest/doctest.h>

#include "core/survey/json.h"
#include "core/work/owner.h"
#include "tests/core/work/work_yard.h"

using namespace cotter;
using namespace cotter::test;

namespace {

const Place kCorner = Place::corner(1, Side::left);
const Place kTrailer = Place::at(Station::trailer);

std::string first(const std::vector<std::string>& words) {
    return words.empty() ? "" : words.front();
}

std::vector<std::string> words_of(const StepView& view) {
    std::vector<std::string> out;
    for (const StepBlock& block : view.blocked_by) out.push_back(block.words);
    return out;
}

bool said(const std::vector<std::string>& lines, const std::string& words) {
    for (const std::string& line : lines)
        if (line.find(words) != std::string::npos) return true;
    return false;
}

// A disc trailer with the wheel of the corner off.
Yard opened(const WorkBook& book) {
    Yard yard({BrakeKind::hydraulic_disc});
    for (const char* step : {"U1", "U2", "U3", "U4"}) yard.do_step(book, step, kTrailer);
    for (const char* step : {"U5", "U6", "U7", "U8"}) yard.do_step(book, step, kCorner);
    return yard;
}

}  // namespace

TEST_CASE("progress: what is open before a step is said in words") {
    const WorkBook book = shipped_work();
    const Yard yard({BrakeKind::hydraulic_disc});
    const StepView lift = step_state(book, "U6", yard.job, kCorner);
    CHECK(lift.state == StepState::blocked);
    CHECK(said(words_of(lift), "first: Break the nuts loose while the tire is still on the ground"));
    CHECK(said(words_of(lift), "first: Make sure it cannot roll"));
    CHECK(step_state(book, "U1", yard.job, kTrailer).state == StepState::possible);
    CHECK(step_state(book, "X9", yard.job, kTrailer).step == nullptr);
}

TEST_CASE("progress: any order that the needs allow") {
    const WorkBook book = shipped_work();
    Yard yard = opened(book);
    for (const char* step : {"D1", "D3", "D4"}) yard.do_step(book, step, kCorner);
    CHECK(step_state(book, "D2", yard.job, kCorner).state == StepState::possible);
    CHECK(step_state(book, "D6", yard.job, kCorner).state == StepState::possible);
    CHECK(step_state(book, "D7", yard.job, kCorner).state == StepState::blocked);
    for (const char* step : {"D6", "D5", "D2"}) yard.do_step(book, step, kCorner);
    CHECK(step_state(book, "D7", yard.job, kCorner).state == StepState::possible);
}

TEST_CASE("progress: a caution must be read before its step is done") {
    const WorkBook book = shipped_work();
    Yard yard({BrakeKind::hydraulic_disc});
    yard.do_step(book, "U1", kTrailer);
    StepMark chocked = yard.mark(book, "U3", kTrailer, StepWord::done);
    chocked.note = "chocks both ways, uncoupled";
    CHECK(said(objections(book, yard.job, chocked), "The trailer can roll"));
    REQUIRE(step_state(book, "U3", yard.job, kTrailer).cautions.size() == 1);
    yard.read_cautions(book, "U3", kTrailer);
    CHECK(step_state(book, "U3", yard.job, kTrailer).cautions.empty());
    CHECK(objections(book, yard.job, chocked).empty());
    chocked.note.clear();
    CHECK(said(objections(book, yard.job, chocked), "Do not go on while it can roll"));
}

TEST_CASE("progress: the other side of the axle must be complete, or a named person says why not") {
    const WorkBook book = shipped_work();
    Yard yard = opened(book);
    for (const char* step : {"D1", "D2", "D3", "D4", "D5", "D6", "D7"}) yard.do_step(book, step, kCorner);
    StepMark skip = yard.mark(book, "D8", kCorner, StepWord::not_needed);
    CHECK(said(objections(book, yard.job, skip), "say why"));
    skip.reason = "the hub stays on";
    CHECK(objections(book, yard.job, skip).empty());
    yard.put(skip);
    for (const char* step : {"D9", "D10", "D11", "D12"}) yard.do_step(book, step, kCorner);
    CHECK(said(words_of(step_state(book, "D13", yard.job, kCorner)), "first, at axle1-right: "));
    StepMark mark = yard.mark(book, "D13", kCorner, StepWord::overridden);
    CHECK(first(objections(book, yard.job, mark)).find("reason") != std::string::npos);
    CHECK_FALSE(apply(yard.job, edit_of({Put{mark, {}}}, 900)));
    mark.reason = "customer refuses the right side; told of the pull";
    CHECK(objections(book, yard.job, mark).empty());
    yard.put(mark);
    const StepView view = step_state(book, "D13", yard.job, kCorner);
    CHECK(view.state == StepState::overridden);
    CHECK(view.mark->by == "A. Tester");
    CHECK(step_state(book, "F2", yard.job, kTrailer).blocked_by.size() == 1);  // F1 only
}

TEST_CASE("progress: a hold point stays held without its proof, and a done one is doubtful when the proof goes") {
    const WorkBook book = shipped_work();
    Yard yard({BrakeKind::none});
    for (const char* step : {"U1", "U3"}) yard.do_step(book, step, kTrailer);
    for (const char* step : {"U5", "U6", "U7", "U8"}) yard.do_step(book, step, kCorner);
    for (const char* step : {"W1", "W2", "W3", "W4", "W5"}) yard.do_step(book, step, kCorner);
    const StepView held = step_state(book, "W6", yard.job, kCorner);
    CHECK(held.state == StepState::held);
    CHECK(first(held.missing_proof) == "every nut at the manufacturer's torque, and a check round");
    CHECK(said(objections(book, yard.job, yard.mark(book, "W6", kCorner, StepWord::done)),
               "This wheel is not finished without the manufacturer's torque"));
    yard.do_step(book, "W6", kCorner);
    CHECK_FALSE(step_state(book, "W6", yard.job, kCorner).doubtful());
    Torque worse = yard.job.all<Torque>().front();
    worse.target.reset();
    worse.target_source.clear();
    yard.put(worse);
    CHECK(step_state(book, "W6", yard.job, kCorner).doubtful());
}

TEST_CASE("progress: end play by feel never closes the bearing") {
    const WorkBook book = shipped_work();
    Yard yard = opened(book);
    for (const char* step : {"D1", "D3", "D4"}) yard.do_step(book, step, kCorner);
    for (const char* step : {"B1", "B2", "B3", "B4", "B5", "B6", "B7", "B8", "B9"}) yard.do_step(book, step, kCorner);
    Reading feel = sample_reading();
    feel.id = {yard.new_id()};
    feel.what = "end play";
    feel.taken = Taken::not_measured;
    feel.reason = "by feel";
    feel.points.clear();
    yard.put(feel);
    BearingSetting s;
    s.id = {yard.new_id()};
    s.place = kCorner;
    s.tries = {{0, feel.id}};
    s.at = yard.now();
    s.by = "A. Tester";
    yard.put(s);
    CHECK(step_state(book, "B10", yard.job, kCorner).state == StepState::held);
    yard.do_step(book, "B10", kCorner);
    CHECK(step_state(book, "B10", yard.job, kCorner).state == StepState::done);
    CHECK(step_state(book, "B12g", yard.job, kCorner).state == StepState::other_hub);
}

TEST_CASE("progress: marks of steps and places that are not there are refused in words") {
    const WorkBook book = shipped_work();
    Yard yard({BrakeKind::hydraulic_disc});
    StepMark m = yard.mark(book, "U1", kTrailer, StepWord::done);
    m.step = "D99";
    CHECK(said(objections(book, yard.job, m), "has no such step"));
    m = yard.mark(book, "E2", kCorner, StepWord::done);
    CHECK(said(objections(book, yard.job, m), "is not done at axle1-left"));
    m = yard.mark(book, "U1", kTrailer, StepWord::not_needed);
    m.reason = "no time";
    CHECK(said(objections(book, yard.job, m), "always needed"));
    m = yard.mark(book, "U5", kCorner, StepWord::done);
    m.place.wheel = Wheel::inner;
    CHECK(said(objections(book, yard.job, m), "name the corner"));
    m = yard.mark(book, "U1", kTrailer, StepWord::caution_read);
    m.caution = "hot";
    CHECK(said(objections(book, yard.job, m), "no caution 'hot'"));
    m.caution.clear();
    CHECK_FALSE(apply(yard.job, edit_of({Put{m, {}}}, 900)));
}

TEST_CASE("progress: marks go through JSON and undo like any record") {
    const WorkBook book = shipped_work();
    Yard yard = opened(book);
    StepMark m = yard.mark(book, "D1", kCorner, StepWord::done);
    m.shots = {yard.job.all<Shot>().front().id};
    const Edit edit = edit_of({Put{m, {}}}, 901);
    const Job after = apply(yard.job, edit).value();
    CHECK(apply(after, inverse(yard.job, edit)).value() == yard.job);
    CHECK(job_from_json(job_json(after)).value() == after);
    CHECK(edit_from_json(edit_json(edit)).value() == edit);
    Job gone = after;
    m.shots = {{numbered(99'999)}};
    CHECK_FALSE(apply(gone, edit_of({Put{m, {}}}, 902)));
}

TEST_CASE("progress: a mark of a done step names what proves it, each once, and nothing that proves nothing") {
    const WorkBook book = shipped_work();
    Yard yard = opened(book);
    for (const char* step : {"D1", "D3", "D4"}) yard.do_step(book, step, kCorner);
    StepMark pads = yard.mark(book, "D5", kCorner, StepWord::done);
    attach_evidence(book, yard.job, pads);
    CHECK(pads.shots.empty());
    CHECK(pads.readings.empty());
    for (const Proof& proof : book.step("D5").step->proofs) yard.prove(proof, kCorner);
    attach_evidence(book, yard.job, pads);
    attach_evidence(book, yard.job, pads);
    REQUIRE(pads.readings.size() == 1);
    CHECK(yard.job.find(pads.readings[0])->what == "pad thickness");
    REQUIRE(pads.shots.size() == 1);
    CHECK(yard.job.find(pads.shots[0])->slot == Slot::lining);
    StepMark passed = yard.mark(book, "D5", kCorner, StepWord::overridden);
    attach_evidence(book, yard.job, passed);
    CHECK(passed.shots.empty());
    for (const char* step : {"B1", "B2", "B3", "B4", "B5", "B6", "B7", "B8", "B9", "B10"})
        yard.do_step(book, step, kCorner);
    StepMark lock = yard.mark(book, "B11", kCorner, StepWord::done);
    attach_evidence(book, yard.job, lock);
    CHECK(lock.readings.size() == 1);  // the dial
    CHECK(lock.shots.size() == 1);     // the lock
    StepMark oil = yard.mark(book, "B12", kCorner, StepWord::done);
    for (const Proof& proof : book.step("B12").step->proofs) yard.prove(proof, kCorner);
    attach_evidence(book, yard.job, oil);
    CHECK(oil.levels.size() == 1);
}

TEST_CASE("owner: a bad answer makes the finding that its step names") {
    const WorkBook book = shipped_work();
    const auto nuts = finding_of(*book.step("O3").step, kCorner, {numbered(701)}, moment(701), "Owner");
    REQUIRE(nuts);
    CHECK(nuts->component == "wheel nuts");
    CHECK(nuts->grade == Grade::do_not_tow);
    CHECK_FALSE(finding_of(*book.step("U1").step, kCorner, {numbered(702)}, moment(702), "Owner"));
}

TEST_CASE("owner: a mark that says no answer, as programs before made it, is told by the question's finding") {
    const WorkBook book = shipped_work();
    Yard yard({BrakeKind::hydraulic_disc});
    for (const char* step : {"U1", "U2", "U3"}) yard.do_step(book, step, kTrailer);
    yard.do_step(book, "O1", kCorner);
    REQUIRE_FALSE(yard.job.all<StepMark>().back().answer.has_value());
    CHECK(step_state(book, "O1", yard.job, kCorner).answer == StepAnswer::looks_good);
    CHECK_FALSE(step_state(book, "U1", yard.job, kTrailer).answer.has_value());  // it asks nothing
    yard.put(*finding_of(*book.step("O1").step, kCorner, {numbered(700)}, moment(700), "Owner"));
    const StepView tire = step_state(book, "O1", yard.job, kCorner);
    CHECK(tire.answer == StepAnswer::something_wrong);
    REQUIRE(tire.finding != nullptr);
    CHECK(tire.finding->id.uuid == numbered(700));
    CHECK(step_state(book, "O1", yard.job, Place::corner(1, Side::right)).answer == std::nullopt);
}

TEST_CASE("owner: sees only the owner's procedures and steps") {
    const WorkBook book = shipped_work();
    const Yard yard({BrakeKind::hydraulic_disc});
    CHECK(procedure_state(book, *book.procedure("bearing"), yard.job, kCorner, Mode::owner).empty());
    CHECK(procedure_state(book, *book.procedure("start"), yard.job, kTrailer, Mode::owner).size() == 4);
    CHECK(procedure_state(book, *book.procedure("start"), yard.job, kTrailer).size() == 6);
}

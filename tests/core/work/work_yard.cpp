// The yard of the tests of led work.
#include "tests/core/work/work_yard.h"

#include <doctest/doctest.h>

#include "core/work/torque.h"
#include "platform/desktop/ports.h"

namespace cotter::test {

namespace {

Amount amount(const char* number, const char* unit) {
    return make_amount(number, unit).value();
}

PipeRoute straight_pipes(const Job& job) {
    PipeRoute route;
    for (const Place& corner : job.only<Trailer>()->corners()) {
        const std::string length = std::to_string(2 * corner.axle) + (corner.side == Side::left ? ".1" : ".6");
        route.legs.push_back({"actuator", corner.text(), amount(length.c_str(), "m"), std::nullopt});
    }
    return route;
}

Torque torque_of(const std::string& joint, const Place& place) {
    Torque t = sample_torque();
    t.joint = joint;
    t.place = place;
    t.passes.clear();
    const TorquePlan plan = plan_torque(t.fasteners, *t.target, t.target_source).value();
    for (const TorqueStage& stage : plan.stages) t.passes.push_back({stage.at_nut, plan.order});
    return t;
}

}  // namespace

Reading hold_of(Reading r, const char* start, const char* end) {
    r.what = "pressure hold";
    r.place = Place::at(Station::actuator);
    r.unit = "[psi]";
    r.points = {{"start", Number::parse(start).value()}, {"after 5 min", Number::parse(end).value()}};
    r.resolution.reset();
    return r;
}

BreakawayTest breakaway_of(const Trailer& trailer, Id<BreakawayTest> id, Instant at) {
    BreakawayTest test;
    test.id = id;
    test.started = at;
    test.ended = at;
    test.ended->unix_s += 15 * 60;
    for (const Place& corner : trailer.corners())
        test.wheels.push_back({corner, Held::holds, Held::holds, Held::turns});
    test.pin_in_again = true;
    test.at = *test.ended;
    test.by = "A. Tester";
    return test;
}

WorkBook shipped_work() {
    auto files = make_system_files();
    auto book = load_work_book(*files, COTTER_SOURCE_DIR "/assets/procedures");
    REQUIRE_MESSAGE(book, (book ? "" : book.error().line()));
    return std::move(*book);
}

Yard::Yard(const std::vector<BrakeKind>& brakes) {
    Trailer trailer = sample_trailer();
    trailer.axles.clear();
    for (const BrakeKind brake : brakes) {
        Axle axle;
        axle.brake = brake;
        axle.hub = trailer.axles.empty() ? HubKind::oil_bath : HubKind::grease;
        axle.studs = 8;
        axle.stud_thread = "9/16-18";
        trailer.axles.push_back(std::move(axle));
    }
    job = apply({}, edit_of({Put{sample_visit(), {}}, Put{trailer, {}}}, 1)).value();
}

Instant Yard::now() {
    return moment(++minute_);
}

Uuid Yard::new_id() {
    return numbered(++id_);
}

void Yard::put(Record record) {
    auto after = apply(job, edit_of({Put{std::move(record), {}}}, ++minute_));
    REQUIRE_MESSAGE(after, (after ? "" : after.error().line()));
    job = std::move(*after);
}

StepMark Yard::mark(const WorkBook& book, const std::string& step, const Place& place, StepWord word,
                    const std::string& caution) {
    REQUIRE_MESSAGE(book.step(step).step != nullptr, step);
    return new_mark(book, step, place, word, {{new_id()}, now(), "A. Tester"}, caution);
}

void Yard::read_cautions(const WorkBook& book, const std::string& step, const Place& place) {
    for (const Caution* caution : step_state(book, step, job, place).cautions) {
        const StepMark m = mark(book, step, place, StepWord::caution_read, caution->id);
        CHECK(objections(book, job, m).empty());
        put(m);
    }
}

Id<Shot> Yard::shot(const Place& place, Slot slot, Stage stage) {
    Shot s = sample_shot();
    s.id = {new_id()};
    s.place = place;
    s.slot = slot;
    s.stage = stage;
    s.added = now();
    put(s);
    return s.id;
}

void Yard::prove_bearing(const Place& place) {
    Reading dial = sample_reading();
    dial.id = {new_id()};
    dial.place = place;
    dial.what = "end play";
    dial.stage = Stage::after;
    dial.unit = "[in_i]";
    dial.resolution.reset();
    const ReadingPoint point{"", Number::parse("0.0030").value()};
    dial.points = {point, point, point};
    dial.at = now();
    put(dial);
    BearingSetting s;
    s.id = {new_id()};
    s.place = place;
    s.source = "axle maker's sheet, page 9";
    s.play_min = amount("0.001", "[in_i]");
    s.play_max = amount("0.005", "[in_i]");
    s.tries = {{0, dial.id}};
    s.new_lock = true;
    s.lock_shot = shot(place, Slot::bearing, Stage::after);
    s.at = now();
    s.by = "A. Tester";
    put(s);
}

void Yard::prove_bleeding() {
    for (const Place& corner : job.only<Trailer>()->corners())
        put(BleedCount{{new_id()}, corner, amount("120", "mL"), true, false, "DOT 4", "", now(), "A. Tester"});
}

void Yard::prove_reading(const Proof& proof, const Place& place) {
    Reading r = sample_reading();
    r.id = {new_id()};
    r.place = place;
    r.what = proof.what;
    r.stage = proof.stage.value_or(Stage::before);
    if (proof.what == "pressure hold") r = hold_of(std::move(r), "1000", "950");
    r.at = now();
    put(r);
}

// At every tire or hub; single wheels only.
void Yard::prove_looks(const Proof& proof) {
    for (const Place& corner : job.only<Trailer>()->corners()) {
        Look look;
        look.id = {new_id()};
        look.point = proof.what;
        look.place = corner;
        look.reach = Reach::wheel_on;
        look.at = now();
        look.by = "A. Tester";
        put(look);
    }
}

void Yard::prove_breakaway() {
    put(breakaway_of(*job.only<Trailer>(), {new_id()}, now()));
}

void Yard::prove(const Proof& proof, const Place& place) {
    if (proof.every && proof.kind == ProofKind::reading)
        for (const Place& corner : job.only<Trailer>()->corners()) prove_reading(proof, corner);
    else if (proof.kind == ProofKind::reading)
        prove_reading(proof, place);
    if (proof.kind == ProofKind::look) prove_looks(proof);
    if (proof.kind == ProofKind::breakaway) prove_breakaway();
    const Stage stage = proof.stage.value_or(Stage::before);
    if (proof.kind == ProofKind::shot) shot(place, from_name<Slot>(proof.what).value(), stage);
    if (proof.kind == ProofKind::torque) {
        Torque t = torque_of(proof.what, place);
        t.id = {new_id()};
        t.at = now();
        put(t);
    }
    if (proof.kind == ProofKind::level) {
        Level l = sample_level();
        l.id = {new_id()};
        l.place = place;
        l.fluid = proof.what;
        l.at = now();
        put(l);
    }
    if (proof.kind == ProofKind::bearing) prove_bearing(place);
    if (proof.kind == ProofKind::bleeding) prove_bleeding();
    if (proof.kind == ProofKind::route) {
        PipeRoute route = straight_pipes(job);
        route.id = {new_id()};
        route.at = now();
        route.by = "A. Tester";
        put(route);
    }
}

void Yard::do_step(const WorkBook& book, const std::string& step, const Place& place) {
    read_cautions(book, step, place);
    StepMark m = mark(book, step, place, StepWord::done);
    m.note = "as the step asks";
    for (const Proof& proof : book.step(step).step->proofs)
        if (!holds_proof(job, proof, m.place, &m)) prove(proof, m.place);
    const auto against = objections(book, job, m);
    REQUIRE_MESSAGE(against.empty(),
                    step << " at " << place.text() << ": " << (against.empty() ? "" : against.front()));
    m.at = now();
    put(m);
}

}  // namespace cotter::test

// The shipped procedures: sound as data, every caution in its place, and a whole job led through to its end.
#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <iostream>
#include <map>

#include "core/base/text.h"
#include "tests/core/work/work_yard.h"

using namespace cotter;
using namespace cotter::test;

namespace {

// A book of one trailer's procedure with these steps.
WorkBook small(std::vector<Step> steps) {
    WorkBook book;
    book.cautions = {{"hot", 1, "Hot", "it burns", "let it cool", "practice"}};
    book.procedures = {
        {"p", "A procedure", "plain", Scope::trailer, {}, {}, false, true, "practice", std::move(steps)}};
    return book;
}

StepNeed need(const char* step) {
    StepNeed out;
    out.step = step;
    return out;
}

Step bare(const char* id, std::vector<StepNeed> needs = {}) {
    Step s;
    s.id = id;
    s.title = "a step";
    s.needs = std::move(needs);
    return s;
}

std::string defect(std::vector<Step> steps) {
    const auto defects = defects_of(small(std::move(steps)));
    return defects.empty() ? "" : defects.front();
}

std::map<std::string, std::vector<std::string>> steps_by_caution(const WorkBook& book) {
    std::map<std::string, std::vector<std::string>> out;
    for (const Procedure& p : book.procedures)
        for (const Step& s : p.steps)
            for (const std::string& caution : s.cautions) out[caution].push_back(s.id);
    return out;
}

// Takes the first step that can be closed anywhere; false when there is none.
bool close_one(const WorkBook& book, Yard& yard, std::vector<std::string>& log) {
    for (const Procedure& procedure : book.procedures)
        for (const Place& place : places_of(procedure, yard.job)) {
            const auto steps = procedure_state(book, procedure, yard.job, place);
            const StepView* next = next_step(steps);
            if (next == nullptr) continue;
            for (const Caution* caution : next->cautions)
                log.push_back(next->step->id + " at " + place.text() + " -> " + caution->title);
            yard.do_step(book, next->step->id, place);
            return true;
        }
    return false;
}

}  // namespace

TEST_CASE("procedures: the shipped ones have no defect, and the words a person needs") {
    const WorkBook book = shipped_work();
    CHECK(defects_of(book).empty());
    CHECK(book.standing.find("certifies nothing") != std::string::npos);
    for (const Procedure& p : book.procedures) {
        CHECK_FALSE(p.title.empty());
        CHECK_FALSE(p.source.empty());
        for (const Step& s : p.steps) {
            CHECK_FALSE(s.title.empty());
            for (const Proof& proof : s.proofs) CHECK_MESSAGE(!proof.words.empty(), s.id);
            for (const Proof& proof : s.proofs)
                if (proof.kind == ProofKind::shot) CHECK_MESSAGE(from_name<Slot>(proof.what), s.id);
        }
    }
    for (const BearingMethod& m : book.bearing_methods) CHECK(m.source.find("maker") != std::string::npos);
}

TEST_CASE("procedures: each of the cautions stands at a step") {
    const WorkBook book = shipped_work();
    CHECK(book.cautions.size() == 24);
    const auto steps = steps_by_caution(book);
    for (const Caution& caution : book.cautions) {
        CHECK_FALSE(
            (caution.title.empty() || caution.danger.empty() || caution.require.empty() || caution.source.empty()));
        const auto it = steps.find(caution.id);
        CHECK_MESSAGE(it != steps.end(), caution.id << " stands at no step");
        if (it == steps.end()) continue;
        std::cout << "caution " << caution.number << " " << caution.id << ":";
        for (const std::string& step : it->second) std::cout << " " << step;
        std::cout << "\n";
    }
}

TEST_CASE("procedures: the table of cautions and steps in the newcomer's map is the data's") {
    std::map<std::string, std::string> written;
    std::ifstream map(COTTER_SOURCE_DIR "/DEVELOPERS.md");
    for (std::string line; std::getline(map, line);) {
        const auto id = line.find("| `"), end = line.find("` | ");
        if (id == std::string::npos || end == std::string::npos || id == 0) continue;  // a row of three with an id amid
        const auto start = end + 4, last = line.rfind(" |");
        written[line.substr(id + 3, end - id - 3)] = line.substr(start, last - start);
    }
    for (const auto& [caution, steps] : steps_by_caution(shipped_work())) {
        std::string words;
        for (const std::string& step : steps) words += (words.empty() ? "" : " ") + step;
        const std::string& shown = caution;  // a lambda of clang 14 cannot capture a structured binding
        CHECK_MESSAGE(written[shown] == words, shown);
    }
}

TEST_CASE("procedures: every hold point says its words and what it wants") {
    const WorkBook book = shipped_work();
    int holds = 0;
    for (const Procedure& p : book.procedures)
        for (const Step& s : p.steps) {
            if (s.hold.empty()) continue;
            ++holds;
            CHECK_MESSAGE(s.hold.size() > 20, s.id);
            CHECK_MESSAGE(!s.proofs.empty(), s.id);
        }
    CHECK(holds >= 20);
}

TEST_CASE("procedures: owners open no hub, and every step of theirs has plain words") {
    const WorkBook book = shipped_work();
    int owner_steps = 0;
    for (const Procedure& p : book.procedures) {
        CHECK_FALSE((p.owner && p.opens_hub));
        for (const Step& s : p.steps) {
            if (!s.owner) continue;
            ++owner_steps;
            CHECK_MESSAGE(!s.plain.empty(), s.id);
            CHECK_MESSAGE(ascii_lower(s.title + s.plain).find("end play") == std::string::npos, s.id);
        }
    }
    CHECK(owner_steps >= 20);
    CHECK_FALSE(book.procedure("bearing")->owner);
    CHECK_FALSE(book.procedure("disc")->owner);
    CHECK_FALSE(book.procedure("electric-drum")->owner);
}

TEST_CASE("procedures: defects of data are found and said") {
    StepNeed all{"B", StepReach::all, false, {}, {}};
    CHECK(defect({bare("A"), bare("A")}).find("used twice") != std::string::npos);
    CHECK(defect({bare("A", {need("X")})}).find("does not exist") != std::string::npos);
    CHECK(defect({bare("A", {need("B")}), bare("B", {need("C")}), bare("C", {need("A")})}).find("circle") !=
          std::string::npos);
    CHECK(defect({bare("A", {need("A")})}).find("circle") != std::string::npos);
    CHECK(defect({bare("A", {all}), bare("B")}).find("not done at corners") != std::string::npos);
    Step s = bare("A");
    s.cautions = {"cold"};
    CHECK(defect({s}).find("no caution 'cold'") != std::string::npos);
    s = bare("A");
    s.hold = "stop";
    CHECK(defect({s}).find("without anything to prove") != std::string::npos);
    s = bare("A", {need("B")});
    s.owner = true;
    s.plain = "do it";
    CHECK(defect({s, bare("B")}).find("owners see it, but not B") != std::string::npos);
    s.plain.clear();
    CHECK(defect({s, bare("B")}).find("no plain words") != std::string::npos);
    CHECK(defect({bare("A"), bare("B", {need("A")})}) == "");
    const auto unread =
        procedure_from_json(R"({"id":"x","title":"t","plain":"p","scope":"moon","source":"s","steps":[]})");
    REQUIRE_FALSE(unread);
    CHECK(unread.error().line().find("scope") != std::string::npos);
}

TEST_CASE("procedures: a whole job can be led to its end, and meets every caution on its way") {
    const WorkBook book = shipped_work();
    Yard yard({BrakeKind::hydraulic_disc, BrakeKind::electric_drum, BrakeKind::hydraulic_drum});
    std::vector<std::string> log;
    while (close_one(book, yard, log)) REQUIRE(yard.job.all<StepMark>().size() < 2000);
    Yard air({BrakeKind::air_cam});
    while (close_one(book, air, log)) REQUIRE(air.job.all<StepMark>().size() < 2000);
    for (const std::string& line : log)
        if (line.find("axle1-right") == std::string::npos) std::cout << line << "\n";
    for (const Procedure& procedure : book.procedures)
        for (const Place& place : places_of(procedure, yard.job))
            for (const StepView& view : procedure_state(book, procedure, yard.job, place)) {
                CHECK_MESSAGE(view.closed(), view.step->id
                                                 << " at " << place.text() << " was never reached: "
                                                 << (view.blocked_by.empty() ? "" : view.blocked_by.front().words));
                CHECK_FALSE(view.doubtful());
            }
    for (const Caution& caution : book.cautions)
        CHECK_MESSAGE(
            std::any_of(log.begin(), log.end(), [&](const auto& line) { return line.ends_with(caution.title); }),
            caution.id);
}

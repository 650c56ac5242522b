// The book against the pure functions: whatever it answers and stores must be what apply() and inverse() say.
#include "tests/core/book/book_bench.h"
#include "tests/support/effort.h"

using namespace cotter;
using namespace cotter::test;

namespace {

// What the book should do, in memory, by the pure functions alone.
struct Model {
    struct Step {
        Edit edit, inverse;
    };
    Job job;
    std::vector<Step> undo, redo;

    void commit(const Edit& edit) {
        const Edit back = inverse(job, edit);
        const bool opens = job.only<Visit>() == nullptr;
        job = good(apply(job, edit));
        if (!opens) undo.push_back({edit, back});
        redo.clear();
    }
    void step_back(const Instant& at) { move(undo, redo, undo.back().inverse, at); }
    void step_forward(const Instant& at) { move(redo, undo, redo.back().edit, at); }

private:
    void move(std::vector<Step>& from, std::vector<Step>& to, Edit edit, const Instant& at) {
        edit.at = at;
        edit.reason.clear();
        job = good(apply(job, edit));
        to.push_back(from.back());
        from.pop_back();
    }
};

// The book and its model, always taking the same step.
struct Pair {
    BookBench bench;
    EditMaker maker{20260514};
    Model model;

    void commit(const Edit& edit) {
        model.commit(edit);
        REQUIRE(good(bench.book->commit(edit)) == model.job);
    }
    void undo() {
        const Instant at = maker.moment();
        model.step_back(at);
        REQUIRE(good(bench.book->undo(maker.job(), at, "A. Tester")) == model.job);
    }
    void redo() {
        const Instant at = maker.moment();
        model.step_forward(at);
        REQUIRE(good(bench.book->redo(maker.job(), at, "A. Tester")) == model.job);
    }
    void check_disk() {
        bench.open();
        REQUIRE(good(bench.book->load(maker.job())) == model.job);
    }
};

}  // namespace

TEST_CASE("book: random steps agree with the pure functions, back to the first and forward again") {
    Pair pair;
    const Edit opening = pair.maker.opening();
    pair.commit(opening);
    int undone = 0, redone = 0;
    const int steps = few() ? 500 : 2'000;
    for (int i = 0; i < steps; ++i) {
        const std::size_t dice = pair.maker.below(10);
        if (dice < 2 && !pair.model.undo.empty())
            pair.undo(), ++undone;
        else if (dice < 5 && !pair.model.redo.empty())
            pair.redo(), ++redone;
        else
            pair.commit(pair.maker.next(pair.model.job));
        if (i % 100 == 0) pair.check_disk();
    }
    CHECK(undone > steps / 20);
    CHECK(redone > steps / 20);
    const Job end = pair.model.job;
    while (!pair.model.undo.empty()) pair.undo();
    CHECK(pair.model.job == good(apply(Job{}, opening)));
    pair.check_disk();
    while (!pair.model.redo.empty()) pair.redo();
    CHECK(pair.model.job == end);
    pair.check_disk();
    good(pair.bench.book->verify());
}

TEST_CASE("book: with nothing to undo or redo it says so, and a new edit ends what can be redone") {
    BookBench bench;
    EditMaker maker(1);
    (void)good(bench.book->commit(maker.opening()));
    const auto undo = bench.book->undo(maker.job(), maker.moment(), "A. Tester");
    REQUIRE_FALSE(undo);
    CHECK(undo.error().code == Errc::not_found);
    CHECK(undo.error().line() == "there is nothing to undo: " + maker.job().text());
    const Job opened = good(bench.book->load(maker.job()));
    const Job changed = good(bench.book->commit(maker.big(10)));
    CHECK(good(bench.book->undo(maker.job(), maker.moment(), "A. Tester")) == opened);
    CHECK(good(bench.book->redo(maker.job(), maker.moment(), "A. Tester")) == changed);
    CHECK(good(bench.book->undo(maker.job(), maker.moment(), "A. Tester")) == opened);
    (void)good(bench.book->commit(maker.big(20)));
    const auto redo = bench.book->redo(maker.job(), maker.moment(), "A. Tester");
    REQUIRE_FALSE(redo);
    CHECK(redo.error().line() == "there is nothing to redo: " + maker.job().text());
    CHECK(bench.book->undo(JobId{}, maker.moment(), "A. Tester").error().line() ==
          "there is no such job in the book: 00000000-0000-0000-0000-000000000000");
}

TEST_CASE("book: after sign-off an undo is an amendment, and the sign-off stays") {
    BookBench bench;
    EditMaker maker(2);
    (void)good(bench.book->commit(maker.opening()));
    const Job signed_off = good(bench.book->commit(maker.sign_off()));
    Edit correction = maker.big(10);
    correction.reason = "misread";
    const Job corrected = good(bench.book->commit(correction));
    const Job undone = good(bench.book->undo(maker.job(), maker.moment(), "B. Tester"));
    CHECK(undone.records == signed_off.records);
    REQUIRE(undone.amendments.size() == 2);
    CHECK(undone.amendments[0] == corrected.amendments[0]);
    CHECK(undone.amendments[1].reason == "undone: misread");
    CHECK(undone.amendments[1].by == "B. Tester");
    CHECK(undone.amendments[1].old_value == corrected.amendments[0].new_value);
    const auto too_far = bench.book->undo(maker.job(), maker.moment(), "B. Tester");
    REQUIRE_FALSE(too_far);
    CHECK(too_far.error().code == Errc::refused);
    CHECK(too_far.error().what == "a sign-off cannot be changed or taken back");
    const Job redone = good(bench.book->redo(maker.job(), maker.moment(), "A. Tester"));
    CHECK(redone.records == corrected.records);
    CHECK(redone.amendments.back().reason == "done again: misread");
    bench.open();
    CHECK(good(bench.book->load(maker.job())) == redone);
    good(bench.book->verify());
}

TEST_CASE("book: what is refused changes nothing") {
    BookBench bench;
    EditMaker maker(3);
    CHECK(bench.book->commit(maker.big(1)).error().code == Errc::refused);  // no visit yet
    CHECK(good(bench.book->jobs()).empty());
    const Job before = good(bench.book->commit(maker.opening()));
    Edit dangling = maker.next(before);
    dangling.changes = {Put{Tag{{dangling.job.uuid}, {}, {}, TagShape::point, {{0, 0}}}, {}}};
    CHECK(bench.book->commit(dangling).error().code == Errc::refused);
    Edit unwritable = maker.big(5);
    unwritable.by = "A\xff";
    CHECK(bench.book->commit(unwritable).error().what == "the edit holds a value that cannot be written down");
    CHECK(good(bench.book->load(maker.job())) == before);
    CHECK(good(bench.book->journal(maker.job())).size() == 1);
    bench.open();
    CHECK(good(bench.book->load(maker.job())) == before);
}

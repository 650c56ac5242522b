// The book against the pure functions: whatever it answers and stores must be what apply() and inverse() say.
#include <doctest/doctest.h>

#include "core/book/book.h"
#include "platform/desktop/ports.h"
#include "tests/core/book/edit_maker.h"
#include "tests/core/book/temp_folder.h"
#include "tests/support/fault_vfs.h"

using namespace cotter;
using namespace cotter::test;

namespace {

struct Bench {
    TempFolder folder;
    std::unique_ptr<Files> files = make_system_files();
    FaultVfs vfs;
    std::unique_ptr<Book> book;

    Bench() { open(); }
    void open() {
        book.reset();
        auto opened = Book::open(*files, folder.path(), OpenMode::create, vfs.name());
        REQUIRE_MESSAGE(opened, opened.error().line());
        book = std::move(*opened);
    }
};

template <class T>
T good(Result<T> result) {
    REQUIRE_MESSAGE(result, result.error().line());
    return std::move(*result);
}

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
    void move(std::vector<Step>& from, std::vector<Step>& to, bool back, const Instant& at, const std::string& reason) {
        Edit edit = back ? from.back().inverse : from.back().edit;
        edit.at = at;
        edit.reason = reason;
        job = good(apply(job, edit));
        to.push_back(from.back());
        from.pop_back();
    }
};

}  // namespace

TEST_CASE("book: 2,000 random steps agree with the pure functions, back to the first and forward again") {
    Bench bench;
    EditMaker maker(20260514);
    Model model;
    const Edit opening = maker.opening();
    model.commit(opening);
    CHECK(good(bench.book->commit(opening)) == model.job);
    std::size_t undone = 0, redone = 0;
    for (int i = 0; i < 2'000; ++i) {
        const std::size_t dice = maker.below(10);
        if (dice < 2 && !model.undo.empty()) {
            const Instant at = maker.moment();
            model.move(model.undo, model.redo, true, at, "");
            REQUIRE(good(bench.book->undo(maker.job(), at, "A. Tester")) == model.job);
            ++undone;
        } else if (dice < 4 && !model.redo.empty()) {
            const Instant at = maker.moment();
            model.move(model.redo, model.undo, false, at, "");
            REQUIRE(good(bench.book->redo(maker.job(), at, "A. Tester")) == model.job);
            ++redone;
        } else {
            const Edit edit = maker.next(model.job);
            model.commit(edit);
            REQUIRE(good(bench.book->commit(edit)) == model.job);
        }
        if (i % 100 == 0) {
            bench.open();
            REQUIRE(good(bench.book->load(maker.job())) == model.job);
        }
    }
    CHECK(undone > 100);
    CHECK(redone > 50);
    const Job end = model.job;
    const std::size_t depth = model.undo.size();
    while (!model.undo.empty()) {
        const Instant at = maker.moment();
        model.move(model.undo, model.redo, true, at, "");
        REQUIRE(good(bench.book->undo(maker.job(), at, "A. Tester")) == model.job);
    }
    CHECK(model.job == good(apply(Job{}, opening)));
    const auto nothing = bench.book->undo(maker.job(), maker.moment(), "A. Tester");
    REQUIRE_FALSE(nothing);
    CHECK(nothing.error().code == Errc::not_found);
    CHECK(nothing.error().line() == "there is nothing to undo: " + maker.job().text());
    for (std::size_t i = 0; i < depth; ++i) (void)good(bench.book->redo(maker.job(), maker.moment(), "A. Tester"));
    bench.open();
    CHECK(good(bench.book->load(maker.job())) == end);
    CHECK(bench.book->redo(maker.job(), maker.moment(), "A. Tester").error().code == Errc::not_found);
    const auto verified = bench.book->verify();
    CHECK_MESSAGE(verified, verified.error().line());
}

// Writes into a real book until it is killed: kill_writer FOLDER SEED. One thread.
// Each line on stdout is the number of steps that the book has confirmed, written after commit() has answered.
#include <cstdio>
#include <cstdlib>

#include "core/book/book.h"
#include "platform/desktop/ports.h"
#include "tests/core/book/edit_maker.h"
#include "tests/regress/kill_job.h"

namespace {

using namespace cotter;

int give_up(const Error& error) {
    std::fprintf(stderr, "kill_writer: %s\n", error.line().c_str());
    return 1;
}

// One step of any kind; its person is its number, so that the reader can tell that none is missing.
Result<Job> step(Book& book, test::EditMaker& maker, const Job& job, const std::string& by) {
    if (job.only<Visit>() == nullptr) {
        Edit edit = maker.opening();
        edit.by = by;
        return book.commit(edit);
    }
    const std::size_t dice = maker.below(6);
    if (dice == 0)
        if (auto undone = book.undo(maker.job(), maker.moment(), by)) return undone;
    if (dice == 1)
        if (auto redone = book.redo(maker.job(), maker.moment(), by)) return redone;
    Edit edit = dice == 2 ? maker.big(6'000) : maker.next(job);
    edit.by = by;
    return book.commit(edit);
}

int write_until_killed(const std::string& folder, std::uint64_t seed) {
    const auto files = make_system_files();
    auto book = Book::open(*files, folder, OpenMode::create);
    if (!book) return give_up(book.error());
    test::EditMaker maker(seed, test::kill_job());
    const auto steps = (*book)->journal(maker.job());
    if (!steps) return give_up(steps.error());
    const auto loaded = (*book)->load(maker.job());
    Job job = loaded ? *loaded : Job{};
    for (std::size_t number = steps->size() + 1;; ++number) {
        auto done = step(**book, maker, job, test::kill_person(number));
        if (!done) return give_up(done.error());
        job = std::move(*done);
        std::printf("%zu\n", number);
        std::fflush(stdout);
    }
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 3) return 2;
    return write_until_killed(argv[1], std::strtoull(argv[2], nullptr, 10));
}

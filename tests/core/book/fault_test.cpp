// The N-th-failure loop over everything that writes a book: each call of the disk fails in turn, once and from then
// on; afterwards the book is whole and holds the job as it was before or as it is after, never between.
#include "tests/core/book/book_bench.h"
#include "tests/support/effort.h"

using namespace cotter;
using namespace cotter::test;

namespace {

using Operation = std::function<Result<>(Book&)>;
enum class Then { look, try_again };

Result<> dropped(const Result<Job>& job) {
    return job ? Result<>() : unexpected(job.error());
}

// Books to start from, and what an operation makes of them.
struct Loop {
    TempFolder start, work;
    std::unique_ptr<Files> files = make_system_files();
    EditMaker maker{77};
    Job before, after;
    int injected = 0;

    // The books are copied while open, so that their log is not empty: it has at least `log_bytes`.
    Loop(const Operation& operation, std::uintmax_t log_bytes) {
        TempFolder making;
        FaultVfs vfs;
        auto book = good(Book::open(*files, making.path(), OpenMode::create, vfs.name()));
        Job job = good(book->commit(maker.opening()));
        for (int i = 0; i < 12; ++i) job = good(book->commit(maker.next(job)));
        while (std::filesystem::file_size(join_path(making.path(), "book.sqlite-wal")) < log_bytes)
            (void)good(book->commit(maker.big(9'000)));
        before = good(book->undo(maker.job(), maker.moment(), "A. Tester"));
        copy(making.path(), start.path());
        copy(start.path(), work.path());
        book = good(Book::open(*files, work.path(), OpenMode::existing, vfs.name()));
        good(operation(*book));
        after = good(book->load(maker.job()));
    }

    // By hand: some libraries' filesystem::copy goes byte by byte, thousands of times here.
    void copy(const std::string& from, const std::string& to) {
        for (const std::string& name : good(files->list(to))) good(files->remove(join_path(to, name)));
        for (const std::string& name : good(files->list(from))) {
            const Bytes bytes = good(read_file(*files, join_path(from, name), 64 << 20));
            const auto writer = good(files->create(join_path(to, name)));
            good(writer->write(bytes));
            good(writer->close());
        }
    }

    void check_on_disk(bool confirmed) {
        FaultVfs vfs;
        auto book = good(Book::open(*files, work.path(), OpenMode::existing, vfs.name()));
        good(book->verify());
        const Job now = good(book->load(maker.job()));
        const bool whole = now == after || (!confirmed && now == before);
        CHECK(whole);
    }

    // False: nothing failed any more.
    bool round(const Operation& operation, int n, FaultVfs::Kind kind, FaultVfs::Mode mode, Then then) {
        copy(start.path(), work.path());
        FaultVfs vfs;
        auto book = good(Book::open(*files, work.path(), OpenMode::existing, vfs.name()));
        vfs.fail_call(n, kind, mode);
        Result<> done = operation(*book);
        const int failures = vfs.failures();
        injected += failures;
        if (!done) CHECK(done.error().code == (kind == FaultVfs::Kind::full ? Errc::no_space : Errc::io));
        if (!done && then == Then::try_again) {
            vfs.stop_failing();
            CHECK(good(book->load(maker.job())) == before);
            done = operation(*book);
            good(done);
        }
        book.reset();
        check_on_disk(done.has_value());
        return failures > 0;
    }

    // `stride`: fail every n-th call; an operation of a thousand calls need not fail at each.
    void all_rounds(const Operation& operation, int stride) {
        for (const auto kind : {FaultVfs::Kind::io, FaultVfs::Kind::full})
            for (const auto mode : {FaultVfs::Mode::once, FaultVfs::Mode::from_then_on})
                for (const auto then : {Then::look, Then::try_again})
                    for (int n = 1; round(operation, n, kind, mode, then); n += few() ? 3 * stride : stride)
                        REQUIRE(n < 5'000);
    }
};

void run_loop(const std::string& name, const Operation& operation, std::uintmax_t log_bytes = 0, int stride = 1) {
    Loop loop(operation, log_bytes);
    loop.all_rounds(operation, stride);
    CHECK(loop.injected > 20);
    MESSAGE(name << ": " << loop.injected << " faults injected, the book whole after each");
}

EditMaker another_maker() {
    return EditMaker(78, EditMaker(77).job());
}

}  // namespace

TEST_CASE("book faults: commit") {
    run_loop("commit", [](Book& book) {
        EditMaker maker = another_maker();
        return dropped(book.commit(maker.big(9'000)));
    });
}

TEST_CASE("book faults: undo") {
    run_loop("undo", [](Book& book) {
        EditMaker maker = another_maker();
        return dropped(book.undo(maker.job(), maker.moment(), "A. Tester"));
    });
}

TEST_CASE("book faults: redo") {
    run_loop("redo", [](Book& book) {
        EditMaker maker = another_maker();
        return dropped(book.redo(maker.job(), maker.moment(), "A. Tester"));
    });
}

TEST_CASE("book faults: a commit that moves the log into the main file") {
    constexpr std::uintmax_t kNearlyFull = 250 * 4'120;  // of 256 pages
    run_loop(
        "commit with checkpoint",
        [](Book& book) {
            EditMaker maker = another_maker();
            return dropped(book.commit(maker.big(9'000)));
        },
        kNearlyFull, 3);
}

TEST_CASE("book faults: making a new book") {
    const auto files = make_system_files();
    int injected = 0;
    for (const auto kind : {FaultVfs::Kind::io, FaultVfs::Kind::full})
        for (const auto mode : {FaultVfs::Mode::once, FaultVfs::Mode::from_then_on}) {
            int failures = 1;
            for (int n = 1; failures > 0; n += few() ? 3 : 1) {
                REQUIRE(n < 1'000);
                TempFolder folder;
                FaultVfs vfs;
                vfs.fail_call(n, kind, mode);
                auto book = Book::open(*files, folder.path(), OpenMode::create, vfs.name());
                failures = vfs.failures();
                injected += failures;
                if (book) book->reset();
                vfs.stop_failing();
                auto again = good(Book::open(*files, folder.path(), OpenMode::create, vfs.name()));
                EditMaker maker(79);
                (void)good(again->commit(maker.opening()));
                good(again->verify());
            }
        }
    CHECK(injected > 20);
    MESSAGE("making a book: " << injected << " faults injected, made at the next try each time");
}

// verify() must find what the database itself cannot know: each case breaks a sound book in one way.
#include "tests/core/book/book_bench.h"

#include "core/store/sqlite.h"

using namespace cotter;
using namespace cotter::test;

namespace {

// A book with one edited, signed and corrected job, changed behind its back by `sql`; what verify() says then.
std::string verdict_after(const char* sql) {
    BookBench bench;
    EditMaker maker(31);
    Job job = good(bench.book->commit(maker.opening()));
    for (int i = 0; i < 30; ++i) job = good(bench.book->commit(maker.next(job)));
    (void)good(bench.book->undo(maker.job(), maker.moment(), "A. Tester"));
    (void)good(bench.book->commit(maker.sign_off()));
    (void)good(bench.book->commit(maker.big(10)));
    REQUIRE_FALSE(job.all<Shot>().empty());
    REQUIRE_FALSE(job.all<Tag>().empty());
    bench.book.reset();
    {
        auto db = good(Sqlite::open(join_path(bench.folder.path(), "book.sqlite"), false, bench.vfs.name()));
        good(db->run_script(
            std::string("PRAGMA locking_mode=EXCLUSIVE; PRAGMA foreign_keys=OFF; PRAGMA ignore_check_constraints=ON;") +
            sql));
    }
    bench.open();
    const auto verified = bench.book->verify();
    if (!verified) CHECK(verified.error().code == Errc::damaged);
    return verified ? "sound" : verified.error().what;
}

}  // namespace

TEST_CASE("book verify: a sound book is sound") {
    CHECK(verdict_after("") == "sound");
}

TEST_CASE("book verify: every kind of break is found and named") {
    CHECK(verdict_after("UPDATE finding SET body=json_set(body, '$.note', 'other') WHERE rowid=(SELECT min(rowid) FROM "
                        "finding)") == "a job is not what its journal makes of it");
    CHECK(verdict_after("UPDATE shot SET position=-position") == "a job is not what its journal makes of it");
    CHECK(verdict_after("DELETE FROM amendment") == "a job is not what its journal makes of it");
    CHECK(verdict_after("DELETE FROM journal WHERE seq=2").starts_with("the journal cannot be replayed"));
    CHECK(verdict_after("UPDATE journal SET inverse=(SELECT inverse FROM journal WHERE seq=3) WHERE seq=2") ==
          "a step's undo does not take it back");
    CHECK(verdict_after("UPDATE journal SET edit='{}' WHERE seq=4")
              .starts_with("a step of the journal cannot be understood"));
    CHECK(verdict_after("UPDATE journal SET target=2 WHERE kind='undo'") ==
          "a step of the journal cannot be understood (it is out of order)");
    CHECK(verdict_after("DELETE FROM shot WHERE id=(SELECT shot FROM tag)") ==
          "a record refers to one that is not there");
    CHECK(verdict_after("UPDATE shot SET body=json_remove(body, '$.added')")
              .starts_with("a record of the book cannot be understood"));
    CHECK(verdict_after("UPDATE job SET unit='other'") == "a job's line in the list is not what its records say");
    CHECK(verdict_after("DELETE FROM visit") == "a job has lost its visit");
}

TEST_CASE("book verify: a page overwritten is found, whichever it is") {
    BookBench bench;
    EditMaker maker(32);
    Job job = good(bench.book->commit(maker.opening()));
    for (int i = 0; i < 40; ++i) job = good(bench.book->commit(maker.next(job)));
    bench.book.reset();
    const std::string path = join_path(bench.folder.path(), "book.sqlite");
    const Bytes whole = good(read_file(*bench.files, path, 1u << 30));
    constexpr std::size_t kPage = 4'096;
    for (std::size_t at = kPage; at < whole.size(); at += kPage) {
        Bytes broken = whole;
        std::fill_n(broken.begin() + static_cast<std::ptrdiff_t>(at), kPage, std::uint8_t{0xa5});
        good(replace_file(*bench.files, path, broken));
        auto opened = Book::open(*bench.files, bench.folder.path(), OpenMode::existing, bench.vfs.name());
        const Result<> verdict = opened ? (*opened)->verify() : Result<>(unexpected(opened.error()));
        REQUIRE_FALSE(verdict);
        CHECK_MESSAGE(verdict.error().code == Errc::damaged, verdict.error().line());
    }
}

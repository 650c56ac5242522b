// Books of earlier versions must open for ever, and what is made today must have the same tables.
#include "core/book/schema.h"

#include "core/store/sqlite.h"
#include "tests/core/book/book_bench.h"
#include "tests/support/project_files.h"

using namespace cotter;
using namespace cotter::test;

namespace {

const std::string kFixtures = project_file("tests/fixtures/book/");

// A folder with the book that a fixture describes.
struct OldBook {
    TempFolder folder;
    std::unique_ptr<Files> files = make_system_files();
    std::string path = join_path(folder.path(), "book.sqlite");

    explicit OldBook(const char* fixture) {
        const Bytes sql = good(read_file(*files, kFixtures + fixture, 1u << 20));
        auto db = good(Sqlite::open(path, true, {}));
        good(db->run_script(std::string(as_text(sql))));
    }
    std::unique_ptr<Book> open() { return good(Book::open(*files, folder.path(), OpenMode::existing)); }
};

std::string tables_of(const std::string& path) {
    auto db = good(Sqlite::open(path, false, {}));
    return good(
        db->text("SELECT group_concat(name || ': ' || sql, char(10)) FROM "
                 "(SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name)"));
}

}  // namespace

TEST_CASE("book schema: version 1 opens, holds what it held, and goes on") {
    OldBook old("schema-1.sql");
    auto book = old.open();
    good(book->verify());
    const auto jobs = good(book->jobs());
    REQUIRE(jobs.size() == 1);
    CHECK(jobs[0].unit == "NUR-07");
    CHECK(jobs[0].customer == "the nursery");
    CHECK(jobs[0].worst == Grade::repair);
    CHECK(jobs[0].signed_off);
    const Job job = good(book->load(jobs[0].id));
    CHECK(job.all<Torque>().at(0).passes.at(0).tightened == std::vector{1, 5, 3, 7, 2, 6, 4, 8});
    REQUIRE(job.amendments.size() == 2);
    CHECK(job.amendments[1].reason == "undone: misread");
    CHECK(good(book->journal(jobs[0].id)).size() == 13);
    CHECK(good(book->last_packet(jobs[0].id))->name == "2026-05-14_NUR-07_00000000_r1");
    const Job again = good(book->redo(jobs[0].id, job.amendments[1].at, "A. Tester"));
    CHECK(again.all<Finding>().at(0).note == "a second look");
    good(book->verify());
}

TEST_CASE("book schema: a book brought up to date has the tables of a new one") {
    OldBook old("schema-1.sql");
    old.open().reset();
    BookBench fresh;
    fresh.book.reset();
    CHECK(tables_of(old.path) == tables_of(join_path(fresh.folder.path(), "book.sqlite")));
    auto db = good(Sqlite::open(old.path, false, {}));
    CHECK(good(db->integer("PRAGMA user_version")) == kBookVersion);
    CHECK(good(db->integer("PRAGMA application_id")) == kBookApplicationId);
}

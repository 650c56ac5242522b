// Opening: whose file it is, who has it, what is refused, and that a refused file stays as it was.
#include "tests/core/book/bookshelf.h"

#include <fmt/format.h>
#include <fstream>

#include "core/base/hash.h"
#include "core/book/schema.h"
#include "core/store/sqlite.h"

using namespace cotter;
using namespace cotter::test;

TEST_CASE("book open: a missing book is made or not found, as asked") {
    Bookshelf place;
    CHECK(error_of(place.open()).line() == "there is no book here: " + place.folder.path());
    CHECK(std::filesystem::is_empty(place.folder.path()));
    const std::string deep = place.folder.path() + "/a/b";
    auto made = good(Book::open(*place.files, deep, OpenMode::create, place.vfs.name()));
    CHECK(good(made->jobs()).empty());
    good(made->verify());
    made.reset();
    good(good(Book::open(*place.files, deep, OpenMode::existing, place.vfs.name()))->verify());
}

TEST_CASE("book open: a database that another program holds is busy, and an open book is held against it") {
    Bookshelf place;
    auto first = good(place.open(OpenMode::create));
    CHECK(place.raw()->integer("SELECT count(*) FROM job").error().code == Errc::busy);
    first.reset();
    auto other = place.raw();
    good(other->run_script("PRAGMA locking_mode=EXCLUSIVE; BEGIN EXCLUSIVE; SELECT count(*) FROM job;"));
    CHECK(error_of(place.open()).code == Errc::busy);
}

TEST_CASE("book open: a newer book is refused and left byte for byte") {
    Bookshelf place;
    place.make_job();
    place.patch(60, std::string_view("\0\0\0\x63", 4));
    const std::string before = place.bytes();
    const Error error = error_of(place.open(OpenMode::create));
    CHECK(error.code == Errc::too_new);
    CHECK(error.line() ==
          fmt::format("the book was written by a newer program (version 99 of its tables, known here: {}): "
                      "{}; update this program",
                      kBookVersion, place.path));
    CHECK(sha256_hex(as_bytes(place.bytes())) == sha256_hex(as_bytes(before)));
}

TEST_CASE("book open: newer is also seen in the write-ahead log, and both files stay") {
    Bookshelf place;
    place.make_job();
    {
        auto newer = place.raw();
        newer->tidy_when_closed(false);
        good(newer->run_script("PRAGMA locking_mode=EXCLUSIVE; PRAGMA user_version=7; CREATE TABLE more(x);"));
    }
    const std::string main = place.bytes(), log = place.bytes("book.sqlite-wal");
    REQUIRE(log.size() > 0);
    REQUIRE(main.substr(60, 4) == std::string("\0\0\0", 3) + static_cast<char>(kBookVersion));
    CHECK(error_of(place.open()).code == Errc::too_new);
    CHECK(place.bytes() == main);
    CHECK(place.bytes("book.sqlite-wal") == log);
}

TEST_CASE("book open: what is no book is not ours and stays as it is") {
    Bookshelf place;
    place.put(
        "Dear diary, this is quite something else, and it is longer than a hundred bytes, so that it has room.......");
    const std::string before = place.bytes();
    CHECK(error_of(place.open(OpenMode::create)).code == Errc::not_ours);
    CHECK(place.bytes() == before);
    std::filesystem::remove(place.path);
    good(place.raw()->run_script("CREATE TABLE t(x); PRAGMA application_id=5;"));
    CHECK(error_of(place.open(OpenMode::create)).code == Errc::not_ours);
    good(place.raw()->run_script("PRAGMA application_id=0"));
    CHECK(error_of(place.open(OpenMode::create)).line() ==
          "this file is not a book: " + place.path + "; choose another folder");
    std::filesystem::remove(place.path);
    std::filesystem::create_directory(place.path);
    CHECK(error_of(place.open(OpenMode::create)).code == Errc::not_ours);
}

TEST_CASE("book open: a book cut off or overwritten is damaged") {
    Bookshelf place;
    place.make_job();
    const std::string whole = place.bytes();
    place.put(whole.substr(0, 50));
    CHECK(error_of(place.open()).code == Errc::damaged);
    place.put(whole.substr(0, 100) + std::string(whole.size() - 100, '\x7f'));
    CHECK(error_of(place.open()).code == Errc::damaged);
    std::string no_version = whole;
    no_version.replace(60, 4, std::string(4, '\0'));
    place.put(no_version);
    CHECK(error_of(place.open()).line() ==
          "the book does not say its version: " + place.path + "; put back the last good copy");
}

TEST_CASE("book open: a write-ahead log cut anywhere gives an earlier state, whole") {
    Bookshelf place;
    EditMaker maker(6);
    std::vector<Job> states;
    auto book = good(place.open(OpenMode::create));
    book.reset();  // the tables go into the main file
    book = good(place.open());
    states.push_back(good(book->commit(maker.opening())));
    for (int i = 0; i < 10; ++i) states.push_back(good(book->commit(maker.next(states.back()))));
    const auto disk = place.vfs.after_power_cut(FaultVfs::Cut::written);
    const Bytes& log = disk.at("book.sqlite-wal");
    std::size_t last = 0, seen = 0;
    for (std::size_t length = 0; length <= log.size();
         length += std::min<std::size_t>(1'400, log.size() - length + 1)) {
        Bookshelf copy;
        copy.put(as_text(disk.at("book.sqlite")));
        std::ofstream(copy.path + "-wal", std::ios::binary) << as_text(ByteView(log).first(length));
        auto cut = good(copy.open());
        good(cut->verify());
        const auto loaded = cut->load(maker.job());
        const auto at = loaded ? std::find(states.begin() + static_cast<std::ptrdiff_t>(last), states.end(), *loaded)
                               : states.begin();
        REQUIRE(at != states.end());
        seen += static_cast<std::size_t>(at - states.begin()) > last ? 1 : 0;
        last = static_cast<std::size_t>(at - states.begin());
    }
    CHECK(last == states.size() - 1);
    CHECK(seen > 5);
}

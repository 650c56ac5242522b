// A folder of the real disk with a book in it, for the tests of opening.
#pragma once

#include <fstream>

#include "core/store/sqlite.h"
#include "tests/core/book/book_bench.h"

namespace cotter::test {

struct Bookshelf {
    TempFolder folder;
    std::unique_ptr<Files> files = make_system_files();
    FaultVfs vfs;
    std::string path = join_path(folder.path(), "book.sqlite");

    Result<std::unique_ptr<Book>> open(OpenMode mode = OpenMode::existing) {
        return Book::open(*files, folder.path(), mode, vfs.name());
    }
    std::unique_ptr<Sqlite> raw() { return good(Sqlite::open(path, true, vfs.name())); }
    void put(std::string_view bytes) { std::ofstream(path, std::ios::binary) << bytes; }
    [[nodiscard]] std::string bytes(const std::string& name = "book.sqlite") const {
        std::ifstream in(join_path(folder.path(), name), std::ios::binary);
        return {std::istreambuf_iterator<char>(in), {}};
    }
    void patch(std::streamoff at, std::string_view with) {
        std::fstream file(path, std::ios::binary | std::ios::in | std::ios::out);
        file.seekp(at);
        file << with;
    }
    void make_job(std::uint64_t seed = 5, int edits = 10) {
        auto book = good(open(OpenMode::create));
        EditMaker maker(seed);
        Job job = good(book->commit(maker.opening()));
        for (int i = 0; i < edits; ++i) job = good(book->commit(maker.next(job)));
    }
};

inline Error error_of(Result<std::unique_ptr<Book>> opened) {
    REQUIRE_FALSE(opened);
    return opened.error();
}

}  // namespace cotter::test

// A book on the real disk behind a door that can fail, for the book's tests.
#pragma once

#include <doctest/doctest.h>

#include "core/book/book.h"
#include "platform/desktop/ports.h"
#include "tests/core/book/edit_maker.h"
#include "tests/support/good.h"
#include "tests/support/temp_folder.h"
#include "tests/support/fault_vfs.h"

namespace cotter::test {

struct BookBench {
    TempFolder folder;
    std::unique_ptr<Files> files = make_system_files();
    FaultVfs vfs;
    std::unique_ptr<Book> book;

    BookBench() { open(); }
    void open() {  // anew
        book.reset();
        book = good(Book::open(*files, folder.path(), OpenMode::create, vfs.name()));
    }
};

}  // namespace cotter::test

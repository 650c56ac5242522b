// A book is one program's at a time.
#include "tests/core/book/bookshelf.h"

using namespace cotter;
using namespace cotter::test;

TEST_CASE("book open: only one at a time") {
    Bookshelf place;
    auto first = good(place.open(OpenMode::create));
    const Error busy = error_of(place.open());
    CHECK(busy.code == Errc::busy);
    CHECK(busy.line() ==
          "the book is in use by another process: " + place.folder.path() + "; close it there and try again");
    first.reset();
    (void)good(place.open());
}

// Books to draw the pages from: with nothing in them, the demo, a thousand of everything, the longest words.
#pragma once

#include <string>
#include <vector>

#include "tests/app/app_bench.h"

namespace cotter {

enum class BookKind { empty, demo, many, longest };
[[nodiscard]] const char* book_name(BookKind kind);

// Fills the bench's session with a job of that kind and opens it on the plan.
void fill_book(SessionBench& bench, BookKind kind);

// Every page there is something to show on, of the open job.
[[nodiscard]] std::vector<Route> all_routes(const Session& session);

}  // namespace cotter

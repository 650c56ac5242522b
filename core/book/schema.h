// The tables of a book and how older books are brought up to date. For core/book only.
#pragma once

#include "core/store/sqlite.h"

namespace cotter {

inline constexpr std::int64_t kBookApplicationId = 0x436f5442;  // "CoTB", in SQLite's header
inline constexpr int kBookVersion = 5;                          // of the tables, in SQLite's user_version

// Makes the tables in an empty database, or brings those of an older version up to date, in one transaction.
// Does nothing when they are of this version.
[[nodiscard]] Result<> bring_up_to_date(Sqlite& db);

}  // namespace cotter

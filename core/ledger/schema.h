// The ledger's tables on either engine. For core/ledger only; one thread per connection.
#pragma once

#include "core/store/sql.h"

namespace cotter::ledger {

inline constexpr std::int64_t kLedgerApplicationId = 0x436f544c;  // "CoTL", in SQLite's header
inline constexpr int kLedgerVersion = 2;                          // of the tables

// A table that holds what was taken in or decided, in the order in which it may be filled, with its columns and what
// its rows are sorted by. All else is derived from these and not copied, backed up or compared.
struct KeptTable {
    std::string_view name;
    std::string_view columns;  // "fingerprint, seq, …"
    std::string_view types;    // one letter a column: t text, i integer, b bytes
    std::string_view order;
};
[[nodiscard]] std::vector<KeptTable> kept_tables();

// Makes the tables in an empty database, and brings older ones to this version. `too_new`, `not_ours`.
// `create` false: an empty database is `not_found`.
[[nodiscard]] Result<> bring_up_to_date(SqlDb& db, bool create, const std::string& where);

}  // namespace cotter::ledger

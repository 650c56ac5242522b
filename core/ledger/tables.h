// The ledger's kept tables row by row, for everything that carries them elsewhere. For core/ledger only.
#pragma once

#include <functional>
#include <map>

#include "core/ledger/schema.h"
#include "core/ledger/transfer.h"

namespace cotter::ledger {

using RowTask = std::function<Result<>(const SqlValues& row)>;

// Every row of the table in its order, a few hundred at a time. Documents come as they were (bytes of job.json), not as
// they are packed.
[[nodiscard]] Result<> each_row(SqlDb& db, const KeptTable& table, const RowTask& task);
[[nodiscard]] Result<> insert_row(SqlDb& db, const KeptTable& table, const SqlValues& row);
[[nodiscard]] Result<std::int64_t> row_count(SqlDb& db, const KeptTable& table);
[[nodiscard]] std::vector<std::string> columns_of(const KeptTable& table);

// `refused` unless nothing was ever taken in.
[[nodiscard]] Result<> must_be_empty(Ledger& ledger);

// What lies in the vault: extension by SHA-256.
[[nodiscard]] Result<std::map<std::string, std::string>> photos_on_file(SqlDb& db);

}  // namespace cotter::ledger

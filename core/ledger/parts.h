// What an open ledger is made of. For core/ledger only.
#pragma once

#include "core/ledger/ledger.h"
#include "core/photo/vault.h"
#include "core/store/sql.h"

namespace cotter::ledger {

struct Ledger::Parts {
    cotter::ledger::Ports ports;
    Rules rules;
    std::string where;  // for messages
    std::unique_ptr<SqlDb> db;
    std::string photos_named;  // by whoever opened it, for this time
    std::string photos_folder;
    std::unique_ptr<PhotoVault> photos;
};

// Makes all derived rows anew. Inside a transaction.
[[nodiscard]] Result<> derive_all(SqlDb& db, const Rules& rules);

}  // namespace cotter::ledger

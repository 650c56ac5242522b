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
    std::string rules_version;  // of the answers about towing (towing.h)
    std::unique_ptr<PhotoVault> photos;
};

// What to say where nothing goes by that name.
[[nodiscard]] unexpected<Error> nothing_named(std::string_view text);

// Makes all derived rows anew, but for the answers about towing, which are put off. Inside a transaction.
[[nodiscard]] Result<> derive_all(SqlDb& db, const Rules& rules);

}  // namespace cotter::ledger

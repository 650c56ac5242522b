// A ledger opened for a command, with the rules that it goes by. One thread.
#pragma once

#include <memory>
#include <string>

#include "app/cli/cli.h"
#include "core/judge/register.h"
#include "core/ledger/ledger.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

// Said in place of an answer about towing that is to be made anew, and that this seat may not write.
inline constexpr const char* kNoAnswerYet = "no answer about towing is made yet";

// What every command of the office asks for.
struct LedgerPlace {
    std::string ledger;  // a file or "postgresql://…"
    std::string photos;  // the vault's folder; empty: as the ledger remembers
    bool json = false;
};
void add_ledger_options(Parser& parser, LedgerPlace& place);

struct Office {
    JudgeRegister judging;
    RecheckRules rechecks;
    ledger::Rules rules;
    std::unique_ptr<ledger::Ledger> ledger;
};
// The rules are read once and must stay where they are, hence the pointer.
[[nodiscard]] Result<std::unique_ptr<Office>> open_office(Ports& ports, const LedgerPlace& place, ledger::Open mode);
// A second ledger by the same rules.
[[nodiscard]] Result<std::unique_ptr<ledger::Ledger>> open_another(Ports& ports, const Office& office,
                                                                   const LedgerPlace& place);

// Makes the answers about towing anew that no longer count, with a bar on stderr. A seat that may only read goes on
// without.
[[nodiscard]] Result<> renew_answers(const Ports& ports, ledger::Ledger& ledger);

// A bar on stderr for work that is counted, where stdout is a terminal.
[[nodiscard]] std::function<bool(std::size_t, std::size_t)> step_bar(const Ports& ports, std::string what);

// Prints a JSON value as all commands do.
void print_json(const Json& json);

}  // namespace cotter::cli

// The rules that the program ships, for the ledgers of the benches. One thread.
#pragma once

#include "core/base/files.h"
#include "core/judge/register.h"
#include "core/ledger/ledger.h"
#include "tests/support/office_packets.h"
#include "tests/support/project_files.h"

namespace cotter::test {

struct OfficeRules {
    JudgeRegister judging;
    RecheckRules rechecks;
    // Points into this.
    [[nodiscard]] ledger::Rules rules() const { return {judging.limits, &rechecks}; }
};

inline OfficeRules shipped_rules(Files& files) {
    const std::string assets = project_file("assets");
    return {sure(load_register(files, assets)),
            sure(rechecks_from_json(as_text(sure(read_file(files, assets + "/procedures/rechecks.json", 1 << 20)))))};
}

}  // namespace cotter::test

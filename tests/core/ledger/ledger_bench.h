// A ledger to test on, with packets of the invented office: on SQLite always, on PostgreSQL too when
// COTTER_TEST_POSTGRES names a server's database (see tests/regress/ledger_postgres.sh).
#pragma once

#include <doctest/doctest.h>

#include <functional>

#include "core/judge/register.h"
#include "core/ledger/receive.h"
#include "platform/desktop/ports.h"
#include "tests/support/good.h"
#include "tests/support/temp_folder.h"
#include "tests/support/office_packets.h"

namespace cotter::test {

class FixedClock final : public Clock {
public:
    Instant now() override { return at; }
    Instant at = *Instant::parse("2026-05-14T18:00:00-05:00");
};

class LedgerBench {
public:
    explicit LedgerBench(bool server);
    ~LedgerBench();

    void open(const std::string& vfs = {});  // anew
    [[nodiscard]] ledger::Ports ports() { return {*files, *workers, clock}; }
    [[nodiscard]] std::string path(const std::string& name) const { return join_path(folder.path(), name); }
    // Another empty place on the same kind of engine.
    [[nodiscard]] std::string another_place();

    // Writes a packet into the folder "in" and gives its path.
    std::string put(const SealedPacket& packet, const std::string& name = {});
    // Takes in what lies in "in", or these.
    ledger::ReceiveResult receive(const ledger::ReceiveOptions& options = {});
    ledger::ReceiveResult receive(const std::vector<std::string>& paths, const ledger::ReceiveOptions& options = {});

    TempFolder folder;
    std::unique_ptr<Files> files = make_system_files();
    std::unique_ptr<Workers> workers = make_thread_workers();
    FixedClock clock;
    JudgeRegister judging;
    RecheckRules rechecks;
    ledger::Rules rules;
    std::string where;
    std::unique_ptr<ledger::Ledger> ledger;
    std::vector<ledger::Receipt> told;  // by the last receive()
    PhotoMaker photos{4};
    OfficeShape shape{10, 2};

private:
    bool server_;
    int places_ = 0;
    [[nodiscard]] std::string new_place();
};

// Runs the test on each engine there is.
void on_each_engine(const std::function<void(LedgerBench&)>& test);

}  // namespace cotter::test

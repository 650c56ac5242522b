// The N-th-failure loop over taking in: each call of SQLite's disk, and each of the vault's, fails in turn, once and
// from then on. Afterwards the ledger holds whole packets only, and the same batch handed in again completes it.
#include "tests/core/ledger/ledger_bench.h"

#include "core/ledger/transfer.h"
#include "core/photo/vault.h"
#include "core/store/sql.h"
#include "core/store/sqlite.h"
#include "tests/support/effort.h"
#include "tests/support/fault_vfs.h"
#include "tests/support/memory_files.h"

using namespace cotter;
using namespace cotter::test;
using namespace cotter::ledger;

namespace {

constexpr int kPackets = 2;

// Every packet on file has its document, its job and its photos.
void check_whole(Ledger& ledger) {
    const auto counts = good(ledger.counts());
    CHECK(counts.jobs == counts.packets);
    CHECK(good(ledger.db().integer("SELECT count(*) FROM document")) == counts.packets);
    CHECK(good(ledger.db().integer("SELECT count(*) FROM searched")) == counts.jobs);
    for (const JobLine& job : good(ledger.jobs({}, 100, 0)))
        for (const PacketPhoto& shot : good(ledger.shots(job.job)))
            CHECK(good(ledger.photos().original(shot.sha256)).size() > 0);
}

// A ledger on the real disk behind a door that fails, its packets and photos in memory.
struct Office {
    TempFolder folder;
    FaultVfs vfs;
    MemoryFiles files;
    SerialWorkers workers;
    FixedClock clock;
    RecheckRules rechecks;
    Rules rules{{}, &rechecks};
    std::unique_ptr<Ledger> ledger;

    Office() {
        const PhotoMaker photos(4);
        for (int i = 0; i < kPackets; ++i) {
            const SealedPacket packet = office_packet(i, {10, 2}, photos);
            files.put("/in/" + packet.name + ".zip", packet.zip);
        }
        files.put("/office/there", {});
        open();
    }
    void open() {
        ledger.reset();
        ledger = good(Ledger::open({files, workers, clock}, rules, join_path(folder.path(), "office.ledger"),
                                   Open::create, "/office/photos", vfs.name()));
    }
    Result<ReceiveResult> take() {
        auto packets = packets_in(files, {"/in"});
        if (!packets) return unexpected(packets.error());
        return receive(*ledger, *packets, {});
    }
    // After the trouble is over.
    void check_and_complete() {
        open();
        check_whole(*ledger);
        const auto again = good(take());
        CHECK(again.failed == 0);
        CHECK(again.refused == 0);
        CHECK(good(ledger->counts()).packets == kPackets);
        check_whole(*ledger);
        CHECK(good(files.list("/office/photos/incoming")).empty());
    }
};

}  // namespace

TEST_CASE("ledger faults: every failing call of the database's disk") {
    int injected = 0;
    for (const auto kind : {FaultVfs::Kind::io, FaultVfs::Kind::full})
        for (const auto mode : {FaultVfs::Mode::once, FaultVfs::Mode::from_then_on})
            for (int n = 1, failures = 1; failures > 0; n += few() ? 11 : 3) {
                REQUIRE(n < 3'000);
                Office office;
                office.vfs.fail_call(n, kind, mode);
                const auto taken = office.take();
                failures = office.vfs.failures();
                injected += failures;
                office.vfs.stop_failing();
                if (!taken) {
                    CHECK(taken.error().line().find('\n') == std::string::npos);
                    CHECK(taken.error().code == (kind == FaultVfs::Kind::full ? Errc::no_space : Errc::io));
                }
                office.check_and_complete();
            }
    CHECK(injected > 20);
    MESSAGE(injected << " faults of the database's disk, the ledger whole after each");
}

TEST_CASE("ledger faults: every failing call of the vault's and the packets' disk") {
    int injected = 0;
    for (const Errc code : {Errc::io, Errc::no_space})
        for (const auto mode : {MemoryFiles::Mode::once, MemoryFiles::Mode::from_then_on}) {
            bool struck = true;
            for (int n = 1; struck; n += few() ? 5 : 1) {
                REQUIRE(n < 3'000);
                Office office;
                office.files.fail_call(n, code, mode);
                const auto taken = office.take();
                struck = office.files.failed();
                injected += struck ? 1 : 0;
                office.files.stop_failing();
                if (taken) CHECK(taken->taken + taken->failed + taken->refused == kPackets);
                office.check_and_complete();
            }
        }
    CHECK(injected > 20);
    MESSAGE(injected << " faults of the vault's disk, the ledger whole after each");
}

TEST_CASE("ledger faults: what the ledger names is on the disk before it is named") {
    for (const auto cut : {MemoryFiles::Cut::strict, MemoryFiles::Cut::names_survive}) {
        Office office;
        (void)good(office.take());
        office.files.power_cut(cut);
        office.open();
        check_whole(*office.ledger);
    }
}

TEST_CASE("ledger faults: other files than ledgers are told apart and left alone") {
    LedgerBench bench(false);
    const auto open = [&](const std::string& path, Open mode = Open::existing) {
        return Ledger::open(bench.ports(), bench.rules, path, mode);
    };
    CHECK(open(bench.path("none")).error().code == Errc::not_found);
    good(replace_file(*bench.files, bench.path("text"), as_bytes("this is a text and no ledger at all")));
    CHECK(open(bench.path("text"), Open::create).error().code == Errc::not_ours);
    CHECK(open(bench.folder.path()).error().code == Errc::not_ours);
    {
        const auto book = sql_over(good(Sqlite::open(bench.path("other"), true, "")));
        good(book->script("CREATE TABLE journal(x); CREATE TABLE setting(x)"));
    }
    CHECK(open(bench.path("other"), Open::create).error().code == Errc::not_ours);
    good(bench.ledger->db().run("UPDATE setting SET value='99' WHERE name='version'"));
    CHECK(open(bench.where).error().code == Errc::too_new);
}

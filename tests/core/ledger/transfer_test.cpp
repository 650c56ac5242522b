// The ledger as a whole: exports, backups, other engines.
#include "tests/core/ledger/ledger_bench.h"

#include "core/ledger/transfer.h"
#include "core/photo/vault.h"

using namespace cotter;
using namespace cotter::test;
using namespace cotter::ledger;

namespace {

void fill_and_revise(LedgerBench& bench, int jobs) {
    for (int i = 0; i < jobs; ++i) bench.put(office_packet(i, bench.shape, bench.photos));
    bench.put(seal(revised(office_parts(office_job(1, bench.shape), 1, bench.photos), std::string(64, '0'))));
    bench.receive();
}

std::map<std::string, Bytes> exported(LedgerBench& bench, Ledger& from, const std::string& name) {
    const std::string folder = bench.path(name);
    good(export_all(from, folder));
    std::map<std::string, Bytes> out;
    for (const std::string& file : good(bench.files->list(folder)))
        out[file] = good(read_file(*bench.files, join_path(folder, file), 1 << 26));
    return out;
}

std::unique_ptr<Ledger> another(LedgerBench& bench, const std::string& place, const std::string& photos) {
    return good(Ledger::open(bench.ports(), bench.rules, place, Open::create, bench.path(photos)));
}

}  // namespace

TEST_CASE("ledger transfer: the same packets give the same export, whenever they came") {
    on_each_engine([](LedgerBench& bench) {
        fill_and_revise(bench, 25);
        const auto first = exported(bench, *bench.ledger, "first");
        CHECK(first.size() == 11);
        CHECK(first.at("ledger.jsonl").size() > 100'000);
        bench.where = bench.another_place();
        bench.clock.at.unix_s += 86'400;
        bench.open();
        bench.receive();
        bench.receive();
        CHECK(exported(bench, *bench.ledger, "second") == first);
    });
}

TEST_CASE("ledger transfer: a backup restores everything, and a damaged one nothing") {
    on_each_engine([](LedgerBench& bench) {
        fill_and_revise(bench, 12);
        const std::string file = bench.path("office.zip");
        good(backup(*bench.ledger, file));
        const Digest sum = good(check_backup(*bench.files, *bench.workers, file));
        CHECK(sum == good(digest(*bench.ledger)));
        const auto restored = another(bench, bench.another_place(), "photos2");
        good(restore(*restored, file));
        CHECK(good(digest(*restored)) == sum);
        CHECK(exported(bench, *restored, "b") == exported(bench, *bench.ledger, "a"));
        const auto shots = good(restored->shots(office_id(3, 0).text()));
        CHECK(good(restored->photos().original(shots[0].sha256)) == bench.photos.photo(3, 0));
        CHECK(restore(*restored, file).error().code == Errc::refused);  // not empty

        Bytes bytes = good(read_file(*bench.files, file, 1 << 28));
        bytes[bytes.size() / 2] ^= 4;
        good(replace_file(*bench.files, file, bytes));
        CHECK(check_backup(*bench.files, *bench.workers, file).error().code == Errc::damaged);
        const auto empty = another(bench, bench.another_place(), "photos3");
        CHECK_FALSE(restore(*empty, file));
        CHECK(good(empty->counts()).packets == 0);
    });
}

TEST_CASE("ledger transfer: a ledger moves to another place by one call, verified") {
    on_each_engine([](LedgerBench& bench) {
        fill_and_revise(bench, 12);
        const auto there = another(bench, bench.another_place(), "photos2");
        const Digest sum = good(copy(*bench.ledger, *there));
        CHECK(sum == good(digest(*bench.ledger)));
        CHECK(sum == good(digest(*there)));
        CHECK(exported(bench, *there, "b") == exported(bench, *bench.ledger, "a"));
        CHECK(good(there->search({"qry", {}, 100, 0})).size() ==
              good(bench.ledger->search({"qry", {}, 100, 0})).size());
        // and from a server to a file and the other way
        const auto file = another(bench, bench.path("moved.ledger"), "photos");
        CHECK(good(copy(*there, *file)) == sum);
    });
}

// A folder that is watched: nothing that goes wrong ends it.
#include "tests/core/ledger/ledger_bench.h"

#include <cstdlib>

#include "core/base/hash.h"
#include "core/ledger/watch.h"
#include "core/photo/vault_stage.h"
#include "core/store/sql.h"

using namespace cotter;
using namespace cotter::test;
using namespace cotter::ledger;

namespace {

// Looks every two seconds of a clock that is moved by hand.
struct Watching {
    LedgerBench& bench;
    std::vector<std::string> said;
    std::vector<Receipt> receipts;
    Watcher watcher{*bench.files,
                    bench.path("in"),
                    {bench.clock,
                     [this](const std::vector<std::string>& packets, const std::function<void(const Receipt&)>& told) {
                         ReceiveOptions how;
                         how.told = [&](const Receipt& r) {
                             receipts.push_back(r);
                             told(r);
                         };
                         return ledger::receive(*bench.ledger, packets, how);
                     },
                     [this](const std::string& line) { said.push_back(line); }}};

    void look(int times = 1) {
        for (; times > 0; --times) {
            watcher.look();
            bench.clock.at.unix_s += 2;
        }
    }
};

std::string put(LedgerBench& bench, int number) {
    return bench.put(office_packet(number, bench.shape, bench.photos));
}

}  // namespace

TEST_CASE("watch: a folder gives what has come to rest, once") {
    LedgerBench bench(false);
    Watch watch(*bench.files, bench.path("in"));
    const auto look = [&] {
        auto packets = good(watch.look(0));
        for (const std::string& path : packets) watch.done(path);
        return packets;
    };
    const SealedPacket packet = office_packet(0, bench.shape, bench.photos);
    const std::string file = bench.put(packet);
    CHECK(look().empty());
    CHECK(look() == std::vector{file});
    CHECK(look().empty());
    SealedPacket half = packet;
    half.zip.resize(half.zip.size() / 2);
    const std::string growing = bench.put(half, "growing.zip");
    CHECK(look().empty());
    bench.put(packet, "growing.zip");
    CHECK(look().empty());
    CHECK(look() == std::vector{growing});
}

TEST_CASE("watch: while another seat takes packets in it waits its turn, says so once, and goes on") {
    on_each_engine([](LedgerBench& bench) {
        Watching watching{bench, {}, {}};
        (void)put(bench, 0);
        watching.look();
        {
            const auto other = good(VaultStage::open(*bench.files, bench.path("photos")));
            watching.look(5);
            CHECK(watching.receipts.empty());
            REQUIRE(watching.said.size() == 1);
            CHECK(watching.said[0].find("waiting for its turn: another program is taking photos") == 0);
            CHECK_FALSE(watching.watcher.all_good());
        }
        watching.look(2);
        REQUIRE(watching.receipts.size() == 1);
        CHECK(watching.receipts[0].arrival == Arrival::taken);
        CHECK(watching.said.size() == 2);
        CHECK(watching.said[1].starts_with("going on"));
        CHECK(watching.watcher.all_good());
    });
}

TEST_CASE("watch: a folder that is not there is said once, and watched as soon as it is") {
    LedgerBench bench(false);
    good(bench.files->remove(bench.path("in")));
    Watching watching{bench, {}, {}};
    watching.look(5);
    REQUIRE(watching.said.size() == 1);
    CHECK(watching.said[0] == "the folder is not there, waiting for it: " + bench.path("in"));
    CHECK_FALSE(watching.watcher.all_good());
    good(bench.files->make_folders(bench.path("in")));
    (void)put(bench, 0);
    watching.look(2);
    CHECK(watching.receipts.size() == 1);
    CHECK(watching.said.size() == 2);
    CHECK(watching.watcher.all_good());
}

TEST_CASE("watch: a packet that failed is tried again, with a pause that grows, until it is in") {
    LedgerBench bench(false);
    const SealedPacket packet = office_packet(0, bench.shape, bench.photos);
    (void)bench.put(packet);
    // Files stand where the vault's shelves must be.
    good(bench.files->make_folders(bench.path("photos/photos")));
    std::vector<std::string> shelves;
    for (const int part : {0, 1}) {
        const std::string sha = sha256_hex(bench.photos.photo(0, part));
        shelves.push_back(bench.path("photos/photos/" + sha.substr(0, 2)));
        good(replace_file(*bench.files, shelves.back(), as_bytes("in the way")));
    }
    Watching watching{bench, {}, {}};
    watching.look(2);
    REQUIRE(watching.receipts.size() == 1);
    CHECK(watching.receipts[0].arrival == Arrival::failed);
    watching.look(4);  // 8 s later: not yet
    CHECK(watching.receipts.size() == 1);
    watching.look(2);  // 10 s later
    CHECK(watching.receipts.size() == 2);
    watching.look(8);  // 20 s after the second failure it is time again
    CHECK(watching.receipts.size() == 2);
    watching.look(2);
    CHECK(watching.receipts.size() == 3);
    CHECK_FALSE(watching.watcher.all_good());
    for (const std::string& shelf : shelves) (void)bench.files->remove(shelf);
    watching.look(25);
    REQUIRE(watching.receipts.size() == 4);
    CHECK(watching.receipts[3].arrival == Arrival::taken);
    CHECK(watching.watcher.all_good());
    watching.look(3000);
    CHECK(watching.receipts.size() == 4);
}

TEST_CASE("watch: a refused packet is told once, and again when its file is another") {
    LedgerBench bench(false);
    good(replace_file(*bench.files, bench.path("in/bad.zip"), as_bytes("no archive")));
    Watching watching{bench, {}, {}};
    watching.look(50);
    CHECK(watching.receipts.size() == 1);
    CHECK_FALSE(watching.watcher.all_good());
    bench.put(office_packet(0, bench.shape, bench.photos), "bad.zip");
    watching.look(3);
    REQUIRE(watching.receipts.size() == 2);
    CHECK(watching.receipts[1].arrival == Arrival::taken);
}

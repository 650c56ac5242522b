// Making ledgers.
#include "tests/core/ledger/ledger_bench.h"

#include <cstdlib>
#include <fmt/format.h>
#include <unistd.h>

#include "core/store/sql.h"
#include "tests/support/project_files.h"

namespace cotter::test {

namespace {

const char* server_address() {
    return std::getenv("COTTER_TEST_POSTGRES");
}

}  // namespace

LedgerBench::LedgerBench(bool server) : server_(server) {
    const std::string share = project_file("assets");
    judging = good(load_register(*files, share));
    rechecks = good(rechecks_from_json(as_text(good(read_file(*files, share + "/procedures/rechecks.json", 1 << 20)))));
    rules = {judging.limits, &rechecks};
    good(files->make_folders(path("in")));
    where = new_place();
    open();
}

LedgerBench::~LedgerBench() = default;

// On a server every ledger lives in a schema of its own.
std::string LedgerBench::new_place() {
    ++places_;
    if (!server_) return path(fmt::format("office{}.ledger", places_));
    const std::string schema =
        fmt::format("t{}_{}", ::getpid(), base_name(folder.path()).substr(12)) + std::to_string(places_);
    const auto db = good(connect_postgresql(server_address(), "ledger"));
    good(db->script(fmt::format("CREATE SCHEMA \"{}\"", schema)));
    const std::string address = server_address();
    return fmt::format("{}{}options=-csearch_path%3D%22{}%22", address, address.find('?') == address.npos ? "?" : "&",
                       schema);
}

std::string LedgerBench::another_place() {
    return new_place();
}

void LedgerBench::open(const std::string& vfs) {
    ledger.reset();
    ledger = good(ledger::Ledger::open(ports(), rules, where, ledger::Open::create, path("photos"), vfs));
}

std::string LedgerBench::put(const SealedPacket& packet, const std::string& name) {
    const std::string file = path("in/" + (name.empty() ? packet.name + ".zip" : name));
    good(replace_file(*files, file, packet.zip));
    return file;
}

ledger::ReceiveResult LedgerBench::receive(const ledger::ReceiveOptions& options) {
    return receive({path("in")}, options);
}

ledger::ReceiveResult LedgerBench::receive(const std::vector<std::string>& paths,
                                           const ledger::ReceiveOptions& options) {
    told.clear();
    ledger::ReceiveOptions with = options;
    with.told = [this](const ledger::Receipt& r) { told.push_back(r); };
    return good(ledger::receive(*ledger, good(ledger::packets_in(*files, paths)), with));
}

void on_each_engine(const std::function<void(LedgerBench&)>& test) {
    for (const bool server : {false, true}) {
        if (server && server_address() == nullptr) continue;
        LedgerBench bench(server);
        CAPTURE(bench.where);
        test(bench);
    }
}

}  // namespace cotter::test

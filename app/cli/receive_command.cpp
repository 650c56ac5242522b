// `cotter receive`: take packets in. `cotter accept`: what a person decides about them.
#include <chrono>
#include <thread>
#include <utility>

#include "app/cli/office.h"
#include "app/cli/office_json.h"
#include "core/ledger/watch.h"

namespace cotter::cli {

namespace {

constexpr std::chrono::seconds kBetween{2};  // looks at a watched folder

struct ReceiveOptions {
    LedgerPlace place;
    std::vector<std::string> paths;
    std::string trust;
    std::string watch;
    int looks = 0;
};

// One line a file on stdout, the state of the batch on stderr.
class Teller {
public:
    Teller(const Ports& ports, bool json) : bar_(ports.terminal && !json), json_(json) {}

    void told(const ledger::Receipt& r) {
        if (json_) return list_.push_back(as_json(r));
        if (bar_) fmt::print(stderr, "\r\x1b[K");
        fmt::print("{}: {}{}{}\n", one_line(r.path, 500), name_of(r.arrival), r.why.empty() ? "" : ": ",
                   one_line(r.why, 1000));
    }
    bool progress(const ledger::Progress& p) {
        if (!bar_) return true;
        std::fflush(stdout);
        fmt::print(stderr, "\r\x1b[K{}/{} packets", p.done, p.total);
        if (p.bytes_per_second > 0)
            fmt::print(stderr, ", {:.0f} MB/s, {:.0f} s left", p.bytes_per_second / 1e6, p.seconds_left);
        return true;
    }
    void end(const ledger::ReceiveResult& r) {
        if (bar_) fmt::print(stderr, "\r\x1b[K");
        if (json_)
            return print_json({{"taken", r.taken},
                               {"there_already", r.there_already},
                               {"refused", r.refused},
                               {"failed", r.failed},
                               {"packets", std::move(list_)}});
        fmt::print("{} taken in, {} there already, {} refused, {} failed\n", r.taken, r.there_already, r.refused,
                   r.failed);
        std::fflush(stdout);
    }

private:
    bool bar_, json_;
    Json list_ = Json::array();
};

Result<ledger::TrustList> trust_list(Ports& ports, const std::string& path) {
    if (path.empty()) return ledger::TrustList{};
    COTTER_ASSIGN(const Bytes text, read_file(ports.files, path, 16u << 20));
    auto list = ledger::parse_allowed_signers(as_text(text));
    if (!list) return unexpected(context(list.error(), path));
    return list;
}

Result<ledger::ReceiveResult> take(Ports& ports, Office& office, const std::vector<std::string>& packets,
                                   const ledger::TrustList& trust, bool json,
                                   const std::function<void(const ledger::Receipt&)>& also = {}) {
    Teller teller(ports, json);
    ledger::ReceiveOptions how;
    how.trust = trust;
    how.told = [&](const ledger::Receipt& r) {
        teller.told(r);
        if (also) also(r);
    };
    how.progress = [&](const ledger::Progress& p) { return teller.progress(p); };
    COTTER_ASSIGN(const auto result, ledger::receive(*office.ledger, packets, how));
    teller.end(result);
    return result;
}

// On stderr, at once, as it is read in a log.
void say(const std::string& line) {
    fmt::print(stderr, "cotter: {}\n", one_line(line, 2000));
    std::fflush(stderr);
}

// Ends after so many looks, or never.
bool watch(Ports& ports, Office& office, const ReceiveOptions& options, const ledger::TrustList& trust) {
    ledger::Watcher watcher(
        ports.files, options.watch,
        {ports.clock,
         [&](const std::vector<std::string>& packets, const std::function<void(const ledger::Receipt&)>& told) {
             return take(ports, office, packets, trust, options.place.json, told);
         },
         say});
    for (int look = 0; options.looks == 0 || look < options.looks; ++look) {
        if (look > 0) std::this_thread::sleep_for(kBetween);
        watcher.look();
    }
    return watcher.all_good();
}

// One that watches waits while another seat writes, also for its first word with the ledger.
Result<std::unique_ptr<Office>> open_for(Ports& ports, const ReceiveOptions& options) {
    bool said = false;
    for (;;) {
        auto office = open_office(ports, options.place, ledger::Open::create);
        if (office || options.watch.empty() || office.error().code != Errc::busy) return office;
        if (!std::exchange(said, true)) say("waiting for its turn: " + office.error().line());
        std::this_thread::sleep_for(kBetween);
    }
}

Result<bool> receive_all(Ports& ports, const ReceiveOptions& options) {
    COTTER_ASSIGN(const auto trust, trust_list(ports, options.trust));
    COTTER_ASSIGN(const auto office, open_for(ports, options));
    if (!options.watch.empty()) return watch(ports, *office, options, trust);
    COTTER_ASSIGN(const auto packets, ledger::packets_in(ports.files, options.paths));
    COTTER_ASSIGN(const auto result, take(ports, *office, packets, trust, options.place.json));
    return result.refused + result.failed == 0;
}

int run_receive(Ports& ports, const ReceiveOptions& options) {
    if (options.paths.empty() == options.watch.empty()) {
        fmt::print(stderr, "cotter: name packets or folders to take in, or a folder to --watch\n");
        return kWrongUse;
    }
    const auto all_good = receive_all(ports, options);
    if (!all_good) return report(all_good.error(), options.place.json);
    return *all_good ? kDone : kFailed;
}

struct AcceptOptions {
    LedgerPlace place;
    std::string technician, key, packet;
};

Result<> decide(Ports& ports, const AcceptOptions& options) {
    COTTER_ASSIGN(const auto office, open_office(ports, options.place, ledger::Open::existing));
    if (!options.packet.empty()) return office->ledger->choose(options.packet);
    return office->ledger->accept_key(options.technician, options.key);
}

int run_accept(Ports& ports, const AcceptOptions& options) {
    if (options.packet.empty() == (options.technician.empty() || options.key.empty())) {
        fmt::print(stderr, "cotter: name a --technician with the --key to accept, or the --packet to show\n");
        return kWrongUse;
    }
    const auto done = decide(ports, options);
    return done ? kDone : report(done.error(), options.place.json);
}

}  // namespace

Command receive_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<ReceiveOptions>();
    Parser parser = all.add_command("receive", "Take packets into a ledger: files, folders, or a watched folder");
    add_ledger_options(parser, options->place);
    parser.add_option("packets", options->paths, "Packets, and folders that hold some");
    parser.add_option("--trust", options->trust, "An allowed_signers file (ssh-keygen(1)) with the technicians' keys");
    parser.add_option("--watch", options->watch, "A folder to look into again and again");
    parser.add_option("--looks", options->looks, "Stop watching after so many looks (0: never)");
    return {parser, [&ports, options] { return run_receive(ports, *options); }};
}

Command accept_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<AcceptOptions>();
    Parser parser = all.add_command("accept", "Accept a technician's new key, or choose between two packets");
    add_ledger_options(parser, options->place);
    parser.add_option("--technician", options->technician, "Who signs with the key");
    parser.add_option("--key", options->key, "The key's fingerprint, SHA256:…");
    parser.add_option("--packet", options->packet, "The fingerprint of the packet to show of its job");
    return {parser, [&ports, options] { return run_accept(ports, *options); }};
}

}  // namespace cotter::cli

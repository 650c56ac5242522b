// Makes the invented office's packets, or fills a ledger with its jobs. For the benches and tests/regress.
//
// usage: office_maker packets FOLDER COUNT BAD_IN_100 PHOTOS PHOTO_KB [FROM TRAILERS]
//            with expected.json beside the packets; FROM: jobs before these that another call has made
//        office_maker ledger FILE JOBS TRAILERS     job documents, without zips and photos
#include <cstdio>
#include <cstdlib>
#include <cstring>

#include <fmt/format.h>

#include "core/base/hash.h"
#include "core/ledger/filing.h"
#include "core/packet/deflate.h"
#include "core/packet/pack.h"
#include "core/survey/json_visitors.h"
#include "platform/desktop/ports.h"
#include "tests/bench/office_rules.h"
#include "tests/support/office_packets.h"

namespace {

using namespace cotter;
using namespace cotter::test;

void put(Files& files, const std::string& path, ByteView bytes) {
    const auto out = sure(files.create(path, false));
    sure(out->write(bytes));
    sure(out->close());
}

// Every so many-th packet is bad, of one kind after the other.
int make_packets(const std::string& folder, int from, int count, int bad_in_100, const OfficeShape& shape,
                 int kilobytes) {
    const auto files = make_system_files();
    sure(files->make_folders(folder));
    const PhotoMaker photos(kilobytes);
    Json expected = Json::object();
    int bad = 0;
    for (int i = from; i < from + count; ++i) {
        const bool is_bad = (i - from + 1) * bad_in_100 / 100 > bad;
        if (!is_bad) {
            const SealedPacket packet = office_packet(i, shape, photos);
            put(*files, join_path(folder, fmt::format("p{:06}_{}.zip", i, packet.name)), packet.zip);
            continue;
        }
        const BadPacket packet = bad_packet(bad++ % kBadKinds, i, shape, photos);
        const std::string name = fmt::format("p{:06}_bad", i) + (packet.zip.empty() ? "" : ".zip");
        if (!packet.zip.empty()) put(*files, join_path(folder, name), packet.zip);
        for (const auto& [file, bytes] : packet.files) {
            sure(files->make_folders(parent_folder(join_path(folder, name + "/" + file))));
            put(*files, join_path(folder, name + "/" + file), bytes);
        }
        expected[name] = {{"kind", packet.kind}, {"says", packet.says}};
    }
    put(*files, join_path(folder, "expected.json"), as_bytes(expected.dump(1) + "\n"));
    put(*files, join_path(folder, "allowed_signers"), as_bytes(office_signers()));
    return 0;
}

ledger::CheckedPacket checked(int number, const OfficeShape& shape) {
    ledger::CheckedPacket packet;
    packet.document.job = office_job(number, shape);
    const std::string json = job_document_json(packet.document);
    const DeviceKey key = office_key(office_technician(number));
    packet.fingerprint = sha256_hex(as_bytes(json));
    packet.name = packet_name(packet.document.job, 1);
    packet.signer = key.fingerprint();
    packet.signer_key = key.public_line();
    packet.handed_over = packet_time(packet.document.job);
    packet.document_size = json.size();
    packet.document_packed = deflate_bytes(as_bytes(json));
    return packet;
}

int fill_ledger(const std::string& file, int jobs, int trailers) {
    const auto files = make_system_files();
    const auto clock = make_system_clock();
    const auto workers = make_thread_workers();
    const test::OfficeRules shipped = test::shipped_rules(*files);
    const ledger::Rules rules = shipped.rules();
    const auto ledger = sure(ledger::Ledger::open({*files, *workers, *clock}, rules, file, ledger::Open::create));
    const ledger::TrustList trust;
    constexpr int kGroup = 500;
    const OfficeShape shape{trailers, 0};
    for (int from = 0; from < jobs; from += kGroup) {
        std::vector<ledger::CheckedPacket> group(static_cast<std::size_t>(std::min(kGroup, jobs - from)));
        workers->run(group.size(), [&](std::size_t i) { group[i] = checked(from + static_cast<int>(i), shape); });
        auto transaction = sure(SqlTransaction::begin(ledger->db()));
        ledger::Filing filing(ledger->db(), rules, trust);
        for (const ledger::CheckedPacket& packet : group) (void)sure(filing.file(packet));
        sure(filing.finish());
        sure(transaction.commit());
        if (from % 10'000 == 0) fmt::print("{}\n", from);
        std::fflush(stdout);
    }
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    const auto number = [&](int at) { return std::atoi(argv[at]); };
    if ((argc == 7 || argc == 9) && std::strcmp(argv[1], "packets") == 0)
        return make_packets(argv[2], argc == 9 ? number(7) : 0, number(3), number(4),
                            {argc == 9 ? number(8) : std::max(1, number(3) / 4), number(5)}, number(6));
    if (argc == 5 && std::strcmp(argv[1], "ledger") == 0) return fill_ledger(argv[2], number(3), number(4));
    std::fprintf(stderr, "usage: see the head of office_maker.cpp\n");
    return 2;
}

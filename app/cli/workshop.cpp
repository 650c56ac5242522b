// Opening and packing.
#include "app/cli/workshop.h"

#include "core/judge/forecast.h"
#include "core/packet/pack_rules.h"

namespace cotter::cli {

namespace {

Result<std::vector<PacketFacts>> earlier_packets(Book& book, const JobId& job) {
    COTTER_ASSIGN(const auto made, book.packets(job));
    std::vector<PacketFacts> out;
    for (const PacketMade& p : made) out.push_back({p.revision, p.content_sha256, p.tagmanifest_sha256, p.name});
    return out;
}

}  // namespace

Result<std::vector<Job>> earlier_visits(Book& book, const Job& job) {
    std::vector<Job> out;
    COTTER_ASSIGN(const auto before, book.jobs_before(job));
    for (const JobId& id : before) {
        COTTER_ASSIGN(Job visit, book.load(id));
        if (same_trailer(job, visit)) out.push_back(std::move(visit));
    }
    return out;
}

Result<Workshop> open_workshop(Ports& ports, const std::string& folder, OpenMode mode) {
    Workshop shop;
    shop.folder = folder;
    COTTER_ASSIGN(shop.book, Book::open(ports.files, folder, mode));
    shop.vault = std::make_unique<PhotoVault>(ports.files, ports.workers, folder);
    COTTER_TRY(shop.vault->sweep());
    return shop;
}

Result<Packed> pack_job(Ports& ports, Workshop& shop, const DeviceKey& key, const JobId& job,
                        const std::string& out_folder, Paper paper) {
    COTTER_ASSIGN(const Job whole, shop.book->load(job));
    COTTER_ASSIGN(const auto earlier, earlier_packets(*shop.book, job));
    COTTER_ASSIGN(const PackRules rules, load_pack_rules(ports.files, ports.share));
    COTTER_ASSIGN(const auto visits, earlier_visits(*shop.book, whole));
    const PackTools tools{ports.files,
                          ports.workers,
                          *shop.vault,
                          key,
                          rules.font,
                          rules.font_bold,
                          "Cotter " COTTER_VERSION,
                          rules.judging.limits,
                          rules.judging.inspection,
                          rules.rechecks,
                          paper};
    COTTER_ASSIGN(Packed packed, pack(tools, whole, earlier, out_folder, visits));
    if (packed.unchanged) return packed;
    const PacketFacts& f = packed.facts;
    COTTER_TRY(
        shop.book->record_packet({job, f.revision, f.content_sha256, f.tagmanifest_sha256, f.name, ports.clock.now()}));
    return packed;
}

}  // namespace cotter::cli

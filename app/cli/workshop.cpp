// Opening and packing.
#include "app/cli/workshop.h"

#include "core/judge/register.h"

namespace cotter::cli {

namespace {
constexpr std::uint64_t kLargestFont = 8u << 20;

Result<Bytes> font(Ports& ports, const char* file) {
    return read_file(ports.files, join_path(ports.share, std::string("fonts/") + file), kLargestFont);
}

Result<std::vector<PacketFacts>> earlier_packets(Book& book, const JobId& job) {
    COTTER_ASSIGN(const auto made, book.packets(job));
    std::vector<PacketFacts> out;
    for (const PacketMade& p : made) out.push_back({p.revision, p.content_sha256, p.tagmanifest_sha256, p.name});
    return out;
}
}  // namespace

Result<Workshop> open_workshop(Ports& ports, const std::string& folder, OpenMode mode) {
    Workshop shop;
    shop.folder = folder;
    COTTER_ASSIGN(shop.book, Book::open(ports.files, folder, mode));
    shop.vault = std::make_unique<PhotoVault>(ports.files, ports.workers, folder);
    COTTER_TRY(shop.vault->sweep());
    return shop;
}

Result<Packed> pack_job(Ports& ports, Workshop& shop, const DeviceKey& key, const JobId& job,
                        const std::string& out_folder) {
    COTTER_ASSIGN(const Job whole, shop.book->load(job));
    COTTER_ASSIGN(const auto earlier, earlier_packets(*shop.book, job));
    COTTER_ASSIGN(const Bytes regular, font(ports, "DejaVuSans.ttf"));
    COTTER_ASSIGN(const Bytes bold, font(ports, "DejaVuSans-Bold.ttf"));
    COTTER_ASSIGN(const JudgeRegister judging, load_register(ports.files, ports.share));
    COTTER_ASSIGN(const Bytes due_json,
                  read_file(ports.files, join_path(ports.share, "procedures/rechecks.json"), kLargestFont));
    COTTER_ASSIGN(const RecheckRules due, rechecks_from_json(as_text(due_json)));
    const PackTools tools{
        ports.files, ports.workers, *shop.vault, key, regular, bold, "Cotter " COTTER_VERSION, judging.limits, due};
    COTTER_ASSIGN(Packed packed, pack(tools, whole, earlier, out_folder));
    if (packed.unchanged) return packed;
    const PacketFacts& f = packed.facts;
    COTTER_TRY(
        shop.book->record_packet({job, f.revision, f.content_sha256, f.tagmanifest_sha256, f.name, ports.clock.now()}));
    return packed;
}

}  // namespace cotter::cli

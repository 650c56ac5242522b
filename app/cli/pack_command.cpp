// `cotter pack`: one job as a packet.
#include <map>

#include "app/cli/workshop.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

namespace {

struct PackOptions {
    std::string book;
    std::string job;
    std::string out;
    Paper paper = Paper::letter;
    bool json = false;
};

Result<Packed> pack_named(Ports& ports, const PackOptions& options) {
    COTTER_ASSIGN(auto shop, open_workshop(ports, options.book, OpenMode::existing));
    COTTER_ASSIGN(const JobId job, shop.book->find_job(options.job));
    COTTER_ASSIGN(const auto key, DeviceKey::load_or_make(ports.files, ports.random,
                                                          join_path(options.book, "device_key"), "cotter device key"));
    return pack_job(ports, shop, key, job, options.out, options.paper);
}

int run_pack(Ports& ports, const PackOptions& options) {
    const auto packed = pack_named(ports, options);
    if (!packed) return report(packed.error(), options.json);
    if (options.json)
        fmt::print("{}\n", compact_json(Json{{"packet", packed->path},
                                             {"revision", packed->facts.revision},
                                             {"unchanged", packed->unchanged},
                                             {"tagmanifest_sha256", packed->facts.tagmanifest_sha256}}));
    else
        fmt::print("{}\nrevision {}{}\n", packed->path, packed->facts.revision,
                   packed->unchanged ? ", nothing changed since it was made" : "");
    return kDone;
}

}  // namespace

Command pack_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<PackOptions>();
    Parser parser = all.add_command("pack", "Write a job's packet: a dated, signed zip that anyone can check");
    parser.add_option("--book", options->book, "The book's folder").required();
    parser.add_option("job", options->job, "The job: its id, the first digits of it, or the trailer's unit").required();
    parser.add_option("--out", options->out, "The folder to write the packet to").required();
    const std::map<std::string, Paper> papers{{"letter", Paper::letter}, {"a4", Paper::a4}};
    parser.add_choice("--paper", options->paper, papers, "The report's paper: letter (as usual) or a4");
    parser.add_flag("--json", options->json, "Answer in JSON");
    return {parser, [&ports, options] { return run_pack(ports, *options); }};
}

}  // namespace cotter::cli

// `cotter demo`: the main job end to end on the demo trailer, so that a newcomer sees it work.
#include "app/cli/progress.h"
#include "app/cli/workshop.h"
#include "core/base/hash.h"
#include "core/book/replay.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

namespace {

struct Options {
    std::string out;
    bool json = false;
};

// The demo signs with a key that anyone can make from these words: it proves nothing, and so everybody's demo
// packet has the same bytes.
Result<DeviceKey> demo_key() {
    Hasher hasher;
    hasher.add(as_bytes("Cotter demo key: public, proves nothing"));
    return DeviceKey::from_seed(hasher.finish(), "cotter demo key (public, proves nothing)");
}

Result<> replay_demo(Ports& ports, Workshop& shop, bool show_progress) {
    COTTER_ASSIGN(const auto jobs, shop.book->jobs());
    if (!jobs.empty() && jobs.front().signed_off) return {};  // made by an earlier run
    if (!jobs.empty())
        return fail(Errc::refused, "the folder holds a demo that was not finished", shop.folder,
                    "remove it and try again");
    Progress progress(show_progress, "demo job");
    const std::string edits = join_path(ports.share, "demo/edits.jsonl");
    COTTER_TRY(replay(*shop.book, *shop.vault, ports.files, edits, [&](std::size_t done, std::size_t total) {
        progress.at(done, total);
        return true;
    }));
    return {};
}

Result<Packed> make_demo(Ports& ports, const Options& options) {
    COTTER_ASSIGN(auto shop, open_workshop(ports, join_path(options.out, "book"), OpenMode::create));
    COTTER_TRY(replay_demo(ports, shop, ports.terminal && !options.json));
    COTTER_ASSIGN(const auto jobs, shop.book->jobs());
    COTTER_ASSIGN(const auto key, demo_key());
    return pack_job(ports, shop, key, jobs.front().id, options.out);
}

int run(Ports& ports, const Options& options) {
    const auto packed = make_demo(ports, options);
    if (!packed) return report(packed.error(), options.json);
    const std::string book = join_path(options.out, "book");
    if (options.json)
        fmt::print("{}\n", Json{{"book", book}, {"packet", packed->path}}.dump());
    else
        fmt::print("book:   {}\npacket: {}\nSigned with the public demo key; check it with: cotter check '{}'\n", book,
                   packed->path, packed->path);
    return kDone;
}

}  // namespace

Command demo_command(CLI::App& app, Ports& ports) {
    auto options = std::make_shared<Options>();
    CLI::App* parser = app.add_subcommand("demo", "Make the demo job (trailer NUR-07, invented) and its packet");
    parser->add_option("--out", options->out, "The folder for the demo's book and packet")->required();
    parser->add_flag("--json", options->json, "Answer in JSON");
    return {parser, [&ports, options] { return run(ports, *options); }};
}

}  // namespace cotter::cli

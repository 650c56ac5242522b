// `cotter demo`: the main job end to end on the demo trailer, so that a newcomer sees it work.
#include "app/cli/progress.h"
#include "app/cli/workshop.h"
#include "core/base/hash.h"
#include "core/book/replay.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

namespace {

struct DemoOptions {
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

Result<> replay_file(Ports& ports, Workshop& shop, const char* file, bool show_progress) {
    Progress progress(show_progress, "demo job");
    const std::string edits = join_path(ports.share, std::string("demo/") + file);
    COTTER_TRY(replay(*shop.book, *shop.vault, ports.files, edits, [&](std::size_t done, std::size_t total) {
        progress.at(done, total);
        return true;
    }));
    return {};
}

struct Demo {
    std::string first;  // path of revision 1
    Packed last;
};

// The job and its packet; then what was amended after the sign-off, and the next revision. An earlier run's work stays.
Result<Demo> make_demo(Ports& ports, const DemoOptions& options) {
    const bool show = ports.terminal && !options.json;
    COTTER_ASSIGN(auto shop, open_workshop(ports, join_path(options.out, "book"), OpenMode::create));
    COTTER_ASSIGN(auto jobs, shop.book->jobs());
    if (jobs.empty()) {
        COTTER_TRY(replay_file(ports, shop, "edits.jsonl", show));
        COTTER_ASSIGN(jobs, shop.book->jobs());
    }
    if (!jobs.front().signed_off)
        return fail(Errc::refused, "the folder holds a demo that was not finished", shop.folder,
                    "remove it and try again");
    COTTER_ASSIGN(const auto key, demo_key());
    const JobId id = jobs.front().id;
    Demo demo;
    COTTER_ASSIGN(const Job job, shop.book->load(id));
    if (job.amendments.empty()) {
        COTTER_TRY(pack_job(ports, shop, key, id, options.out, Paper::letter));
        COTTER_TRY(replay_file(ports, shop, "amendment.jsonl", show));
    }
    COTTER_ASSIGN(demo.last, pack_job(ports, shop, key, id, options.out, Paper::letter));
    COTTER_ASSIGN(const auto made, shop.book->packets(id));
    demo.first = join_path(options.out, made.front().name + ".zip");
    return demo;
}

int run_demo(Ports& ports, const DemoOptions& options) {
    const auto demo = make_demo(ports, options);
    if (!demo) return report(demo.error(), options.json);
    const std::string book = join_path(options.out, "book");
    if (options.json) {
        fmt::print("{}\n", compact_json(Json{{"book", book}, {"first", demo->first}, {"packet", demo->last.path}}));
        return kDone;
    }
    fmt::print(
        "book:   {}\nfirst:  {}\npacket: {}\n"
        "The packet is the second revision, made after an amendment; it names the first by its fingerprint.\n"
        "Both are signed with the public demo key; check them with: cotter check '{}' '{}'\n",
        book, demo->first, demo->last.path, demo->first, demo->last.path);
    return kDone;
}

}  // namespace

Command demo_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<DemoOptions>();
    Parser parser = all.add_command("demo", "Make the demo job (trailer NUR-07, invented) and its packets");
    parser.add_option("--out", options->out, "The folder for the demo's book and packet").required();
    parser.add_flag("--json", options->json, "Answer in JSON");
    return {parser, [&ports, options] { return run_demo(ports, *options); }};
}

}  // namespace cotter::cli

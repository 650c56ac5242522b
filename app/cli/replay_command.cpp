// `cotter replay`: a file of edits into a book.
#include "app/cli/progress.h"
#include "app/cli/workshop.h"
#include "core/book/replay.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

namespace {

struct ReplayOptions {
    std::string book;
    std::string edits;
    bool json = false;
};

Result<Replayed> replay_into(Ports& ports, const ReplayOptions& options) {
    COTTER_ASSIGN(auto shop, open_workshop(ports, options.book, OpenMode::create));
    Progress progress(ports.terminal && !options.json, "replaying");
    return replay(*shop.book, *shop.vault, ports.files, options.edits, [&](std::size_t done, std::size_t total) {
        progress.at(done, total);
        return true;
    });
}

int run_replay(Ports& ports, const ReplayOptions& options) {
    const auto done = replay_into(ports, options);
    if (!done) return report(done.error(), options.json);
    const std::string job = done->job.text();
    if (options.json)
        fmt::print("{}\n", compact_json(Json{{"job", job}, {"edits", done->edits}, {"photos", done->photos}}));
    else
        fmt::print("{} edits and {} photos are in the book; job {}\n", done->edits, done->photos, job);
    return kDone;
}

}  // namespace

Command replay_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<ReplayOptions>();
    Parser parser = all.add_command("replay", "Put the edits of a file, one JSON line each, into a book");
    parser.add_option("--book", options->book, "The book's folder; made when there is none").required();
    parser.add_option("edits", options->edits, "The edits file (.jsonl); its pictures lie beside it").required();
    parser.add_flag("--json", options->json, "Answer in JSON");
    return {parser, [&ports, options] { return run_replay(ports, *options); }};
}

}  // namespace cotter::cli

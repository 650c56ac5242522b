// `cotter check`: is a packet, or any BagIt bag, whole and unchanged?
#include "app/cli/cli.h"
#include "app/cli/progress.h"
#include "core/packet/job_hook.h"
#include "core/photo/probe.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

namespace {

struct CheckOptions {
    std::vector<std::string> packets;
    bool json = false;
};

Json as_json(const std::string& path, const CheckReport& report) {
    Json reasons = Json::array();
    for (const Reason& reason : report.reasons)
        reasons.push_back(
            {{"weight", std::string(name_of(reason.weight))}, {"where", reason.where}, {"what", reason.what}});
    return {{"packet", path},
            {"verdict", std::string(name_of(report.verdict))},
            {"reasons", std::move(reasons)},
            {"made_by_cotter", report.ours},
            {"bag_version", report.bag_version},
            {"algorithms", report.algorithms},
            {"job", report.job},
            {"revision", report.revision},
            {"tagmanifest_sha256", report.tagmanifest_sha256},
            {"signer", report.signer_fingerprint},
            {"signer_key", report.signer_key},
            {"files", report.files},
            {"bytes", report.bytes}};
}

void print(const std::string& path, const CheckReport& report) {
    fmt::print("{}: {}\n", one_line(path, 500), name_of(report.verdict));
    for (const Reason& reason : report.reasons)
        fmt::print("  {}: {}{}\n", name_of(reason.weight), reason.where.empty() ? "" : reason.where + ": ",
                   reason.what);
    if (report.verdict == Verdict::invalid) return;
    fmt::print("  {} files, {} bytes, BagIt {}, {}\n", report.files, report.bytes, report.bag_version,
               fmt::join(report.algorithms, " "));
    if (!report.ours) return fmt::print("  not made by Cotter: no signature and no job were looked for\n");
    fmt::print("  job {} revision {}\n  signed by {}\n", report.job, report.revision, report.signer_fingerprint);
}

int run_check(Ports& ports, const CheckOptions& options) {
    const auto image = [](const std::string&, ByteView bytes) -> Result<> {
        if (auto probed = probe(bytes); !probed) return unexpected(probed.error());
        return {};
    };
    const CheckHooks hooks{image, look_at_job};
    bool all_good = true;
    Json all = Json::array();
    Progress progress(ports.terminal && !options.json && options.packets.size() > 1, "checking");
    for (std::size_t i = 0; i < options.packets.size(); ++i) {
        const CheckReport report = check(ports.files, ports.workers, options.packets[i], hooks);
        all_good = all_good && report.verdict != Verdict::invalid;
        if (options.json)
            all.push_back(as_json(options.packets[i], report));
        else
            print(options.packets[i], report);
        progress.at(i + 1, options.packets.size());
    }
    if (options.json) fmt::print("{}\n", indented_json(all, 2));
    return all_good ? kDone : kFailed;
}

}  // namespace

Command check_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<CheckOptions>();
    Parser parser = all.add_command("check", "Check packets, or any BagIt bags, zipped or as folders");
    parser.add_option("packets", options->packets, "The packets").required();
    parser.add_flag("--json", options->json, "Answer in JSON");
    return {parser, [&ports, options] { return run_check(ports, *options); }};
}

}  // namespace cotter::cli

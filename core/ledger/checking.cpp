// The check's report turned into a packet or a refusal.
#include "core/ledger/checking.h"

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/check.h"
#include "core/packet/deflate.h"
#include "core/packet/job_hook.h"
#include "core/packet/pack.h"
#include "core/photo/probe.h"

namespace cotter::ledger {

namespace {

constexpr std::string_view kPhotos = "data/photos/";
constexpr std::size_t kLongestWhy = 400;

// The first error and how many more there are, in one line.
std::string why_invalid(const CheckReport& report) {
    const Reason* first = nullptr;
    std::size_t errors = 0;
    for (const Reason& reason : report.reasons) {
        if (reason.weight != Weight::error) continue;
        if (first == nullptr) first = &reason;
        ++errors;
    }
    if (first == nullptr) return "it is not valid";
    std::string out = first->where.empty() ? first->what : first->where + ": " + first->what;
    out = one_line(out, kLongestWhy);
    if (errors > 1) out += fmt::format(" (and {} more)", errors - 1);
    return out;
}

// What one check needs of its hooks, and what they bring.
class OneCheck {
public:
    OneCheck(const CheckTools& tools, std::size_t bunch) : tools_(tools), bunch_(bunch) {}

    CheckReport run(Workers& workers, const std::string& path) {
        CheckHooks hooks;
        hooks.image = [this](const std::string&, ByteView bytes) -> Result<> {
            const auto info = probe(bytes);
            if (!info) return unexpected(info.error());
            return {};
        };
        hooks.kept = [this](const std::string& file, const std::string& sha256, ByteView bytes) {
            return keep(file, sha256, bytes);
        };
        hooks.job = [this](ByteView json) -> Result<JobFacts> {
            COTTER_ASSIGN(document, job_document_from_json(as_text(json)));
            if (document->job.only<Visit>() == nullptr) return fail(Errc::refused, "the job has no visit in it");
            return facts_of(*document);
        };
        return check(tools_.files, workers, path, hooks);
    }

    std::optional<JobDocument> document;
    std::vector<Content> contents;
    std::optional<Error> trouble;  // with our own disk

private:
    Result<> keep(const std::string& file, const std::string& sha256, ByteView bytes) {
        if (!file.starts_with(kPhotos)) return {};
        const std::string extension = ascii_lower(file).ends_with(".png") ? "png" : "jpg";
        const auto put = tools_.stage.put(bunch_, sha256, extension, bytes);
        const std::lock_guard guard(mutex_);
        if (!put && !trouble) trouble = put.error();
        if (put) contents.push_back({file.substr(5), sha256, bytes.size()});
        return put;
    }

    const CheckTools& tools_;
    std::size_t bunch_;
    std::mutex mutex_;
};

CheckedPacket packet_of(OneCheck& one, CheckReport& report) {
    CheckedPacket out;
    out.fingerprint = report.tagmanifest_sha256;
    out.document = std::move(*one.document);
    out.name = packet_name(out.document.job, report.revision);
    out.revision = report.revision;
    out.previous = report.previous_tagmanifest_sha256;
    out.signer = report.signer_fingerprint;
    out.signer_key = report.signer_key;
    out.handed_over = packet_time(out.document.job);
    out.document_size = report.job_json.size();
    out.document_packed = deflate_bytes(report.job_json);
    std::sort(one.contents.begin(), one.contents.end(), [](const auto& a, const auto& b) { return a.path < b.path; });
    out.contents = std::move(one.contents);
    return out;
}

}  // namespace

Checked check_one(const CheckTools& tools, Workers& workers, const std::string& path, std::size_t bunch) {
    Checked out;
    out.path = path;
    if (const auto info = tools.files.info(path)) out.bytes = info->size;
    OneCheck one(tools, bunch);
    CheckReport report = one.run(workers, path);
    out.fingerprint = report.tagmanifest_sha256;
    out.job = report.job;
    out.revision = report.revision;
    if (one.trouble) {
        out.arrival = Arrival::failed;
        out.why = one_line(one.trouble->line(), kLongestWhy);
    } else if (report.verdict == Verdict::invalid) {
        out.why = why_invalid(report);
    } else if (!report.ours || !one.document) {
        out.why = "it is a BagIt bag, but no packet of Cotter: nobody has signed it";
    } else {
        out.packet = packet_of(one, report);
        return out;
    }
    tools.stage.drop(bunch);
    return out;
}

}  // namespace cotter::ledger

// The rules of FORMAT.md that a plain bag need not keep.
#include "core/packet/check_ours.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/job_document.h"
#include "core/packet/signature.h"

namespace cotter {

namespace {

constexpr std::uint64_t kLargestText = 64u << 20;

class OurChecks {
public:
    OurChecks(const BagSource& bag, const BagInfo& info, CheckReport& report) : bag_(bag), info_(info), report_(report) {}

    void run() {
        check_signature();
        check_archive();
        check_document();
    }

private:
    void error(std::string_view where, std::string what) {
        report_.reasons.push_back({Weight::error, std::string(where), std::move(what)});
    }

    std::optional<Bytes> file(std::string_view path) {
        const auto& files = bag_.files();
        const auto it = std::find_if(files.begin(), files.end(), [&](const BagFile& f) { return f.path == path; });
        if (it == files.end()) return error(path, "the packet's file is missing"), std::nullopt;
        auto bytes = read_whole(bag_, static_cast<std::size_t>(it - files.begin()), kLargestText);
        if (bytes) return std::move(*bytes);
        return error(path, bytes.error().line()), std::nullopt;
    }

    void check_signature() {
        const auto list = file(kTagManifest);
        const auto signature = file(kSignatureFile);
        if (!list || !signature) return;
        report_.tagmanifest_sha256 = sha256_hex(*list);
        const auto by = verify_signature(as_text(*signature), *list, kPacketNamespace);
        if (!by) return error(kSignatureFile, by.error().line());
        report_.signer_key = by->public_key;
        report_.signer_fingerprint = by->fingerprint;
    }

    // The archive around the files is not signed, so it must be exactly what our writer makes of them.
    void check_archive() {
        const ZipIndex* archive = bag_.archive();
        if (archive == nullptr) return;
        if (std::string why = not_canonical(*archive); !why.empty()) error("", std::move(why));
        for (std::size_t i = 0; i < archive->entries.size(); ++i) {
            if (archive->entries[i].method == zip::kStored) continue;
            const auto bytes = read_whole(bag_, i, kLargestText);
            if (!bytes) continue;  // said already
            const auto same = bag_.packed_as_ours(i, *bytes);
            if (same && !*same)
                report_.reasons.push_back(
                    {Weight::note, bag_.files()[i].path,
                     "its compressed form is not the one this program writes (another zlib, or bytes changed outside "
                     "what is signed); harmless, because what it unpacks to is exactly as signed"});
        }
    }

    void check_document() {
        auto json = file("data/job.json");
        if (!json) return;
        if (const auto good = check_job_schema(as_text(*json)); !good) return error("data/job.json", good.error().line());
        const auto document = job_document_from_json(as_text(*json));
        if (!document) return error("data/job.json", document.error().line());
        report_.job = document->job.id().text();
        report_.revision = document->revision;
        report_.previous_tagmanifest_sha256 = document->previous_tagmanifest_sha256;
        const std::string* id = value_of(info_, "External-Identifier");
        if (id == nullptr || *id != report_.job) error("bag-info.txt", "it names another job than data/job.json");
        for (const PacketPhoto& photo : document->photos) check_photo(photo);
        report_.job_json = std::move(*json);
    }

    void check_photo(const PacketPhoto& photo) {
        for (const std::string& name : {photo.file, photo.tagged_file}) {
            const auto is = [&](const BagFile& f) { return f.path == "data/" + name; };
            if (!name.empty() && std::none_of(bag_.files().begin(), bag_.files().end(), is))
                error("data/" + name, "job.json names this picture, but it is not in the packet");
        }
    }

    const BagSource& bag_;
    const BagInfo& info_;
    CheckReport& report_;
};

}  // namespace

void check_our_packet(const BagSource& bag, const BagInfo& info, CheckReport& report) {
    OurChecks(bag, info, report).run();
}

}  // namespace cotter

// The rules of FORMAT.md that a plain bag need not keep.
#include <algorithm>
#include <charconv>
#include <set>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/packet/check_parts.h"
#include "core/packet/packet_form.h"
#include "core/packet/signature.h"

namespace cotter {

using namespace packet_form;

namespace {

class FormCheck {
public:
    FormCheck(const BagSource& bag, const TagFiles& tags, CheckReport& report, Reasons& reasons)
        : bag_(bag), tags_(tags), report_(report), reasons_(reasons) {}

    void run() {
        check_signature();
        check_labels();
        check_files();
        check_archive();
    }

private:
    void error(std::string_view where, std::string what) { reasons_.add(Weight::error, where, std::move(what)); }

    void check_signature() {
        const auto file = bag_.find(std::string(kSignature));
        const Bytes* list = tags_.bytes_of(bag_, kTagManifest);
        if (!file || list == nullptr) return;  // check_files says what is missing
        constexpr std::uint64_t largest = 64 * 1024;
        const auto text = read_whole(bag_, *file, largest);
        if (!text) return reasons_.add(Weight::error, kSignature, text.error());
        const auto by = verify_signature(as_text(*text), *list, kPacketNamespace);
        if (!by) return reasons_.add(Weight::error, kSignature, by.error());
        report_.signer_key = by->public_key;
        report_.signer_fingerprint = by->fingerprint;
    }

    // A label that every packet has; says so when it has not.
    std::string label(std::string_view name) {
        const std::string* value = value_of(tags_.info, name);
        if (value == nullptr)
            error(kInfo, fmt::format("a packet of Cotter says its {} there, this one does not", name));
        return value == nullptr ? "" : *value;
    }

    void check_labels() {
        report_.job = label(kJobLabel);
        const std::string revision = label(kRevisionLabel);
        std::from_chars(revision.data(), revision.data() + revision.size(), report_.revision);
        if (report_.revision < 1 || std::to_string(report_.revision) != revision)
            error(kInfo, "its Revision is not a number from 1");
        if (const std::string* previous = value_of(tags_.info, kPreviousLabel))
            report_.previous_tagmanifest_sha256 = *previous;
        if ((report_.revision > 1) != (report_.previous_tagmanifest_sha256.size() == 64))
            error(kInfo,
                  "a first revision names no earlier one, a later one names the SHA-256 of the tag manifest before it");
        const auto at = Instant::parse(label(kTimeLabel));
        if (!at) return error(kInfo, fmt::format("its {} is not a time", kTimeLabel));
        if (label(kDateLabel) != at->local_date().text())
            error(kInfo, fmt::format("its {} and {} are different days", kDateLabel, kTimeLabel));
        at_ = DosTime::of(*at);
        const std::string name = label(kNameLabel);
        if (bag_.archive() != nullptr && name != bag_.top())
            error(bag_.top(), fmt::format("the packet was made under the name {}", one_line(name)));
    }

    // Exactly the tag files that our writer makes, each covered by the signed list.
    void check_files() {
        for (const std::string_view path : {kInfo, kManifest, kTagManifest, kSignature, kJob})
            if (!bag_.find(std::string(path))) error(path, "every packet of Cotter has this file, this one does not");
        const auto& manifests = tags_.manifests;
        const auto signed_list =
            std::find_if(manifests.begin(), manifests.end(), [](auto& m) { return m.file == kTagManifest; });
        if (signed_list == manifests.end()) return;
        std::set<std::string_view> covered{kTagManifest, kSignature};
        for (const ManifestLine& line : signed_list->lines) covered.insert(line.path);
        for (const BagFile& file : bag_.files())
            if (!file.payload() && !covered.contains(file.path))
                error(file.path, "the file is not covered by the signed list");
    }

    // The archive around the files is not signed, so it must be exactly what our writer makes of them.
    void check_archive() {
        const ZipIndex* archive = bag_.archive();
        if (archive == nullptr) return;
        if (auto fault = not_as_ours(*archive)) error(fault->entry, std::move(fault->what));
        const auto& files = bag_.files();
        for (std::size_t i = 0; i < files.size(); ++i) {
            const bool stored = archive->entries[i].method == zip::kStored;
            if (stored != (packing_of(files[i].path) == Packing::store))
                error(files[i].path, stored ? "Cotter packs this kind of file, here it is not"
                                            : "Cotter does not pack this kind of file, here it is");
            if (at_ && archive->entries[i].at != *at_)
                error(files[i].path, "its time in the archive is not the packing time");
        }
        check_order();
    }

    void check_order() {
        const auto& files = bag_.files();
        constexpr std::string_view last[] = {kInfo, kManifest, kTagManifest, kSignature};
        const std::size_t tail = std::size(last);
        bool good = files.size() > tail && files[0].path == kDeclaration;
        for (std::size_t i = 1; good && i < files.size(); ++i) {
            const std::size_t behind = files.size() - i;  // 1 for the last
            good = behind <= tail ? files[i].path == last[tail - behind] : files[i].payload();
        }
        if (!good) error("", "the files do not stand in the archive in the order in which Cotter writes them");
    }

    const BagSource& bag_;
    const TagFiles& tags_;
    CheckReport& report_;
    Reasons& reasons_;
    std::optional<DosTime> at_;
};

}  // namespace

bool is_ours(const BagSource& bag, const TagFiles& tags) {
    const std::string* agent = value_of(tags.info, kAgentLabel);
    return (agent != nullptr && agent->starts_with(kAgentPrefix)) || bag.find(std::string(kSignature));
}

void check_form(const BagSource& bag, const TagFiles& tags, CheckReport& report, Reasons& reasons) {
    FormCheck(bag, tags, report, reasons).run();
}

void check_job(const BagSource& bag, const CheckHooks& hooks, std::vector<FileFacts>& files, CheckReport& report,
               Reasons& reasons) {
    report.job_json = std::move(files[*bag.find(std::string(kJob))].kept);
    if (!hooks.job) return;
    const auto facts = hooks.job(report.job_json);
    if (!facts) return reasons.add(Weight::error, kJob, facts.error().line());
    const auto differs = [&](const char* what) {
        reasons.add(Weight::error, kJob, fmt::format("it names another {} than bag-info.txt", what));
    };
    if (facts->job != report.job) differs("job");
    if (facts->revision != report.revision) differs("revision");
    if (facts->previous_tagmanifest_sha256 != report.previous_tagmanifest_sha256) differs("earlier revision");
    for (const std::string& picture : facts->pictures)
        if (!bag.find("data/" + picture))
            reasons.add(Weight::error, "data/" + picture, "job.json names this picture, but it is not in the packet");
    for (const auto& [picture, sha256] : facts->digests) {
        const auto file = bag.find("data/" + picture);
        if (file && files[*file].digests[HashKind::sha256] != sha256)
            reasons.add(Weight::error, "data/" + picture, "it is not the picture that job.json says lies there");
    }
}

}  // namespace cotter

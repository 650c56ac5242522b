// Method: the pictures are made ready on all cores a few at a time (read, cleaned, digested), and written as they come,
// so that memory holds a handful of them whatever the job's size. The manifests follow from the digests; the archive
// goes to a temporary name, is read back as a stranger would check it, and only then gets its own.
#include "core/packet/pack.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/base/hash.h"
#include "core/base/text.h"
#include "core/packet/bag.h"
#include "core/packet/check.h"
#include "core/packet/check_ours.h"
#include "core/packet/pictures.h"
#include "core/packet/zip_writer.h"
#include "core/report/csv.h"
#include "core/report/report.h"
#include "core/survey/json.h"

namespace cotter {

namespace {

constexpr std::size_t kPicturesAtOnce = 4;

class Packer {
public:
    Packer(const PackTools& tools, const Job& job, FileWriter& out, PacketFacts& facts, std::string previous)
        : tools_(tools), job_(job), facts_(facts), previous_(std::move(previous)), zip_(out, packet_time(job)),
          pictures_(tools.vault, job, tools.font) {}

    // Fills facts_.tagmanifest_sha256.
    Result<> write() {
        COTTER_TRY(add_tag_file("bagit.txt", bagit_txt()));
        photos_ = name_photos(job_);
        COTTER_TRY(add_pictures());
        COTTER_TRY(add_documents());
        return add_tags();
    }

private:
    Result<> add(ZipFile file) {
        file.name = facts_.name + "/" + file.name;
        return zip_.add(file);
    }

    Result<> add_tag_file(std::string name, const std::string& text) {
        tags_.push_back({name, sha256_hex(as_bytes(text))});
        return add(ZipFile::make(std::move(name), to_bytes(text), Packing::deflate));
    }

    Result<> add_payload(std::string name, Bytes bytes, Packing packing) {
        payload_.push_back({"data/" + name, sha256_hex(bytes)});
        payload_bytes_ += bytes.size();
        return add(ZipFile::make(payload_.back().path, std::move(bytes), packing));
    }

    Result<> add_ready(ReadyPicture picture) {
        payload_.push_back({picture.file.name, picture.sha256});
        payload_bytes_ += picture.file.size;
        return add(std::move(picture.file));
    }

    Result<> add_pictures() {
        const auto& shots = job_.all<Shot>();
        for (std::size_t from = 0; from < shots.size(); from += kPicturesAtOnce) {
            const std::size_t count = std::min(kPicturesAtOnce, shots.size() - from);
            std::vector<Result<ReadyShot>> ready(count, fail(Errc::io, "not made"));
            tools_.workers.run(count, [&](std::size_t i) { ready[i] = pictures_.ready(shots[from + i], photos_[from + i]); });
            for (std::size_t i = 0; i < count; ++i) {
                if (!ready[i]) return unexpected(context(ready[i].error(), "photo " + photos_[from + i].file));
                photos_[from + i].sha256 = ready[i]->photo.sha256;
                photos_[from + i].cleaned = ready[i]->cleaned;
                COTTER_TRY(add_ready(std::move(ready[i]->photo)));
                if (ready[i]->tagged) COTTER_TRY(add_ready(std::move(*ready[i]->tagged)));
            }
        }
        return {};
    }

    Result<> add_documents() {
        const JobDocument document{facts_.revision, previous_, photos_, job_};
        COTTER_TRY(add_payload("job.json", to_bytes(job_document_json(document)), Packing::deflate));
        COTTER_TRY(add_payload("readings.csv", to_bytes(readings_csv(job_)), Packing::deflate));
        COTTER_TRY(add_payload("torques.csv", to_bytes(torques_csv(job_)), Packing::deflate));
        COTTER_TRY(add_payload("levels.csv", to_bytes(levels_csv(job_)), Packing::deflate));
        ReportInputs inputs;
        inputs.font = tools_.font;
        inputs.font_bold = tools_.font_bold;
        inputs.picture = [this](const Shot& shot) { return pictures_.for_report(shot); };
        inputs.packet_name = facts_.name;
        inputs.revision = facts_.revision;
        inputs.at = packet_time(job_);
        inputs.software = tools_.software;
        COTTER_ASSIGN(Bytes pdf, report_pdf(job_, inputs));
        return add_payload("report.pdf", std::move(pdf), Packing::store);
    }

    [[nodiscard]] BagInfo bag_info() const {
        const Visit& visit = *job_.only<Visit>();
        BagInfo info{{"Bagging-Date", packet_time(job_).local_date().text()},
                     {"Bag-Software-Agent", tools_.software},
                     {"External-Identifier", job_.id().text()},
                     {"Payload-Oxum", fmt::format("{}.{}", payload_bytes_, payload_.size())}};
        if (!visit.company.empty()) info.emplace_back("Source-Organization", visit.company);
        info.emplace_back("Contact-Name", visit.technician);
        info.emplace_back("Revision", std::to_string(facts_.revision));
        if (!previous_.empty()) info.emplace_back("Previous-Revision-Tagmanifest-SHA256", previous_);
        return info;
    }

    Result<> add_tags() {
        std::sort(payload_.begin(), payload_.end(), [](auto& a, auto& b) { return a.path < b.path; });
        COTTER_TRY(add_tag_file("bag-info.txt", bag_info_txt(bag_info())));
        COTTER_TRY(add_tag_file("manifest-sha256.txt", manifest_txt(payload_)));
        std::sort(tags_.begin(), tags_.end(), [](auto& a, auto& b) { return a.path < b.path; });
        const std::string list = manifest_txt(tags_);
        facts_.tagmanifest_sha256 = sha256_hex(as_bytes(list));
        COTTER_TRY(add(ZipFile::make(std::string(kTagManifest), to_bytes(list), Packing::deflate)));
        const std::string signature = tools_.key.sign(as_bytes(list), kPacketNamespace);
        COTTER_TRY(add(ZipFile::make(std::string(kSignatureFile), to_bytes(signature), Packing::deflate)));
        return zip_.finish();
    }

    const PackTools& tools_;
    const Job& job_;
    PacketFacts& facts_;
    std::string previous_;
    ZipWriter zip_;
    PictureMaker pictures_;
    std::vector<PacketPhoto> photos_;
    std::vector<ManifestLine> payload_, tags_;
    std::uint64_t payload_bytes_ = 0;
};

// What a packet is made from, apart from its revision: when this is the same, so is the packet.
std::string content_sha256_of(const Job& job, const PackTools& tools) {
    Hasher hasher;
    hasher.add(as_bytes(job_document_json({0, {}, name_photos(job), job})));
    hasher.add(as_bytes(tools.software));
    hasher.add(as_bytes(tools.key.fingerprint()));
    return hasher.finish_hex();
}

Result<> write_archive(const PackTools& tools, const Job& job, const std::string& path, PacketFacts& facts,
                       const std::string& previous) {
    COTTER_ASSIGN(const auto out, tools.files.create(path));
    COTTER_TRY(Packer(tools, job, *out, facts, previous).write());
    COTTER_TRY(out->sync());
    return out->close();
}

// Reads the finished archive back as a stranger would.
Result<> self_check(const PackTools& tools, const std::string& path) {
    const CheckReport report = check(tools.files, tools.workers, path, {});
    for (const Reason& reason : report.reasons)
        if (reason.weight != Weight::note)
            return fail(Errc::damaged, "the packet did not read back as it was written: " + reason.what, reason.where,
                        "try another disk");
    return {};
}

}  // namespace

Instant packet_time(const Job& job) {
    if (const SignOff* sign_off = job.only<SignOff>()) return sign_off->at;
    Instant newest = job.only<Visit>()->opened;
    for (const Shot& r : job.all<Shot>()) newest = std::max(newest, r.added);
    for (const Finding& r : job.all<Finding>()) newest = std::max(newest, r.at);
    for (const Reading& r : job.all<Reading>()) newest = std::max(newest, r.at);
    for (const Torque& r : job.all<Torque>()) newest = std::max(newest, r.at);
    for (const Level& r : job.all<Level>()) newest = std::max(newest, r.at);
    return newest;
}

std::string packet_name(const Job& job, int revision) {
    const Trailer* trailer = job.only<Trailer>();
    std::string unit = trailer == nullptr ? "" : trailer->unit;
    if (trailer != nullptr && unit.empty()) unit = trailer->plate.empty() ? trailer->vin : trailer->plate;
    return fmt::format("{}_{}_{}_r{}", packet_time(job).local_date().text(), file_safe(unit).substr(0, 40),
                       job.id().text().substr(0, 8), revision);
}

Result<Packed> pack(const PackTools& tools, const Job& job, std::span<const PacketFacts> earlier,
                    const std::string& out_folder) {
    if (job.id().nil()) return fail(Errc::refused, "there is no job to pack");
    Packed packed;
    packed.facts.content_sha256 = content_sha256_of(job, tools);
    packed.unchanged = !earlier.empty() && earlier.back().content_sha256 == packed.facts.content_sha256;
    if (packed.unchanged) earlier = earlier.first(earlier.size() - 1);  // it is made again
    packed.facts.revision = earlier.empty() ? 1 : earlier.back().revision + 1;
    packed.facts.name = packet_name(job, packed.facts.revision);
    packed.path = join_path(out_folder, packed.facts.name + ".zip");
    const std::string previous = earlier.empty() ? std::string() : earlier.back().tagmanifest_sha256;
    COTTER_TRY(tools.files.make_folders(out_folder));
    const std::string part = packed.path + ".part";
    auto done = write_archive(tools, job, part, packed.facts, previous);
    if (done) done = self_check(tools, part);
    if (done) done = tools.files.rename(part, packed.path);
    if (!done) {
        (void)tools.files.remove(part);  // best effort; a .part never counts as a packet
        return unexpected(done.error());
    }
    COTTER_TRY(tools.files.sync_folder(out_folder));
    return packed;
}

}  // namespace cotter

// Method: the pictures are made ready on all cores a few at a time (read, cleaned, digested), and written as they come,
// the next while the ones before are written, so that memory holds a handful of them whatever the job's size. The
// manifests follow from the digests; the archive goes to a temporary name, is read back as a stranger would check it,
// and only then gets its own.
#include "core/packet/pack.h"

#include <algorithm>
#include <map>

#include <fmt/format.h>

#include "core/base/hash.h"
#include "core/base/text.h"
#include "core/packet/check.h"
#include "core/packet/pictures.h"
#include "core/packet/seal.h"
#include "core/report/calendar.h"
#include "core/report/csv.h"
#include "core/report/quote_csv.h"
#include "core/report/report.h"
#include "core/survey/json.h"
#include "core/survey/json_visitors.h"
#include "core/survey/when_made.h"

namespace cotter {

namespace {

constexpr std::size_t kPicturesAtOnce = 4;

class Packer {
public:
    Packer(const PackTools& tools, const Job& job, std::span<const Job> visits, FileWriter& out, PacketFacts& facts,
           std::string previous)
        : tools_(tools),
          job_(job),
          visits_(visits),
          facts_(facts),
          previous_(std::move(previous)),
          out_(out),
          sealer_(out, face(), tools.key),
          pictures_(tools.vault, job, tools.font) {}

    // Fills facts_.tagmanifest_sha256.
    Result<> write() {
        photos_ = name_photos(job_);
        COTTER_TRY(add_pictures());
        COTTER_TRY(add_documents());
        COTTER_ASSIGN(facts_.tagmanifest_sha256, sealer_.finish());
        return {};
    }

private:
    using Batch = std::vector<Result<ReadyShot>>;

    // While one batch is written, the next is made ready.
    Result<> add_pictures() {
        const std::size_t all = photos_.size();
        Batch batch;
        for (std::size_t from = 0; from < all || !batch.empty(); from += kPicturesAtOnce) {
            Batch next(from < all ? std::min(kPicturesAtOnce, all - from) : 0, fail(Errc::io, "not made"));
            Result<> written;
            tools_.workers.run(next.size() + 1, [&](std::size_t i) {
                if (i == 0)
                    written = add_batch(batch);
                else
                    next[i - 1] = pictures_.ready(job_.all<Shot>()[from + i - 1], photos_[from + i - 1]);
            });
            COTTER_TRY(written);
            batch = std::move(next);
        }
        return {};
    }

    Result<> add_batch(Batch& batch) {
        for (auto& ready : batch) {
            PacketPhoto& photo = photos_[added_++];
            if (!ready) return unexpected(context(ready.error(), "photo " + photo.file));
            photo.sha256 = ready->photo.sha256;
            photo.cleaned = ready->cleaned;
            COTTER_TRY(sealer_.add(std::move(ready->photo)));
            if (ready->tagged) COTTER_TRY(sealer_.add(std::move(*ready->tagged)));
            for_report_[photo.shot] = std::move(ready->report);
        }
        return out_.sync();  // the disk works too while the next ones are made ready
    }

    Result<> add_documents() {
        const JobDocument document{facts_.revision, previous_, photos_, job_};
        SealedFile json = SealedFile::make("job.json", to_bytes(job_document_json(document)));
        const std::string job_sha256 = json.sha256;
        COTTER_TRY(sealer_.add(std::move(json)));
        COTTER_TRY(sealer_.add(SealedFile::make("readings.csv", to_bytes(readings_csv(job_)))));
        COTTER_TRY(sealer_.add(SealedFile::make("torques.csv", to_bytes(torques_csv(job_)))));
        COTTER_TRY(sealer_.add(SealedFile::make("levels.csv", to_bytes(levels_csv(job_)))));
        COTTER_TRY(sealer_.add(SealedFile::make("quote.csv", to_bytes(quote_csv(job_)))));
        const Instant at = packet_time(job_);
        const auto due = rechecks(tools_.rechecks, job_, at.local_date());
        const std::string calendar = rechecks_ics(job_, due, {facts_.revision, at, tools_.software});
        if (!calendar.empty()) COTTER_TRY(sealer_.add(SealedFile::make("rechecks.ics", to_bytes(calendar))));
        COTTER_ASSIGN(Bytes pdf, report_pdf(job_, report_inputs(due, job_sha256)));
        return sealer_.add(SealedFile::make("report.pdf", std::move(pdf)));
    }

    ReportInputs report_inputs(std::span<const Recheck> due, const std::string& job_sha256) {
        ReportInputs inputs;
        inputs.font = tools_.font;
        inputs.font_bold = tools_.font_bold;
        inputs.picture = [this](const Shot& shot) -> Result<ReportPicture> { return std::move(for_report_[shot.id]); };
        inputs.photo_name = [this](const Shot& shot) {
            const auto is = [&](const PacketPhoto& p) { return p.shot == shot.id; };
            const auto it = std::find_if(photos_.begin(), photos_.end(), is);
            return it == photos_.end() ? std::string() : base_name(it->file);
        };
        inputs.packet_name = facts_.name;
        inputs.revision = facts_.revision;
        inputs.at = packet_time(job_);
        inputs.software = tools_.software;
        inputs.paper = tools_.paper;
        inputs.limits = tools_.limits;
        inputs.inspection = tools_.inspection;
        inputs.earlier = visits_;
        inputs.due = due;
        inputs.job_sha256 = job_sha256;
        return inputs;
    }

    [[nodiscard]] PacketFace face() const {
        const Visit& visit = *job_.only<Visit>();
        PacketFace face{facts_.name, packet_time(job_), job_.id().text(), facts_.revision, previous_, tools_.software,
                        {}};
        if (!visit.company.empty()) face.more.emplace_back("Source-Organization", visit.company);
        face.more.emplace_back("Contact-Name", visit.technician);
        return face;
    }

    const PackTools& tools_;
    const Job& job_;
    std::span<const Job> visits_;
    PacketFacts& facts_;
    std::string previous_;
    FileWriter& out_;
    Sealer sealer_;
    PictureMaker pictures_;
    std::vector<PacketPhoto> photos_;
    std::size_t added_ = 0;                         // of photos_
    std::map<Id<Shot>, ReportPicture> for_report_;  // each is taken once
};

// What a packet is made from, apart from its revision: when this is the same, so is the packet.
std::string content_sha256_of(const Job& job, const PackTools& tools, std::span<const Job> visits) {
    Hasher hasher;
    hasher.add(as_bytes(job_document_json({0, {}, name_photos(job), job})));
    for (const Job& visit : visits) hasher.add(as_bytes(job_document_json({0, {}, {}, visit})));
    hasher.add(as_bytes(compact_json(to_json_value(tools.rechecks))));
    for (const Limit& limit : tools.limits) hasher.add(as_bytes(compact_json(to_json_value(limit))));
    for (const InspectionItem& item : tools.inspection) hasher.add(as_bytes(compact_json(to_json_value(item))));
    hasher.add(as_bytes(name_of(tools.paper)));
    hasher.add(as_bytes(tools.software));
    hasher.add(as_bytes(tools.key.fingerprint()));
    return hasher.finish_hex();
}

// Those that were opened before the job, the oldest first: what comes later changes nothing in an old packet.
std::vector<Job> visits_before(const Job& job, std::span<const Job> visits) {
    std::vector<Job> out;
    for (const Job& visit : visits)
        if (visit.only<Visit>() != nullptr && visit.only<Visit>()->opened < job.only<Visit>()->opened)
            out.push_back(visit);
    std::sort(out.begin(), out.end(), [](const Job& a, const Job& b) {
        const Instant x = a.only<Visit>()->opened, y = b.only<Visit>()->opened;
        return x < y || (!(y < x) && a.id().text() < b.id().text());
    });
    return out;
}

Result<> write_archive(const PackTools& tools, const Job& job, std::span<const Job> visits, const std::string& path,
                       PacketFacts& facts, const std::string& previous) {
    COTTER_ASSIGN(const auto out, tools.files.create(path));
    COTTER_TRY(Packer(tools, job, visits, *out, facts, previous).write());
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
    job.each_list([&](const auto& list) {
        for (const auto& record : list)
            if (const auto at = when_made(record)) newest = std::max(newest, *at);
    });
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
                    const std::string& out_folder, std::span<const Job> visits) {
    if (job.id().nil()) return fail(Errc::refused, "there is no job to pack");
    Packed packed;
    const std::vector<Job> before = visits_before(job, visits);
    packed.facts.content_sha256 = content_sha256_of(job, tools, before);
    packed.unchanged = !earlier.empty() && earlier.back().content_sha256 == packed.facts.content_sha256;
    if (packed.unchanged) earlier = earlier.first(earlier.size() - 1);  // it is made again
    packed.facts.revision = earlier.empty() ? 1 : earlier.back().revision + 1;
    packed.facts.name = packet_name(job, packed.facts.revision);
    packed.path = join_path(out_folder, packed.facts.name + ".zip");
    const std::string previous = earlier.empty() ? std::string() : earlier.back().tagmanifest_sha256;
    COTTER_TRY(tools.files.make_folders(out_folder));
    const std::string part = packed.path + ".part";
    auto done = write_archive(tools, job, before, part, packed.facts, previous);
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

// Job documents for the check.
#include "core/packet/job_hook.h"

namespace cotter {

JobFacts facts_of(const JobDocument& document) {
    JobFacts facts{document.job.id().text(), document.revision, document.previous_tagmanifest_sha256, {}, {}};
    for (const PacketPhoto& photo : document.photos) {
        facts.pictures.push_back(photo.file);
        if (!photo.tagged_file.empty()) facts.pictures.push_back(photo.tagged_file);
        facts.digests.emplace_back(photo.file, photo.sha256);
    }
    return facts;
}

Result<JobFacts> look_at_job(ByteView json) {
    COTTER_ASSIGN(const JobDocument document, job_document_from_json(as_text(json)));
    return facts_of(document);
}

}  // namespace cotter

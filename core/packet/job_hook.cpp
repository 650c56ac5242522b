// Job documents for the check.
#include "core/packet/job_hook.h"

#include "core/packet/job_document.h"

namespace cotter {

Result<JobFacts> look_at_job(ByteView json) {
    COTTER_TRY(check_job_schema(as_text(json)));
    COTTER_ASSIGN(const JobDocument document, job_document_from_json(as_text(json)));
    JobFacts facts{document.job.id().text(), document.revision, document.previous_tagmanifest_sha256, {}};
    for (const PacketPhoto& photo : document.photos) {
        facts.pictures.push_back(photo.file);
        if (!photo.tagged_file.empty()) facts.pictures.push_back(photo.tagged_file);
    }
    return facts;
}

}  // namespace cotter

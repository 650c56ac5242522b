// The hand-over document of a job for people: one PDF with everything the records hold. Same inputs, same bytes:
// no clock, locale or randomness. Any thread; the callbacks are called on it, in the order of the document.
#pragma once

#include <functional>
#include <span>
#include <string>

#include "core/base/bytes.h"
#include "core/judge/inspection.h"
#include "core/judge/limit.h"
#include "core/report/paper.h"
#include "core/survey/job.h"
#include "core/work/recheck.h"

namespace cotter {

// A JPEG as it goes on the page: upright, tags drawn in where there are tags.
struct ReportPicture {
    Bytes jpeg;
    int width = 0;   // pixels
    int height = 0;  // pixels
};

struct ReportInputs {
    ByteView font;  // TrueType files whose licence lets them be embedded
    ByteView font_bold;
    // Gives valid JPEGs only: a damaged one would go on the page unnoticed, as the report does not decode pictures.
    std::function<Result<ReportPicture>(const Shot&)> picture;
    std::function<std::string(const Shot&)> photo_name;  // as the packet calls it; without it captions have no name
    std::string packet_name;
    int revision = 1;
    Instant at;            // the document's date: of the sign-off, or of the newest record
    std::string software;  // "Cotter 0.1.0"
    Paper paper = Paper::a4;
    std::span<const Limit> limits;                    // to judge by; without any the report judges nothing
    std::span<const InspectionItem> inspection = {};  // the items of a periodic inspection; without any it is left out
    std::span<const Job> earlier = {};                // visits to the same trailer before this one: how fast it wears
    std::span<const Recheck> due = {};                // what is to be looked at again
    std::string job_sha256;  // of the packet's job.json, 64 hex digits, for the code on page 1; empty: no code
};

// Signs that the fonts lack, and all beyond U+FFFF, are printed as U+FFFD, and the report then says so.
// Fails `refused` for a font that does not load and for a picture that is empty, no JPEG or of another size than
// stated; what picture() fails with is passed on with the shot's place and slot.
[[nodiscard]] Result<Bytes> report_pdf(const Job& job, const ReportInputs& inputs);

}  // namespace cotter

// The hand-over document of a job as PDF. The same job gives the same bytes. Any thread, one report at a time each.
#pragma once

#include <functional>
#include <string>

#include "core/base/bytes.h"
#include "core/survey/job.h"

namespace cotter {

// A JPEG that is known to be whole, with its size in pixels.
struct ReportPicture {
    Bytes jpeg;
    int width = 0;
    int height = 0;
};

enum class Paper { letter, a4 };

struct ReportInputs {
    ByteView font;       // TrueType files; embedded, only the letters used
    ByteView font_bold;
    std::function<Result<ReportPicture>(const Shot&)> picture;  // upright, tags drawn in
    std::string packet_name;
    int revision = 1;
    Instant at;             // the document's dates
    std::string software;   // "Cotter 0.1.0"
    Paper paper = Paper::letter;
};

// Cover for people, then a block for each place with photos, findings, readings, torques and levels, then amendments.
// Letters that the font lacks show as a box. Fails as `picture` does and `io` when the PDF library refuses.
[[nodiscard]] Result<Bytes> report_pdf(const Job& job, const ReportInputs& inputs);

}  // namespace cotter

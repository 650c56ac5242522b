// The order of the document.
#include "core/report/report.h"

#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"

namespace cotter {

namespace {

std::string unit_of(const Job& job) {
    const Trailer* trailer = job.only<Trailer>();
    return trailer == nullptr || trailer->unit.empty() ? "trailer without a unit number" : trailer->unit;
}

std::string foot_of(const Job& job, const ReportInputs& in) {
    const std::string revision = fmt::format("revision {}", in.revision);
    // The unit last: it alone may be too long for the line.
    return joined({job.signed_off() ? "" : "NOT SIGNED OFF", in.packet_name, revision, unit_of(job)}, " · ");
}

}  // namespace

std::string Writing::time(Instant at) const {
    return at.offset_min == offset_min ? local_time_text(at) : time_text(at);
}

std::string Writing::when_who(Instant at, const std::string& by) const {
    return joined({time(at), by}, "\n");
}

Result<Bytes> report_pdf(const Job& job, const ReportInputs& inputs) {
    const Visit* visit = job.only<Visit>();
    const Canvas::About about{"Hand-over record " + unit_of(job), visit == nullptr ? "" : visit->technician,
                              inputs.software, inputs.at};
    COTTER_ASSIGN(const auto canvas, Canvas::make(inputs.paper, inputs.font, inputs.font_bold, about));
    Sheet sheet(*canvas);
    Writing w{job, inputs, sheet, by_place(job), visit == nullptr ? inputs.at.offset_min : visit->opened.offset_min,
              {}};
    if (!inputs.limits.empty()) w.judged = judge_job(job, inputs.limits, {inputs.earlier, inputs.at});
    COTTER_TRY(draw_customer(w));
    sheet.start_page();
    draw_details(w);
    draw_glance(w);
    draw_finding_list(w);
    draw_gaps(w);
    draw_cautions(w);
    for (const PlaceRecords& records : w.places)
        if (!records.empty()) COTTER_TRY(draw_place(w, records));
    draw_work_log(w);
    draw_quotes(w);
    draw_limits_and_tools(w);
    draw_inspection(w);
    draw_amendments(w);
    draw_about(w);
    sheet.feet(foot_of(job, inputs));
    return canvas->finish();
}

}  // namespace cotter

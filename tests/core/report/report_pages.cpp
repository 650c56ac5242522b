// Writes the sample reports and the texts that must be found in them, for report_pages.sh.
// usage: report_pages FOLDER_OF_FONTS FOLDER
#include <cstdio>
#include <fstream>
#include <iterator>

#include <fmt/format.h>

#include "core/report/report.h"
#include "tests/core/report/samples.h"

using namespace cotter;
using namespace cotter::test;

namespace {

Bytes read(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

bool write(const std::string& path, std::string_view text) {
    std::ofstream out(path, std::ios::binary);
    out << text;
    out.close();
    return !out.fail();
}

std::string texts_of(const Job& job) {
    std::string out;
    const auto add = [&](const std::string& text) {
        if (!text.empty()) out += text + "\n";
    };
    for (const Visit& v : job.all<Visit>())
        for (const auto& text : {v.technician, v.customer, v.complaint}) add(text);
    for (const Trailer& t : job.all<Trailer>())
        for (const auto& text : {t.unit, t.vin, t.gvwr->text()}) add(text);
    for (const Finding& f : job.all<Finding>())
        for (const auto& text : {f.component.substr(1) + ": " + f.defect, f.note, f.todo}) add(text);
    for (const Reading& r : job.all<Reading>()) {
        for (const auto& text : {r.what.substr(1), r.reason, r.instrument}) add(text);
        for (const auto& point : r.points) add(Amount{point.value, r.unit}.text() + "  " + point.where);
    }
    for (const Torque& t : job.all<Torque>()) {
        for (const auto& text : {t.target->text(), t.target_source, t.found_note, t.wrench}) add(text);
        add("calibrated " + t.wrench_calibrated->text());
        for (const Pass& pass : t.passes) add(pass.setting.text());
    }
    for (const Level& l : job.all<Level>())
        for (const auto& text : {l.fluid.substr(1), l.product, l.added->text(), l.before.note}) add(text);
    for (const Amendment& a : job.amendments) add(a.reason);
    return out;
}

bool make(const std::string& path, const Job& job, const ReportInputs& in) {
    const auto pdf = report_pdf(job, in);
    if (!pdf) fmt::print(stderr, "{}\n", pdf.error().line());
    return pdf && write(path, as_text(*pdf));
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 3) return 2;
    const std::string fonts = argv[1], out = argv[2];
    const Bytes regular = read(fonts + "/DejaVuSans.ttf"), bold = read(fonts + "/DejaVuSans-Bold.ttf");
    ReportInputs in = plain_inputs();
    in.font = regular;
    in.font_bold = bold;
    bool done = make(out + "/full.pdf", full_job(), in) && make(out + "/hostile.pdf", hostile_job(), in) &&
                make(out + "/empty.pdf", Job{}, in) && write(out + "/full.texts", texts_of(full_job())) &&
                write(out + "/hostile.words", hostile_job().all<Visit>()[0].complaint);
    in.paper = Paper::letter;
    done = done && make(out + "/letter.pdf", full_job(), in) && write(out + "/letter.texts", texts_of(full_job()));
    return done ? 0 : 1;
}

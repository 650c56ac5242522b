// Writes the sample reports and the texts that must be found in them, for report_pages.sh.
// usage: report_pages FOLDER_OF_FONTS FOLDER INSPECTION_FORM
#include <cstdio>
#include <fstream>
#include <iterator>

#include <fmt/format.h>

#include "core/report/report.h"
#include "core/work/wrench.h"
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
        for (const Pass& pass : t.passes) {
            add(at_nut(pass).text());
            if (pass.at_nut) add("wrench set to " + pass.setting.text());
            if (pass.tightened[1] == 2) add("Pass 1 went along the circle (1, 2, 3, 4, 5, 6, 7 and 8)");
        }
        if (t.adapter) add("adapter " + adapter_words(*t.adapter));
        if (t.target_from) add("taken over from axle 1 left and confirmed");
    }
    for (const Level& l : job.all<Level>())
        for (const auto& text : {l.fluid.substr(1), l.product, l.added->text(), l.before.note}) add(text);
    for (const Amendment& a : job.amendments) add(a.reason);
    return out;
}

// Every field of 49 CFR 396.21 and every answer.
std::string inspection_texts(const Job& job, std::span<const InspectionItem> items) {
    const Inspection& head = job.all<Inspection>()[0];
    const Trailer& t = job.all<Trailer>()[0];
    std::string out = "Periodic inspection, 49 CFR 396.17 and 396.21\n";
    for (const auto& text :
         {head.inspector, head.carrier, head.date->text(), head.qualified_by, head.brake_qualified_by, head.statement,
          t.vin, t.maker, t.plate, t.unit, std::to_string(t.model_year), months_later(*head.date, 14).text()})
        out += text + "\n";
    for (const InspectionItem* item : items_to_answer(items, t)) out += item->id + "\n" + item->fails + "\n";
    for (const InspectionAnswer& a : job.all<InspectionAnswer>())
        if (!a.remark.empty()) out += std::string(name_of(a.answer)) + "\n" + a.remark + "\n";
    return out;
}

// What a page in the hand is held against a packet by, and what is due.
std::string page_one_texts(const ReportInputs& in) {
    std::string out = "May it be towed?\nWhat was done\nWhat was not done\nNext dates\n" + in.job_sha256 + "\n";
    for (const Recheck& due : in.due) out += due.title.substr(1) + "\n" + due.words.substr(1) + "\n";
    return out;
}

bool make(const std::string& path, const Job& job, const ReportInputs& in) {
    const auto pdf = report_pdf(job, in);
    if (!pdf) fmt::print(stderr, "{}\n", pdf.error().line());
    return pdf && write(path, as_text(*pdf));
}

// People see titles, what left the shop and what was entered: no ids of steps, no drafts, no 'none' for 'not entered'.
bool make_led(const std::string& out, const ReportInputs& in) {
    return make(out + "/led.pdf", led_job(), in) &&
           write(out + "/led.texts",
                 "Hydraulic-drum\nLift it onto stands\nShoes and springs as found\nStands, not jacks\n"
                 "Lift it onto stands, axle 1 left\nAlso offered\nshown at the gate\n"
                 "Brake actuation not entered\n") &&
           write(out + "/led.absent", "left in the drawer\nU6\nH3 \nBrake actuation none\nHydraulic-dru m\n");
}

bool make_inspections(const std::string& out, ReportInputs in, std::span<const InspectionItem> items) {
    const Job whole = inspected_job(items);
    Job begun = whole;
    begun.all<InspectionAnswer>().pop_back();
    in.inspection = items;
    return make(out + "/inspected.pdf", whole, in) && make(out + "/begun.pdf", begun, in) &&
           write(out + "/inspected.texts", inspection_texts(whole, items));
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 4) return 2;
    const std::string fonts = argv[1], out = argv[2];
    const auto items = parse_inspection(as_text(read(argv[3])));
    if (!items) return 1;
    const Bytes regular = read(fonts + "/DejaVuSans.ttf"), bold = read(fonts + "/DejaVuSans-Bold.ttf");
    ReportInputs in = plain_inputs();
    in.font = regular;
    in.font_bold = bold;
    const Limit none;
    const Recheck due{"nuts", "tighten the wheel nuts", "axle1-left",
                      {},     Date{2026, 5, 21},        true,
                      false,  "common practice",        "by 2026-05-21, and before each trip"};
    bool done = make(out + "/hostile.pdf", hostile_job(), in) && make(out + "/empty.pdf", Job{}, in) &&
                write(out + "/hostile.words", hostile_job().all<Visit>()[0].complaint) &&
                make_inspections(out, in, *items) && make_led(out, in);
    in.job_sha256 = std::string(32, '4') + std::string(32, 'f');
    in.due = {&due, 1};
    in.limits = {&none, 1};
    for (const auto& [name, paper] : {std::pair{"full", Paper::a4}, std::pair{"letter", Paper::letter}}) {
        in.paper = paper;
        done = done && make(out + "/" + name + ".pdf", full_job(), in) &&
               write(out + "/" + name + ".texts", texts_of(full_job()) + page_one_texts(in));
    }
    return done ? 0 : 1;
}

// The second page: the trailer and the visit in full, and the whole at a glance; and what the document says of itself.
#include <algorithm>

#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"

namespace cotter {

namespace {

std::string axle_text(const Axle& axle) {
    const std::string studs = axle.studs == 0 ? "" : fmt::format("{} studs a wheel {}", axle.studs, axle.stud_thread);
    const std::string brake =
        axle.brake == BrakeKind::none ? "no brake" : fmt::format("{} brakes", name_of(axle.brake));
    return joined({fmt::format("{} wheels", name_of(axle.wheels)), brake, fmt::format("{} hubs", name_of(axle.hub)),
                   studs, axle.model.empty() ? "" : "axle tag " + axle.model,
                   axle.gawr ? "GAWR " + axle.gawr->text() : "GAWR not recorded"},
                  ", ");
}

// 'None' is also what stands there before anybody has chosen: said only of a trailer that has no brakes to actuate.
std::string actuation_text(const Trailer& t) {
    const bool no_brakes = !t.axles.empty() && std::all_of(t.axles.begin(), t.axles.end(), [](const Axle& axle) {
        return axle.brake == BrakeKind::none;
    });
    if (t.actuation) return std::string(name_of(*t.actuation));
    return no_brakes ? "none" : "not entered";
}

void draw_trailer(Writing& w) {
    const Trailer* t = w.job.only<Trailer>();
    if (t == nullptr) return;
    w.sheet.heading("The trailer");
    std::vector<Labelled> rows{
        {"Unit", t->unit},
        {"Plate", t->plate},
        {"VIN",
         t->vin.empty() ? "not recorded" : t->vin + (t->vin_nonstandard ? " (not a standard VIN: see its photo)" : "")},
        {"Kind, maker", joined({t->kind, t->maker}, ", ")},
        {"Model year", t->model_year == 0 ? "not recorded" : std::to_string(t->model_year)},
        {"GVWR", t->gvwr ? t->gvwr->text() : "not recorded"},
        {"Tyres", joined({t->tyre_size, t->tyre_pressure ? t->tyre_pressure->text() + " cold" : ""}, ", ")},
        {"Brake actuation", actuation_text(*t)},
    };
    for (std::size_t i = 0; i < t->axles.size(); ++i)
        rows.push_back({fmt::format("Axle {} from the front", i + 1), axle_text(t->axles[i])});
    w.sheet.labelled(rows);
}

void draw_visit(Writing& w) {
    const Visit* v = w.job.only<Visit>();
    if (v == nullptr) return;
    w.sheet.heading("The visit");
    w.sheet.labelled({
        {"Opened", w.time(v->opened)},
        {"Technician", joined({v->technician, v->company}, ", ")},
        {"Customer", v->customer},
        {"Place", v->place},
        {"Load", std::string(name_of(v->load))},
        {"Complaint", v->complaint},
        {"Times", "as clocks there showed them, UTC" + offset_text(w.offset_min) +
                      "; where another offset applied it stands behind the time"},
    });
}

}  // namespace

void draw_details(Writing& w) {
    if (w.job.only<Trailer>() == nullptr && w.job.only<Visit>() == nullptr) return;
    w.sheet.part("Trailer and visit");
    draw_trailer(w);
    draw_visit(w);
}

void draw_glance(Writing& w) {
    Sheet& sheet = w.sheet;
    const double plan = w.job.only<Trailer>() == nullptr ? 0 : 128;
    const double rows = 22.0 * static_cast<double>(w.places.size()) + 30;
    sheet.need(60 + std::max(rows, plan == 0 ? 0 : 190.0));
    sheet.part("At a glance");
    const double top = sheet.y();
    if (plan > 0) draw_plan(w, {sheet.left(), top}, plan - 10, 180);
    sheet.indent(plan);
    Table table({{"Place", 1.5}, {"Worst found", 1.55}, {"Worst remaining", 1.55}, {"Recorded", 2}});
    for (const PlaceRecords& p : w.places) {
        const auto worst = p.worst(), left = p.worst_not_repaired();
        table.add({Cell::bold(place_name(p.place)),
                   worst ? Cell::graded(*worst) : Cell(p.empty() ? "not looked at" : "no finding"),
                   left ? Cell::graded(*left) : Cell(worst ? "none left" : "–"),
                   p.empty()
                       ? Cell("nothing recorded")
                       : Cell(joined({count_text(p.findings.size(), "finding"), count_text(p.shots.size(), "photo"),
                                      p.not_taken() == 0 ? "" : count_text(p.not_taken(), "value") + " not taken"},
                                     ", "))});
    }
    if (table.empty()) sheet.paragraph("Nothing is recorded at any place.");
    table.draw(sheet);
    sheet.indent(0);
    if (plan > 0) sheet.move_to(std::max(sheet.y(), top + 188));
    sheet.paragraph(
        "Axles are counted from the front; left and right are seen in the direction of travel. "
        "‘Not looked at’ and ‘no finding’ do not mean that all is well there.",
        kSmall);
}

void draw_cautions(Writing& w) {
    w.sheet.part("What this record is, and is not");
    w.sheet.framed(
        "The manuals of the makers of trailer, axles, brakes and wheels, state and local codes, and a licensed or "
        "qualified inspector prevail over anything in this record. It says what one person saw, measured and did at "
        "the times given. It is no certificate: Cotter never certifies that a trailer is safe or lawful to tow. "
        "Wheel nuts need another check soon after wheels have been off: when and how, the maker's manual says.");
}

void draw_about(Writing& w) {
    w.sheet.need(230);  // all of it on one page
    w.sheet.part("About this document");
    w.sheet.labelled({
        {"Packet", w.in.packet_name},
        {"Revision", std::to_string(w.in.revision)},
        {"Job", w.job.id().text()},
        {"Dated", time_text(w.in.at)},
        {"Made with", w.in.software},
        {"job.json, SHA-256", w.in.job_sha256},
    });
    w.sheet.paragraph(
        "Values stand as they were entered. The packet's job.json holds every record in full, its photos "
        "folder the pictures in full size, and its manifest the checksums of them all.",
        kSmall);
    if (!w.in.job_sha256.empty())
        w.sheet.paragraph(
            "The code on page 1 is the line for data/job.json in this packet's manifest-sha256.txt. job.json holds "
            "every record, so whoever has the packet can tell whether that page belongs to it. The packet's own "
            "fingerprint cannot stand here, as this document is part of what it covers.",
            kSmall);
    if (w.sheet.replaced_signs())
        w.sheet.paragraph(
            "Some texts hold signs that this document's font lacks; they are printed as \xEF\xBF\xBD. "
            "job.json holds them as entered.",
            kSmall);
}

}  // namespace cotter

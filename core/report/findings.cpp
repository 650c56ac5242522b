// Findings: the list for the whole trailer, the details at a place, and what could not be measured.
#include <algorithm>

#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"

namespace cotter {

namespace {

std::string title_of(const Finding& finding) {
    return joined({capital(finding.component), finding.defect}, ": ");
}

// The photos that show a finding, by their names in the packet.
std::string photos_of(const Writing& w, const Finding& finding) {
    std::string out;
    for (const Shot& shot : w.job.all<Shot>()) {
        const auto& tags = w.job.all<Tag>();
        const bool shows = std::any_of(
            tags.begin(), tags.end(), [&](const Tag& tag) { return tag.finding == finding.id && tag.shot == shot.id; });
        if (!shows) continue;
        const std::string name = w.in.photo_name ? w.in.photo_name(shot) : std::string(name_of(shot.slot));
        out += (out.empty() ? "" : ", ") + name;
    }
    return out;
}

std::string outcome_text(const Finding& finding) {
    if (finding.grade == Grade::serviceable && finding.outcome == Outcome::open && finding.outcome_note.empty())
        return "Nothing to do";
    return joined({capital(name_of(finding.outcome)), finding.outcome_note}, ": ");
}

template <class R>
void add_gaps(Writing& w, Table& table, const std::vector<const R*>& records, std::string R::*what) {
    for (const R* r : records)
        if (r->taken != Taken::measured)
            table.add({place_name(r->place), capital(r->*what), Cell::bold(capital(name_of(r->taken))),
                       r->reason.empty() ? Cell("no reason given") : Cell(r->reason), w.when_who(r->at, r->by)});
}

}  // namespace

void draw_finding_list(Writing& w) {
    w.sheet.part("Findings, the gravest first");
    std::vector<const Finding*> sorted;
    for (const Finding& finding : w.job.all<Finding>()) sorted.push_back(&finding);
    std::stable_sort(sorted.begin(), sorted.end(), [](auto* a, auto* b) { return a->grade > b->grade; });
    Table table({{"No. and grade", 1.4}, {"Place", 1.05}, {"Finding", 1.9}, {"What to do", 1.75}, {"Outcome", 1.65}});
    for (const Finding* f : sorted)
        table.add({Cell::graded(f->grade, finding_number(w.job, f->id)), place_name(f->place), Cell::bold(title_of(*f)),
                   f->todo, outcome_text(*f)});
    if (table.empty()) w.sheet.paragraph("No finding is recorded.");
    table.draw(w.sheet);
}

void draw_gaps(Writing& w) {
    w.sheet.part("Not measured, not accessible");
    Table table({{"Place", 1.1}, {"What", 1.4}, {"Result", 1.1}, {"Reason", 2.2}, {"When, who", 1.5}});
    bool any = false;
    for (const PlaceRecords& p : w.places) {
        any = any || !p.readings.empty() || !p.torques.empty() || !p.levels.empty();
        add_gaps(w, table, p.readings, &Reading::what);
        add_gaps(w, table, p.torques, &Torque::joint);
        add_gaps(w, table, p.levels, &Level::fluid);
    }
    if (!any)
        w.sheet.paragraph("This record holds no reading, torque or fluid level.");
    else if (table.empty())
        w.sheet.paragraph("Every reading, torque and fluid level in this record has its value.");
    table.draw(w.sheet);
}

void draw_findings_at(Writing& w, const PlaceRecords& records) {
    if (records.findings.empty()) return;
    Table table({{"No. and grade", 1.4}, {"Finding", 2.5}, {"What to do, outcome", 2.3}, {"When, who", 1.35}});
    for (const Finding* f : records.findings) {
        const std::string wheel = f->place.wheel == Wheel::only ? "" : fmt::format("{} wheel", name_of(f->place.wheel));
        const std::string photos = photos_of(w, *f);
        table.add({Cell::graded(f->grade, finding_number(w.job, f->id)),
                   joined({title_of(*f), wheel, f->note, photos.empty() ? "" : "Shown in " + photos}, "\n"),
                   joined({f->todo.empty() ? "" : "To do: " + f->todo, outcome_text(*f)}, "\n"),
                   w.when_who(f->at, f->by)});
    }
    table.draw(w.sheet, "Findings");
}

}  // namespace cotter

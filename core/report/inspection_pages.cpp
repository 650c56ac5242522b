// The periodic inspection: every field of 49 CFR 396.21 when all of it is answered, else plainly that it is none yet.
#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"

namespace cotter {

namespace {

const InspectionAnswer* answer_of(const Job& job, const InspectionItem& item) {
    for (const InspectionAnswer& answer : job.all<InspectionAnswer>())
        if (answer.item == item.id) return &answer;
    return nullptr;
}

void draw_missing(Writing& w, const InspectionState& state) {
    w.sheet.framed(
        "NO INSPECTION REPORT: a periodic inspection was begun and is not complete. Nothing here may be used as the "
        "report that 49 CFR 396.21 asks for.",
        kStrong);
    w.sheet.paragraph(fmt::format("{} of {} items are answered. Missing:", state.answered, state.wanted));
    constexpr std::size_t most = 12;
    for (std::size_t i = 0; i < std::min(state.missing.size(), most); ++i)
        w.sheet.paragraph("– " + state.missing[i], kSmall);
    if (state.missing.size() > most)
        w.sheet.paragraph(fmt::format("– and {} more", state.missing.size() - most), kSmall);
}

void draw_head(Writing& w, const Inspection& head, const InspectionState& state) {
    const Trailer& t = *w.job.only<Trailer>();
    const std::string result = state.not_ok.empty()
                                   ? "Every item passes."
                                   : fmt::format("{} not pass.", count_text(state.not_ok.size(), "item") +
                                                                     (state.not_ok.size() == 1 ? " does" : " do"));
    w.sheet.framed(result + " The inspector named below says so; Cotter certifies nothing.", kStrong);
    w.sheet.labelled({
        {"1. Inspector", head.inspector},
        {"Qualified by (396.19)", head.qualified_by},
        {"For brakes (396.25)", head.brake_qualified_by},
        {"2. Motor carrier", head.carrier},
        {"3. Date", head.date->text()},
        {"4. Vehicle", joined({t.unit.empty() ? "" : "unit " + t.unit, t.plate.empty() ? "" : "plate " + t.plate,
                               "VIN " + t.vin, t.maker, std::to_string(t.model_year), t.kind},
                              ", ")},
        {"5. Components", "each item with its result in the table below"},
        {"6. Statement", "“" + head.statement + "”"},
        {"Kept until", months_later(*head.date, 14).text() + " at least, where the vehicle is housed or maintained"},
        {"Next one due",
         state.passes() ? "by " + months_later(*head.date, 12).text() + " (396.17)" : "once everything passes"},
    });
}

void draw_items(Writing& w) {
    std::string group;
    std::vector<std::pair<std::string, Table>> tables;
    for (const InspectionItem* item : items_to_answer(w.in.inspection, *w.job.only<Trailer>())) {
        if (tables.empty() || item->group != group)
            tables.emplace_back(item->group,
                                Table({{"Item", 0.7}, {"Does not pass when", 3.6}, {"Result", 0.8}, {"Remark", 1.9}}));
        group = item->group;
        const InspectionAnswer* answer = answer_of(w.job, *item);
        const std::string said = answer == nullptr ? "not answered" : std::string(name_of(answer->answer));
        const bool good = answer != nullptr && answer->answer != Answer::not_ok;
        tables.back().second.add(
            {item->id, item->fails, good ? Cell(said) : Cell::bold(said), answer == nullptr ? "" : answer->remark});
    }
    for (const auto& [title, table] : tables) table.draw(w.sheet, title);
}

}  // namespace

void draw_inspection(Writing& w) {
    const Inspection* head = w.job.only<Inspection>();
    if (head == nullptr || w.in.inspection.empty() || w.job.only<Trailer>() == nullptr) return;
    const InspectionState state = inspection_gaps(w.job, w.in.inspection);
    w.sheet.start_page();
    w.sheet.part("Periodic inspection, 49 CFR 396.17 and 396.21");
    if (!state.complete()) return draw_missing(w, state);
    draw_head(w, *head, state);
    draw_items(w);
}

}  // namespace cotter

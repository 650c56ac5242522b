// See shelf_screen.h.
#include "app/screens/shelf_screen.h"

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_rows(UiContext& ui, const ShelfView& view, ShelfState& state) {
    for (const ShelfRow& offer : view.rows) {
        RowSpec spec;
        spec.under = offer.under;
        spec.value = offer.price;
        spec.icon = offer.in_job ? Icon::check : offer.old ? Icon::help : Icon::sheet;
        if (row(ui, {offer.title, offer.offer.id.text()}, spec)) state.open = offer.offer.id;
    }
}

void draw_one(UiContext& ui, const ShelfView& view, const ShelfRow& row, ShelfState& state, Commands& out) {
    const bool take = view.chrome.has_job && !row.in_job;
    const SheetSpec spec{"shelved",
                         row.title,
                         {{{"Forget", "forget"}, Tone::quiet, Icon::erase, true, false},
                          {{"Take into this job", "take"}, Tone::strong, Icon::plus, take, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        const Offer& offer = row.offer;
        fact(ui, "One pack", row.price);
        paragraph(ui, row.under);
        if (offer.lead_days > 0)
            fact(ui, "Takes", count_words(static_cast<std::size_t>(offer.lead_days), "day", "days"));
        if (offer.warranty_months > 0) fact(ui, "Warranty", fmt::format("{} months", offer.warranty_months));
        if (row.in_job) paragraph(ui, "This job has it already.", true);
        if (row.old) remark(ui, "An old price", "Ask again before you quote it.");
    });
    if (answer.action == 0u) out.push_back(ForgetOffer{row.offer.id});
    if (answer.action == 1u) {
        Offer taken = row.offer;
        taken.id = {};
        taken.shot.reset();
        out.push_back(PutOffer{std::move(taken)});
    }
    if (answer.closed || answer.action) state.open.reset();
}

void draw_job_rows(UiContext& ui, const ShelfView& view, ShelfState& state) {
    if (view.in_job.empty()) return;
    heading(ui, "In this job");
    for (const JobOfferRow& offer : view.in_job) {
        RowSpec spec;
        spec.under = offer.under;
        spec.value = offer.price;
        spec.icon = Icon::sheet;
        if (row(ui, {offer.title, "job " + offer.id.text()}, spec)) state.of_job = offer.id;
    }
}

void draw_of_job(UiContext& ui, const JobOfferRow& offer, ShelfState& state, Commands& out) {
    const bool free = offer.quote.empty();
    const SheetSpec spec{"of job",
                         offer.title,
                         {{{"Take it out of this job", "take out"}, Tone::danger, Icon::erase, free, false},
                          {{"Done", "done"}, Tone::strong, Icon::check, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        fact(ui, "One pack", offer.price);
        paragraph(ui, offer.under);
        if (free)
            paragraph(ui, "The price shelf keeps what it knows of it.", true);
        else
            remark(ui, "It stays", fmt::format("The quote '{}' buys from it.", offer.quote));
    });
    if (answer.action == 0u) out.push_back(RemoveOffer{offer.id});
    if (answer.closed || answer.action) state.of_job.reset();
}

}  // namespace

void draw_shelf(UiContext& ui, const ShelfView& view, ShelfState& state, Commands& out) {
    std::vector<ActionSpec> actions;
    if (!view.rows.empty()) actions.push_back({{"Add an offer", "add"}, Tone::strong, Icon::plus, true, true});
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "shelf", actions), [&] {
        if (view.rows.empty() && empty_state(ui, "Nothing on the shelf",
                                             "Prices you have seen, with supplier and day, for this job and the next.",
                                             {"Add the first offer", "first offer"}))
            out.push_back(GoTo{{Screen::offer, {}, {}}});
        draw_rows(ui, view, state);
        draw_job_rows(ui, view, state);
        heading(ui, "As a file");
        RowSpec from;
        from.under = "A CSV file, as a spreadsheet writes it";
        if (row(ui, "Take offers from a file", from)) out.push_back(GoTo{{Screen::offers_file, {}, {}}});
        if (view.rows.empty()) return;
        const std::string where = view.folder.empty() ? "To be sent or saved" : "Into " + view.folder;
        RowSpec to;
        to.under = where;
        to.leads_on = false;
        if (row(ui, "Write the shelf to a file", to)) out.push_back(WriteOffers{});
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoTo{{Screen::offer, {}, {}}});
    for (const ShelfRow& row : view.rows)
        if (state.open == row.offer.id) return draw_one(ui, view, row, state, out);
    for (const JobOfferRow& offer : view.in_job)
        if (state.of_job == offer.id) return draw_of_job(ui, offer, state, out);
}

}  // namespace cotter

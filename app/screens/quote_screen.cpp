// See quote_screen.h.
#include "app/screens/quote_screen.h"

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/screens/wide.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_total(UiContext& ui, const QuoteView& view) {
    fact(ui, "Total", view.total);
    if (!view.per_corner.empty()) fact(ui, "A corner", view.per_corner);
    fact(ui, "State", view.standing);
    for (const auto& [label, value] : view.facts) fact(ui, label, value);
    if (view.gaps.empty()) return;
    remark(ui, "Know this", fmt::format("{}", fmt::join(view.gaps, "\n")));
}

void draw_lines(UiContext& ui, const QuoteView& view) {
    heading(ui, "Lines");
    for (const QuoteLineRow& line : view.lines) {
        const std::string title = fmt::format("{}. {}", line.number, line.text);
        if (!line.basis.empty()) paragraph(ui, title);
        fact(ui, line.basis.empty() ? title : line.basis, line.price);
        if (!line.answer.empty()) paragraph(ui, line.answer, true);
    }
}

void draw_changes(UiContext& ui, const QuoteView& view, Commands& out) {
    space(8);
    if (view.draft && wide_button(ui, "Remove this draft")) {
        out.push_back(RemoveQuote{view.quote.id});
        out.push_back(GoBackIfDone{});
    }
    if (view.offered && wide_button(ui, "Change it: a new version")) {
        out.push_back(RenewQuote{view.quote.id});
        out.push_back(GoBackIfDone{});
    }
}

// One of the two sides: chips of all quotes.
void draw_side(UiContext& ui, const CompareView& view, std::string_view title, bool first, Commands& out) {
    heading(ui, title);
    std::vector<ChipSpec> specs;
    for (const auto& [id, name] : view.quotes) specs.push_back({{name, id}, id == (first ? view.a : view.b), true, {}});
    const auto tapped = chips(ui, title, specs);
    if (!tapped) return;
    const std::string& id = view.quotes[*tapped].first;
    out.push_back(GoInstead{{Screen::compare, {}, first ? id + " " + view.b : view.a + " " + id}});
}

void draw_reasons(UiContext& ui, const CompareView& view) {
    if (!view.problem.empty()) return paragraph(ui, view.problem);
    heading(ui, view.headline);
    for (const ReasonRow& reason : view.reasons) {
        fact(ui, reason.what, reason.amount);
        paragraph(ui, reason.words, true);
    }
    space(8);
    fact(ui, "Together", view.sum);
    if (view.remarks.empty()) return;
    heading(ui, "Beside the price");
    for (const std::string& line : view.remarks) paragraph(ui, line);
}

}  // namespace

void draw_quote(UiContext& ui, const QuoteView& view, Commands& out) {
    const std::string key = "quote " + view.quote.id.text();
    ScreenSpec spec = screen_of(view.chrome, key,
                                {{{"Why this price?", "why"}, Tone::quiet, Icon::none, view.there, false},
                                 {{"Show the customer", "customer"}, Tone::strong, Icon::next, view.there, true}});
    spec.wide = ui.width >= kWide;
    const ScreenAnswer answer = screen(ui, spec, [&] {
        if (!view.there) return paragraph(ui, "This quote is not there any more.");
        side_by_side(
            ui, 0.4F, 260, [&] { draw_total(ui, view); }, [&] { draw_lines(ui, view); });
        draw_changes(ui, view, out);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoTo{{Screen::compare, {}, view.quote.id.text()}});
    if (answer.tapped(1)) out.push_back(GoTo{{Screen::customer, {}, view.quote.id.text()}});
}

void draw_compare(UiContext& ui, const CompareView& view, Commands& out) {
    ScreenSpec spec = screen_of(view.chrome, "compare");
    spec.wide = ui.width >= kWide;
    const ScreenAnswer answer = screen(ui, spec, [&] {
        if (view.quotes.size() < 2) return paragraph(ui, "Two quotes are needed. 'Work out' makes one for each aim.");
        side_by_side(
            ui, 0.4F, 240,
            [&] {
                draw_side(ui, view, "Why does this one cost what it does", true, out);
                draw_side(ui, view, "against this one", false, out);
            },
            [&] { draw_reasons(ui, view); });
    });
    answer_chrome(answer, out);
}

}  // namespace cotter

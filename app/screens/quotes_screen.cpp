// See quotes_screen.h.
#include "app/screens/quotes_screen.h"

#include <array>
#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/screens/wide.h"
#include "app/ui/widgets.h"
#include "core/quote/exact.h"

namespace cotter {

namespace {

void draw_needs(UiContext& ui, const QuotesView& view, QuotesState& state, Commands& out) {
    heading(ui, "Needed");
    for (const NeedRow& need : view.needs) {
        RowSpec spec;
        spec.under = need.under;
        spec.value = need.amount;
        spec.grade = need.worst;
        spec.icon = need.worst ? Icon::none : Icon::open_pin;
        if (row(ui, {need.title, need.need.id.text()}, spec)) state.need = need.need.id;
    }
    if (view.needs.empty())
        paragraph(ui, "Findings graded 'repair' or 'do not tow' say what is needed. Each number can be changed.", true);
    if (wide_button(ui, "Take from the findings")) out.push_back(DeriveNeeds{});
    if (wide_button(ui, "Add something needed")) {
        state.adding = true;
        state.item.clear();
    }
}

void draw_means(UiContext& ui, const QuotesView& view, QuotesState& state, Commands& out) {
    heading(ui, "Offers and terms");
    const std::string offers = fmt::format("{} here, {} on the shelf", view.offers.size(), view.shelved);
    RowSpec shelf;
    shelf.value = offers;
    if (row(ui, "Offers", shelf)) out.push_back(GoTo{{Screen::shelf, {}, {}}});
    const ShopTerms& shop = view.settings.shop;
    const std::string rate = shop.hour_rate == 0 ? "no hourly rate" : money_text(shop.hour_rate) + " an hour";
    RowSpec terms;
    terms.value = rate;
    if (row(ui, "Our own terms", terms)) state.terms_open = true;
}

void draw_sorting(UiContext& ui, QuotesState& state) {
    constexpr std::array<std::string_view, 4> kWords{"By price", "By day", "Complete first", "By warranty"};
    std::vector<ChipSpec> specs;
    for (std::size_t i = 0; i < kWords.size(); ++i)
        specs.push_back({kWords[i], static_cast<std::size_t>(state.by) == i, true, {}});
    if (const auto i = chips(ui, "sorted", specs)) state.by = static_cast<SortBy>(*i);
}

void draw_rows(UiContext& ui, const QuotesView& view, QuotesState& state, Commands& out) {
    heading(ui, "Quotes");
    if (view.quotes.empty())
        paragraph(ui, "None yet. With needs and offers there, 'Work out' makes one for each aim.", true);
    if (view.quotes.size() > 1) draw_sorting(ui, state);
    for (const QuoteRow& quote : view.quotes) {
        RowSpec spec;
        const std::string under = fmt::format("{}. {}", upper_first(quote.standing), quote.under);
        spec.under = under;
        spec.value = quote.price;
        spec.icon = Icon::sheet;
        if (row(ui, {quote.title, quote.id.text()}, spec)) out.push_back(GoTo{{Screen::quote, {}, quote.id.text()}});
    }
    if (view.quotes.size() > 1 && row(ui, "Why is one dearer?")) out.push_back(GoTo{{Screen::compare, {}, {}}});
    if (!view.offers.empty() && !view.needs.empty() && row(ui, "Choose packs by hand")) state.hand_open = true;
}

}  // namespace

void draw_quotes(UiContext& ui, const QuotesView& view, QuotesState& state, Commands& out) {
    ScreenSpec spec = screen_of(view.chrome, "quotes",
                                {{{"Add an offer", "add offer"}, Tone::quiet, Icon::plus, true, false},
                                 {{"Work out", "work out"}, Tone::strong, Icon::check, view.can_draft, true}});
    spec.wide = ui.width >= kWide;
    const ScreenAnswer answer = screen(ui, spec, [&] {
        const auto needs = [&] {
            draw_needs(ui, view, state, out);
            draw_means(ui, view, state, out);
        };
        side_by_side(ui, 0.5F, 300, needs, [&] { draw_rows(ui, view, state, out); });
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoTo{{Screen::offer, {}, {}}});
    if (answer.tapped(1)) out.push_back(DraftQuotes{view.terms});
    draw_quotes_sheets(ui, view, state, out);
}

}  // namespace cotter

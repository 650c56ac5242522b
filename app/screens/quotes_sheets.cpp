// The sheets of the quote page: one need, the shop's terms, packs by hand, and the keypad for their numbers.
#include <algorithm>
#include <array>
#include <fmt/format.h>

#include "app/screens/quotes_screen.h"
#include "app/screens/words_field.h"
#include "app/ui/keypad.h"
#include "app/ui/widgets.h"
#include "core/base/money.h"
#include "core/quote/exact.h"
#include "core/quote/needs.h"

namespace cotter {

namespace {

void open_pad(QuotesState& state, QuoteNumber number, std::string title, std::vector<std::string> units = {"1"}) {
    KeypadSpec spec;
    spec.title = std::move(title);
    spec.units = std::move(units);
    state.pad.emplace(std::move(spec));
    state.number = number;
}

std::vector<std::string> units_of_basis(const Need& need) {
    if (need.wanted.basis == Basis::volume) return {"mL", "L", "[foz_us]", "[qt_us]"};
    if (need.wanted.basis == Basis::length) return {"m", "[ft_i]"};
    return {"1"};
}

const NeedRow* open_need(const QuotesView& view, const QuotesState& state) {
    for (const NeedRow& row : view.needs)
        if (row.need.id == state.need) return &row;
    return nullptr;
}

void draw_need(UiContext& ui, const NeedRow& need, QuotesState& state, Commands& out) {
    const SheetSpec spec{
        "need",
        need.title,
        {{{need.out ? "Take in again" : "Leave out", "leave out"}, Tone::quiet, Icon::none, true, false},
         {{"Change the number", "change"}, Tone::strong, Icon::none, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        fact(ui, "Wanted in all", need.amount);
        if (!need.need.note.empty()) paragraph(ui, upper_first(need.need.note));
        if (!need.under.empty()) paragraph(ui, need.under, true);
        for (const std::string& part : need.need.must_include) paragraph(ui, "Belongs to it: " + part, true);
    });
    if (answer.action == 0u) out.push_back(LeaveOutNeed{need.need.id, !need.out});
    if (answer.action == 1u) open_pad(state, QuoteNumber::need, need.title, units_of_basis(need.need));
    if (answer.closed || answer.action == 0u) state.need.reset();
}

// Something needed without a finding: which item, then how much of it.
void draw_adding(UiContext& ui, const QuotesView& view, QuotesState& state, Commands& out) {
    constexpr std::string_view kOther = "other item";
    const WordsDraft* words = view.drafts.words();
    const std::string item =
        words != nullptr && words->field == kOther && !words->text.empty() ? words->text : state.item;
    const SheetSpec spec{"adding",
                         "What is needed?",
                         {{{"How much of it?", "how much"}, Tone::strong, Icon::next, !item_key(item).empty(), true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        std::vector<ChipSpec> specs;
        for (const std::string& i : view.items) specs.push_back({i, i == item, true, {}});
        if (const auto tapped = chips(ui, "needed", specs)) state.item = view.items[*tapped];
        words_field(
            ui, {"Something else", kOther}, {"", "what it is called", "", TextKind::plain, 100}, view.drafts,
            [&](const std::string& text) {
                if (!text.empty()) state.item = text;
            },
            out);
    });
    if (answer.action == 0u) {
        state.item = item;
        open_pad(state, QuoteNumber::fresh_need, item, units_of_basis(need_by_hand(item)));
    }
    if (answer.closed || answer.action) state.adding = false;
}

struct TermRow {
    const char* label;
    std::string value;
    QuoteNumber number;
    const char* unit;
};

void draw_terms(UiContext& ui, const QuotesView& view, QuotesState& state, Commands& out) {
    const ShopTerms& shop = view.settings.shop;
    const auto money = [](std::int64_t minor) { return minor == 0 ? std::string("not charged") : money_text(minor); };
    const auto number = [](const Number& n, const char* unit) {
        return n.value() == 0 ? std::string("none") : n.text() + unit;
    };
    const std::array rows{
        TermRow{"Hourly rate", money(shop.hour_rate), QuoteNumber::rate, "1"},
        TermRow{"Hours for each trailer", number(shop.hours_trailer, " h"), QuoteNumber::hours_trailer, "1"},
        TermRow{"Hours for each corner", number(shop.hours_corner, " h"), QuoteNumber::hours_corner, "1"},
        TermRow{"Coming a second time", money(shop.second_call_out), QuoteNumber::call_out, "1"},
        TermRow{"Tax", number(shop.tax_percent, " %"), QuoteNumber::tax, "%"}};
    constexpr std::array kDays{0, 7, 14, 30};
    const SheetAnswer answer =
        sheet(ui, {"terms", "Our own terms", {{"Done", Tone::strong, Icon::check, true, true}}}, [&] {
            if (!state.wrong.empty()) remark(ui, "Not taken", state.wrong);
            for (const TermRow& term : rows) {
                RowSpec spec;
                spec.value = term.value;
                if (row(ui, term.label, spec)) open_pad(state, term.number, term.label, {term.unit});
            }
            paragraph(ui, fmt::format("Money in {}. An offered price is valid for", shop.currency), true);
            std::vector<ChipSpec> specs;
            const std::array<std::string_view, 4> words{"no last day", "7 days", "14 days", "30 days"};
            for (std::size_t i = 0; i < kDays.size(); ++i)
                specs.push_back({words[i], shop.valid_days == kDays[i], true, {}});
            const auto tapped = chips(ui, "valid", specs);
            if (!tapped) return;
            Settings settings = view.settings;
            settings.shop.valid_days = kDays[*tapped];
            out.push_back(PutSettings{std::move(settings)});
        });
    if (answer.closed || answer.action) state.terms_open = false;
}

void draw_hand(UiContext& ui, const QuotesView& view, QuotesState& state, Commands& out) {
    state.packs.resize(view.offers.size());
    const bool any = std::any_of(state.packs.begin(), state.packs.end(), [](std::int64_t n) { return n > 0; });
    const SheetSpec spec{"hand", "How many packs of each?", {{"Make the quote", Tone::strong, Icon::check, any, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        for (std::size_t i = 0; i < view.offers.size(); ++i) {
            const Offer& offer = view.offers[i];
            RowSpec one;
            const std::string under = fmt::format("{}, {} {}", offer.supplier, money_text(offer.price), offer.currency);
            const std::string value = fmt::format("{} ×", state.packs[i]);
            one.under = under;
            one.value = value;
            if (!row(ui, {offer.title, offer.id.text()}, one)) continue;
            state.pack = i;
            open_pad(state, QuoteNumber::packs, offer.title);
        }
    });
    if (answer.action) out.push_back(DraftByHand{view.terms, state.packs});
    if (answer.closed || answer.action) state.hand_open = false;
}

void put_term(const QuotesView& view, QuotesState& state, const Number& number, Commands& out) {
    const QuoteNumber which = state.number;
    Settings settings = view.settings;
    ShopTerms& shop = settings.shop;
    const auto money = Money::parse(number.text(), shop.currency);
    const bool price = which == QuoteNumber::rate || which == QuoteNumber::call_out;
    state.wrong = price && !money ? money.error().line() : "";
    if (!state.wrong.empty()) return;
    const std::int64_t minor = money ? money->minor : 0;
    if (which == QuoteNumber::rate) shop.hour_rate = minor;
    if (which == QuoteNumber::call_out) shop.second_call_out = minor;
    if (which == QuoteNumber::hours_trailer) shop.hours_trailer = number;
    if (which == QuoteNumber::hours_corner) shop.hours_corner = number;
    if (which == QuoteNumber::tax) shop.tax_percent = number;
    out.push_back(PutSettings{std::move(settings)});
}

void take_number(const QuotesView& view, QuotesState& state, Commands& out) {
    const Number number = *state.pad->number();
    if (state.number == QuoteNumber::packs) {
        state.packs[state.pack] = static_cast<std::int64_t>(std::clamp(number.value(), 0.0, 9'999.0));
        return;
    }
    if (state.number == QuoteNumber::fresh_need) {
        Need need = need_by_hand(state.item);
        need.wanted.amount = {number, state.pad->unit()};
        out.push_back(PutNeed{std::move(need)});
        return;
    }
    if (state.number != QuoteNumber::need) return put_term(view, state, number, out);
    const NeedRow* row = open_need(view, state);
    if (row == nullptr) return;
    Need need = row->need;
    need.wanted.amount = {number, state.pad->unit()};
    out.push_back(PutNeed{std::move(need)});
    state.need.reset();
}

}  // namespace

void draw_quotes_sheets(UiContext& ui, const QuotesView& view, QuotesState& state, Commands& out) {
    if (state.pad) {
        const KeypadAnswer answer = keypad_sheet(ui, "number", *state.pad);
        if (answer == KeypadAnswer::done) take_number(view, state, out);
        if (answer != KeypadAnswer::none) state.pad.reset();
        return;
    }
    if (const NeedRow* need = open_need(view, state)) return draw_need(ui, *need, state, out);
    if (state.adding) return draw_adding(ui, view, state, out);
    if (state.terms_open) return draw_terms(ui, view, state, out);
    if (state.hand_open) draw_hand(ui, view, state, out);
}

}  // namespace cotter

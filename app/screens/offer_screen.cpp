// The page to enter an offer: taps for the usual, the keypad for money. See shelf_screen.h.
#include <array>
#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/screens/shelf_screen.h"
#include "app/screens/words_field.h"
#include "app/ui/keypad.h"
#include "app/screens/wide.h"
#include "app/ui/widgets.h"
#include "core/base/money.h"
#include "core/quote/extent.h"
#include "core/quote/needs.h"

namespace cotter {

namespace {

using OfferChange = std::function<void(Offer&)>;

void change(const OfferView& view, Commands& out, const OfferChange& how) {
    Drafts drafts = view.drafts;
    Offer offer = view.offer;
    how(offer);
    drafts.offer = std::move(offer);
    out.push_back(KeepDrafts{std::move(drafts)});
}

// What it is for: one item of the needs. A kit of several is entered as the first and completed by CSV.
void draw_item(UiContext& ui, const OfferView& view, Commands& out) {
    heading(ui, "For what?");
    const std::string item = view.offer.covers.empty() ? "" : view.offer.covers[0].item;
    std::vector<ChipSpec> specs;
    for (const std::string& i : view.items) specs.push_back({i, i == item, true, {}});
    const auto tapped = chips(ui, "items", specs);
    if (!tapped) return;
    change(view, out, [&](Offer& offer) {
        const std::string& chosen = view.items[*tapped];
        const ReplaceRule* rule = rule_for(chosen);
        Cover cover;
        cover.item = chosen;
        cover.extent.basis = rule == nullptr ? Basis::pieces : rule->basis;
        const bool counted = cover.extent.basis == Basis::corners || cover.extent.basis == Basis::pieces;
        cover.extent.amount.unit = counted ? "1" : cover.extent.basis == Basis::volume ? "L" : "m";
        offer.covers = {std::move(cover)};
        offer.title = chosen;
    });
}

void draw_covers(UiContext& ui, const OfferView& view, OfferState& state, Commands& out) {
    if (view.offer.covers.empty()) return;
    const Extent& extent = view.offer.covers[0].extent;
    heading(ui, "One pack covers");
    const bool counted = extent.basis == Basis::corners || extent.basis == Basis::pieces;
    const bool given = extent.amount.number.value() > 0;
    if (counted) {
        constexpr std::array kCounts{1, 2, 4};
        std::vector<std::string> labels;
        for (const int n : kCounts)
            labels.push_back(extent_text(extent.basis == Basis::corners ? corners(n) : pieces(n)));
        std::vector<ChipSpec> specs;
        for (std::size_t i = 0; i < kCounts.size(); ++i)
            specs.push_back({labels[i], extent.amount.number.value() == kCounts[i], true, {}});
        if (const auto i = one_of(ui, "covers", specs))
            change(view, out, [&](Offer& o) {
                o.covers[0].extent = extent.basis == Basis::corners ? corners(kCounts[*i]) : pieces(kCounts[*i]);
            });
    }
    RowSpec spec;
    const std::string value = given ? extent_text(extent) : "not said";
    spec.value = value;
    if (!row(ui, counted ? "Another number" : "How much", spec)) return;
    KeypadSpec pad;
    pad.title = "One pack covers";
    pad.units = counted                         ? std::vector<std::string>{"1"}
                : extent.basis == Basis::volume ? std::vector<std::string>{"L", "mL", "[qt_us]", "[foz_us]"}
                                                : std::vector<std::string>{"m", "[ft_i]"};
    state.pad.emplace(std::move(pad));
    state.number = OfferNumber::covers;
}

void draw_supplier(UiContext& ui, const OfferView& view, Commands& out) {
    heading(ui, "From whom?");
    std::vector<ChipSpec> specs;
    for (const std::string& s : view.suppliers) specs.push_back({s, s == view.offer.supplier, true, {}});
    const auto put = [&](const std::string& name) { change(view, out, [&](Offer& o) { o.supplier = name; }); };
    if (const auto i = chips(ui, "suppliers", specs)) put(view.suppliers[*i]);
    const FieldAnswer field = text_field(ui, {"Supplier", "supplier"}, {view.offer.supplier, "who sells it", ""});
    if (field.text) put(*field.text);
}

void draw_money(UiContext& ui, const OfferView& view, OfferState& state) {
    heading(ui, "What does it cost?");
    if (!state.wrong.empty()) remark(ui, "Not taken", state.wrong);
    const std::array rows{std::tuple{"One pack", &view.price, OfferNumber::price},
                          std::tuple{"Freight, once", &view.freight, OfferNumber::freight},
                          std::tuple{"Deposit on the old part", &view.core, OfferNumber::core}};
    for (const auto& [label, value, which] : rows) {
        RowSpec spec;
        const std::string text = value->empty() ? std::string(which == OfferNumber::price ? "not entered" : "none")
                                                : *value + " " + view.offer.currency;
        spec.value = text;
        if (!row(ui, label, spec)) continue;
        KeypadSpec pad;
        pad.title = fmt::format("{}, {}", label, view.offer.currency);
        pad.units = {"1"};
        state.pad.emplace(std::move(pad));
        state.number = which;
    }
}

void draw_rest(UiContext& ui, const OfferView& view, Commands& out) {
    constexpr std::array kDays{0, 1, 3, 5, 10};
    constexpr std::array<std::string_view, 5> kDayWords{"today", "1 day", "3 days", "5 days", "10 days"};
    heading(ui, "When and how good?");
    std::vector<ChipSpec> days;
    for (std::size_t i = 0; i < kDays.size(); ++i)
        days.push_back({kDayWords[i], view.offer.lead_days == kDays[i], true, {}});
    if (const auto i = chips(ui, "days", days)) change(view, out, [&](Offer& o) { o.lead_days = kDays[*i]; });
    constexpr std::array kMonths{0, 12, 24, 36};
    constexpr std::array<std::string_view, 4> kMonthWords{"no warranty", "12 months", "24 months", "36 months"};
    std::vector<ChipSpec> months;
    for (std::size_t i = 0; i < kMonths.size(); ++i)
        months.push_back({kMonthWords[i], view.offer.warranty_months == kMonths[i], true, {}});
    if (const auto i = chips(ui, "months", months))
        change(view, out, [&](Offer& o) { o.warranty_months = kMonths[*i]; });
    if (toggle(ui, {"Warranty pays labour too", "labour"}, view.offer.warranty_labour))
        change(view, out, [](Offer& o) { o.warranty_labour = !o.warranty_labour; });
    if (toggle(ui, {"The maker's own part", "maker"}, view.offer.maker_supplied))
        change(view, out, [](Offer& o) { o.maker_supplied = !o.maker_supplied; });
}

void draw_pad(UiContext& ui, const OfferView& view, OfferState& state, Commands& out) {
    const KeypadAnswer answer = keypad_sheet(ui, "offer number", *state.pad);
    if (answer == KeypadAnswer::done) {
        const Amount amount{*state.pad->number(), state.pad->unit()};
        const auto money = Money::parse(amount.number.text(), view.offer.currency);
        const bool taken = money || state.number == OfferNumber::covers;
        const std::int64_t minor = money ? money->minor : 0;
        state.wrong = taken ? "" : money.error().line();
        if (taken)
            change(view, out, [&](Offer& o) {
                if (state.number == OfferNumber::price) o.price = minor;
                if (state.number == OfferNumber::freight) o.freight = minor;
                if (state.number == OfferNumber::core) o.core = minor;
                if (state.number == OfferNumber::covers && !o.covers.empty()) o.covers[0].extent.amount = amount;
            });
    }
    if (answer != KeypadAnswer::none) state.pad.reset();
}

}  // namespace

void draw_offer(UiContext& ui, const OfferView& view, OfferState& state, Commands& out) {
    const bool good = view.missing.empty();
    ScreenSpec spec =
        screen_of(view.chrome, "offer", {{{"Keep this offer", "keep"}, Tone::strong, Icon::check, good, true}});
    spec.wide = ui.width >= kWide;
    const ScreenAnswer answer = screen(ui, spec, [&] {
        const auto what = [&] {
            draw_item(ui, view, out);
            draw_covers(ui, view, state, out);
            draw_supplier(ui, view, out);
        };
        const auto price = [&] {
            draw_money(ui, view, state);
            draw_rest(ui, view, out);
            if (!good) paragraph(ui, view.missing);
        };
        side_by_side(ui, 0.5F, 300, what, price);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) {
        out.push_back(KeepOffer{view.offer});
        out.push_back(GoBackIfDone{});
    }
    if (state.pad) draw_pad(ui, view, state, out);
}

}  // namespace cotter

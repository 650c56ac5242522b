// See customer_screen.h.
#include "app/screens/customer_screen.h"

#include <array>
#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/screens/words_field.h"
#include "app/screens/wide.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void keep(const CustomerView& view, AnswerDraft answer, Commands& out) {
    Drafts drafts = view.drafts;
    drafts.answer = std::move(answer);
    out.push_back(KeepDrafts{std::move(drafts)});
}

void draw_line(UiContext& ui, const CustomerView& view, const CustomerLine& line, Commands& out) {
    heading(ui, line.what);
    fact(ui, "Price", line.price);
    for (const std::string& why : line.why) fact(ui, "Why", why);
    if (line.grade) fact(ui, "How bad it is", name_of(*line.grade));
    if (!view.can_answer) {
        if (line.answer != LineAnswerNow::open)
            fact(ui, "Your answer", line.answer == LineAnswerNow::yes ? "yes" : "no");
        return;
    }
    const std::string key = fmt::format("line {}", line.number);
    const std::array specs{ChipSpec{{"Yes", key + " yes"}, line.answer == LineAnswerNow::yes, true, {}},
                           ChipSpec{{"No", key + " no"}, line.answer == LineAnswerNow::no, true, {}}};
    if (const auto i = one_of(ui, key, specs)) keep(view, with_line(view.answer, line.number, *i == 0), out);
}

void draw_total(UiContext& ui, const CustomerView& view, Commands& out) {
    heading(ui, "Total " + view.total);
    if (!view.tax.empty()) paragraph(ui, "With " + view.tax);
    if (!view.deposits.empty()) fact(ui, "Deposits, beside the total", view.deposits);
    if (!view.valid.empty()) fact(ui, "Valid until", view.valid);
    if (!view.said_yes.empty()) fact(ui, "Yes to", view.said_yes);
    if (!view.danger.empty()) caution(ui, view.danger, "It stays as it is when the answer is no.");
    if (!view.last.empty()) paragraph(ui, view.last, true);
    if (!view.can_answer) return;
    if (wide_button(ui, {"Yes to all", "all yes"})) keep(view, with_all(view.answer, view, true), out);
    if (wide_button(ui, {"No to all", "all no"})) keep(view, with_all(view.answer, view, false), out);
}

constexpr std::string_view kNameKey = "answer name";

// With a name that is still being typed.
AnswerDraft as_typed(const CustomerView& view) {
    AnswerDraft answer = view.answer;
    const WordsDraft* words = view.drafts.words();
    if (words != nullptr && words->field == kNameKey) answer.name = words->text;
    return answer;
}

void draw_answer_sheet(UiContext& ui, const CustomerView& view, CustomerState& state, Commands& out) {
    const AnswerDraft answer = as_typed(view);
    const SheetSpec spec{"approval",
                         "Your answer",
                         {{{"Sign anew", "sign anew"}, Tone::quiet, Icon::erase, !answer.signature.empty(), false},
                          {{"That is my answer", "confirm"}, Tone::strong, Icon::pin, !answer.name.empty(), true}}};
    const SheetAnswer tapped = sheet(ui, spec, [&] {
        paragraph(ui, fmt::format("Yes to {}, no to {}.", count_words(answer.accepted.size(), "line", "lines"),
                                  count_words(answer.declined.size(), "line", "lines")));
        AnswerDraft changed = view.answer;
        words_field(
            ui, {"Name", kNameKey}, {view.answer.name, "who answers", "", TextKind::plain, 200}, view.drafts,
            [&](const std::string& text) {
                changed.name = text;
                keep(view, changed, out);
            },
            out);
        if (const auto stroke = sign_pad(ui, {"Sign here with a finger", "signature"}, answer.signature, state.pad))
            changed.signature.push_back(*stroke);
        std::vector<ChipSpec> ways;
        for (const std::string_view way : names(Channel{}))
            ways.push_back({way, way == name_of(answer.channel), true, {}});
        if (const auto i = chips(ui, "channel", ways)) changed.channel = static_cast<Channel>(*i);
        if (changed.signature != view.answer.signature || changed.channel != view.answer.channel)
            keep(view, std::move(changed), out);
    });
    if (tapped.action == 0u) {
        AnswerDraft changed = answer;
        changed.signature.clear();
        keep(view, std::move(changed), out);
    }
    if (tapped.action == 1u) {
        out.push_back(AnswerQuote{answer});  // the draft goes when the answer is kept
    }
    if (tapped.closed || tapped.action == 1u) state.signing = false;
}

}  // namespace

void draw_customer(UiContext& ui, const CustomerView& view, CustomerState& state, Commands& out) {
    std::vector<ActionSpec> actions;
    const bool answered = !view.answer.accepted.empty() || !view.answer.declined.empty();
    if (view.draft) actions.push_back({{"Offer this price", "offer"}, Tone::strong, Icon::pin, true, true});
    if (view.can_answer) actions.push_back({{"Answer and sign", "answer"}, Tone::strong, Icon::pin, answered, true});
    const std::string key = "customer " + view.quote.text();
    ScreenSpec spec = screen_of(view.chrome, key, actions);
    spec.wide = ui.width >= kWide;
    const ScreenAnswer answer = screen(ui, spec, [&] {
        if (!view.there) return paragraph(ui, "This quote is not there any more.");
        if (view.draft) paragraph(ui, "A draft. Once it is offered its price stands still, and it can be answered.");
        const auto lines = [&] {
            for (const CustomerLine& line : view.lines) draw_line(ui, view, line, out);
        };
        side_by_side(ui, 0.6F, 260, lines, [&] { draw_total(ui, view, out); });
    });
    answer_chrome(answer, out);
    if (answer.tapped(0) && view.draft) out.push_back(OfferQuote{view.quote});
    if (answer.tapped(0) && view.can_answer) state.signing = true;
    if (state.signing) draw_answer_sheet(ui, view, state, out);
}

}  // namespace cotter

// See form.h.
#include "app/screens/form.h"

#include <algorithm>

#include "app/screens/words_field.h"
#include "app/ui/keypad.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void draw_asked_row(UiContext& ui, const FormRow& r, FormState& state) {
    RowSpec spec;
    spec.value = r.not_known ? "not known" : r.value.empty() ? "not entered" : r.value;
    spec.under = r.doubt;
    spec.icon = r.doubt.empty() ? Icon::none : Icon::help;
    if (!row(ui, {r.field.label, r.field.id}, spec)) return;
    state.asking = r.field.id;
    state.pad.reset();
}

void draw_words(UiContext& ui, const FormRow& r, const Drafts& drafts, const FormSink& sink, Commands& out) {
    const std::string hint = r.not_known ? std::string("not known") : r.field.hint;
    words_field(
        ui, {r.field.label, r.field.id}, {r.value, hint, r.error, TextKind::plain, 100}, drafts,
        [&](const std::string& words) {
            if (words != r.value && r.error.empty()) sink({&r, {}, {}, words, false});
        },
        out);
    if (!r.doubt.empty()) remark(ui, "Look again", r.doubt);
}

void ask_amount(UiContext& ui, const FormRow& r, FormState& state, const FormSink& sink) {
    if (!state.pad) {
        KeypadSpec spec;
        spec.title = r.field.label;
        spec.units = r.field.units;
        spec.fractions = r.field.fractions;
        spec.may_not_know = r.field.not_known_counts;
        state.pad.emplace(spec);
    }
    const KeypadAnswer answer = keypad_sheet(ui, "form pad", *state.pad);
    if (answer == KeypadAnswer::none) return;
    state.asking.clear();
    if (answer != KeypadAnswer::done) return;
    if (state.pad->taken() != Taken::measured) return sink({&r, {}, {}, {}, true});
    sink({&r, Amount{*state.pad->number(), state.pad->unit()}, {}, {}, false});
}

void ask_choice(UiContext& ui, const FormRow& r, FormState& state, const FormSink& sink) {
    const SheetAnswer answer = sheet(ui, {"form choice", r.field.label, {}}, [&] {
        std::vector<ChipSpec> specs;
        for (std::size_t i = 0; i < r.field.choices.size(); ++i)
            specs.push_back({{r.field.choices[i]}, r.choice == i, true, {}});
        if (r.field.not_known_counts) specs.push_back({{"Not known", "not known"}, r.not_known, true, {}});
        if (const auto tapped = chips(ui, "choices", specs)) {
            state.asking.clear();
            if (*tapped < r.field.choices.size())
                sink({&r, {}, *tapped, {}, false});
            else
                sink({&r, {}, {}, {}, true});
        }
        if (r.field.not_known_counts)
            paragraph(ui, "'Not known' is kept as an answer. It never counts as a good one.", true);
    });
    if (answer.closed) state.asking.clear();
}

}  // namespace

void draw_form(UiContext& ui, std::span<const FormRow> rows, const Drafts& drafts, FormState& state,
               const FormSink& sink, Commands& out) {
    for (const FormRow& r : rows) switch (r.field.form) {
            case FormKind::amount:
            case FormKind::choice:
                draw_asked_row(ui, r, state);
                break;
            case FormKind::words:
                draw_words(ui, r, drafts, sink, out);
                break;
            case FormKind::yes:
                if (toggle(ui, {r.field.label, r.field.id}, r.choice.has_value(), r.field.hint))
                    sink({&r, {}, std::size_t{0}, {}, false});
                break;
        }
}

void draw_form_sheet(UiContext& ui, std::span<const FormRow> rows, FormState& state, const FormSink& sink) {
    const auto asked =
        std::find_if(rows.begin(), rows.end(), [&](const FormRow& r) { return r.field.id == state.asking; });
    if (asked == rows.end()) return;
    if (asked->field.form == FormKind::amount) return ask_amount(ui, *asked, state, sink);
    ask_choice(ui, *asked, state, sink);
}

}  // namespace cotter

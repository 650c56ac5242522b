// The sheets that ask for a step's words. See step_actions.h.
#include <array>

#include "app/screens/step_actions.h"
#include "app/ui/field.h"
#include "app/ui/widgets.h"
#include "app/views/step_notes.h"

namespace cotter {

namespace {

struct WordAsked {
    StepWord word = StepWord::done;
    std::string title;
    std::string label;
    std::string hint;
};

WordAsked asked_of(std::string_view kind) {
    if (kind == "pass")
        return {StepWord::overridden, "Skip the hold point without proof: who decides, and why?", "Why",
                "no dial here"};
    if (kind == "leave") return {StepWord::not_needed, "Not needed", "Why", "the hub stays on"};
    return {StepWord::done, "What was seen", "Note", "what, who, how"};
}

const StepItem* step_of(const ProcedureView& view, std::string_view id) {
    for (const StepItem& step : view.steps)
        if (step.id == id) return &step;
    return nullptr;
}

std::vector<std::string> choices(const StepItem& step, StepWord word) {
    if (word == StepWord::done) return step.notes;
    if (word == StepWord::not_needed) return {step.optional};
    const auto reasons = usual_override_reasons();
    return {reasons.begin(), reasons.end()};
}

// A tapped chip is added to the words, or taken out of them.
std::string toggled(const std::string& text, const std::string& words) {
    const auto at = text.find(words);
    if (at == std::string::npos) return text.empty() ? words : text + ", " + words;
    std::string out = text.substr(0, at) + text.substr(at + words.size());
    if (out.starts_with(", ")) out.erase(0, 2);
    if (out.ends_with(", ")) out.erase(out.size() - 2);
    if (const auto twice = out.find(", , "); twice != std::string::npos) out.erase(twice, 2);
    return out;
}

struct Asking {
    const ProcedureView& view;
    const StepItem& step;
    const WordsDraft& draft;
    WordAsked asked;
    std::optional<std::string>& name;
    Commands& out;

    void keep(std::optional<std::string> text) const {
        Drafts drafts = view.drafts;
        drafts.drop_words();
        if (text) drafts.put_words(draft.field, std::move(*text));
        out.push_back(KeepDrafts{std::move(drafts)});
    }
    [[nodiscard]] const std::string& who() const { return name ? *name : view.technician; }
    void hand_in() const {
        StepMark mark = mark_of(view, step, asked.word);
        (asked.word == StepWord::done ? mark.note : mark.reason) = draft.text;
        if (asked.word == StepWord::overridden) mark.by = who();
        out.push_back(PutStepMark{std::move(mark), std::nullopt});
    }
};

void draw_choices(UiContext& ui, const Asking& a) {
    const auto words = choices(a.step, a.asked.word);
    std::vector<ChipSpec> specs;
    for (const std::string& w : words) specs.push_back({w, a.draft.text.find(w) != std::string::npos, true, {}});
    if (const auto tapped = chips(ui, "words", specs)) a.keep(toggled(a.draft.text, words[*tapped]));
}

void draw_asking(UiContext& ui, const Asking& a) {
    paragraph(ui, a.step.title);
    if (a.asked.word != StepWord::not_needed && !a.step.hold.empty()) remark(ui, "Hold point", a.step.hold);
    for (const StepProof& e : a.step.evidence)
        if (a.asked.word == StepWord::done && e.kind == ProofKind::note) paragraph(ui, e.words, true);
    draw_choices(ui, a);
    const FieldAnswer field = text_field(ui, {a.asked.label, "words field"}, {a.draft.text, a.asked.hint, ""});
    if (field.text) a.keep(*field.text);
    if (a.asked.word != StepWord::overridden) return;
    const FieldAnswer who = text_field(ui, {"Who decides it", "who"}, {a.who(), "name", ""});
    if (who.text) a.name = *who.text;
    paragraph(ui, "Name and reason are shown in the packet.", true);
}

}  // namespace

bool draw_step_words(UiContext& ui, const ProcedureView& view, std::optional<std::string>& name, Commands& out) {
    if (view.drafts.words() == nullptr) return false;
    const WordsDraft& draft = *view.drafts.words();
    const auto space = draft.field.find(' ');
    const StepItem* step = space == std::string::npos ? nullptr : step_of(view, draft.field.substr(space + 1));
    if (step == nullptr) return false;
    const WordAsked asked = asked_of(std::string_view(draft.field).substr(0, space));
    const Asking asking{view, *step, draft, asked, name, out};
    const bool ready = !draft.text.empty() && (asked.word != StepWord::overridden || !asking.who().empty());
    const std::string_view yes = asked.word == StepWord::overridden ? "Skip it" : "Done";
    const SheetSpec spec{"step words", asked.title, {{{yes, "hand in"}, Tone::strong, Icon::check, ready, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] { draw_asking(ui, asking); });
    if (answer.action && ready) asking.hand_in();
    if (answer.closed || (answer.action && ready)) {
        asking.keep(std::nullopt);
        name.reset();
    }
    return true;
}

}  // namespace cotter

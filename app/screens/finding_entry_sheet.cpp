// See finding_entry_sheet.h.
#include "app/screens/finding_entry_sheet.h"

#include <fmt/format.h>

#include "app/screens/shot_place.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

std::optional<std::size_t> word_chips(UiContext& ui, std::string_view key, const std::vector<std::string>& words,
                                      std::string_view chosen) {
    std::vector<ChipSpec> specs;
    for (const std::string& word : words) specs.push_back({{word}, word == chosen, true, {}});
    return chips(ui, key, specs);
}

// Each with the mark of the grade that it usually deserves: the tap that chooses it says that too.
std::optional<std::size_t> usual_chips(UiContext& ui, const std::vector<FindingWords>& usual,
                                       const FindingDraft& draft) {
    std::vector<std::string> words;
    std::vector<ChipSpec> specs;
    for (const FindingWords& w : usual) words.push_back(finding_words(w.component, w.defect));
    for (std::size_t i = 0; i < usual.size(); ++i)
        specs.push_back({{words[i]},
                         usual[i].component == draft.component && usual[i].defect == draft.defect,
                         true,
                         usual[i].grade});
    return chips(ui, "usual", specs);
}

std::vector<std::string> shown(const std::vector<std::string_view>& words) {
    std::vector<std::string> out;
    for (const std::string_view word : words) out.push_back(upper_first(word));
    return out;
}

// Its own steps: the usual findings, or all components, then the defects of one; at each, words of one's own.
class WordSteps {
public:
    WordSteps(UiContext& ui, const FindingEntry& entry, FindingSheetState& state, FindingDraft& draft)
        : ui_(ui), entry_(entry), state_(state), draft_(draft) {}

    // True when what was asked for is chosen.
    bool draw() {
        if (state_.list == WordList::components) return components();
        if (state_.list == WordList::defects) return defects();
        if (state_.list == WordList::places) return places();
        return usual();
    }
    std::optional<Id<Finding>> same;  // it is a finding that is there already

private:
    bool usual() {
        if (const auto n = usual_chips(ui_, entry_.usual, draft_)) {
            draft_.component = entry_.usual[*n].component;
            draft_.defect = entry_.usual[*n].defect;
            if (!draft_.grade) draft_.grade = entry_.usual[*n].grade;
            return true;
        }
        if (wide_button(ui_, {"Something else", "else"}, {Tone::quiet, Icon::search, true, false, 0}))
            state_.list = WordList::components;
        if (entry_.same.empty()) return false;
        heading(ui_, "Or one that is noted already");
        for (const PhotoFinding& f : entry_.same) {
            RowSpec spec;
            spec.grade = f.grade;
            spec.leads_on = false;
            if (row(ui_, {f.title, f.finding.text()}, spec)) same = f.finding;
        }
        return false;
    }

    bool components() {
        if (const auto n = word_chips(ui_, "components", shown(entry_.components), upper_first(draft_.component))) {
            draft_.component = entry_.components[*n];
            draft_.defect.clear();
            state_.list = WordList::defects;
        }
        const FieldAnswer own = text_field(ui_, {"Another part", "own part"}, {draft_.component, "", ""});
        if (own.text) draft_.component = *own.text;
        if (!draft_.component.empty() &&
            wide_button(ui_, {"Next: what is wrong with it", "next"}, {Tone::strong, Icon::next, true, false, 0}))
            state_.list = WordList::defects;
        return false;
    }

    bool defects() {
        if (button(ui_, {upper_first(draft_.component), "part"}, {Tone::quiet, Icon::back, true, false, 0}))
            state_.list = WordList::components;
        if (const auto n = word_chips(ui_, "defects", shown(entry_.defects), upper_first(draft_.defect))) {
            draft_.defect = entry_.defects[*n];
            return true;
        }
        const FieldAnswer own = text_field(ui_, {"In other words", "own words"}, {draft_.defect, "", ""});
        if (own.text) draft_.defect = *own.text;
        return !draft_.defect.empty() &&
               wide_button(ui_, {"Next: how bad is it", "next"}, {Tone::strong, Icon::next, true, false, 0});
    }

    bool places() {
        const auto place = draw_places(ui_, entry_.places);
        if (place) draft_.place = *place;
        return place.has_value();
    }

    UiContext& ui_;
    const FindingEntry& entry_;
    FindingSheetState& state_;
    FindingDraft& draft_;
};

void draw_remedies(UiContext& ui, const FindingEntry& entry, FindingDraft& draft) {
    if (entry.remedies.empty()) return;
    const auto words = shown(entry.remedies);
    if (const auto n = word_chips(ui, "remedies", words, upper_first(draft.todo))) {
        const bool again = draft.todo == entry.remedies[*n];
        draft.todo = again ? std::string_view{} : entry.remedies[*n];
    }
}

bool draw_details(UiContext& ui, const FindingEntry& entry, FindingDraft& draft, FindingSheetState& state) {
    bool graded = false;
    if (button(ui, {"Other words", "words"}, {Tone::quiet, Icon::back, true, false, 0})) {
        state.choosing = true;
        state.list = WordList::usual;
    }
    if (entry.is_new) paragraph(ui, "How bad is it? The grade saves the finding.");
    if (!entry.is_new && state.fresh && draft.grade)
        paragraph(ui, fmt::format("Saved as '{}', as it usually is. Tap another grade if it is not so here.",
                                  name_of(*draft.grade)));
    if (const auto grade = grade_choice(ui, "grade", draft.grade)) {
        draft.grade = grade;
        graded = true;
    }
    RowSpec where;
    where.value = entry.place;
    if (!entry.is_new && row(ui, {"Place", "place"}, where)) state.list = WordList::places;
    heading(ui, "What to do");
    draw_remedies(ui, entry, draft);
    const FieldAnswer todo = text_field(ui, {"To do", "todo"}, {draft.todo, "can be added later", "", TextKind::note});
    if (todo.text) draft.todo = *todo.text;
    const FieldAnswer note = text_field(ui, {"Note", "note"}, {draft.note, "can be added later", "", TextKind::note});
    if (note.text) draft.note = *note.text;
    return graded;
}

SheetSpec spec_of(const FindingEntry& entry, bool choosing, WordList list) {
    const bool where = list == WordList::places;
    SheetSpec spec{"finding", where ? "Where is it?" : choosing ? "What is it?" : entry.title, {}};
    if (entry.is_new || choosing) return spec;
    spec.actions.push_back({{"Remove finding", "remove"}, Tone::danger, Icon::erase, true, false});
    spec.actions.push_back({{"Done", "done"}, Tone::strong, Icon::check, true, true});
    return spec;
}

// Closing keeps what was changed in a finding; one that was only begun goes without a trace.
void finish(const FindingEntry& entry, const Drafts& drafts, bool remove, Commands& out) {
    const auto id = Uuid::parse(entry.draft.id);
    if (remove && id)
        out.push_back(RemoveFinding{{*id}});
    else if (entry.changed && entry.draft.grade)
        out.push_back(PutFinding{entry.draft});
    out.push_back(keep_finding(drafts, std::nullopt));
}

}  // namespace

KeepDrafts keep_finding(const Drafts& drafts, const std::optional<FindingDraft>& finding) {
    KeepDrafts keep{drafts};
    keep.drafts.finding = finding;
    return keep;
}

void draw_finding_sheet(UiContext& ui, const FindingEntry& entry, const Drafts& drafts, FindingSheetState& state,
                        Commands& out) {
    FindingDraft draft = entry.draft;
    const bool choosing = draft.defect.empty() || state.choosing || state.list != WordList::usual;
    bool graded = false;
    bool chosen = false;
    WordSteps steps(ui, entry, state, draft);
    const SheetAnswer answer = sheet(ui, spec_of(entry, choosing, state.list), [&] {
        if (!choosing)
            graded = draw_details(ui, entry, draft, state);
        else if (chosen = steps.draw(); chosen)
            state = {};
    });
    if (chosen && entry.is_new && draft.grade) {  // a usual one: all is said
        state.fresh = true;
        return out.push_back(PutFinding{draft, true});
    }
    if (steps.same) {
        const auto shot = Uuid::parse(draft.shot);
        if (shot) out.push_back(PutTag{Tag{{}, {*shot}, *steps.same, draft.shape, draft.points}});
        out.push_back(keep_finding(drafts, std::nullopt));
        return;
    }
    if (answer.closed && choosing && !entry.draft.defect.empty()) {
        state = {};
        return;
    }
    if (answer.closed || answer.action) return state = {}, finish(entry, drafts, answer.action == 0u, out);
    if (graded && (entry.is_new || state.fresh)) {
        state = {};
        out.push_back(PutFinding{draft});
        out.push_back(keep_finding(drafts, std::nullopt));
        return;
    }
    if (!(draft == entry.draft)) out.push_back(keep_finding(drafts, draft));
}

}  // namespace cotter

// See reading_sheets.h.
#include "app/screens/reading_sheets.h"

#include "app/ui/keypad.h"
#include "app/views/chrome.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void keep(const Drafts& drafts, std::optional<ReadingDraft> reading, Commands& out) {
    Drafts changed = drafts;
    changed.reading = std::move(reading);
    out.push_back(KeepDrafts{std::move(changed)});
}

void make_finding(const FindingDraft& finding, Commands& out) {
    out.push_back(PutFinding{finding});
    out.push_back(DeriveNeeds{});
}

struct Entering {
    const ReadingEntry& entry;
    const Drafts& drafts;
    ReadingState& state;
    Commands& out;

    void hand_in(const ReadingDraft& draft) const {
        out.push_back(PutReading{reading_of(entry, draft)});
        keep(drafts, std::nullopt, out);
        state = {};
    }
    void leave() const {
        keep(drafts, std::nullopt, out);
        state = {};
    }
};

void ask_reason(UiContext& ui, const Entering& e) {
    const bool skipped = e.entry.draft.taken == Taken::not_measured;
    const SheetSpec spec{"why not", skipped ? "Why was it not measured?" : "Why is it not accessible?", {}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        const auto reasons = skipped ? reasons_not_measured() : reasons_not_accessible();
        std::vector<ChipSpec> specs;
        for (const std::string_view reason : reasons)
            specs.push_back({reason, reason == e.entry.draft.reason, true, {}});
        if (const auto tapped = chips(ui, "reasons", specs)) {
            ReadingDraft draft = e.entry.draft;
            draft.reason = reasons[*tapped];
            e.hand_in(draft);
        }
        paragraph(ui, "It stands in the record as not known, never as good.", true);
    });
    if (answer.closed) e.state.ask = ReadingState::Ask::none;
}

void ask_doubt(UiContext& ui, const Entering& e) {
    const auto doubt = doubt_reading(e.entry.draft);
    if (!doubt) return e.hand_in(e.entry.draft);
    std::vector<ActionSpec> actions{{{"Keep it", "keep"}, Tone::quiet, Icon::none, true, false},
                                    {{"Key it again", "again"}, Tone::strong, Icon::erase, true, true}};
    const SheetAnswer answer = sheet(ui, {"really", "Really?", actions}, [&] {
        paragraph(ui, doubt->words);
        if (doubt->unit.empty() || !wide_button(ui, {doubt->unit_yes, "unit"})) return;
        ReadingDraft draft = e.entry.draft;
        draft.unit = doubt->unit;
        e.hand_in(draft);
    });
    if (answer.action == 0u) return e.hand_in(e.entry.draft);
    if (answer.action) {  // the odd value goes, those of the other points stay
        e.state.pad->choose_point(doubt->point);
        e.state.pad->press(KeypadKey::clear);
    }
    if (answer.closed || answer.action) e.state.ask = ReadingState::Ask::none;
}

void draw_pad(UiContext& ui, const Entering& e) {
    const JudgedReading& judged = e.entry.judged;
    KeypadNote note{judged.grade, judged.limit, judged.finding ? "Save as a finding, and quote it" : ""};
    if (!judged.source.empty()) note.text += ". " + upper_first(judged.source);
    const KeypadAnswer answer = keypad_sheet(ui, "reading", *e.state.pad, note);
    if (answer == KeypadAnswer::closed) return e.leave();
    if (answer == KeypadAnswer::removed) {
        e.out.push_back(RemoveReading{e.entry.record.id});
        return e.leave();
    }
    const ReadingDraft draft = draft_of(e.entry, *e.state.pad);
    if (!(draft == e.entry.draft)) keep(e.drafts, draft, e.out);
    if (answer == KeypadAnswer::noted && draft == e.entry.draft && judged.finding) {
        e.hand_in(draft);
        make_finding(*judged.finding, e.out);
        return;
    }
    if (answer != KeypadAnswer::done) return;
    if (draft.taken != Taken::measured)
        e.state.ask = ReadingState::Ask::reason;
    else if (doubt_reading(draft))
        e.state.ask = ReadingState::Ask::doubt;
    else
        e.hand_in(draft);
}

}  // namespace

void show_judged(const JudgedReading& judged, RowSpec& spec) {
    spec.grade = judged.grade;
    if (judged.limit.empty()) return;
    spec.under = spec.under.empty() ? upper_first(judged.limit) : upper_first(judged.limit) + ". " + spec.under;
}

void offer_finding(UiContext& ui, const std::string& key, const JudgedReading& judged, Commands& out) {
    if (!judged.finding) return;
    if (wide_button(ui, {"Make it a finding, and quote it", key}, {Tone::quiet, Icon::plus, true, false, 0}))
        make_finding(*judged.finding, out);
}

void draw_reading(UiContext& ui, const ReadingEntry& entry, const Drafts& drafts, ReadingState& state, Commands& out) {
    if (state.key != entry.key || !state.pad) {
        state = {};
        state.key = entry.key;
        state.pad.emplace(entry.spec);
        state.pad->restore(entry.draft.texts, entry.draft.unit, entry.draft.taken);
    }
    const Entering entering{entry, drafts, state, out};
    switch (state.ask) {
        case ReadingState::Ask::reason:
            return ask_reason(ui, entering);
        case ReadingState::Ask::doubt:
            return ask_doubt(ui, entering);
        case ReadingState::Ask::none:
            break;
    }
    draw_pad(ui, entering);
}

}  // namespace cotter

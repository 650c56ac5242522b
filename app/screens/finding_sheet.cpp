// See finding_sheet.h.
#include "app/screens/finding_sheet.h"

#include <algorithm>
#include <array>
#include <span>

#include "app/screens/finding_entry_sheet.h"
#include "app/screens/words_field.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

using Suggestions = std::span<const std::string_view>;

// What is usually said of each outcome, so that nobody has to type.
Suggestions suggestions(Outcome outcome) {
    static constexpr std::array<std::string_view, 4> kRepaired{"renewed", "adjusted", "cleaned", "tightened"};
    static constexpr std::array<std::string_view, 3> kDeferred{"part on order", "at the next visit", "watch it"};
    static constexpr std::array<std::string_view, 3> kDeclined{"cost", "customer does it", "trailer to be sold"};
    switch (outcome) {
        case Outcome::repaired:
            return kRepaired;
        case Outcome::deferred:
            return kDeferred;
        case Outcome::declined:
            return kDeclined;
        case Outcome::open:
            break;
    }
    return {};
}

void draw_outcomes(UiContext& ui, const FindingRow& finding, const Id<Finding>& id, Commands& out) {
    heading(ui, "What became of it?");
    constexpr std::array kOutcomes{Outcome::open, Outcome::repaired, Outcome::deferred, Outcome::declined};
    std::vector<std::string> words;
    for (const Outcome o : kOutcomes) words.push_back(upper_first(name_of(o)));
    std::vector<ChipSpec> specs;
    for (std::size_t i = 0; i < kOutcomes.size(); ++i)
        specs.push_back({{words[i], name_of(kOutcomes[i])}, finding.outcome == kOutcomes[i], true, {}});
    if (const auto tapped = chips(ui, "outcomes", specs))
        out.push_back(SetOutcome{id, kOutcomes[*tapped], finding.outcome_note});
}

void draw_note(UiContext& ui, const FindingRow& finding, const Id<Finding>& id, const Drafts& drafts, Commands& out) {
    const Suggestions offered = suggestions(finding.outcome);
    std::vector<ChipSpec> specs;
    for (const std::string_view text : offered) specs.push_back({text, text == finding.outcome_note, true, {}});
    if (const auto tapped = chips(ui, "notes", specs))
        out.push_back(SetOutcome{id, finding.outcome, std::string(offered[*tapped])});
    const std::string key = "outcome note " + finding.id;
    words_field(
        ui, {"What was done, or why not", key}, {finding.outcome_note, "can be added later", ""}, drafts,
        [&](const std::string& text) {
            out.push_back(SetOutcome{id, finding.outcome, text});
        },
        out);
}

}  // namespace

void draw_finding(UiContext& ui, const CornerView& view, std::string& finding, Commands& out) {
    const auto shown =
        std::find_if(view.findings.begin(), view.findings.end(), [&](const FindingRow& f) { return f.id == finding; });
    const auto id = Uuid::parse(finding);
    if (shown == view.findings.end() || !id) return finding.clear();
    const SheetSpec spec{"finding",
                         shown->title,
                         {{{"Remove", "remove"}, Tone::danger, Icon::erase, true, false},
                          {{"Done", "done"}, Tone::strong, Icon::check, true, true}}};
    bool to_photo = false, change = false;
    const SheetAnswer answer = sheet(ui, spec, [&] {
        grade_plate(ui, shown->grade);
        if (shown->outcome == Outcome::open && !shown->under.empty()) paragraph(ui, shown->under);
        change = row(ui, {"Change part, defect, grade or place", "change"});
        draw_outcomes(ui, *shown, {*id}, out);
        draw_note(ui, *shown, {*id}, view.drafts, out);
        to_photo = !shown->shot.empty() && row(ui, {"Open its photo", "photo"});
    });
    if (change) out.push_back(keep_finding(view.drafts, shown->draft));
    if (to_photo) out.push_back(GoTo{{Screen::photo, view.place, shown->shot}});
    if (answer.action == 0u) out.push_back(RemoveFinding{{*id}});
    if (to_photo || change || answer.closed || answer.action) finding.clear();
}

}  // namespace cotter

// See finding_sheet.h.
#include "app/screens/finding_sheet.h"

#include <algorithm>
#include <array>

#include "app/ui/widgets.h"

namespace cotter {

namespace {

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
    const FieldAnswer note =
        text_field(ui, {"What was done, or why not", "outcome note"}, {finding.outcome_note, "can be added later", ""});
    if (note.text) out.push_back(SetOutcome{id, finding.outcome, *note.text});
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
    bool to_photo = false;
    const SheetAnswer answer = sheet(ui, spec, [&] {
        grade_plate(ui, shown->grade);
        if (!shown->under.empty()) paragraph(ui, shown->under);
        draw_outcomes(ui, *shown, {*id}, out);
        to_photo = !shown->shot.empty() && row(ui, {"Open its photo", "photo"});
    });
    if (to_photo) out.push_back(GoTo{{Screen::photo, view.place, shown->shot}});
    if (answer.action == 0u) out.push_back(RemoveFinding{{*id}});
    if (to_photo || answer.closed || answer.action) finding.clear();
}

}  // namespace cotter

// What each command does to a job, as the changes of one Edit. Pure; no screen, no book. Fails `refused` when the
// record it is about is not there, or the command makes no sense; what apply() refuses is left to it.
#pragma once

#include <vector>

#include "app/command.h"

namespace cotter {

using Changes = std::vector<Change>;

[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutVisit& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutTrailer& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutFinding& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveFinding& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const SetOutcome& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutTag& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveTag& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutShot& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveShot& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutReading& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveReading& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutTorque& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const TightenNut& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const StartPass& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutLevel& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutStepMark& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveStepMark& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutBearing& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutPipeRoute& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutBleedCount& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveBleedCount& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const DeriveNeeds& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutNeed& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const LeaveOutNeed& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutOffer& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveOffer& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const DraftQuotes& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const DraftByHand& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveQuote& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const OfferQuote& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RenewQuote& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const AnswerQuote& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutMakerLimit& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveMakerLimit& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutInspection& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveInspection& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const AnswerItem& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutLook& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveLook& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutSidewall& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveSidewall& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutChamber& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveChamber& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutBreakawayTest& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveBreakawayTest& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const PutEvent& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const RemoveEvent& c, const Stamp& stamp);
[[nodiscard]] Result<Changes> changes_of(const Job& job, const SignJob& c, const Stamp& stamp);

// Marks, bearing settings, readings, looks and offers that rest on a shot or reading which is taken away: put again
// without it.
void let_go(const Job& job, const Id<Shot>& shot, Changes& out);
void let_go(const Job& job, const Id<Reading>& reading, Changes& out);
void let_go(const Job& job, const Id<Finding>& finding, Changes& out);

// What becomes of the findings that are marked on a photo when it changes its place: those that were of the photo's
// old place go with it, unless another photo that stays there shows them too.
struct FindingsOfMove {
    std::vector<Finding> along;  // as they are afterwards
    std::size_t staying = 0;
};
[[nodiscard]] FindingsOfMove findings_of_move(const Job& job, const Shot& moved);

// What records say of who made them while the settings have no name.
inline constexpr std::string_view kUnnamed = "unnamed";

// `name` in place of nobody's name, in the visit and in each record that says who made it. A quote that was offered
// stays as the customer got it. Empty when nothing says so.
[[nodiscard]] Changes naming_changes(const Job& job, const std::string& name);

// The first edit of a job: its visit and an unnamed trailer with one axle.
[[nodiscard]] Changes opening_changes(const Settings& settings, const Stamp& stamp);

template <class C>
concept JobCommand = requires(const Job& job, const C& c, const Stamp& stamp) {
    changes_of(job, c, stamp);
};

}  // namespace cotter

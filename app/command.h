// Everything a screen can ask for. Screens push commands while drawing; the session carries them out after the frame.
//
// Two kinds. Those about the app (where to go, what to export) have a Session::act. Those that change the job have a
// free function `changes_of(const Job&, const C&, const Stamp&)` in app/session/, pure, tested without a screen; the
// session commits what it gives as one Edit: one step of undo.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "app/asked.h"
#include "app/device.h"
#include "app/draft.h"
#include "app/nav.h"
#include "app/settings.h"
#include "core/quote/draft.h"
#include "core/survey/edit.h"

namespace cotter {

// ---- about the app ----

struct GoTo {
    Route route;
};
struct GoInstead {  // the shown page turns into this one
    Route route;
};
struct GoBack {};
struct GoBackIfDone {};  // only when the command before it was carried out
struct OpenJob {
    JobId job;
};
struct StartJob {};  // a new visit, with a trailer to be identified
struct UndoStep {};
struct RedoStep {};
struct DismissNotice {};
struct ShowHelp {
    bool open = true;
};
struct GiveReason {  // why a signed-off job is changed; commits what waited for it. Empty: leave it
    std::string reason;
};
struct PutSettings {
    Settings settings;
};
struct NameTechnician {  // into the settings, and into jobs that say nobody's name; a signed-off one asks why
    std::string name;
};
struct KeepDrafts {
    Drafts drafts;
};
struct TakePhotos {  // read, stored and put into the job one after the other, beside the screen
    std::vector<std::string> paths;
    Place place;
    Slot slot = Slot::other;
    Stage stage = Stage::before;
    bool show = false;  // the photo's page opens as soon as it is in the job, in place of the page shown
};
struct CancelWork {};    // what runs beside the screen: photos being taken in, the packet being made
struct ExportPacket {};  // into Settings::packet_folder

struct KeepOffer {  // on the price shelf; a nil id makes a new one, and an open job gets it too
    Offer offer;
};
struct ForgetOffer {
    Id<Offer> offer;
};
struct TakeOffers {  // onto the price shelf, from a CSV file; lines that do not read are said and left
    std::string path;
};
struct WriteOffers {};  // the price shelf as a CSV file, beside the packets
struct PickFiles {      // by the device's own camera or chooser; they come back as if dropped onto the page
    Pick what = Pick::photos;
};
struct HandOut {  // a file of ours to other apps, by the device's own way
    std::string path;
};

// ---- changes to the job ----

struct PutVisit {
    Visit visit;
};
struct PutTrailer {
    Trailer trailer;
};
struct PutFinding {  // a nil id makes a new one; with the mark when the draft has one
    FindingDraft draft;
    bool stay = false;  // its sheet stays open on what was saved
};
struct RemoveFinding {  // and its tags
    Id<Finding> finding;
};
struct SetOutcome {  // what became of a finding
    Id<Finding> finding;
    Outcome outcome = Outcome::open;
    std::string note;
};
struct PutTag {
    Tag tag;
};
struct RemoveTag {
    Id<Tag> tag;
};
struct PutShot {
    Shot shot;
};
struct RemoveShot {  // and its tags
    Id<Shot> shot;
};
struct PutReading {  // a nil id makes a new one
    Reading reading;
};
struct RemoveReading {
    Id<Reading> reading;
};
struct PutTorque {  // a nil id makes a new one
    Torque torque;
};
struct TightenNut {  // in the last pass; a nut that clicked already is left
    Id<Torque> torque;
    int nut = 0;
};
struct StartPass {  // on a torque that is put into the job when its id is nil
    Torque torque;
    Amount at_nut;  // the wrench's setting for it follows from the torque's adapter
    int nut = 0;    // that clicked already; 0: none
};
struct PutLevel {  // a nil id makes a new one
    Level level;
};
struct PutStepMark {  // with the finding that an owner's bad answer makes; objections() are refused
    StepMark mark;
    std::optional<FindingDraft> finding;
};
struct RemoveStepMark {  // the step is open again
    Id<StepMark> mark;
};
struct PutBearing {  // a nil id makes a new one; `dial` is the end play just measured where the nut stands
    BearingSetting setting;
    std::optional<Reading> dial;
};
struct PutPipeRoute {  // a nil id makes a new one
    PipeRoute route;
};
struct PutBleedCount {  // a nil id makes a new one
    BleedCount count;
};
struct RemoveBleedCount {
    Id<BleedCount> count;
};
struct DeriveNeeds {};  // from the findings; what was changed by hand stays
struct PutNeed {        // changed by hand from now on
    Need need;
};
struct LeaveOutNeed {  // nothing is bought for it; or taken in again as it was
    Id<Need> need;
    bool out = true;
};
struct PutOffer {  // a nil id makes a new one
    Offer offer;
};
struct RemoveOffer {  // one that no quote uses
    Id<Offer> offer;
};
struct DraftQuotes {  // one for each aim that some offer serves; drafts are replaced, offered ones stay
    QuoteTerms terms;
};
struct DraftByHand {
    QuoteTerms terms;
    std::vector<std::int64_t> packs;  // of each of the job's offers, in their order
};
struct RemoveQuote {  // a draft
    Id<Quote> quote;
};
struct OfferQuote {  // frozen from now on
    Id<Quote> quote;
};
struct RenewQuote {  // a draft of its next version; the old one is kept
    Id<Quote> quote;
};
struct AnswerQuote {
    AnswerDraft answer;
};
struct PutMakerLimit {  // a nil id makes a new one
    MakerLimit figure;
};
struct RemoveMakerLimit {
    Id<MakerLimit> figure;
};
struct PutInspection {  // makes the job a periodic inspection, or changes its head
    Inspection head;
};
struct RemoveInspection {};  // and its answers
struct AnswerItem {          // at most one answer an item: the new one replaces it
    InspectionAnswer answer;
};
struct PutLook {  // the answer to its point at its place and stage: it replaces the one there; with what is wrong
    Look look;
    std::optional<FindingDraft> finding;
};
struct RemoveLook {  // the point is open again; its finding stays
    Id<Look> look;
};
struct PutSidewall {  // a nil id makes a new one
    Sidewall sidewall;
};
struct RemoveSidewall {
    Id<Sidewall> sidewall;
};
struct PutChamber {  // a nil id makes a new one
    Chamber chamber;
};
struct RemoveChamber {
    Id<Chamber> chamber;
};
struct PutBreakawayTest {  // a nil id makes a new one
    BreakawayTest test;
};
struct RemoveBreakawayTest {
    Id<BreakawayTest> test;
};
struct PutEvent {  // a nil id makes a new one
    Event event;
};
struct RemoveEvent {
    Id<Event> event;
};
struct SignJob {
    std::string by;
    std::string statement;
    std::string acknowledged;  // the answer on towing as it was shown and acknowledged; needed unless nothing is open
};

using Command =
    std::variant<GoTo, GoInstead, GoBack, GoBackIfDone, OpenJob, StartJob, UndoStep, RedoStep, DismissNotice, ShowHelp,
                 GiveReason, PutSettings, NameTechnician, KeepDrafts, TakePhotos, CancelWork, ExportPacket, PutVisit,
                 PutTrailer, PutFinding, RemoveFinding, SetOutcome, PutTag, RemoveTag, PutShot, RemoveShot, PutReading,
                 RemoveReading, PutTorque, TightenNut, StartPass, PutLevel, PutStepMark, RemoveStepMark, PutBearing,
                 PutPipeRoute, PutBleedCount, RemoveBleedCount, SignJob, PutMakerLimit, RemoveMakerLimit, PutInspection,
                 RemoveInspection, AnswerItem, KeepOffer, ForgetOffer, TakeOffers, WriteOffers, PickFiles, HandOut,
                 DeriveNeeds, PutNeed, LeaveOutNeed, PutOffer, RemoveOffer, DraftQuotes, DraftByHand, RemoveQuote,
                 OfferQuote, RenewQuote, AnswerQuote, PutLook, RemoveLook, PutSidewall, RemoveSidewall, PutChamber,
                 RemoveChamber, PutBreakawayTest, RemoveBreakawayTest, PutEvent, RemoveEvent>;
using Commands = Asked<Command>;

// When and by whom a change is made, and where new ids come from.
struct Stamp {
    Instant at;
    std::string by;
    Random& random;

    template <class R>
    [[nodiscard]] Id<R> new_id() const {
        return {Uuid::random(random)};
    }
};

}  // namespace cotter

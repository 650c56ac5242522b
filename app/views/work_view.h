// Work led by procedures: which ones there are at a place, and one of them step by step: what may be done now, what
// holds it up, which cautions come first, where its proof is recorded. Plain values; no ImGui.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/views/chrome.h"
#include "app/views/corner_view.h"
#include "app/views/reading_view.h"
#include "core/base/sign.h"
#include "core/judge/judge_job.h"
#include "core/work/owner.h"
#include "core/work/progress.h"

namespace cotter {

// A record that a step asks for, and the page where it is made.
struct StepProof {
    std::string words;  // "the rotor's thickness"
    ProofKind kind = ProofKind::note;
    bool there = false;
    Route lead;                           // unless it is a reading or a note
    std::optional<ReadingDraft> reading;  // what the keypad begins with
};

// What the step waits for first.
enum class StepMove { nothing, read, prove, note, answer, done };

struct StepCaution {
    std::string id;
    std::string title;
    std::string text;  // the danger, and what to do
};

// A record that a closed step rests on, and where it is seen.
struct StepRest {
    std::string label;  // "Photo: rotor face"
    std::string value;  // "20.62 mm", "at"
    Route lead;
};

// Something before it that is open.
struct StepBefore {
    std::string words;
    std::optional<Route> lead;  // where it is done, when that is another procedure or corner
};

struct StepItem {
    std::string id;
    std::string title;  // "Unbolt the caliper and hang it on a wire"
    std::string plain;
    std::string why;
    StepState state = StepState::blocked;
    std::string word;  // "done 08:14", "possible now", "hold point", "waits"
    std::vector<StepBefore> blocks;
    std::string hold;
    std::vector<StepCaution> cautions;
    std::vector<StepProof> evidence;
    std::string optional;             // when it may be left out
    std::string question;             // the owner's
    std::optional<FindingDraft> bad;  // the finding that the answer 'something is wrong' makes
    std::optional<StepAnswer> answer;
    std::optional<Grade> grade;      // of the finding that was made, until it is repaired
    std::string found;               // "Coupler: cracked, open, worn or missing"; empty: nothing was
    std::string now;                 // what to do about it
    std::string closed_by;           // "R. Kowalski, 2026-05-14 08:14"
    std::string reason, note;        // of the mark
    Id<StepMark> mark;               // that closed it
    std::vector<StepRest> rests;     // the records that it named when it was closed
    bool doubtful = false;           // done, but its proof is gone
    std::vector<std::string> notes;  // ready to choose
    StepMove move = StepMove::nothing;

    [[nodiscard]] const StepProof* missing() const;  // the first record that is wanted and not there
    [[nodiscard]] bool open_hold() const { return state == StepState::held; }
    // Its question may be answered now, with or without the records it asks for.
    [[nodiscard]] bool asks() const {
        return bad && hold.empty() && (move == StepMove::answer || move == StepMove::prove);
    }
};

// The owner's answer, in words ready to show.
struct AdviceView {
    Towing towing = Towing::cannot_tell;
    Sign sign = Sign::fading_on_road;
    std::string title;                 // "Do not tow"
    std::vector<std::string> reasons;  // the gravest first
};

// About the open job.
[[nodiscard]] AdviceView advice_view(const Session& session);

struct ProcedureView {
    Chrome chrome;
    Place place;
    bool found = false;  // it exists and applies there
    std::string procedure;
    std::string plain;
    std::string source;
    std::string progress;  // "3 of 17 steps"
    std::vector<StepItem> steps;
    std::optional<std::size_t> next;   // the step to do now
    std::optional<std::size_t> waits;  // without a next one: the first open step
    bool all_closed = false;
    bool owner = false;
    std::optional<AdviceView> advice;  // at the procedure that ends in it; in the owner's look where it forbids towing
    bool advice_only_stops = false;    // the second
    std::string technician;
    Drafts drafts;
    std::optional<ReadingEntry> entry;  // begun here and not yet handed in
};

// By the route: its place and the procedure's id.
[[nodiscard]] ProcedureView procedure_view(const Session& session);

// A mark for the step, ready to be completed with note or reason. The session stamps it.
[[nodiscard]] StepMark mark_of(const ProcedureView& view, const StepItem& step, StepWord word);

// The procedures that may be done at a place, with how far they are. In the owner's look only those for owners.
[[nodiscard]] std::vector<WorkRow> work_rows(const Session& session, const Place& place);

struct WorkGroup {
    std::string title;
    Place place;
    std::vector<WorkRow> rows;
};
struct WorkListView {
    Chrome chrome;
    bool owner = false;
    std::string standing;
    std::vector<WorkGroup> groups;     // the whole trailer, then corner by corner
    std::optional<AdviceView> advice;  // in the owner's look
    Settings settings;
    std::optional<Visit> visit;  // none: it is signed off, or none is open
};
[[nodiscard]] WorkListView work_list_view(const Session& session);

}  // namespace cotter

// What is looked at: all points of a place or of the whole trailer with their answers, and one point at one place with
// the ways to answer it. Plain values; no ImGui.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/views/chrome.h"
#include "app/views/reading_view.h"
#include "core/judge/answer.h"

namespace cotter {

// A point at a place, and what is known of it.
struct PointRow {
    PointId point = PointId::plate_id;
    Place place;
    std::string title;           // "Tread depth"
    std::string where;           // "Axle 1 left"
    std::string says;            // what is known, or why nothing is
    std::optional<Grade> grade;  // none: not known
    bool essential = false;
    std::string record;  // behind it; tells findings outside the table apart
    Route route;
};

// A place and how much is open there.
struct OpenPlace {
    std::string label;
    std::size_t open = 0;
    Route route;
};

struct PointsView {
    Chrome chrome;
    bool whole = true;               // of the trailer; else of one place
    std::string tally;               // "31 of 84 points looked at"
    std::vector<PointRow> against;   // graded repair or do not tow, the worst first
    std::vector<PointRow> open;      // essential and without a good answer, the most dangerous first
    std::vector<OpenPlace> places;   // of the whole: where they are
    std::vector<PointRow> mechanic;  // open, and beyond an owner's look
    std::vector<PointRow> watch;
    std::vector<PointRow> wanted;  // not essential, not known
    std::vector<PointRow> good;
};

// By the route's place: a corner or station; the trailer's own place with the record "all" is all of it.
[[nodiscard]] PointsView points_view(const Session& session);

struct EntryChoice {
    std::string id;
    std::string text;
    Grade grade = Grade::do_not_tow;
    std::optional<LookResult> answered;  // by the look that is there
};

// A record that answers the point, made on another page.
struct PointLead {
    std::string label;
    std::string value;
    Route route;
};
struct PointReading {
    std::string label;
    std::string value;
    bool there = false;
    ReadingDraft draft;
    JudgedReading judged;
};

struct PointView {
    Chrome chrome;
    const TradePoint* point = nullptr;  // nullptr: the route names none
    Place place;
    std::string says;            // what is known now, or why nothing is
    std::optional<Grade> grade;  // none: not known
    std::string law;             // its source, with how far its text was seen; empty: none
    std::string ask;             // empty: it is not answered by looking
    std::vector<EntryChoice> entries;
    std::optional<Look> look;  // the answer there is, of the stage below
    std::string look_words;    // "Looks good, by A. Tester, 14:05"
    std::vector<PointReading> readings;
    std::vector<PointLead> leads;  // pages of torque, level, test, plate
    std::vector<Slot> slots;       // photos that show it and are not there
    std::optional<PointRow> next;  // the next open one
    Stage stage = Stage::before;
    Reach reach = Reach::outside;  // what an answer given here counts as
    Drafts drafts;
    std::optional<ReadingEntry> entry;
};

// The readings that can answer a point there.
[[nodiscard]] std::vector<PointReading> point_readings(const Session& session, const TradePoint& point,
                                                       const Place& place, Stage stage);

// By the route: its place, and the point's id as record. `stage`: of the look and the readings that are shown.
[[nodiscard]] PointView point_view(const Session& session, Stage stage);

// The answer as a record, and the finding that a bad one makes: its grade is that of its worst entry.
[[nodiscard]] Look look_of(const PointView& view, LookResult result, const std::vector<std::string>& wrong);
[[nodiscard]] std::optional<FindingDraft> finding_of(const PointView& view, const Look& look);

// The first open point, at `place` when it has one; nullopt: none is open.
[[nodiscard]] std::optional<PointRow> next_open(const Session& session, const Place& place);

}  // namespace cotter

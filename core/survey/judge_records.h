// Records that judging adds to a job: figures from makers' documents, and the answers of a periodic inspection.
// Plain values; see core/survey/records.h for the rules that all records keep.
#pragma once

#include <optional>
#include <string>

#include "core/survey/records.h"

namespace cotter {

// A maker's figure that someone read in a document or on the casting. It counts for the axles whose tag bears
// `axle_model`, or, where that is empty, for axle `axle` of this trailer (0: for all of it).
struct MakerLimit {
    Id<MakerLimit> id;
    std::string what;  // the reading it bounds, as readings name it: "pad thickness"
    Bound bound = Bound::at_least;
    Amount value;
    FigureOrigin origin = FigureOrigin::document;
    std::string document;          // title, edition or number of the maker's document
    std::string page;              // page or table in it
    std::optional<Id<Shot>> shot;  // of the stamping, or of the page
    std::string axle_model;
    int axle = 0;       // 1…4, only without `axle_model`
    std::string part;   // part or casting number that the figure is for
    std::string where;  // where it is to be measured, in the maker's words
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const MakerLimit&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("what", s.what);
        f.must("bound", s.bound);
        f.must("value", s.value);
        f.must("origin", s.origin);
        f.may("document", s.document);
        f.may("page", s.page);
        f.may("shot", s.shot);
        f.may("axle_model", s.axle_model);
        f.may("axle", s.axle);
        f.may("part", s.part);
        f.may("where", s.where);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// The head of a periodic inspection (49 CFR 396.17 to 396.21): a job that has one is such an inspection. Its fields may
// stay empty while the job is open; without all of them the job cannot be signed off.
struct Inspection {
    Id<Inspection> id;
    std::string inspector;           // full name
    std::string carrier;             // motor carrier operating the vehicle: name, address, number
    std::optional<Date> date;        // of the inspection
    std::string qualified_by;        // evidence after 396.19: training, certificate or years, and where it is kept
    std::string brake_qualified_by;  // the same for brake work, after 396.25
    std::string statement;           // that it is accurate and complete, in the inspector's words
    Instant at;
    std::string by;

    bool operator==(const Inspection&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.may("inspector", s.inspector);
        f.may("carrier", s.carrier);
        f.may("date", s.date);
        f.may("qualified_by", s.qualified_by);
        f.may("brake_qualified_by", s.brake_qualified_by);
        f.may("statement", s.statement);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// The answer to one item of Appendix A to part 396.
struct InspectionAnswer {
    Id<InspectionAnswer> id;
    std::string item;  // its number there: "1a(1)", "10b(8)"
    Answer answer = Answer::ok;
    std::string remark;  // what is not OK, what was repaired, why it is not fitted
    Instant at;
    std::string by;

    bool operator==(const InspectionAnswer&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("item", s.item);
        f.must("answer", s.answer);
        f.may("remark", s.remark);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

}  // namespace cotter

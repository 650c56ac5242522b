// The records of a job, as plain values. Each describes its fields once (core/base/fields.h).
// A record's `id` is unique within its job; other records refer to it by that id.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/amount.h"
#include "core/base/id.h"
#include "core/base/time.h"
#include "core/survey/words.h"
#include "core/trailer/trailer.h"

namespace cotter {

// The vehicle that tows, as far as it is known at this visit.
struct TowVehicle {
    std::optional<Amount> gvwr;          // mass
    std::optional<Amount> axle_weights;  // mass, the sum of all its axles
    int axles = 0;                       // 0: not known
    std::optional<Amount> hitch_rating;  // mass
    std::optional<Amount> ball_rating;   // mass, as stamped
    std::optional<Amount> ball_size;     // length

    bool operator==(const TowVehicle&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.may("gvwr", s.gvwr);
        f.may("axle_weights", s.axle_weights);
        f.may("axles", s.axles);
        f.may("hitch_rating", s.hitch_rating);
        f.may("ball_rating", s.ball_rating);
        f.may("ball_size", s.ball_size);
    }
};

// One visit to one trailer: who, where, for whom, in what state.
struct Visit {
    Id<Visit> id;  // names the job
    Instant opened;
    std::string technician;
    std::string company;
    std::string customer;
    std::string place;      // where the trailer stands
    std::string complaint;  // in the customer's words
    Load load = Load::unknown;
    bool keep_private_data = false;  // photos leave with position and serial numbers only when true
    VisitRole role = VisitRole::not_said;
    Duty duty = Duty::not_said;
    std::string region;       // "US-TX", ISO 3166-2, or a country alone: "DE" (ISO 3166-1); empty when not said
    bool interstate = false;  // carriers: the trailer crosses state lines
    std::optional<TowVehicle> tow;

    bool operator==(const Visit&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("opened", s.opened);
        f.must("technician", s.technician);
        f.may("company", s.company);
        f.may("customer", s.customer);
        f.may("place", s.place);
        f.may("complaint", s.complaint);
        f.may("load", s.load);
        f.may("keep_private_data", s.keep_private_data);
        f.may("role", s.role);
        f.may("duty", s.duty);
        f.may("region", s.region);
        f.may("interstate", s.interstate);
        f.may("tow", s.tow);
    }
};

// A picture file in the vault and what was found out about it when it was taken in.
struct PhotoRef {
    std::string sha256;      // of the original, lower-case hex: its name in the vault
    std::string media_type;  // "image/jpeg" or "image/png"
    std::int64_t bytes = 0;
    int width = 0;                 // upright, pixels
    int height = 0;                // upright, pixels
    std::optional<Instant> taken;  // by the camera's clock, when it says so with an offset
    double sharpness = 0;          // see core/photo/quality.h for these figures
    double mean_light = 0;         // 0…1
    double dark_share = 0;         // share of pixels 0…1
    double bright_share = 0;

    bool operator==(const PhotoRef&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("sha256", s.sha256);
        f.must("media_type", s.media_type);
        f.must("bytes", s.bytes);
        f.must("width", s.width);
        f.must("height", s.height);
        f.may("taken", s.taken);
        f.may("sharpness", s.sharpness);
        f.may("mean_light", s.mean_light);
        f.may("dark_share", s.dark_share);
        f.may("bright_share", s.bright_share);
    }
};

// A photo in its slot.
struct Shot {
    Id<Shot> id;
    Place place;
    Slot slot = Slot::other;
    Stage stage = Stage::before;
    PhotoRef photo;
    std::string original_name;  // the file's name where it came from
    std::string note;
    Instant added;

    bool operator==(const Shot&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("place", s.place);
        f.must("slot", s.slot);
        f.must("stage", s.stage);
        f.must("photo", s.photo);
        f.may("original_name", s.original_name);
        f.may("note", s.note);
        f.must("added", s.added);
    }
};

// What is wrong (or right) with one component at one place, and what to do.
struct Finding {
    Id<Finding> id;
    Place place;
    std::string component;  // "rotor", "hub cap", …
    std::string defect;     // "heat checks", "below line", …
    Grade grade = Grade::watch;
    std::string note;
    std::string todo;  // "replace rotor, both sides of the axle"
    Outcome outcome = Outcome::open;
    std::string outcome_note;  // what was done, or why not
    Instant at;
    std::string by;

    bool operator==(const Finding&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("place", s.place);
        f.must("component", s.component);
        f.must("defect", s.defect);
        f.must("grade", s.grade);
        f.may("note", s.note);
        f.may("todo", s.todo);
        f.may("outcome", s.outcome);
        f.may("outcome_note", s.outcome_note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// A spot on a picture, 0…1 of the upright picture's width and height from its top left.
struct TagPoint {
    double x = 0;
    double y = 0;

    bool operator==(const TagPoint&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("x", s.x);
        f.must("y", s.y);
    }
};

// A mark on a shot that shows a finding.
struct Tag {
    Id<Tag> id;
    Id<Shot> shot;
    Id<Finding> finding;
    TagShape shape = TagShape::point;
    std::vector<TagPoint> points;  // point: 1; box: 2 opposite corners; arrow: tail, head; stroke: 2…500

    bool operator==(const Tag&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("shot", s.shot);
        f.must("finding", s.finding);
        f.must("shape", s.shape);
        f.must("points", s.points);
    }
};

// One spot of a reading: "inner, leading end" 3.2.
struct ReadingPoint {
    std::string where;
    Number value;

    bool operator==(const ReadingPoint&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.may("where", s.where);
        f.must("value", s.value);
    }
};

// A measured value, or the honest statement that there is none.
struct Reading {
    Id<Reading> id;
    Place place;
    std::string what;  // "pad thickness", "end play", "tread depth", …
    Stage stage = Stage::before;
    Taken taken = Taken::measured;
    std::string reason;  // why not measured or not accessible
    std::vector<ReadingPoint> points;
    std::string unit = "1";            // UCUM code of the points
    std::optional<Number> resolution;  // smallest step the instrument shows, in `unit`
    std::string instrument;
    std::optional<Id<Shot>> shot;  // the picture with the gauge in it
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const Reading&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("place", s.place);
        f.must("what", s.what);
        f.must("stage", s.stage);
        f.may("taken", s.taken);
        f.may("reason", s.reason);
        f.may("points", s.points);
        f.may("unit", s.unit);
        f.may("resolution", s.resolution);
        f.may("instrument", s.instrument);
        f.may("shot", s.shot);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// A tool between wrench and nut that changes the lever: a crowfoot, or an extension in the plane of the wrench. A
// straight socket extension is none.
struct Adapter {
    Amount length;         // a length: the wrench's drive to the nut, along the adapter
    Amount wrench_length;  // a length: the middle of the grip to the wrench's drive
    Amount angle;          // an angle, 0…180°: 0 straight ahead of the wrench, 90 square to it, 180 folded back

    bool operator==(const Adapter&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("length", s.length);
        f.must("wrench_length", s.wrench_length);
        f.must("angle", s.angle);
    }
};

// One round over a pattern of fasteners at one wrench setting. Which torque that is at the nut, also in records made
// before `at_nut` was there: at_nut() in core/work/wrench.h.
struct Pass {
    Amount setting;                     // what the wrench was set to
    std::vector<int> tightened;         // fastener numbers in the order they clicked; 1 is the top one, clockwise
    std::optional<Amount> at_nut = {};  // the torque that this is at the nut; with an adapter it is another one

    bool operator==(const Pass&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("setting", s.setting);
        f.may("at_nut", s.at_nut);
        f.may("tightened", s.tightened);
    }
};

// The tightening of one joint, nut by nut.
struct Torque {
    Id<Torque> id;
    Place place;
    std::string joint;  // "wheel nuts", "caliper bracket bolts"
    int fasteners = 0;  // 1…24
    std::optional<Amount> target;
    std::string target_source;         // maker's document and page; never guessed from the stud size
    std::optional<Place> target_from;  // the like joint whose target was taken over, when a person said that it fits
    bool unit_confirmed = false;       // the target is unusual for such a joint: a person was asked, and meant it
    Taken taken = Taken::measured;
    std::string reason;
    std::vector<Pass> passes;
    std::string found_note;  // looseness found before loosening, nut by nut
    std::string wrench;      // its id; in older records with the adapter's words behind it (core/work/wrench.h)
    std::optional<Date> wrench_calibrated;
    std::optional<Adapter> adapter;  // none: the socket sits on the wrench's drive
    Instant at;
    std::string by;

    bool operator==(const Torque&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("place", s.place);
        f.must("joint", s.joint);
        f.must("fasteners", s.fasteners);
        f.may("target", s.target);
        f.may("target_source", s.target_source);
        f.may("target_from", s.target_from);
        f.may("unit_confirmed", s.unit_confirmed);
        f.may("taken", s.taken);
        f.may("reason", s.reason);
        f.may("passes", s.passes);
        f.may("found_note", s.found_note);
        f.may("wrench", s.wrench);
        f.may("wrench_calibrated", s.wrench_calibrated);
        f.may("adapter", s.adapter);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// A fluid level against its mark.
struct LevelSeen {
    LevelMark mark = LevelMark::not_seen;
    std::optional<Amount> offset;  // above (+) or below (−) the mark
    std::string note;              // colour, metal, water

    bool operator==(const LevelSeen&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("mark", s.mark);
        f.may("offset", s.offset);
        f.may("note", s.note);
    }
};

// A fluid before and after, with what was added.
struct Level {
    Id<Level> id;
    Place place;
    std::string fluid;    // "hub oil", "brake fluid"
    std::string product;  // as on the bottle
    Taken taken = Taken::measured;
    std::string reason;
    LevelSeen before;
    std::optional<Amount> added;
    std::optional<LevelSeen> after;
    std::optional<Amount> settled;  // time between spinning the hub and looking
    Instant at;
    std::string by;

    bool operator==(const Level&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("place", s.place);
        f.must("fluid", s.fluid);
        f.may("product", s.product);
        f.may("taken", s.taken);
        f.may("reason", s.reason);
        f.must("before", s.before);
        f.may("added", s.added);
        f.may("after", s.after);
        f.may("settled", s.settled);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// The hand-over: from here on nothing is overwritten.
struct SignOff {
    Id<SignOff> id;
    Instant at;  // the packet's date and all times in its zip
    std::string by;
    std::string statement;
    std::string
        acknowledged;  // the answer on towing that the signer was asked to acknowledge; empty: nothing stood open

    bool operator==(const SignOff&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("at", s.at);
        f.must("by", s.by);
        f.must("statement", s.statement);
        f.may("acknowledged", s.acknowledged);
    }
};

}  // namespace cotter

// The records of what was looked at: answers to points, what a tire's sidewall and an air chamber's tag say, the
// breakaway test, and what happened to the trailer in between. Plain values; see core/survey/records.h for the rules
// that all records keep. `point` and `item` are ids of the points table (core/trade/point.h).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/survey/records.h"

namespace cotter {

// How far the person who answered could look.
enum class Reach { outside, wheel_on, wheel_off };
constexpr auto names(Reach) {
    return name_list("outside", "wheel on", "wheel off");
}

// `cannot_tell` is an answer, and never counts as a good one.
enum class LookResult { good, bad, cannot_tell };
constexpr auto names(LookResult) {
    return name_list("looks good", "something is wrong", "cannot tell");
}

// One entry of a point's list: a lamp that works or does not, a fault that is seen, the choice that was made.
struct LookItem {
    std::string item;  // its id within the point: "cord", "tail left"
    LookResult result = LookResult::good;

    bool operator==(const LookItem&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("item", s.item);
        f.must("result", s.result);
    }
};

// The answer to one point at one place, by somebody who looked.
struct Look {
    Id<Look> id;
    std::string point;  // "tire.face"
    Place place;
    Stage stage = Stage::before;
    LookResult result = LookResult::good;  // of the whole point: bad when any item is
    std::vector<LookItem> items;
    Reach reach = Reach::outside;
    std::optional<Id<Finding>> finding;  // that a bad answer made
    std::vector<Id<Shot>> shots;
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const Look&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("point", s.point);
        f.must("place", s.place);
        f.must("stage", s.stage);
        f.must("result", s.result);
        f.may("items", s.items);
        f.must("reach", s.reach);
        f.may("finding", s.finding);
        f.may("shots", s.shots);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// The letters before or after a tire's size: P passenger, LT light truck, ST trailer service, C commercial.
enum class TireType { not_known, passenger, light_truck, trailer_service, commercial };
constexpr auto names(TireType) {
    return name_list("not known", "P", "LT", "ST", "C");
}

// What a tire's sidewall says. At a wheel; the newest at a wheel counts.
struct Sidewall {
    Id<Sidewall> id;
    Place place;
    std::string size;  // as it stands: "ST225/75R15"
    TireType type = TireType::not_known;
    std::string load_range;            // "E"
    int index_single = 0;              // load index; 0 not read
    int index_dual = 0;                // the lower figure of a pair such as 121/118
    std::optional<Amount> max_single;  // mass, as marked; instead of the index
    std::optional<Amount> max_dual;
    std::optional<Amount> max_pressure;  // cold
    std::string date_code;               // week and year of the DOT number as it stands: "0523"; 3 digits: before 2000
    std::optional<Amount> speed_limit;   // only for tires marked for a limited speed
    bool not_for_highway = false;        // marked so
    std::optional<Id<Shot>> shot;
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const Sidewall&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("place", s.place);
        f.may("size", s.size);
        f.may("type", s.type);
        f.may("load_range", s.load_range);
        f.may("index_single", s.index_single);
        f.may("index_dual", s.index_dual);
        f.may("max_single", s.max_single);
        f.may("max_dual", s.max_dual);
        f.may("max_pressure", s.max_pressure);
        f.may("date_code", s.date_code);
        f.may("speed_limit", s.speed_limit);
        f.may("not_for_highway", s.not_for_highway);
        f.may("shot", s.shot);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// How an air chamber's halves are held together; the stroke tables differ by it (49 CFR 393.47(e)).
enum class ChamberFamily { not_known, clamp, bolt, rotochamber, piston };
constexpr auto names(ChamberFamily) {
    return name_list("not known", "clamp band", "bolts", "rotochamber", "DD-3");
}

enum class StrokeClass { not_read, standard, long_stroke };
constexpr auto names(StrokeClass) {
    return name_list("not read", "standard", "long");
}

enum class SlackAdjuster { not_known, manual, automatic };
constexpr auto names(SlackAdjuster) {
    return name_list("not known", "manual", "automatic");
}

enum class Fitted { not_known, yes, no };
constexpr auto names(Fitted) {
    return name_list("not known", "yes", "no");
}

// An air brake chamber and its slack adjuster, as their tags say. At a corner; the newest there counts.
struct Chamber {
    Id<Chamber> id;
    Place place;
    ChamberFamily family = ChamberFamily::not_known;
    std::string size;  // "30"
    StrokeClass stroke = StrokeClass::not_read;
    std::optional<Amount> rated_stroke;  // length, as marked on a type that the law's table does not list
    std::optional<Amount> marked_limit;  // length, as marked
    std::optional<Amount> table_limit;   // length, as somebody read it in 49 CFR 393.47(e)
    Fitted spring_brake = Fitted::not_known;
    SlackAdjuster slack = SlackAdjuster::not_known;
    std::optional<Amount> slack_length;  // length, center to center
    std::optional<Id<Shot>> shot;
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const Chamber&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("place", s.place);
        f.may("family", s.family);
        f.may("size", s.size);
        f.may("stroke", s.stroke);
        f.may("rated_stroke", s.rated_stroke);
        f.may("marked_limit", s.marked_limit);
        f.may("table_limit", s.table_limit);
        f.may("spring_brake", s.spring_brake);
        f.may("slack", s.slack);
        f.may("slack_length", s.slack_length);
        f.may("shot", s.shot);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

enum class Held { not_tried, holds, turns };
constexpr auto names(Held) {
    return name_list("not tried", "holds", "turns");
}

// One wheel in a breakaway test.
struct WheelHeld {
    Place place;                      // a corner
    Held at_start = Held::not_tried;  // pin out
    Held at_end = Held::not_tried;    // pin still out, when the time is up
    Held pin_back = Held::not_tried;  // pin in again: must turn

    bool operator==(const WheelHeld&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("place", s.place);
        f.may("at_start", s.at_start);
        f.may("at_end", s.at_end);
        f.may("pin_back", s.pin_back);
    }
};

// Pin or cable out, every required wheel tried, for 15 minutes by the clock, pin back in (49 CFR 393.43(d)).
struct BreakawayTest {
    Id<BreakawayTest> id;
    Instant started;
    std::optional<Instant> ended;  // none: it still runs, or was never ended
    std::vector<WheelHeld> wheels;
    bool pin_in_again = false;  // seen
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const BreakawayTest&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("started", s.started);
        f.may("ended", s.ended);
        f.may("wheels", s.wheels);
        f.may("pin_in_again", s.pin_in_again);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// What ends answers that were good: a trip check ends when the trailer is loaded, unloaded or coupled to another
// vehicle; any answer at the place ends with an impact, an overload or overheating there. `driven`: since the work.
enum class EventKind { loaded, unloaded, coupled, impact, overload, overheated, driven };
constexpr auto names(EventKind) {
    return name_list("loaded", "unloaded", "coupled", "impact", "overload", "overheated", "driven");
}

struct Event {
    Id<Event> id;
    EventKind kind = EventKind::loaded;
    Place place;  // the trailer when it concerns all of it
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const Event&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("kind", s.kind);
        f.must("place", s.place);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

}  // namespace cotter

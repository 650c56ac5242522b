// The short lists of words that records choose from. Their texts are what files and packets hold: append only.
#pragma once

#include "core/base/fields.h"

namespace cotter {

enum class Load { unknown, empty, loaded };
constexpr auto names(Load) {
    return name_list("unknown", "empty", "loaded");
}

// Who looks after the trailer at this visit.
enum class VisitRole { not_said, owner, mechanic };
constexpr auto names(VisitRole) {
    return name_list("not said", "owner", "mechanic");
}

// What the trailer is used for; it decides which rules bind and how they are worded.
enum class Duty { not_said, carrier, business, farm, private_use };
constexpr auto names(Duty) {
    return name_list("not said", "carrier", "other business", "farm", "private");
}

enum class Stage { before, after };  // the work
constexpr auto names(Stage) {
    return name_list("before", "after");
}

// What a shot shows. One slot may hold several shots of a place and stage.
enum class Slot {
    whole,
    data_plate,
    wheel_on,
    cap,
    brake,
    rotor_face,
    rotor_edge,
    lining,
    guide_pin,
    caliper,
    seal_side,
    bearing,
    spindle,
    nuts,
    tread,
    sidewall,
    hose_line,
    reservoir,
    coupler,
    chains,
    springs,
    wiring,
    gauge,
    other
};
constexpr auto names(Slot) {
    return name_list("whole", "data plate", "wheel on", "cap", "brake", "rotor face", "rotor edge", "lining",
                     "guide pin", "caliper", "seal side", "bearing", "spindle", "nuts", "tread", "sidewall",
                     "hose and line", "reservoir", "coupler", "chains", "springs", "wiring", "gauge", "other");
}

enum class Grade { serviceable, watch, repair, do_not_tow };
constexpr auto names(Grade) {
    return name_list("serviceable", "watch", "repair", "do not tow");
}

enum class Outcome { open, repaired, deferred, declined };
constexpr auto names(Outcome) {
    return name_list("open", "repaired", "deferred", "declined");
}

enum class TagShape { point, box, arrow, stroke };
constexpr auto names(TagShape) {
    return name_list("point", "box", "arrow", "stroke");
}

// Whether there is a value. The last two are results with a reason; neither ever counts as 'OK'.
enum class Taken { measured, not_measured, not_accessible };
constexpr auto names(Taken) {
    return name_list("measured", "not measured", "not accessible");
}

enum class LevelMark { not_seen, empty, below, at, above };
constexpr auto names(LevelMark) {
    return name_list("not seen", "empty", "below", "at", "above");
}

// On which side of a limit a value is good.
enum class Bound { at_least, more_than, at_most, less_than };
constexpr auto names(Bound) {
    return name_list("at least", "more than", "at most", "less than");
}

// Where a maker's figure was read.
enum class FigureOrigin { document, stamped };
constexpr auto names(FigureOrigin) {
    return name_list("document", "stamped");
}

// To an item of a periodic inspection.
enum class Answer { ok, not_ok, repaired, not_fitted };
constexpr auto names(Answer) {
    return name_list("OK", "not OK", "repaired", "not fitted");
}

}  // namespace cotter

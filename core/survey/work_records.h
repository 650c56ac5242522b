// The records of work led by procedures: steps, bearing settings, the brake pipes, fluid drawn at each corner.
// Plain values, one file beside records.h; each describes its fields once (core/base/fields.h).
#pragma once

#include "core/survey/records.h"

namespace cotter {

// What a mark says about a step. `overridden` lets later steps pass without the step's proof and needs a reason;
// `not_needed` closes a step that the procedure calls optional; `caution_read` says that a caution was shown and read.
enum class StepWord { done, not_needed, overridden, caution_read };
constexpr auto names(StepWord) {
    return name_list("done", "not needed", "overridden", "caution read");
}

// What was answered to the question that a step asks: one polarity for all of them.
enum class StepAnswer { looks_good, something_wrong, cannot_tell };
constexpr auto names(StepAnswer) {
    return name_list("looks good", "something is wrong", "cannot tell");
}

// One thing said about one step of a procedure at one place. Several may stand beside each other; the newest of
// done, not_needed and overridden holds.
struct StepMark {
    Id<StepMark> id;
    std::string procedure;  // "disc"
    std::string step;       // "D4"
    Place place;            // the corner, or the trailer for steps that concern all of it
    StepWord word = StepWord::done;
    std::string title;    // of the step, or of the caution, as it was shown: procedures change, the record stays
    std::string caution;  // caution_read: which
    std::string reason;   // overridden, not_needed: why; shown in the packet
    std::string note;     // who approved, what was seen
    std::vector<Id<Shot>> shots;  // evidence
    std::vector<Id<Reading>> readings;
    std::vector<Id<Torque>> torques;
    std::vector<Id<Level>> levels;
    std::optional<StepAnswer> answer;    // done, of a step that asks; marks of programs before have none
    std::optional<Id<Finding>> finding;  // that the answer 'something is wrong' made
    Instant at;
    std::string by;

    bool operator==(const StepMark&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("procedure", s.procedure);
        f.must("step", s.step);
        f.must("place", s.place);
        f.must("word", s.word);
        f.may("title", s.title);
        f.may("caution", s.caution);
        f.may("reason", s.reason);
        f.may("note", s.note);
        f.may("shots", s.shots);
        f.may("readings", s.readings);
        f.may("torques", s.torques);
        f.may("levels", s.levels);
        f.may("answer", s.answer);
        f.may("finding", s.finding);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// How the spindle nut is kept from turning.
enum class NutStyle { castle, tab_washer, double_nut, self_locking, preset };
constexpr auto names(NutStyle) {
    return name_list("castle nut", "tab washer", "double nut", "self-locking nut", "preset");
}

// One try at a lock position, with what the dial then showed.
struct BearingTry {
    int steps = 0;                    // lock positions from the first one: above 0 looser, below 0 tighter
    std::optional<Id<Reading>> dial;  // the end play measured there

    bool operator==(const BearingTry&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("steps", s.steps);
        f.may("dial", s.dial);
    }
};

// How a wheel bearing was set. The dial reading of the last try is the proof; nothing else is.
struct BearingSetting {
    Id<BearingSetting> id;
    Place place;
    NutStyle style = NutStyle::castle;
    std::string source;                      // maker's document and page for what follows
    std::optional<Number> threads_per_inch;  // of the spindle
    int lock_positions = 0;                  // where the lock engages, per full turn of the nut; 0: not known
    std::optional<Amount> seated;            // torque while turning the hub
    std::optional<Number> back_off;          // turns, "1/6"
    std::optional<Amount> locked;            // torque of the outer nut, or the one torque of a preset bearing
    std::optional<Amount> play_min;
    std::optional<Amount> play_max;
    std::vector<BearingTry> tries;  // in the order they were made
    bool new_lock = false;          // a new cotter, washer or self-locking nut was fitted
    std::optional<Id<Shot>> lock_shot;
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const BearingSetting&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("place", s.place);
        f.must("style", s.style);
        f.may("source", s.source);
        f.may("threads_per_inch", s.threads_per_inch);
        f.may("lock_positions", s.lock_positions);
        f.may("seated", s.seated);
        f.may("back_off", s.back_off);
        f.may("locked", s.locked);
        f.may("play_min", s.play_min);
        f.may("play_max", s.play_max);
        f.may("tries", s.tries);
        f.may("new_lock", s.new_lock);
        f.may("lock_shot", s.lock_shot);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// One piece of brake pipe. Its ends are "actuator", a corner's code ("axle1-left") or a name for a tee ("tee 1").
struct PipeLeg {
    std::string from;
    std::string to;
    Amount length;
    std::optional<Amount> bore;  // inside diameter

    bool operator==(const PipeLeg&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("from", s.from);
        f.must("to", s.to);
        f.must("length", s.length);
        f.may("bore", s.bore);
    }
};

// The brake pipes as they really run. At most one in a job.
struct PipeRoute {
    Id<PipeRoute> id;
    std::vector<PipeLeg> legs;
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const PipeRoute&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("legs", s.legs);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// Fluid drawn from one corner's bleeder in one round.
struct BleedCount {
    Id<BleedCount> id;
    Place place;
    Amount drawn;
    bool clear = false;   // it ran clean at the end
    bool bubbles = true;  // still seen at the end
    std::string fluid;    // what was put in, as on the bottle
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const BleedCount&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("place", s.place);
        f.must("drawn", s.drawn);
        f.must("clear", s.clear);
        f.must("bubbles", s.bubbles);
        f.may("fluid", s.fluid);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

}  // namespace cotter

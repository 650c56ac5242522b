// Procedures as data: steps with what they need, cautions, hold points and proofs. Read from assets/procedures.
// For the engine (progress.h), the procedure screen and the report. Plain values; any thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/fields.h"
#include "core/base/files.h"
#include "core/survey/job.h"
#include "core/survey/work_records.h"

namespace cotter {

// What a procedure's steps are done at.
enum class Scope { trailer, corner };
constexpr auto names(Scope) {
    return name_list("trailer", "corner");
}

// At which corners a needed step must be closed: this one, both of this axle, every corner.
enum class StepReach { here, axle, all };
constexpr auto names(StepReach) {
    return name_list("here", "axle", "all");
}

// One thing that must be closed before a step.
struct StepNeed {
    std::string step;
    StepReach reach = StepReach::here;
    bool begun = false;              // only where its procedure has been begun
    std::optional<BrakeKind> brake;  // only where the axle has this brake
    std::optional<HubKind> hub;      // only where the axle has this hub
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("step", s.step);
        f.may("reach", s.reach);
        f.may("begun", s.begun);
        f.may("brake", s.brake);
        f.may("hub", s.hub);
    }
};

enum class ProofKind { shot, reading, torque, level, bearing, route, bleeding, note, look, breakaway };
constexpr auto names(ProofKind) {
    return name_list("shot", "reading", "torque", "level", "bearing", "route", "bleeding", "note", "look", "breakaway");
}

// What the job must hold as evidence. At a hold point without it the step stays open.
struct Proof {
    ProofKind kind = ProofKind::note;
    std::string what;  // the reading's what, the torque's joint, the level's fluid, the shot's slot, the point
    std::optional<Stage> stage;  // of a shot or reading
    bool anywhere = false;       // at any place of the trailer, not only at the step's
    bool every = false;          // a reading at every hub, of a tire at every wheel; a look at every braked corner
    std::string words;           // "the end play, measured by dial"
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("kind", s.kind);
        f.may("what", s.what);
        f.may("stage", s.stage);
        f.may("anywhere", s.anywhere);
        f.may("every", s.every);
        f.must("words", s.words);
    }
};

// A question of the owner's mode: the answer 'something is wrong' becomes a finding.
struct Ask {
    std::string question;   // of something wrong, never of something right: "Is a nut missing or loose?"
    std::string component;  // of the finding
    std::string defect;
    Grade grade = Grade::watch;
    std::string now;  // what to do when something is wrong: "Do not tow. …"
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("question", s.question);
        f.must("component", s.component);
        f.must("defect", s.defect);
        f.must("grade", s.grade);
        f.must("now", s.now);
    }
};

struct Step {
    std::string id;  // "D4"; unique among all procedures
    std::string title;
    std::string plain;  // for someone who does it for the first time
    std::string why;
    std::vector<StepNeed> needs;
    std::vector<std::string> cautions;  // ids, shown and read before the step
    std::string hold;                   // not empty: a hold point, and what it says while its proof is missing
    std::vector<Proof> proofs;
    std::string optional;           // not empty: may be closed as not needed, and when
    std::vector<HubKind> hubs;      // not empty: only at such hubs
    std::vector<BrakeKind> brakes;  // not empty: only at such brakes; of the trailer: where any axle has one
    bool owner = false;             // shown in the owner's mode
    bool moves = false;             // the trailer is driven for it: not while something says 'do not tow'
    std::optional<Ask> ask;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("title", s.title);
        f.may("plain", s.plain);
        f.may("why", s.why);
        f.may("needs", s.needs);
        f.may("cautions", s.cautions);
        f.may("hold", s.hold);
        f.may("proofs", s.proofs);
        f.may("optional", s.optional);
        f.may("hubs", s.hubs);
        f.may("brakes", s.brakes);
        f.may("owner", s.owner);
        f.may("moves", s.moves);
        f.may("ask", s.ask);
    }
};

struct Procedure {
    std::string id;  // "disc"
    std::string title;
    std::string plain;  // what it is for
    Scope scope = Scope::trailer;
    std::vector<BrakeKind> brakes;      // not empty: only for such brakes
    std::vector<BrakeKind> not_brakes;  // never at axles with such brakes
    bool opens_hub = false;
    bool owner = false;  // offered in the owner's mode
    std::string source;  // of its order
    std::vector<Step> steps;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("title", s.title);
        f.must("plain", s.plain);
        f.must("scope", s.scope);
        f.may("brakes", s.brakes);
        f.may("not_brakes", s.not_brakes);
        f.may("opens_hub", s.opens_hub);
        f.may("owner", s.owner);
        f.must("source", s.source);
        f.must("steps", s.steps);
    }
};

struct Caution {
    std::string id;  // "roll-away"
    int number = 0;  // for sorting and lists
    std::string title;
    std::string danger;   // what happens
    std::string require;  // what to do before going on
    std::string source;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("number", s.number);
        f.must("title", s.title);
        f.must("danger", s.danger);
        f.must("require", s.require);
        f.must("source", s.source);
    }
};

// A way to set a bearing that is seen in public sources. Its figures are never defaults: the maker's sheet goes first.
struct BearingMethod {
    std::string id;
    std::string title;
    NutStyle style = NutStyle::castle;
    std::vector<std::string> order;
    std::string lock;
    std::string proof;
    std::string source;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("title", s.title);
        f.must("style", s.style);
        f.must("order", s.order);
        f.must("lock", s.lock);
        f.must("proof", s.proof);
        f.must("source", s.source);
    }
};

// Everything in assets/procedures but the fluids and re-checks.
struct WorkBook {
    std::string standing;  // shown when a job begins, on every limit, in every document
    std::vector<Caution> cautions;
    std::vector<BearingMethod> bearing_methods;
    std::vector<Procedure> procedures;

    [[nodiscard]] const Procedure* procedure(std::string_view id) const;  // nullptr when there is none
    [[nodiscard]] const Caution* caution(std::string_view id) const;
    struct Found {
        const Procedure* procedure = nullptr;
        const Step* step = nullptr;
    };
    [[nodiscard]] Found step(std::string_view id) const;  // both nullptr when there is none
};

[[nodiscard]] Result<Procedure> procedure_from_json(std::string_view json);

// Reads common.json (standing statement, cautions, bearing methods) and every other *.procedure.json in `folder`, in
// the order of their names. Fails with the file's name for one that is missing or not as it should be, and with the
// first of defects_of().
[[nodiscard]] Result<WorkBook> load_work_book(Files& files, const std::string& folder);

// What is wrong with the data itself: ids used twice, needs and cautions that do not exist, circles, a trailer's step
// that needs a corner's without saying which, a hold without proof, an owner's step that needs a step owners do not
// see.
[[nodiscard]] std::vector<std::string> defects_of(const WorkBook& book);

}  // namespace cotter

// What readings and findings together say: grades with their reasons, and what cannot be told. Values; any thread.
//
// A judgement never stands without a reason, a reason never without a source, and what was not measured is an Unknown,
// never a good grade. Texts are for people, in plain words; `limit_id`, `record` and `component` are for programs.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/judge/limit.h"

namespace cotter {

// A reason: one thing that speaks for or against a place. (The packet check has Reasons of its own.)
struct Ground {
    Place place;            // a corner, a station or the trailer
    int axle = 0;           // when it concerns an axle as a whole, else 0
    std::string component;  // "brake", "hub", "tyre", "wheel", "load", …: the leaf of the tree that it hangs on
    std::string subject;    // the reading or comparison: "pad thickness", "left against right"
    Grade grade = Grade::serviceable;
    std::string says;                // the one line: "2.6 mm is under the limit of 3 mm"
    std::string reading;             // what was read, and where: "2.6 mm (inner, leading end)"
    std::string limit;               // "at least 3 mm"; empty for a person's finding
    std::string source;              // who says so; never empty
    LimitMark mark = LimitMark::c;   // of the limit
    std::vector<std::string> steps;  // the arithmetic, a line a step; empty for a plain comparison
    std::string todo;                // the likely cause and what to do; may be empty
    std::string limit_id;            // empty when there is no limit
    Uuid record;                     // the reading or finding; nil when several
};

// What an Unknown lacks. Programs lead on by this, never by its words.
enum class Lack {
    reading,        // something to be measured, looked at or told
    makers_figure,  // a bound that only the maker of the part knows
    placard,        // what the trailer's placard or certification label says
};

// Something that cannot be told, and why.
struct Unknown {
    Place place;
    int axle = 0;
    std::string component;
    std::string subject;
    std::string because;     // "not measured: the rotor is cracked"
    std::string todo;        // what would tell; may be empty
    bool essential = false;  // without it nobody can say whether the trailer may be towed
    Lack lacks = Lack::reading;
};

// A node: trailer, axle, corner or station, component.
struct Judgement {
    std::string name;  // "Axle 1 left", "brake"
    Place place;
    int axle = 0;                   // for an axle's node
    std::optional<Grade> grade;     // the worst of it and of its parts; none: nothing is known
    std::vector<Ground> reasons;    // the gravest first
    std::vector<Unknown> unknowns;  // essential ones first
    std::vector<Judgement> parts;

    [[nodiscard]] std::size_t unknown_count() const;  // with its parts
};

// Calls `f(const Judgement&)` for the node and everything under it, outermost first.
template <class F>
void walk(const Judgement& node, F&& f) {
    f(node);
    for (const Judgement& part : node.parts) walk(part, f);
}

// The tree of a trailer with these axles from flat lists.
[[nodiscard]] Judgement grow_tree(const Job& job, const std::vector<Ground>& reasons,
                                  const std::vector<Unknown>& unknowns);

}  // namespace cotter

// A limit is a record of its own: what it bounds, on which side a value is good, where it applies, who says so, and how
// sure we are of that. For judging, screens and the report. Pure; any thread.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/survey/job.h"
#include "core/trade/law.h"

namespace cotter {

// How firm a figure is. a: law, stamped on the part, or the maker's; b: physics or definition; c: common practice,
// which may warn and never fail anything.
enum class LimitMark { a, b, c };
constexpr auto names(LimitMark) {
    return name_list("a", "b", "c");
}

enum class SourceKind { law, state_law, stamped, maker, shop, practice, physics };
constexpr auto names(SourceKind) {
    return name_list("law", "state law", "stamped", "maker", "shop", "practice", "physics");
}

// `inspection`: a line of the periodic inspection only; equipment beyond it may still be lawful to run.
enum class LimitUse { operate, inspection };
constexpr auto names(LimitUse) {
    return name_list("operate", "periodic inspection");
}

struct LimitSource {
    SourceKind kind = SourceKind::practice;
    std::string text;              // "49 CFR 393.47(d)(2)", the document's title, …
    std::string page;              // of a document
    std::optional<Id<Shot>> shot;  // of a stamping

    bool operator==(const LimitSource&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("kind", s.kind);
        f.must("text", s.text);
        f.may("page", s.page);
        f.may("shot", s.shot);
    }
};

struct Limit {
    std::string id;    // stable: "lining-operate"
    std::string what;  // the reading it bounds: a name of core/trade/reading_names.h, or any other
    Bound bound = Bound::at_least;
    Amount value;
    std::string measured;           // where: "at the shoe centre"
    std::vector<BrakeKind> brakes;  // applies to axles with one of these; empty: to all
    std::vector<HubKind> hubs;      // the same for hubs
    std::string axle_model;         // only axles with this tag; empty: all
    int axle = 0;                   // only this one; 0: all
    std::string part;               // part number that it is for
    LimitUse use = LimitUse::operate;
    LimitSource source;
    LimitMark mark = LimitMark::c;
    Evidence evidence = Evidence::memory;
    Grade beyond = Grade::watch;  // what a value beyond it means
    std::optional<Date> checked;  // when its text was last looked at; none for what is from memory
    std::string entered_by;
    std::string note;

    bool operator==(const Limit&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("what", s.what);
        f.must("bound", s.bound);
        f.must("value", s.value);
        f.may("measured", s.measured);
        f.may("brakes", s.brakes);
        f.may("hubs", s.hubs);
        f.may("axle_model", s.axle_model);
        f.may("axle", s.axle);
        f.may("part", s.part);
        f.may("use", s.use);
        f.must("source", s.source);
        f.must("mark", s.mark);
        f.must("evidence", s.evidence);
        f.must("beyond", s.beyond);
        f.may("checked", s.checked);
        f.must("entered_by", s.entered_by);
        f.may("note", s.note);
    }
};

[[nodiscard]] std::string limit_text(const Limit& limit);   // "at least 1/16 in, at the shoe centre"
[[nodiscard]] std::string source_text(const Limit& limit);  // "common practice (…); confirm with the maker"
[[nodiscard]] bool is_lower(Bound bound);                   // a value must not be under it

// `good`: on the right side. `close`: good, but not by more than the instrument's step, so it may be beyond.
enum class Stand { good, close, beyond };
// Both in SI; `step_si` 0 when the instrument's resolution is not known. Exact at the limit itself, as laws are.
[[nodiscard]] Stand stand_of(const Limit& limit, double si, double step_si);

// What is wrong with a list of limits, one line each: no source, an unknown unit, practice that would fail something,
// wheel-nut torque without a maker's document, the same id twice. Empty: all is well.
[[nodiscard]] std::vector<std::string> limit_problems(std::span<const Limit> limits);

// A register's text: {"limits":[…]}. Refused with place and reason when it cannot be read or limit_problems() has one.
[[nodiscard]] Result<std::vector<Limit>> parse_limits(std::string_view json);

// A maker's figure of a job as a limit: stamped ones forbid towing, those from documents call for repair.
[[nodiscard]] Limit limit_of(const MakerLimit& figure);

// The figures that earlier jobs hold for axles of this model, the newest of each `what` and side first entered wins its
// place; none twice. To be offered to the user, who puts those that still hold into the job. Empty model: none.
[[nodiscard]] std::vector<MakerLimit> remembered_limits(const std::string& axle_model, std::span<const Job> earlier);

}  // namespace cotter

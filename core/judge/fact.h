// What the answer engine says: facts, never sentences. A fact is an id with typed arguments; the words are in one table
// per language (core/judge/fact_english.cpp has the English ones). Values; any thread.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "core/judge/fact_id.h"
#include "core/trade/point.h"
#include "core/trade/work_done.h"

namespace cotter {

// An entry of a point's list, by its id there.
struct EntryOf {
    PointId point = PointId::plate_id;
    std::string entry;

    bool operator==(const EntryOf&) const = default;
};

// Words as somebody entered them: printed so in every language.
using Entered = std::string;

using FactArg = std::variant<Entered, Amount, std::int64_t, Place, Date, Instant, PointId, EntryOf, Grade, Bound, Taken,
                             Outcome, EventKind, Work, Keeps, LevelMark>;

struct Fact {
    FactId id = FactId::not_asked;
    std::vector<FactArg> args;

    bool operator==(const Fact&) const = default;
};

template <class... A>
[[nodiscard]] Fact fact(FactId id, A&&... args) {
    return Fact{id, {FactArg(std::forward<A>(args))...}};
}

// A computed value as an Amount in `ucum`, rounded to `digits`.
[[nodiscard]] Amount figure(double si, std::string_view ucum, int digits);

}  // namespace cotter

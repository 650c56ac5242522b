// What the numeric keypad knows: the digits so far, the unit, the points of a reading. Pure; one thread.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/amount.h"
#include "core/survey/words.h"

namespace cotter {

// What is to be keyed in.
struct KeypadSpec {
    std::string title;                // "Rotor thickness"
    std::vector<std::string> units;   // UCUM codes on offer, the first one chosen; at least one
    std::vector<std::string> points;  // where it is to be measured, in order; empty: one nameless point
    bool more_points = false;         // points beyond these may be added
    bool sign = false;                // values below zero make sense
    bool fractions = false;           // /8, /16 and /32 serve
    bool some_points = false;         // one point that is a number is enough
    bool may_skip = false;            // 'not measured' and 'not accessible' are possible answers
    bool may_not_know = false;        // 'not known' is one: Taken::not_measured
    bool may_remove = false;          // what is kept already can be taken away
};

enum class KeypadKey {
    d0,
    d1,
    d2,
    d3,
    d4,
    d5,
    d6,
    d7,
    d8,
    d9,
    point,
    sign,
    erase,
    clear,
    and_part,  // between a whole number and its fraction: "1 and 3/32"
    eighths,
    sixteenths,
    thirty_seconds,  // makes the digits since 'and' the top of a fraction
    next_unit,
    next_point
};

class KeypadModel {
public:
    explicit KeypadModel(KeypadSpec spec);

    [[nodiscard]] const KeypadSpec& spec() const { return spec_; }
    void press(KeypadKey key);                    // does nothing when !can(key)
    [[nodiscard]] bool can(KeypadKey key) const;  // would it change anything
    void choose_unit(const std::string& ucum);    // only while no other point is filled
    void choose_point(std::size_t index);         // 0…points().size()-1
    // As it was keyed before; stands at the first empty point. A unit that is not on offer is left as it is.
    void restore(std::vector<std::string> texts, const std::string& ucum, Taken taken);
    void answer(Taken taken);  // pressing the same one again takes it back

    [[nodiscard]] Taken taken() const { return taken_; }
    [[nodiscard]] const std::string& text() const { return texts_[at_]; }  // "", "7.", "1 3/32"
    [[nodiscard]] std::optional<Number> number() const;  // of the point being keyed; nullopt while unfinished
    [[nodiscard]] const std::string& unit() const { return unit_; }
    [[nodiscard]] bool unit_fixed() const;  // other points are already in this unit
    [[nodiscard]] std::size_t point() const { return at_; }
    [[nodiscard]] const std::vector<std::string>& points() const { return texts_; }  // as keyed; "" = not yet
    [[nodiscard]] std::string point_name(std::size_t index) const;                   // "2" where the spec gives no name

    // Over the finished points, written as they were keyed: "7.05", "3/32". nullopt below two points (spread) or one.
    [[nodiscard]] std::optional<std::string> least() const;
    [[nodiscard]] std::optional<std::string> spread() const;

    // True when there is an answer to hand in: a reason for none, or every named point is a number.
    [[nodiscard]] bool complete() const;
    // What still hinders complete(), as one short line; empty when nothing does.
    [[nodiscard]] std::string missing() const;

private:
    void type(char c) { texts_[at_] += c; }
    void erase();
    void put_fraction(int bottom);
    [[nodiscard]] std::string_view part() const;  // the digits since the last 'and'

    KeypadSpec spec_;
    std::string unit_;
    std::vector<std::string> texts_;
    std::size_t at_ = 0;
    Taken taken_ = Taken::measured;
};

}  // namespace cotter

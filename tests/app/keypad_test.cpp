// The keypad's arithmetic and rules: what each key makes of what is there.
#include "app/ui/keypad_model.h"

#include <doctest/doctest.h>

#include "app/ui/exact.h"

using namespace cotter;
using enum KeypadKey;

namespace {

std::string keyed(KeypadModel& pad, std::initializer_list<KeypadKey> keys) {
    for (const KeypadKey key : keys) pad.press(key);
    return pad.text();
}

KeypadModel inches() {
    KeypadSpec spec;
    spec.units = {"[in_i]", "mm"};
    spec.fractions = true;
    return KeypadModel(spec);
}

KeypadModel pads() {
    KeypadSpec spec;
    spec.units = {"mm", "[in_i]"};
    spec.points = {"inner", "outer"};
    spec.may_skip = true;
    spec.more_points = true;
    return KeypadModel(spec);
}

}  // namespace

TEST_CASE("decimals are kept to the letter") {
    KeypadModel pad(KeypadSpec{});
    CHECK(keyed(pad, {d7, point, d1, d0}) == "7.10");
    CHECK(pad.number()->value() == doctest::Approx(7.1));
    CHECK(keyed(pad, {point}) == "7.10");
    CHECK(keyed(pad, {erase, erase}) == "7.");
    CHECK_FALSE(pad.number());
    CHECK(pad.missing() == "'7.' is not finished");
    CHECK(keyed(pad, {clear, point, d5}) == "0.5");
    CHECK(keyed(pad, {clear, d0, d0, d7}) == "7");
}

TEST_CASE("keys that make no sense do nothing") {
    KeypadModel pad(KeypadSpec{});
    for (const KeypadKey key : {erase, clear, sign, and_part, eighths, thirty_seconds, next_unit, next_point})
        CHECK_FALSE(pad.can(key));
    CHECK(keyed(pad, {sign, and_part, eighths, next_unit, next_point}).empty());
    CHECK(keyed(pad, {d1, d2, d3, d4, d5, d6, d7, d8, d9, d1, d2, d3, d4}) == "123456789123");
}

TEST_CASE("fractions of an inch come from one key") {
    KeypadModel pad = inches();
    CHECK_FALSE(pad.can(thirty_seconds));
    CHECK(keyed(pad, {d3, thirty_seconds}) == "3/32");
    CHECK(pad.number()->value() == doctest::Approx(0.09375));
    CHECK(keyed(pad, {sixteenths}) == "3/16");
    CHECK_FALSE(pad.can(d4));
    CHECK(keyed(pad, {erase}) == "3");
    CHECK(keyed(pad, {clear, d1, and_part, d3, thirty_seconds}) == "1 3/32");
    CHECK(pad.number()->value() == doctest::Approx(1.09375));
    CHECK(keyed(pad, {erase, erase}) == "1 ");
    CHECK_FALSE(pad.number());
    CHECK(keyed(pad, {erase}) == "1");
    CHECK(keyed(pad, {point, d2, eighths}) == "1.2");
    CHECK(keyed(pad, {clear, d0, eighths}) == "0");
}

TEST_CASE("every key sequence leaves what Number accepts or what can be erased") {
    KeypadSpec spec;
    spec.fractions = spec.sign = true;
    const KeypadKey keys[] = {d0, d3, point, sign, erase, and_part, eighths, thirty_seconds};
    for (int code = 0; code < 8 * 8 * 8 * 8 * 8 * 8; ++code) {
        KeypadModel pad(spec);
        for (int rest = code, i = 0; i < 6; ++i, rest /= 8) pad.press(keys[rest % 8]);
        const std::string text = pad.text();
        const bool open = text.empty() || text == "-" || text.ends_with('.') || text.find(' ') != std::string::npos;
        if (!pad.number() && !open) FAIL_CHECK(text);
        while (pad.can(erase)) pad.press(erase);
        CHECK(pad.text().empty());
    }
}

TEST_CASE("the sign turns") {
    KeypadSpec spec;
    spec.sign = true;
    KeypadModel pad(spec);
    CHECK(keyed(pad, {sign, d4}) == "-4");
    CHECK(pad.number()->value() == -4);
    CHECK(keyed(pad, {sign}) == "4");
}

TEST_CASE("points are keyed in order; least and spread run along") {
    KeypadModel pad = pads();
    CHECK(pad.missing() == "inner is still open");
    CHECK_FALSE(pad.least());
    keyed(pad, {d3, point, d2, next_point});
    CHECK(pad.point() == 1);
    CHECK(*pad.least() == "3.2");
    CHECK_FALSE(pad.spread());
    CHECK(pad.missing() == "outer is still open");
    keyed(pad, {d4, point, d0, d5});
    CHECK(*pad.least() == "3.2");
    CHECK(*pad.spread() == "0.85");
    CHECK(pad.complete());
    keyed(pad, {next_point});
    CHECK(pad.points().size() == 3);
    CHECK(pad.point_name(0) == "inner");
    CHECK(pad.point_name(2) == "3");
    CHECK(pad.complete());  // the added point may stay empty
    keyed(pad, {d2});
    CHECK(*pad.spread() == "2.05");
    pad.choose_point(0);
    keyed(pad, {clear});
    CHECK(pad.missing() == "inner is still open");
}

TEST_CASE("the unit may change only while it belongs to no other point") {
    KeypadModel pad = pads();
    CHECK(pad.unit() == "mm");
    keyed(pad, {d5, next_unit});
    CHECK(pad.unit() == "[in_i]");
    keyed(pad, {next_unit, next_point});
    CHECK(pad.unit() == "mm");
    CHECK(pad.unit_fixed());
    pad.choose_unit("[in_i]");
    CHECK(pad.unit() == "mm");
    pad.choose_point(0);
    CHECK_FALSE(pad.unit_fixed());
    pad.choose_unit("furlong");
    CHECK(pad.unit() == "mm");
}

TEST_CASE("'not measured' and 'not accessible' are answers, taken back by themselves or by a digit") {
    KeypadModel pad = pads();
    pad.answer(Taken::not_accessible);
    CHECK(pad.complete());
    pad.answer(Taken::not_accessible);
    CHECK(pad.taken() == Taken::measured);
    pad.answer(Taken::not_measured);
    CHECK(keyed(pad, {d1}) == "1");
    CHECK(pad.taken() == Taken::measured);
    KeypadModel must(KeypadSpec{});
    must.answer(Taken::not_measured);
    CHECK(must.taken() == Taken::measured);
    CHECK(must.missing() == "no value yet");
}

TEST_CASE("spreads are exact, in the way the values were written") {
    const auto spread = [](const char* a, const char* b) { return written(*difference(*to_exact(a), *to_exact(b))); };
    CHECK(spread("5/32", "3/32") == "2/32");
    CHECK(spread("1 1/8", "3/32") == "1 1/32");
    CHECK(spread("7.1", "7.05") == "0.05");
    CHECK(spread("0.3", "0.1") == "0.2");
    CHECK(spread("-0.5", "-0.75") == "0.25");
    CHECK(spread("3/8", "3/8") == "0");
    CHECK(spread("0.1", "3/32") == "1/160");
    CHECK_FALSE(to_exact("12345678901234567890"));
    CHECK_FALSE(to_exact("7."));
    CHECK(less(*to_exact("3/32"), *to_exact("0.1")));
}

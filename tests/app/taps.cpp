// See taps.h.
#include "tests/app/taps.h"

#include "app/driver/script.h"

namespace cotter {

void Taps::begin() {
    touch("Begin the first job");
    REQUIRE(route().screen == Screen::identify);
}

void Taps::axles(const char* count, const char* wheels, const char* brake, const char* hub) {
    touch(count);
    touch(wheels);
    touch(brake);
    touch(hub);
}

void Taps::to_plan() {
    touch("To the plan");
    REQUIRE(route().screen == Screen::plan);
}

void Taps::amount(const std::string& label, std::string_view digits, const std::string& unit) {
    touch(label);
    if (!unit.empty()) touch(unit);
    key(digits);
}

void Taps::choose(const std::string& label, const std::string& choice) {
    touch(label);
    touch(choice);
}

void Taps::words(const std::string& label, std::string_view text) {
    touch(label);
    hands->type(text);
    REQUIRE(hands->run(parse_script("key enter").value()).has_value());
    look();
}

void Taps::not_known(const std::string& label) {
    touch(label);
    touch("Not known");
    if (tap("Done")) look();
}

void Taps::key_points(const std::vector<std::string>& each, const std::string& unit) {
    if (!unit.empty()) touch(unit);
    for (std::size_t i = 0; i < each.size(); ++i) {
        for (const char c : each[i]) touch(c == '-' ? std::string("+/−") : std::string(1, c));
        if (i + 1 < each.size()) touch("Next point");
    }
    touch("Done");
    if (log().shows("Really?")) touch("Keep it");
}

void Taps::hands_back() {
    REQUIRE(hands->run(parse_script("key back").value()).has_value());
    look();
}

}  // namespace cotter

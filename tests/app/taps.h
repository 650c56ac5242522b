// A thumb on the app: it taps, keys and types, and nothing else. For tests that go the whole way from the first start.
#pragma once

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "tests/app/app_bench.h"

namespace cotter {

struct Taps : AppBench {
    explicit Taps(Point at = {412, 915}) : AppBench(at) {}

    [[nodiscard]] const Route& route() { return session().route(); }
    [[nodiscard]] const Trailer& trailer() {
        const Trailer* there = job().only<Trailer>();
        REQUIRE(there != nullptr);
        return *there;
    }
    [[nodiscard]] const Visit& visit() { return *job().only<Visit>(); }

    // The first start, and a new job on its page of the trailer.
    void begin();
    // On the identify page: axles, and what they have; then to the plan.
    void axles(const char* count, const char* wheels, const char* brake, const char* hub);
    void to_plan();
    // A row whose answer is keyed; `unit` is a chip of the keypad, empty: as it stands there.
    void amount(const std::string& label, std::string_view digits, const std::string& unit = {});
    void choose(const std::string& label, const std::string& choice);
    void words(const std::string& label, std::string_view text);
    void not_known(const std::string& label);
    void back() { hands_back(); }
    // All points of a reading one after the other, then 'Done'; a second look is answered 'Keep it'.
    void key_points(const std::vector<std::string>& each, const std::string& unit = {});

private:
    void hands_back();
};

}  // namespace cotter

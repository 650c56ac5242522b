// Times the answer engine, and puts its properties to 100,000 random trailers: answer_bench [--rounds=N as environment
// COTTER_ROUNDS]. A job of four corners with its readings and five earlier visits is to take 2 ms.
#include <doctest/doctest.h>

#include <chrono>
#include <cstdlib>
#include <fmt/format.h>

#include "tests/core/judge/answer_property.h"
#include "tests/core/judge/answer_yard.h"

using namespace cotter;
using namespace cotter::test;

namespace {

std::size_t rounds() {
    const char* wanted = std::getenv("COTTER_ROUNDS");
    return wanted != nullptr ? static_cast<std::size_t>(std::atoll(wanted)) : 100000;
}

double milliseconds_each(const AnswerYard& now, const std::vector<EarlierVisit>& earlier) {
    constexpr int kTimes = 400;
    const auto start = std::chrono::steady_clock::now();
    std::size_t known = 0;
    for (int i = 0; i < kTimes; ++i) known += ask_with(now, earlier).looked_at;
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    CHECK(known > 0);
    return took.count() / kTimes;
}

}  // namespace

TEST_CASE("bench: an answer from four corners, over 100 answers and five earlier visits") {
    AnswerYard now = disc_yard("2026-11-29", 9);
    now.all_good();
    std::vector<AnswerYard> before;
    const char* days[] = {"2026-01-10", "2026-03-11", "2026-05-12", "2026-07-13", "2026-09-14"};
    for (int i = 0; i < 5; ++i) {
        before.push_back(disc_yard(days[i], i + 1));
        before.back().all_good();
    }
    std::vector<EarlierVisit> earlier;
    for (const AnswerYard& yard : before) earlier.push_back({&yard.job(), true});
    const double ms = milliseconds_each(now, earlier);
    fmt::print("{} readings, {} looks, 5 earlier visits of the same: {:.2f} ms an answer (aim 2 ms)\n",
               now.job().all<Reading>().size(), now.job().all<Look>().size(), ms);
    CHECK(ms <= 2.0);
}

TEST_CASE("bench: properties over random trailers") {
    const PropertyRun run = run_properties(7, rounds());
    fmt::print(
        "{} trailers: {} silences, {} removals, {} worsenings, {} neighbors, {} strangers, {} ends; {} failures\n",
        run.rounds, run.silences, run.removals, run.worsenings, run.neighbors, run.strangers, run.ends,
        run.failures.size());
    for (std::size_t i = 0; i < run.failures.size() && i < 10; ++i) fmt::print("{}\n", run.failures[i]);
    CHECK(run.failures.empty());
}

// Times the cheapest cover of many needs from many offers. Aim: 500 needs and 200 offers under 100 ms.
// use: quote_bench
#include <chrono>
#include <random>

#include <fmt/format.h>

#include "core/quote/cover.h"

namespace {

using namespace cotter;

struct Size {
    const char* name;
    int items;      // different ones, after needs of one item were joined
    int offers;     // in all
    int suppliers;  // each with its freight
    int kits;       // every so many-th offer has two items; 0: none
};

CoverTask make(const Size& size, std::uint64_t seed) {
    std::mt19937_64 random(seed);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<std::uint64_t>(n)); };
    const auto base = [](int item) { return 1'000 + item * 977 % 20'000; };
    CoverTask task;
    for (int i = 0; i < size.items; ++i) task.demands.push_back({1 + below(8), below(3) == 0 ? 2 : 1});
    for (int s = 0; s < size.suppliers; ++s) task.freight.push_back(500 + below(4'000));
    task.wait_cost = 8'500;
    for (int o = 0; o < size.offers; ++o) {
        const int item = o < size.items ? o : below(size.items);
        const int count = 1 + below(4);
        CoverOffer offer{static_cast<std::size_t>(below(size.suppliers)),
                         base(item) * count * (70 + below(60)) / 100,
                         below(3) == 0,
                         {{static_cast<std::size_t>(item), count}}};
        if (size.kits > 0 && o >= size.items && o % size.kits == 0) {
            const int other = (item + 1) % size.items;
            offer.parts.push_back({static_cast<std::size_t>(other), count});
            offer.price += base(other) * count * (70 + below(60)) / 100;
        }
        task.offers.push_back(offer);
    }
    return task;
}

void run(const Size& size) {
    double worst = 0;
    bool proved = true;
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const CoverTask task = make(size, seed);
        const auto start = std::chrono::steady_clock::now();
        const auto answer = cheapest_cover(task);
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
        worst = std::max(worst, took.count());
        proved = proved && answer && answer->proved;
    }
    fmt::print("{:<44} {:>8.1f} ms at worst of 5{}\n", size.name, worst, proved ? "" : "  NOT PROVED");
}

}  // namespace

int main() {
    run({"500 needs of 40 items, 200 offers, 8 suppliers", 40, 200, 8, 0});
    run({"the same with kits", 40, 200, 8, 6});
    run({"500 needs of 200 items, 200 offers", 200, 200, 8, 0});
    run({"500 needs of 500 items, 2,000 offers", 500, 2'000, 8, 0});
    return 0;
}

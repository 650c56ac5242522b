// Needs and offers of the worked examples: pads with hardware from three invented suppliers.
#pragma once

#include <vector>

#include "core/quote/draft.h"

namespace cotter::test {

[[nodiscard]] Need need_of(int id, const char* item, Extent wanted);
[[nodiscard]] Offer offer_of(int id, const char* supplier, std::vector<Cover> covers, std::int64_t price);

// Pads and hardware for `count` corners.
[[nodiscard]] std::vector<Need> pads_and_hardware(int count);

// A: 38.00 a wheel and 9.20 hardware a wheel. B: 69.50 an axle, 9.20 a wheel, 14.00 freight. C: 149.00 for four
// corners, hardware included, 5 days.
[[nodiscard]] std::vector<Offer> source_a();
[[nodiscard]] std::vector<Offer> source_b();
[[nodiscard]] std::vector<Offer> source_c();
[[nodiscard]] std::vector<Offer> all_sources();

[[nodiscard]] QuoteStamp stamp();

}  // namespace cotter::test

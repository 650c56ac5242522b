// Needs and offers as the cover search wants them: whole numbers by index. For choose.cpp; pure.
#pragma once

#include <span>

#include "core/quote/choose.h"
#include "core/quote/cover.h"

namespace cotter {

// What one offer has for the wanted items, in their units.
struct Stall {
    std::size_t offer = 0;         // index into the offers handed in
    std::vector<CoverPart> parts;  // `demand`: index into Market::wanted
};

struct Market {
    std::vector<Wanted> wanted;
    std::vector<Stall> stalls;  // offers that can be weighed and have something wanted
    std::vector<NotCompared> not_compared;
    std::vector<std::string> unknown;  // items of which nobody has said how much
};

[[nodiscard]] Result<Market> open_market(std::span<const Need> needs, std::span<const Offer> offers,
                                         const std::string& currency);

// Deliveries: offers of one supplier with the same freight share it. Gives each offer's delivery and fills `freight`.
[[nodiscard]] std::vector<std::size_t> deliveries(std::span<const Offer> offers, std::vector<std::int64_t>& freight);

}  // namespace cotter

// Which offers to buy for the needs, and how many packs of each. Pure; any thread.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/quote/extent.h"
#include "core/survey/job.h"

namespace cotter {

struct BuyTerms {
    std::string currency = "USD";
    std::int64_t second_call_out = 0;  // what coming back costs when anything has to be waited for
    // Taxes differ by kind, so the cheapest is looked for with them, to a hundredth of a minor unit.
    Number tax_percent = {};
    bool tax_parts = true;  // offers can be untaxed one by one
    bool tax_freight = false;
    bool tax_call_out = false;
};

// So many packs of one offer (index into the offers handed in).
struct Bought {
    std::size_t offer = 0;
    std::int64_t packs = 0;
    std::vector<std::size_t> needs;  // indexes of the needs it serves
};

// One item of the needs, joined: how much is bought for.
struct Wanted {
    std::string item;
    Basis basis = Basis::unsaid;
    std::int64_t units = 0;  // with spill, whole axles
    bool matched = false;
    std::vector<std::size_t> needs;  // indexes
};

// An offer that could not be weighed, and why: shown, never left out in silence.
struct NotCompared {
    std::size_t offer = 0;
    Error why;
};

struct Choice {
    std::vector<Bought> bought;  // in the order of the offers
    std::vector<Wanted> wanted;
    std::vector<std::string> missing;  // "brake pads: no offer covers them", "hardware is not included: clips"
    std::vector<Leftover> leftovers;   // `to` is left to the user
    std::vector<NotCompared> not_compared;
    std::int64_t goods = 0;     // packs alone
    std::int64_t freight = 0;   // once a delivery
    std::int64_t call_out = 0;  // the second one, when anything waits
    std::int64_t cores = 0;     // deposits
    int ready_days = 0;
    int warranty_months = 0;       // the shortest of what is bought; 0 also when nothing is
    bool warranty_labour = false;  // of all that is bought
    bool proved = true;            // it was proved that nothing cheaper exists for this aim
};

// Whether an offer can be weighed against others at all. `refused`: it does not say what it covers, is in another
// currency, or its price is below zero or too large; the line says what to enter.
[[nodiscard]] Result<> comparable(const Offer& offer, const std::string& currency);

// The cheapest way (packs, freight, second call-out, their taxes) to get all that some offer covers. By `aim`:
//   cheapest        among all offers
//   soonest         among those that get everything on the first day on which everything can be had
//   best warranty   among each item's offers with the longest warranty (labour paid breaks a tie)
//   maker-supplied  among the maker's own
// Items that no offer of the aim covers, or whose amount nobody knows yet, are `missing`, the rest is still bought.
// `refused`: a need whose amount cannot be counted (the line names it), no known amount at all, sums that are too
// large, Aim::by_hand.
[[nodiscard]] Result<Choice> choose(std::span<const Need> needs, std::span<const Offer> offers, Aim aim,
                                    const BuyTerms& terms);

// The same sums and words for packs that a user chose; `packs[i]` of offers[i]. An item that is not covered is missing.
[[nodiscard]] Result<Choice> chosen_by_hand(std::span<const Need> needs, std::span<const Offer> offers,
                                            std::span<const std::int64_t> packs, const BuyTerms& terms);

}  // namespace cotter

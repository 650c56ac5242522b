// A quote drafted from needs, offers and the shop's own terms. Pure; any thread.
//
// Nothing here is a default of ours: rates, percentages, caps and allowances are the shop's and come from its settings.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/quote/book_hours.h"
#include "core/quote/choose.h"
#include "core/quote/needs.h"

namespace cotter {

// By what labour is charged; the line says which.
enum class LabourBy { book_time, actual_time, flat };
constexpr auto names(LabourBy) {
    return name_list("book time", "actual time", "flat");
}

// One labour line. Hours = work + set-up per trailer + per axle touched + per corner touched: three corners are not
// three quarters of four.
struct Labour {
    std::string text;
    LabourBy by = LabourBy::book_time;
    Number hours_low;  // the work itself, up to 3 decimals
    Number hours_high;
    Number per_trailer;  // set-up hours, in low and high alike
    Number per_axle;
    Number per_corner;
    std::int64_t rate = 0;      // of an hour
    std::int64_t flat_low = 0;  // flat
    std::int64_t flat_high = 0;
    std::string source;  // of the book time
    bool taxed = false;
};

// For parts that may be seized: a line of its own, nothing at best. Beyond `approval_limit` a new yes is needed.
struct SeizedAllowance {
    std::string text;
    std::int64_t up_to = 0;
    bool taxed = false;
};

enum class SuppliesOf { labour, parts };
constexpr auto names(SuppliesOf) {
    return name_list("labour", "parts");
}

// Shop supplies: a share of labour or parts with floor and cap, and words for what it is.
struct Supplies {
    std::string text;
    Number percent;
    SuppliesOf of = SuppliesOf::labour;
    std::int64_t floor = 0;
    std::optional<std::int64_t> cap;
    bool taxed = true;
};

// Disposal, or any other charge of a fixed amount. `law`: its name when a law asks for it; otherwise it is the shop's.
struct Charge {
    LineKind kind = LineKind::disposal;  // disposal, call_out or other
    std::string text;
    std::int64_t low = 0;
    std::int64_t high = 0;
    std::string law;
    bool taxed = false;
};

// A percentage, or an amount when `percent` is 0. Before tax it lowers each rate's base in proportion.
struct Discount {
    std::string text;
    Number percent;
    std::int64_t amount = 0;
    bool before_tax = true;
};

struct QuoteTerms {
    std::string currency = "USD";
    std::string tax_name;
    Number tax_percent;     // at the place of supply
    bool tax_parts = true;  // offers can be untaxed one by one
    bool tax_freight = false;
    bool tax_call_out = false;
    std::int64_t second_call_out = 0;
    std::vector<Labour> labour;  // none: by operation, see `hours`; one without hours: the quote says so
    ShopHours hours;             // the shop's own for each operation; where none are entered the quote says so
    std::int64_t hour_rate = 0;  // for `hours`
    std::optional<SeizedAllowance> seized;
    std::optional<Supplies> supplies;
    std::vector<Charge> charges;
    std::optional<Discount> discount;
    std::string high_because;  // "a guide pin seizes"
    std::optional<std::int64_t> approval_limit;
    std::optional<std::int64_t> not_to_exceed;  // needs `expires`
    std::optional<Date> expires;
    LeftoverTo leftovers_to = LeftoverTo::customer;
};

struct QuoteFace {
    Id<Quote> id;
    std::string name;
    Aim aim = Aim::by_hand;
    QuoteStamp stamp;
};

// Parts, freight, call-out, labour, allowance, supplies, charges, discount, deposits, in that order, numbered from 1;
// then taxes and totals. Each line's `basis` spells the arithmetic out. `refused`: sums that are too large, an amount
// below zero, low above high, a cap below the floor, a 'not to exceed' below the high total or without a last day, a
// discount above what it is taken from.
[[nodiscard]] Result<Quote> draft_quote(std::span<const Need> needs, std::span<const Offer> offers,
                                        const Choice& choice, const QuoteTerms& terms, const QuoteFace& face);

// choose() and draft_quote() in one, with the aim's name.
[[nodiscard]] Result<Quote> draft_for(std::span<const Need> needs, std::span<const Offer> offers, Aim aim,
                                      const QuoteTerms& terms, const Id<Quote>& id, const QuoteStamp& stamp);

}  // namespace cotter

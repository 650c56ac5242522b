// The price shelf: offers that this device remembers across jobs, with their age. The interface the engine and screens
// see; the book implements it. CSV in and out is here too, as pure functions.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/ports.h"
#include "core/survey/quote_records.h"

namespace cotter {

class PriceShelf {
public:
    virtual ~PriceShelf() = default;
    // Keeps the offers, each in place of the one with its id; all of them or none. On disk when it succeeds. `refused`
    // for an offer without supplier or title, with a price out of range, or that has not been seen on a day. Links to
    // a job's shots are left out: a shelf has no photos.
    virtual Result<> keep(const std::vector<Offer>& offers) = 0;
    virtual Result<> forget(const Id<Offer>& offer) = 0;         // not_found
    [[nodiscard]] virtual Result<std::vector<Offer>> all() = 0;  // newest seen first, then by id
};

// "seen today", "seen yesterday", "seen 5 days ago", "seen 3 weeks ago", "seen 8 months ago", "seen 2 years ago",
// "seen on a day to come" (a wrong clock), "not known when seen".
[[nodiscard]] std::string age_text(const std::optional<Date>& seen, const Date& today);

// True from 90 days on, or when not known: worth asking again before it is quoted.
[[nodiscard]] bool is_old(const std::optional<Date>& seen, const Date& today);

// An offer of the shelf as one of a job: a fresh id, so that later changes to the shelf leave the job alone.
[[nodiscard]] Offer taken_into_job(const Offer& shelved, const Instant& at, const std::string& by, Random& random);

// ---- CSV (RFC 4180) ----------------------------------------------------------------------------------------------
// Header, in any order, of these columns; the first five must be there, others may be left out:
//   supplier,title,covers,price,currency,part_number,includes,excludes,core,freight,lead_days,warranty_months,
//   warranty_miles,warranty_labour,maker_supplied,untaxed,source,seen,note,id
// covers: "2 corners of brake pads; 1 corners of pad hardware kit", "946 mL of brake fluid", or empty (kept, but it
// cannot be compared). includes, excludes: parted by ';'. Amounts "69.50". yes or empty. seen: 2026-05-14.
// Texts that a spreadsheet would run as a formula have one apostrophe in front, taken off again on reading.

struct CsvProblem {
    std::size_t line = 0;  // of the file, from 1
    std::string what;      // "price: 'abc' is not an amount of money"
};

struct CsvOffers {
    std::vector<Offer> offers;         // of the lines without problems, in the file's order
    std::vector<CsvProblem> problems;  // one a line at most
};

// All lines are looked at. Offers without an id column or with an empty id get a new one. `refused`: not UTF-8, no
// header, an unknown or doubled column, a quote left open, more than 100,000 lines.
[[nodiscard]] Result<CsvOffers> offers_from_csv(std::string_view csv, const Instant& at, const std::string& by,
                                                Random& random);

[[nodiscard]] std::string offers_to_csv(const std::vector<Offer>& offers);

}  // namespace cotter

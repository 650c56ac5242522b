// What a trailer costs: accepted lines by year, and by the mile.
#include <cmath>
#include <fmt/format.h>
#include <map>

#include "core/trade/reading_names.h"
#include "core/ledger/visits.h"
#include "core/quote/answer.h"

namespace cotter::ledger {

namespace {

constexpr double kMile = 1609.344;

std::optional<double> way_read(const Job& job, std::string_view name) {
    for (const Reading& r : job.all<Reading>())
        if (r.what == name && r.taken == Taken::measured && !r.points.empty())
            return Amount{r.points.front().value, r.unit}.si() / kMile;
    return std::nullopt;
}

// By the counter where two visits read it, else by what later visits noted as run since the one before.
void tell_miles(const std::vector<VisitOnFile>& visits, Costs& out) {
    std::optional<double> first, last;
    double noted = 0;
    bool gap = visits.size() < 2;
    for (std::size_t i = 0; i < visits.size(); ++i) {
        if (const auto counter = way_read(visits[i].job(), what::run_total)) {
            if (!first) first = counter;
            last = counter;
        }
        if (i == 0) continue;
        const auto since = way_read(visits[i].job(), what::run_since);
        gap = gap || !since;
        noted += since.value_or(0);
    }
    if (first && *last > *first) {
        out.miles = *last - *first;
        out.miles_from = fmt::format("hub counter, {:.0f} to {:.0f} mi", *first, *last);
    } else if (!gap && noted > 0) {
        out.miles = noted;
        out.miles_from = "as noted from visit to visit";
    } else {
        out.miles_from = "not known: no two readings of a hub counter, and not every visit notes the distance run";
    }
}

}  // namespace

Costs costs_of(const std::vector<VisitOnFile>& visits) {
    Costs out;
    std::map<std::pair<int, std::string>, YearCost> years;
    std::map<std::string, std::int64_t> totals;
    for (const VisitOnFile& visit : visits) {
        const int year = visit.line.opened.local_date().year;
        std::map<std::string, std::int64_t> of_visit;
        for (const Quote& quote : visit.job().all<Quote>()) {
            if (quote.state != QuoteState::offered && quote.state != QuoteState::done) continue;
            if (const auto accepted = accepted_total(visit.job(), quote); accepted && accepted->high != 0)
                of_visit[quote.currency] += accepted->high;
        }
        for (const auto& [currency, minor] : of_visit) {
            YearCost& cost = years[{year, currency}];
            cost.year = year;
            cost.cost.currency = currency;
            cost.cost.minor += minor;
            ++cost.visits;
            totals[currency] += minor;
        }
    }
    for (auto& [key, cost] : years) out.years.push_back(cost);
    tell_miles(visits, out);
    for (const auto& [currency, minor] : totals) {
        out.total.push_back({minor, currency});
        if (out.miles)
            out.per_1000_miles.push_back({std::llround(static_cast<double>(minor) * 1000 / *out.miles), currency});
    }
    return out;
}

}  // namespace cotter::ledger

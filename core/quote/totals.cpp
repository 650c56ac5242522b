// Sums and taxes.
#include "core/quote/totals.h"

#include <algorithm>

#include "core/quote/exact.h"

namespace cotter {

namespace {

QuoteTax& rate(std::vector<QuoteTax>& taxes, const Number& percent, const std::string& name) {
    const auto it = std::find_if(taxes.begin(), taxes.end(),
                                 [&](const QuoteTax& tax) { return tax.percent.value() == percent.value(); });
    if (it != taxes.end()) return *it;
    return taxes.emplace_back(QuoteTax{name, percent, 0, 0, 0, 0});
}

Result<> add_to(std::int64_t& sum, std::int64_t amount) {
    COTTER_ASSIGN(sum, plus(sum, amount));
    return {};
}

std::int64_t half_up(std::int64_t amount, std::int64_t divisor) {
    return (2 * amount + divisor) / (2 * divisor);
}

}  // namespace

Result<Totals> totals_of(std::span<const QuoteLine> lines, const std::string& tax_name) {
    Totals out;
    for (const QuoteLine& line : lines) {
        if (line.kind == LineKind::core) {
            COTTER_TRY(add_to(out.cores, line.low));
            continue;
        }
        COTTER_TRY(add_to(out.lines_low, line.low));
        COTTER_TRY(add_to(out.lines_high, line.high));
        if (line.tax_percent.value() <= 0) continue;
        QuoteTax& tax = rate(out.taxes, line.tax_percent, tax_name);
        COTTER_TRY(add_to(tax.on_low, line.low));
        COTTER_TRY(add_to(tax.on_high, line.high));
    }
    out.total_low = out.lines_low;
    out.total_high = out.lines_high;
    for (QuoteTax& tax : out.taxes) {
        COTTER_ASSIGN(tax.low, percent_of(std::max<std::int64_t>(0, tax.on_low), tax.percent));
        COTTER_ASSIGN(tax.high, percent_of(std::max<std::int64_t>(0, tax.on_high), tax.percent));
        COTTER_TRY(add_to(out.total_low, tax.low));
        COTTER_TRY(add_to(out.total_high, tax.high));
    }
    return out;
}

Result<> add_up(Quote& quote, const std::string& tax_name) {
    COTTER_ASSIGN(Totals totals, totals_of(quote.lines, tax_name));
    quote.taxes = std::move(totals.taxes);
    quote.total_low = totals.total_low;
    quote.total_high = totals.total_high;
    quote.cores = totals.cores;
    return {};
}

std::optional<PerCorner> per_corner(const Quote& quote) {
    if (quote.corners <= 0) return std::nullopt;
    return PerCorner{half_up(quote.total_low, quote.corners), half_up(quote.total_high, quote.corners)};
}

}  // namespace cotter

// Rows of quotes.
#include "core/report/quote_csv.h"

#include "core/quote/answer.h"
#include "core/quote/csv_text.h"
#include "core/quote/exact.h"

namespace cotter {

namespace {

using Row = std::vector<std::string>;

const Row& header() {
    static const Row row{"quote",       "version", "state",       "line",        "kind",    "text",
                         "basis",       "packs",   "supplier",    "low",         "high",    "currency",
                         "tax_percent", "answer",  "answered_by", "answered_at", "channel", "quote_id"};
    return row;
}

std::string supplier_of(const Job& job, const QuoteLine& line) {
    const Offer* offer = line.offer ? job.find(*line.offer) : nullptr;
    return offer == nullptr ? "" : guarded_text(offer->supplier);
}

Row start(const Quote& quote) {
    return {guarded_text(quote.name), std::to_string(quote.version), std::string(name_of(quote.state))};
}

void add(Row& row, std::initializer_list<std::string> fields) {
    row.insert(row.end(), fields);
}

void add_line(std::string& out, const Job& job, const Quote& quote, const LineAnswer& answer) {
    const QuoteLine& line = *answer.line;
    Row row = start(quote);
    add(row, {std::to_string(line.number), std::string(name_of(line.kind)), guarded_text(line.text),
              guarded_text(line.basis), line.packs > 0 ? std::to_string(line.packs) : "", supplier_of(job, line),
              money_text(line.low), money_text(line.high), quote.currency, line.tax_percent.text()});
    if (const Decision* decision = answer.decision)
        add(row, {std::string(name_of(decision->said)), guarded_text(decision->name), decision->at.text(),
                  std::string(name_of(decision->channel))});
    else
        add(row, {"", "", "", ""});
    row.push_back(quote.id.text());
    add_csv_line(out, row);
}

void add_sum(std::string& out, const Quote& quote, const char* kind, const std::string& text, std::int64_t low,
             std::int64_t high, const std::string& percent) {
    Row row = start(quote);
    add(row, {"", kind, guarded_text(text), "", "", "", money_text(low), money_text(high), quote.currency, percent, "",
              "", "", "", quote.id.text()});
    add_csv_line(out, row);
}

}  // namespace

std::string quote_csv(const Job& job) {
    std::string out;
    add_csv_line(out, header());
    for (const Quote& quote : job.all<Quote>()) {
        for (const LineAnswer& answer : answers_to(job, quote)) add_line(out, job, quote, answer);
        for (const QuoteTax& tax : quote.taxes)
            add_sum(out, quote, "tax", tax.name, tax.low, tax.high, tax.percent.text());
        add_sum(out, quote, "total", "deposits apart", quote.total_low, quote.total_high, "");
    }
    return out;
}

}  // namespace cotter

// `cotter quote`: what a job needs, its quotes beside each other, and why they differ.
#include <fmt/format.h>

#include "app/cli/cli.h"
#include "core/base/text.h"
#include "core/book/book.h"
#include "core/quote/answer.h"
#include "core/quote/exact.h"
#include "core/quote/explain.h"
#include "core/survey/json_visitors.h"

namespace cotter::cli {

namespace {

struct QuoteOptions {
    std::string book;
    std::string job;
    bool json = false;
};

std::string range(std::int64_t low, std::int64_t high) {
    return low == high ? money_text(low) : fmt::format("{}–{}", money_text(low), money_text(high));
}

// Replaced versions are kept in the job but not laid beside the others.
std::vector<Quote> current_quotes(const Job& job) {
    std::vector<Quote> out;
    for (const Quote& quote : job.all<Quote>())
        if (quote.state != QuoteState::changed) out.push_back(quote);
    return out;
}

void print_needs(const Job& job) {
    fmt::print("Needs\n");
    for (const Need& need : job.all<Need>()) {
        std::string places;
        for (const Place& place : need.places) places += (places.empty() ? "" : ", ") + place.text();
        fmt::print("  {:<24} {:<12} {}\n", one_line(need.item, 40), extent_text(need.wanted), one_line(places, 120));
    }
    if (job.all<Need>().empty()) fmt::print("  none yet\n");
}

void print_quote(const Job& job, const SideBySide& row, const Date& today) {
    const Quote& q = *row.quote;
    fmt::print("\n{}, version {}: {} {}  ({})\n", one_line(q.name, 60), q.version, range(q.total_low, q.total_high),
               q.currency, name_of(standing(job, q, today)));
    for (const LineAnswer& answer : answers_to(job, q)) {
        const QuoteLine& line = *answer.line;
        fmt::print("  {:>3}  {:<44} {:>18}  {}\n", line.number, one_line(line.text, 60), range(line.low, line.high),
                   answer.decision == nullptr ? "" : name_of(answer.decision->said));
        if (!line.basis.empty()) fmt::print("       {}\n", one_line(line.basis, 160));
    }
    for (const QuoteTax& tax : q.taxes)
        fmt::print("       {:<44} {:>18}\n", fmt::format("{} {} %", one_line(tax.name, 30), tax.percent.text()),
                   range(tax.low, tax.high));
    if (q.cores > 0) fmt::print("       deposits until the old parts are back: {}\n", money_text(q.cores));
    if (q.corners > 0) fmt::print("       per corner: {}\n", range(row.per_corner_low, row.per_corner_high));
    if (q.not_to_exceed && q.expires)
        fmt::print("       not to exceed {} until {}\n", money_text(*q.not_to_exceed), q.expires->text());
    for (const Leftover& left : q.leftovers)
        fmt::print("       left over: {} of {}, for {}\n", extent_text(left.extent), one_line(left.item, 40),
                   name_of(left.to));
    for (const std::string& missing : q.missing) fmt::print("       missing: {}\n", one_line(missing, 160));
}

void print_why(const Explanation& why) {
    fmt::print("\n{}\n", one_line(why.headline, 160));
    for (const Difference& d : why.reasons)
        fmt::print("  {:>10}  {}{}: {}\n", money_text(d.high), one_line(d.what, 60),
                   d.beside ? " (beside the total)" : "", one_line(d.words, 240));
    for (const std::string& remark : why.remarks) fmt::print("              {}\n", one_line(remark, 200));
}

Json as_json(const Explanation& why) {
    Json reasons = Json::array();
    for (const Difference& d : why.reasons)
        reasons.push_back({{"kind", std::string(name_of(d.kind))},
                           {"what", d.what},
                           {"words", d.words},
                           {"low", d.low},
                           {"high", d.high},
                           {"beside", d.beside}});
    return {{"headline", why.headline},
            {"low", why.low},
            {"high", why.high},
            {"reasons", reasons},
            {"remarks", why.remarks}};
}

Json as_json(const Job& job, const SideBySide& row, const Date& today) {
    Json out = to_json_value(*row.quote);
    out["standing"] = std::string(name_of(standing(job, *row.quote, today)));
    out["per_corner_low"] = row.per_corner_low;
    out["per_corner_high"] = row.per_corner_high;
    return out;
}

// Each quote after the first against the first.
Result<std::vector<Explanation>> explanations(const Job& job, const std::vector<SideBySide>& rows) {
    std::vector<Explanation> out;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        COTTER_ASSIGN(Explanation why, why_dearer(*rows[i].quote, *rows[0].quote, job.all<Need>()));
        out.push_back(std::move(why));
    }
    return out;
}

Result<> show(Ports& ports, const QuoteOptions& options) {
    COTTER_ASSIGN(const auto book, Book::open(ports.files, options.book, OpenMode::existing));
    COTTER_ASSIGN(const JobId id, book->find_job(options.job));
    COTTER_ASSIGN(const Job job, book->load(id));
    const auto quotes = current_quotes(job);
    const auto rows = side_by_side(quotes, job.all<Offer>(), SortBy::total);
    COTTER_ASSIGN(const auto why, explanations(job, rows));
    const Date today = ports.clock.now().local_date();
    if (options.json) {
        Json out{{"needs", to_json_value(job.all<Need>())}, {"quotes", Json::array()}, {"why", Json::array()}};
        for (const SideBySide& row : rows) out["quotes"].push_back(as_json(job, row, today));
        for (const Explanation& e : why) out["why"].push_back(as_json(e));
        fmt::print("{}\n", indented_json(out, 2));
        return {};
    }
    print_needs(job);
    for (const SideBySide& row : rows) print_quote(job, row, today);
    if (rows.empty()) fmt::print("\nNo quotes yet.\n");
    for (const Explanation& e : why) print_why(e);
    for (const DeclinedLine& declined : declined_lines(job))
        fmt::print("\n{}\n", one_line(declined_text(declined), 300));
    return {};
}

}  // namespace

Command quote_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<QuoteOptions>();
    Parser parser = all.add_command("quote", "Show what a job needs, its quotes side by side, and why they differ");
    parser.add_option("--book", options->book, "The book's folder").required();
    parser.add_option("job", options->job, "The job: its id, the first digits of it, or the trailer's unit").required();
    parser.add_flag("--json", options->json, "Answer in JSON");
    return {parser, [&ports, options] {
                const auto done = show(ports, *options);
                return done ? static_cast<int>(kDone) : report(done.error(), options->json);
            }};
}

}  // namespace cotter::cli

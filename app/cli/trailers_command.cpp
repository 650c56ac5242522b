// `cotter trailers`: which trailers may not be towed now, and why.
#include <algorithm>
#include <map>

#include "app/cli/office.h"
#include "app/cli/office_json.h"

namespace cotter::cli {

namespace {

struct TrailersOptions {
    LedgerPlace place;
    std::vector<TowOutcome> outcomes;
    std::vector<std::string> words;
    bool trip_check = false;
    std::size_t limit = 0;
};

// As one word, for the command line: "do-not-tow".
std::string word_of(TowOutcome outcome) {
    std::string out(name_of(outcome));
    std::replace(out.begin(), out.end(), ' ', '-');
    return out;
}

std::map<std::string, TowOutcome> outcome_words() {
    std::map<std::string, TowOutcome> out;
    for (const auto name : names(TowOutcome{})) {
        const TowOutcome outcome = *from_name<TowOutcome>(name);
        out.emplace(word_of(outcome), outcome);
    }
    return out;
}

std::string called(const ledger::TrailerLine& t) {
    for (const std::string* text : {&t.unit, &t.plate, &t.vin})
        if (!text->empty()) return one_line(*text, 40);
    return t.key;
}

void print(const ledger::TrailerLine& t) {
    const std::string seen = t.last.local_date().text();
    if (!t.tow) return fmt::print("{:<26} {:<12} seen {}  {}\n", "-", called(t), seen, kNoAnswerYet);
    fmt::print("{:<26} {:<12} seen {}  {:>3} of {:>3} points{}{}\n", name_of(t.tow->outcome), called(t), seen,
               t.tow->looked_at, t.tow->of, t.tow->reason.empty() ? "" : "  ", one_line(t.tow->reason, 200));
}

// All of them, a page of the ledger after the other.
Result<std::vector<ledger::TrailerLine>> all_of(ledger::Ledger& ledger, ledger::FleetAsk ask, std::size_t limit) {
    constexpr std::size_t kPage = 1000;
    std::vector<ledger::TrailerLine> out;
    for (;; ask.offset += ask.limit) {
        ask.limit = limit == 0 ? kPage : std::min(kPage, limit - out.size());
        COTTER_ASSIGN(auto page, ledger.fleet(ask));
        const bool last = page.size() < ask.limit;
        std::move(page.begin(), page.end(), std::back_inserter(out));
        if (last || out.size() == limit) return out;
    }
}

Result<> trailers(Ports& ports, const TrailersOptions& options) {
    COTTER_ASSIGN(const auto office, open_office(ports, options.place, ledger::Open::existing));
    COTTER_TRY(renew_answers(ports, *office->ledger));
    ledger::FleetAsk ask;
    for (const std::string& word : options.words) ask.words += (ask.words.empty() ? "" : " ") + word;
    ask.outcomes = options.outcomes;
    ask.trip_check_due = options.trip_check;
    COTTER_ASSIGN(const auto rows, all_of(*office->ledger, ask, options.limit));
    if (options.place.json) {
        print_json(list_json(rows));
        return {};
    }
    for (const ledger::TrailerLine& row : rows) print(row);
    if (rows.empty()) fmt::print("No trailer on file has this answer.\n");
    return {};
}

}  // namespace

Command trailers_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<TrailersOptions>();
    Parser parser = all.add_command("trailers", "Which trailers may not be towed now, and why: the gravest first");
    add_ledger_options(parser, options->place);
    parser.add_option("words", options->words, "Part of the unit, plate, VIN or customer");
    parser.add_choices("--outcome", options->outcomes, outcome_words(),
                       "Only these: do-not-tow, not-before-repair, cannot-tell, nothing-found-against-it, "
                       "nothing-found-from-outside");
    parser.add_flag("--trip-check", options->trip_check, "Only those for which nothing but the trip check is due");
    parser.add_option("--limit", options->limit, "At most so many").between(1, 100'000);
    return {parser, [&ports, options] {
                const auto done = trailers(ports, *options);
                return done ? kDone : report(done.error(), options->place.json);
            }};
}

}  // namespace cotter::cli

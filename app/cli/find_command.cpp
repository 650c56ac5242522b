// `cotter find`: search a ledger. `cotter history`: a trailer's life, or two visits side by side.
#include <set>

#include "app/cli/office.h"
#include "app/cli/office_json.h"

namespace cotter::cli {

namespace {

struct FindOptions {
    LedgerPlace place;
    std::vector<std::string> words;
    std::string technician, customer, from, until;
    bool open = false, doubtful = false;
    std::size_t limit = 50;
};

Result<std::optional<Date>> day_of(const std::string& text) {
    if (text.empty()) return std::optional<Date>();
    COTTER_ASSIGN(const Date day, Date::parse(text));
    return std::optional(day);
}

// Answers about towing that no longer count are made anew for what was found, where this seat may write.
Result<std::vector<ledger::Hit>> find_with_answers(ledger::Ledger& ledger, const ledger::SearchAsk& ask) {
    COTTER_ASSIGN(auto hits, ledger.search(ask));
    std::set<std::string> waiting;
    for (const ledger::Hit& hit : hits)
        if (!hit.tow) waiting.insert(hit.job.trailer);
    const auto renewed = ledger.renew_answers_of({waiting.begin(), waiting.end()});
    if (!renewed && renewed.error().code != Errc::refused) return unexpected(renewed.error());
    return waiting.empty() || !renewed ? std::move(hits) : ledger.search(ask);
}

Result<std::vector<ledger::Hit>> find(Ports& ports, const FindOptions& options) {
    ledger::SearchAsk ask;
    for (const std::string& word : options.words) ask.words += word + " ";
    ask.filter.technician = options.technician;
    ask.filter.customer = options.customer;
    COTTER_ASSIGN(ask.filter.from, day_of(options.from));
    COTTER_ASSIGN(ask.filter.until, day_of(options.until));
    ask.filter.open_findings = options.open;
    ask.filter.doubtful = options.doubtful;
    ask.limit = options.limit;
    COTTER_ASSIGN(const auto office, open_office(ports, options.place, ledger::Open::existing));
    return find_with_answers(*office->ledger, ask);
}

std::string marks(const ledger::JobLine& job) {
    return std::string(job.conflict ? "  CONFLICT" : "") + (job.flagged ? "  FLAGGED" : "");
}

void print(const ledger::JobLine& j) {
    fmt::print("{}  {}  {:<12} {:<11} {:>2} findings open  {}, {}{}\n", j.job.substr(0, 8),
               j.opened.local_date().text(), one_line(j.unit, 40), j.worst ? name_of(*j.worst) : "-", j.open_findings,
               one_line(j.customer, 60), one_line(j.technician, 60), marks(j));
}

int run_find(Ports& ports, const FindOptions& options) {
    const auto hits = find(ports, options);
    if (!hits) return report(hits.error(), options.place.json);
    if (options.place.json) {
        print_json(list_json(*hits));
        return kDone;
    }
    for (const ledger::Hit& hit : *hits) {
        print(hit.job);
        fmt::print("          {}\n", hit.tow ? one_line(hit.tow->says, 300) : kNoAnswerYet);
        if (!hit.field.empty()) fmt::print("          {}: {}\n", hit.field, one_line(hit.text, 200));
    }
    if (hits->empty()) fmt::print("Nothing found.\n");
    return kDone;
}

struct HistoryOptions {
    LedgerPlace place;
    std::string trailer;
    std::vector<std::string> compare;
};

void print(const ledger::FindingLine& f) {
    const bool said = f.finding.outcome == Outcome::declined || f.finding.outcome == Outcome::deferred;
    const std::string end = f.open && said         ? fmt::format("{}, still open", name_of(f.finding.outcome))
                            : f.open               ? "open"
                            : f.settled_by.empty() ? "repaired"
                                                   : "settled by " + f.settled_by.substr(0, 8);
    fmt::print("  {}  {:<12} {}, {}: {} ({})\n", f.visit.local_date().text(), f.finding.place.text(),
               one_line(f.finding.component), one_line(f.finding.defect), name_of(f.finding.grade), end);
}

void print(const ledger::RevisionChange& c) {
    fmt::print("  {} r{}  {:<12} {}: {} -> {}{}  ({})\n", c.job.substr(0, 8), c.revision,
               c.place ? c.place->text() : "", one_line(c.what), c.before.empty() ? "-" : one_line(c.before),
               c.now.empty() ? "taken out" : one_line(c.now), c.eased() ? "  LESS SEVERE" : "",
               c.at ? one_line(c.by + ": " + c.reason, 300) : "no reason is recorded");
}

void print_costs(const ledger::Costs& costs) {
    fmt::print("Costs\n");
    for (const ledger::YearCost& y : costs.years) fmt::print("  {}  {}\n", y.year, y.cost.text());
    for (const Money& m : costs.per_1000_miles) fmt::print("  {} in 1,000 miles ({})\n", m.text(), costs.miles_from);
    if (costs.per_1000_miles.empty()) fmt::print("  by the mile: {}\n", costs.miles_from);
}

void print(const ledger::TrailerPage& p) {
    const ledger::TrailerLine& t = p.trailer;
    fmt::print("{} {} {}, {}\n", one_line(t.unit), one_line(t.plate), one_line(t.vin), one_line(t.kind));
    if (t.tow) fmt::print("{}\n", one_line(t.tow->says, 800));
    fmt::print("{} visits from {} to {}, {} findings open\n", t.visits, t.first.local_date().text(),
               t.last.local_date().text(), t.open_findings);
    fmt::print("Visits\n");
    for (const ledger::JobLine& job : p.visits) print(job);
    fmt::print("Findings\n");
    for (const ledger::FindingLine& f : p.findings) print(f);
    if (!p.changes.empty()) fmt::print("Changed by a later revision\n");
    for (const ledger::RevisionChange& c : p.changes) print(c);
    fmt::print("Wear\n");
    for (const Forecast& f : p.wear)
        fmt::print("  {}, {}{}{}: {}\n", f.place.text(), one_line(f.what), f.where.empty() ? "" : ", ",
                   one_line(f.where), one_line(f.says, 300));
    fmt::print("Torques\n");
    for (const ledger::TorqueLine& l : p.torques)
        fmt::print("  {}  {:<12} {}, {}: {}{}\n", l.visit.local_date().text(), l.torque.place.text(),
                   one_line(l.torque.joint), l.torque.target ? l.torque.target->text() : "no target",
                   l.complete ? "complete" : "not proved", l.retorque ? ", tightened before" : "");
    print_costs(p.costs);
    fmt::print("Packets\n");
    for (const ledger::PacketLine& k : p.packets)
        fmt::print("  {}  {}  {}, {}{}\n", one_line(k.name, 100), k.fingerprint.substr(0, 16), name_of(k.role),
                   name_of(k.standing), k.conflict || k.chain_broken ? "  CONFLICT" : "");
}

void print(const ledger::Comparison& c) {
    print(c.before);
    print(c.now);
    for (const ReadingChange& r : c.readings)
        fmt::print("  {:<12} {}{}{}: {} -> {}  {}\n", r.place.text(), one_line(r.what), r.where.empty() ? "" : ", ",
                   one_line(r.where), r.before ? r.before->text() : "-", r.now ? r.now->text() : "-",
                   one_line(r.change));
    const auto list = [](const char* title, const std::vector<ledger::FindingLine>& all) {
        if (!all.empty()) fmt::print("{}\n", title);
        for (const ledger::FindingLine& f : all) print(f);
    };
    list("New", c.appeared);
    list("Gone", c.gone);
    list("Still there", c.stayed);
}

Result<> history(Ports& ports, const HistoryOptions& options) {
    COTTER_ASSIGN(const auto office, open_office(ports, options.place, ledger::Open::existing));
    ledger::Ledger& ledger = *office->ledger;
    if (options.compare.empty()) {
        COTTER_ASSIGN(const std::string key, ledger.find_trailer(options.trailer));
        COTTER_ASSIGN(const auto page, ledger.trailer(key));
        options.place.json ? print_json(as_json(page)) : print(page);
        return {};
    }
    COTTER_ASSIGN(const std::string before, ledger.find_job(options.compare[0]));
    COTTER_ASSIGN(const std::string now, ledger.find_job(options.compare[1]));
    COTTER_ASSIGN(const auto comparison, ledger.compare(before, now));
    options.place.json ? print_json(as_json(comparison)) : print(comparison);
    return {};
}

int run_history(Ports& ports, const HistoryOptions& options) {
    if (options.trailer.empty() == options.compare.empty()) {
        fmt::print(stderr, "cotter: name a trailer, or two jobs to --compare\n");
        return kWrongUse;
    }
    const auto done = history(ports, options);
    return done ? kDone : report(done.error(), options.place.json);
}

}  // namespace

Command find_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<FindOptions>();
    Parser parser = all.add_command("find", "Search a ledger by the beginnings of words");
    add_ledger_options(parser, options->place);
    parser.add_option("words", options->words, "Unit, plate, VIN, place, customer, technician, finding, part, note");
    parser.add_option("--technician", options->technician, "Only this technician's jobs");
    parser.add_option("--customer", options->customer, "Only this customer's jobs");
    parser.add_option("--from", options->from, "Opened on this day or later, YYYY-MM-DD");
    parser.add_option("--until", options->until, "Opened on this day or before");
    parser.add_flag("--open", options->open, "Only jobs with open findings");
    parser.add_flag("--doubtful", options->doubtful, "Only jobs that are flagged or in conflict");
    parser.add_option("--limit", options->limit, "At most so many, newest first").between(1, 1000);
    return {parser, [&ports, options] { return run_find(ports, *options); }};
}

Command history_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<HistoryOptions>();
    Parser parser = all.add_command("history", "A trailer's life: visits, wear, torques, findings, costs");
    add_ledger_options(parser, options->place);
    parser.add_option("trailer", options->trailer, "Unit, plate, VIN, or the first digits of a job's id");
    parser.add_option("--compare", options->compare, "Two jobs to put side by side").expects(2);
    return {parser, [&ports, options] { return run_history(ports, *options); }};
}

}  // namespace cotter::cli

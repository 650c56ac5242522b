// `cotter due`, `cotter orders`, `cotter failures`: the office's lists.
#include <map>

#include "app/cli/office.h"
#include "app/cli/office_json.h"
#include "core/ledger/transfer.h"

namespace cotter::cli {

namespace {

struct DueOptions {
    LedgerPlace place;
    int days = 30;
    std::string from, trailer, csv, ics;
    std::vector<ledger::DueKind> kinds;
    bool each_trip = false;
};

Result<> keep(Ports& ports, const std::string& path, const std::string& text) {
    if (path.empty()) return {};
    return replace_file(ports.files, path, as_bytes(text));
}

void print(const ledger::DueRow& r) {
    fmt::print("{}  {:<10} {:<12} {}{}{}  ({})\n", r.day.text(), name_of(r.kind), one_line(r.unit, 40),
               one_line(r.title), r.where.empty() ? "" : ": ", one_line(r.where), one_line(r.words, 200));
}

Result<> due(Ports& ports, const DueOptions& options) {
    COTTER_ASSIGN(const auto office, open_office(ports, options.place, ledger::Open::existing));
    ledger::DueAsk ask;
    const Instant now = ports.clock.now();
    ask.until = Date::from_days(now.local_date().days() + options.days);
    if (!options.from.empty()) {
        COTTER_ASSIGN(ask.from, Date::parse(options.from));
    }
    ask.kinds = options.kinds;
    ask.each_trip = options.each_trip;
    if (!options.trailer.empty()) {
        COTTER_ASSIGN(ask.trailer, office->ledger->find_trailer(options.trailer));
    }
    COTTER_ASSIGN(const auto rows, office->ledger->due(ask));
    COTTER_TRY(keep(ports, options.csv, ledger::due_csv(rows)));
    COTTER_TRY(keep(ports, options.ics, ledger::due_ics(rows, now, "Cotter " COTTER_VERSION)));
    if (options.place.json)
        print_json(list_json(rows));
    else if (options.csv.empty() && options.ics.empty())
        for (const ledger::DueRow& row : rows) print(row);
    return {};
}

struct ListOptions {
    LedgerPlace place;
    std::string csv;
};

Result<> orders(Ports& ports, const ListOptions& options) {
    COTTER_ASSIGN(const auto office, open_office(ports, options.place, ledger::Open::existing));
    COTTER_ASSIGN(const auto rows, office->ledger->orders());
    COTTER_TRY(keep(ports, options.csv, ledger::orders_csv(rows)));
    if (options.place.json) {
        print_json(list_json(rows));
        return {};
    }
    for (const ledger::OrderRow& r : rows)
        if (options.csv.empty())
            fmt::print("{:<20} {:<14} {:>4} × {}  {}  for {} trailers\n", one_line(r.supplier, 60),
                       one_line(r.part_number, 40), r.packs, one_line(r.title, 60), r.cost.text(), r.units.size());
    return {};
}

Result<> failures(Ports& ports, const ListOptions& options) {
    COTTER_ASSIGN(const auto office, open_office(ports, options.place, ledger::Open::existing));
    COTTER_ASSIGN(const auto rows, office->ledger->failures());
    if (options.place.json) {
        print_json(list_json(rows));
        return {};
    }
    for (const ledger::AxleFailure& r : rows)
        fmt::print("{:<16} {}, {}: {} times on {} of {} trailers\n", one_line(r.axle_model, 60), one_line(r.component),
                   one_line(r.defect), r.findings, r.trailers, r.trailers_with_model);
    return {};
}

template <class O>
Command command(Parser parser, Ports& ports, std::shared_ptr<O> options, Result<> (*work)(Ports&, const O&)) {
    return {parser, [&ports, options, work] {
                const auto done = work(ports, *options);
                return done ? kDone : report(done.error(), options->place.json);
            }};
}

}  // namespace

Command due_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<DueOptions>();
    Parser parser = all.add_command("due", "What is due: re-torque, oil, inspection, wear");
    add_ledger_options(parser, options->place);
    parser.add_option("trailer", options->trailer, "Only this trailer: unit, plate, VIN or job");
    parser.add_option("--days", options->days, "Within so many days from today (30)");
    parser.add_option("--from", options->from, "Due on this day or later, YYYY-MM-DD");
    std::map<std::string, ledger::DueKind> kinds;
    for (const auto name : names(ledger::DueKind{})) kinds.emplace(name, *from_name<ledger::DueKind>(name));
    parser.add_choices("--kind", options->kinds, kinds, "Only these: re-torque, oil, inspection, wear, other");
    parser.add_flag("--each-trip", options->each_trip, "Also what is to be looked at before each trip");
    parser.add_option("--csv", options->csv, "Write the list to this file as CSV");
    parser.add_option("--ics", options->ics, "Write it to this file as a calendar");
    return command(parser, ports, options, due);
}

Command orders_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<ListOptions>();
    Parser parser = all.add_command("orders", "What to order for the quotes that were accepted, by supplier");
    add_ledger_options(parser, options->place);
    parser.add_option("--csv", options->csv, "Write the list to this file as CSV");
    return command(parser, ports, options, orders);
}

Command failures_command(CommandLine& all, Ports& ports) {
    auto options = std::make_shared<ListOptions>();
    Parser parser = all.add_command("failures", "What fails on which axle model");
    add_ledger_options(parser, options->place);
    return command(parser, ports, options, failures);
}

}  // namespace cotter::cli

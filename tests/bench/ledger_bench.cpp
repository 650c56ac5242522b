// What a desk waits for, on a ledger that office_maker has filled: opening, answers about towing made anew, the list of
// trailers, each keystroke of a search, a trailer's page, the due list, orders; and the memory all of it took.
//
// usage: ledger_bench LEDGER [PHOTOS]      (a file, or postgresql://…)
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <functional>
#include <sys/resource.h>

#include <fmt/format.h>

#include "core/ledger/ledger.h"
#include "platform/desktop/ports.h"
#include "tests/bench/office_rules.h"
#include "tests/support/office_packets.h"

namespace {

using namespace cotter;
using cotter::test::sure;

double milliseconds(const std::function<void()>& work) {
    const auto begin = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
}

void tell(const char* what, std::vector<double> all) {
    std::sort(all.begin(), all.end());
    const auto at = [&](double share) {
        return all[std::min(all.size() - 1, static_cast<std::size_t>(share * static_cast<double>(all.size())))];
    };
    fmt::print("{:<28} {:>6} times, median {:7.2f} ms, p99 {:7.2f} ms, worst {:7.2f} ms\n", what, all.size(), at(0.5),
               at(0.99), all.back());
    std::fflush(stdout);
}

// MB
long peak() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return usage.ru_maxrss / 1024;
}

// What people type, letter by letter; the first letters find nearly everything.
std::vector<std::string> keystrokes(int jobs) {
    std::vector<std::string> out;
    std::vector<std::string> typed{"nursery 120",   "Grün brake pads", "ostby hub cap below",
                                   "seal weeping",  "Feldrain Parts",  "rotor heat checks qry",
                                   "quarry road",   "gear oil 90",     "ferry landing fernandez",
                                   "TX-60 cracked", "zebra crossing",  "11-4407"};
    for (int i = 1; i <= 20; ++i) typed.push_back(fmt::format("QRY-{:05}", (i * 977) % std::max(1, jobs / 5)));
    for (int i = 1; i <= 10; ++i) typed.push_back(fmt::format("MA{:06}", (i * 1'307) % std::max(1, jobs / 5)));
    for (const std::string& text : typed)
        for (std::size_t size = 1; size <= text.size(); ++size)
            if ((static_cast<unsigned char>(text[size - 1]) & 0xC0) != 0x80) out.push_back(text.substr(0, size));
    return out;
}

// All answers that do not count, as the desk makes them beside its screen; then what its first page asks for.
void tell_answers(ledger::Ledger& ledger) {
    constexpr std::size_t kAtOnce = 20;
    std::vector<double> times;
    std::size_t made = 0;
    for (std::size_t some = kAtOnce; some == kAtOnce; made += some)
        times.push_back(milliseconds([&] { some = sure(ledger.renew_answers(kAtOnce)); }));
    double all = 0;
    for (const double time : times) all += time;
    tell("20 answers about towing", times);
    fmt::print("  {} made anew in {:.1f} s\n", made, all / 1000);
    times.clear();
    for (std::size_t page = 0; page < 20; ++page) {
        ledger::FleetAsk ask;
        ask.offset = page * ask.limit;
        times.push_back(milliseconds([&] { (void)sure(ledger.fleet(ask)); }));
    }
    tell("a page of trailers", times);
    times.clear();
    for (int i = 0; i < 20; ++i) times.push_back(milliseconds([&] { (void)sure(ledger.fleet_counts()); }));
    tell("how many have which answer", times);
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 2) return 2;
    const auto files = make_system_files();
    const auto clock = make_system_clock();
    const auto workers = make_thread_workers();
    const test::OfficeRules shipped = test::shipped_rules(*files);
    const ledger::Rules rules = shipped.rules();
    std::unique_ptr<ledger::Ledger> ledger;
    const auto open = [&] {
        ledger.reset();
        ledger = sure(ledger::Ledger::open({*files, *workers, *clock}, rules, argv[1], ledger::Open::existing,
                                           argc > 2 ? argv[2] : ""));
    };
    std::vector<double> times;
    for (int i = 0; i < 5; ++i) times.push_back(milliseconds(open));
    tell("open", times);
    const auto counts = sure(ledger->counts());
    fmt::print("{} jobs, {} trailers\n", counts.jobs, counts.trailers);
    const int jobs = static_cast<int>(counts.jobs);
    tell_answers(*ledger);

    times.clear();
    std::string slowest;
    for (const std::string& text : keystrokes(jobs)) {
        times.push_back(milliseconds([&] { (void)sure(ledger->search({text, {}, 50, 0})); }));
        if (times.back() >= *std::max_element(times.begin(), times.end())) slowest = text;
    }
    tell("search, a keystroke", times);
    fmt::print("  the slowest: '{}'\n", slowest);

    times.clear();
    for (int i = 0; i < 200; ++i) {
        const std::string key = sure(ledger->find_trailer(fmt::format("QRY-{:05}", 1 + 2 * (i * 37 % (jobs / 10)))));
        times.push_back(milliseconds([&] { (void)sure(ledger->trailer(key)); }));
    }
    tell("a trailer's page", times);

    times.clear();
    std::size_t rows = 0;
    const Date last = sure(ledger->jobs({}, 1, 0))[0].opened.local_date();
    for (int i = 0; i < 20; ++i) {
        ledger::DueAsk ask;
        ask.from = Date::from_days(last.days() - 20 + i);
        ask.until = Date::from_days(last.days() + 10 + i);
        times.push_back(milliseconds([&] { rows = std::max(rows, sure(ledger->due(ask)).size()); }));
    }
    tell("due within 30 days", times);
    fmt::print("  up to {} rows\n", rows);
    times.clear();
    for (int i = 0; i < 20; ++i) {  // as the desk asks, with all that is overdue
        ledger::DueAsk ask;
        ask.until = Date::from_days(last.days() + 10 + i);
        ask.limit = 10'001;
        times.push_back(milliseconds([&] { rows = sure(ledger->due(ask)).size(); }));
    }
    tell("due, with what is overdue", times);
    fmt::print("  the first {} rows\n", rows);
    const long memory = peak();
    times = {milliseconds([&] { rows = sure(ledger->due({})).size(); })};
    const long due_memory = peak();
    tell("everything that is due", times);
    fmt::print("  {} rows\n", rows);
    times = {milliseconds([&] { rows = sure(ledger->orders()).size(); })};
    tell("orders", times);
    times = {milliseconds([&] { rows = sure(ledger->failures()).size(); })};
    tell("what fails on which axle", times);
    fmt::print("peak memory {} MB, with everything that is due at once {} MB\n", memory, due_memory);
    return 0;
}

// Opening.
#include "app/cli/office.h"

#include <algorithm>

#include "platform/desktop/ports.h"

namespace cotter::cli {

namespace {

constexpr std::uint64_t kLargestRules = 8u << 20;
constexpr std::size_t kAnswersAtOnce = 50;  // the bar moves by as many

// Other seats run in other folders: what the ledger may come to remember is told from the root.
std::string photos_of(const LedgerPlace& place) {
    return place.photos.empty() ? std::string() : absolute_path(place.photos);
}

}  // namespace

void add_ledger_options(Parser& parser, LedgerPlace& place) {
    parser.add_option("--ledger", place.ledger, "The ledger: a file, or postgresql://USER@HOST/DATABASE").required();
    parser.add_option("--photos", place.photos,
                      "The folder of its photos, this time; what takes packets in makes the ledger remember it");
    parser.add_flag("--json", place.json, "Answer in JSON");
}

Result<std::unique_ptr<Office>> open_office(Ports& ports, const LedgerPlace& place, ledger::Open mode) {
    auto office = std::make_unique<Office>();
    COTTER_ASSIGN(office->judging, load_register(ports.files, ports.share));
    COTTER_ASSIGN(const Bytes text,
                  read_file(ports.files, join_path(ports.share, "procedures/rechecks.json"), kLargestRules));
    COTTER_ASSIGN(office->rechecks, rechecks_from_json(as_text(text)));
    office->rules = {office->judging.limits, &office->rechecks};
    COTTER_ASSIGN(office->ledger, ledger::Ledger::open({ports.files, ports.workers, ports.clock}, office->rules,
                                                       place.ledger, mode, photos_of(place)));
    return office;
}

Result<std::unique_ptr<ledger::Ledger>> open_another(Ports& ports, const Office& office, const LedgerPlace& place) {
    return ledger::Ledger::open({ports.files, ports.workers, ports.clock}, office.rules, place.ledger,
                                ledger::Open::create, photos_of(place));
}

Result<> renew_answers(const Ports& ports, ledger::Ledger& ledger) {
    COTTER_ASSIGN(const ledger::FleetCounts counts, ledger.fleet_counts());
    const auto all = static_cast<std::size_t>(counts.waiting);
    const auto bar = step_bar(ports, "answers about towing");
    for (std::size_t done = 0; done < all;) {
        const auto made = ledger.renew_answers(kAnswersAtOnce);
        if (!made && made.error().code == Errc::refused) return {};
        if (!made) return unexpected(made.error());
        if (*made == 0) return {};
        done = std::min(all, done + *made);
        if (bar) (void)bar(done, all);
    }
    return {};
}

std::function<bool(std::size_t, std::size_t)> step_bar(const Ports& ports, std::string what) {
    if (!ports.terminal) return {};
    return [what = std::move(what)](std::size_t done, std::size_t total) {
        if (done % 50 == 0) fmt::print(stderr, "\r{} {}/{}", what, done, total);
        if (done == total) fmt::print(stderr, "\r\x1b[K");
        return true;
    };
}

void print_json(const Json& json) {
    fmt::print("{}\n", indented_json(json, 2));
}

}  // namespace cotter::cli

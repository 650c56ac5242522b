// See desk_bench.h.
#include "tests/desk/desk_bench.h"

#include "app/driver/audit.h"

namespace cotter::test {

DeskBench::DeskBench(int jobs, int trailers) {
    ledger.shape = {trailers, jobs > 100 ? 0 : 2};
    for (int i = 0; i < jobs; ++i) (void)ledger.put(office_packet(i, ledger.shape, ledger.photos));
    if (jobs > 0) REQUIRE(ledger.receive().taken == static_cast<std::size_t>(jobs));
    open();
}

void DeskBench::open(desk::Page page) {
    session.reset();
    if (ledger.ledger == nullptr) ledger.open();
    auto another = [this] {
        return ledger::Ledger::open(ledger.ports(), ledger.rules, ledger.where, ledger::Open::existing,
                                    ledger.path("photos"));
    };
    session = good(desk::DeskSession::open({*ledger.files,
                                            ledger.clock,
                                            tasks,
                                            std::move(ledger.ledger),
                                            another,
                                            {},
                                            COTTER_SHARE_DIR,
                                            ledger.path("lists"),
                                            "Cotter test"}));
    session->apply(desk::GoTo{{page, {}, {}}});
}

void DeskBench::show(Point size, ThemeKind theme) {
    hands.reset();
    host = std::make_unique<NullHost>(size, test_fonts(), [&](const HostParts& parts) {
        return std::make_unique<desk::DeskApp>(*session, tasks, parts, theme);
    });
    hands = std::make_unique<ScriptRunner>(*host, RunnerPorts{[](std::string_view) {}, {}, false});
    hands->settle();
}

void DeskBench::run_tasks() {
    for (int i = 0; i < 100'000 && tasks.pending() > 0; ++i) session->collect();
    REQUIRE(tasks.pending() == 0);
}

void DeskBench::look() {
    host->stage().happened();
    hands->settle();
}

void DeskBench::tap(std::string_view label, int nth) {
    const auto tapped = hands->tap(label, nth);
    REQUIRE_MESSAGE(tapped, tapped.error().line());
}

void DeskBench::key(const char* name) {
    const auto script = good(parse_script(std::string("key ") + name));
    (void)good(hands->run(script));
}

std::vector<std::string> DeskBench::offences() {
    return audit(log(), host->stage().width(), host->stage().height(), desk_limits());
}

std::string DeskBench::file(const std::string& name) {
    const Bytes bytes = good(read_file(*ledger.files, ledger.path("lists/" + name), 64u << 20u));
    return std::string(as_text(bytes));
}

}  // namespace cotter::test

// See app_bench.h.
#include "tests/app/app_bench.h"
#include "tests/support/project_files.h"

#include <doctest/doctest.h>

namespace cotter {

SessionBench::SessionBench(std::string at) : book(at.empty() ? join_path(folder.path(), "book") : std::move(at)) {
    reopen();
}

void SessionBench::close() {
    session_.reset();
}

void SessionBench::reopen() {
    close();
    auto opened = Session::open(
        {*files, clock, random, workers, tasks, test::share_folder(), "Cotter test", device, elsewhere}, book);
    REQUIRE_MESSAGE(opened.has_value(), (opened ? std::string() : opened.error().line()));
    session_ = std::move(*opened);
}

void SessionBench::run_tasks() {
    for (int i = 0; i < 100'000 && tasks.pending() > 0; ++i) session_->collect();
    REQUIRE(tasks.pending() == 0);
}

void SessionBench::start_tandem() {
    apply(StartJob{});
    Trailer trailer;
    trailer.unit = "NUR-07";
    Axle axle;
    axle.brake = BrakeKind::hydraulic_disc;
    axle.hub = HubKind::oil_bath;
    axle.studs = 8;
    trailer.axles = {axle, axle};
    apply(PutTrailer{trailer});
    REQUIRE(job().only<Trailer>() != nullptr);
}

AppBench::AppBench(Point s, std::string at) : SessionBench(std::move(at)), size(s) {
    show();
}

void AppBench::show() {
    hands.reset();
    host = std::make_unique<NullHost>(
        size, test_fonts(), [&](const HostParts& parts) { return std::make_unique<App>(session(), tasks, parts); });
    hands = std::make_unique<ScriptRunner>(*host, RunnerPorts{[](std::string_view) {}, {}, false});
    hands->settle();
}

std::string demo_photo(const std::string& name) {
    return test::share_folder() + "/demo/photos/" + name;
}

void AppBench::look() {
    host->stage().happened();
    hands->settle();
}

void AppBench::touch(const std::string& label) {
    CAPTURE(label);
    REQUIRE(tap(label));
}

void AppBench::key(std::string_view digits) {
    for (const char c : digits) touch(std::string(1, c));
    touch("Done");
}

}  // namespace cotter

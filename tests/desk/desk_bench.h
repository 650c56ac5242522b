// The desk on a ledger of the invented office, on a screen without pixels. For the tests of session and pages.
#pragma once

#include <memory>

#include "app/desk/desk_app.h"
#include "app/driver/runner.h"
#include "tests/app/null_host.h"
#include "tests/core/ledger/ledger_bench.h"

namespace cotter::test {

struct DeskBench {
    // `jobs` packets of the office are on file.
    explicit DeskBench(int jobs, int trailers = 10);

    void open(desk::Page page = desk::Page::jobs);  // the session anew, with this page shown
    void show(Point size = {1280, 800}, ThemeKind theme = ThemeKind::sun);
    void apply(const desk::Command& command) { session->apply(command); }
    void run_tasks();
    void look();  // draws what was done past the screen
    void tap(std::string_view label, int nth = 1);
    void key(const char* name);
    [[nodiscard]] const TargetLog& log() { return host->stage().log(); }
    [[nodiscard]] std::vector<std::string> offences();
    [[nodiscard]] std::string file(const std::string& name);  // of the folder for lists; fails the test when not there

    LedgerBench ledger{false};
    FrameTaskRunner tasks;
    std::unique_ptr<desk::DeskSession> session;
    std::unique_ptr<NullHost> host;
    std::unique_ptr<ScriptRunner> hands;
};

}  // namespace cotter::test

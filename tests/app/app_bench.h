// The whole app on a book in a temporary folder, on a screen without pixels: for tests of session and pages.
#pragma once

#include <memory>

#include "app/app.h"
#include "app/driver/runner.h"
#include "platform/desktop/ports.h"
#include "tests/app/null_host.h"
#include "tests/support/temp_folder.h"

namespace cotter {

// Stands still; a test moves it on.
class StillClock final : public Clock {
public:
    Instant now() override { return at; }
    Instant at{1'778'760'000, -300};  // 2026-05-14, morning, at the place
};

// The same bytes in every run.
class CountingBytes final : public Random {
public:
    void fill(std::span<std::uint8_t> out) override {
        for (std::uint8_t& b : out) {
            next_ = next_ * 1'664'525U + 1'013'904'223U;
            b = static_cast<std::uint8_t>(next_ >> 24);  // the low bits repeat after 16 ids
        }
    }

private:
    std::uint32_t next_ = 1;
};

// The session alone, on the machine's own disk.
struct SessionBench {
    explicit SessionBench(std::string at = {});
    void close();   // lets go of the book
    void reopen();  // as after a restart of the program
    void run_tasks();
    [[nodiscard]] Session& session() { return *session_; }
    [[nodiscard]] const Job& job() { return session_->job(); }
    void apply(const Command& command) { session_->apply(command); }
    // A job with a tandem of oil bath hubs and disc brakes, eight studs, called NUR-07.
    void start_tandem();

    test::TempFolder folder;
    std::string book;
    std::unique_ptr<Files> files = make_system_files();
    StillClock clock;
    CountingBytes random;
    SerialWorkers workers;
    FrameTaskRunner tasks;
    Device* device = nullptr;       // for the next reopen()
    LongWork* elsewhere = nullptr;  // the same

private:
    std::unique_ptr<Session> session_;
};

// The app on top of it, with hands.
struct AppBench : SessionBench {
    explicit AppBench(Point size = {412, 915}, std::string at = {});
    void show();  // the app anew on the session, after reopen()
    [[nodiscard]] const TargetLog& log() { return host->stage().log(); }
    [[nodiscard]] bool tap(std::string_view label, int nth = 1) { return hands->tap(label, nth).has_value(); }
    void look();                           // draws what was done past the screen
    void touch(const std::string& label);  // taps it; fails the test when it is not there
    void key(std::string_view digits);     // on the keypad, and its 'Done'

    Point size;
    std::unique_ptr<NullHost> host;
    std::unique_ptr<ScriptRunner> hands;
};

// A JPEG of the demo, as bytes and as a file in `folder`.
[[nodiscard]] std::string demo_photo(const std::string& name);

}  // namespace cotter

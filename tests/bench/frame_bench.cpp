// Times a frame of each page of the app against Dear ImGui's own demo window, drawn by the same software renderer in
// the same process; and counts the frames of ten idle seconds. One line of JSON.
//
// use: frame_bench SHARE_FOLDER BOOK_FOLDER   (a book with one job, as `cotter demo` makes it; it is opened for
// writing)
#include <imgui.h>

#include <algorithm>
#include <chrono>
#include <vector>

#include <fmt/format.h>

#include "app/app.h"
#include "app/driver/runner.h"
#include "platform/desktop/ports.h"
#include "platform/sdl/headless.h"

namespace {

using namespace cotter;

constexpr int kFrames = 60;

class DemoWindow final : public AppUi {
public:
    [[nodiscard]] Look look() const override { return {}; }
    [[nodiscard]] const UiWords& words() const override { return words_; }
    void frame(UiContext& ui) override {
        ImGui::SetNextWindowPos({0, 0});
        ImGui::SetNextWindowSize({ui.width, ui.height});
        ImGui::ShowDemoWindow();
    }

private:
    UiWords words_;
};

// Median milliseconds of CPU a frame.
double frame_ms(DriverHost& host) {
    std::vector<double> times;
    for (int i = 0; i < kFrames; ++i) {
        const auto start = std::chrono::steady_clock::now();
        host.frame(10 + i / 60.0);
        times.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
    }
    std::nth_element(times.begin(), times.begin() + kFrames / 2, times.end());
    return times[kFrames / 2];
}

Result<> run(const std::string& share, const std::string& book) {
    const auto files = make_system_files();
    const auto clock = make_system_clock();
    const auto random = make_system_random();
    SerialWorkers workers;
    const auto fonts = load_font_files(*files, share);
    if (!fonts) return unexpected(fonts.error());
    double demo = 0;
    {
        COTTER_ASSIGN(const auto host,
                      make_headless({}, *fonts, [](const HostParts&) { return std::make_unique<DemoWindow>(); }));
        demo = frame_ms(*host);
    }
    fmt::print("{{\"imgui_demo_ms\":{:.2f}", demo);
    const auto start = std::chrono::steady_clock::now();
    FrameTaskRunner tasks;
    COTTER_ASSIGN(const auto session, Session::open({*files, *clock, *random, workers, tasks, share, "bench"}, book));
    COTTER_ASSIGN(const auto host, make_headless({}, *fonts, [&](const HostParts& parts) {
                      return std::make_unique<App>(*session, tasks, parts);
                  }));
    host->frame(0);
    fmt::print(",\"launch_to_first_frame_ms\":{:.0f}",
               std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
    ScriptRunner hands(*host, {[](std::string_view) {}, {}, false});
    session->apply(OpenJob{session->jobs().front().id});
    for (const Screen screen : {Screen::yard, Screen::plan, Screen::corner, Screen::identify, Screen::hand_over}) {
        session->apply(GoTo{{screen, screen == Screen::corner ? Place::corner(1, Side::right) : Place{}, {}}});
        host->stage().happened();
        hands.settle();
        fmt::print(",\"{}_ratio\":{:.2f}", name_of(screen), frame_ms(*host) / demo);
    }
    hands.settle();
    const int settled = hands.frames();
    hands.pass(10);
    fmt::print(",\"frames_in_10_s_idle\":{}}}\n", hands.frames() - settled);
    return {};
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 3) {
        fmt::print(stderr, "use: frame_bench SHARE_FOLDER BOOK_FOLDER\n");
        return 2;
    }
    const auto done = run(argv[1], argv[2]);
    if (done) return 0;
    fmt::print(stderr, "{}\n", done.error().line());
    return 1;
}

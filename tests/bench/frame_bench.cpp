// Times a frame of the app's pages against Dear ImGui's own demo window in the same process: same screen, same scale,
// same software renderer. One line of JSON with the CPU time of a frame, in microseconds.
//
// use: frame_bench SHARE_FOLDER BOOK_FOLDER   (a book with one job, as `cotter demo` makes it; it is opened for
// writing)
//
// "build" is all from ImGui's NewFrame to the end of its Render: views, judgement, widgets, triangles. "whole" is that
// and drawing the triangles into pixels. "fresh" is a whole frame after a change, so that nothing may be kept from the
// one before. The demo window is drawn as it opens, and with all that stands under 'Widgets', 'Basic' opened, so that
// the screen is full of widgets; ratios are against the latter.
#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <chrono>
#include <ctime>
#include <vector>

#include <fmt/format.h>

#include "app/app.h"
#include "app/driver/runner.h"
#include "platform/desktop/ports.h"
#include "platform/sdl/headless.h"

namespace {

using namespace cotter;

constexpr int kFrames = 41;

// In ImGui's own style, over the whole screen. It places itself, so it is moved once it is there.
class DemoWindow final : public AppUi {
public:
    explicit DemoWindow(bool opened) : opened_(opened) {}
    [[nodiscard]] Appearance look() const override { return {}; }
    [[nodiscard]] const UiWords& words() const override { return words_; }
    void frame(UiContext& ui) override {
        ImGui::GetStyle() = ImGuiStyle();
        ImGui::SetWindowPos(kWindow, {0, 0});
        ImGui::SetWindowSize(kWindow, {ui.width, ui.height});
        if (ImGuiWindow* window = ImGui::FindWindowByName(kWindow); opened_ && window != nullptr)
            for (const char* part : {"Widgets", "Basic"}) window->StateStorage.SetInt(window->GetID(part), 1);
        ImGui::ShowDemoWindow();
    }

private:
    static constexpr const char* kWindow = "Dear ImGui Demo";
    bool opened_;
    UiWords words_;
};

double cpu_us() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e6 + static_cast<double>(now.tv_nsec) / 1e3;
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

struct Cost {
    double build = 0, whole = 0;  // us
    int vertices = 0;
};

// Measures frames of a host; asks ImGui when a frame begins and when its triangles are there.
class Stopwatch {
public:
    explicit Stopwatch(DriverHost& host) : host_(host) {
        ImGui::SetCurrentContext(host.stage().context());
        on(ImGuiContextHookType_NewFramePre,
           [](ImGuiContext*, ImGuiContextHook* hook) { static_cast<Stopwatch*>(hook->UserData)->begun_ = cpu_us(); });
        on(ImGuiContextHookType_RenderPost, [](ImGuiContext*, ImGuiContextHook* hook) {
            auto* watch = static_cast<Stopwatch*>(hook->UserData);
            watch->build_ = cpu_us() - watch->begun_;
        });
    }

    template <class Before>
    Cost frames(Before&& before) {
        std::vector<double> build;
        std::vector<double> whole;
        for (int i = 0; i < kFrames; ++i) {
            before();
            const double start = cpu_us();
            host_.frame(now_ += 1 / 60.0);
            whole.push_back(cpu_us() - start);
            build.push_back(build_);
        }
        return {median(build), median(whole), ImGui::GetDrawData()->TotalVtxCount};
    }

private:
    void on(ImGuiContextHookType type, ImGuiContextHookCallback call) {
        ImGuiContextHook hook;
        hook.Type = type;
        hook.Callback = call;
        hook.UserData = this;
        ImGui::AddContextHook(ImGui::GetCurrentContext(), &hook);
    }

    DriverHost& host_;
    double begun_ = 0, build_ = 0, now_ = 1000;
};

Result<Cost> demo_cost(const FontFiles& fonts, bool opened) {
    COTTER_ASSIGN(const auto host,
                  make_headless({}, fonts, [&](const HostParts&) { return std::make_unique<DemoWindow>(opened); }));
    Stopwatch watch(*host);
    (void)watch.frames([] {});
    return watch.frames([] {});
}

void print(const char* name, const Cost& cost) {
    fmt::print("\"{}\":{{\"build_us\":{:.0f},\"whole_us\":{:.0f},\"vertices\":{}}}", name, cost.build, cost.whole,
               cost.vertices);
}

constexpr Screen kPages[]{Screen::yard,       Screen::plan,   Screen::corner, Screen::identify, Screen::intake,
                          Screen::torque,     Screen::level,  Screen::work,   Screen::summary,  Screen::judgement,
                          Screen::inspection, Screen::quotes, Screen::shelf,  Screen::settings, Screen::hand_over};

Result<> run(const std::string& share, const std::string& book) {
    const auto files = make_system_files();
    const auto clock = make_system_clock();
    const auto random = make_system_random();
    SerialWorkers workers;
    const auto fonts = load_font_files(*files, share);
    if (!fonts) return unexpected(fonts.error());
    COTTER_ASSIGN(const Cost closed, demo_cost(*fonts, false));
    COTTER_ASSIGN(const Cost demo, demo_cost(*fonts, true));
    fmt::print("{{");
    print("demo_as_it_opens", closed);
    fmt::print(",");
    print("demo", demo);

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
    Stopwatch watch(*host);
    session->apply(OpenJob{session->jobs().front().id});
    for (const Screen screen : kPages) {
        const bool cornered = screen == Screen::corner || screen == Screen::torque || screen == Screen::level ||
                              screen == Screen::judgement;
        session->apply(GoTo{{screen, cornered ? Place::corner(1, Side::right) : Place{}, {}}});
        host->stage().happened();
        hands.settle();
        const Cost cost = watch.frames([] {});
        const Cost fresh = watch.frames([&] { session->apply(KeepDrafts{session->drafts()}); });
        fmt::print(",\n");
        print(name_of(screen).data(), cost);
        fmt::print(",\"{0}_build_ratio\":{1:.2f},\"{0}_whole_ratio\":{2:.2f},\"{0}_fresh_build_ratio\":{3:.2f}",
                   name_of(screen), cost.build / demo.build, cost.whole / demo.whole, fresh.build / demo.build);
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

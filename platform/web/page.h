// The app in a page: window, renderer, stage and session, fed by the page's script through the calls in page_calls.cpp.
// The page's thread.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "app/app.h"
#include "app/ui/ui_stage.h"
#include "platform/sdl/canvas.h"
#include "platform/sdl/texture_cache.h"
#include "platform/web/browser_keyboard.h"
#include "platform/web/browser_pictures.h"
#include "platform/web/browser_ports.h"
#include "platform/web/work_away.h"

namespace cotter {

struct PageSize {
    float width = 0, height = 0;  // dp, which are CSS pixels
    float px_per_dp = 1;
    Insets insets;
};

class Page {
public:
    Page() = default;
    ~Page();
    Page(const Page&) = delete;
    Page& operator=(const Page&) = delete;

    // Opens the book in memory, then the canvas. Fails as Session::open does, and `io` without WebGL.
    [[nodiscard]] Result<> open(const PageSize& size, double now_s);
    void resize(const PageSize& size, double now_s);
    // One frame when there is reason for it. Seconds until the next may be wanted: 0 at once; nullopt: not by itself.
    [[nodiscard]] std::optional<double> frame(double now_s);
    [[nodiscard]] UiStage& stage() { return *stage_; }
    [[nodiscard]] BrowserKeyboard& keyboard() { return keyboard_; }
    [[nodiscard]] TextureCache& textures() { return *textures_; }
    [[nodiscard]] WorkAway& work() { return *work_; }
    // Reads what the first job would wait for; for a moment of rest.
    void read_ahead() { session_->read_rules(); }
    // This start's letters for the next one, into kLettersFile; false when there are none that it has not.
    [[nodiscard]] bool keep_letters();
    void chosen(const std::vector<std::string>& paths);
    [[nodiscard]] bool at_bottom() const { return session_->nav().at_bottom(); }
    // What a screen reader is told, as JSON; nullptr when it is what it was at the last call.
    [[nodiscard]] const std::string* mirror();

private:
    Result<> open_canvas(const PageSize& size, double now_s, FontFiles fonts);

    std::unique_ptr<Files> files_ = make_browser_files();
    std::unique_ptr<Clock> clock_ = make_browser_clock();
    std::unique_ptr<Random> random_ = make_browser_random();
    std::unique_ptr<Device> device_ = make_browser_device();
    SerialWorkers workers_;
    FrameTaskRunner tasks_;
    std::unique_ptr<WorkAway> work_;
    std::unique_ptr<Session> session_;
    SDL_Window* window_ = nullptr;
    SDL_Renderer* renderer_ = nullptr;
    BrowserKeyboard keyboard_;
    BrowserWaker waker_;
    std::unique_ptr<TextureCache> textures_;
    std::unique_ptr<BrowserPictures> pictures_;
    std::unique_ptr<UiStage> stage_;
    std::unique_ptr<SdlCanvas> canvas_;
    std::unique_ptr<App> app_;
    std::string mirror_;
};

}  // namespace cotter

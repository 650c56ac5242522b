// See headless.h.
// Works: touch, keys, text, turning, screenshots, photos up to 1,024 px. No: clipboard, system keyboard, dark mode.
#include "platform/sdl/headless.h"

#include <SDL.h>

#include <cmath>

#include <fmt/format.h>

#include "platform/sdl/canvas.h"
#include "platform/sdl/texture_cache.h"

namespace cotter {

namespace {

constexpr std::size_t kHeadlessBudget = 64 << 20;

class NoKeyboard final : public Keyboard {
public:
    void show(const TextEdit&) override {}
    void hide() override {}
};

class NoWaker final : public Waker {  // the driver draws when its script says so
public:
    void wake() override {}
};

class Headless final : public DriverHost {
public:
    ~Headless() override {
        app_.reset();
        canvas_.reset();
        stage_.reset();
        textures_.reset();
        if (renderer_ != nullptr) SDL_DestroyRenderer(renderer_);
        if (window_ != nullptr) SDL_DestroyWindow(window_);
        if (started_) SDL_QuitSubSystem(SDL_INIT_VIDEO);
    }

    Result<> start(const HeadlessSpec& spec, FontFiles fonts, const MakeApp& make) {
        scale_ = spec.scale;
        SDL_SetHintWithPriority(SDL_HINT_VIDEODRIVER, "dummy", SDL_HINT_OVERRIDE);
        SDL_SetHintWithPriority(SDL_HINT_RENDER_DRIVER, "software", SDL_HINT_OVERRIDE);
        SDL_SetHintWithPriority(SDL_HINT_NO_SIGNAL_HANDLERS, "1", SDL_HINT_OVERRIDE);
        SDL_SetMainReady();
        if (SDL_InitSubSystem(SDL_INIT_VIDEO) != 0) return refused("the screen does not start");
        started_ = true;
        window_ = SDL_CreateWindow("Cotter", 0, 0, pixels(spec.width), pixels(spec.height), SDL_WINDOW_HIDDEN);
        if (window_ == nullptr) return refused("no window");
        renderer_ = SDL_CreateRenderer(window_, -1, SDL_RENDERER_SOFTWARE);
        if (renderer_ == nullptr) return refused("no renderer");
        textures_ = std::make_unique<TextureCache>(renderer_, kHeadlessBudget);
        stage_ = std::make_unique<UiStage>(std::move(fonts), *textures_, keyboard_);
        canvas_ = std::make_unique<SdlCanvas>(renderer_, *stage_);
        stage_->resize(spec.width, spec.height, scale_, {}, 0);
        app_ = make({*textures_, waker_});
        return {};
    }

    UiStage& stage() override { return *stage_; }

    void frame(double now_s) override {
        textures_->new_frame();
        canvas_->draw(*app_, now_s);
        SDL_RenderFlush(renderer_);
    }

    Result<Bytes> picture() override { return canvas_->picture(); }

    Result<> resize(float width, float height, double now_s) override {
        SDL_SetWindowSize(window_, pixels(width), pixels(height));
        SDL_PumpEvents();
        SDL_FlushEvents(SDL_FIRSTEVENT, SDL_LASTEVENT);
        stage_->resize(width, height, scale_, {}, now_s);
        return {};
    }

private:
    [[nodiscard]] int pixels(float dp) const { return static_cast<int>(std::lround(dp * scale_)); }
    static unexpected<Error> refused(const char* what) { return fail(Errc::io, what, SDL_GetError()); }

    float scale_ = 1;
    bool started_ = false;
    SDL_Window* window_ = nullptr;
    SDL_Renderer* renderer_ = nullptr;
    NoKeyboard keyboard_;
    NoWaker waker_;
    std::unique_ptr<TextureCache> textures_;
    std::unique_ptr<UiStage> stage_;
    std::unique_ptr<SdlCanvas> canvas_;
    std::unique_ptr<AppUi> app_;
};

}  // namespace

Result<std::unique_ptr<DriverHost>> make_headless(const HeadlessSpec& spec, FontFiles fonts, const MakeApp& make) {
    const auto in = [](float v, float low, float high) { return v >= low && v <= high; };
    if (!in(spec.width, 160, 4096) || !in(spec.height, 160, 4096) || !in(spec.scale, 0.5F, 4))
        return fail(Errc::refused, "no such screen", fmt::format("{}x{} at {}", spec.width, spec.height, spec.scale),
                    "160 to 4096 dp a side, scale 0.5 to 4");
    auto host = std::make_unique<Headless>();
    COTTER_TRY(host->start(spec, std::move(fonts), make));
    return host;
}

}  // namespace cotter

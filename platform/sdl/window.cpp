// See window.h. What works, on X11 and Wayland through SDL 2.26:
//   [x] mouse, wheel, touch (own gestures), keys, text, clipboard   [x] high density, zoom, resizing
//   [x] files dropped onto it
//   [x] rests at 0 frames: waits for events, woken by workers       [x] textures lost and restored
//   [ ] camera: by file picker        [ ] insets: a desktop has none        [ ] screen reader: reads the log, not yet
//   here
#include "platform/sdl/window.h"

#include <SDL.h>
#include <imgui.h>
#include <imgui_impl_sdl2.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "platform/sdl/canvas.h"
#include "platform/sdl/texture_cache.h"

namespace cotter {

namespace {

constexpr std::size_t kWindowBudget = 192 << 20;

double now() {
    return static_cast<double>(SDL_GetTicks64()) / 1000;
}

// Asks the system for text only while a field is being edited, and tells it where.
class SystemKeyboard final : public Keyboard {
public:
    void show(const TextEdit& edit) override {
        const SDL_Rect rect{static_cast<int>(edit.rect.x), static_cast<int>(edit.rect.y), static_cast<int>(edit.rect.w),
                            static_cast<int>(edit.rect.h)};
        SDL_SetTextInputRect(&rect);
        if (SDL_IsTextInputActive() == SDL_FALSE) SDL_StartTextInput();
    }
    void hide() override { SDL_StopTextInput(); }
};

class EventWaker final : public Waker {
public:
    explicit EventWaker(Uint32 type) : type_(type) {}
    void wake() override {
        SDL_Event event{};
        event.type = type_;
        SDL_PushEvent(&event);
    }

private:
    Uint32 type_;
};

class Window {
public:
    explicit Window(const WindowSpec& spec) : spec_(spec) {}
    ~Window();
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;
    Result<> open(FontFiles fonts, const MakeApp& make);
    void loop();

private:
    void handle(const SDL_Event& event);
    void handle_finger(const SDL_TouchFingerEvent& event, FingerPhase phase);
    void handle_window(const SDL_WindowEvent& event);
    void measure();
    void draw();
    [[nodiscard]] Point dp(int x, int y) const {
        return {static_cast<float>(x) / zoom_, static_cast<float>(y) / zoom_};
    }

    WindowSpec spec_;
    bool started_ = false, closing_ = false, hidden_ = false, backend_ = false;
    float zoom_ = 1;  // window units to a dp
    SDL_Window* window_ = nullptr;
    SDL_Renderer* renderer_ = nullptr;
    SystemKeyboard keyboard_;
    std::unique_ptr<EventWaker> waker_;
    std::unique_ptr<TextureCache> textures_;
    std::unique_ptr<UiStage> stage_;
    std::unique_ptr<SdlCanvas> canvas_;
    std::unique_ptr<AppUi> app_;
    std::vector<std::string> dropped_;  // of the drop under way
};

Window::~Window() {
    app_.reset();
    canvas_.reset();
    if (backend_) ImGui_ImplSDL2_Shutdown();
    stage_.reset();
    textures_.reset();
    if (renderer_ != nullptr) SDL_DestroyRenderer(renderer_);
    if (window_ != nullptr) SDL_DestroyWindow(window_);
    if (started_) SDL_QuitSubSystem(SDL_INIT_VIDEO);
}

Result<> Window::open(FontFiles fonts, const MakeApp& make) {
    SDL_SetHint(SDL_HINT_TOUCH_MOUSE_EVENTS, "0");  // fingers come as fingers only
    SDL_SetHint(SDL_HINT_MOUSE_TOUCH_EVENTS, "0");
    SDL_SetHint(SDL_HINT_RENDER_SCALE_QUALITY, "linear");
    SDL_SetHint(SDL_HINT_VIDEO_ALLOW_SCREENSAVER, "1");
    SDL_SetHint(SDL_HINT_WINDOWS_DPI_SCALING, "1");
    SDL_SetMainReady();
    if (SDL_InitSubSystem(SDL_INIT_VIDEO) != 0)
        return fail(Errc::io, "no display", SDL_GetError(), "start it on a desktop, or use --headless");
    started_ = true;
    zoom_ = spec_.zoom;
    float dpi = 96;
    if (zoom_ <= 0 && SDL_GetDisplayDPI(0, nullptr, &dpi, nullptr) != 0) dpi = 96;
    if (zoom_ <= 0) zoom_ = dpi < 168 ? 1 : std::round(dpi / 96 * 4) / 4;  // below, a screen's own size says little
    window_ = SDL_CreateWindow(spec_.title.c_str(), SDL_WINDOWPOS_CENTERED, SDL_WINDOWPOS_CENTERED,
                               static_cast<int>(static_cast<float>(spec_.width) * zoom_),
                               static_cast<int>(static_cast<float>(spec_.height) * zoom_),
                               SDL_WINDOW_RESIZABLE | SDL_WINDOW_ALLOW_HIGHDPI);
    if (window_ == nullptr) return fail(Errc::io, "no window", SDL_GetError());
    SDL_SetWindowMinimumSize(window_, static_cast<int>(320 * zoom_), static_cast<int>(320 * zoom_));
    renderer_ = SDL_CreateRenderer(window_, -1, SDL_RENDERER_PRESENTVSYNC);
    if (renderer_ == nullptr) return fail(Errc::io, "no renderer", SDL_GetError());
    waker_ = std::make_unique<EventWaker>(SDL_RegisterEvents(1));
    textures_ = std::make_unique<TextureCache>(renderer_, kWindowBudget);
    stage_ = std::make_unique<UiStage>(std::move(fonts), *textures_, keyboard_);
    backend_ = ImGui_ImplSDL2_InitForSDLRenderer(window_, renderer_);
    canvas_ = std::make_unique<SdlCanvas>(renderer_, *stage_);
    SDL_StopTextInput();
    measure();
    app_ = make({*textures_, *waker_});
    return {};
}

// The window's size in dp, and how many pixels a dp has.
void Window::measure() {
    int width = 0;
    int height = 0;
    int pixels = 0;
    SDL_GetWindowSize(window_, &width, &height);
    SDL_GetRendererOutputSize(renderer_, &pixels, nullptr);
    if (width <= 0 || height <= 0) return;
    const Point size = dp(width, height);
    stage_->resize(size.x, size.y, static_cast<float>(pixels) / size.x, {}, now());
}

void Window::loop() {
    while (!closing_) {
        const auto sleep = stage_->pacer().may_sleep(now());
        SDL_Event event;
        int got = 0;
        if (hidden_ || !sleep)
            got = SDL_WaitEvent(&event);
        else if (*sleep > 0)
            got = SDL_WaitEventTimeout(&event, static_cast<int>(std::ceil(*sleep * 1000)));
        else
            got = SDL_PollEvent(&event);
        for (; got != 0; got = SDL_PollEvent(&event)) handle(event);
        if (!hidden_ && stage_->pacer().should_draw(now())) draw();
    }
}

void Window::draw() {
    textures_->new_frame();
    canvas_->draw(*app_, now());
    SDL_RenderPresent(renderer_);
}

void Window::handle(const SDL_Event& event) {
    switch (event.type) {
        case SDL_QUIT:
            closing_ = true;
            break;
        case SDL_FINGERDOWN:
            handle_finger(event.tfinger, FingerPhase::down);
            break;
        case SDL_FINGERMOTION:
            handle_finger(event.tfinger, FingerPhase::move);
            break;
        case SDL_FINGERUP:
            handle_finger(event.tfinger, FingerPhase::up);
            break;
        case SDL_MOUSEMOTION:
            stage_->mouse_at(dp(event.motion.x, event.motion.y), now());
            break;
        case SDL_MOUSEBUTTONDOWN:
        case SDL_MOUSEBUTTONUP:
            if (event.button.button <= 3)  // SDL counts left, middle, right; ImGui left, right, middle
                stage_->mouse_button((event.button.button - 1) * 2 % 3, event.type == SDL_MOUSEBUTTONDOWN, now());
            break;
        case SDL_MOUSEWHEEL:
            stage_->wheel(event.wheel.preciseX, event.wheel.preciseY);
            break;
        case SDL_TEXTINPUT:
        case SDL_KEYDOWN:
        case SDL_KEYUP:
            ImGui_ImplSDL2_ProcessEvent(&event);
            stage_->happened();
            break;
        case SDL_DROPFILE:
            dropped_.emplace_back(event.drop.file);
            SDL_free(event.drop.file);
            break;
        case SDL_DROPCOMPLETE:
            if (!dropped_.empty()) app_->dropped(std::exchange(dropped_, {}));
            stage_->happened();
            break;
        case SDL_WINDOWEVENT:
            handle_window(event.window);
            break;
        case SDL_RENDER_TARGETS_RESET:
        case SDL_RENDER_DEVICE_RESET:
            textures_->lost();
            canvas_->lost();
            break;
        default:
            stage_->happened();
            break;  // a worker's call, a change of the system's colours
    }
}

void Window::handle_finger(const SDL_TouchFingerEvent& event, FingerPhase phase) {
    stage_->finger({now(), event.fingerId, {event.x * stage_->width(), event.y * stage_->height()}, phase});
}

void Window::handle_window(const SDL_WindowEvent& event) {
    switch (event.event) {
        case SDL_WINDOWEVENT_SIZE_CHANGED:
            measure();
            break;
        case SDL_WINDOWEVENT_LEAVE:
            stage_->mouse_left();
            break;
        case SDL_WINDOWEVENT_MINIMIZED:
        case SDL_WINDOWEVENT_HIDDEN:
            hidden_ = true;
            break;
        case SDL_WINDOWEVENT_SHOWN:
        case SDL_WINDOWEVENT_RESTORED:
            hidden_ = false;
            stage_->happened();
            break;
        case SDL_WINDOWEVENT_FOCUS_GAINED:
        case SDL_WINDOWEVENT_FOCUS_LOST: {
            SDL_Event whole{};
            whole.window = event;
            ImGui_ImplSDL2_ProcessEvent(&whole);
            stage_->happened();
            break;
        }
        default:
            stage_->happened();
            break;
    }
}

}  // namespace

Result<> run_window(const WindowSpec& spec, FontFiles fonts, const MakeApp& make) {
    Window window(spec);
    COTTER_TRY(window.open(std::move(fonts), make));
    window.loop();
    return {};
}

}  // namespace cotter

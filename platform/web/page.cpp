// See page.h. What works, in browsers with WebAssembly, WebGL and IndexedDB:
//   [x] touch, mouse, wheel, keys, text by a field of the page (own keyboard, dictation, paste)
//   [x] camera and chooser, several photos, files dropped      [x] share sheet, download where there is none
//   [x] safe areas, rotation, the system's keyboard            [x] screen reader: a mirror of the screen as elements
//   [x] rests at 0 frames    [x] keep-awake, a touch that is felt, the back gesture, where the browser offers them
//   [x] long work beside the page, by a worker                 [x] lost WebGL: the page is loaded anew, all is saved
//   [ ] folders: a browser shows none; photos are chosen, packets are sent or saved
//   [ ] watching a folder for new photos                       [ ] several windows on one book: one at a time
#include "platform/web/page.h"

#include <SDL.h>

#include <cmath>

#include <nlohmann/json.hpp>

#include "app/ui/mirror.h"

namespace cotter {

namespace {

constexpr std::size_t kTextureBudget = 64 << 20;

const char* kind_name(const MirrorItem& item) {
    if (item.kind == MirrorItem::Kind::target) return nullptr;
    return item.kind == MirrorItem::Kind::heading ? "heading" : "text";
}

nlohmann::json json_of(const MirrorItem& item) {
    const char* kind = kind_name(item);
    return {{"id", item.id},
            {"kind", kind != nullptr ? std::string(kind) : std::string(role_name(item.role))},
            {"label", item.label},
            {"value", item.value},
            {"rect",
             {std::lround(item.rect.x), std::lround(item.rect.y), std::lround(item.rect.w), std::lround(item.rect.h)}},
            {"on", item.enabled},
            {"chosen", item.chosen},
            {"away", item.away}};
}

}  // namespace

Page::~Page() {
    app_.reset();
    canvas_.reset();
    stage_.reset();
    pictures_.reset();
    textures_.reset();
    session_.reset();
    if (renderer_ != nullptr) SDL_DestroyRenderer(renderer_);
    if (window_ != nullptr) SDL_DestroyWindow(window_);
}

Result<> Page::open(const PageSize& size, double now_s) {
    work_ = std::make_unique<WorkAway>(*files_, *random_);
    const SessionParts parts{
        *files_,       *clock_,     *random_, workers_, tasks_, kShareFolder, "Cotter " COTTER_VERSION,
        device_.get(), work_.get(), true};
    COTTER_ASSIGN(session_, Session::open(parts, kBookFolder));
    COTTER_ASSIGN(FontFiles fonts, load_font_files(*files_, kShareFolder));
    return open_canvas(size, now_s, std::move(fonts));
}

// SDL gives the window and its renderer only; the page's script hands in what happens to them.
Result<> Page::open_canvas(const PageSize& size, double now_s, FontFiles fonts) {
    SDL_SetHint(SDL_HINT_EMSCRIPTEN_KEYBOARD_ELEMENT, "#canvas");
    SDL_SetHint(SDL_HINT_RENDER_SCALE_QUALITY, "linear");
    SDL_SetMainReady();
    if (SDL_InitSubSystem(SDL_INIT_VIDEO) != 0) return fail(Errc::io, "the screen does not start", SDL_GetError());
    // As the renderer wants it: it would make another window, and the canvas anew.
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_PROFILE_MASK, SDL_GL_CONTEXT_PROFILE_ES);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_MAJOR_VERSION, 2);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_MINOR_VERSION, 0);
    window_ = SDL_CreateWindow("Cotter", 0, 0, static_cast<int>(size.width), static_cast<int>(size.height),
                               SDL_WINDOW_ALLOW_HIGHDPI | SDL_WINDOW_OPENGL);
    if (window_ != nullptr) renderer_ = SDL_CreateRenderer(window_, -1, SDL_RENDERER_ACCELERATED);
    if (renderer_ == nullptr)
        return fail(Errc::io, "this browser does not draw (no WebGL)", SDL_GetError(), "try another browser");
    textures_ = std::make_unique<TextureCache>(renderer_, kTextureBudget);
    pictures_ = std::make_unique<BrowserPictures>(*textures_);
    stage_ = std::make_unique<UiStage>(std::move(fonts), *pictures_, keyboard_);
    if (auto kept = read_file(*files_, kLettersFile, kMostLetters)) stage_->offer_letters(std::move(*kept));
    canvas_ = std::make_unique<SdlCanvas>(renderer_, *stage_);
    resize(size, now_s);
    app_ = std::make_unique<App>(*session_, tasks_, HostParts{*pictures_, waker_});
    return {};
}

void Page::resize(const PageSize& size, double now_s) {
    SDL_SetWindowSize(window_, static_cast<int>(size.width), static_cast<int>(size.height));
    SDL_PumpEvents();
    SDL_FlushEvents(SDL_FIRSTEVENT, SDL_LASTEVENT);
    int pixels = 0;
    SDL_GetRendererOutputSize(renderer_, &pixels, nullptr);
    const float px_per_dp = pixels > 0 ? static_cast<float>(pixels) / size.width : size.px_per_dp;
    stage_->resize(size.width, size.height, px_per_dp, size.insets, now_s);
}

std::optional<double> Page::frame(double now_s) {
    if (stage_->pacer().should_draw(now_s)) {
        textures_->new_frame();
        canvas_->draw(*app_, now_s);
        SDL_RenderPresent(renderer_);
        SDL_FlushEvents(SDL_FIRSTEVENT, SDL_LASTEVENT);
        pictures_->serve();
    }
    return stage_->pacer().may_sleep(now_s);
}

bool Page::keep_letters() {
    const Bytes kept = stage_->letters_to_keep();
    return !kept.empty() && replace_file(*files_, kLettersFile, kept).has_value();
}

void Page::chosen(const std::vector<std::string>& paths) {
    app_->dropped(paths);
    stage_->happened();
}

const std::string* Page::mirror() {
    nlohmann::json items = nlohmann::json::array();
    for (const MirrorItem& item : mirror_of(stage_->log())) items.push_back(json_of(item));
    const auto& notice = session_->notice();
    const nlohmann::json all{
        {"layer", stage_->log().layer}, {"items", items}, {"said", notice ? notice->text : std::string()}};
    std::string text = all.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
    if (text == mirror_) return nullptr;
    mirror_ = std::move(text);
    return &mirror_;
}

}  // namespace cotter

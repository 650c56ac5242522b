// See canvas.h.
#include "platform/sdl/canvas.h"

#include <imgui.h>
#include <imgui_impl_sdlrenderer2.h>

#include <algorithm>
#include <memory>

#include "platform/sdl/png_stb.h"

namespace cotter {

namespace {

// With the row below them, which a letter's edge is blended with.
int used_rows(const unsigned char* alpha, int width, int height) {
    const auto blank = [&](int row) {
        const unsigned char* start = alpha + std::ptrdiff_t{row} * width;
        return std::all_of(start, start + width, [](unsigned char a) { return a == 0; });
    };
    int rows = height;
    while (rows > 1 && blank(rows - 1)) --rows;
    return std::min(rows + 1, height);
}

}  // namespace

SdlCanvas::SdlCanvas(SDL_Renderer* renderer, UiStage& stage) : renderer_(renderer), stage_(stage) {
    ImGui::SetCurrentContext(stage.context());
    ImGui_ImplSDLRenderer2_Init(renderer);
}

SdlCanvas::~SdlCanvas() {
    ImGui::SetCurrentContext(stage_.context());
    ImGui_ImplSDLRenderer2_Shutdown();
    if (fonts_ != nullptr) SDL_DestroyTexture(fonts_);
}

void SdlCanvas::lost() {
    if (fonts_ != nullptr) SDL_DestroyTexture(fonts_);
    fonts_ = nullptr;
    stage_.happened();
}

// Our own instead of the backend's: letters are white, so it does not matter where red and blue are, and this order is
// one that every renderer takes as it is. The other one some convert at each start, and the texture has up to 32 MB.
// The rows below the last letter are never drawn and stay as they are.
void SdlCanvas::upload_fonts() {
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    unsigned char* alpha = nullptr;
    int width = 0;
    int height = 0;
    atlas.GetTexDataAsAlpha8(&alpha, &width, &height);
    const int rows = used_rows(alpha, width, height);
    const auto count = static_cast<std::size_t>(width) * static_cast<std::size_t>(rows);
    const auto pixels = std::make_unique_for_overwrite<Uint32[]>(count);
    std::transform(alpha, alpha + count, pixels.get(), [](Uint32 a) { return a << 24 | 0xFFFFFF; });
    if (fonts_ != nullptr) SDL_DestroyTexture(fonts_);
    fonts_ = SDL_CreateTexture(renderer_, SDL_PIXELFORMAT_ARGB8888, SDL_TEXTUREACCESS_STATIC, width, height);
    atlas.SetTexID(fonts_);  // also when there is none: the one before is gone
    if (fonts_ == nullptr) return;
    const SDL_Rect used{0, 0, width, rows};
    SDL_UpdateTexture(fonts_, &used, pixels.get(), 4 * width);
    SDL_SetTextureBlendMode(fonts_, SDL_BLENDMODE_BLEND);
    SDL_SetTextureScaleMode(fonts_, SDL_ScaleModeLinear);
}

void SdlCanvas::draw(AppUi& app, double now_s) {
    const Appearance look = app.look();
    if (stage_.begin(now_s, look) || fonts_ == nullptr) upload_fonts();
    stage_.draw(app);
    const Rgb ground = theme_of(look.theme).of(Tone::page).ground;
    SDL_RenderSetScale(renderer_, stage_.px_per_dp(), stage_.px_per_dp());
    SDL_SetRenderDrawColor(renderer_, ground.r, ground.g, ground.b, 255);
    SDL_RenderClear(renderer_);
    ImGui_ImplSDLRenderer2_RenderDrawData(ImGui::GetDrawData());
}

Result<Bytes> SdlCanvas::picture() const {
    int width = 0;
    int height = 0;
    SDL_GetRendererOutputSize(renderer_, &width, &height);
    Bytes rgb(std::size_t{3} * static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    if (SDL_RenderReadPixels(renderer_, nullptr, SDL_PIXELFORMAT_RGB24, rgb.data(), 3 * width) != 0)
        return fail(Errc::io, "the screen could not be read", SDL_GetError());
    return encode_png(width, height, rgb);
}

}  // namespace cotter

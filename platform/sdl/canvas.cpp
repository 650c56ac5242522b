// See canvas.h.
#include "platform/sdl/canvas.h"

#include <imgui.h>
#include <imgui_impl_sdlrenderer2.h>

#include "platform/sdl/png_stb.h"

namespace cotter {

SdlCanvas::SdlCanvas(SDL_Renderer* renderer, UiStage& stage) : renderer_(renderer), stage_(stage) {
    ImGui::SetCurrentContext(stage.context());
    ImGui_ImplSDLRenderer2_Init(renderer);
}

SdlCanvas::~SdlCanvas() {
    ImGui::SetCurrentContext(stage_.context());
    ImGui_ImplSDLRenderer2_Shutdown();
}

void SdlCanvas::lost() {
    fonts_lost_ = true;
    stage_.happened();
}

void SdlCanvas::draw(AppUi& app, double now_s) {
    const Look look = app.look();
    if (stage_.begin(now_s, look) || fonts_lost_) ImGui_ImplSDLRenderer2_DestroyFontsTexture();
    fonts_lost_ = false;
    ImGui_ImplSDLRenderer2_NewFrame();
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

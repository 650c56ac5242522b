// ImGui's draw data onto an SDL renderer; pixels back from it. The frame's thread only.
#pragma once

#include <SDL.h>

#include "app/ui/ui_stage.h"
#include "core/base/bytes.h"
#include "core/base/error.h"

namespace cotter {

// The SDL_Renderer backend of ImGui for one UiStage. One at a time.
class SdlCanvas {
public:
    SdlCanvas(SDL_Renderer* renderer, UiStage& stage);
    ~SdlCanvas();
    SdlCanvas(const SdlCanvas&) = delete;
    SdlCanvas& operator=(const SdlCanvas&) = delete;

    // One whole frame of `app` at `now_s`, up to but not including the present.
    void draw(AppUi& app, double now_s);
    void lost();  // the renderer lost its textures

    // What was drawn, as PNG.
    [[nodiscard]] Result<Bytes> picture() const;

private:
    void upload_fonts();

    SDL_Renderer* renderer_;
    UiStage& stage_;
    SDL_Texture* fonts_ = nullptr;  // null: to be made
};

}  // namespace cotter

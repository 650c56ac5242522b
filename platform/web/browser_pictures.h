// Pictures that the browser decodes: beside the page, and faster than we could. Wishes go to the page, pixels come back
// into the textures.
#pragma once

#include "app/ui/ui_ports.h"
#include "platform/sdl/texture_cache.h"

namespace cotter {

class BrowserPictures final : public PictureStore {
public:
    explicit BrowserPictures(TextureCache& textures) : textures_(textures) {}
    Picture picture(std::string_view id, int longest_px) override { return textures_.picture(id, longest_px); }
    std::vector<PictureWish> take_wanted() override { return {}; }  // answered by the browser alone
    Result<> put(const PictureWish& wish, int width, int height, ByteView rgb) override {
        return textures_.put(wish, width, height, rgb);
    }
    void missing(const std::string& id) override { textures_.missing(id); }
    void forget(const std::string& id) override { textures_.forget(id); }
    [[nodiscard]] int limit_px() const override { return textures_.limit_px(); }

    void serve();  // after a frame: hands what was wished for to the page

private:
    TextureCache& textures_;
};

}  // namespace cotter

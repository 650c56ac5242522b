// Pictures as SDL textures, within a budget. The frame's thread only.
#pragma once

#include <SDL.h>

#include <map>
#include <set>

#include "app/ui/ui_ports.h"

namespace cotter {

class TextureCache final : public PictureStore {
public:
    // Keeps up to `budget` bytes of textures; what was not drawn for longest goes first, never what was drawn last
    // frame.
    TextureCache(SDL_Renderer* renderer, std::size_t budget);
    ~TextureCache() override;
    TextureCache(const TextureCache&) = delete;
    TextureCache& operator=(const TextureCache&) = delete;

    Picture picture(std::string_view id, int longest_px) override;
    std::vector<PictureWish> take_wanted() override;
    Result<> put(const PictureWish& wish, int width, int height, ByteView rgb) override;
    // The same from 4 bytes a pixel, of which the last counts as opaque.
    Result<> put_rgba(const PictureWish& wish, int width, int height, ByteView rgba);
    void missing(const std::string& id) override;
    void forget(const std::string& id) override;
    [[nodiscard]] int limit_px() const override { return limit_; }

    void new_frame();  // before each frame: evicts what is over the budget
    void lost();       // the renderer lost its textures: all are asked for anew
    [[nodiscard]] std::size_t bytes() const { return bytes_; }
    [[nodiscard]] std::size_t count() const { return held_.size(); }

private:
    struct Held {
        SDL_Texture* texture = nullptr;
        int width = 0, height = 0;
        int asked_px = 0;  // by the wish it answered
        long long drawn = 0;
    };
    void drop(std::map<std::string, Held, std::less<>>::iterator at);

    SDL_Renderer* renderer_;
    std::size_t budget_;
    int limit_ = 1024;
    std::size_t bytes_ = 0;
    long long frame_ = 1;
    std::map<std::string, Held, std::less<>> held_;
    std::map<std::string, int, std::less<>> asked_;  // wishes on their way, and their size
    std::set<std::string, std::less<>> missing_;
    std::vector<PictureWish> wanted_;
};

}  // namespace cotter

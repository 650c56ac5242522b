// See texture_cache.h.
#include "platform/sdl/texture_cache.h"

#include <algorithm>

#include <fmt/format.h>

namespace cotter {

namespace {

// SDL 2.26's software renderer breaks off on scaled textures whose side × drawn width × drawn height passes 5e8.
constexpr int kSoftwareLimit = 1024;
constexpr int kMost = 2048;

// Few sizes, so that a tile and a slightly larger tile share one texture.
int step_up(int px, int limit) {
    int step = 128;
    while (step < px && step < limit) step *= 2;
    return std::min(step, limit);
}

std::size_t size_of(int width, int height) {
    return std::size_t{4} * static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
}

}  // namespace

TextureCache::TextureCache(SDL_Renderer* renderer, std::size_t budget) : renderer_(renderer), budget_(budget) {
    SDL_RendererInfo info;
    if (SDL_GetRendererInfo(renderer, &info) != 0) return;
    const int most = info.max_texture_width > 0 ? std::min(info.max_texture_width, info.max_texture_height) : kMost;
    limit_ = (info.flags & SDL_RENDERER_SOFTWARE) != 0 ? kSoftwareLimit : std::min(kMost, most);
}

TextureCache::~TextureCache() {
    while (!held_.empty()) drop(held_.begin());
}

Picture TextureCache::picture(std::string_view id, int longest_px) {
    const int wanted = step_up(longest_px, limit_);
    const auto held = held_.find(id);
    const int have = held == held_.end() ? 0 : held->second.asked_px;
    const auto asked = asked_.find(id);
    if (have < wanted && (asked == asked_.end() || asked->second < wanted) && !missing_.contains(id)) {
        asked_[std::string(id)] = wanted;
        wanted_.push_back({std::string(id), wanted});
    }
    if (held == held_.end()) return {};
    held->second.drawn = frame_;
    return {held->second.texture, held->second.width, held->second.height};
}

std::vector<PictureWish> TextureCache::take_wanted() {
    return std::exchange(wanted_, {});
}

Result<> TextureCache::put(const PictureWish& wish, int width, int height, ByteView rgb) {
    if (width < 1 || height < 1 || rgb.size() != size_of(width, height) / 4 * 3) return put_rgba(wish, 0, 0, {});
    Bytes pixels(size_of(width, height));
    for (std::size_t i = 0, j = 0; i < rgb.size(); i += 3, j += 4) {
        std::copy_n(rgb.begin() + static_cast<std::ptrdiff_t>(i), 3, pixels.begin() + static_cast<std::ptrdiff_t>(j));
        pixels[j + 3] = 255;
    }
    return put_rgba(wish, width, height, pixels);
}

Result<> TextureCache::put_rgba(const PictureWish& wish, int width, int height, ByteView rgba) {
    if (width < 1 || height < 1 || std::max(width, height) > limit_ || rgba.size() != size_of(width, height))
        return fail(Errc::refused, "the picture does not fit a texture",
                    fmt::format("{}, {} × {}", wish.id, width, height), fmt::format("shrink it to {} pixels", limit_));
    SDL_Texture* texture =
        SDL_CreateTexture(renderer_, SDL_PIXELFORMAT_RGBA32, SDL_TEXTUREACCESS_STATIC, width, height);
    if (texture == nullptr) return fail(Errc::io, "no texture for a picture", SDL_GetError());
    SDL_UpdateTexture(texture, nullptr, rgba.data(), 4 * width);
    SDL_SetTextureBlendMode(texture, SDL_BLENDMODE_NONE);
    SDL_SetTextureScaleMode(texture, SDL_ScaleModeLinear);
    if (const auto old = held_.find(wish.id); old != held_.end()) drop(old);
    held_[wish.id] = {texture, width, height, wish.longest_px, frame_};
    bytes_ += size_of(width, height);
    if (const auto asked = asked_.find(wish.id); asked != asked_.end() && asked->second <= wish.longest_px)
        asked_.erase(asked);
    return {};
}

void TextureCache::missing(const std::string& id) {
    asked_.erase(id);
    missing_.insert(id);
}

void TextureCache::forget(const std::string& id) {
    asked_.erase(id);
    missing_.erase(id);
    if (const auto held = held_.find(id); held != held_.end()) drop(held);
}

void TextureCache::new_frame() {
    while (bytes_ > budget_) {
        const auto oldest = std::min_element(
            held_.begin(), held_.end(), [](const auto& a, const auto& b) { return a.second.drawn < b.second.drawn; });
        if (oldest == held_.end() || oldest->second.drawn >= frame_) break;
        drop(oldest);
    }
    ++frame_;
}

void TextureCache::lost() {
    while (!held_.empty()) drop(held_.begin());
    asked_.clear();
}

void TextureCache::drop(std::map<std::string, Held, std::less<>>::iterator at) {
    bytes_ -= size_of(at->second.width, at->second.height);
    SDL_DestroyTexture(at->second.texture);
    held_.erase(at);
}

}  // namespace cotter

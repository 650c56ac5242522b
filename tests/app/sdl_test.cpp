// SDL without a display: the same pixels on every run, textures within their budget.
#include <SDL.h>

#include <doctest/doctest.h>

#include "platform/sdl/headless.h"
#include "platform/sdl/png_stb.h"
#include "platform/sdl/texture_cache.h"
#include "app/driver/runner.h"
#include "tests/app/gallery.h"
#include "tests/app/null_host.h"

using namespace cotter;

namespace {

Result<Bytes> shot(const HeadlessSpec& spec, GalleryPage page) {
    COTTER_ASSIGN(const auto host, make_headless(spec, test_fonts(), [&](const HostParts& parts) {
                      auto gallery = std::make_unique<Gallery>(parts.pictures);
                      gallery->open(page);
                      return gallery;
                  }));
    ScriptRunner runner(*host, {[](std::string_view) {}, {}, false});
    runner.drag({200, 600}, {200, 500}, 0.3);
    return host->picture();
}

struct Surface {
    Surface()
        : surface(SDL_CreateRGBSurfaceWithFormat(0, 64, 64, 32, SDL_PIXELFORMAT_ARGB8888)),
          renderer(SDL_CreateSoftwareRenderer(surface)) {}
    ~Surface() {
        SDL_DestroyRenderer(renderer);
        SDL_FreeSurface(surface);
    }
    SDL_Surface* surface;
    SDL_Renderer* renderer;
};

Bytes grey(int width, int height) {
    return Bytes(std::size_t{3} * static_cast<std::size_t>(width) * static_cast<std::size_t>(height), 128);
}

}  // namespace

TEST_CASE("the same screen gives the same bytes twice") {
    for (const GalleryPage page : {GalleryPage::start, GalleryPage::photos}) {
        const auto first = shot({412, 915, 2}, page);
        const auto second = shot({412, 915, 2}, page);
        REQUIRE(first);
        REQUIRE(second);
        CHECK(first->size() > 20000);  // more than one colour
        CHECK(*first == *second);
    }
    CHECK(*shot({412, 915, 1}, GalleryPage::start) != *shot({412, 915, 1}, GalleryPage::choices));
}

TEST_CASE("a screen that cannot be is refused") {
    CHECK(shot({12, 915, 2}, GalleryPage::start).error().line().starts_with("no such screen: 12x915 at 2"));
    CHECK_FALSE(shot({412, 915, 9}, GalleryPage::start));
}

TEST_CASE("PNG holds width, height and pixels") {
    const Bytes png = encode_png(2, 3, grey(2, 3));
    REQUIRE(png.size() > 33);
    CHECK(to_hex(ByteView(png).first(8)) == "89504e470d0a1a0a");
    CHECK(to_hex(ByteView(png).subspan(16, 8)) == "0000000200000003");
}

TEST_CASE("pictures are asked for once a size, and come back") {
    Surface surface;
    TextureCache cache(surface.renderer, 1 << 20);
    CHECK(cache.limit_px() == 1024);
    CHECK(cache.picture("a", 100).texture == nullptr);
    CHECK(cache.picture("a", 90).texture == nullptr);
    const auto wanted = cache.take_wanted();
    REQUIRE(wanted.size() == 1);
    CHECK(wanted[0].longest_px == 128);
    CHECK(cache.take_wanted().empty());
    REQUIRE(cache.put(wanted[0], 128, 96, grey(128, 96)));
    CHECK(cache.picture("a", 100).width == 128);
    CHECK(cache.picture("a", 600).width == 128);  // the coarse one serves meanwhile
    CHECK(cache.take_wanted().at(0).longest_px == 1024);
    CHECK(cache.picture("b", 5000).texture == nullptr);
    CHECK(cache.take_wanted().at(0).longest_px == 1024);
    cache.missing("b");
    CHECK(cache.picture("b", 5000).texture == nullptr);
    CHECK(cache.take_wanted().empty());
    CHECK_FALSE(cache.put({"c", 2048}, 2048, 4, grey(2048, 4)));
    CHECK_FALSE(cache.put({"c", 8}, 8, 8, grey(8, 7)));
}

TEST_CASE("textures stay within the budget; what was drawn last stays") {
    Surface surface;
    TextureCache cache(surface.renderer, 3 * 128 * 128 * 4);
    for (const char* id : {"a", "b", "c", "d", "e"}) {
        cache.new_frame();
        static_cast<void>(cache.picture(id, 128));
        REQUIRE(cache.put({id, 128}, 128, 128, grey(128, 128)));
        static_cast<void>(cache.picture("a", 128));
    }
    cache.new_frame();
    CHECK(cache.count() == 3);
    CHECK(cache.bytes() == 3 * 128 * 128 * 4);
    CHECK(cache.picture("a", 128).texture != nullptr);
    CHECK(cache.picture("b", 128).texture == nullptr);
    CHECK(cache.picture("e", 128).texture != nullptr);
    cache.forget("e");
    CHECK(cache.picture("e", 128).texture == nullptr);
    cache.lost();
    CHECK(cache.bytes() == 0);
}

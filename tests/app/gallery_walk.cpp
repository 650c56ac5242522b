// See gallery_walk.h.
#include "tests/app/gallery_walk.h"

#include <array>

#include <fmt/format.h>

#include "app/driver/audit.h"
#include "app/driver/runner.h"

namespace cotter {

namespace {

constexpr std::array kPages{"start", "corner", "choices", "words", "photos", "empty", "busy", "keypad", "help"};
constexpr std::array kTypes{"1", "1.5", "2"};

struct Walk {
    DriverHost& host;
    const std::string& place;
    const std::function<void(const GalleryView&)>& seen;
    ScriptRunner runner{host, {[](std::string_view) {}, {}, false}};

    void look(const char* page, int step) {
        const UiStage& stage = host.stage();
        seen({fmt::format("{}-{}-{}", place, page, step), audit(stage.log(), stage.width(), stage.height()),
              [&] { return host.picture(); }});
    }

    // The area of the top layer that scrolls up and down.
    [[nodiscard]] const ScrollArea* area() const {
        for (const ScrollArea& a : host.stage().log().scrolls)
            if (a.layer == host.stage().log().layer && !a.sideways && !a.free) return &a;
        return nullptr;
    }

    void down(const char* page) {
        for (int step = 0; step < 30; ++step) {
            look(page, step);
            const ScrollArea* a = area();
            if (a == nullptr || a->at >= a->end - 1) return;
            const Rect r = a->rect;
            const float before = a->at;
            const float x = r.x + 4;  // beside the targets, where no picture takes the drag
            runner.drag({x, r.bottom() - 8}, {x, r.bottom() - 8 - std::min(r.h - 16, r.h * 0.8F)}, 0.5);
            if (area() == nullptr || area()->at <= before + 1) return;
        }
    }
};

void walk_pages(DriverHost& host, Gallery& gallery, const std::string& place,
                const std::function<void(const GalleryView&)>& seen) {
    for (std::size_t page = 0; page < kPages.size(); ++page) {
        Walk walk{host, place, seen};
        gallery.open(page < 7 ? static_cast<GalleryPage>(page) : GalleryPage::start);
        host.stage().happened();
        walk.runner.settle();
        if (page == 7) static_cast<void>(walk.runner.tap("New job"));
        if (page == 8) static_cast<void>(walk.runner.tap("Help"));
        walk.down(kPages[page]);
        if (page >= 7) static_cast<void>(walk.runner.tap("Close"));
    }
}

}  // namespace

void walk_gallery(const MakeHost& make_host, const std::function<void(const GalleryView&)>& seen,
                  std::string_view only) {
    constexpr std::array<Point, 3> kSizes{Point{412, 915}, Point{915, 412}, Point{1280, 800}};
    for (const Point size : kSizes)
        for (std::size_t type = 0; type < kTypes.size(); ++type)
            for (const ThemeKind theme : {ThemeKind::sun, ThemeKind::lantern}) {
                const std::string place = fmt::format("{}x{}-{}-{}", size.x, size.y, kTypes[type],
                                                      theme == ThemeKind::sun ? "sun" : "lantern");
                if (!place.starts_with(only)) continue;
                const Appearance look{theme, static_cast<TypeSize>(type), type == 1 ? Thumb::left : Thumb::right};
                Gallery* gallery = nullptr;
                const auto host = make_host(size, [&](const HostParts& parts) {
                    auto made = std::make_unique<Gallery>(parts.pictures, look);
                    gallery = made.get();
                    return made;
                });
                walk_pages(*host, *gallery, place, seen);
            }
}

}  // namespace cotter

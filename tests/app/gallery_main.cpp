// The gallery to look at: `gallery` opens a window, `gallery shots FOLDER [PLACE]` writes pictures of every page at
// every size and look, with what the audit finds. For those who change widgets.
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <stdexcept>

#include <fmt/format.h>

#include "app/driver/audit.h"
#include "app/driver/runner.h"
#include "platform/desktop/ports.h"
#include "platform/sdl/headless.h"
#include "platform/sdl/window.h"
#include "tests/app/gallery.h"
#include "tests/app/gallery_walk.h"

using namespace cotter;

namespace {

int shots(const FontFiles& fonts, const std::string& folder, std::string_view only) {
    std::filesystem::create_directories(folder);
    int offences = 0;
    const MakeHost make_host = [&](Point size, const MakeApp& make) {
        auto host = make_headless({size.x, size.y, 2}, fonts, make);
        if (!host) throw std::runtime_error(host.error().line());
        return std::move(*host);
    };
    walk_gallery(
        make_host,
        [&](const GalleryView& view) {
            for (const std::string& line : view.offences) fmt::print("{}: {}\n", view.name, line);
            offences += static_cast<int>(view.offences.size());
            const auto png = view.picture();
            if (png)
                std::ofstream(folder + "/" + view.name + ".png", std::ios::binary)
                    .write(reinterpret_cast<const char*>(png->data()), static_cast<std::streamsize>(png->size()));
        },
        only);
    fmt::print("{} offences\n", offences);
    return offences == 0 ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
    const auto files = make_system_files();
    auto fonts = load_font_files(*files, share_folder());
    if (!fonts) {
        fmt::print(stderr, "gallery: {}\n", fonts.error().line());
        return 1;
    }
    if (argc >= 3 && std::string_view(argv[1]) == "shots") return shots(*fonts, argv[2], argc > 3 ? argv[3] : "");
    const auto shown =
        run_window({}, *fonts, [](const HostParts& parts) { return std::make_unique<Gallery>(parts.pictures); });
    if (!shown) fmt::print(stderr, "gallery: {}\n", shown.error().line());
    return shown ? 0 : 1;
}

// See rehearsal.h.
#include "platform/web/rehearsal.h"

#include "app/app.h"
#include "app/ui/ui_stage.h"
#include "platform/web/browser_keyboard.h"
#include "platform/web/browser_ports.h"

namespace cotter {

namespace {

class NoPictures final : public PictureStore {
public:
    Picture picture(std::string_view, int) override { return {}; }
    std::vector<PictureWish> take_wanted() override { return {}; }
    Result<> put(const PictureWish&, int, int, ByteView) override { return {}; }
    void missing(const std::string&) override {}
    void forget(const std::string&) override {}
    [[nodiscard]] int limit_px() const override { return 1; }
};

void draw(Files& files, Session& session, FrameTaskRunner& tasks, FontFiles fonts, float width, float height,
          float px_per_dp) {
    NoPictures pictures;
    BrowserKeyboard keyboard;
    BrowserWaker waker;
    UiStage stage(std::move(fonts), pictures, keyboard);
    if (auto kept = read_file(files, kLettersFile, kMostLetters)) stage.offer_letters(std::move(*kept));
    stage.resize(width, height, px_per_dp, {}, 0);
    App app(session, tasks, HostParts{pictures, waker});
    stage.begin(0, app.look());
    stage.draw(app);
}

}  // namespace

void rehearse(float width, float height, float px_per_dp) {
    const auto files = make_browser_files();
    const auto clock = make_browser_clock();
    const auto random = make_browser_random();
    const auto device = make_browser_device();
    SerialWorkers workers;
    FrameTaskRunner tasks;
    const SessionParts parts{*files, *clock, *random, workers, tasks, kShareFolder, "", device.get(), nullptr, true};
    const auto session = Session::open(parts, kBookFolder);
    if (!session) return;
    if (auto fonts = load_font_files(*files, kShareFolder))
        draw(*files, **session, tasks, std::move(*fonts), width, height, px_per_dp);
}

}  // namespace cotter

// A screen that draws into nothing: ImGui runs whole, only the pixels are left out. For tests of screens and widgets.
#pragma once

#include <memory>

#include "app/driver/host.h"

namespace cotter {

// Pictures are accepted at once and only counted.
class NullPictures final : public PictureStore {
public:
    Picture picture(std::string_view id, int longest_px) override;
    std::vector<PictureWish> take_wanted() override;
    Result<> put(const PictureWish& wish, int width, int height, ByteView rgb) override;
    void missing(const std::string&) override {}
    void forget(const std::string&) override {}
    [[nodiscard]] int limit_px() const override { return 1024; }

private:
    struct Held {
        std::string id;
        int width, height;
    };
    std::vector<Held> held_;
    std::vector<std::string> asked_;
    std::vector<PictureWish> wanted_;
};

// What a field asked of the system's keyboard; `next` is what a keyboard of the platform's own would have typed.
class NotedKeyboard final : public Keyboard {
public:
    void show(const TextEdit& edit) override { shown = edit; }
    void hide() override { shown.reset(); }
    std::optional<std::string> replaced() override { return std::exchange(next, std::nullopt); }
    std::optional<TextEdit> shown;
    std::optional<std::string> next;
};

class NullHost final : public DriverHost {
public:
    NullHost(Point size, const FontFiles& fonts, const MakeApp& make);
    UiStage& stage() override { return stage_; }
    void frame(double now_s) override;
    Result<Bytes> picture() override { return Bytes{}; }
    Result<> resize(float width, float height, double now_s) override;
    [[nodiscard]] NotedKeyboard& keyboard() { return keyboard_; }
    // Frames in which SDL would leave out a whole list because one of its corners lies outside of its texture.
    [[nodiscard]] int pages_refused() const { return pages_refused_; }

private:
    class NoWaker final : public Waker {
    public:
        void wake() override {}
    };
    int pages_refused_ = 0;
    NullPictures pictures_;
    NotedKeyboard keyboard_;
    NoWaker waker_;
    UiStage stage_;
    std::unique_ptr<AppUi> app_;
};

// The fonts of the build's bundle; fails the test when they are not there.
[[nodiscard]] const FontFiles& test_fonts();

}  // namespace cotter

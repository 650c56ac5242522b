// Every widget on a few pages, with the words of a real job: for the tests of the widgets, and to look at.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "app/ui/app_ui.h"
#include "app/ui/keypad_model.h"

namespace cotter {

enum class GalleryPage { start, corner, choices, words, photos, empty, busy };

// What was tapped, as the commands that a session would get.
struct GalleryCommand {
    std::string what;
};

class Gallery final : public AppUi {
public:
    explicit Gallery(PictureStore& pictures, Appearance look = {}) : pictures_(pictures), look_(look) {}

    [[nodiscard]] Appearance look() const override { return look_; }
    [[nodiscard]] const UiWords& words() const override { return words_; }
    void frame(UiContext& ui) override;

    void set_look(const Appearance& look) { look_ = look; }
    void open(GalleryPage page) { page_ = page; }
    [[nodiscard]] const std::vector<std::string>& log() const { return log_; }
    [[nodiscard]] const std::string& note() const { return note_; }
    [[nodiscard]] const KeypadModel& keypad() const { return keypad_; }
    [[nodiscard]] float zoom() const { return zoom_; }
    int rows = 6;  // of the list on the first page

private:
    void start(UiContext& ui);
    void corner(UiContext& ui);
    void choices(UiContext& ui);
    void fields(UiContext& ui);
    void photos(UiContext& ui);
    void empty(UiContext& ui);
    void busy(UiContext& ui);
    void sheets(UiContext& ui);
    void serve_pictures();
    void tapped(std::string what) { log_.push_back(std::move(what)); }

    PictureStore& pictures_;
    Appearance look_;
    UiWords words_;
    GalleryPage page_ = GalleryPage::start;
    std::vector<std::string> log_;
    std::map<std::string, bool> on_;
    std::string note_ = "Inner pad worn to the wear mark, outer one still has 7 mm. Slide pins dry.";
    std::string short_note_;
    int unit_ = 0;
    int grade_ = 2;
    bool keypad_open_ = false, help_open_ = false;
    float zoom_ = 1;
    KeypadModel keypad_{
        KeypadSpec{"Pad thickness, axle 1 right", {"mm", "[in_i]"}, {"inner", "outer"}, true, false, true, true}};
};

}  // namespace cotter

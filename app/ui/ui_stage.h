// Turns events into frames: fingers, mouse and keys go in, an AppUi is drawn, ImGui's draw data comes out. Knows no
// window; whoever owns one feeds it and renders. All calls from one thread.
#pragma once

#include <memory>

#include "app/pacer.h"
#include "app/ui/app_ui.h"
#include "app/ui/fonts.h"
#include "app/ui/touch.h"

struct ImGuiContext;

namespace cotter {

class UiStage {
public:
    // Makes an ImGui context of its own. The ports must outlive it.
    UiStage(FontFiles fonts, Pictures& pictures, Keyboard& keyboard);
    ~UiStage();
    UiStage(const UiStage&) = delete;
    UiStage& operator=(const UiStage&) = delete;

    // Size in dp, pixels to a dp, what the device covers. Ends any gesture when the size changes.
    void resize(float width, float height, float px_per_dp, const Insets& insets, double now_s);
    void finger(const FingerEvent& event);
    void mouse_at(Point at, double now_s);
    void mouse_left();  // it is not over the window
    void mouse_button(int button, bool down, double now_s);
    void wheel(float x, float y);
    void text(std::string_view utf8);
    void key(int imgui_key, bool down);     // an ImGuiKey
    void reach(std::uint32_t target);       // scrolls it to sight: for whoever cannot see that it is scrolled away
    void happened() { pacer_.happened(); }  // anything else that wants a frame

    // Letters that an earlier start of this very program has baked, and those of this one: empty while they are the
    // ones that were offered, or when none are baked yet. See kept_letters.h.
    void offer_letters(Bytes kept);
    [[nodiscard]] Bytes letters_to_keep() const;

    // A frame in two halves, so that a renderer's backend may prepare between them. begin() tells whether the font
    // texture is a new one; draw() ends with ImGui::Render(), so ImGui::GetDrawData() is ready.
    bool begin(double now_s, const Appearance& look);
    void draw(AppUi& app);

    [[nodiscard]] const TargetLog& log() const { return state_.last; }  // of the last frame
    [[nodiscard]] const Pacer& pacer() const { return pacer_; }
    [[nodiscard]] bool touched() const { return touch_.fingers() > 0; }
    [[nodiscard]] const TouchMachine& touch() const { return touch_; }
    [[nodiscard]] bool editing() const { return state_.edited != 0; }  // a field has the keyboard
    [[nodiscard]] bool busy() const;                                   // input still waits for a frame of its own
    [[nodiscard]] float width() const { return width_; }
    [[nodiscard]] float height() const { return height_; }
    [[nodiscard]] float px_per_dp() const { return px_per_dp_; }
    [[nodiscard]] ImGuiContext* context() const { return context_; }
    [[nodiscard]] Point pointer() const { return pointer_; }  // where ImGui is to see the mouse

private:
    void collect_gestures(double now_s);
    void tap_imgui(Point at);
    void after_frame(const UiContext& ui);
    void look_for_more_letters();

    FontFiles fonts_;
    Bytes kept_letters_;  // as they were offered, until the first baking
    Pictures& pictures_;
    Keyboard& keyboard_;
    ImGuiContext* context_;
    Pacer pacer_;
    TouchMachine touch_, mouse_;
    std::vector<Gesture> gestures_;
    UiState state_;
    TargetLog log_;
    Faces faces_;
    Appearance look_;
    float width_ = 0, height_ = 0, px_per_dp_ = 1;
    float baked_type_ = 0, baked_px_ = 0;
    unsigned bakings_ = 0;
    Letters letters_ = Letters::plain, baked_letters_ = Letters::plain;
    Insets insets_;
    Point pointer_;
    double now_s_ = 0;
};

}  // namespace cotter

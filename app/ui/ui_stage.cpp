// See ui_stage.h.
#include "app/ui/ui_stage.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cfloat>

#include "app/ui/kept_letters.h"
#include "app/ui/scroll.h"

namespace cotter {

namespace {

constexpr Point kNowhere{-FLT_MAX, -FLT_MAX};

// Widgets draw themselves; ImGui only places and clips.
void set_style() {
    ImGuiStyle& style = ImGui::GetStyle();
    style.WindowPadding = {0, 0};
    style.WindowBorderSize = 0;
    style.ChildBorderSize = 0;
    style.FrameBorderSize = 0;
    style.FramePadding = {0, 0};
    style.ItemSpacing = {Sizes::gap, Sizes::gap};
    style.ItemInnerSpacing = {Sizes::gap, 0};
    style.WindowMinSize = {1, 1};
    style.AntiAliasedLinesUseTex = false;  // plain triangles: the software renderer draws them right
    style.DisabledAlpha = 1;
    style.CircleTessellationMaxError = 0.1F;
}

}  // namespace

UiStage::UiStage(FontFiles fonts, Pictures& pictures, Keyboard& keyboard)
    : fonts_(std::move(fonts)),
      pictures_(pictures),
      keyboard_(keyboard),
      context_(ImGui::CreateContext()),
      pointer_(kNowhere) {
    ImGui::SetCurrentContext(context_);
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    io.ConfigInputTextCursorBlink = false;  // a blinking caret would be a screen that never rests
    set_style();
}

UiStage::~UiStage() {
    ImGui::DestroyContext(context_);
}

void UiStage::resize(float width, float height, float px_per_dp, const Insets& insets, double now_s) {
    if (width != width_ || height != height_) {
        touch_.cancel(now_s);
        mouse_.cancel(now_s);
    }
    width_ = width;
    height_ = height;
    px_per_dp_ = px_per_dp;
    insets_ = insets;
    pacer_.happened();
}

void UiStage::finger(const FingerEvent& event) {
    touch_.feed(event);
    pacer_.happened();
}

void UiStage::mouse_at(Point at, double now_s) {
    ImGui::SetCurrentContext(context_);
    pointer_ = at;
    ImGui::GetIO().AddMouseSourceEvent(ImGuiMouseSource_Mouse);
    ImGui::GetIO().AddMousePosEvent(at.x, at.y);
    mouse_.feed({now_s, 0, at, FingerPhase::move});
    pacer_.happened();
}

void UiStage::mouse_left() {
    ImGui::SetCurrentContext(context_);
    pointer_ = kNowhere;
    ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
    pacer_.happened();
}

void UiStage::mouse_button(int button, bool down, double now_s) {
    ImGui::SetCurrentContext(context_);
    ImGui::GetIO().AddMouseButtonEvent(button, down);
    if (button == 0) mouse_.feed({now_s, 0, pointer_, down ? FingerPhase::down : FingerPhase::up});
    pacer_.happened();
}

void UiStage::wheel(float x, float y) {
    ImGui::SetCurrentContext(context_);
    ImGui::GetIO().AddMouseWheelEvent(x, y);
    pacer_.happened();
}

void UiStage::text(std::string_view utf8) {
    ImGui::SetCurrentContext(context_);
    ImGui::GetIO().AddInputCharactersUTF8(std::string(utf8).c_str());
    pacer_.happened();
}

void UiStage::key(int imgui_key, bool down) {
    ImGui::SetCurrentContext(context_);
    ImGui::GetIO().AddKeyEvent(static_cast<ImGuiKey>(imgui_key), down);
    pacer_.happened();
}

void UiStage::reach(std::uint32_t target) {
    touch_.cancel(now_s_);  // a list that is still gliding would take it away again
    state_.reached = target;
    pacer_.happened();
}

// ImGui lets each of these take effect in a frame of its own: it has to see the position before the press, and the
// press before the release. Without the last one what was tapped would stay lit.
void UiStage::tap_imgui(Point at) {
    ImGuiIO& io = ImGui::GetIO();
    io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
    io.AddMousePosEvent(at.x, at.y);
    io.AddMouseButtonEvent(0, true);
    io.AddMouseButtonEvent(0, false);
    io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
    io.AddMouseSourceEvent(ImGuiMouseSource_Mouse);
    pointer_ = kNowhere;
}

void UiStage::collect_gestures(double now_s) {
    touch_.tick(now_s);
    mouse_.tick(now_s);
    gestures_ = touch_.take();
    for (const Gesture& gesture : gestures_)
        if (gesture.kind == GestureKind::tap) tap_imgui(gesture.at);
    for (Gesture gesture : mouse_.take()) {
        gesture.mouse = true;
        if (gesture.kind != GestureKind::fling && gesture.kind != GestureKind::fling_end) gestures_.push_back(gesture);
    }
    route_gestures(state_, gestures_);
}

bool UiStage::begin(double now_s, const Appearance& look) {
    ImGui::SetCurrentContext(context_);
    collect_gestures(now_s);
    look_ = look;
    const Sizes sizes = sizes_of(look.type);
    const bool bake = sizes.type != baked_type_ || px_per_dp_ != baked_px_ || letters_ != baked_letters_;
    if (bake) {
        faces_ = bake_fonts(*ImGui::GetIO().Fonts, fonts_, sizes, px_per_dp_, letters_, kept_letters_);
        kept_letters_ = {};
        faces_.baked = ++bakings_;
        baked_type_ = sizes.type;
        baked_px_ = px_per_dp_;
        baked_letters_ = letters_;
    }
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {width_, height_};
    io.DisplayFramebufferScale = {px_per_dp_, px_per_dp_};
    io.DeltaTime = static_cast<float>(std::clamp(now_s - now_s_, 1e-4, 0.25));
    now_s_ = now_s;
    pacer_.drew(now_s);
    return bake;
}

void UiStage::offer_letters(Bytes kept) {
    if (const auto what = kept_for(kept)) letters_ = std::max(letters_, what->letters);
    kept_letters_ = std::move(kept);
}

Bytes UiStage::letters_to_keep() const {
    if (bakings_ == 0 || faces_.put_back) return {};
    ImGui::SetCurrentContext(context_);
    return keep_letters(*ImGui::GetIO().Fonts, {baked_type_, baked_px_, baked_letters_});
}

void UiStage::draw(AppUi& app) {
    ImGui::SetCurrentContext(context_);
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {width_, height_};  // a backend may have put its own there meanwhile
    io.DisplayFramebufferScale = {px_per_dp_, px_per_dp_};
    ImGui::NewFrame();
    log_.clear();
    state_.edited_before = std::exchange(state_.edited, 0);
    const bool escape = ImGui::IsKeyPressed(ImGuiKey_Escape, false) && state_.edited_before == 0;
    UiContext ui{theme_of(look_.theme),
                 sizes_of(look_.type),
                 look_.thumb,
                 width_,
                 height_,
                 px_per_dp_,
                 insets_,
                 now_s_,
                 faces_,
                 app.words(),
                 log_,
                 pictures_,
                 keyboard_,
                 state_,
                 gestures_,
                 touch_.pressed(),
                 escape || ImGui::IsKeyPressed(ImGuiKey_AppBack, false),
                 std::nullopt};
    app.frame(ui);
    ImGui::Render();
    after_frame(ui);
}

// Once they are met they are there to stay, from the next frame on.
void UiStage::look_for_more_letters() {
    Letters met = letters_;
    const auto look = [&](const std::string& text) {
        if (met != Letters::all) met = std::max(met, letters_for(text));
    };
    for (const TextInk& ink : state_.last.texts) look(ink.text);
    for (const Target& target : state_.last.targets) {
        look(target.label);
        look(target.value);
    }
    if (met == letters_) return;
    letters_ = met;
    pacer_.happened();
}

void UiStage::after_frame(const UiContext& ui) {
    if (state_.edited == 0 && state_.edited_before != 0) keyboard_.hide();
    if (std::exchange(state_.reached, 0) != 0) pacer_.happened();  // scrolled from the next frame on
    if (log_.layer == 0 && state_.last.layer > 0) ImGui::SetWindowFocus("###screen");
    const bool opened = log_.layer != state_.last.layer;
    std::swap(state_.last, log_);
    look_for_more_letters();
    pacer_.keep_moving(touch_.moving());
    if (const auto wake = touch_.wakes_at()) pacer_.wake_at(*wake);
    if (const auto wake = mouse_.wakes_at()) pacer_.wake_at(*wake);
    if (ui.wake_s) pacer_.wake_at(*ui.wake_s);
    if (busy() || opened) pacer_.happened();
}

bool UiStage::busy() const {
    return !context_->InputEventsQueue.empty();
}

}  // namespace cotter

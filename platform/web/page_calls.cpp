// What the page's script calls, by name. The composition root of the web: makes the one page of this program, or, in a
// worker, carries out an order. Times are milliseconds of performance.now(), lengths CSS pixels.
#include <emscripten.h>
#include <imgui.h>

#include <memory>
#include <utility>

#include <nlohmann/json.hpp>

#include "platform/web/page.h"

namespace {

using namespace cotter;

std::unique_ptr<Page> the_page;  // of this program; the script's calls have no other way to it
std::string answer;              // the text given back last; valid until the next call that gives one
bool earlier_may_open = false;   // why the_page is not there yet lies in the book's bytes

constexpr double kMs = 1000;

// Page keys that a screen acts on, as KeyboardEvent.key has them.
int imgui_key(const std::string& key) {
    constexpr std::pair<const char*, ImGuiKey> kKeys[] = {{"Tab", ImGuiKey_Tab},
                                                          {"Enter", ImGuiKey_Enter},
                                                          {" ", ImGuiKey_Space},
                                                          {"Escape", ImGuiKey_Escape},
                                                          {"ArrowLeft", ImGuiKey_LeftArrow},
                                                          {"ArrowRight", ImGuiKey_RightArrow},
                                                          {"ArrowUp", ImGuiKey_UpArrow},
                                                          {"ArrowDown", ImGuiKey_DownArrow},
                                                          {"Home", ImGuiKey_Home},
                                                          {"End", ImGuiKey_End},
                                                          {"PageUp", ImGuiKey_PageUp},
                                                          {"PageDown", ImGuiKey_PageDown},
                                                          {"Backspace", ImGuiKey_Backspace},
                                                          {"BrowserBack", ImGuiKey_AppBack},
                                                          {"Shift", ImGuiMod_Shift}};
    for (const auto& [name, code] : kKeys)
        if (key == name) return code;
    return ImGuiKey_None;
}

PageSize size_of(float width, float height, float px_per_dp, float left, float top, float right, float bottom) {
    return {width, height, px_per_dp, {left, top, right, bottom}};
}

}  // namespace

extern "C" {

// "" or why it does not open. Not where, nor what to do, when it is the book that does not: its folder means nothing
// here.
EMSCRIPTEN_KEEPALIVE const char* cotter_open(float width, float height, float px_per_dp, float left, float top,
                                             float right, float bottom, double now_ms) {
    auto page = std::make_unique<Page>();
    const auto opened = page->open(size_of(width, height, px_per_dp, left, top, right, bottom), now_ms / kMs);
    earlier_may_open = !opened && opened.error().code != Errc::too_new && opened.error().code != Errc::not_found;
    answer = opened ? "" : earlier_may_open ? opened.error().what : opened.error().line();
    if (opened) the_page = std::move(page);
    return answer.c_str();
}

// Whether another copy of the book may open where this one did not: not when it is newer than the program, nor when one
// of the program's own files is missing.
EMSCRIPTEN_KEEPALIVE int cotter_earlier_may_open() {
    return earlier_may_open;
}

EMSCRIPTEN_KEEPALIVE void cotter_resize(float width, float height, float px_per_dp, float left, float top, float right,
                                        float bottom, double now_ms) {
    the_page->resize(size_of(width, height, px_per_dp, left, top, right, bottom), now_ms / kMs);
}

// Milliseconds to the next frame; -1: none is wanted.
EMSCRIPTEN_KEEPALIVE double cotter_frame(double now_ms) {
    const auto next = the_page->frame(now_ms / kMs);
    return next ? *next * kMs : -1;
}

EMSCRIPTEN_KEEPALIVE void cotter_finger(int finger, float x, float y, int phase, double now_ms) {
    the_page->stage().finger({now_ms / kMs, finger, {x, y}, static_cast<FingerPhase>(phase)});
}

EMSCRIPTEN_KEEPALIVE void cotter_mouse(float x, float y, int button, int down, double now_ms) {
    the_page->stage().mouse_at({x, y}, now_ms / kMs);
    if (button >= 0) the_page->stage().mouse_button(button, down != 0, now_ms / kMs);
}
EMSCRIPTEN_KEEPALIVE void cotter_mouse_left() {
    the_page->stage().mouse_left();
}
EMSCRIPTEN_KEEPALIVE void cotter_wheel(float x, float y) {
    the_page->stage().wheel(x, y);
}

// 1: it is a key that a screen acts on.
EMSCRIPTEN_KEEPALIVE int cotter_key(const char* key, int down) {
    const int code = imgui_key(key);
    if (code != ImGuiKey_None) the_page->stage().key(code, down != 0);
    return code != ImGuiKey_None ? 1 : 0;
}

EMSCRIPTEN_KEEPALIVE void cotter_field_text(const char* text) {
    the_page->keyboard().replace(text);
    the_page->stage().happened();
}

EMSCRIPTEN_KEEPALIVE void cotter_reach(unsigned target) {
    the_page->stage().reach(target);
}

EMSCRIPTEN_KEEPALIVE void cotter_read_ahead() {
    the_page->read_ahead();
}

// 1: kLettersFile is to be kept for the next start.
EMSCRIPTEN_KEEPALIVE int cotter_keep_letters() {
    return the_page->keep_letters() ? 1 : 0;
}

EMSCRIPTEN_KEEPALIVE void cotter_happened() {
    the_page->stage().happened();
}

EMSCRIPTEN_KEEPALIVE void cotter_chosen(const char* paths_json) {
    the_page->chosen(nlohmann::json::parse(paths_json).get<std::vector<std::string>>());
}

// `rgba`: width × height × 4 bytes; nullptr: it will not come.
EMSCRIPTEN_KEEPALIVE void cotter_picture(const char* id, int longest_px, int width, int height,
                                         const std::uint8_t* rgba) {
    TextureCache& textures = the_page->textures();
    const std::size_t bytes = std::size_t{4} * static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    if (rgba == nullptr || !textures.put_rgba({id, longest_px}, width, height, {rgba, bytes})) textures.missing(id);
    the_page->stage().happened();
}

EMSCRIPTEN_KEEPALIVE void cotter_work_done(int order, const char* json) {
    the_page->work().answered(order, json);
    the_page->stage().happened();
}

EMSCRIPTEN_KEEPALIVE int cotter_at_bottom() {
    return the_page->at_bottom() ? 1 : 0;
}

// The mirror when it changed, else "".
EMSCRIPTEN_KEEPALIVE const char* cotter_mirror() {
    const std::string* text = the_page->mirror();
    return text == nullptr ? "" : text->c_str();
}

// In a worker: the answer to an order.
EMSCRIPTEN_KEEPALIVE const char* cotter_carry_out(const char* order) {
    const auto files = make_browser_files();
    const auto random = make_browser_random();
    answer = carry_out(*files, *random, "Cotter " COTTER_VERSION, order);
    return answer.c_str();
}
}

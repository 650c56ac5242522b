// See browser_keyboard.h.
#include "platform/web/browser_keyboard.h"

#include <nlohmann/json.hpp>

#include "platform/web/bridge.h"

namespace cotter {

namespace {

const char* kind_name(TextKind kind) {
    switch (kind) {
        case TextKind::note:
            return "note";
        case TextKind::number:
            return "number";
        case TextKind::phone:
            return "phone";
        case TextKind::email:
            return "email";
        case TextKind::plain:
            break;
    }
    return "plain";
}

}  // namespace

// The text is told only when the field is entered: from then on the page's field has the newer one.
void BrowserKeyboard::show(const TextEdit& edit) {
    const nlohmann::json json{{"id", edit.id},       {"x", edit.rect.x},     {"y", edit.rect.y},
                              {"w", edit.rect.w},    {"h", edit.rect.h},     {"kind", kind_name(edit.kind)},
                              {"label", edit.label}, {"max", edit.max_bytes}};
    const std::string place = json.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
    if (place == shown_) return;
    shown_ = place;
    nlohmann::json whole = json;
    whole["text"] = edit.text;
    cotter_js_field_show(whole.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace).c_str());
}

void BrowserKeyboard::hide() {
    shown_.clear();
    replaced_.reset();
    cotter_js_field_hide();
}

void BrowserWaker::wake() {
    cotter_js_wake();
}

}  // namespace cotter

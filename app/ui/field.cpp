// See field.h. Method: ImGui's single-line input does the editing, drawn invisible; what is seen is laid out by us from
// its state, so that text wraps and the caret and selection follow the wrapped lines.
#include "app/ui/field.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "app/ui/draw.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kFieldPad = 14;

// What the callback shall do to the input's state.
struct Wish {
    std::optional<std::size_t> caret;
    bool extend = false;  // the selection grows to the caret
    bool at_end = false;  // nothing selected, the caret behind the text; also in the frame that gives the keyboard
    std::optional<std::string> text;
};

int fulfil(ImGuiInputTextCallbackData* data) {
    auto& wish = *static_cast<Wish*>(data->UserData);
    if (wish.text && *wish.text != std::string_view(data->Buf, static_cast<std::size_t>(data->BufTextLen))) {
        data->DeleteChars(0, data->BufTextLen);
        data->InsertChars(0, wish.text->c_str());
    }
    if (wish.at_end) wish.caret = static_cast<std::size_t>(data->BufTextLen);
    if (!wish.caret) return 0;
    data->CursorPos = static_cast<int>(std::min<std::size_t>(*wish.caret, static_cast<std::size_t>(data->BufTextLen)));
    data->SelectionEnd = data->CursorPos;
    if (!wish.extend) data->SelectionStart = data->CursorPos;
    return 0;
}

// The input's own text while it is being edited, else nullptr.
ImGuiInputTextState* editing(std::uint32_t id) {
    return ImGui::GetActiveID() == id ? ImGui::GetInputTextState(id) : nullptr;
}

std::string shown_text(const FieldSpec& spec, std::uint32_t id) {
    const ImGuiInputTextState* state = editing(id);
    return state != nullptr && state->TextAIsValid ? std::string(state->TextA.Data) : std::string(spec.value);
}

std::size_t bytes_of(std::string_view text, int characters) {
    std::size_t at = 0;
    for (; characters > 0 && at < text.size(); --characters) {
        ++at;
        while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80) ++at;
    }
    return at;
}

Wish wish_of(UiContext& ui, const Laid& laid, const Rect& box, const Rect& text, std::uint32_t id, bool focus) {
    Wish wish;
    const ImGuiIO& io = ImGui::GetIO();
    const Point mouse{io.MousePos.x, io.MousePos.y};
    const bool editing_now = ImGui::GetActiveID() == id;
    const bool clicked = ImGui::IsMouseClicked(0) && seen_part(box).contains(mouse);
    const bool drags = editing_now && ImGui::IsMouseDragging(0) && laid.lines.size() > 1;
    if (clicked || drags) wish.caret = byte_at(ui, laid, {mouse.x - text.x, mouse.y - text.y});
    wish.extend = drags && !clicked;
    if (editing_now) wish.text = ui.keyboard.replaced();
    wish.at_end = focus;
    return wish;
}

// The invisible input over `box`. True when the text changed.
bool input(const UiContext& ui, const Name& name, const FieldSpec& spec, const Rect& box, std::vector<char>& buffer,
           Wish& wish) {
    ImFont* font = ui.face(Type::body).font;
    ImGui::PushFont(font);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {kFieldPad, std::max(0.0F, (box.h - ImGui::GetFontSize()) / 2)});
    for (const ImGuiCol colour : {ImGuiCol_Text, ImGuiCol_FrameBg, ImGuiCol_TextSelectedBg, ImGuiCol_NavHighlight})
        ImGui::PushStyleColor(colour, IM_COL32_BLACK_TRANS);
    ImGui::SetCursorScreenPos({box.x, box.y});
    ImGui::SetNextItemWidth(box.w);
    ImGui::BeginDisabled(!spec.enabled);
    if (spec.focus) ImGui::SetKeyboardFocusHere();
    const bool changed = ImGui::InputText(("###" + std::string(name.key)).c_str(), buffer.data(), buffer.size(),
                                          ImGuiInputTextFlags_CallbackAlways, fulfil, &wish);
    ImGui::EndDisabled();
    ImGui::PopStyleColor(4);
    ImGui::PopStyleVar();
    ImGui::PopFont();
    return changed;
}

void draw_selection(const UiContext& ui, const Laid& laid, const Rect& text, std::size_t from, std::size_t to) {
    const Rgb colour = ui.paint(Tone::chosen).ground;
    for (std::size_t i = 0; i < laid.lines.size(); ++i) {
        const auto start = static_cast<std::size_t>(laid.lines[i].text.data() - laid.text.data());
        const std::size_t a = std::clamp(from, start, start + laid.lines[i].text.size());
        const std::size_t b = std::clamp(to, start, start + laid.lines[i].text.size());
        if (a >= b) continue;
        const float left = text_width(ui, laid.text.substr(start, a - start), laid.type, laid.em);
        const float right = text_width(ui, laid.text.substr(start, b - start), laid.type, laid.em);
        draw_fill({text.x + left, text.y + laid.pitch * static_cast<float>(i), right - left, laid.pitch}, colour);
    }
}

void draw_caret(const UiContext& ui, const Laid& laid, const Rect& text, std::size_t at) {
    const Point place = place_of(ui, laid, at);
    draw_fill({text.x + place.x - 1, text.y + place.y, 3, laid.pitch}, ui.theme.witness);
}

void draw_editing(const UiContext& ui, const Laid& laid, const Rect& text, std::uint32_t id) {
    const ImGuiInputTextState* state = editing(id);
    if (state == nullptr) return;
    const auto [from, to] = std::minmax({state->GetSelectionStart(), state->GetSelectionEnd()});
    if (from != to) draw_selection(ui, laid, text, bytes_of(laid.text, from), bytes_of(laid.text, to));
    draw_caret(ui, laid, text, bytes_of(laid.text, state->GetCursorPos()));
}

// Once when the field is entered, and again when the system's keyboard has taken a part of the screen.
void bring_to_sight(UiContext& ui, const Rect& box, std::uint32_t id) {
    const float left = ui.height - ui.insets.bottom;
    if (ui.state.edited_before == id && ui.state.edit_room == left) return;
    ui.state.edit_room = left;
    if (!inside(box, seen_part(box))) ImGui::SetScrollFromPosY(box.middle().y - ImGui::GetWindowPos().y, 0.5F);
}

void tell_keyboard(UiContext& ui, const TextEdit& edit) {
    ui.state.edited = edit.id;
    bring_to_sight(ui, edit.rect, edit.id);
    ui.keyboard.show(edit);
}

struct Places {
    Rect label, box, text, error;
};

Places take_places(const Laid& label, const Laid& laid, const Laid& error, float width) {
    const float high = std::max(56.0F, laid.height + 2 * kFieldPad);
    const float below = error.text.empty() ? 0 : error.height + 4;
    const Rect all = take_space(width, label.height + 4 + high + below);
    const Rect box{all.x, all.y + label.height + 4, width, high};
    return {{all.x, all.y, width, label.height},
            box,
            {box.x + kFieldPad, box.middle().y - laid.height / 2, width - 2 * kFieldPad, laid.height},
            {all.x, box.bottom() + 4, width, error.height}};
}

}  // namespace

FieldAnswer text_field(UiContext& ui, const Name& name, const FieldSpec& spec) {
    const Paint& page = ui.paint(Tone::page);
    const std::uint32_t id = id_of(name);
    const float width = room();
    const std::string text = shown_text(spec, id);
    const Laid label = lay_text(ui, name.label, Type::small, width);
    const Laid laid = lay_text(ui, text, Type::body, width - 2 * kFieldPad);
    const Laid hint = lay_text(ui, spec.hint, Type::body, width - 2 * kFieldPad);
    const bool show_hint = text.empty() && editing(id) == nullptr;
    const Laid error = lay_text(ui, spec.error, Type::small, width);
    const Places at = take_places(label, show_hint ? hint : laid, error, width);
    const ImVec2 after = ImGui::GetCursorScreenPos();

    std::vector<char> buffer(spec.max_bytes + 1);
    text.copy(buffer.data(), spec.max_bytes);
    Wish wish = wish_of(ui, laid, at.box, at.text, id, spec.focus);
    FieldAnswer answer;
    if (input(ui, name, spec, at.box, buffer, wish)) answer.text = buffer.data();
    answer.done = ImGui::IsItemDeactivatedAfterEdit();
    const bool active = ImGui::IsItemActive();
    ImGui::GetCurrentWindow()->DC.CursorPos = after;  // as before the input, which lies over what took its space

    const Paint& paint = ui.paint(spec.enabled ? Tone::plate : Tone::off);
    draw_text(ui, label, at.label, {page.text, page.ground});
    draw_plate(at.box, {paint.ground,
                        active               ? ui.theme.witness
                        : spec.error.empty() ? paint.edge
                                             : ui.paint(Tone::danger).edge,
                        active ? 3.0F : Sizes::edge, 0, kNoCuts});
    draw_editing(ui, laid, at.text, id);
    draw_text(ui, show_hint ? hint : laid, at.text,
              {show_hint ? ui.theme.second : paint.text, paint.ground, Align::left, true, id});
    if (!spec.error.empty()) draw_text(ui, error, at.error, {page.text, page.ground});
    log_target(ui, {id, std::string(name.label), text, Role::field, at.box, seen_part(at.box), spec.enabled, active,
                    false, ui.log.drawing});
    if (active) tell_keyboard(ui, {id, at.box, spec.kind, std::string(name.label), text, spec.max_bytes});
    return answer;
}

}  // namespace cotter

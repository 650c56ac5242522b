// See text.h.
#include "app/ui/text.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "app/ui/draw.h"

namespace cotter {

namespace {

float measure(const Face& face, float em, std::string_view text) {
    if (text.empty()) return 0;  // ImGui takes an end of nullptr for a C string
    return face.font->CalcTextSizeA(em * face.ratio, 1e6F, 0, text.data(), text.data() + text.size()).x;
}

// Bytes of the UTF-8 character at the start of `text`.
std::size_t character(std::string_view text) {
    std::size_t n = 1;
    while (n < text.size() && (static_cast<unsigned char>(text[n]) & 0xC0) == 0x80) ++n;
    return n;
}

// Goes through a text once, character by character, as ImGui will when it draws it: the sums are the same to the bit.
class Ruler {
public:
    Ruler(const Face& face, float em) : font_(*face.font), scale_(em * face.ratio / face.font->FontSize) {}

    struct Step {
        std::size_t bytes;
        float advance;
    };
    [[nodiscard]] Step step(std::string_view text) const {
        auto c = static_cast<unsigned int>(static_cast<unsigned char>(text.front()));
        std::size_t bytes = 1;
        if (c >= 0x80) {
            const int read = ImTextCharFromUtf8(&c, text.data(), text.data() + text.size());
            bytes = static_cast<std::size_t>(std::max(1, read));
        }
        return {bytes, c == '\r' ? 0 : font_.GetCharAdvance(static_cast<ImWchar>(c)) * scale_};
    }

private:
    const ImFont& font_;
    float scale_;
};

float widest_word(const Face& face, float em, std::string_view text) {
    const Ruler ruler(face, em);
    float widest = 0;
    float word = 0;
    while (!text.empty()) {
        const auto [bytes, advance] = ruler.step(text);
        word = text.front() == ' ' || text.front() == '\n' ? 0 : word + advance;
        widest = std::max(widest, word);
        text.remove_prefix(bytes);
    }
    return widest;
}

class Breaker {
public:
    Breaker(const Face& face, float em, float width, std::vector<Line>& out)
        : ruler_(face, em), width_(width), out_(out) {}

    // True, with one line, when all of it fits.
    bool whole(std::string_view text) {
        float wide = 0;
        for (std::string_view rest = text; !rest.empty();) {
            const auto [bytes, advance] = ruler_.step(rest);
            wide += advance;
            if (wide > width_ || rest.front() == '\n') return false;
            rest.remove_prefix(bytes);
        }
        out_.push_back({text, wide});
        return true;
    }

    void paragraph(std::string_view text) {
        do {
            const auto [bytes, width] = next_line(text);
            out_.push_back({text.substr(0, bytes), width});
            text.remove_prefix(bytes);
            if (text.starts_with(' ')) text.remove_prefix(1);
        } while (!text.empty());
    }

private:
    // As many words as fit; a single word that does not fit is broken, after one character at least.
    [[nodiscard]] Ruler::Step next_line(std::string_view text) const {
        Ruler::Step words{0, 0};
        Ruler::Step all{0, 0};
        while (all.bytes < text.size()) {
            if (text[all.bytes] == ' ') words = all;
            const auto [bytes, advance] = ruler_.step(text.substr(all.bytes));
            if (all.advance + advance > width_ && (words.bytes > 0 || all.bytes > 0))
                return words.bytes > 0 ? words : all;
            all = {all.bytes + bytes, all.advance + advance};
        }
        return all;
    }

    Ruler ruler_;
    float width_;
    std::vector<Line>& out_;
};

void break_paragraphs(Breaker breaker, std::string_view text) {
    for (auto end = text.find('\n'); end != std::string_view::npos; end = text.find('\n')) {
        breaker.paragraph(text.substr(0, end));
        text.remove_prefix(end + 1);
    }
    breaker.paragraph(text);
}

}  // namespace

Laid lay_text(const UiContext& ui, std::string_view text, Type type, float width) {
    const Face& face = ui.face(type);
    Laid laid{text, {}, type, ui.em(type), 0, 0, 0};
    if (!Breaker(face, laid.em, width, laid.lines).whole(text)) {
        const float widest = widest_word(face, laid.em, text);
        if (widest > width) laid.em = std::max(Sizes::min_text, laid.em * std::max(0.0F, width) / widest * 0.99F);
        laid.em = std::min(laid.em, ui.em(type));
        break_paragraphs({face, laid.em, width, laid.lines}, text);
    }
    laid.pitch = laid.em * face.ratio;
    for (const Line& line : laid.lines) laid.width = std::max(laid.width, line.width);
    laid.height = laid.pitch * static_cast<float>(laid.lines.size());
    return laid;
}

float text_width(const UiContext& ui, std::string_view text, Type type) {
    return text_width(ui, text, type, ui.em(type));
}

float text_width(const UiContext& ui, std::string_view text, Type type, float em) {
    return measure(ui.face(type), em, text);
}

float line_height(const UiContext& ui, Type type) {
    return ui.em(type) * ui.face(type).ratio;
}

void draw_text(UiContext& ui, const Laid& laid, const Rect& box, const TextLook& look) {
    const Face& face = ui.face(laid.type);
    if (laid.text.empty() || seen_part(box).empty()) return;
    const float spare = look.align == Align::left ? 0 : look.align == Align::middle ? 0.5F : 1.0F;
    const float top = box.y + (look.centred ? (box.h - laid.height) / 2 : 0);
    Rect ink_rect{box.right(), top, 0, laid.height};
    float y = top;
    for (const auto& [line, wide] : laid.lines) {
        const float x = box.x + (box.w - wide) * spare;
        if (wide > 0)
            ImGui::GetWindowDrawList()->AddText(face.font, laid.em * face.ratio, {x, y}, ink(look.colour), line.data(),
                                                line.data() + line.size());
        const float right = std::max(ink_rect.right(), x + wide);
        ink_rect.x = std::min(ink_rect.x, x);
        ink_rect.w = right - ink_rect.x;
        y += laid.pitch;
    }
    ink_rect.w = laid.width;  // lines are aligned within the longest one
    ui.log.texts.push_back({std::string(laid.text), ink_rect, box, seen_part(ink_rect), look.colour, look.ground,
                            laid.em, ui.log.drawing, look.target});
}

Point place_of(const UiContext& ui, const Laid& laid, std::size_t byte) {
    const char* spot = laid.text.data() + std::min(byte, laid.text.size());
    for (std::size_t i = laid.lines.size(); i-- > 0;) {
        const std::string_view line = laid.lines[i].text;
        if (spot < line.data()) continue;
        const auto along = std::min(line.size(), static_cast<std::size_t>(spot - line.data()));
        return {text_width(ui, line.substr(0, along), laid.type, laid.em), laid.pitch * static_cast<float>(i)};
    }
    return {};
}

std::size_t byte_at(const UiContext& ui, const Laid& laid, Point place) {
    const auto row = static_cast<std::size_t>(std::max(0.0F, place.y / laid.pitch));
    const std::string_view line = laid.lines[std::min(row, laid.lines.size() - 1)].text;
    std::size_t at = 0;
    while (at < line.size()) {
        const std::size_t next = at + character(line.substr(at));
        const float middle = (text_width(ui, line.substr(0, at), laid.type, laid.em) +
                              text_width(ui, line.substr(0, next), laid.type, laid.em)) /
                             2;
        if (place.x < middle) break;
        at = next;
    }
    return static_cast<std::size_t>(line.data() - laid.text.data()) + at;
}

Rect take_space(float width, float height) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float high = std::ceil(height);  // ImGui's cursor stands on whole units
    ImGui::Dummy({width, high});
    return {at.x, at.y, width, high};
}

float room() {
    return ImGui::GetContentRegionAvail().x;
}

}  // namespace cotter

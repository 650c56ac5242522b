// See table.h. Method: rows are no stops for the Tab key but one table; its keys are owned for the frame, so that ImGui
// does not move its own focus by them.
#include "app/ui/table.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "app/ui/draw.h"
#include "app/ui/grade_mark.h"
#include "app/ui/press.h"
#include "app/ui/text.h"

namespace cotter {

namespace {

constexpr float kBarWide = 14, kCellPad = 8, kMarkSide = 20, kMarkGap = 6;
constexpr float kMarkWide = 12;  // at the right end of a row, for the bars of one that is marked
constexpr float kWheelRows = 3, kArrow = 16;
constexpr std::size_t kMeasured = 100;  // rows that tell how wide the columns' texts are

// `text`, or as much of it as fits with "…" behind.
std::string fitting(const UiContext& ui, const std::string& text, Type type, float width) {
    if (text_width(ui, text, type) <= width) return text;
    std::size_t low = 0, high = text.size();
    const auto cut = [&](std::size_t bytes) {
        while (bytes > 0 && (static_cast<unsigned char>(text[bytes]) & 0xC0) == 0x80) --bytes;
        return text.substr(0, bytes) + "…";
    };
    while (low < high) {
        const std::size_t middle = (low + high + 1) / 2;
        if (text_width(ui, cut(middle), type) <= width)
            low = middle;
        else
            high = middle - 1;
    }
    return low == 0 ? std::string() : cut(low);
}

void draw_words(UiContext& ui, const std::string& text, Type type, const Rect& box, const TextLook& look) {
    const std::string shown = fitting(ui, text, type, box.w);
    if (shown.empty()) return;
    const Laid laid = lay_text(ui, shown, type, 1e6F);
    draw_text(ui, laid, box, look);
}

std::optional<Sign> mark_of(const TableCell& cell) {
    return cell.grade ? std::optional(sign_of(*cell.grade)) : cell.sign;
}

class Drawn {
public:
    Drawn(UiContext& ui, const TableSpec& spec, TableModel& model, const Rect& rect)
        : ui_(ui),
          spec_(spec),
          model_(model),
          head_{rect.x, rect.y, rect.w, kTableHead},
          body_{rect.x, rect.y + kTableHead, rect.w, whole_rows(rect.h) - kTableHead} {
        if (model_.rows() != spec.rows.size()) model_.resize(spec.rows.size());
        if (model_.wants_measure(ui_.faces.baked)) measure();
        widths_ = column_widths(spec.columns, rect.w - kBarWide - kMarkWide, model_.holds());
        model_.set_page(body_.h / kTableRow);
    }

    TableAnswer draw() {
        const IdScope scope(spec_.key);
        draw_fill({head_.x, head_.y, head_.w, head_.h + body_.h}, ui_.paint(Tone::plate).ground);
        draw_head();
        take_keys();
        scroll();
        ImGui::PushClipRect({body_.x, body_.y}, {body_.right(), body_.bottom()}, true);
        draw_rows();
        ImGui::PopClipRect();
        draw_bar();
        const Rgb edge = ui_.paint(Tone::plate).edge;
        draw_line({head_.x, head_.bottom()}, {head_.right(), head_.bottom()}, edge);
        draw_line({body_.x, body_.bottom()}, {body_.right(), body_.bottom()}, edge);
        return answer_;
    }

private:
    void measure() {
        std::vector<float> holds;
        for (const TableColumn& c : spec_.columns)
            holds.push_back(text_width(ui_, c.title, Type::small) + (c.sorts ? kArrow : 0));
        for (std::size_t i = 0; i < std::min(kMeasured, spec_.rows.size()); ++i) {
            const TableRow* row = spec_.rows.row(i);
            for (std::size_t c = 0; row != nullptr && c < row->cells.size() && c < holds.size(); ++c)
                holds[c] = std::max(holds[c], text_width(ui_, row->cells[c].text, Type::small) +
                                                  (mark_of(row->cells[c]) ? kMarkSide + kMarkGap : 0));
        }
        for (float& hold : holds) hold = std::ceil(hold) + 2 * kCellPad;
        model_.measured(holds, ui_.faces.baked);
    }

    void draw_head() {
        draw_fill(head_, ui_.paint(Tone::bar).ground);
        float x = head_.x;
        for (std::size_t i = 0; i < spec_.columns.size(); ++i) {
            if (widths_[i] <= 0) continue;
            draw_head_cell(i, {x, head_.y, widths_[i], head_.h});
            x += widths_[i];
        }
    }

    void draw_head_cell(std::size_t i, const Rect& cell) {
        const TableColumn& column = spec_.columns[i];
        const Paint& bar = ui_.paint(Tone::bar);
        const bool sorted = spec_.sort && spec_.sort->column == i;
        std::uint32_t target = 0;
        if (column.sorts) {
            const Rect place{cell.x + 1, cell.y, cell.w - 2, cell.h - 2};
            const std::string way = !sorted ? "" : spec_.sort->falling ? "falling" : "rising";
            const Press press =
                press_area(ui_, {column.title, "head " + column.key}, place, {Role::button, true, sorted, false, way});
            target = press.id;
            if (press.hovered || press.held) draw_fill(place, ui_.paint(Tone::chosen).ground);
            if (press.focused) draw_ring(place, ui_.theme.witness);
            if (press.tapped) answer_.sort = TableSort{i, sorted && !spec_.sort->falling};
        }
        const float arrow = sorted ? kArrow : 0;
        const Rect box{cell.x + kCellPad, cell.y, std::max(1.0F, cell.w - 2 * kCellPad - arrow), cell.h - 2};
        draw_words(ui_, column.title, Type::small, box,
                   {bar.text, bar.ground, column.right ? Align::right : Align::left, true, target});
        if (sorted) draw_arrow({cell.right() - kCellPad - 6, cell.middle().y}, spec_.sort->falling);
    }

    // A peg that points the way the column grows.
    void draw_arrow(Point at, bool falling) {
        const float way = falling ? 5.0F : -5.0F;
        ImGui::GetWindowDrawList()->AddTriangleFilled({at.x - 6, at.y - way}, {at.x + 6, at.y - way},
                                                      {at.x, at.y + way}, ink(ui_.theme.witness));
    }

    void take_keys() {
        if (!spec_.keys || !ui_.top_layer()) return;
        constexpr std::array kKeys{ImGuiKey_UpArrow,  ImGuiKey_DownArrow, ImGuiKey_PageUp,
                                   ImGuiKey_PageDown, ImGuiKey_Home,      ImGuiKey_End};
        const bool editing = ui_.state.edited_before != 0 || ui_.state.edited != 0;
        const ImGuiIO& io = ImGui::GetIO();
        const std::uint32_t id = ImGui::GetID("keys");
        for (std::size_t i = 0; i < kKeys.size(); ++i) {
            if (editing && i >= 4) break;  // Home and End are the field's
            ImGui::SetKeyOwner(kKeys[i], id);
            if (ImGui::IsKeyPressed(kKeys[i], true))
                model_.press(static_cast<TableKey>(i), io.KeyShift && spec_.marks && !editing, io.KeyCtrl);
        }
        const bool elsewhere =
            !editing && ImGui::GetCurrentContext()->NavId != 0 && !ImGui::GetCurrentContext()->NavDisableHighlight;
        if (elsewhere || spec_.rows.size() == 0) return;
        if (ImGui::IsKeyPressed(ImGuiKey_Enter, false)) answer_.opened = model_.cursor();
        if (editing || !spec_.marks) return;
        if (ImGui::IsKeyPressed(ImGuiKey_Space, false)) model_.press(TableKey::space, false, false);
        if (io.KeyCtrl && ImGui::IsKeyPressed(ImGuiKey_A, false)) model_.press(TableKey::all, false, false);
    }

    void scroll() {
        const std::uint32_t id = ImGui::GetID("rows");
        const float end = std::max(0.0F, static_cast<float>(model_.rows()) * kTableRow - body_.h);
        const ImGuiIO& io = ImGui::GetIO();
        if (ui_.top_layer() && body_.contains({io.MousePos.x, io.MousePos.y}) && io.MouseWheel != 0)
            model_.scroll_to(model_.top() - io.MouseWheel * kWheelRows);
        if (ui_.state.drag_owner == id)
            for (const Gesture& g : ui_.gestures)
                if ((g.kind == GestureKind::drag || g.kind == GestureKind::fling) && !g.mouse)
                    model_.scroll_to(model_.top() - g.by.y / kTableRow);
        ui_.log.scrolls.push_back(
            {id, body_, seen_part(body_), false, false, model_.top() * kTableRow, end, ui_.log.drawing});
    }

    void draw_rows() {
        const TableModel::Span span = model_.seen();
        if (model_.rows() == 0 && !spec_.empty.empty()) {
            const Paint& plate = ui_.paint(Tone::plate);
            const Laid laid = lay_text(ui_, spec_.empty, Type::body, body_.w - 4 * Sizes::pad);
            draw_text(ui_, laid,
                      {body_.x + 2 * Sizes::pad, body_.y + Sizes::pad, body_.w - 4 * Sizes::pad, laid.height},
                      {ui_.theme.second, plate.ground});
        }
        std::size_t missing_from = span.to, missing_to = span.from;
        for (std::size_t i = span.from; i < span.to; ++i) {
            const float y = body_.y + (static_cast<float>(i) - model_.top()) * kTableRow;
            const Rect at{body_.x, y, body_.w - kBarWide, kTableRow};
            if (const TableRow* row = spec_.rows.row(i)) {
                draw_row(i, *row, at);
                continue;
            }
            missing_from = std::min(missing_from, i);
            missing_to = i + 1;
        }
        if (missing_from < missing_to) answer_.wanted = {missing_from, missing_to};
    }

    void draw_row(std::size_t i, const TableRow& row, const Rect& at) {
        const bool chosen = model_.chosen(i) && spec_.marks;
        const Rect place{at.x + 1, at.y + 1, at.w - 2, at.h - 2};
        ImGui::PushItemFlag(ImGuiItemFlags_NoNav, true);
        const Press press = press_area(ui_, {row.label, "row " + row.key}, place, {Role::row, true, chosen, false, {}});
        ImGui::PopItemFlag();
        const ImGuiIO& io = ImGui::GetIO();
        if (press.tapped) {
            model_.click(i, io.KeyShift && spec_.marks, io.KeyCtrl && spec_.marks);
            if (io.MouseClickedLastCount[0] == 2) answer_.opened = i;
        }
        const Paint& paint = ui_.paint(chosen ? Tone::chosen : Tone::plate);
        if (chosen) draw_fill(at, paint.ground);
        draw_line({at.x, at.bottom()}, {at.right(), at.bottom()}, ui_.paint(Tone::off).ground, 1);
        draw_cells(row, at, paint, press.id);
        if (chosen) draw_witness({at.x + 1, at.y + 2, 5, at.h - 4}, ui_.theme.witness);
        if (row.marked) draw_hatch({at.right() - 12, at.y + 3, 10, at.h - 6}, ui_.paint(Tone::danger).text);
        if (i == model_.cursor()) draw_cursor(at);
        if (press.hovered && i != model_.cursor())
            draw_line({at.x, at.bottom() - 1}, {at.right(), at.bottom() - 1}, ui_.paint(Tone::strong).ground);
    }

    void draw_cursor(const Rect& at) {
        const Rgb colour = ui_.paint(Tone::strong).ground;
        draw_line({at.x, at.y + 1}, {at.right(), at.y + 1}, colour);
        draw_line({at.x, at.bottom() - 1}, {at.right(), at.bottom() - 1}, colour);
    }

    void draw_cells(const TableRow& row, const Rect& at, const Paint& paint, std::uint32_t target) {
        float x = at.x;
        for (std::size_t c = 0; c < row.cells.size() && c < widths_.size(); ++c) {
            if (widths_[c] <= 0) continue;
            const TableCell& cell = row.cells[c];
            Rect box{x + kCellPad, at.y, widths_[c] - 2 * kCellPad, at.h};
            x += widths_[c];
            if (const auto mark = mark_of(cell)) {
                draw_sign(*mark, {box.x, box.middle().y - kMarkSide / 2, kMarkSide, kMarkSide}, paint.text);
                box.x += kMarkSide + kMarkGap;
                box.w -= kMarkSide + kMarkGap;
            }
            if (box.w < 8) continue;
            const Align align = spec_.columns[c].right ? Align::right : Align::left;
            draw_words(ui_, cell.text, Type::small, box, {paint.text, paint.ground, align, true, target});
        }
    }

    // Only for the mouse: the keys and the wheel do the same.
    void draw_bar() {
        const float all = static_cast<float>(model_.rows()) * kTableRow;
        const Rect track{body_.right() - kBarWide, body_.y, kBarWide, body_.h};
        draw_fill(track, ui_.paint(Tone::page).ground);
        if (all <= body_.h) return;
        const float thumb = std::max(32.0F, body_.h * body_.h / all);
        const float end = static_cast<float>(model_.rows()) - body_.h / kTableRow;
        ImGui::SetCursorScreenPos({track.x, track.y});
        ImGui::PushItemFlag(ImGuiItemFlags_NoNav, true);
        ImGui::InvisibleButton("bar", {track.w, track.h});
        ImGui::PopItemFlag();
        if (ImGui::IsItemActive() && ui_.top_layer()) {
            const float at = (ImGui::GetIO().MousePos.y - track.y - thumb / 2) / (track.h - thumb);
            model_.scroll_to(std::round(std::clamp(at, 0.0F, 1.0F) * end));
        }
        const float from = (track.h - thumb) * std::clamp(model_.top() / end, 0.0F, 1.0F);
        draw_fill({track.x + 3, track.y + from, track.w - 5, thumb}, ui_.paint(Tone::plate).edge);
    }

    UiContext& ui_;
    const TableSpec& spec_;
    TableModel& model_;
    Rect head_, body_;
    std::vector<float> widths_;
    TableAnswer answer_;
};

}  // namespace

TableAnswer table(UiContext& ui, const TableSpec& spec, TableModel& model, const Rect& rect) {
    return Drawn(ui, spec, model, rect).draw();
}

std::optional<char> typed_key(const UiContext& ui) {
    const ImGuiIO& io = ImGui::GetIO();
    if (!ui.top_layer() || ui.state.edited_before != 0 || io.KeyCtrl || io.KeyAlt || io.KeySuper) return std::nullopt;
    for (int i = 0; i < 26; ++i)
        if (ImGui::IsKeyPressed(static_cast<ImGuiKey>(ImGuiKey_A + i), false)) return static_cast<char>('a' + i);
    for (int i = 0; i < 10; ++i)
        if (ImGui::IsKeyPressed(static_cast<ImGuiKey>(ImGuiKey_0 + i), false)) return static_cast<char>('0' + i);
    return std::nullopt;
}

float whole_rows(float height) {
    return kTableHead + std::max(1.0F, std::floor((height - kTableHead) / kTableRow)) * kTableRow;
}

float table_height(std::size_t rows, std::size_t most) {
    return kTableHead +
           static_cast<float>(std::clamp<std::size_t>(rows, 2, std::max<std::size_t>(2, most))) * kTableRow;
}

}  // namespace cotter

// See frame.h: rail, header and notice.
#include "app/desk/frame.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <array>

#include <fmt/format.h>

#include "app/desk/help.h"
#include "app/ui/press.h"
#include "app/ui/text.h"
#include "app/ui/widgets.h"
#include "app/views/chrome.h"

namespace cotter::desk {

namespace {

constexpr float kRail = 196, kRailKey = 44;

struct RailKey {
    Page page;
    const char* label;
    Icon icon;
};
constexpr std::array kRailKeys{
    RailKey{Page::trailers, "Trailers", Icon::menu},       RailKey{Page::jobs, "Register", Icon::search},
    RailKey{Page::due, "What is due", Icon::check},        RailKey{Page::orders, "What to order", Icon::plus},
    RailKey{Page::failures, "What fails", Icon::open_pin}, RailKey{Page::take_in, "Take packets in", Icon::sheet},
    RailKey{Page::receipts, "Receipts", Icon::pin}};

void rail_key(UiContext& ui, const RailKey& key, bool chosen, const Rect& at, Commands& out) {
    const Press press = press_area(ui, {key.label, fmt::format("rail {}", name_of(key.page))}, at,
                                   {Role::button, true, chosen, false, {}});
    const Paint& paint = ui.paint(chosen ? Tone::chosen : Tone::bar);
    if (chosen || press.hovered) draw_fill(at, ui.paint(Tone::chosen).ground);
    if (chosen) draw_witness({at.x + 2, at.y + 3, Sizes::stripe, at.h - 6}, ui.theme.witness);
    if (press.focused) draw_ring(at, ui.theme.witness);
    draw_icon(key.icon, {at.x + 14, at.y, 20, at.h}, paint.text);
    const std::string words = key.label;
    const Laid laid = lay_text(ui, words, chosen ? Type::bold : Type::body, at.w - 44);
    const Rgb ground = chosen || press.hovered ? ui.paint(Tone::chosen).ground : ui.paint(Tone::bar).ground;
    draw_text(ui, laid, {at.x + 42, at.y, at.w - 44, at.h}, {paint.text, ground, Align::left, true, press.id});
    if (press.tapped) out.push_back(GoTo{{key.page, {}, {}}});
}

void draw_rail(UiContext& ui, const DeskSession& session, const Rect& rail, Commands& out) {
    const Paint& bar = ui.paint(Tone::bar);
    draw_fill(rail, bar.ground);
    draw_line({rail.right(), rail.y}, {rail.right(), rail.bottom()}, bar.edge);
    const IdScope scope("rail");
    Rect at{rail.x + 6, rail.y + 12, rail.w - 12, kRailKey};
    for (const RailKey& key : kRailKeys) {
        rail_key(ui, key, session.bottom() == key.page, at, out);
        at.y += kRailKey + 4;
    }
    const ledger::Counts& counts = session.counts();
    const auto count = [](std::int64_t n, const char* one, const char* many) {
        return count_words(static_cast<std::size_t>(n), one, many) + "\n";
    };
    std::string words = count(counts.trailers, "trailer", "trailers") + count(counts.jobs, "job", "jobs") +
                        count(counts.packets, "packet", "packets");
    if (session.doubtful() > 0) words += fmt::format("{} doubtful\n", session.doubtful());
    if (!session.reached()) words = "The ledger cannot be read\n";
    if (session.take_in().running) words += "taking in…";
    if (words.ends_with('\n')) words.pop_back();
    const Laid laid = lay_text(ui, words, Type::small, rail.w - 32);
    draw_text(ui, laid, {rail.x + 20, rail.bottom() - laid.height - 16, rail.w - 32, laid.height},
              {ui.theme.second, bar.ground, Align::left, false, 0});
}

// One line at the bottom; a click takes it away.
Rect draw_notice(UiContext& ui, const Notice& notice, const Rect& area, Commands& out) {
    if (notice.text.empty()) return area;
    const Paint& paint = ui.paint(notice.bad ? Tone::caution : Tone::strong);
    const float key = 96;
    const Laid laid = lay_text(ui, notice.text, Type::body, area.w - key - 4 * Sizes::pad);
    const float height = std::max(56.0F, laid.height + 16);
    const Rect strip{area.x, area.bottom() - height, area.w, height};
    draw_fill(strip, paint.ground);
    if (notice.bad) draw_hatch({strip.x + 2, strip.y + 2, 12, strip.h - 4}, paint.text);
    draw_text(ui, laid, {strip.x + 2 * Sizes::pad, strip.y + 8, area.w - key - 4 * Sizes::pad, height - 16},
              {paint.text, paint.ground});
    if (button_at(ui, {"Seen", "seen"}, {}, {strip.right() - key - Sizes::pad, strip.middle().y - 20, key, 40}))
        out.push_back(DismissNotice{});
    return {area.x, area.y, area.w, area.h - height};
}

void draw_help(UiContext& ui, Page page, DeskState& state) {
    const SheetSpec spec{"help", "Help", {{{"Understood", "understood"}, Tone::strong, Icon::check, true, true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        for (const std::string_view line : help_lines(page)) paragraph(ui, line);
    });
    if (answer.closed || answer.action) state.help = false;
}

}  // namespace

void desk_frame(UiContext& ui, const DeskSession& session, const FrameSpec& spec, DeskState& state, Commands& out,
                const std::function<void(const Rect&)>& body) {
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize({ui.width, ui.height});
    ImGui::Begin("###screen", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoBringToFrontOnFocus |
                     ImGuiWindowFlags_NoScrollWithMouse);
    sharpen(ui);
    HeaderSpec header;
    header.title = spec.title;
    header.under = spec.under;
    header.back = !session.at_bottom();
    header.help = true;
    const HeaderAnswer answer = header_bar(ui, header, {0, 0, ui.width, ui.height});
    if (answer.tap == ScreenTap::back) out.push_back(GoBack{});
    if (answer.tap == ScreenTap::help) state.help = true;
    draw_rail(ui, session, {0, answer.rest.y, kRail, answer.rest.h}, out);
    const Rect rest{kRail + 2, answer.rest.y, ui.width - kRail - 2, answer.rest.h};
    const Rect left = draw_notice(ui, session.notice(), rest, out);
    body(grown(left, -Sizes::pad));
    ImGui::End();
    if (state.help) draw_help(ui, session.route().page, state);
}

float flow(const Rect& area, const Body& body) {
    ImGuiWindow* window = ImGui::GetCurrentWindow();
    const float right = window->ContentRegionRect.Max.x;
    const float work = window->WorkRect.Max.x;
    ImGui::SetCursorScreenPos({area.x, area.y});
    window->ContentRegionRect.Max.x = area.right();
    window->WorkRect.Max.x = area.right();
    ImGui::BeginGroup();
    body();
    ImGui::EndGroup();
    window->ContentRegionRect.Max.x = right;
    window->WorkRect.Max.x = work;
    return ImGui::GetCursorScreenPos().y;
}

Rect below(const Rect& area, float y) {
    return {area.x, y, area.w, std::max(0.0F, area.bottom() - y)};
}

}  // namespace cotter::desk

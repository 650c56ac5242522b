// See hand_over_screen.h.
#include "app/screens/hand_over_screen.h"

#include <fmt/format.h>

#include "app/screens/common.h"
#include "app/ui/choice.h"
#include "app/ui/widgets.h"
#include "core/judge/towing_sign.h"

namespace cotter {

namespace {

constexpr const char* kStatement =
    "The record shows what was seen, measured and done at this visit. It certifies nothing: the makers' manuals, local "
    "codes and a qualified inspector prevail.";

// The first lines of what a place lacks: its page has the rest.
std::string first_lines(const std::string& lacks) {
    constexpr std::size_t kMost = 3;
    std::size_t lines = 0, end = std::string::npos;
    for (std::size_t at = 0; at != std::string::npos; at = lacks.find('\n', at + 1))
        if (lines++ == kMost) end = at;
    return end == std::string::npos ? lacks : fmt::format("{}\nand {} more", lacks.substr(0, end), lines - kMost);
}

void draw_gaps(UiContext& ui, const HandOverView& view, Commands& out) {
    if (view.gaps.empty()) {
        heading(ui, view.signed_off ? "Nothing essential is open" : "Ready to sign");
        return paragraph(ui, view.not_covered.empty() ? "Every place was looked at, and nothing is unknown."
                                                      : "Not covered at this visit: " + view.not_covered + ".");
    }
    heading(ui, "Still open");
    for (const Gap& gap : view.gaps) {
        RowSpec spec;
        spec.under = first_lines(gap.lacks);
        spec.grade = gap.grade;
        spec.icon = gap.grade ? Icon::none : Icon::open_pin;
        if (row(ui, {gap.what, gap.key}, spec)) out.push_back(GoTo{gap.route});
    }
}

void draw_rechecks(UiContext& ui, const HandOverView& view) {
    if (view.rechecks.empty()) return;
    heading(ui, "Due next");
    const std::string usual = common_source(view.rechecks);
    paragraph(ui,
              "Tell the driver in writing; the packet carries it as a calendar. Where no source stands: " + usual + ".",
              true);
    for (const RecheckLine& r : view.rechecks) {
        fact(ui, r.title, r.when);
        const std::string source = r.source == usual ? std::string() : upper_first(r.source) + ".";
        const std::string under = r.places.empty() ? source : r.places + ". " + source;
        if (!under.empty()) paragraph(ui, under, true);
        space(8);
    }
}

void draw_packet(UiContext& ui, const HandOverView& view, Commands& out) {
    heading(ui, "Packet");
    if (!view.doing.empty()) {
        if (progress(ui, "work", {view.doing, view.detail, -1, false})) out.push_back(CancelWork{});
        return;
    }
    if (!view.packet_path.empty()) {
        paragraph(ui, view.packet_line + ": " + (view.hands_out ? base_name(view.packet_path) : view.packet_path));
        paragraph(ui, "It was read back and found valid. Anyone can check it without this program.", true);
    }
    for (const std::string& made : view.packets) paragraph(ui, made);
    const std::string what = "One file with the report, all photos, the record and its signature.";
    if (view.packets.empty()) paragraph(ui, view.hands_out ? what : what + " It goes to " + view.folder + ".", true);
}

// Nothing goes out under nobody's name.
void draw_naming(UiContext& ui, const HandOverView& view, HandOverState& state, Commands& out) {
    const SheetSpec spec{"naming",
                         "Whose work is it?",
                         {{{"Save the name", "save name"}, Tone::strong, Icon::check, !state.name.empty(), true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        const FieldAnswer name =
            text_field(ui, {"Name of the technician", "technician name"}, {state.name, "first and last name", ""});
        if (name.text) state.name = *name.text;
        paragraph(ui, "The packet names its technician. Your other jobs that have no name yet get it too.");
    });
    if (answer.action && !state.name.empty()) {
        out.push_back(NameTechnician{state.name});
        state.signing = state.ask == HandOverState::Ask::name_to_sign;
        // After sign-off the reason for the change comes first.
        if (state.ask == HandOverState::Ask::name_to_pack && !view.signed_off) out.push_back(ExportPacket{});
    }
    if (answer.closed || answer.action) state.ask = HandOverState::Ask::none;
}

void draw_signing(UiContext& ui, const HandOverView& view, HandOverState& state, Commands& out) {
    const bool read = view.acknowledge.empty() || state.acknowledged == view.acknowledge;
    const SheetSpec spec{"sign off",
                         "Sign off",
                         {{{"Not yet", "not yet"}, Tone::quiet, Icon::none, true, false},
                          {{"Sign", "sign now"}, Tone::strong, Icon::pin, read && !state.name.empty(), true}}};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        const FieldAnswer name = text_field(ui, {"Handed over by", "signer"}, {state.name, "your name", ""});
        if (name.text) state.name = *name.text;
        if (!view.acknowledge.empty()) {
            remark(ui, "May it be towed?", view.acknowledge);
            if (toggle(ui, {"I read this and told the customer", "acknowledge"}, read, "It will stand on page 1."))
                state.acknowledged = read ? std::string() : view.acknowledge;
        }
        paragraph(ui, kStatement);
        remark(ui, "From here on nothing is overwritten",
               "A later change keeps the old value beside the new one, with your reason.");
    });
    if (answer.action == 1u) out.push_back(SignJob{state.name, kStatement, view.acknowledge});
    if (answer.closed || answer.action) state.signing = false;
}

}  // namespace

void draw_hand_over(UiContext& ui, const HandOverView& view, HandOverState& state, Commands& out) {
    const bool busy = !view.doing.empty();
    const bool send = view.hands_out && !view.packet_path.empty() && !busy;
    std::vector<ActionSpec> actions{
        {{"Sign off", "sign"}, view.signed_off ? Tone::quiet : Tone::strong, Icon::pin, !view.signed_off, false},
        {{"Make the packet", "packet"}, Tone::strong, Icon::sheet, !busy, true}};
    if (send) actions.back() = {{"Send the packet", "send"}, Tone::strong, Icon::next, true, true};
    const ScreenSpec spec = screen_of(view.chrome, "hand over", std::move(actions));
    const ScreenAnswer answer = screen(ui, spec, [&] {
        const bool asked = busy || !view.packet_path.empty();  // what was just asked for comes first
        if (asked) draw_packet(ui, view, out);
        if (!view.only_here.empty()) remark(ui, "Nowhere else yet", view.only_here);
        if (view.signed_off) fact(ui, "Signed off", view.signed_by);
        RowSpec towing;
        towing.answer = sign_of(view.answer);
        if (row(ui, {view.towing, "may it be towed"}, towing)) out.push_back(GoTo{{Screen::summary, {}, {}}});
        draw_gaps(ui, view, out);
        draw_rechecks(ui, view);
        if (!view.told.empty()) heading(ui, "The report says plainly");
        for (const std::string& line : view.told) paragraph(ui, line);
        if (!asked) draw_packet(ui, view, out);
    });
    answer_chrome(answer, out);
    if ((answer.tapped(0) || answer.tapped(1)) && state.name.empty()) state.name = view.technician;
    if (answer.tapped(0)) {
        state.ask = view.unnamed ? HandOverState::Ask::name_to_sign : HandOverState::Ask::none;
        state.signing = !view.unnamed;
    }
    if (answer.tapped(1) && send) out.push_back(HandOut{view.packet_path});
    if (answer.tapped(1) && !send && view.unnamed) state.ask = HandOverState::Ask::name_to_pack;
    if (answer.tapped(1) && !send && !view.unnamed) out.push_back(ExportPacket{});
    if (state.ask != HandOverState::Ask::none) return draw_naming(ui, view, state, out);
    if (state.signing) draw_signing(ui, view, state, out);
}

}  // namespace cotter

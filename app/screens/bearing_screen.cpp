// See bearing_screen.h.
#include "app/screens/bearing_screen.h"

#include <array>

#include "app/screens/common.h"
#include "app/screens/words_field.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void put(BearingSetting setting, Commands& out) {
    out.push_back(PutBearing{std::move(setting), std::nullopt});
}

void draw_style(UiContext& ui, const BearingView& view, BearingState& state, Commands& out) {
    heading(ui, "Nut");
    std::vector<ChipSpec> specs;
    for (std::size_t i = 0; i < names(NutStyle{}).size(); ++i)
        specs.push_back({name_of(static_cast<NutStyle>(i)), view.setting.style == static_cast<NutStyle>(i), true, {}});
    if (const auto tapped = chips(ui, "style", specs)) {
        BearingSetting setting = view.setting;
        setting.style = static_cast<NutStyle>(*tapped);
        put(std::move(setting), out);
    }
    RowSpec spec;
    spec.under = "reference only; the manufacturer's sheet overrides them";
    if (!view.methods.empty() && row(ui, {"Typical procedures for this nut", "methods"}, spec))
        state.ask = BearingAsk::methods;
}

void draw_value(UiContext& ui, std::string_view label, const std::string& value, BearingAsk ask, BearingState& state) {
    RowSpec spec;
    spec.value = value.empty() ? std::string_view("not entered") : std::string_view(value);
    if (!row(ui, {label}, spec)) return;
    state.ask = ask;
    state.pad.reset();
}

std::string text_of(const std::optional<Amount>& amount) {
    return amount ? amount->text() : std::string();
}

void draw_figures(UiContext& ui, const BearingView& view, BearingState& state, Commands& out) {
    const BearingSetting& s = view.setting;
    heading(ui, "The maker's figures");
    std::vector<ChipSpec> specs;
    for (const std::string& source : view.sources) specs.push_back({source, source == s.source, true, {}});
    const auto take = [&](const std::string& source) {
        BearingSetting setting = s;
        setting.source = source;
        put(std::move(setting), out);
    };
    const bool only_this = view.sources.size() == 1 && view.sources.front() == s.source;
    if (!only_this)
        if (const auto tapped = chips(ui, "sources", specs)) take(view.sources[*tapped]);
    words_field(ui, {"Document and page", "bearing source"}, {s.source, "axle maker's manual, page 12", ""},
                view.drafts, take, out);
    if (s.style != NutStyle::preset) {
        draw_value(ui, "Minimum end play", text_of(s.play_min), BearingAsk::least, state);
        draw_value(ui, "Maximum end play", text_of(s.play_max), BearingAsk::most, state);
        const std::string threads = s.threads_per_inch ? s.threads_per_inch->text() : std::string();
        draw_value(ui, "Threads per inch", threads, BearingAsk::threads, state);
        const std::string positions = s.lock_positions > 0 ? std::to_string(s.lock_positions) : std::string();
        draw_value(ui, "Lock positions in one turn", positions, BearingAsk::positions, state);
        draw_value(ui, "Seating torque", text_of(s.seated), BearingAsk::seated, state);
    }
    if (s.style == NutStyle::preset || s.style == NutStyle::double_nut)
        draw_value(ui, s.style == NutStyle::preset ? "Nut torque (preset bearing)" : "Outer nut", text_of(s.locked),
                   BearingAsk::locked, state);
    if (!view.doubt) return;
    remark(ui, "Look at the unit", view.doubt->words);
    if (!view.doubt->suggestion || !wide_button(ui, {"It was " + view.doubt->suggestion->text(), "unit meant"})) return;
    BearingSetting setting = s;
    setting.seated = view.doubt->suggestion;
    put(std::move(setting), out);
}

void draw_back_off(UiContext& ui, const BearingView& view, Commands& out) {
    if (view.setting.style == NutStyle::preset) return;
    constexpr std::array<std::string_view, 6> kTurns{"1/8", "1/6", "1/4", "3/8", "1/2", "1"};
    heading(ui, "Back off (turns)");
    std::vector<ChipSpec> specs;
    for (const std::string_view turns : kTurns)
        specs.push_back({turns, view.setting.back_off && view.setting.back_off->text() == turns, true, {}});
    const auto tapped = chips(ui, "back off", specs);
    if (!tapped) return;
    BearingSetting setting = view.setting;
    if (const auto number = Number::parse(kTurns[*tapped])) setting.back_off = *number;
    put(std::move(setting), out);
}

void draw_positions(UiContext& ui, const BearingView& view, Commands& out) {
    if (view.setting.style == NutStyle::preset) return;
    heading(ui, "Where the nut stands");
    paragraph(ui, upper_first(view.stands) + ". End play: " + view.play_words + ".");
    paragraph(ui, "Back-off is not end play: the dial is the only proof.", true);
    if (!view.no_options.empty()) return paragraph(ui, view.no_options, true);
    for (const LockOption& option : view.options) {
        RowSpec spec;
        spec.chosen = option.steps == 0;
        spec.enabled = option.allowed && option.steps != 0;
        spec.leads_on = spec.enabled;
        spec.value = option.in_range ? "in range" : "";
        const std::string words = option.steps == 0 ? "Here" : upper_first(option.words);
        if (row(ui, {words, "option " + std::to_string(option.steps)}, spec))
            put(moved(view.setting, option.steps), out);
    }
}

void draw_lock(UiContext& ui, const BearingView& view, Commands& out) {
    heading(ui, "Lock");
    if (toggle(ui, {"A new lock was fitted", "new lock"}, view.setting.new_lock)) {
        BearingSetting setting = view.setting;
        setting.new_lock = !setting.new_lock;
        put(std::move(setting), out);
    }
    std::vector<TileSpec> specs;
    for (const LockShot& s : view.shots)
        specs.push_back(
            {{s.label, s.shot}, s.chosen ? "shows the lock" : "", s.picture, {}, Icon::none, s.chosen, true});
    if (!specs.empty()) paragraph(ui, "Tap the photo that shows the lock.", true);
    if (const auto tapped = specs.empty() ? std::nullopt : tiles(ui, "lock shots", specs, 112)) {
        BearingSetting setting = view.setting;
        if (const auto id = Uuid::parse(view.shots[*tapped].shot)) setting.lock_shot = Id<Shot>{*id};
        put(std::move(setting), out);
    }
}

void draw_remarks(UiContext& ui, const BearingView& view) {
    heading(ui, view.proved ? "Proved" : "Not proved yet");
    if (view.remarks.empty())
        paragraph(ui, "The dial reading stands within the maker's range, and a photo shows the lock.");
    for (const BearingRemark& r : view.remarks) paragraph(ui, upper_first(r.words) + ".", !r.blocks);
}

// The dial reading goes in together with the try it belongs to.
void draw_dial(UiContext& ui, const BearingView& view, BearingState& state, Commands& out) {
    Commands mine;
    draw_reading(ui, *view.entry, view.drafts, state.reading, mine);
    for (Command& c : mine) {
        if (const PutReading* reading = std::get_if<PutReading>(&c))
            out.push_back(PutBearing{view.setting, reading->reading});
        else
            out.append(std::move(c));
    }
}

}  // namespace

void draw_bearing(UiContext& ui, const BearingView& view, BearingState& state, Commands& out) {
    const bool dial = view.setting.style != NutStyle::preset;
    const std::string key = "bearing " + view.place.text();
    const ScreenSpec spec = screen_of(view.chrome, key,
                                      {{{"Photo of the lock", "lock photo"}, Tone::quiet, Icon::camera, true, false},
                                       {{"Dial reading", "dial"}, Tone::strong, Icon::none, dial, true}});
    const ScreenAnswer answer = screen(ui, spec, [&] {
        draw_style(ui, view, state, out);
        draw_figures(ui, view, state, out);
        draw_back_off(ui, view, out);
        draw_positions(ui, view, out);
        draw_lock(ui, view, out);
        draw_remarks(ui, view);
    });
    answer_chrome(answer, out);
    if (answer.tapped(0)) out.push_back(GoTo{{Screen::intake, view.place, std::string(name_of(Slot::spindle))}});
    if (answer.tapped(1)) {
        Drafts drafts = view.drafts;
        drafts.reading = view.dial;
        out.push_back(KeepDrafts{std::move(drafts)});
    }
    if (view.entry)
        draw_dial(ui, view, state, out);
    else if (state.ask != BearingAsk::none)
        draw_bearing_sheet(ui, view, state, out);
}

}  // namespace cotter

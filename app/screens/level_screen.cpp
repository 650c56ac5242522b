// See level_screen.h.
#include "app/screens/level_screen.h"

#include <array>
#include <cmath>

#include "app/screens/common.h"
#include "app/screens/words_field.h"
#include "app/ui/keypad.h"
#include "app/ui/level_glass.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

std::optional<LevelMark> mark_of(const LevelView& view, bool after) {
    if (after) return view.level.after ? std::optional(view.level.after->mark) : std::nullopt;
    return view.there && view.level.taken == Taken::measured ? std::optional(view.level.before.mark) : std::nullopt;
}

void put_before(const LevelView& view, LevelMark mark, Commands& out) {
    Level level = view.level;
    level.taken = Taken::measured;
    level.reason.clear();
    level.before.mark = mark;
    out.push_back(PutLevel{std::move(level)});
}

void put_after(const LevelView& view, LevelMark mark, Commands& out) {
    out.push_back(PutLevel{with_after(view, mark)});
    if (!view.timer.begun) return;
    Drafts drafts = view.drafts;
    drafts.drop_timer(view.timer.record);
    out.push_back(KeepDrafts{std::move(drafts)});
}

void draw_glasses(UiContext& ui, const LevelView& view, Commands& out) {
    const auto before = [&] {
        if (const auto mark = level_glass(ui, "before", {"Before", view.hub, mark_of(view, false)}))
            put_before(view, *mark, out);
    };
    const auto after = [&] {
        if (const auto mark = level_glass(ui, "after", {"After", view.hub, mark_of(view, true)}))
            put_after(view, *mark, out);
    };
    side_by_side(ui, 0.5F, 260, before, after);
}

// Counts on while the page is shown: one frame a second.
void draw_timer(UiContext& ui, const LevelView& view, Commands& out) {
    if (!view.hub) return;
    heading(ui, "Spin and settle");
    if (!view.timer.begun) {
        paragraph(ui, "Turn the hub several times, then wait and look again.", true);
        if (wide_button(ui, "Hub was spun: begin to wait")) out.push_back(KeepDrafts{with_timer(view)});
        return;
    }
    paragraph(ui, view.timer.words);
    ui.wake_at(std::floor(ui.now_s) + 1);
    if (wide_button(ui, "Spun again: begin anew")) out.push_back(KeepDrafts{with_timer(view)});
}

// Never silent: what must not meet stands on the page as long as it is recorded.
void draw_doubts(UiContext& ui, const LevelView& view) {
    for (const FluidDoubtLine& d : view.doubts) {
        const std::string text = d.words + " " + d.source;
        if (d.must_not)
            caution(ui, view.texts.wrong, text);
        else
            remark(ui, "Ask before it goes in", text);
    }
}

void draw_added(UiContext& ui, const LevelView& view, LevelState& state) {
    const Level& level = view.level;
    heading(ui, "Added");
    RowSpec product;
    const std::string named = level.product.empty() ? "not named" : level.product;
    product.value = named;
    if (row(ui, "Product", product)) {
        state.ask_product = true;
        state.product_before = level.product;
    }
    RowSpec amount;
    const std::string added = level.added ? level.added->text() : "nothing";
    amount.value = added;
    amount.under = level.product.empty() ? "name the product first" : "";
    amount.enabled = !level.product.empty() && view.there;
    if (row(ui, "Amount", amount))
        state.pad.emplace(
            KeypadSpec{"Amount added", {"mL", "[foz_us]", "[pt_us]"}, {}, false, false, false, false, false});
}

void ask_product(UiContext& ui, const LevelView& view, LevelState& state, Commands& out) {
    const auto put = [&](const std::string& product) {
        Level level = view.level;
        level.product = product;
        out.push_back(PutLevel{std::move(level)});
    };
    const bool must_not = !view.doubts.empty() && view.doubts.front().must_not;
    std::vector<ActionSpec> actions{{"Done", Tone::strong, Icon::check, true, true}};
    if (must_not) actions = {{{"Not added: delete this entry", "take out"}, Tone::strong, Icon::none, true, true}};
    const SheetSpec spec{"product", "What does the label say?", std::move(actions)};
    const SheetAnswer answer = sheet(ui, spec, [&] {
        draw_doubts(ui, view);
        if (must_not && wide_button(ui, {view.texts.wrong_is_in, "keep"})) state.ask_product = false;
        std::vector<ChipSpec> specs;
        for (const std::string& p : view.products) specs.push_back({p, p == view.level.product, true, {}});
        if (const auto tapped = chips(ui, "products", specs)) put(view.products[*tapped]);
        words_field(ui, {"Product", "product"}, {view.level.product, std::string(view.texts.product), ""}, view.drafts,
                    put, out);
    });
    if (must_not && answer.action == 0u) put(state.product_before);
    if (answer.closed || answer.action) state.ask_product = false;
}

void ask_why(UiContext& ui, const LevelView& view, LevelState& state, Commands& out) {
    const SheetAnswer answer = sheet(ui, {"why", "Why can it not be seen?", {}}, [&] {
        std::vector<ChipSpec> specs;
        for (const std::string_view r : view.texts.hidden) specs.push_back({r, r == view.level.reason, true, {}});
        const auto tapped = chips(ui, "reasons", specs);
        if (!tapped) return;
        Level level = view.level;
        level.taken = Taken::not_accessible;
        level.reason = view.texts.hidden[*tapped];
        out.push_back(PutLevel{std::move(level)});
        state.ask_why = false;
    });
    if (answer.closed) state.ask_why = false;
}

void draw_pad(UiContext& ui, const LevelView& view, LevelState& state, Commands& out) {
    const KeypadAnswer answer = keypad_sheet(ui, "added", *state.pad);
    if (answer == KeypadAnswer::done) {
        Level level = view.level;
        level.added = Amount{*state.pad->number(), state.pad->unit()};
        out.push_back(PutLevel{std::move(level)});
    }
    if (answer != KeypadAnswer::none) state.pad.reset();
}

void draw_body(UiContext& ui, const LevelView& view, LevelState& state, Commands& out) {
    draw_doubts(ui, view);
    draw_glasses(ui, view, out);
    if (!view.advice.empty()) remark(ui, "Not only topped up", view.advice);
    draw_timer(ui, view, out);
    draw_added(ui, view, state);
    if (!view.open.empty()) heading(ui, view.proved ? "Look again" : "Not proved yet");
    for (const std::string& line : view.open) paragraph(ui, line);
    RowSpec why;
    why.value = view.level.taken == Taken::measured ? std::string_view() : std::string_view(view.level.reason);
    if (row(ui, "Cannot be seen", why)) state.ask_why = true;
}

}  // namespace

void draw_level(UiContext& ui, const LevelView& view, LevelState& state, Commands& out) {
    std::vector<ActionSpec> actions{{{"Photo", "photo"}, Tone::quiet, Icon::camera, true, false}};
    const std::string next = "Next: " + view.next_label;
    if (view.next_place) actions.push_back({{next, "next"}, Tone::strong, Icon::none, true, true});
    const std::string key = "level " + view.place.text();
    const ScreenSpec spec = screen_of(view.chrome, key, actions);
    const ScreenAnswer answer = screen(ui, spec, [&] { draw_body(ui, view, state, out); });
    answer_chrome(answer, out);
    if (answer.tapped(0))
        out.push_back(GoTo{{Screen::intake, view.place, std::string(name_of(view.hub ? Slot::cap : Slot::reservoir))}});
    if (answer.tapped(1)) out.push_back(GoInstead{{Screen::level, *view.next_place, {}}});
    if (state.ask_product) ask_product(ui, view, state, out);
    if (state.ask_why) ask_why(ui, view, state, out);
    if (state.pad) draw_pad(ui, view, state, out);
}

}  // namespace cotter

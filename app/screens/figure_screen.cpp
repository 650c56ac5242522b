// See figure_screen.h.
#include "app/screens/figure_screen.h"

#include <array>

#include "app/screens/common.h"
#include "app/ui/keypad.h"
#include "app/ui/widgets.h"

namespace cotter {

namespace {

void keep(const FigureView& view, std::optional<MakerLimit> figure, Commands& out) {
    Drafts drafts = view.drafts;
    drafts.figure = std::move(figure);
    out.push_back(KeepDrafts{std::move(drafts)});
}

// The draft ends with the page.
void hand_in(const FigureView& view, const MakerLimit& figure, Commands& out) {
    out.push_back(PutMakerLimit{figure});
    keep(view, std::nullopt, out);
    out.push_back(GoBack{});
}

// A figure from a casting needs its photo in this job too, so it is only begun.
void draw_offers(UiContext& ui, const FigureView& view, Commands& out) {
    if (view.offers.empty()) return;
    heading(ui, "Known from earlier jobs");
    for (std::size_t i = 0; i < view.offers.size(); ++i) {
        const FigureOffer& offer = view.offers[i];
        RowSpec spec;
        spec.under = offer.source;
        spec.icon = Icon::check;
        if (!row(ui, {"Use: " + offer.words, "offer " + std::to_string(i)}, spec)) continue;
        if (offer.figure.origin == FigureOrigin::document)
            hand_in(view, offer.figure, out);
        else
            keep(view, offer.figure, out);
    }
}

void draw_value(UiContext& ui, const FigureView& view, FigureState& state, Commands& out) {
    RowSpec spec;
    spec.value = view.value.empty() ? "key it in" : std::string_view(view.value);
    if (row(ui, {"Figure", "figure"}, spec)) state.pad.emplace(view.keypad);
    const bool lower = view.figure.bound == Bound::at_least || view.figure.bound == Bound::more_than;
    const std::array specs{ChipSpec{{"At least", "least"}, lower, true, {}},
                           ChipSpec{{"At most", "most"}, !lower, true, {}}};
    if (const auto tapped = one_of(ui, "bound", specs)) {
        MakerLimit figure = view.figure;
        figure.bound = *tapped == 0 ? Bound::at_least : Bound::at_most;
        keep(view, std::move(figure), out);
    }
}

void draw_document(UiContext& ui, const FigureView& view, Commands& out) {
    const auto put = [&](std::string MakerLimit::*field, const std::string& text) {
        MakerLimit figure = view.figure;
        figure.*field = text;
        keep(view, std::move(figure), out);
    };
    std::vector<ChipSpec> specs;
    for (const std::string& d : view.documents) specs.push_back({d, d == view.figure.document, true, {}});
    if (const auto tapped = chips(ui, "documents", specs)) put(&MakerLimit::document, view.documents[*tapped]);
    const FieldAnswer document =
        text_field(ui, {"Document", "document"}, {view.figure.document, "title and edition", ""});
    if (document.text) put(&MakerLimit::document, *document.text);
    const FieldAnswer page = text_field(ui, {"Page", "page"}, {view.figure.page, "page or table", ""});
    if (page.text) put(&MakerLimit::page, *page.text);
}

void draw_casting(UiContext& ui, const FigureView& view, Commands& out) {
    std::vector<TileSpec> specs;
    std::vector<std::string> keys;
    for (const FigureShot& s : view.shots) keys.push_back("shot " + s.shot.text());
    for (std::size_t i = 0; i < view.shots.size(); ++i) {
        TileSpec tile;
        tile.name = {view.shots[i].label, keys[i]};
        tile.picture = view.shots[i].picture;
        tile.chosen = view.figure.shot == view.shots[i].shot;
        specs.push_back(tile);
    }
    if (specs.empty()) paragraph(ui, "There is no photo of this place yet.", true);
    if (const auto tapped = tiles(ui, "castings", specs)) {
        MakerLimit figure = view.figure;
        figure.shot = view.shots[*tapped].shot;
        keep(view, std::move(figure), out);
    }
    RowSpec add;
    add.icon = Icon::camera;
    if (row(ui, {"Take in its photo", "photos"}, add)) out.push_back(GoTo{view.photos});
}

void draw_source(UiContext& ui, const FigureView& view, Commands& out) {
    heading(ui, "Where it stands");
    const bool stamped = view.figure.origin == FigureOrigin::stamped;
    const std::array specs{ChipSpec{{"In a document", "in a document"}, !stamped, true, {}},
                           ChipSpec{{"On the part", "on the part"}, stamped, true, {}}};
    if (const auto tapped = one_of(ui, "origin", specs)) {
        MakerLimit figure = view.figure;
        figure.origin = *tapped == 0 ? FigureOrigin::document : FigureOrigin::stamped;
        keep(view, std::move(figure), out);
    }
    if (stamped)
        draw_casting(ui, view, out);
    else
        draw_document(ui, view, out);
    paragraph(ui,
              stamped ? "Beyond a figure on the part itself the trailer is not towed."
                      : "Beyond a figure from a document the part is to be repaired.",
              true);
}

void draw_scope(UiContext& ui, const FigureView& view, Commands& out) {
    heading(ui, "It counts for");
    if (view.model.empty()) return fact(ui, view.for_whom, "its axle tag was not read");
    const bool all = !view.figure.axle_model.empty();
    if (toggle(ui, {"All axles tagged " + view.model, "model"}, all, "Remembered for later jobs")) {
        MakerLimit figure = view.figure;
        figure.axle_model = all ? std::string{} : view.model;
        figure.axle = 0;
        if (all && view.axle > 0) figure.axle = view.axle;
        keep(view, std::move(figure), out);
    }
}

void draw_pad(UiContext& ui, const FigureView& view, FigureState& state, Commands& out) {
    const KeypadAnswer answer = keypad_sheet(ui, "maker's figure", *state.pad);
    if (answer == KeypadAnswer::done) {
        MakerLimit figure = view.figure;
        figure.value = {*state.pad->number(), state.pad->unit()};
        keep(view, std::move(figure), out);
    }
    if (answer != KeypadAnswer::none) state.pad.reset();
}

}  // namespace

void draw_figure(UiContext& ui, const FigureView& view, FigureState& state, Commands& out) {
    std::vector<ActionSpec> actions;
    if (view.there) actions.push_back({{"Remove", "remove"}, Tone::danger, Icon::none, true, false});
    actions.push_back({{"Keep it", "keep"}, Tone::strong, Icon::check, view.missing.empty(), true});
    const ScreenAnswer answer = screen(ui, screen_of(view.chrome, "figure " + view.key, actions), [&] {
        if (!view.practice.empty()) paragraph(ui, "So far: " + view.practice + ".", true);
        draw_offers(ui, view, out);
        draw_value(ui, view, state, out);
        draw_source(ui, view, out);
        draw_scope(ui, view, out);
        if (!view.missing.empty()) paragraph(ui, "Still to do: " + view.missing + ".");
    });
    answer_chrome(answer, out);
    if (answer.tapped(actions.size() - 1)) hand_in(view, view.figure, out);
    if (view.there && answer.tapped(0)) {
        out.push_back(RemoveMakerLimit{view.figure.id});
        out.push_back(GoBack{});
    }
    if (!state.asked && view.value.empty() && view.offers.empty()) state.pad.emplace(view.keypad);
    state.asked = true;
    if (state.pad) draw_pad(ui, view, state, out);
}

}  // namespace cotter

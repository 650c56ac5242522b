// The price shelf, and an offer being entered. What goes out: offers kept, forgotten, taken into the job.
#pragma once

#include "app/command.h"
#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"
#include "app/views/shelf_view.h"

namespace cotter {

struct ShelfState {
    std::optional<Id<Offer>> open;
};
void draw_shelf(UiContext& ui, const ShelfView& view, ShelfState& state, Commands& out);

// What the keypad is open for.
enum class OfferNumber { price, freight, core, covers };

struct OfferState {
    std::optional<KeypadModel> pad;
    OfferNumber number = OfferNumber::price;
    std::string wrong;  // why the last number keyed in was not taken
};
void draw_offer(UiContext& ui, const OfferView& view, OfferState& state, Commands& out);

}  // namespace cotter

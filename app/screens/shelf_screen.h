// The price shelf, and an offer being entered. What goes out: offers kept, forgotten, taken into the job.
#pragma once

#include "app/command.h"
#include "app/ui/keypad_model.h"
#include "app/ui/ui.h"
#include "app/views/folder_list.h"
#include "app/views/shelf_view.h"

namespace cotter {

struct ShelfState {
    std::optional<Id<Offer>> open;    // of the shelf, its sheet
    std::optional<Id<Offer>> of_job;  // the same of an offer that the job has
};
void draw_shelf(UiContext& ui, const ShelfView& view, ShelfState& state, Commands& out);

// What the keypad is open for.
struct OffersFileState {
    FolderList list;
    bool listed = false;
};
void draw_offers_file(UiContext& ui, const OffersFileView& view, OffersFileState& state, Commands& out);
// The folder from the disk where that is due. Before draw_offers_file().
void look_at_offers_folder(const OffersFileView& view, OffersFileState& state, Files& files);

enum class OfferNumber { price, freight, core, covers };

struct OfferState {
    std::optional<KeypadModel> pad;
    OfferNumber number = OfferNumber::price;
    std::string wrong;  // why the last number keyed in was not taken
};
void draw_offer(UiContext& ui, const OfferView& view, OfferState& state, Commands& out);

}  // namespace cotter

// The price shelf with the age of each price, and an offer being entered. Plain values; no ImGui.
#pragma once

#include "app/views/chrome.h"

namespace cotter {

struct ShelfRow {
    Offer offer;
    std::string title;  // "Brake pads, axle set"
    std::string under;  // "Feldrain Parts (invented), covers 2 corners of brake pads, seen 5 days ago"
    std::string price;
    bool old = false;     // worth asking again
    bool in_job = false;  // the open job has it already
};

// An offer that the open job has, whether the shelf still knows it or not.
struct JobOfferRow {
    Id<Offer> id;
    std::string title;
    std::string under;  // "Feld Supply, covers 2 corners of brake pads"
    std::string price;
    std::string quote;  // that buys from it, so that it stays; empty: none
};

struct ShelfView {
    Chrome chrome;
    std::vector<ShelfRow> rows;
    std::vector<JobOfferRow> in_job;
    std::string folder;  // where the shelf is written to; empty: the device passes it on
};

[[nodiscard]] ShelfView shelf_view(const Session& session);

// Choosing a CSV file with offers. The folder's list is the screen's own (folder_list.h).
struct OffersFileView {
    Chrome chrome;
    std::string folder;  // where to look first
    bool picks = false;  // the device's own chooser brings the file; there are no folders
    int offset_min = 0;
    std::vector<std::string> refused;  // lines of the file taken last
};
[[nodiscard]] OffersFileView offers_file_view(const Session& session);
[[nodiscard]] bool csv_name(std::string_view name);

// "2 corners of brake pads; 1 corner of pad hardware kit"; "does not say what it covers".
[[nodiscard]] std::string covers_words(const Offer& offer);

struct OfferView {
    Chrome chrome;
    Offer offer;
    std::vector<std::string> suppliers;  // known ones, newest first
    std::vector<std::string> items;      // what the job needs, then what is often bought
    std::string price, freight, core;    // empty: not entered
    std::string missing;                 // what still hinders keeping it; empty: nothing
    Drafts drafts;
};

[[nodiscard]] OfferView offer_view(const Session& session);

}  // namespace cotter

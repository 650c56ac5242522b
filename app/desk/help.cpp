// See help.h.
#include "app/desk/help.h"

#include <array>

namespace cotter::desk {

namespace {

using Text = std::string_view;
constexpr Text kKeys =
    "Arrow keys, Page Up and Down, Home and End move in the table; Enter or two clicks open a row. Space, Ctrl and "
    "Shift choose several, Ctrl+A all. A click on a column's head sorts by it, another one the other way round.";
constexpr Text kFiles =
    "'Print as PDF' and 'CSV' write what the table shows, with its order and columns, into the folder for lists; the "
    "line at the bottom says where.";

constexpr std::array kTrailers{
    Text("Every trailer on file with what is said about towing it now, from all of its visits together, by the same "
         "rules as on the phone. The gravest come first, with the first reason; below the table stands all of it."),
    Text("'Cannot tell' means that something essential was not looked at, or so long ago that it no longer counts. "
         "'Trip check due': nothing but the check before the trip has run out. Nothing here is a certificate."),
    Text("What was signed with a key that nobody here has accepted may forbid towing, and never permits it. Accept a "
         "key on the trailer's page, under 'Packets', or by a trust list."),
    kKeys, kFiles};
constexpr std::array kRegister{
    Text("Every job on file, the newest first. Type the beginning of any word: a unit, plate, VIN, name, place, "
         "finding, part or note. 'Found in' says where the last word stands."),
    Text("Enter opens the trailer with all of its visits. A row with slanted bars is doubtful: its key is not the "
         "technician's, or packets contradict each other."),
    kKeys, kFiles};
constexpr std::array kTrailer{
    Text("A trailer's life as its packets tell it. Choose two visits with Ctrl and a click, or with Space, then "
         "'Compare the two'."),
    Text("Wear is foretold from the same point measured at two visits or more, with the limit and whose limit it is. "
         "Costs are the accepted quotes."),
    Text("Under 'Packets' you decide: whether a technician's new key is accepted, and which of two packets that "
         "contradict each other is shown. Nothing is thrown away by that."),
    kKeys};
constexpr std::array kCompare{
    Text("Before is as the earlier visit left the trailer, now as the later one found it: what the road did."), kKeys,
    kFiles};
constexpr std::array kDue{
    Text("What the newest visit to each trailer calls for: re-torque, oil, the inspection, and the day by which wear "
         "may reach its limit. Overdue rows have slanted bars."),
    Text("'Calendar' writes the same as an .ics file; a later one replaces its entries."), kKeys, kFiles};
constexpr std::array kOrders{
    Text("Packs that accepted quotes call for where the work is not done yet, summed up for each supplier."), kKeys,
    kFiles};
constexpr std::array kFailures{
    Text("Findings graded 'repair' or worse at the corners, by the axle's model, the most frequent first."), kKeys,
    kFiles};
constexpr std::array kTakeIn{
    Text("Drop packets or folders onto the window, or write a folder's path. Each packet is checked whole before "
         "anything of it is believed: it comes in completely or not at all, and once only."),
    Text("'Cancel' stops after the packets at hand; what is in stays in. Handing the same in again changes nothing."),
    kKeys};
constexpr std::array kReceipts{
    Text("Every file that was ever handed in, what became of it, and why. 'Failed' is our side's trouble, such as a "
         "full disk: hand it in again."),
    kKeys, kFiles};

}  // namespace

std::span<const std::string_view> help_lines(Page page) {
    switch (page) {
        case Page::trailer:
            return kTrailer;
        case Page::compare:
            return kCompare;
        case Page::due:
            return kDue;
        case Page::orders:
            return kOrders;
        case Page::failures:
            return kFailures;
        case Page::take_in:
            return kTakeIn;
        case Page::receipts:
            return kReceipts;
        case Page::jobs:
            return kRegister;
        case Page::trailers:
            break;
    }
    return kTrailers;
}

}  // namespace cotter::desk

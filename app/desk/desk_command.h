// Everything the desk's screens can ask for. They push commands while drawing; the desk's session carries them out
// after the frame. Plain values; any thread.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "app/asked.h"
#include "app/ui/table_model.h"
#include "core/base/fields.h"
#include "core/ledger/answers.h"

namespace cotter::desk {

enum class Page { trailers, jobs, trailer, compare, due, orders, failures, take_in, receipts };
constexpr auto names(Page) {
    return name_list("trailers", "register", "trailer", "compare", "due", "orders", "what fails", "take in",
                     "receipts");
}

struct Route {
    Page page = Page::trailers;
    std::string record, other;  // a trailer's key; or the jobs of two visits, the earlier one first
    bool operator==(const Route&) const = default;
};

// The parts of a trailer's page.
enum class Part { visits, wear, torques, findings, changes, costs, photos, packets };

struct GoTo {
    Route route;
};
struct GoBack {};
struct ShowPart {
    Part part = Part::visits;
};
// Which trailers are shown, beside the words that they are narrowed to. Rows come from the first one again.
struct AskFleet {
    std::vector<TowOutcome> outcomes;  // empty: all
    bool trip_check_due = false;
};
// What the register shows. Rows come from the first one again.
struct AskRegister {
    std::string words;
    ledger::JobFilter filter;
};
struct AskDue {
    int days = 30;                       // ahead of today; what is overdue is always there
    std::vector<ledger::DueKind> kinds;  // empty: all
};
// Rows of a paged list that are seen and not there yet.
struct WantRows {
    TableModel::Span rows;
};
struct SortList {
    TableSort sort;
};
struct NarrowList {  // of a list that is whole in memory, and of the trailers
    std::string words;
};
struct ShowColumn {
    std::size_t column = 0;
    bool shown = true;
};
enum class ListFile { pdf, csv, ics };
struct WriteList {  // the page's list as it is shown, into the folder for lists
    ListFile as = ListFile::pdf;
};
struct TakeIn {
    std::vector<std::string> paths;  // files and folders
};
struct CancelTakeIn {};  // after the packets at hand; what is in stays in
struct AcceptKey {
    std::string technician, signer;
};
struct ChoosePacket {
    std::string fingerprint;
};
struct ReadAgain {};  // the page shown, which could not be read
struct DismissNotice {};

using Command =
    std::variant<GoTo, GoBack, ShowPart, AskFleet, AskRegister, AskDue, WantRows, SortList, NarrowList, ShowColumn,
                 WriteList, TakeIn, CancelTakeIn, AcceptKey, ChoosePacket, ReadAgain, DismissNotice>;
using Commands = Asked<Command>;

}  // namespace cotter::desk

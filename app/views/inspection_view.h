// The periodic inspection: its head, how far it has come, what it lacks before it can be signed; and the items of one
// group to be answered. Plain values; no ImGui.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/views/chrome.h"

namespace cotter {

struct InspectionGroup {
    std::string name;  // "Brakes"
    std::size_t answered = 0, wanted = 0, not_ok = 0;
    std::string words;  // "3 of 24, 1 not OK"
};

// What does not pass now.
struct NotPassing {
    std::string item, group;
    std::string remark;
};

struct InspectionView {
    Chrome chrome;
    bool begun = false;
    Inspection head;   // as it stands; when it was not begun, as it would begin
    std::string date;  // "2026-05-14"; empty: not given
    Date today;
    std::size_t answered = 0, wanted = 0;
    std::vector<InspectionGroup> groups;
    std::vector<NotPassing> not_passing;
    std::vector<std::string> lacks;  // besides answers
    std::string result;              // one line: where it stands
    std::string due;                 // when the next one is due and how long this is kept; empty without a date
    std::string trouble;             // why there are no items; empty: there are
    Drafts drafts;
};

struct InspectionItemView {
    std::string id;
    std::string fails;  // when it does not pass
    bool where_fitted = false;
    std::optional<InspectionAnswer> answer;
};

struct InspectionGroupView {
    Chrome chrome;
    std::string group;
    bool begun = false;
    std::size_t answered = 0;
    std::vector<InspectionItemView> items;
    std::string next;  // the next group; empty: this is the last one
    Drafts drafts;
};

[[nodiscard]] InspectionView inspection_view(const Session& session);
[[nodiscard]] InspectionGroupView inspection_group_view(const Session& session);  // of the route's record

// The answer by one tap: with the remark that the record asks for where it is not OK, from the item's own words.
[[nodiscard]] InspectionAnswer answer_of(const InspectionItemView& item, Answer answer);

// Words for the statement, to be taken over by a tap.
inline constexpr std::string_view kInspectionStatement =
    "I have inspected this trailer in accordance with 49 CFR part 396, Appendix A, and this report is accurate and "
    "complete.";

}  // namespace cotter

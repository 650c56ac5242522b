// The periodic inspection: the items of Appendix A to 49 CFR part 396, and what a job's answers still lack before such
// an inspection can be signed. It helps a qualified person fill in the form; it never passes a trailer. Pure; any
// thread.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/judge/limit.h"

namespace cotter {

// Which trailers an item concerns.
enum class ItemScope { trailer, air, power_unit, where_fitted };
constexpr auto names(ItemScope) {
    return name_list("trailer", "air brakes", "power unit", "where fitted");
}

struct InspectionItem {
    std::string id;     // "1a(6)(c)"
    std::string group;  // "Brakes"
    std::string fails;  // when it does not pass, in plain words
    ItemScope scope = ItemScope::trailer;
    Evidence evidence = Evidence::memory;

    bool operator==(const InspectionItem&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("group", s.group);
        f.must("fails", s.fails);
        f.must("scope", s.scope);
        f.must("evidence", s.evidence);
    }
};

// {"items":[…]}; refused when an id is missing or there twice.
[[nodiscard]] Result<std::vector<InspectionItem>> parse_inspection(std::string_view json);

// The items that must be answered for a trailer: all that can concern one, power units' apart.
[[nodiscard]] std::vector<const InspectionItem*> items_to_answer(std::span<const InspectionItem> items,
                                                                 const Trailer& trailer);

struct InspectionState {
    std::size_t answered = 0, wanted = 0;
    std::vector<std::string> not_ok;   // ids of items that do not pass now
    std::vector<std::string> missing;  // what to enter or answer before it can be signed, one line each
    [[nodiscard]] bool complete() const { return missing.empty(); }
    [[nodiscard]] bool passes() const { return complete() && not_ok.empty(); }
};
// Of a job without an Inspection record: only that the inspection was not begun.
[[nodiscard]] InspectionState inspection_gaps(const Job& job, std::span<const InspectionItem> items);

// The day by which the next one is due: twelve months after the last that passed (49 CFR 396.17); its record is kept
// for fourteen months (396.21).
[[nodiscard]] Date months_later(const Date& day, int months);

}  // namespace cotter

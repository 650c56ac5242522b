// Appendix A, item by item.
#include "core/judge/inspection.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

#include "core/survey/json_visitors.h"

namespace cotter {

namespace {

struct Form {
    std::vector<InspectionItem> items;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("items", s.items);
    }
};

void need(InspectionState& state, bool there, std::string line) {
    if (!there) state.missing.push_back(std::move(line));
}

void check_head(InspectionState& state, const Inspection& head, const Trailer& trailer) {
    need(state, !head.inspector.empty(), "the inspector's full name");
    need(state, !head.carrier.empty(), "the motor carrier operating the vehicle: name, address, number");
    need(state, head.date.has_value(), "the date of the inspection");
    need(state, !trailer.vin.empty(), "the vehicle's VIN");
    need(state, !trailer.maker.empty() && trailer.model_year != 0, "the vehicle's make and year");
    need(state, !trailer.plate.empty() || !trailer.unit.empty(), "the vehicle's plate or unit number");
    need(state, !head.qualified_by.empty(), "the inspector's qualification with its evidence (49 CFR 396.19)");
    need(state, !head.brake_qualified_by.empty(), "the qualification for brakes with its evidence (49 CFR 396.25)");
    need(state, !head.statement.empty(), "the statement that it is accurate and complete (49 CFR 396.21)");
}

const InspectionAnswer* answer_to(const Job& job, const std::string& item) {
    for (const InspectionAnswer& a : job.all<InspectionAnswer>())
        if (a.item == item) return &a;
    return nullptr;
}

}  // namespace

Result<std::vector<InspectionItem>> parse_inspection(std::string_view text) {
    COTTER_ASSIGN(const Json json, parse_json(text));
    COTTER_ASSIGN(Form form, fields_from_json<Form>(json));
    std::set<std::string> seen;
    for (const InspectionItem& item : form.items)
        if (item.id.empty() || item.fails.empty() || !seen.insert(item.id).second)
            return fail(Errc::refused, "an item has no id or text, or is there twice", item.id, "mend the form");
    return std::move(form.items);
}

std::vector<const InspectionItem*> items_to_answer(std::span<const InspectionItem> items, const Trailer& trailer) {
    const bool air =
        std::any_of(trailer.axles.begin(), trailer.axles.end(), [](const Axle& a) { return is_air(a.brake); });
    std::vector<const InspectionItem*> out;
    for (const InspectionItem& item : items)
        if (item.scope != ItemScope::power_unit && (item.scope != ItemScope::air || air)) out.push_back(&item);
    return out;
}

InspectionState inspection_gaps(const Job& job, std::span<const InspectionItem> items) {
    InspectionState state;
    const Inspection* head = job.only<Inspection>();
    const Trailer* trailer = job.only<Trailer>();
    need(state, head != nullptr, "a periodic inspection was not begun");
    need(state, trailer != nullptr, "the trailer is not recorded");
    if (head == nullptr || trailer == nullptr) return state;
    check_head(state, *head, *trailer);
    for (const InspectionItem* item : items_to_answer(items, *trailer)) {
        ++state.wanted;
        const InspectionAnswer* answer = answer_to(job, item->id);
        if (answer == nullptr) {
            state.missing.push_back(fmt::format("item {} is not answered: {}", item->id, item->fails));
            continue;
        }
        ++state.answered;
        if (answer->answer == Answer::not_ok) state.not_ok.push_back(item->id);
    }
    return state;
}

Date months_later(const Date& day, int months) {
    const int month = day.year * 12 + day.month - 1 + months;
    Date out{month / 12, month % 12 + 1, day.day};
    while (Date::from_days(out.days()).month != out.month) --out.day;  // the 31st of a shorter month
    return out;
}

}  // namespace cotter

// Looks the finding up in the table, and says where each part goes.
#include "core/quote/called_for.h"

#include <algorithm>
#include <set>

#include "core/quote/called_table.h"
#include "core/quote/words.h"

namespace cotter {

namespace {

using called::Much;
using called::Part;
using called::Row;
using called::Where;

template <std::size_t N>
const Row* first_of(const Row (&rows)[N], const std::string& component, const std::string& defect) {
    const auto found = std::find_if(std::begin(rows), std::end(rows), [&](const Row& row) {
        return has_word(component, row.components) && (row.defects.empty() || has_word(defect, row.defects));
    });
    return found == std::end(rows) ? nullptr : found;
}

const Row* row_of(const Finding& finding) {
    const std::string component = item_key(finding.component), defect = item_key(finding.defect);
    if (const Row* row = first_of(called::kHubRows, component, defect)) return row;
    if (const Row* row = first_of(called::kBrakeRows, component, defect)) return row;
    return first_of(called::kOtherRows, component, defect);
}

const Axle* axle_of(const Job& job, const Place& place) {
    const Trailer* trailer = job.only<Trailer>();
    const auto at = static_cast<std::size_t>(place.axle) - 1;
    return trailer != nullptr && place.is_corner() && at < trailer->axles.size() ? &trailer->axles[at] : nullptr;
}

Place corner_of(const Place& place) {
    return place.is_corner() ? Place::corner(place.axle, place.side) : place;
}

bool has_groove(const Job& job, const Place& place) {
    const auto& all = job.all<Finding>();
    return std::any_of(all.begin(), all.end(), [&](const Finding& f) {
        return corner_of(f.place) == corner_of(place) && has_word(item_key(f.component), "spindle") &&
               has_word(item_key(f.defect), "groove");
    });
}

bool goes_there(const Job& job, Where where, const Place& place) {
    const Axle* axle = axle_of(job, place);
    const HubKind hub = axle == nullptr ? HubKind::not_known : axle->hub;
    const BrakeKind brake = axle == nullptr ? BrakeKind::none : axle->brake;
    const bool disc = brake == BrakeKind::hydraulic_disc || brake == BrakeKind::air_disc;
    switch (where) {
        case Where::oil_hub:
            return hub == HubKind::oil_bath;
        case Where::oil_cap:
            return hub != HubKind::grease;
        case Where::grease_hub:
            return hub == HubKind::grease;
        case Where::disc:
            return disc;
        case Where::no_disc:
            return !disc;
        case Where::electric:
            return brake == BrakeKind::electric_drum;
        case Where::grooved_spindle:
            return has_groove(job, place);
        case Where::always:
            break;
    }
    return true;
}

// A preset hub is a sealed unit: its maker says what goes in, as where the hub is not known.
std::string_view lubricant_of(const Job& job, const Place& place) {
    const Axle* axle = axle_of(job, place);
    const HubKind hub = axle == nullptr ? HubKind::not_known : axle->hub;
    if (hub == HubKind::oil_bath) return "hub oil";
    return hub == HubKind::grease || hub == HubKind::semi_fluid_grease ? "hub grease" : "hub lubricant";
}

bool dual(const Job& job, const Place& place) {
    const Axle* axle = axle_of(job, place);
    return axle != nullptr && axle->wheels == Wheels::dual;
}

std::vector<Place> sides(const Place& place, bool both) {
    if (!both || !place.is_corner()) return {corner_of(place)};
    return {Place::corner(place.axle, Side::left), Place::corner(place.axle, Side::right)};
}

CalledPart called_part(const Job& job, const Part& part, const Finding& finding) {
    const Place& place = finding.place;
    CalledPart out;
    out.item = rule_for(part.item == "lubricant" ? lubricant_of(job, place) : part.item);
    out.each = part.much == Much::asked ? 0 : part.each;
    out.by_studs = part.much == Much::studs;
    const bool pair = part.much == Much::axle || (part.much == Much::tires && !dual(job, place));
    out.places = sides(place, pair);
    if (item_key(part.item) == "tyres" || item_key(part.item) == "valve stems")
        if (part.much != Much::here && dual(job, place)) out.each = 2;
    // What is counted by corners cannot be counted where no corner is named.
    if (!place.is_corner() && out.item->basis == Basis::corners) out.each = 0;
    return out;
}

// A component that the table does not name: by its rule, whose number is asked where it is no matter of corners.
std::vector<CalledPart> by_rule(const Finding& finding) {
    CalledPart out;
    out.item = rule_for(finding.component);
    const bool both = out.item != nullptr && out.item->rule == ReplacedBy::axle;
    out.places = sides(finding.place, both);
    out.each = out.item != nullptr && out.item->basis == Basis::corners && finding.place.is_corner() ? 1 : 0;
    return {out};
}

}  // namespace

std::vector<CalledPart> called_for(const Job& job, const Finding& finding) {
    const Row* row = row_of(finding);
    if (row == nullptr) return by_rule(finding);
    std::vector<CalledPart> out;
    for (const Part& part : row->parts) {
        if (part.much == Much::none || !goes_there(job, part.where, finding.place)) continue;
        out.push_back(called_part(job, part, finding));
        if (out.size() == 1) out.back().note = row->note;
    }
    return out;
}

std::string_view why_no_part(const Job& job, const Finding& finding) {
    const Row* row = row_of(finding);
    return row == nullptr || !called_for(job, finding).empty() ? std::string_view{} : row->note;
}

int studs_called(int bad, int of_hub) {
    const int all = of_hub > 0 ? of_hub : 0;
    if (bad <= 0) return 0;
    if (bad == 1) return all > 0 ? std::min(3, all) : 3;
    return bad > 2 || all <= 4 ? all : 0;
}

}  // namespace cotter

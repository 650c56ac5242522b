// The rules of plate data and of the records of looking, one function a kind.
#include "core/survey/look_rules.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/base/text.h"
#include "core/survey/work_rules.h"

namespace cotter {

namespace {

constexpr std::size_t kMostWheels = 16;  // four axles of duals

void need_above_zero(const std::optional<Amount>& amount, Quantity wanted, const char* name, const RuleSink& need) {
    if (!amount) return;
    const Unit* unit = find_unit(amount->unit);
    need(unit != nullptr && unit->quantity == wanted, fmt::format("the {} is in a unit of something else", name),
         "choose the unit that was meant");
    need(unit == nullptr || amount->number.value() > 0, fmt::format("the {} is not above zero", name),
         "enter what is marked, or leave it out");
}

// "2019" or "2019-04".
bool is_month(std::string_view text) {
    const auto digits = [&](std::size_t from, std::size_t n) {
        return std::all_of(text.begin() + static_cast<std::ptrdiff_t>(from),
                           text.begin() + static_cast<std::ptrdiff_t>(from + n),
                           [](char c) { return c >= '0' && c <= '9'; });
    };
    if (text.size() == 4) return digits(0, 4);
    if (text.size() != 7 || text[4] != '-' || !digits(0, 4) || !digits(5, 2)) return false;
    const int month = (text[5] - '0') * 10 + (text[6] - '0');
    return month >= 1 && month <= 12;
}

bool is_region(std::string_view text) {
    const auto upper = [](char c) { return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9'); };
    if (text.size() < 2 || text.size() > 6) return false;
    return upper(text[0]) && upper(text[1]) &&
           (text.size() == 2 ||
            (text[2] == '-' && text.size() > 3 && std::all_of(text.begin() + 3, text.end(), upper)));
}

void need_date_code(const std::string& code, const RuleSink& need) {
    const bool digits = std::all_of(code.begin(), code.end(), [](char c) { return c >= '0' && c <= '9'; });
    need(code.empty() || (digits && (code.size() == 3 || code.size() == 4)),
         "a tire's date code has four digits, or three before 2000", "read the last group of the DOT number again");
}

template <class R>
void need_shot(const Job& job, const R& r, const RuleSink& need) {
    need(!r.shot || job.find(*r.shot) != nullptr, "its shot is not in the job", "take the photo first");
}

}  // namespace

void check_plate(const Trailer& r, const RuleSink& need) {
    for (const Axle& axle : r.axles) {
        need_above_zero(axle.gawr, Quantity::mass, "axle rating", need);
        need_above_zero(axle.tire_pressure, Quantity::pressure, "placard's tire pressure", need);
    }
    need_above_zero(r.gvwr, Quantity::mass, "trailer rating", need);
    need_above_zero(r.tyre_pressure, Quantity::pressure, "placard's tire pressure", need);
    need_above_zero(r.coupler_rating, Quantity::mass, "coupler rating", need);
    need_above_zero(r.ball_size, Quantity::length, "ball size", need);
    need_above_zero(r.width, Quantity::length, "width", need);
    need_above_zero(r.length, Quantity::length, "length", need);
    need(r.built.empty() || is_month(r.built), "the build date is not a year or a year and month",
         "write it as 2019-04 or 2019");
}

void check_visit(const Visit& r, const RuleSink& need) {
    need(r.region.empty() || is_region(r.region), "the state or country is not a code such as US-TX or DE",
         "choose it from the list");
    if (!r.tow) return;
    need_above_zero(r.tow->gvwr, Quantity::mass, "tow vehicle's rating", need);
    need_above_zero(r.tow->axle_weights, Quantity::mass, "tow vehicle's axle weights", need);
    need_above_zero(r.tow->hitch_rating, Quantity::mass, "hitch rating", need);
    need_above_zero(r.tow->ball_rating, Quantity::mass, "ball rating", need);
    need_above_zero(r.tow->ball_size, Quantity::length, "ball size", need);
    need(r.tow->axles >= 0 && r.tow->axles <= 10, "a tow vehicle has at most 10 axles", "");
}

void check_rules(const Job& job, const Look& r, const RuleSink& need) {
    need_place(job, r.place, need);
    need(!r.point.empty(), "the answer does not say to what", "");
    need(!r.by.empty(), "the answer does not say who gave it", "enter the name");
    const bool worst = std::any_of(r.items.begin(), r.items.end(),
                                   [](const LookItem& item) { return item.result == LookResult::bad; });
    need(!worst || r.result == LookResult::bad, "an item is wrong and the whole is said to be good", "");
    need(!r.finding || job.find(*r.finding) != nullptr, "the answer's finding is not in the job", "");
    for (const Id<Shot>& id : r.shots) need(job.find(id) != nullptr, "the answer's shot is not in the job", "");
}

void check_rules(const Job& job, const Sidewall& r, const RuleSink& need) {
    need_place(job, r.place, need);
    need(r.place.is_corner(), "a tire is at a corner", "");
    need(r.index_single >= 0 && r.index_single <= 279 && r.index_dual >= 0 && r.index_dual <= 279,
         "a load index is 0 to 279", "read the sidewall again");
    need_above_zero(r.max_single, Quantity::mass, "largest load", need);
    need_above_zero(r.max_dual, Quantity::mass, "largest load as a dual", need);
    need_above_zero(r.max_pressure, Quantity::pressure, "largest pressure", need);
    need_date_code(r.date_code, need);
    need_shot(job, r, need);
}

void check_rules(const Job& job, const Chamber& r, const RuleSink& need) {
    need_place(job, r.place, need);
    need(r.place.is_corner(), "a brake chamber is at a corner", "");
    need_above_zero(r.rated_stroke, Quantity::length, "rated stroke", need);
    need_above_zero(r.marked_limit, Quantity::length, "marked stroke limit", need);
    need_above_zero(r.table_limit, Quantity::length, "stroke limit of the table", need);
    need_above_zero(r.slack_length, Quantity::length, "slack adjuster's length", need);
    need_shot(job, r, need);
}

void check_rules(const Job& job, const BreakawayTest& r, const RuleSink& need) {
    need(!r.ended || !(*r.ended < r.started), "the test ended before it began", "look at the phone's clock");
    need(r.wheels.size() <= kMostWheels, "a trailer does not have that many wheels", "");
    for (const WheelHeld& wheel : r.wheels) {
        need_place(job, wheel.place, need);
        need(wheel.place.is_corner(), "a brake holds at a corner", "");
    }
}

void check_rules(const Job& job, const Event& r, const RuleSink& need) {
    need_place(job, r.place, need);
}

}  // namespace cotter

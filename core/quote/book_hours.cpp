// The table of operations, overlaps, and hours times counts.
#include "core/quote/book_hours.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

#include "core/quote/exact.h"
#include "core/quote/extent.h"
#include "core/quote/words.h"

namespace cotter {

namespace {

using enum OpPer;

constexpr std::int64_t kThousand = 1000;

bool in_list(std::string_view list, std::string_view word) {
    bool found = false;
    each_word(list, [&](std::string_view one) { found = found || item_key(one) == item_key(word); });
    return found;
}

// Where an operation of this kind is done for this need.
std::set<Place> places_for(const Operation& op, const Need& need) {
    std::set<Place> out;
    for (const Place& place : need.places) {
        if (op.per == trailer || !place.is_corner())
            out.insert(Place::at(Station::trailer));
        else
            out.insert(Place::corner(place.axle, op.per == axle ? Side::left : place.side));
    }
    if (out.empty()) out.insert(Place::at(Station::trailer));
    return out;
}

// What its needs alone call for; set-up and wheels follow from all the others.
CalledOp called_by_needs(const Operation& op, std::span<const Need> needs) {
    CalledOp out{&op, {}, 0};
    std::set<Place> places;
    for (const Need& need : needs) {
        if (need.left_out || !in_list(op.items, need.item)) continue;
        const auto there = places_for(op, need);
        places.insert(there.begin(), there.end());
        if (op.per == piece) out.count += static_cast<int>(need.wanted.amount.number.value());
    }
    out.places.assign(places.begin(), places.end());
    if (op.per != piece) out.count = static_cast<int>(places.size());
    return out;
}

const Operation* find_operation(std::string_view id) {
    const auto it =
        std::find_if(std::begin(kOperations), std::end(kOperations), [&](const Operation& op) { return op.id == id; });
    return it == std::end(kOperations) ? nullptr : it;
}

void add_set_up(std::vector<CalledOp>& all) {
    std::set<Place> axles, corners;
    for (const CalledOp& called : all)
        for (const Place& place : called.places) {
            if (!place.is_corner()) continue;
            axles.insert(Place::corner(place.axle, Side::left));
            if (called.op->wheel_off) corners.insert(place);
        }
    if (all.empty()) return;
    const auto put = [&](std::string_view id, const std::set<Place>& places) {
        if (!places.empty())
            all.push_back({find_operation(id), {places.begin(), places.end()}, static_cast<int>(places.size())});
    };
    if (!axles.empty()) put("set-up", {Place::at(Station::trailer)});
    put("set-up-axle", axles);
    put("wheel", corners);
}

Result<std::int64_t> thousandths(const Number& hours, std::string_view title) {
    if (hours.value() < 0) return fail(Errc::refused, "hours cannot be below zero", std::string(title));
    return times(kThousand, hours);
}

// What is entered, in thousandths of an hour; 0 high: not entered.
struct Booked {
    const CalledOp* called = nullptr;
    std::int64_t low = 0, high = 0;
    std::string source;
};

Result<Booked> booked(const CalledOp& called, const ShopHours& hours) {
    Booked out{&called, 0, 0, {}};
    const auto it = hours.find(called.op->id);
    if (it == hours.end()) return out;
    COTTER_ASSIGN(out.low, thousandths(it->second.low, called.op->title));
    COTTER_ASSIGN(out.high, thousandths(it->second.high, called.op->title));
    if (out.low > out.high)
        return fail(Errc::refused, "the low hours are above the high ones", std::string(called.op->title),
                    "correct them");
    out.source = it->second.source;
    return out;
}

// Does a longer entered operation at this place do its work too? Of two of one length the later in the table does.
bool done_by_another(const Booked& one, const Place& place, const std::vector<Booked>& all) {
    return std::any_of(all.begin(), all.end(), [&](const Booked& other) {
        const auto& places = other.called->places;
        return other.called != one.called && in_list(one.called->op->not_with, other.called->op->id) &&
               std::find(places.begin(), places.end(), place) != places.end() &&
               (other.high > one.high || (other.high == one.high && other.called > one.called));
    });
}

int charged_count(const Booked& one, const std::vector<Booked>& all) {
    if (one.called->op->per == piece) return one.called->count;
    return static_cast<int>(std::count_if(one.called->places.begin(), one.called->places.end(),
                                          [&](const Place& place) { return !done_by_another(one, place, all); }));
}

BookedHours line_of(const Booked& one, int count) {
    std::string text(one.called->op->title);
    if (count > 1) text += fmt::format(", {} times", count);
    return {std::move(text), one.low * count, one.high * count, one.source};
}

}  // namespace

std::vector<CalledOp> operations_for(std::span<const Need> needs) {
    std::vector<CalledOp> out;
    for (const Operation& op : kOperations)
        if (CalledOp called = called_by_needs(op, needs); !called.places.empty()) out.push_back(std::move(called));
    add_set_up(out);
    std::sort(out.begin(), out.end(), [](const CalledOp& a, const CalledOp& b) { return a.op < b.op; });
    return out;
}

Result<BookLabour> book_labour(std::span<const Need> needs, const ShopHours& hours) {
    const std::vector<CalledOp> called = operations_for(needs);
    std::vector<Booked> all;
    for (const CalledOp& op : called) {
        COTTER_ASSIGN(Booked one, booked(op, hours));
        all.push_back(std::move(one));
    }
    BookLabour out;
    for (const Booked& one : all) {
        const int count = charged_count(one, all);
        if (one.called->count == 0)
            out.not_counted.emplace_back(one.called->op->title);
        else if (one.high == 0)
            out.not_entered.emplace_back(one.called->op->title);
        else if (count > 0)
            out.lines.push_back(line_of(one, count));
    }
    return out;
}

}  // namespace cotter

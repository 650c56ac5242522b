// The table of operations, overlaps, and hours times counts.
#include "core/quote/book_hours.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

#include "core/quote/exact.h"
#include "core/quote/words.h"

namespace cotter {

namespace {

using enum OpPer;

// As the trade books work; what shares its work stands in `not_with` on both sides.
constexpr Operation kOperations[] = {
    {"set-up", "Set-up, chock and lift", trailer, "", "", false, "chocks, lifting points, stands"},
    {"set-up-axle", "Set-up, each axle", axle, "", "", false, "lifting this axle and setting it on stands"},
    {"wheel", "Wheel off and on", corner, "", "", false, "wheel off, faces cleaned, nuts torqued in stages"},
    {"bearings", "Bearings and seal", corner, "bearing set|hub seal|spindle locks|hubs|wear sleeve", "", true,
     "hub off and on, end play set"},
    {"pads", "Pads", corner, "brake pads|pad hardware kit", "rotor|caliper", true, "caliper off and on"},
    {"rotor", "Rotor", corner, "rotors", "pads|caliper", true, "caliper off and on"},
    {"shoes", "Shoes", corner, "brake shoes|shoe hardware kit", "drum|magnet|plate", true, "drum off and on, adjusted"},
    {"plate", "Backing plate assembly", corner, "backing plate assembly", "shoes|drum|magnet", true, "drum off and on"},
    {"drum", "Drum", corner, "drums", "shoes|plate|magnet", true, "drum off and on"},
    {"magnet", "Magnet", corner, "brake magnets|magnet lever arms", "shoes|plate|drum", true, "drum off and on"},
    {"splice", "Sealed splice", piece, "sealed splices", "", false, "joint and strain relief"},
    {"caliper", "Caliper", corner, "calipers", "pads|rotor", true, "without bleeding"},
    {"hose", "Flex hose", corner, "flex hoses", "", true, "without bleeding"},
    {"line", "Brake line", piece, "brake line fittings", "", false, "each run, flared and clipped"},
    {"bleed", "Fill and bleed", trailer, "brake fluid", "", false, "once a visit, with the hold test"},
    {"springs", "Springs", corner, "springs", "u-bolts|bushings", false, "axle supported, U-bolts torqued"},
    {"u-bolts", "U-bolts", corner, "U-bolts", "springs|bushings", false, "axle supported, torqued"},
    {"bushings", "Bolts and bushings", corner, "suspension bolts and bushings", "springs|u-bolts", false,
     "axle supported"},
    {"tire", "Tire changed and balanced", piece, "tyres", "", true, "a new stem"},
    {"lamp", "Lamp", piece, "lamps and reflectors", "", false, "joint sealed"},
    {"breakaway", "Breakaway battery or switch", trailer, "breakaway battery|breakaway switches", "", false,
     "with the 15-minute test"},
};

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

Number hours_number(std::int64_t thousandth) {
    return Number::parse(fmt::format("{}.{:03}", thousandth / kThousand, thousandth % kThousand)).value();
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

Labour line_of(const Booked& one, int count, std::int64_t rate) {
    Labour out;
    out.text = std::string(one.called->op->title);
    if (count > 1) out.text += fmt::format(", {} times", count);
    out.by = one.source == "actual" ? LabourBy::actual_time : LabourBy::book_time;
    out.hours_low = hours_number(one.low * count);
    out.hours_high = hours_number(one.high * count);
    out.rate = rate;
    if (out.by == LabourBy::book_time) out.source = one.source;
    return out;
}

}  // namespace

std::span<const Operation> operations() {
    return kOperations;
}

const Operation* find_operation(std::string_view id) {
    const auto it =
        std::find_if(std::begin(kOperations), std::end(kOperations), [&](const Operation& op) { return op.id == id; });
    return it == std::end(kOperations) ? nullptr : it;
}

std::vector<CalledOp> operations_for(std::span<const Need> needs) {
    std::vector<CalledOp> out;
    for (const Operation& op : kOperations)
        if (CalledOp called = called_by_needs(op, needs); !called.places.empty()) out.push_back(std::move(called));
    add_set_up(out);
    std::sort(out.begin(), out.end(), [](const CalledOp& a, const CalledOp& b) { return a.op < b.op; });
    return out;
}

Result<BookLabour> book_labour(std::span<const Need> needs, const ShopHours& hours, std::int64_t rate) {
    const std::vector<CalledOp> called = operations_for(needs);
    std::vector<Booked> all;
    for (const CalledOp& op : called) {
        COTTER_ASSIGN(Booked one, booked(op, hours));
        all.push_back(std::move(one));
    }
    BookLabour out;
    for (const Booked& one : all) {
        const std::string title(one.called->op->title);
        const int count = charged_count(one, all);
        if (one.called->count == 0)
            out.missing.push_back(title + ": how many is not known, so no hours");
        else if (one.high == 0)
            out.missing.push_back(title + ": hours not entered");
        else if (count > 0)
            out.lines.push_back(line_of(one, count, rate));
    }
    return out;
}

}  // namespace cotter

// See work_done.h. Procedures and steps go by the ids that records hold.
#include "core/trade/work_done.h"

#include <algorithm>
#include <array>
#include <span>

#include "core/base/text.h"

namespace cotter {

namespace {

// The steps that are done while it is open. Those that put it back prove nothing: what they record comes after the
// work.
struct StepOf {
    std::string_view procedure, from;
    int least = 0, most = 0;  // their numbers
};
struct Evidence {
    Work work;
    std::span<const StepOf> steps;
    std::span<const std::string_view> renewed;  // components whose repair proves it
    std::string_view torque{};                  // joint whose tightening proves it
};

constexpr std::array kWheelSteps{StepOf{"wheel-off", "U", 8, 8}, StepOf{"disc", "D", 3, 16},
                                 StepOf{"electric-drum", "E", 2, 13}, StepOf{"hydraulic-drum", "H", 1, 7},
                                 StepOf{"wheels", "W", 1, 3}};
constexpr std::array kHubSteps{StepOf{"bearing", "B", 2, 9}, StepOf{"electric-drum", "E", 3, 3}};
constexpr std::array kFluidSteps{StepOf{"bleed", "F", 2, 7}, StepOf{"disc", "D", 14, 15}};
constexpr std::array kLiningSteps{StepOf{"disc", "D", 11, 12}, StepOf{"electric-drum", "E", 10, 11},
                                  StepOf{"hydraulic-drum", "H", 4, 5}};
constexpr std::array kBrakeSteps{StepOf{"disc", "D", 3, 13}, StepOf{"electric-drum", "E", 2, 13},
                                 StepOf{"hydraulic-drum", "H", 1, 6}};
constexpr std::array kWireSteps{StepOf{"electric-drum", "E", 11, 11}};
constexpr std::array kSpringSteps{StepOf{"running-gear", "G", 3, 3}};

using Words = std::string_view;
constexpr std::array<Words, 14> kBehindWheel{"pads",         "shoes",         "rotor",      "drum", "caliper",
                                             "guide pin",    "bearing",       "spindle",    "seal", "brake hardware",
                                             "brake magnet", "bracket bolts", "wheel stud", "wheel"};
constexpr std::array<Words, 5> kInHub{"bearing", "spindle", "seal", "hub grease", "hub"};
constexpr std::array<Words, 8> kHydraulic{"caliper",     "brake hose", "brake line",     "wheel cylinder",
                                          "brake fluid", "reservoir",  "surge actuator", "brake actuator"};
constexpr std::array<Words, 3> kLinings{"pads", "shoes", "linings"};
constexpr std::array<Words, 10> kBrake{"pads",    "shoes",     "linings",        "rotor",        "drum",
                                       "caliper", "guide pin", "brake hardware", "brake magnet", "bracket bolts"};
constexpr std::array<Words, 4> kElectric{"brake magnet", "wiring", "breakaway battery", "breakaway switch"};
constexpr std::array<Words, 2> kTire{"tyre", "tire"};
constexpr std::array<Words, 4> kSprings{"u-bolts", "spring", "axle beam", "torsion axle"};
constexpr std::array<Words, 2> kCap{"hub cap", "grease cap"};

constexpr std::array kEvidence{
    Evidence{Work::wheel_off, kWheelSteps, kBehindWheel},
    Evidence{Work::hub_opened, kHubSteps, kInHub},
    Evidence{Work::hydraulics_opened, kFluidSteps, kHydraulic},
    Evidence{Work::linings_renewed, kLiningSteps, kLinings},
    Evidence{Work::brake_opened, kBrakeSteps, kBrake},
    Evidence{Work::electrics, kWireSteps, kElectric},
    Evidence{Work::tire_changed, {}, kTire},
    Evidence{Work::u_bolts, kSpringSteps, kSprings, "U-bolts"},
    Evidence{Work::cap, {}, kCap},
};

bool proves(const StepMark& mark, std::span<const StepOf> steps) {
    if (mark.word != StepWord::done) return false;
    return std::any_of(steps.begin(), steps.end(), [&](const StepOf& s) {
        if (mark.procedure != s.procedure || !std::string_view(mark.step).starts_with(s.from)) return false;
        int number = 0;
        for (const char c : std::string_view(mark.step).substr(s.from.size())) {
            if (c < '0' || c > '9') break;
            number = number * 10 + (c - '0');
        }
        return number >= s.least && number <= s.most;
    });
}

class Newest {
public:
    void add(const Instant& at) {
        if (!newest_ || *newest_ < at) newest_ = at;
    }
    [[nodiscard]] const std::optional<Instant>& value() const { return newest_; }

private:
    std::optional<Instant> newest_;
};

// Photos that only a wheel or a hub that is off allows.
constexpr std::array kInsideSlots{Slot::rotor_face, Slot::rotor_edge, Slot::seal_side, Slot::bearing, Slot::spindle};
constexpr std::array kHubSlots{Slot::seal_side, Slot::bearing, Slot::spindle};

bool same_corner(const Place& a, const Place& b) {
    return a.axle == b.axle && a.side == b.side && a.is_corner();
}

// Is work recorded at `there` work at `here`?
bool concerns(Work work, const Place& there, const Place* here) {
    if (here == nullptr || work == Work::hydraulics_opened) return true;
    if (work == Work::u_bolts && here->is_corner()) return there.axle == here->axle;
    return here->is_corner() ? same_corner(there, *here) : there == *here;
}

template <class Slots>
void add_shots(const Job& job, const Slots& slots, Work work, const Place* here, Newest& newest) {
    for (const Shot& shot : job.all<Shot>())
        if (concerns(work, shot.place, here) && std::find(slots.begin(), slots.end(), shot.slot) != slots.end())
            newest.add(shot.photo.taken ? *shot.photo.taken : shot.added);
}

// A wheel was off where somebody saw or measured what is behind it. A torque of its nuts alone proves nothing: they are
// tightened again with the wheel on.
void add_seen_inside(const Job& job, const Place* here, Newest& newest) {
    for (const Look& look : job.all<Look>())
        if (look.reach == Reach::wheel_off && concerns(Work::wheel_off, look.place, here)) newest.add(look.at);
    for (const Reading& r : job.all<Reading>()) {
        if (r.taken != Taken::measured || !r.place.is_corner() || !concerns(Work::wheel_off, r.place, here)) continue;
        const TradePoint* point = point_of_reading(r.what);
        if (point != nullptr && point->reach == Reach::wheel_off) newest.add(r.at);
    }
    add_shots(job, kInsideSlots, Work::wheel_off, here, newest);
}

std::optional<Instant> find_done(const Job& job, Work work, const Place* here) {
    const Evidence& e = kEvidence[static_cast<std::size_t>(work)];
    Newest newest;
    for (const StepMark& m : job.all<StepMark>())
        if (proves(m, e.steps) && concerns(work, m.place, here)) newest.add(m.at);
    for (const Finding& f : job.all<Finding>())
        if (f.outcome == Outcome::repaired && concerns(work, f.place, here) &&
            std::find(e.renewed.begin(), e.renewed.end(), ascii_lower(f.component)) != e.renewed.end())
            newest.add(f.at);
    if (work == Work::hub_opened)
        for (const BearingSetting& b : job.all<BearingSetting>())
            if (concerns(work, b.place, here)) newest.add(b.at);
    if (work == Work::hub_opened) add_shots(job, kHubSlots, work, here, newest);
    if (work == Work::hydraulics_opened)
        for (const BleedCount& b : job.all<BleedCount>()) newest.add(b.at);
    if (work == Work::wheel_off) {
        if (const auto hub = find_done(job, Work::hub_opened, here)) newest.add(*hub);
        add_seen_inside(job, here, newest);
    }
    if (!newest.value() && !e.torque.empty())  // the tightening itself is the only trace
        for (const Torque& t : job.all<Torque>())
            if (t.joint == e.torque && concerns(work, t.place, here)) newest.add(t.at);
    return newest.value();
}

}  // namespace

std::optional<Instant> work_done(const Job& job, Work work, const Place& place) {
    return find_done(job, work, &place);
}

bool work_done_anywhere(const Job& job, Work work) {
    return find_done(job, work, nullptr).has_value();
}

std::vector<Work> works_shown_by(const Finding& finding) {
    std::vector<Work> out;
    const std::string component = ascii_lower(finding.component);
    for (const auto& e : kEvidence)
        if (std::find(e.renewed.begin(), e.renewed.end(), component) != e.renewed.end()) out.push_back(e.work);
    return out;
}

bool opens_again(Work work, PointId point) {
    using enum PointId;
    const auto among = [&](std::initializer_list<PointId> ids) {
        return std::find(ids.begin(), ids.end(), point) != ids.end();
    };
    switch (work) {
        case Work::wheel_off:
            return among({wheel_seat, wheel_torque, wheel_nuts});
        case Work::hub_opened:
            return among({hub_lock, hub_play, hub_leak, hub_heat});
        case Work::hydraulics_opened:
            return among({act_hold, act_level, brk_works});
        case Work::linings_renewed:
            return among({drum_shoe, disc_pad, air_lining, brk_parts, brk_adjust, brk_works, brk_drive, hub_heat});
        case Work::brake_opened:
            return among({brk_works, hub_heat});
        case Work::electrics:
            return among({elec_amps, away_pull});
        case Work::tire_changed:
            return among({tire_id, tire_press, tire_load, wheel_torque});
        case Work::u_bolts:
            return among({susp_ubolt});
        case Work::cap:
            break;
    }
    return among({hub_leak, hub_oil});
}

}  // namespace cotter

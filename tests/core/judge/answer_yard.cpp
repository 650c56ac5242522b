// The yard.
#include "tests/core/judge/answer_yard.h"

#include <algorithm>
#include <fmt/format.h>

#include "core/judge/fact_english.h"
#include "core/survey/edit.h"
#include "core/trade/reading_spec.h"
#include "tests/core/survey/sample_job.h"

namespace cotter::test {

namespace {

struct GoodReading {
    std::string_view name;
    const char* unit;
    std::vector<std::pair<const char*, const char*>> points;
};

const std::vector<GoodReading>& good_values() {
    static const std::vector<GoodReading> all{
        {what::tread_depth, kInch, {{"inner groove", "7/32"}, {"middle groove", "7/32"}, {"outer groove", "7/32"}}},
        {what::pressure_cold, kPsi, {{"", "80"}}},
        {what::end_play, kInch, {{"", "0.003"}}},
        {what::pad_thickness, "mm", {{"inner, leading end", "8.0"}, {"outer, leading end", "8.1"}}},
        {what::rotor_thickness, "mm", {{"0°", "22.00"}, {"90°", "22.01"}, {"180°", "22.00"}, {"270°", "22.01"}}},
        {what::rotor_runout, kInch, {{"", "0.004"}}},
        {what::lining_thickness, "mm", {{"front shoe, centre", "5.0"}, {"rear shoe, centre", "5.1"}}},
        {what::drum_diameter,
         kInch,
         {{"mouth, 0°", "12.000"}, {"mouth, 90°", "12.005"}, {"deep, 0°", "12.000"}, {"deep, 90°", "12.000"}}},
        {what::magnet_current, "A", {{"", "3.0"}}},
        {what::magnet_resistance, "Ohm", {{"", "3.5"}}},
        {what::push_rod_stroke, kInch, {{"", "1 1/2"}}},
        {what::tank_pressure, kPsi, {{"", "85"}}},
        {what::air_lining, "mm", {{"first shoe or pad", "12.0"}, {"second shoe or pad", "12.0"}}},
        {what::air_drop, kPsi, {{"brakes released", "1"}, {"brakes applied", "1"}}},
        {what::fluid_moisture, "%", {{"", "1"}}},
        {what::line_pressure, kPsi, {{"", "1500"}}},
        {what::actuator_volts, "V", {{"", "12.4"}}},
        {what::battery_volts, "V", {{"rest", "12.7"}}},
        {what::dual_diameters, kInch, {{"outer", "30"}, {"inner", "30"}}},
        {what::axle_spacing, kInch, {{"left", "34"}, {"right", "34"}}},
        {what::guard_height, "mm", {{"", "500"}}},
        {what::guard_side, "mm", {{"left", "50"}, {"right", "50"}}},
        {what::guard_rear, "mm", {{"", "100"}}},
        {what::guard_member, "mm", {{"", "110"}}},
    };
    return all;
}

bool takes_wheel_off(const TradePoint& p) {
    return p.reach == Reach::wheel_off;
}

// Inside first, then what is looked at with the wheel on, the nuts last.
int turn(const TradePoint& p) {
    if (p.plate && p.readings.empty() && p.ask.empty()) return 0;
    if (p.id == PointId::wheel_seat) return 2;
    if (p.id == PointId::wheel_torque) return 3;
    return takes_wheel_off(p) ? 1 : 4;
}

}  // namespace

Axle an_axle(BrakeKind brake, Wheels wheels) {
    Axle a;
    a.brake = brake;
    a.wheels = wheels;
    a.hub = HubKind::grease;
    a.studs = 5;
    a.model = "DX-3500";
    a.gawr = *make_amount("3500", kPound);
    a.fastening = Fastening::stud_piloted;
    a.wheel_metal = WheelMetal::steel;
    a.suspension = Suspension::leaf;
    return a;
}

AnswerYard::AnswerYard(std::vector<Axle> axles, Actuation actuation, const char* day, int number)
    : base_(number * 10000) {
    Visit visit = sample_visit();
    visit.id = {numbered(base_ + 1)};
    visit.opened = *Instant::parse(std::string(day) + "T07:00:00-06:00");
    visit.technician = kTechnician;
    visit.load = Load::empty;
    visit.role = VisitRole::mechanic;
    visit.duty = Duty::carrier;
    visit.region = "US-OH";
    visit.tow = TowVehicle{};
    visit.tow->gvwr = *make_amount("9000", kPound);
    visit.tow->axles = 2;
    Trailer t = sample_trailer();
    t.id = {numbered(base_ + 2)};
    t.built = "2019-04";
    t.gvwr = *make_amount("7000", kPound);
    t.tyre_size = "ST205/75R14";
    t.tyre_pressure = *make_amount("80", kPsi);
    t.actuation = actuation;
    t.coupler = CouplerKind::ball;
    t.coupler_rating = *make_amount("10000", kPound);
    t.width = *make_amount("78", kInch);
    t.length = *make_amount("240", kInch);
    t.axles = std::move(axles);
    job_.all<Visit>().push_back(visit);
    now_ = visit.opened;
    put(t);
    at("08:00");
}

Uuid AnswerYard::id() {
    return numbered(base_ + next_++);
}

void AnswerYard::put(Record record) {
    Edit edit;
    edit.job = job_.id();
    edit.at = now_;
    edit.by = kTechnician;
    if (job_.signed_off()) edit.reason = "put right after sign-off";
    edit.changes.push_back(Put(std::move(record), std::nullopt));
    auto after = apply(job_, edit);
    REQUIRE_MESSAGE(after, (after ? std::string() : after.error().line()));
    job_ = std::move(*after);
    tick();
}

bool AnswerYard::remove(const Uuid& gone) {
    for (std::size_t kind = 0; kind < names(RecordKind{}).size(); ++kind) {
        Edit edit;
        edit.job = job_.id();
        edit.at = now_;
        edit.by = kTechnician;
        edit.changes.push_back(Remove{static_cast<RecordKind>(kind), gone});
        auto after = apply(job_, edit);
        if (!after) continue;
        job_ = std::move(*after);
        return true;
    }
    return false;
}

void AnswerYard::change_trailer(const std::function<void(Trailer&)>& change) {
    Trailer t = trailer();
    change(t);
    put(t);
}

void AnswerYard::change_visit(const std::function<void(Visit&)>& change) {
    Visit v = visit();
    change(v);
    put(v);
}

bool AnswerYard::wanted(const TradePoint& p, const Place& place) const {
    return std::none_of(left_out_.begin(), left_out_.end(), [&](const auto& left) {
        return left.first == p.id && (left.second.empty() || left.second == place.text());
    });
}

void AnswerYard::good_readings(const TradePoint& p, const Place& place) {
    for (const GoodReading& good : good_values()) {
        if (std::find(p.readings.begin(), p.readings.end(), good.name) == p.readings.end()) continue;
        Reading r;
        r.id = {id()};
        r.place = place;
        r.what = good.name;
        r.unit = good.unit;
        for (const auto& [where, value] : good.points) r.points.push_back({where, *Number::parse(value)});
        r.at = now_;
        r.by = kTechnician;
        put(r);
    }
}

void AnswerYard::good_look(const TradePoint& p, const Place& place) {
    Look l;
    l.id = {id()};
    l.point = name_of(p.id);
    l.place = place;
    l.reach = visit().role == VisitRole::owner ? Reach::outside : p.reach;
    l.at = now_;
    l.by = kTechnician;
    const Layout layout = layout_of(job_);
    for (const LookEntry* entry : entries_at(p, layout, place)) {
        if (p.list == ListKind::ticks) l.items.push_back({std::string(entry->id), LookResult::good});
        if (p.list == ListKind::choice &&
            entry->grade == Grade::serviceable)  // the last: self-adjusting, no lower limit
            l.items = std::vector<LookItem>{{std::string(entry->id), LookResult::good}};
    }
    put(l);
}

void AnswerYard::answer(const TradePoint& p, const Place& place) {
    const std::string text = place.text();
    if (p.id == PointId::tire_id) put(sidewall_record(text.c_str()));
    if (p.id == PointId::air_kind) put(chamber_record(text.c_str()));
    if (p.id == PointId::away_15) put(test_record());
    if (p.id == PointId::wheel_torque) torque(text.c_str());
    if (p.id == PointId::hub_oil) level(text.c_str(), "hub oil", LevelMark::at);
    if (p.id == PointId::act_level) level("actuator", "brake fluid", LevelMark::at);
    if (!p.readings.empty()) good_readings(p, place);
    if (!p.ask.empty() && p.id != PointId::tire_load) good_look(p, place);
}

void AnswerYard::all_good() {
    if (std::any_of(trailer().axles.begin(), trailer().axles.end(),
                    [](const Axle& a) { return a.brake == BrakeKind::hydraulic_disc; })) {
        maker(what::rotor_thickness, Bound::at_least, "20.0", "mm", FigureOrigin::stamped);
        maker(what::rotor_runout, Bound::at_most, "0.005", kInch);
    } else {
        maker(what::drum_diameter, Bound::at_most, "12.090", kInch, FigureOrigin::stamped);
    }
    for (int now = 0; now <= 4; ++now)
        for (const TradePoint& p : all_points())
            if (turn(p) == now)
                for (const Place& place : places_of(p, layout_of(job_)))
                    if (wanted(p, place)) answer(p, place);
}

void AnswerYard::owners_look() {
    for (const TradePoint& p : all_points())
        if (p.reach == Reach::outside)
            for (const Place& place : places_of(p, layout_of(job_)))
                if (wanted(p, place)) answer(p, place);
}

void AnswerYard::at(const char* clock) {
    now_ = *Instant::parse(visit().opened.local_date().text() + "T" + clock + ":00-06:00");
}

AnswerYard disc_yard(const char* day, int number) {
    return AnswerYard({an_axle(BrakeKind::hydraulic_disc), an_axle(BrakeKind::hydraulic_disc)}, Actuation::surge, day,
                      number);
}
AnswerYard electric_yard(const char* day, int number) {
    return AnswerYard({an_axle(BrakeKind::electric_drum), an_axle(BrakeKind::electric_drum)}, Actuation::electric, day,
                      number);
}
AnswerYard drum_yard(const char* day, int number) {
    return AnswerYard({an_axle(BrakeKind::hydraulic_drum), an_axle(BrakeKind::hydraulic_drum)}, Actuation::surge, day,
                      number);
}
AnswerYard air_yard(const char* day, int number) {
    return AnswerYard({an_axle(BrakeKind::air_cam), an_axle(BrakeKind::air_cam)}, Actuation::air, day, number);
}
AnswerYard overrun_yard() {
    return AnswerYard({an_axle(BrakeKind::overrun)}, Actuation::overrun);
}
AnswerYard plain_yard(const char* gvwr) {
    AnswerYard yard({an_axle(BrakeKind::none)}, Actuation::none);
    yard.change_trailer([&](Trailer& t) { t.gvwr = *make_amount(gvwr, kPound); });
    yard.change_visit([](Visit& v) { v.duty = Duty::private_use; });
    return yard;
}

TowAnswer ask(const AnswerYard& yard, State state) {
    Instant noon = yard.visit().opened;
    noon.unix_s += 5 * 3600;
    return answer_towing(yard.job(), {}, shipped_limits(), noon, state);
}

TowAnswer ask_at(const AnswerYard& yard, const char* when, std::span<const EarlierVisit> earlier) {
    return answer_towing(yard.job(), earlier, shipped_limits(), *Instant::parse(when), State::now);
}

TowAnswer ask_with(const AnswerYard& yard, std::span<const EarlierVisit> earlier) {
    Instant noon = yard.visit().opened;
    noon.unix_s += 5 * 3600;
    return answer_towing(yard.job(), earlier, shipped_limits(), noon, State::now);
}

const PointAnswer& at(const TowAnswer& answer, PointId p, const char* place) {
    const Place where = *Place::parse(place);
    for (const PointAnswer& a : answer.points)
        if (a.point == p && a.place == where && a.source.rests_on != RestsOn::person) return a;
    for (const PointAnswer& a : answer.points)
        if (a.point == p && a.place == where) return a;
    FAIL(name_of(p) << " is not asked at " << place);
    return answer.points.front();
}

void check_outcome(const TowAnswer& answer, TowOutcome expected, const char* file, int line) {
    INFO(file << ":" << line << ": " << name_of(expected) << " expected; " << why(answer));
    CHECK(answer.outcome == expected);
}

std::string why(const TowAnswer& answer) {
    std::string out(name_of(answer.outcome));
    for (const std::size_t i : answer.worst)
        out += fmt::format("\n  {}: {}", name_of(answer.points[i].grade), english(answer.points[i]));
    for (const std::size_t i : answer.open) out += "\n  open: " + english(answer.points[i]);
    for (const std::size_t i : answer.watch) out += "\n  watch: " + english(answer.points[i]);
    return out;
}

}  // namespace cotter::test

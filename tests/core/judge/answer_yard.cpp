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

const char* kTechnician = "A. Tester";

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

Yard::Yard(std::vector<Axle> axles, Actuation actuation, const char* day, int number) : base_(number * 10000) {
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

Uuid Yard::id() {
    return numbered(base_ + next_++);
}

void Yard::put(Record record) {
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

bool Yard::remove(const Uuid& gone) {
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

void Yard::change_trailer(const std::function<void(Trailer&)>& change) {
    Trailer t = trailer();
    change(t);
    put(t);
}

void Yard::change_visit(const std::function<void(Visit&)>& change) {
    Visit v = visit();
    change(v);
    put(v);
}

bool Yard::wanted(const TradePoint& p, const Place& place) const {
    return std::none_of(left_out_.begin(), left_out_.end(), [&](const auto& left) {
        return left.first == p.id && (left.second.empty() || left.second == place.text());
    });
}

void Yard::good_readings(const TradePoint& p, const Place& place) {
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

void Yard::good_look(const TradePoint& p, const Place& place) {
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
        if (p.list == ListKind::choice && entry->grade == Grade::serviceable && l.items.empty())
            l.items.push_back({std::string(entry->id), LookResult::good});
    }
    put(l);
}

void Yard::answer(const TradePoint& p, const Place& place) {
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

void Yard::all_good() {
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

void Yard::owners_look() {
    for (const TradePoint& p : all_points())
        if (p.reach == Reach::outside)
            for (const Place& place : places_of(p, layout_of(job_)))
                if (wanted(p, place)) answer(p, place);
}

Reading Yard::read(const char* place, std::string_view name, const char* unit, Points points, Stage stage) {
    Reading r;
    r.id = {id()};
    r.place = *Place::parse(place);
    r.what = name;
    r.unit = unit;
    r.stage = stage;
    for (const auto& [where, value] : points) r.points.push_back({where, *Number::parse(value)});
    r.at = now_;
    r.by = kTechnician;
    put(r);
    return r;
}

Look Yard::look(PointId p, const char* place, LookResult result, std::vector<LookItem> items, Stage stage,
                Reach reach) {
    Look l;
    l.id = {id()};
    l.point = name_of(p);
    l.place = *Place::parse(place);
    l.stage = stage;
    l.result = result;
    l.items = std::move(items);
    l.reach = std::min(reach, std::max(point(p).reach, Reach::outside));
    l.at = now_;
    l.by = kTechnician;
    put(l);
    return l;
}

Look Yard::seen(PointId p, const char* place, const char* entry, Stage stage) {
    REQUIRE(find_entry(point(p), entry) != nullptr);
    return look(p, place, LookResult::bad, {{entry, LookResult::bad}}, stage);
}

Finding Yard::find(const char* place, const char* component, const char* defect, Grade grade, Outcome outcome) {
    Finding f;
    f.id = {id()};
    f.place = *Place::parse(place);
    f.component = component;
    f.defect = defect;
    f.grade = grade;
    f.outcome = outcome;
    f.at = now_;
    f.by = kTechnician;
    put(f);
    return f;
}

void Yard::maker(std::string_view name, Bound bound, const char* value, const char* unit, FigureOrigin origin) {
    MakerLimit m;
    m.id = {id()};
    m.what = name;
    m.bound = bound;
    m.value = *make_amount(value, unit);
    m.origin = origin;
    m.at = now_;
    m.by = kTechnician;
    if (origin == FigureOrigin::stamped) {
        Shot shot = sample_shot();
        shot.id = {id()};
        shot.place = Place::at(Station::trailer);
        shot.slot = Slot::gauge;
        shot.added = now_;
        put(shot);
        m.shot = shot.id;
    } else {
        m.document = "axle service sheet, 3rd edition (invented)";
        m.page = "14";
    }
    put(m);
}

void Yard::level(const char* place, const char* fluid, LevelMark before, std::optional<LevelMark> after) {
    Level l;
    l.id = {id()};
    l.place = *Place::parse(place);
    l.fluid = fluid;
    l.before.mark = before;
    if (after) l.after = LevelSeen{*after, {}, {}};
    l.at = now_;
    l.by = kTechnician;
    put(l);
}

Torque Yard::torque_record(const char* place, const char* joint) {
    Torque t;
    t.id = {id()};
    t.place = *Place::parse(place);
    t.joint = joint;
    t.fasteners = 5;
    t.target = *make_amount("100", "[lbf_av].[ft_i]");
    t.target_source = "axle service sheet, page 20 (invented)";
    t.wrench = "W-1";
    t.wrench_calibrated = Date::from_days(now_.local_date().days() - 30);
    for (const char* setting : {"20", "50", "100", "100"})
        t.passes.push_back({*make_amount(setting, "[lbf_av].[ft_i]"), {1, 3, 5, 2, 4}});
    t.at = now_;
    t.by = kTechnician;
    return t;
}

void Yard::torque(const char* place, const char* joint) {
    put(torque_record(place, joint));
}

BreakawayTest Yard::test_record() const {
    BreakawayTest t;
    t.id = {numbered(base_ + 9)};
    t.started = now_;
    t.ended = now_;
    t.ended->unix_s += 15 * 60;
    for (const Place& corner : trailer().corners())
        if (trailer().axles[static_cast<std::size_t>(corner.axle - 1)].brake != BrakeKind::none)
            t.wheels.push_back({corner, Held::holds, Held::holds, Held::turns});
    t.pin_in_again = true;
    t.at = now_;
    t.by = kTechnician;
    return t;
}

Sidewall Yard::sidewall_record(const char* place) const {
    Sidewall s;
    const Place p = *Place::parse(place);
    s.id = {numbered(base_ + 5000 + p.axle * 10 + static_cast<int>(p.side) * 3 + static_cast<int>(p.wheel))};
    s.place = p;
    s.size = "ST205/75R14";
    s.type = TireType::trailer_service;
    s.load_range = "C";
    s.index_single = 100;
    s.index_dual = 96;
    s.max_pressure = *make_amount("80", kPsi);
    s.date_code = "1023";
    s.at = now_;
    s.by = kTechnician;
    return s;
}

Chamber Yard::chamber_record(const char* place) const {
    Chamber c;
    const Place p = *Place::parse(place);
    c.id = {numbered(base_ + 6000 + p.axle * 10 + static_cast<int>(p.side))};
    c.place = p;
    c.family = ChamberFamily::clamp;
    c.size = "30";
    c.stroke = StrokeClass::standard;
    c.table_limit = *make_amount("2", kInch);
    c.spring_brake = Fitted::yes;
    c.slack = SlackAdjuster::automatic;
    c.slack_length = *make_amount("6", kInch);
    c.at = now_;
    c.by = kTechnician;
    return c;
}

void Yard::event(EventKind kind, const char* place) {
    Event e;
    e.id = {id()};
    e.kind = kind;
    e.place = *Place::parse(place);
    e.at = now_;
    e.by = kTechnician;
    put(e);
}

void Yard::weigh(std::initializer_list<const char*> axles, const char* tongue) {
    int n = 0;
    for (const char* pounds : axles)
        read("trailer", what::axle_weight, kPound, {{fmt::format("axle {}", ++n).c_str(), pounds}});
    read("trailer", what::tongue_weight, kPound, {{"", tongue}});
}

void Yard::done(const char* procedure, const char* step, const char* place) {
    StepMark m;
    m.id = {id()};
    m.procedure = procedure;
    m.step = step;
    m.place = *Place::parse(place);
    m.at = now_;
    m.by = kTechnician;
    put(m);
}

void Yard::at(const char* clock) {
    now_ = *Instant::parse(visit().opened.local_date().text() + "T" + clock + ":00-06:00");
}

Yard disc_yard(const char* day, int number) {
    return Yard({an_axle(BrakeKind::hydraulic_disc), an_axle(BrakeKind::hydraulic_disc)}, Actuation::surge, day,
                number);
}
Yard electric_yard(const char* day, int number) {
    return Yard({an_axle(BrakeKind::electric_drum), an_axle(BrakeKind::electric_drum)}, Actuation::electric, day,
                number);
}
Yard drum_yard(const char* day, int number) {
    return Yard({an_axle(BrakeKind::hydraulic_drum), an_axle(BrakeKind::hydraulic_drum)}, Actuation::surge, day,
                number);
}
Yard air_yard(const char* day, int number) {
    return Yard({an_axle(BrakeKind::air_cam), an_axle(BrakeKind::air_cam)}, Actuation::air, day, number);
}
Yard overrun_yard() {
    return Yard({an_axle(BrakeKind::overrun)}, Actuation::overrun);
}
Yard plain_yard(const char* gvwr) {
    Yard yard({an_axle(BrakeKind::none)}, Actuation::none);
    yard.change_trailer([&](Trailer& t) { t.gvwr = *make_amount(gvwr, kPound); });
    yard.change_visit([](Visit& v) { v.duty = Duty::private_use; });
    return yard;
}

TowAnswer ask(const Yard& yard, State state) {
    Instant noon = yard.visit().opened;
    noon.unix_s += 5 * 3600;
    return answer_towing(yard.job(), {}, shipped_limits(), noon, state);
}

TowAnswer ask_at(const Yard& yard, const char* when, std::span<const EarlierVisit> earlier) {
    return answer_towing(yard.job(), earlier, shipped_limits(), *Instant::parse(when), State::now);
}

TowAnswer ask_with(const Yard& yard, std::span<const EarlierVisit> earlier) {
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

std::string why(const TowAnswer& answer) {
    std::string out(name_of(answer.outcome));
    for (const std::size_t i : answer.worst)
        out += fmt::format("\n  {}: {}", name_of(answer.points[i].grade), english(answer.points[i]));
    for (const std::size_t i : answer.open) out += "\n  open: " + english(answer.points[i]);
    for (const std::size_t i : answer.watch) out += "\n  watch: " + english(answer.points[i]);
    return out;
}

}  // namespace cotter::test

// The records that tests put into a yard, one way in each.
#include "tests/core/judge/answer_yard.h"

#include <algorithm>
#include <fmt/format.h>

#include "tests/core/survey/sample_job.h"

namespace cotter::test {

Reading AnswerYard::read(const char* place, std::string_view name, const char* unit, Points points, Stage stage) {
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

Look AnswerYard::look(PointId p, const char* place, LookResult result, std::vector<LookItem> items, Stage stage,
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

Look AnswerYard::seen(PointId p, const char* place, const char* entry, Stage stage) {
    REQUIRE(find_entry(point(p), entry) != nullptr);
    return look(p, place, LookResult::bad, {{entry, LookResult::bad}}, stage);
}

Finding AnswerYard::find(const char* place, const char* component, const char* defect, Grade grade, Outcome outcome) {
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

void AnswerYard::maker(std::string_view name, Bound bound, const char* value, const char* unit, FigureOrigin origin) {
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

void AnswerYard::level(const char* place, const char* fluid, LevelMark before, std::optional<LevelMark> after) {
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

Torque AnswerYard::torque_record(const char* place, const char* joint) {
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

void AnswerYard::torque(const char* place, const char* joint) {
    put(torque_record(place, joint));
}

void AnswerYard::back_on(const char* place) {
    look(PointId::wheel_seat, place);
    torque(place);
    look(PointId::wheel_nuts, place);
}

BreakawayTest AnswerYard::test_record() const {
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

Sidewall AnswerYard::sidewall_record(const char* place) const {
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

Chamber AnswerYard::chamber_record(const char* place) const {
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

void AnswerYard::event(EventKind kind, const char* place) {
    Event e;
    e.id = {id()};
    e.kind = kind;
    e.place = *Place::parse(place);
    e.at = now_;
    e.by = kTechnician;
    put(e);
}

void AnswerYard::weigh(std::initializer_list<const char*> axles, const char* tongue) {
    int n = 0;
    for (const char* pounds : axles)
        read("trailer", what::axle_weight, kPound, {{fmt::format("axle {}", ++n).c_str(), pounds}});
    read("trailer", what::tongue_weight, kPound, {{"", tongue}});
}

void AnswerYard::done(const char* procedure, const char* step, const char* place) {
    StepMark m;
    m.id = {id()};
    m.procedure = procedure;
    m.step = step;
    m.place = *Place::parse(place);
    m.at = now_;
    m.by = kTechnician;
    put(m);
}

}  // namespace cotter::test

// The bench.
#include "tests/core/judge/judge_bench.h"

#include <fmt/format.h>
#include <fstream>
#include <iterator>

#include "core/trade/reading_spec.h"
#include "tests/core/survey/sample_job.h"
#include "tests/support/project_files.h"

namespace cotter::test {

std::string asset(const std::string& name) {
    std::ifstream in(project_file("assets/limits/" + name), std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

const std::vector<Limit>& shipped_limits() {
    static const std::vector<Limit> limits = [] {
        auto parsed = parse_limits(asset("limits.json"));
        REQUIRE_MESSAGE(parsed, (parsed ? "" : parsed.error().line()));
        return *parsed;
    }();
    return limits;
}

JudgeBench::JudgeBench(BrakeKind brake, const char* day, int number) : base_(number * 1000) {
    Visit visit = sample_visit();
    visit.id = {numbered(base_)};
    visit.opened = *Instant::parse(std::string(day) + "T08:00:00-05:00");
    visit.load = Load::loaded;
    Trailer t = sample_trailer();
    for (Axle& axle : t.axles) {
        axle.brake = brake;
        axle.model = "DX-7000";
    }
    job.all<Visit>().push_back(visit);
    job.all<Trailer>().push_back(t);
}

Uuid JudgeBench::id() {
    return numbered(base_ + next_++);
}

Trailer& JudgeBench::trailer() {
    return job.all<Trailer>().front();
}

Reading& JudgeBench::read(const char* place, std::string_view what, const char* unit, Points points) {
    Reading r;
    r.id = {id()};
    r.place = *Place::parse(place);
    r.what = what;
    r.unit = unit;
    for (const auto& [where, value] : points) r.points.push_back({where, *Number::parse(value)});
    r.at = job.all<Visit>().front().opened;
    r.at.unix_s += 60;
    r.by = "A. Tester";
    job.all<Reading>().push_back(r);
    return job.all<Reading>().back();
}

Finding& JudgeBench::find(const char* place, const char* component, const char* defect, Grade grade) {
    Finding f;
    f.id = {id()};
    f.place = *Place::parse(place);
    f.component = component;
    f.defect = defect;
    f.grade = grade;
    f.at = job.all<Visit>().front().opened;
    f.by = "A. Tester";
    job.all<Finding>().push_back(f);
    return job.all<Finding>().back();
}

MakerLimit& JudgeBench::maker(std::string_view what, Bound bound, const char* value, const char* unit) {
    MakerLimit m;
    m.id = {id()};
    m.what = what;
    m.bound = bound;
    m.value = *make_amount(value, unit);
    m.document = "axle service sheet, 3rd edition (invented)";
    m.page = "14";
    m.axle_model = "DX-7000";
    m.at = job.all<Visit>().front().opened;
    m.by = "A. Tester";
    job.all<MakerLimit>().push_back(m);
    return job.all<MakerLimit>().back();
}

void JudgeBench::complete() {
    const bool disc = trailer().axles.front().brake == BrakeKind::hydraulic_disc;
    for (const Place& corner : trailer().corners()) {
        const std::string place = corner.text();
        if (disc) {
            read(place.c_str(), what::pad_thickness, "mm", {{"inner", "8.0"}, {"outer", "8.1"}});
            read(place.c_str(), what::rotor_thickness, "mm", {{"0°", "22.00"}});
        } else {
            read(place.c_str(), what::lining_thickness, "mm", {{"primary", "5.0"}, {"secondary", "5.1"}});
            read(place.c_str(), what::drum_diameter, "[in_i]", {{"mouth, 0°", "12.030"}});
            read(place.c_str(), what::magnet_current, "A", {{"", "3.0"}});
        }
        read(place.c_str(), what::pressure_cold, "[psi]", {{"", "80"}});
        read(place.c_str(), what::end_play, "[in_i]", {{"", "0.0030"}});
        read(place.c_str(), what::tread_depth, "[in_i]", {{"inner groove", "7/32"}, {"outer groove", "7/32"}});
    }
    read("actuator", what::battery_volts, "V", {{"rest", "12.7"}, {"after 15 min", "11.4"}});
}

Summary JudgeBench::judge(std::span<const Limit> limits) const {
    Instant now = job.all<Visit>().front().opened;
    now.unix_s += 8 * 3600;
    return judge_job(job, limits, {earlier, now});
}

std::vector<Ground> reasons_on(const Judgement& tree, std::string_view subject) {
    std::vector<Ground> out;
    walk(tree, [&](const Judgement& node) {
        for (const Ground& r : node.reasons)
            if (r.subject == subject) out.push_back(r);
    });
    return out;
}

std::vector<Unknown> unknowns_on(const Judgement& tree, std::string_view subject) {
    std::vector<Unknown> out;
    walk(tree, [&](const Judgement& node) {
        for (const Unknown& u : node.unknowns)
            if (u.subject == subject) out.push_back(u);
    });
    return out;
}

Grade worst_on(const Judgement& tree, std::string_view subject) {
    const auto reasons = reasons_on(tree, subject);
    REQUIRE_MESSAGE(!reasons.empty(), subject);
    Grade worst = Grade::serviceable;
    for (const Ground& r : reasons) worst = std::max(worst, r.grade);
    return worst;
}

}  // namespace cotter::test

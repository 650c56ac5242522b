// The sample job.
#include "tests/core/survey/sample_job.h"

#include <fmt/format.h>

namespace cotter::test {

Uuid numbered(int n) {
    return *Uuid::parse(fmt::format("00000000-0000-4000-8000-{:012}", n));
}

Instant moment(int minute) {
    Instant at = *Instant::parse("2026-05-14T08:00:00-05:00");
    at.unix_s += minute * 60;
    return at;
}

Visit sample_visit() {
    Visit r;
    r.id = {numbered(1)};
    r.opened = moment(0);
    r.technician = "A. Tester";
    r.customer = "the nursery";
    return r;
}

Trailer sample_trailer() {
    Trailer r;
    r.id = {numbered(2)};
    r.unit = "NUR-07";
    r.vin = "1X9DEM0F0MADM0014";
    r.gvwr = *make_amount("14000", "[lb_av]");
    Axle axle;
    axle.brake = BrakeKind::hydraulic_disc;
    axle.hub = HubKind::oil_bath;
    axle.studs = 8;
    axle.stud_thread = "9/16-18";
    r.axles.resize(2, axle);
    return r;
}

Shot sample_shot() {
    Shot r;
    r.id = {numbered(3)};
    r.place = Place::corner(1, Side::left);
    r.slot = Slot::cap;
    r.photo.sha256 = std::string(64, 'a');
    r.photo.media_type = "image/jpeg";
    r.photo.bytes = 1000;
    r.photo.width = 400;
    r.photo.height = 300;
    r.added = moment(2);
    return r;
}

Finding sample_finding() {
    Finding r;
    r.id = {numbered(4)};
    r.place = Place::corner(1, Side::left);
    r.component = "hub cap";
    r.defect = "below line";
    r.grade = Grade::repair;
    r.at = moment(3);
    r.by = "A. Tester";
    return r;
}

Tag sample_tag() {
    return {{numbered(5)}, {numbered(3)}, {numbered(4)}, TagShape::box, {{0.25, 0.5}, {0.75, 0.625}}};
}

Reading sample_reading() {
    Reading r;
    r.id = {numbered(6)};
    r.place = Place::corner(1, Side::left);
    r.what = "pad thickness";
    r.points = {{"inner", *Number::parse("3.20")}, {"outer", *Number::parse("6.9")}};
    r.unit = "mm";
    r.resolution = *Number::parse("0.05");
    r.instrument = "caliper C1";
    r.at = moment(4);
    r.by = "A. Tester";
    return r;
}

Torque sample_torque() {
    Torque r;
    r.id = {numbered(7)};
    r.place = Place::corner(1, Side::left);
    r.joint = "wheel nuts";
    r.fasteners = 8;
    r.target = *make_amount("120", "[lbf_av].[ft_i]");
    r.target_source = "axle maker's manual, page 12";
    r.passes = {{*make_amount("24", "[lbf_av].[ft_i]"), {1, 5, 3, 7, 2, 6, 4, 8}}};
    r.wrench = "TW-3";
    r.wrench_calibrated = Date{2026, 1, 9};
    r.at = moment(5);
    r.by = "A. Tester";
    return r;
}

Level sample_level() {
    Level r;
    r.id = {numbered(8)};
    r.place = Place::corner(1, Side::left);
    r.fluid = "hub oil";
    r.product = "gear oil SAE 90";
    r.before = {LevelMark::below, *make_amount("-6", "mm"), "dark"};
    r.added = *make_amount("120", "mL");
    r.after = LevelSeen{LevelMark::at, std::nullopt, ""};
    r.settled = *make_amount("10", "min");
    r.at = moment(6);
    r.by = "A. Tester";
    return r;
}

SignOff sample_sign_off() {
    return {{numbered(9)}, moment(60), "A. Tester", "I did the work listed.", ""};
}

Edit edit_of(std::vector<Change> changes, int minute, std::string reason) {
    return {{numbered(1)}, moment(minute), "A. Tester", std::move(reason), std::move(changes)};
}

std::vector<Edit> sample_edits() {
    return {edit_of({Put{sample_visit(), {}}, Put{sample_trailer(), {}}}, 1),
            edit_of({Put{sample_shot(), {}}}, 2),
            edit_of({Put{sample_finding(), {}}, Put{sample_tag(), {}}}, 3),
            edit_of({Put{sample_reading(), {}}}, 4),
            edit_of({Put{sample_torque(), {}}}, 5),
            edit_of({Put{sample_level(), {}}}, 6)};
}

Job sample_job() {
    Job job;
    for (const Edit& edit : sample_edits()) job = apply(std::move(job), edit).value();
    return job;
}

}  // namespace cotter::test

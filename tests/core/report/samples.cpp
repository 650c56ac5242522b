// The jobs to print.
#include "tests/core/report/samples.h"

#include <tuple>

#include <fmt/format.h>

#include "core/photo/image.h"
#include "tests/core/survey/sample_job.h"

namespace cotter::test {

namespace {

Finding finding(int id, Place place, Grade grade, std::string component, std::string defect) {
    Finding f = sample_finding();
    f.id = {numbered(id)};
    f.place = place;
    f.grade = grade;
    f.component = std::move(component);
    f.defect = std::move(defect);
    return f;
}

void add_photos(Job& job, int count) {
    for (int i = 0; i < count; ++i) {
        Shot shot = sample_shot();
        shot.id = {numbered(1000 + i)};
        shot.place = Place::corner(1 + i / 2 % 2, i % 2 == 0 ? Side::left : Side::right);
        shot.slot = static_cast<Slot>(i % 24);
        shot.stage = i % 3 == 0 ? Stage::after : Stage::before;
        job.all<Shot>().push_back(shot);
    }
}

Torque torque_to_the_letter() {
    Torque t = sample_torque();
    const Pass full{*make_amount("120", "[lbf_av].[ft_i]"), {1, 5, 3, 7, 2, 6, 4, 8}};
    t.passes.push_back(full);
    t.found_note = "nut 3 loose, ≤ ¼ turn";
    return t;
}

// By a crowfoot, and round the circle instead of across it.
Torque torque_along() {
    Torque t = sample_torque();
    t.id = {numbered(24)};
    t.place = Place::corner(2, Side::right);
    t.target_from = Place::corner(1, Side::left);
    t.adapter = {*make_amount("2", "[in_i]"), *make_amount("16", "[in_i]"), *make_amount("0", "deg")};
    t.passes = {
        {*make_amount("106.7", "[lbf_av].[ft_i]"), {1, 2, 3, 4, 5, 6, 7, 8}, *make_amount("120.0", "[lbf_av].[ft_i]")}};
    return t;
}

}  // namespace

Job full_job() {
    Job job = sample_job();
    job.all<Visit>()[0].customer = "Gärtnerei Grünholz (invented)";
    job.all<Visit>()[0].complaint = "pulls to the left · smells hot é";
    job.all<Torque>()[0] = torque_to_the_letter();
    Reading missing = sample_reading();
    missing.id = {numbered(20)};
    missing.place = Place::at(Station::frame);
    missing.what = "spring bush play";
    missing.taken = Taken::not_accessible;
    missing.reason = "water tank in the way";
    missing.points.clear();
    Reading coil = sample_reading();
    coil.id = {numbered(21)};
    coil.place = Place::at(Station::actuator);
    coil.what = "coil resistance ± lead";
    coil.points = {{"cold, 20 °C", *Number::parse("3.9")}};
    coil.unit = "Ohm";
    const auto repaired = finding(22, Place::corner(2, Side::right), Grade::do_not_tow, "wheel stud", "broken");
    const auto checked = finding(23, Place::at(Station::drawbar), Grade::serviceable, "coupler", "no play");
    job = apply(job,
                edit_of({Put{missing, {}}, Put{coil, {}}, Put{repaired, {}}, Put{checked, {}}, Put{torque_along(), {}}},
                        7))
              .value();
    job = apply(job, edit_of({Put{sample_sign_off(), {}}}, 60)).value();
    Finding amended = sample_finding();
    amended.grade = Grade::watch;
    return apply(job, edit_of({Put{amended, {}}}, 90, "graded too hard at first")).value();
}

Job led_job() {
    Job job = sample_job();
    const auto mark = [&](int id, const char* step, StepWord word, const char* title) {
        StepMark m;
        m.id = {numbered(id)};
        m.procedure = "hydraulic-drum";
        m.step = step;
        m.place = Place::corner(1, Side::left);
        m.word = word;
        m.title = title;
        m.at = moment(id);
        m.by = "A. Tester";
        job.all<StepMark>().push_back(m);
        return &job.all<StepMark>().back();
    };
    mark(30, "U6", StepWord::caution_read, "Stands, not jacks")->caution = "stands";
    mark(31, "U6", StepWord::done, "Lift it onto stands");
    mark(32, "H3", StepWord::overridden, "Shoes and springs as found")->reason = "no light under there";
    for (const auto& [id, state, name] :
         {std::tuple{40, QuoteState::drafted, "left in the drawer"}, {41, QuoteState::offered, "shown at the gate"}}) {
        Quote quote;
        quote.id = {numbered(id)};
        quote.name = name;
        quote.state = state;
        quote.at = moment(id);
        quote.by = "A. Tester";
        job.all<Quote>().push_back(quote);
    }
    return job;
}

Job hostile_job() {
    Job job = sample_job();
    std::string note;
    while (note.size() < 10'000) note += fmt::format("word{} ", note.size());
    job.all<Visit>()[0].complaint = note;
    job.all<Visit>()[0].customer = "\xF0\x9F\x98\x80 emoji, \xFF\xC0 bad bytes, \x01 control";
    job.all<Visit>()[0].place = "שלום עולם 123 / مرحبا";
    job.all<Trailer>()[0].unit = std::string(200, 'W');
    Finding& f = job.all<Finding>()[0];
    f.note = note;
    f.todo = std::string(3'000, 'M');
    f.outcome_note = "line\nline\r\nline\ttab";
    job.all<Reading>()[0].points.assign(300, {"where", *Number::parse("-0.123456789012345678901")});
    job.all<Shot>()[0].note = note;
    job.all<Shot>()[0].photo.taken = Instant{0, 330};
    add_photos(job, 200);
    return job;
}

Job inspected_job(std::span<const InspectionItem> items) {
    Job job = sample_job();
    Trailer& trailer = job.all<Trailer>()[0];
    trailer.maker = "Deckwright (invented)";
    trailer.model_year = 2021;
    trailer.plate = "T-4711";
    Inspection head;
    head.id = {numbered(700)};
    head.inspector = "Ines Prüfer";
    head.carrier = "Nursery Haulage (invented), 1 Gravel Road, number 000000";
    head.date = Date{2026, 5, 14};
    head.qualified_by = "two years in the trade, file 12";
    head.brake_qualified_by = "apprenticeship in brakes, file 12";
    head.statement = "This report is accurate and complete and complies with 49 CFR part 396.";
    head.at = moment(8);
    head.by = "A. Tester";
    job.all<Inspection>().push_back(head);
    int number = 701;
    for (const InspectionItem* item : items_to_answer(items, trailer)) {
        InspectionAnswer answer{{numbered(number)}, item->id, Answer::ok, "", moment(9), "A. Tester"};
        if (number == 702) answer = {{numbered(number)}, item->id, Answer::repaired, "new pads fitted", moment(9), ""};
        if (number == 703) answer = {{numbered(number)}, item->id, Answer::not_ok, "hose chafed", moment(9), ""};
        answer.by = "A. Tester";
        job.all<InspectionAnswer>().push_back(answer);
        ++number;
    }
    return job;
}

ReportPicture plain_picture(int width, int height) {
    Image image;
    image.width = width;
    image.height = height;
    image.pixels.assign(std::size_t{3} * width * height, 0x99);
    return {encode_jpeg(image, 80).value(), width, height};
}

ReportInputs plain_inputs() {
    ReportInputs in;
    in.picture = [](const Shot& shot) -> Result<ReportPicture> {
        return shot.slot == Slot::tread ? plain_picture(60, 400) : plain_picture(400, 300);
    };
    in.photo_name = [](const Shot& shot) { return shot.place.text() + ".jpg"; };
    in.packet_name = "2026-05-14_NUR-07_00000000_r1";
    in.at = moment(60);
    in.software = "Cotter test";
    return in;
}

}  // namespace cotter::test

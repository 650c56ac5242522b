// Random edits.
#include "tests/core/book/edit_maker.h"

namespace cotter::test {

namespace {

constexpr const char* kWords[] = {"rotor", "heat checks", "„Öl“ below line", "two\nlines", "a 'quote'", "pad \"inner\"",
                                  ""};

}  // namespace

EditMaker::EditMaker(std::uint64_t seed) : random_(seed) {
    job_ = {new_id()};
}

EditMaker::EditMaker(std::uint64_t seed, const JobId& job) : random_(seed), job_(job) {}

std::size_t EditMaker::below(std::size_t n) {
    return static_cast<std::size_t>(random_() % n);
}

Uuid EditMaker::new_id() {
    Uuid id;
    for (auto& byte : id.bytes) byte = static_cast<std::uint8_t>(random_());
    return id;
}

Instant EditMaker::moment() {
    return {1'780'000'000 + 60 * minute_++, -300};
}

std::string EditMaker::words() {
    return std::string(kWords[below(std::size(kWords))]) + kWords[below(std::size(kWords))];
}

Place EditMaker::place() {
    return Place::corner(1 + static_cast<int>(below(2)), below(2) == 0 ? Side::left : Side::right);
}

Edit EditMaker::edit_of(std::vector<Change> changes, std::string reason) {
    return {job_, moment(), "A. Tester", std::move(reason), std::move(changes)};
}

Edit EditMaker::opening() {
    Visit visit;
    visit.id = job_;
    visit.opened = moment();
    visit.technician = "A. Tester";
    visit.customer = words();
    Trailer trailer;
    trailer.id = {new_id()};
    trailer.unit = "NUR-" + std::to_string(below(100));
    trailer.axles.resize(2);
    return edit_of({Put{visit, {}}, Put{trailer, {}}});
}

Edit EditMaker::sign_off() {
    return edit_of({Put{SignOff{{new_id()}, moment(), "A. Tester", "I did the work listed.", ""}, {}}});
}

Edit EditMaker::big(std::size_t bytes) {
    Finding f = finding();
    f.note = std::string(bytes, 'n');
    return edit_of({Put{f, {}}});
}

Shot EditMaker::shot() {
    Shot s;
    s.id = {new_id()};
    s.place = place();
    s.slot = static_cast<Slot>(below(24));
    s.photo.sha256 = std::string(64, "0123456789abcdef"[below(16)]);
    s.photo.media_type = "image/jpeg";
    s.photo.bytes = 1 + static_cast<std::int64_t>(below(5'000'000));
    s.photo.width = 4'000;
    s.photo.height = 3'000;
    s.photo.sharpness = static_cast<double>(below(1'000'000)) / 7.0;
    s.note = words();
    s.added = moment();
    return s;
}

Finding EditMaker::finding() {
    Finding f;
    f.id = {new_id()};
    f.place = place();
    f.component = "hub cap";
    f.defect = "below line";
    f.grade = static_cast<Grade>(below(4));
    f.note = words();
    f.at = moment();
    f.by = "A. Tester";
    return f;
}

Reading EditMaker::reading(const Job& now) {
    Reading r;
    r.id = {new_id()};
    r.place = place();
    r.what = "pad thickness";
    r.points = {{"inner", *Number::parse("3.20")}, {words(), *Number::parse(std::to_string(1 + below(20)))}};
    r.unit = "mm";
    const auto& shots = now.all<Shot>();
    if (!shots.empty() && below(2) == 0) r.shot = shots[below(shots.size())].id;
    r.at = moment();
    r.by = "A. Tester";
    return r;
}

Torque EditMaker::torque() {
    Torque t;
    t.id = {new_id()};
    t.place = place();
    t.joint = "wheel nuts";
    t.fasteners = 8;
    t.taken = Taken::not_accessible;
    t.reason = "locked nut " + words();
    t.at = moment();
    t.by = "A. Tester";
    return t;
}

Level EditMaker::level() {
    Level l;
    l.id = {new_id()};
    l.place = place();
    l.fluid = "hub oil";
    l.before = {LevelMark::below, *make_amount("-6", "mm"), words()};
    l.at = moment();
    l.by = "A. Tester";
    return l;
}

std::optional<std::size_t> EditMaker::somewhere(std::size_t size) {
    return below(3) == 0 ? std::optional(below(size + 1)) : std::nullopt;
}

// The tag comes before what it shows: references are checked when the whole edit is in.
std::vector<Change> EditMaker::tagged_finding(const Job& now) {
    const Finding f = finding();
    const Shot s = shot();
    const Tag tag{{new_id()}, s.id, f.id, TagShape::box, {{0.25, 0.1}, {1.0 / 3.0, 0.7}}};
    return {Put{tag, somewhere(now.all<Tag>().size())}, Put{f, {}}, Put{s, somewhere(now.all<Shot>().size())}};
}

std::vector<Change> EditMaker::change_one(const Job& now) {
    if (below(4) == 0) {
        Visit visit = *now.only<Visit>();
        visit.complaint = words();
        return {Put{visit, {}}};
    }
    const auto& findings = now.all<Finding>();
    if (findings.empty()) return {Put{finding(), {}}};
    Finding f = findings[below(findings.size())];
    f.note = words();
    f.grade = static_cast<Grade>(below(4));
    return {Put{f, {}}};
}

// Takes out a shot with all that refers to it, or a level. Sometimes puts the shot back at another place.
std::vector<Change> EditMaker::remove_one(const Job& now) {
    const auto& shots = now.all<Shot>();
    const auto& levels = now.all<Level>();
    if (shots.empty() || below(3) == 0) {
        if (levels.empty()) return {Put{level(), {}}};
        return {Remove{RecordKind::level, levels[below(levels.size())].id.uuid}};
    }
    const Shot chosen = shots[below(shots.size())];
    if (below(4) == 0) return {Remove{RecordKind::shot, chosen.id.uuid}, Put{chosen, below(shots.size())}};
    std::vector<Change> out{Remove{RecordKind::shot, chosen.id.uuid}};
    for (const Tag& tag : now.all<Tag>())
        if (tag.shot == chosen.id) out.push_back(Remove{RecordKind::tag, tag.id.uuid});
    for (const Reading& reading : now.all<Reading>())
        if (reading.shot == chosen.id) out.push_back(Remove{RecordKind::reading, reading.id.uuid});
    return out;
}

Edit EditMaker::next(const Job& now) {
    switch (below(9)) {
        case 0:
            return edit_of({Put{shot(), somewhere(now.all<Shot>().size())}});
        case 1:
            return edit_of({Put{finding(), somewhere(now.all<Finding>().size())}});
        case 2:
            return edit_of(tagged_finding(now));
        case 3:
            return edit_of({Put{reading(now), {}}});
        case 4:
            return edit_of({Put{torque(), {}}});
        case 5:
            return edit_of({Put{level(), somewhere(now.all<Level>().size())}});
        case 6:
            return edit_of(change_one(now));
        default:
            return edit_of(remove_one(now));
    }
}

}  // namespace cotter::test

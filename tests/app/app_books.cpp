// See app_books.h.
#include "tests/app/app_books.h"
#include "tests/app/places.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "core/book/replay.h"

namespace cotter {

namespace {

// 400 characters of every kind that a keyboard gives: a word that does not end, accents, right-to-left, emoji.
std::string long_words() {
    std::string out =
        std::string(120, 'W') + " Übergrößenträger Żółć \u05E9\u05DC\u05D5\u05DD \u0645\u0631\u062D\u0628\u0627 ";
    out += "\U0001F527\U0001F69B ";
    while (out.size() < 400) out += "a note that goes on and on ";
    return out;
}

Shot shot_of(const Job& job, const Place& place, Slot slot) {
    Shot shot = job.all<Shot>().front();
    shot.id = {};
    shot.place = place;
    shot.slot = slot;
    return shot;
}

void take_photo(SessionBench& bench) {
    bench.apply(TakePhotos{{demo_photo("05_axle1-left_brake-exposed.jpg")}, kRight, Slot::lining, Stage::before});
    bench.run_tasks();
    REQUIRE(bench.job().all<Shot>().size() == 1);
}

void put_findings(SessionBench& bench, int count, const std::string& words) {
    for (int i = 0; i < count; ++i) {
        FindingDraft draft;
        draft.place = kRight;
        draft.component = words;
        draft.defect = words;
        draft.note = words;
        draft.todo = words;
        draft.grade = static_cast<Grade>(i % 4);
        draft.shot = bench.job().all<Shot>()[0].id.text();
        draft.points = {{0.3, 0.4}};
        bench.apply(PutFinding{draft});
    }
}

void put_readings(SessionBench& bench, int count, const std::string& words) {
    for (int i = 0; i < count; ++i) {
        Reading reading;
        reading.place = kRight;
        reading.what = words;
        reading.unit = "mm";
        reading.points = {{"inner", Number::parse("7.1").value()}};
        reading.note = words;
        bench.apply(PutReading{reading});
    }
}

constexpr int kMany = 1000;

FindingDraft worn_pad(const Job& job, int i) {
    FindingDraft draft;
    draft.place = kRight;
    draft.component = "pad";
    draft.defect = "worn";
    draft.grade = static_cast<Grade>(i % 4);
    draft.shot = job.all<Shot>()[0].id.text();
    draft.points = {{0.3, 0.4}};
    return draft;
}

void add(Changes& out, const Result<Changes>& more) {
    REQUIRE(more.has_value());
    out.insert(out.end(), more->begin(), more->end());
}

// A thousand commits would test the disk, not the pages: one edit takes them all, past the session.
void put_many(SessionBench& bench) {
    bench.start_tandem();
    take_photo(bench);
    const Job job = bench.job();
    const Stamp stamp{bench.clock.now(), "T", bench.random};
    Changes changes;
    for (int i = 0; i < kMany; ++i) {
        add(changes, changes_of(job, PutFinding{worn_pad(job, i)}, stamp));
        Reading reading;
        reading.place = kRight;
        reading.what = fmt::format("reading {}", i);
        reading.unit = "mm";
        reading.points = {{"inner", Number::parse("7.1").value()}};
        add(changes, changes_of(job, PutReading{reading}, stamp));
        add(changes, changes_of(job, PutShot{shot_of(job, kRight, static_cast<Slot>(i % 24))}, stamp));
    }
    bench.close();
    {
        auto book = Book::open(*bench.files, bench.book, OpenMode::existing);
        REQUIRE(book.has_value());
        REQUIRE((*book)->commit({job.id(), stamp.at, stamp.by, {}, changes}).has_value());
        for (int i = 0; i < kMany; ++i) {
            Changes opening = opening_changes({}, stamp);
            auto& visit = std::get<Visit>(std::get<Put>(opening.front()).record);
            visit.customer = fmt::format("Customer {} (invented)", i);
            const JobId id = visit.id;
            REQUIRE((*book)->commit({id, stamp.at, stamp.by, {}, std::move(opening)}).has_value());
        }
    }
    bench.reopen();
    REQUIRE(bench.job().all<Finding>().size() == kMany);
    REQUIRE(bench.session().jobs().size() == kMany + 1);
}

// Led work with the longest words: a bearing's source, a bottle's name, a tee, who passed a step and why.
void put_long_work(SessionBench& bench, const std::string& words) {
    BearingSetting bearing;
    bearing.place = kRight;
    bearing.source = words;
    bearing.play_max = make_amount("0.005", "[in_i]").value();
    bench.apply(PutBearing{bearing, {}});
    Level level;
    level.place = kRight;
    level.fluid = "hub oil";
    level.product = words;
    bench.apply(PutLevel{level});
    PipeRoute route;
    const std::string tee = words.substr(0, 60);
    route.legs = {{"actuator", tee, make_amount("4.20", "m").value(), {}},
                  {tee, kRight.text(), make_amount("1.50", "m").value(), make_amount("0.190", "[in_i]").value()}};
    bench.apply(PutPipeRoute{route});
    BleedCount count;
    count.place = kRight;
    count.drawn = make_amount("120", "mL").value();
    count.fluid = words;
    bench.apply(PutBleedCount{count});
    StepMark mark = new_mark(bench.session().work_book(), "D11", kRight, StepWord::overridden, {});
    mark.reason = mark.note = mark.by = words;
    bench.apply(PutStepMark{mark, {}});
    REQUIRE(bench.job().all<StepMark>().size() == 1);
}

void put_longest(SessionBench& bench) {
    bench.start_tandem();
    const std::string words = long_words();
    Trailer trailer = *bench.job().only<Trailer>();
    trailer.unit = words.substr(0, 200);
    trailer.plate = words.substr(0, 100);
    bench.apply(PutTrailer{trailer});
    Visit visit = *bench.job().only<Visit>();
    visit.customer = visit.place = visit.complaint = words;
    bench.apply(PutVisit{visit});
    take_photo(bench);
    put_findings(bench, 2, words);
    put_readings(bench, 2, words);
    put_long_work(bench, words);
}

void replay_demo(SessionBench& bench) {
    bench.close();
    {
        auto book = Book::open(*bench.files, bench.book, OpenMode::create);
        REQUIRE(book.has_value());
        PhotoVault vault(*bench.files, bench.workers, bench.book);
        const auto done = replay(**book, vault, *bench.files, std::string(COTTER_SHARE_DIR) + "/demo/edits.jsonl",
                                 [](std::size_t, std::size_t) { return true; });
        REQUIRE_MESSAGE(done.has_value(), (done ? std::string() : done.error().line()));
    }
    bench.reopen();
    bench.apply(OpenJob{bench.session().jobs()[0].id});
}

}  // namespace

const char* book_name(BookKind kind) {
    constexpr const char* kNames[]{"empty", "demo", "many", "longest"};
    return kNames[static_cast<int>(kind)];
}

void fill_book(SessionBench& bench, BookKind kind) {
    if (kind == BookKind::demo) return replay_demo(bench);
    if (kind == BookKind::many) return put_many(bench);
    if (kind == BookKind::longest) return put_longest(bench);
}

std::vector<Route> all_routes(const Session& session) {
    std::vector<Route> out{{Screen::yard, {}, {}}, {Screen::settings, {}, {}}};
    if (!session.has_job()) return out;
    for (const Screen screen : {Screen::identify, Screen::plan, Screen::hand_over, Screen::intake})
        out.push_back({screen, {}, {}});
    for (const Place& place : {kRight, Place::at(Station::actuator), Place::at(Station::trailer)})
        out.push_back({Screen::corner, place, {}});
    for (const char* procedure : {"disc", "wheels", "bearing"}) out.push_back({Screen::work, kRight, procedure});
    for (const char* procedure : {"", "start", "bleed", "owner"})
        out.push_back({Screen::work, Place::at(Station::trailer), procedure});
    out.push_back({Screen::bearing, kRight, {}});
    out.push_back({Screen::bleed, Place::at(Station::trailer), {}});
    out.push_back({Screen::since, {}, {}});
    out.push_back({Screen::torque, kRight, {}});
    out.push_back({Screen::level, kRight, {}});
    out.push_back({Screen::level, Place::at(Station::actuator), {}});
    if (!session.job().all<Shot>().empty())
        out.push_back({Screen::photo, kRight, session.job().all<Shot>().front().id.text()});
    out.push_back({Screen::points, {}, "all"});
    for (const Place& place : {kRight, Place::at(Station::actuator)}) out.push_back({Screen::points, place, {}});
    for (const Screen screen : {Screen::plate, Screen::breakaway, Screen::events}) out.push_back({screen, {}, {}});
    for (const Screen screen : {Screen::sidewall, Screen::chamber}) out.push_back({screen, kRight, {}});
    for (const char* point : {"tire.face", "tire.tread", "disc.pad", "wheel.torque", "tire.id"})
        out.push_back({Screen::point, kRight, point});
    out.push_back({Screen::point, Place::at(Station::lights), "lamp.base"});
    out.push_back({Screen::point, Place::at(Station::trailer), "load.known"});
    for (const Screen screen : {Screen::summary, Screen::inspection}) out.push_back({screen, {}, {}});
    for (const Place& place : {kRight, Place::at(Station::actuator), Place::at(Station::trailer)})
        out.push_back({Screen::judgement, place, {}});
    out.push_back({Screen::judgement, Place::at(Station::trailer), "axle 1"});
    out.push_back({Screen::figure, kRight, "pad-imbalance"});
    out.push_back({Screen::inspection, {}, "Brakes"});
    for (const Screen screen : {Screen::quotes, Screen::compare, Screen::shelf, Screen::offer, Screen::offers_file})
        out.push_back({screen, {}, {}});
    for (const Quote& quote : session.job().all<Quote>())
        for (const Screen screen : {Screen::quote, Screen::customer}) out.push_back({screen, {}, quote.id.text()});
    return out;
}

}  // namespace cotter

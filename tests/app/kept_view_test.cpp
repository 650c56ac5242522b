// A page is drawn from a view that is kept while nothing changes: what changes shows in the next frame, on every page.
#include "app/screens/kept_view.h"

#include <doctest/doctest.h>

#include "tests/app/app_books.h"

using namespace cotter;

namespace {

std::vector<std::string> shown(AppBench& bench) {
    std::vector<std::string> out;
    for (const TextInk& text : bench.log().texts) out.push_back(text.text);
    return out;
}

void draw(AppBench& bench) {
    bench.host->stage().happened();
    bench.hands->settle();
}

// A change of each kind that a view may show.
std::vector<Command> changes(AppBench& bench) {
    Trailer trailer = *bench.job().only<Trailer>();
    trailer.unit = "OTHER-12";
    Reading reading;
    reading.place = Place::corner(1, Side::right);
    reading.what = "pad thickness";
    reading.unit = "mm";
    reading.points = {{"inner", Number::parse("1.5").value()}};
    FindingDraft finding;
    finding.place = Place::corner(1, Side::right);
    finding.component = "hub seal";
    finding.defect = "leaking";
    finding.grade = Grade::do_not_tow;
    Settings settings = bench.session().settings();
    settings.sides = SideWords::nearside_offside;
    return {PutTrailer{trailer}, PutReading{reading}, PutFinding{finding},
            UndoStep{},          RedoStep{},          PutSettings{settings}};
}

}  // namespace

TEST_CASE("a view is made anew after a change, a second, another question, and no more often") {
    SessionBench bench;
    bench.start_tandem();
    KeptView kept;
    int made = 0;
    const auto view = [&](int asked = 0) {
        return kept.of(
            bench.session(), [&](const Session& s) { return ++made, s.job().only<Trailer>()->unit; }, asked);
    };
    CHECK(view() == "NUR-07");
    CHECK(view() == "NUR-07");
    CHECK(made == 1);
    Trailer trailer = *bench.job().only<Trailer>();
    trailer.unit = "NUR-08";
    bench.apply(PutTrailer{trailer});
    CHECK(view() == "NUR-08");
    bench.apply(UndoStep{});
    CHECK(view() == "NUR-07");
    CHECK(made == 3);
    bench.clock.at.unix_s += 1;
    CHECK(view() == "NUR-07");
    CHECK(view(1) == "NUR-07");
    CHECK(view(1) == "NUR-07");
    CHECK(made == 5);
    CHECK(kept.of(
              bench.session(), [](const Session& s) { return s.jobs().size(); }, 1) == 1);
}

TEST_CASE("a view is made anew when work beside the screen has ended") {
    SessionBench bench;
    bench.start_tandem();
    KeptView kept;
    const auto photos = [&] {
        return kept.of(bench.session(), [](const Session& s) { return s.job().all<Shot>().size(); });
    };
    bench.apply(
        TakePhotos{{demo_photo("05_axle1-left_brake-exposed.jpg")}, Place::corner(1, Side::right), Slot::brake, {}});
    CHECK(photos() == 0);
    bench.run_tasks();
    CHECK(photos() == 1);
}

TEST_CASE("after each change every page says what a program just started says") {
    SessionBench filled;
    fill_book(filled, BookKind::demo);
    filled.close();
    AppBench bench({412, 915}, filled.book);
    for (const Route& route : all_routes(bench.session())) {
        bench.apply(GoTo{route});
        draw(bench);
        for (const Command& change : changes(bench)) {
            bench.apply(change);
            draw(bench);
            const std::vector<std::string> kept = shown(bench);
            bench.show();
            draw(bench);
            CAPTURE(name_of(route.screen));
            CAPTURE(change.index());
            CHECK(kept == shown(bench));
        }
    }
}

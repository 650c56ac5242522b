// Every page, at every size and type size, from every kind of book: the laws of the screens hold from top to bottom.
#include <array>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "app/driver/audit.h"
#include "tests/app/app_books.h"

using namespace cotter;

namespace {

constexpr std::array<Point, 3> kSizes{Point{412, 915}, Point{915, 412}, Point{1280, 800}};

// The area of the top layer that scrolls up and down.
const ScrollArea* area(const TargetLog& log) {
    for (const ScrollArea& a : log.scrolls)
        if (a.layer == log.layer && !a.sideways && !a.free) return &a;
    return nullptr;
}

// Looks at what is shown, scrolls on by a screenful, until the end or `most` looks.
int offences_down(AppBench& bench, const std::string& where, int most) {
    int found = 0;
    for (int step = 0; step < most; ++step) {
        const UiStage& stage = bench.host->stage();
        for (const std::string& line : audit(stage.log(), stage.width(), stage.height())) {
            MESSAGE(where << ", look " << step << ": " << line);
            ++found;
        }
        const ScrollArea* a = area(bench.log());
        if (a == nullptr || a->at >= a->end - 1) break;
        const Rect r = a->rect;
        const float before = a->at;
        bench.hands->drag({r.x + 4, r.bottom() - 8}, {r.x + 4, r.bottom() - 8 - std::min(r.h - 16, r.h * 0.8F)}, 0.3);
        if (area(bench.log()) == nullptr || area(bench.log())->at <= before + 1) break;
    }
    return found;
}

int offences_of(BookKind kind) {
    int found = 0;
    SessionBench filled;
    fill_book(filled, kind);
    filled.close();
    for (const Point size : kSizes) {
        AppBench bench(size, filled.book);
        for (const TypeSize type : {TypeSize::regular, TypeSize::large, TypeSize::largest}) {
            Settings settings = bench.session().settings();
            settings.type = type;
            settings.theme = type == TypeSize::large ? ThemeKind::lantern : ThemeKind::sun;
            settings.thumb = type == TypeSize::large ? Thumb::left : Thumb::right;
            settings.sides = type == TypeSize::largest ? SideWords::roadside_curbside : SideWords::left_right;
            bench.apply(PutSettings{settings});
            for (const Route& route : all_routes(bench.session())) {
                bench.apply(GoTo{route});
                bench.host->stage().happened();
                bench.hands->settle();
                found += offences_down(bench,
                                       fmt::format("{} book, {}x{}, type {}, {} {}", book_name(kind), size.x, size.y,
                                                   name_of(type), name_of(route.screen), route.place.text()),
                                       30);
            }
        }
    }
    return found;
}

}  // namespace

TEST_CASE("every page keeps the laws of the screens: nothing recorded yet") {
    CHECK(offences_of(BookKind::empty) == 0);
}
TEST_CASE("every page keeps the laws of the screens: the demo") {
    CHECK(offences_of(BookKind::demo) == 0);
}
TEST_CASE("every page keeps the laws of the screens: long lists") {
    CHECK(offences_of(BookKind::many) == 0);
}
TEST_CASE("every page keeps the laws of the screens: the longest words") {
    CHECK(offences_of(BookKind::longest) == 0);
}

// Every page, at every size and type size, from every kind of book: the laws of the screens hold from top to bottom.
// Where few() rounds are wanted each kind of book is walked at one size and one type size, another for each kind.
#include <array>
#include <string_view>
#include <utility>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "app/driver/audit.h"
#include "tests/app/app_books.h"
#include "tests/support/effort.h"

using namespace cotter;

namespace {

constexpr std::array<Point, 3> kSizes{Point{412, 915}, Point{915, 412}, Point{1280, 800}};
constexpr std::array<TypeSize, 3> kTypes{TypeSize::regular, TypeSize::large, TypeSize::largest};

using Walk = std::pair<Point, TypeSize>;

std::vector<Walk> walks_of(BookKind kind) {
    if (test::few()) {
        const auto n = static_cast<std::size_t>(kind);
        return {{kSizes[n % kSizes.size()], kTypes[(n + n / kSizes.size()) % kTypes.size()]}};
    }
    std::vector<Walk> out;
    for (const Point size : kSizes)
        for (const TypeSize type : kTypes) out.emplace_back(size, type);
    return out;
}

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
    for (const auto& [size, type] : walks_of(kind)) {
        AppBench bench(size, filled.book);
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
                                   test::few() ? 8 : 30);
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

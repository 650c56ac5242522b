// What becomes of people's texts on the way to the page.
#include "core/report/print_text.h"

#include "core/report/table.h"

#include "tests/core/report/report_font.h"

using namespace cotter;
using namespace cotter::test;

namespace {
struct Page {
    Fonts fonts;
    std::unique_ptr<Canvas> canvas = Canvas::make(Paper::a4, fonts.regular, fonts.bold, {"", "", "", {}}).value();

    std::string shown(std::string_view text) {
        std::string out;
        for (const auto& line : wrap(printable(text, *canvas).signs, *canvas, Face::regular, 10, 1e6))
            out += (out.empty() ? "" : "|") + line;
        return out;
    }
};
}  // namespace

TEST_CASE("accents and symbols of the trade are printed as they are") {
    Page page;
    const std::string text = "≤ ≥ ± ° · Ω µ é ü ß ñ č – “x” → −5 ½";
    CHECK(page.shown(text) == text);
    CHECK_FALSE(printable(text, *page.canvas).replaced);
}

TEST_CASE("what the font lacks is replaced visibly, never dropped") {
    Page page;
    CHECK(page.shown("a😀b") == "a\uFFFDb");
    CHECK(page.shown("a\xFF\x62") == "a\uFFFDb");
    CHECK(page.shown("a\xED\xA0\x80z") == "a\uFFFD\uFFFD\uFFFDz");  // a lone surrogate
    CHECK(page.shown("cut \xE2\x82") == "cut \uFFFD\uFFFD");
    CHECK(page.shown("漢") == "\uFFFD");
    CHECK(page.shown("\x01") == "\uFFFD");
    CHECK(printable("😀", *page.canvas).replaced);
    CHECK(page.shown("join\u200Ded") == "joined");
}

TEST_CASE("every kind of line end begins a new line, tabs are spaces") {
    Page page;
    CHECK(page.shown("a\nb\r\nc\rd\u2028e\tf") == "a|b|c|d|e f");
    CHECK(page.shown("") == "");
}

TEST_CASE("lines are broken at spaces, endless words anywhere, and none is wider than asked") {
    Page page;
    const auto& canvas = *page.canvas;
    const std::string text = "one two three fourfivesixseveneightnineten " + std::string(80, 'W') + " end";
    const auto signs = printable(text, canvas).signs;
    for (const double width : {30.0, 60.0, 100.0, 400.0}) {
        std::string all;
        for (const auto& line : wrap(signs, canvas, Face::bold, 9, width)) {
            CHECK(text_width(line, canvas, Face::bold, 9) <= width);
            all += line;
        }
        std::string wanted = text;
        std::erase(wanted, ' ');
        std::erase(all, ' ');
        CHECK(all == wanted);
    }
    CHECK(wrap(U"one two", canvas, Face::regular, 10, 25) == std::vector<std::string>{"one", "two"});
    CHECK(wrap(U"WW", canvas, Face::regular, 10, 1) == std::vector<std::string>{"W", "W"});
}

TEST_CASE("right-to-left runs are put in drawing order, their numbers kept") {
    Page page;
    CHECK(page.shown("אבג") == "גבא");
    CHECK(page.shown("x אב 12.5 ג (ד) y") == "x (ד) ג 12.5 בא y");
}

TEST_CASE("a table's columns are as wide as their longest words, as long as there is room: no Hydraulic-dru m") {
    Page page;
    Sheet sheet(*page.canvas);
    Table table({{"Procedure", 0.9}, {"Due", 0.5}, {"Steps done, in order", 4}, {"From, to, who", 1.2}});
    table.add({"Hydraulic-drum", "2026-02-02", "Know the trailer · Make it stand still", "R. Alder"});
    table.add({"Wheels", Cell::graded(Grade::serviceable), std::string(2'000, 'W'), "08:12"});
    const std::vector<double> widths = table.widths(sheet);
    REQUIRE(widths.size() == 4);
    double all = 0;
    for (const double width : widths) all += width;
    CHECK(all == doctest::Approx(sheet.width()));
    const auto holds = [&](std::size_t column, std::string_view word, double beside) {
        return sheet.lines(word, {Face::bold, 8.5, kBlack}, widths[column] - 7 - beside).size() == 1;
    };
    CHECK(text_width("Hydraulic-drum", *page.canvas, Face::regular, 8.5) <= widths[0] - 7);
    CHECK(text_width("2026-02-02", *page.canvas, Face::regular, 8.5) <= widths[1] - 7);
    CHECK(holds(1, "Serviceable", 23));
}

TEST_CASE("a table whose words cannot all be held still fills the page and no more") {
    Page page;
    Sheet sheet(*page.canvas);
    Table table({{"A"}, {"B"}, {"C"}});
    const std::string wide(40, 'W');
    table.add({wide.substr(0, 25), wide.substr(0, 24), wide.substr(0, 23)});
    double all = 0;
    for (const double width : table.widths(sheet)) {
        CHECK(width > 20);
        all += width;
    }
    CHECK(all == doctest::Approx(sheet.width()));
}

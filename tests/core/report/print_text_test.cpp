// What becomes of people's texts on the way to the page.
#include "core/report/print_text.h"

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

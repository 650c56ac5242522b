// The document as bytes; how it looks to other programs is checked by report_pages.sh.
#include "core/report/say.h"
#include "core/report/report.h"

#include "core/report/qr.h"

#include "tests/core/report/report_font.h"
#include "tests/core/report/samples.h"
#include "tests/core/survey/sample_job.h"

using namespace cotter;
using namespace cotter::test;

namespace {

struct Desk {
    Fonts fonts;
    ReportInputs in = plain_inputs();
    Desk() {
        in.font = fonts.regular;
        in.font_bold = fonts.bold;
    }
};

int pages_of(const Bytes& pdf) {
    int count = 0;
    for (auto at = as_text(pdf).find("/Type /Page\n"); at != std::string_view::npos;
         at = as_text(pdf).find("/Type /Page\n", at + 1))
        ++count;
    return count;
}

bool has(const Bytes& pdf, std::string_view text) {
    return as_text(pdf).find(text) != std::string_view::npos;
}

}  // namespace

TEST_CASE("codes of corners become words, wherever they stand") {
    CHECK(without_codes("Lift it, axle1-left · Hub off, axle2-right-inner") ==
          "Lift it, axle 1 left · Hub off, axle 2 right, inner wheel");
    CHECK(without_codes("axle4-right-outer, then axle4-right") == "axle 4 right, outer wheel, then axle 4 right");
    CHECK(without_codes("an axle, 4 corners") == "an axle, 4 corners");
}

TEST_CASE("the same job gives the same report, another date another one") {
    Desk desk;
    const Bytes first = report_pdf(full_job(), desk.in).value();
    CHECK(first == report_pdf(full_job(), desk.in).value());
    desk.in.at.unix_s += 60;
    CHECK(first != report_pdf(full_job(), desk.in).value());
}

TEST_CASE("the report is a PDF with its fonts inside and both dates from the sign-off") {
    Desk desk;
    const Bytes pdf = report_pdf(full_job(), desk.in).value();
    CHECK(as_text(pdf).starts_with("%PDF-1."));
    CHECK(as_text(pdf).substr(pdf.size() - 8).find("%%EOF") != std::string_view::npos);
    CHECK(has(pdf, "/CreationDate (D:20260514090000-05'00')"));
    CHECK(has(pdf, "/ModDate (D:20260514090000-05'00')"));
    CHECK(has(pdf, "/FontFile2"));
    CHECK(pages_of(pdf) == 6);
    CHECK(pdf.size() < (desk.fonts.regular.size() + desk.fonts.bold.size()) / 4);  // fonts are cut down to what is used
}

TEST_CASE("paper is A4 or Letter as asked") {
    Desk desk;
    CHECK(has(report_pdf(full_job(), desk.in).value(), "[ 0 0 595.28"));
    desk.in.paper = Paper::letter;
    CHECK(has(report_pdf(full_job(), desk.in).value(), "[ 0 0 612 792 ]"));
}

TEST_CASE("empty and hostile jobs are printed whole") {
    Desk desk;
    CHECK(pages_of(report_pdf(Job{}, desk.in).value()) == 2);
    const Bytes pdf = report_pdf(hostile_job(), desk.in).value();
    CHECK(pages_of(pdf) > 40);
    std::size_t pictures = 0;
    for (auto at = as_text(pdf).find("/DCTDecode"); at != std::string_view::npos;
         at = as_text(pdf).find("/DCTDecode", at + 1))
        ++pictures;
    CHECK(pictures == 201);
}

TEST_CASE("pictures that are empty, no JPEG or of another size are refused with their place") {
    Desk desk;
    const auto refused = [&](ReportPicture picture) {
        desk.in.picture = [&](const Shot&) -> Result<ReportPicture> { return picture; };
        const auto pdf = report_pdf(full_job(), desk.in);
        REQUIRE_FALSE(pdf);
        CHECK(pdf.error().code == Errc::refused);
        CHECK(pdf.error().where == "photo of Axle 1 left, cap");
    };
    refused({});
    refused({to_bytes("not a picture"), 40, 30});
    ReportPicture wrong = plain_picture(40, 30);
    wrong.width = 41;
    refused(wrong);
}

TEST_CASE("what a picture fails with is passed on") {
    Desk desk;
    desk.in.picture = [](const Shot&) -> Result<ReportPicture> { return fail(Errc::damaged, "the photo is cut off"); };
    const auto pdf = report_pdf(full_job(), desk.in);
    REQUIRE_FALSE(pdf);
    CHECK(pdf.error().code == Errc::damaged);
    CHECK(pdf.error().line() == "the photo is cut off: photo of Axle 1 left, cap");
}

TEST_CASE("the code is square, has its three corner marks, and a text too long for one is refused") {
    const QrCode code = qr_code(std::string(64, 'a') + "  data/job.json").value();
    CHECK((code.side - 21) % 4 == 0);
    REQUIRE(code.dark.size() == static_cast<std::size_t>(code.side) * static_cast<std::size_t>(code.side));
    for (const auto& [x, y] : {std::pair{0, 0}, std::pair{code.side - 7, 0}, std::pair{0, code.side - 7}})
        for (int i = 0; i < 7; ++i) {
            CHECK(code.at(x + i, y));
            CHECK(code.at(x + i, y + 6));
            CHECK(code.at(x, y + i));
            CHECK(code.at(x + 3, y + 3));
            CHECK(code.at(x + 1, y + 1 + i % 5) == false);
        }
    CHECK(qr_code(std::string(64, 'a') + "  data/job.json")->dark == code.dark);
    CHECK_FALSE(qr_code(std::string(4'000, 'a')));
}

TEST_CASE("fonts that do not load are refused") {
    Desk desk;
    for (const Bytes& bad :
         {Bytes{}, to_bytes("no font"), Bytes(desk.fonts.regular.begin(), desk.fonts.regular.begin() + 600)}) {
        desk.in.font_bold = bad;
        const auto pdf = report_pdf(full_job(), desk.in);
        REQUIRE_FALSE(pdf);
        CHECK(pdf.error().code == Errc::refused);
        CHECK(pdf.error().where == "bold");
    }
}

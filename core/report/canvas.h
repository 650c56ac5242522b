// Pages to draw on, with no idea of what is drawn. One thread at a time. The only way of this folder to the PDF part.
// Lengths are points (1/72 inch); x runs right and y down from the upper left corner of the page.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/bytes.h"
#include "core/base/error.h"
#include "core/base/time.h"
#include "core/report/report.h"

namespace cotter {

enum class Face { regular, bold };

struct Ink {
    float r = 0, g = 0, b = 0;  // 0…1
};
inline constexpr Ink kBlack{};
inline constexpr Ink kWhite{1, 1, 1};
inline constexpr Ink kSoft{0.32f, 0.32f, 0.32f};   // lesser text; still dark enough for a bad printer
inline constexpr Ink kRule{0.55f, 0.55f, 0.55f};   // thin lines
inline constexpr Ink kShade{0.91f, 0.91f, 0.91f};  // behind table heads

struct PaperSpot {
    double x = 0, y = 0;
};

class Canvas {
public:
    struct About {
        std::string title;
        std::string author;
        std::string software;
        Instant at;  // both dates of the document
    };

    // Refused: a font that does not load. The fonts' bytes are copied.
    [[nodiscard]] static Result<std::unique_ptr<Canvas>> make(Paper paper, ByteView regular, ByteView bold,
                                                              const About& about);
    ~Canvas();
    Canvas(const Canvas&) = delete;
    Canvas& operator=(const Canvas&) = delete;

    [[nodiscard]] double page_width() const;
    [[nodiscard]] double page_height() const;
    [[nodiscard]] int pages() const;
    void add_page();       // and go to it
    void go_to(int page);  // 1…pages()

    [[nodiscard]] bool has_sign(char32_t sign) const;              // do both faces have a glyph for it?
    [[nodiscard]] double advance(Face face, char32_t sign) const;  // at size 1

    // `text`: valid UTF-8 of signs that has_sign() knows, drawn with its baseline at `at`.
    void text(PaperSpot at, Face face, double size, std::string_view text, Ink ink = kBlack);
    void line(PaperSpot from, PaperSpot to, double thickness, Ink ink = kBlack);
    // Filled and edged as asked; `thickness` of the edge.
    void polygon(std::span<const PaperSpot> corners, std::optional<Ink> fill, std::optional<Ink> edge,
                 double thickness = 1);
    void circle(PaperSpot centre, double radius, std::optional<Ink> fill, std::optional<Ink> edge,
                double thickness = 1);
    // Refused: empty, no JPEG, or not of the stated size.
    [[nodiscard]] Result<> picture(const ReportPicture& picture, PaperSpot upper_left, double width, double height);
    void bookmark(std::string_view title, double y);  // an entry of the outline that leads here

    [[nodiscard]] Result<Bytes> finish();  // once

private:
    struct State;
    explicit Canvas(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

}  // namespace cotter

// Text that flows down pages: headings, paragraphs, label lines. Starts new pages by itself and puts the foot on each
// at the end. One thread.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/sign.h"
#include "core/report/canvas.h"
#include "core/report/print_text.h"

namespace cotter {

struct Type {
    Face face = Face::regular;
    double size = 9;
    Ink ink = kBlack;
    [[nodiscard]] double leading() const { return size * 1.32; }
};
inline constexpr Type kBody{};
inline constexpr Type kStrong{Face::bold, 9, kBlack};
inline constexpr Type kSmall{Face::regular, 7.5, kSoft};

struct Labelled {
    std::string label;
    std::string value;
};

class Sheet {
public:
    explicit Sheet(Canvas& canvas);

    [[nodiscard]] Canvas& canvas() { return canvas_; }
    [[nodiscard]] double left() const { return kMargin + indent_; }
    [[nodiscard]] double width() const { return canvas_.page_width() - 2 * kMargin - indent_; }
    void indent(double by) { indent_ = by; }       // from the left margin, for all that follows
    [[nodiscard]] double y() const { return y_; }  // where the next thing begins
    [[nodiscard]] double room() const { return canvas_.page_height() - kFoot - y_; }
    void move_to(double y) { y_ = y; }
    void gap(double height) { y_ += height; }
    void new_page();
    void start_page();         // a new page unless this one is still empty
    void need(double height);  // starts a new page when less room is left; a whole page at most

    // The lines that `text` takes; remembers whether a sign had to be replaced.
    [[nodiscard]] std::vector<std::string> lines(std::string_view text, const Type& type, double width);
    // Of the longest word in `text`.
    [[nodiscard]] double longest_word(std::string_view text, const Type& type) const;
    // One line at a place of its own choosing; y is that of its upper edge.
    void line_at(Spot upper_left, const std::string& line, const Type& type);
    [[nodiscard]] bool replaced_signs() const { return replaced_; }

    void part(const std::string& title);  // a part of the document: large, with a bookmark, room for some text under it
    void heading(const std::string& title, double with = 30);  // within a part, on a page with `with` more under it
    void paragraph(std::string_view text, const Type& type = kBody);
    // Rows without a value are left out; the labels get more than `label_width` where one of their words needs it.
    void labelled(const std::vector<Labelled>& rows, double label_width = 110);
    // With a firm line around it, and a sign on the left of the words.
    void framed(std::string_view text, const Type& type = kBody, std::optional<Sign> sign = {});

    // Writes `left_text` and "page n of m" under every page.
    void feet(const std::string& left_text);

    static constexpr double kMargin = 46;
    static constexpr double kFoot = 54;  // of the page, kept free for the foot

private:
    Canvas& canvas_;
    double y_ = kMargin;
    double indent_ = 0;
    bool replaced_ = false;
};

}  // namespace cotter

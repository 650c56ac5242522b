// Texts of people made fit for a page: signs the font has, cut into lines. Pure; any thread.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/report/canvas.h"

namespace cotter {

struct Printable {
    std::u32string signs;   // '\n' between lines, else only signs that the canvas has
    bool replaced = false;  // something is shown as U+FFFD
};

// Bad UTF-8, control characters and signs that the canvas lacks become U+FFFD; tabs become spaces; every kind of line
// end becomes '\n'; signs without a shape of their own (joiners, direction and variation marks) are dropped.
[[nodiscard]] Printable printable(std::string_view utf8, const Canvas& canvas);

// Lines no wider than `width`, broken at spaces or, where a word alone is too wide, anywhere. At least one line.
// Runs of Hebrew and Arabic come out in the order in which they are drawn, left to right; letters are not joined.
[[nodiscard]] std::vector<std::string> wrap(std::u32string_view signs, const Canvas& canvas, Face face, double size,
                                            double width);

// Of its longest word, which no narrower column can hold whole.
[[nodiscard]] double longest_word(std::u32string_view signs, const Canvas& canvas, Face face, double size);

[[nodiscard]] double text_width(std::string_view utf8, const Canvas& canvas, Face face, double size);

}  // namespace cotter

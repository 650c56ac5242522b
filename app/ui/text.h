// Text that is never cut: measured, wrapped, shrunk where a word is too long, and written into the log. For widgets.
#pragma once

#include <concepts>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "app/ui/ui.h"

namespace cotter {

struct Line {
    std::string_view text;
    float width = 0;  // dp
};

// Text cut into lines for a width. Views into the text given to lay_text.
struct Laid {
    std::string_view text;
    std::vector<Line> lines;
    Type type = Type::body;
    float em = 0;      // dp, smaller than the type's when a word had to be shrunk
    float pitch = 0;   // dp from line to line
    float width = 0;   // of the longest line
    float height = 0;  // of all
};

// Breaks at spaces and newlines. A word wider than `width` shrinks the whole text, but not below 16 dp; what is still
// too wide is broken between characters.
[[nodiscard]] Laid lay_text(const UiContext& ui, std::string_view text, Type type, float width);

// A text that is gone before its lines are drawn.
template <class Passing>
requires std::same_as<Passing, std::string> Laid lay_text(const UiContext& ui, Passing&& text, Type type, float width)
= delete;

[[nodiscard]] float text_width(const UiContext& ui, std::string_view text, Type type);
[[nodiscard]] float text_width(const UiContext& ui, std::string_view text, Type type, float em);
[[nodiscard]] float line_height(const UiContext& ui, Type type);

enum class Align { left, middle, right };

struct TextLook {
    Rgb colour, ground;
    Align align = Align::left;
    bool centred = true;       // in the height of the box; otherwise from its top
    std::uint32_t target = 0;  // whose text it is
};

// Draws into `box` and logs it. The box must be at least laid.width × laid.height.
void draw_text(UiContext& ui, const Laid& laid, const Rect& box, const TextLook& look);

// The caret's place in a laid text for a byte of it, and the other way round, relative to the text's top left.
[[nodiscard]] Point place_of(const UiContext& ui, const Laid& laid, std::size_t byte);
[[nodiscard]] std::size_t byte_at(const UiContext& ui, const Laid& laid, Point place);

// The next place for a widget: at the cursor, `width` × `height`; the cursor goes on below.
[[nodiscard]] Rect take_space(float width, float height);
[[nodiscard]] float room();  // width left for the next widget

}  // namespace cotter

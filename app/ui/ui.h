// What every widget and screen draws with. Included by screens and widgets; one thread, one frame at a time.
//
// How a screen is made
//   void draw_corner(const CornerView& view, CornerUi& x, Commands& out);
// - CornerView is plain data made by the session: texts ready to read, ids of records, which actions are possible.
// - CornerUi holds `UiContext& ui` and the screen's passing state: which sheet is open, a number half keyed in. It may
//   vanish at any moment without loss; whatever must last goes out as a command.
// - A screen calls screen(ui, spec, body) once. `spec` is the header and the bottom actions; the answer says which of
//   them was tapped. `body` calls widgets, top to bottom, each as wide as the column; each one tells whether it was
//   tapped, and the screen pushes a command. Nothing is edited while drawing; the session applies commands afterwards.
// - Sheets are drawn after the screen: if (x.sheet_open) { if (sheet(x.ui, spec, body)) x.sheet_open = false; }
// - Every widget takes a Name: what it says, and a key that is the record's id, never a row number.
// - Lengths are dp. One ImGui unit is one dp; the platform scales to pixels. No colours in screens: a Tone says what a
//   thing means. No ImGui in screens either, except for the desk's tables.
// - Names and specs own their words, so that they may be built from texts that pass. Arguments of functions are views.
// - Text wraps or shrinks by itself, never below 16 dp. What does not fit is scrolled, never cut.
// - Each target and text is written into `log`: the audit, the test driver and screen readers see what the user sees.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/ui/target_log.h"
#include "app/ui/theme.h"
#include "app/ui/touch.h"
#include "app/ui/ui_ports.h"

struct ImFont;

namespace cotter {

// What it says and which one it is. Where the words are already the only ones of their kind, they serve as key.
struct Name {
    std::string label;
    std::string key;

    Name() = default;
    Name(std::string_view text) : label(text), key(text) {}
    Name(const char* text) : Name(std::string_view(text)) {}
    Name(const std::string& text) : Name(std::string_view(text)) {}
    Name(std::string_view text, std::string_view id) : label(text), key(id) {}
};

enum class Type { body, bold, small, title, figures };

// A baked font: `ratio` is its line height by its em.
struct Face {
    ImFont* font = nullptr;
    float ratio = 1.2F;
};
struct Faces {
    Face body, bold, small, title, figures;
    unsigned baked = 0;     // another number after each baking: what was measured before is as wide no more
    bool put_back = false;  // they are kept ones, not baked by this start
};

// The widgets' own words, in the user's language.
struct UiWords {
    std::string back = "Back", undo = "Undo", redo = "Redo", help = "Help", close = "Close", cancel = "Cancel",
                done = "Done";
    std::string on = "on", off = "off";
    std::string not_measured = "Not measured", not_accessible = "Not accessible", not_known = "Not known",
                next_point = "Next point";
    std::string add_point = "Add a point", erase = "Erase", remove = "Remove", sign = "Sign", least = "least",
                spread = "spread";
    std::string and_part = "and";  // between a whole number and its fraction
};

// Parts of the screen that the device covers (a notch, the home bar), in dp.
struct Insets {
    float left = 0, top = 0, right = 0, bottom = 0;
};

// What widgets remember from frame to frame; kept by the UiStage. Nothing of the user's.
struct UiState {
    TargetLog last;                    // the whole of the frame before
    std::optional<float> drag_scroll;  // where the scroll area is to the fraction: ImGui keeps whole units only
    std::uint32_t drag_owner = 0;      // the scroll area or picture that has the running drag, fling or pinch
    std::uint32_t edited = 0;          // the field being edited
    std::uint32_t edited_before = 0;   // in the frame before
    float edit_room = 0;               // height left for the screen when the edited field was last brought to sight
    std::uint32_t reached = 0;         // the target that is to be scrolled to sight when it is drawn next
    std::vector<std::pair<std::uint32_t, float>> heights;  // of sheets' contents, by id
};

struct UiContext {
    const Theme& theme;
    Sizes sizes;
    Thumb thumb = Thumb::right;
    float width = 0, height = 0;  // dp
    float px_per_dp = 1;
    Insets insets;
    double now_s = 0;  // monotonic
    Faces faces;
    const UiWords& words;
    TargetLog& log;
    Pictures& pictures;
    Keyboard& keyboard;
    UiState& state;
    std::vector<Gesture> gestures;  // of this frame, by finger or by mouse
    std::optional<Point> pressed;   // where an undecided finger rests
    bool back = false;              // the system's back key; whoever acts on it takes it by take_back()
    std::optional<double> wake_s;   // when a frame is wanted though nothing happens

    [[nodiscard]] const Paint& paint(Tone tone) const { return theme.of(tone); }
    [[nodiscard]] const Face& face(Type type) const;
    [[nodiscard]] float em(Type type) const;  // dp
    // A phone lying on its side: little height, so actions stand beside the content instead of under it.
    [[nodiscard]] bool low() const { return height < 500 && width > height; }
    [[nodiscard]] bool top_layer() const { return log.drawing == state.last.layer; }
    [[nodiscard]] bool take_back();  // true once, and only in the highest layer
    void wake_at(double when_s) { wake_s = wake_s && *wake_s < when_s ? *wake_s : when_s; }
};

}  // namespace cotter

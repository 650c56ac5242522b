// The two looks of Cotter, 'Sun' and 'Lantern', as plain values: colours by tone, sizes by type scale. Pure; any
// thread. The shapes are those of stamped plates: flat, a cut corner, a firm edge; what is chosen carries a witness
// mark, the stripe of paint that a mechanic draws over a tightened nut.
#pragma once

#include <array>
#include <cstddef>

#include "app/ui/colour.h"

namespace cotter {

enum class ThemeKind { sun, lantern };
enum class TypeSize { regular, large, largest };  // 1×, 1.5×, 2×
enum class Thumb { right, left };                 // the side where the main action lies

// What a widget means; the theme says how that looks. The last four are the grades, in the order of their severity.
enum class Tone {
    page,     // the ground of a screen
    plate,    // rows, tiles, fields: things lying on the page
    bar,      // header and action bar
    strong,   // the one main action
    quiet,    // any other action
    chosen,   // what is selected or switched on
    off,      // what cannot be used now
    caution,  // a danger and what to do about it
    danger,   // an action that takes something away
    serviceable,
    watch,
    repair,
    do_not_tow
};
constexpr std::size_t kTones = 13;

struct Paint {
    Rgb ground, text, edge;
};

struct Theme {
    ThemeKind kind = ThemeKind::sun;
    std::array<Paint, kTones> paints{};
    Rgb second;   // lesser text, on page, plate and bar
    Rgb witness;  // the stripe on what is chosen, and the ring round what has the keyboard
    Rgb shade;    // laid half transparent over what a sheet covers

    [[nodiscard]] const Paint& of(Tone tone) const { return paints[static_cast<std::size_t>(tone)]; }
};

[[nodiscard]] const Theme& theme_of(ThemeKind kind);

// All lengths in dp (1/160 inch at arm's length). Text grows with the type size; targets only as far as they must.
struct Sizes {
    float type = 1;  // 1, 1.5 or 2

    [[nodiscard]] float body() const { return 18 * type; }
    [[nodiscard]] float small() const { return 16 * type; }  // never smaller than this at 1×
    [[nodiscard]] float title() const { return 22 * type; }
    [[nodiscard]] float figures() const { return 40 * type; }  // a reading being keyed in

    static constexpr float target = 48;   // least side of anything to tap
    static constexpr float main = 64;     // least height of the main action and of keypad keys
    static constexpr float gap = 8;       // between targets
    static constexpr float pad = 16;      // inside plates, and at the screen's edge
    static constexpr float cut = 10;      // the cut corner
    static constexpr float edge = 2;      // line round a plate
    static constexpr float stripe = 6;    // the witness mark
    static constexpr float column = 640;  // content is never wider on a screen made for the phone
    static constexpr float min_text = 16;
};

[[nodiscard]] Sizes sizes_of(TypeSize size);

// The user's choices about looks, kept in the settings.
struct Appearance {
    ThemeKind theme = ThemeKind::sun;
    TypeSize type = TypeSize::regular;
    Thumb thumb = Thumb::right;
    bool operator==(const Appearance&) const = default;
};

}  // namespace cotter

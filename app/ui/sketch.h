// Choosing by picture: small drawings of axles, wheels, brakes and hubs as tiles. For the page that identifies a
// trailer.
#pragma once

#include <optional>
#include <span>

#include "app/ui/ui.h"

namespace cotter {

enum class Sketch {
    one_axle,
    two_axles,
    three_axles,
    four_axles,
    single_wheels,
    dual_wheels,
    no_brake,
    disc,
    drum,
    electric_drum,
    air,
    oil_bath,
    grease,
    semi_fluid
};

struct SketchSpec {
    Name name;
    Sketch sketch = Sketch::one_axle;
    bool chosen = false;
};

// One of them, tiles of equal size. Gives the tapped one.
std::optional<std::size_t> sketches(UiContext& ui, std::string_view key, std::span<const SketchSpec> specs);

}  // namespace cotter

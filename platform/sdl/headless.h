// A screen without a display: SDL's dummy driver and software renderer, chosen in code. The same script gives the same
// bytes on every run. For tests, reviewers and pictures of the screens.
#pragma once

#include <functional>
#include <memory>

#include "app/driver/host.h"

namespace cotter {

struct HeadlessSpec {
    float width = 412, height = 915;  // dp, 160…4,096
    float scale = 2;                  // pixels to a dp, 0.5…4
};

// Fails `refused` for a size out of range, `io` when SDL does not start. One at a time in a process.
[[nodiscard]] Result<std::unique_ptr<DriverHost>> make_headless(const HeadlessSpec& spec, FontFiles fonts,
                                                                const MakeApp& make);

}  // namespace cotter

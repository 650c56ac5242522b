// A text as a QR code (ISO/IEC 18004). Pure; any thread. The only way of this folder to the QR part.
#pragma once

#include <string>
#include <vector>

#include "core/base/error.h"

namespace cotter {

struct QrCode {
    int side = 0;            // modules, without the quiet zone around it
    std::vector<bool> dark;  // row by row
    [[nodiscard]] bool at(int x, int y) const { return dark[static_cast<std::size_t>(y * side + x)]; }
};

// The smallest code that holds the text and can be read with 15 % of it lost. `refused`: more than about 2,300 bytes.
[[nodiscard]] Result<QrCode> qr_code(const std::string& text);

}  // namespace cotter

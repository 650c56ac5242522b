// The paper that documents are laid out for. Plain value.
#pragma once

#include "core/base/fields.h"

namespace cotter {

enum class Paper { a4, letter };
constexpr auto names(Paper) {
    return name_list("A4", "US Letter");
}

}  // namespace cotter

// What the desk's pages say about themselves. Plain texts; any thread.
#pragma once

#include <span>
#include <string_view>

#include "app/desk/desk_command.h"

namespace cotter::desk {

[[nodiscard]] std::span<const std::string_view> help_lines(Page page);

}  // namespace cotter::desk

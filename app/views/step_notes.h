// Words that are usual in the note of a step, ready to choose, so that nobody types on the common path. Pure.
#pragma once

#include <span>
#include <string_view>

namespace cotter {

// Empty where nothing is usual: then the note is typed.
[[nodiscard]] std::span<const std::string_view> usual_notes(std::string_view step);
// Why a step is passed without its proof, or left out.
[[nodiscard]] std::span<const std::string_view> usual_override_reasons();

}  // namespace cotter

// Choosing: chips that wrap, a choice of few side by side, a switch. For screens.
#pragma once

#include <optional>
#include <span>

#include "app/ui/ui.h"
#include "core/survey/words.h"

namespace cotter {

struct ChipSpec {
    Name name;
    bool chosen = false;
    bool enabled = true;
    std::optional<Grade> grade;  // shows its mark
};

// Any number of them, in lines. Gives the tapped one; whether that adds, removes or exchanges is the session's affair.
std::optional<std::size_t> chips(UiContext& ui, std::string_view key, std::span<const ChipSpec> specs);

// One of few: equally wide side by side, in equal lines or one below the other when the words do not fit. Gives the
// tapped one.
std::optional<std::size_t> one_of(UiContext& ui, std::string_view key, std::span<const ChipSpec> specs);

// One of the four grades, as large plates with mark and word. Gives the tapped one.
std::optional<Grade> grade_choice(UiContext& ui, std::string_view key, std::optional<Grade> chosen);

// A switch with its words on the left; the whole line is the target. True when it was tapped.
bool toggle(UiContext& ui, const Name& name, bool on, std::string_view under = {}, bool enabled = true);

}  // namespace cotter

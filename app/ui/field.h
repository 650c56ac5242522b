// A field for words, with the system's keyboard. Numbers that are measured use the keypad instead. For screens.
#pragma once

#include <optional>
#include <string>

#include "app/ui/ui.h"

namespace cotter {

struct FieldSpec {
    std::string value;  // as the records have it now
    std::string hint;   // shown while it is empty
    std::string error;  // below it; empty: none
    TextKind kind = TextKind::plain;
    std::size_t max_bytes = 2000;
    bool enabled = true;
    bool focus = false;  // takes the keyboard, the caret behind its text; for the two frames that this takes
};

struct FieldAnswer {
    std::optional<std::string> text;  // the whole new text, at each change
    bool done = false;                // the user has left it after changing something
};

// The label above, the text in a plate that grows with it; long text wraps, also while it is edited.
FieldAnswer text_field(UiContext& ui, const Name& name, const FieldSpec& spec);

}  // namespace cotter

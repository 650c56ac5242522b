// A field whose words outlive a killed app: what is typed goes into the drafts at each change, and is handed in when
// the field is left. For screens.
#pragma once

#include <functional>

#include "app/command.h"
#include "app/ui/field.h"

namespace cotter {

// `hand_in` pushes the command that records the words.
void words_field(UiContext& ui, const Name& name, FieldSpec spec, const Drafts& drafts,
                 const std::function<void(const std::string&)>& hand_in, Commands& out);

}  // namespace cotter
